//! From a plan and what follows from it to bytes.
//!
//! One feature a line, so that two versions can be compared. Figures in the properties are in SI units with the
//! unit in the key, under the keys of the report. Degrees have nine decimals, 0.1 mm. Outer rings run counter-
//! clockwise and holes clockwise (RFC 7946, section 3.1.6). A shape across the antimeridian is not cut in two
//! (section 3.1.9 asks for it); its longitudes simply change sign there, as this program reads them back.

use ::geojson::{Feature, Geometry, GeometryValue, JsonObject, Position};
use plan::{Coop, Hazard, HazardKind, KeepOut, Plan, Point, Run, RunStatus, WallKind};
use serde_json::{Value, json};
use workup::{Lay, RunWorkup, SampleOf, Strip, Verdict, Workup};

use super::rings::wound;
use super::{ExportError, role};
use crate::projection::{Degrees, Local, ProjectionError};

/// Writes a plan and its workup as a GeoJSON feature collection.
///
/// # Errors
/// Where the plan has no origin, or a place beyond the projection's reach.
pub fn write(plan: &Plan, workup: &Workup) -> Result<Vec<u8>, ExportError> {
    let origin = plan.origin.as_ref().ok_or(ExportError::NoOrigin)?;
    let (latitude_deg, longitude_deg) = (origin.latitude_deg, origin.longitude_deg);
    let globe = Local::about(Degrees { latitude_deg, longitude_deg })
        .map_err(|_| ExportError::OriginNotOnTheGlobe { latitude_deg, longitude_deg })?;
    let mut sheet = Sheet { globe, features: Vec::new() };
    sheet.paddock(plan)?;
    for (index, keep_out) in plan.ground.keep_outs.iter().enumerate() {
        sheet.keep_out(index, keep_out)?;
    }
    for (index, hazard) in plan.ground.hazards.iter().enumerate() {
        sheet.hazard(index, hazard)?;
    }
    sheet.features(plan)?;
    for (index, coop) in plan.coop.iter().chain(&plan.other_coops).enumerate() {
        sheet.coop(index, coop)?;
    }
    for (index, run) in plan.runs.iter().enumerate() {
        let empty = RunWorkup::default();
        let worked = workup.runs.get(index).unwrap_or(&empty);
        sheet.run(&format!("runs[{index}]"), run, worked)?;
        for (number, stake) in crate::earths::placed(plan, workup, index).iter().enumerate() {
            sheet.earth_stake(&format!("runs[{index}].earth_stakes.places[{number}]"), run, worked, stake)?;
        }
    }
    Ok(sheet.bytes())
}

struct Sheet {
    globe: Local,
    features: Vec<Feature>,
}

impl Sheet {
    fn paddock(&mut self, plan: &Plan) -> Result<(), ExportError> {
        let boundary = &plan.ground.boundary;
        if boundary.len() < 3 {
            return Ok(());
        }
        let shape = self.polygon(std::slice::from_ref(boundary), "ground.boundary")?;
        self.add(shape, role::PADDOCK, json!({ "name": plan.title }));
        Ok(())
    }

    fn keep_out(&mut self, index: usize, keep_out: &KeepOut) -> Result<(), ExportError> {
        if keep_out.outline.len() < 3 {
            return Ok(());
        }
        let place = format!("ground.keep_outs[{index}]");
        let shape = self.polygon(std::slice::from_ref(&keep_out.outline), &place)?;
        let properties = json!({
            "name": keep_out.name,
            "clearance_m": keep_out.clearance_m(),
            "may_enclose": keep_out.may_enclose(),
            "water": keep_out.water,
        });
        self.add(shape, role::KEEP_OUT, properties);
        Ok(())
    }

    fn hazard(&mut self, index: usize, hazard: &Hazard) -> Result<(), ExportError> {
        let Some(shape) = self.path(&hazard.path, &format!("ground.hazards[{index}]"))? else { return Ok(()) };
        let kind = match hazard.kind {
            HazardKind::OverheadLine => "overhead_line",
            HazardKind::PublicWay => "public_way",
            HazardKind::OtherEnergisedFence => "other_energised_fence",
            HazardKind::ForeignEarth => "foreign_earth",
        };
        let mut properties = json!({ "kind": kind, "name": hazard.name });
        match hazard.kind {
            HazardKind::OverheadLine => properties["line_voltage_kv"] = json!(hazard.line_voltage_kv),
            HazardKind::PublicWay => {
                properties["signed"] = json!(hazard.signed);
                properties["unpowered_gate"] = json!(hazard.unpowered_gate);
            }
            HazardKind::OtherEnergisedFence | HazardKind::ForeignEarth => {}
        }
        self.add(shape, "hazard", properties);
        Ok(())
    }

    /// Walls, shade, damp ground, and the words on the map.
    fn features(&mut self, plan: &Plan) -> Result<(), ExportError> {
        for (index, wall) in plan.walls.iter().enumerate() {
            let Some(shape) = self.path(&wall.path, &format!("walls[{index}]"))? else { continue };
            let kind = match wall.kind() {
                WallKind::Wall => "wall",
                WallKind::Hedge => "hedge",
                WallKind::Fence => "fence",
            };
            let properties = json!({
                "name": wall.name,
                "kind": kind,
                "holds_birds": wall.holds_birds(),
                "stops_foxes": wall.stops_foxes,
            });
            self.add(shape, "wall", properties);
        }
        for (index, shade) in plan.ground.shade.iter().enumerate().filter(|(_, shade)| shade.outline.len() >= 3) {
            let shape = self.polygon(std::slice::from_ref(&shade.outline), &format!("ground.shade[{index}]"))?;
            self.add(shape, "shade", json!({ "name": shade.name }));
        }
        for (index, damp) in plan.ground.damp.iter().enumerate().filter(|(_, damp)| damp.outline.len() >= 3) {
            let shape = self.polygon(std::slice::from_ref(&damp.outline), &format!("ground.damp[{index}]"))?;
            let properties = json!({ "name": damp.name, "resistivity_ohm_m": plan.ground.damp_ohm_m(damp) });
            self.add(shape, "damp", properties);
        }
        for (index, label) in plan.labels.iter().enumerate() {
            self.mark(label.at, &format!("labels[{index}]"), "label", json!({ "text": label.text }))?;
        }
        for (index, run) in plan.runs.iter().enumerate() {
            if let Some(at) = run.drop_at {
                self.mark(at, &format!("runs[{index}].drop_at"), "drop_point", json!({ "run": run.id }))?;
            }
        }
        Ok(())
    }

    fn coop(&mut self, index: usize, coop: &Coop) -> Result<(), ExportError> {
        let place = if index == 0 { "coop".to_owned() } else { format!("other_coops[{}]", index - 1) };
        let shape = self.polygon(&[coop.corners().to_vec()], &place)?;
        let properties = json!({
            "id": coop.id,
            "birds": coop.birds(),
            "heading_deg": coop.heading_deg(),
            "length_m": coop.length_m(),
            "width_m": coop.width_m(),
        });
        self.add(shape, "coop", properties);
        Ok(())
    }

    fn run(&mut self, place: &str, run: &Run, worked: &RunWorkup) -> Result<(), ExportError> {
        self.line(place, run, worked)?;
        if let Some(strip) = &worked.strip {
            self.strip(place, run, strip)?;
        }
        if let Some(lay) = &worked.lay {
            self.posts(place, run, worked, lay)?;
            self.joins(place, run, lay)?;
            self.corners(place, run, lay)?;
            self.branches(place, run, worked, lay)?;
        }
        self.power(place, run, worked)
    }

    fn line(&mut self, place: &str, run: &Run, worked: &RunWorkup) -> Result<(), ExportError> {
        let place = format!("{place}.outline");
        let shape = if run.closed() && run.outline.len() >= 3 {
            self.polygon(std::slice::from_ref(&run.outline), &place)?
        } else {
            match self.path(&run.outline, &place)? {
                Some(shape) => shape,
                None => return Ok(()),
            }
        };
        let status = match run.status {
            RunStatus::Option => "option",
            RunStatus::Standing => "standing",
            RunStatus::Past => "past",
        };
        let mut properties = json!({ "run": run.id, "name": run.name, "status": status });
        if let Some(lay) = &worked.lay {
            properties["line_m"] = json!(lay.line_m);
            // What is open encloses nothing.
            properties["area_m2"] = json!(worked.ground_m2());
            let open = worked.closing.as_ref().filter(|closing| !closing.is_shut());
            properties["open_m"] = json!(open.map_or(0.0, |closing| closing.gap_m));
            properties["spare_m"] = json!(lay.spare_m);
            properties["short_m"] = json!(lay.short_m);
            properties["nets_needed"] = json!(lay.nets_needed);
            properties["set_up_minutes"] = json!(lay.set_up_minutes);
        }
        if let Some(weakest) = worked.volts.as_ref().and_then(|volts| volts.weakest) {
            properties["weakest_kv"] = json!(weakest.peak_kv);
            properties["weakest_low_kv"] = json!(weakest.low_kv);
            properties["weakest_high_kv"] = json!(weakest.high_kv);
            properties["measured"] = json!(weakest.measured);
        }
        self.add(shape, "run", properties);
        Ok(())
    }

    fn strip(&mut self, place: &str, run: &Run, strip: &Strip) -> Result<(), ExportError> {
        let place = format!("{place}.strip_width_m");
        let polygons: Vec<_> = strip
            .polygons
            .iter()
            .filter(|rings| rings.first().is_some_and(|outer| outer.len() >= 3))
            .map(|rings| self.rings(rings, &place))
            .collect::<Result<_, _>>()?;
        if polygons.is_empty() {
            return Ok(());
        }
        let properties = json!({
            "run": run.id,
            "width_m": strip.width_m,
            "area_m2": strip.area_m2,
            "passes": strip.passes,
            "walk_m": strip.walk_m,
            "minutes": strip.minutes,
        });
        self.add(GeometryValue::MultiPolygon { coordinates: polygons }, "strip", properties);
        Ok(())
    }

    fn posts(&mut self, place: &str, run: &Run, worked: &RunWorkup, lay: &Lay) -> Result<(), ExportError> {
        let samples = worked.volts.as_ref().map_or(&[][..], |volts| &volts.samples);
        let mut peak_kv = vec![None; lay.posts.len()];
        for sample in samples {
            if let SampleOf::Post(post) = sample.of
                && let Some(slot) = peak_kv.get_mut(post)
            {
                *slot = Some(sample.peak_kv);
            }
        }
        for (post, peak_kv) in lay.posts.iter().zip(peak_kv) {
            let properties = json!({
                "run": run.id,
                "net": post.net,
                "post": post.post,
                "along_m": post.along_m,
                "peak_kv": peak_kv,
            });
            self.mark(post.at, place, "post", properties)?;
        }
        Ok(())
    }

    /// Where one net's last post and the next one's first stand side by side.
    fn joins(&mut self, place: &str, run: &Run, lay: &Lay) -> Result<(), ExportError> {
        for pair in lay.posts.windows(2).filter(|pair| pair[0].net != pair[1].net) {
            let properties = json!({
                "run": run.id,
                "nets": [pair[0].net, pair[1].net],
                "along_m": pair[1].along_m,
            });
            self.mark(pair[1].at, place, "join", properties)?;
        }
        Ok(())
    }

    /// Lines of netting that hang on the run's, with their posts.
    fn branches(&mut self, place: &str, run: &Run, worked: &RunWorkup, lay: &Lay) -> Result<(), ExportError> {
        for (index, branch) in lay.branches.iter().enumerate() {
            let place = format!("{place}.branches[{}].outline", branch.branch);
            let places: Vec<_> = branch.vertices.iter().map(|vertex| vertex.0).collect();
            let kinds: Vec<_> = branch.nets.iter().map(|net| &net.kind).collect();
            let properties = json!({
                "run": run.id,
                "branch": branch.branch,
                "from_m": branch.from_m,
                "line_m": branch.line_m,
                "spare_m": branch.spare_m,
                "short_m": branch.short_m,
                "nets": kinds,
            });
            if let Some(shape) = self.path(&places, &place)? {
                self.add(shape, "branch", properties);
            }
            let samples = worked.volts.as_ref().and_then(|volts| volts.branches.get(index));
            for (number, post) in branch.posts.iter().enumerate() {
                let properties = json!({
                    "run": run.id,
                    "branch": branch.branch,
                    "net": post.net,
                    "post": post.post,
                    "along_m": post.along_m,
                    "peak_kv": samples.and_then(|samples| samples.get(number)).map(|sample| sample.peak_kv),
                });
                self.mark(post.at, &place, "post", properties)?;
            }
        }
        Ok(())
    }

    fn corners(&mut self, place: &str, run: &Run, lay: &Lay) -> Result<(), ExportError> {
        for corner in &lay.corners {
            // Numbered as map and report number it; an end has none.
            let number = corner.vertex.map(|vertex| vertex + 1);
            let brace = match corner.verdict {
                Verdict::None => "none",
                Verdict::Advised => "advised",
                Verdict::Required => "required",
            };
            let properties = json!({
                "run": run.id,
                "number": number,
                "along_m": corner.along_m,
                "turn_deg": corner.turn_deg,
                "end": corner.end,
                "to_post_m": corner.to_post_m,
                "pull_n": corner.pull_n,
                "hold_n": corner.hold_n,
                "brace": brace,
            });
            self.mark(corner.at, place, "corner", properties)?;
            if corner.verdict == Verdict::None && !corner.braced {
                continue;
            }
            let properties = json!({
                "run": run.id,
                "corner": number,
                "brace": brace,
                "stated": corner.braced,
                "holds": corner.braced.then_some(corner.holds),
                "stand_off_m": corner.stake.stand_off_m,
                "hold_n": corner.stake.hold_n,
            });
            self.mark(corner.stake.at, place, "stake", properties)?;
        }
        Ok(())
    }

    fn power(&mut self, place: &str, run: &Run, worked: &RunWorkup) -> Result<(), ExportError> {
        let volts = worked.volts.as_ref();
        if let Some(at) = run.feed_at {
            let properties = json!({
                "run": run.id,
                "energizer": run.energizer,
                "feed_kv": volts.map(|volts| volts.feed_kv),
            });
            self.mark(at, &format!("{place}.feed_at"), "feed", properties)?;
        }
        if let Some(at) = run.energizer_at {
            let properties =
                json!({ "run": run.id, "energizer": run.energizer, "earth_lead_m": run.earth_stakes.lead_m });
            self.mark(at, &format!("{place}.energizer_at"), "energizer", properties)?;
        }
        // Stakes that are placed stand each for itself.
        if let Some(at) = run.earth_stakes.at.filter(|_| run.earth_stakes.places.is_empty()) {
            let properties = json!({
                "run": run.id,
                "count": run.earth_stakes.count(),
                "spacing_m": run.earth_stakes.spacing_m(),
                "earth_ohm": volts.map(|volts| volts.earth_ohm),
                "earth_kv": volts.map(|volts| volts.earth_kv),
            });
            self.mark(at, &format!("{place}.earth_stakes.at"), "earth_stakes", properties)?;
        }
        Ok(())
    }

    fn earth_stake(
        &mut self,
        place: &str,
        run: &Run,
        worked: &RunWorkup,
        stake: &workup::earth::EarthStake,
    ) -> Result<(), ExportError> {
        let volts = worked.volts.as_ref();
        let mut properties = serde_json::to_value(crate::earths::out(stake)).expect("figures and places are JSON");
        if let Some(keys) = properties.as_object_mut() {
            keys.remove("at");
        }
        properties["run"] = json!(run.id);
        properties["earth_ohm"] = json!(volts.map(|volts| volts.earth_ohm));
        properties["earth_kv"] = json!(volts.map(|volts| volts.earth_kv));
        self.mark(stake.at, place, "earth_stake", properties)
    }

    fn mark(&mut self, at: Point, place: &str, role: &str, properties: Value) -> Result<(), ExportError> {
        let coordinates = self.position(at, place)?;
        self.add(GeometryValue::Point { coordinates }, role, properties);
        Ok(())
    }

    fn add(&mut self, shape: GeometryValue, role: &str, properties: Value) {
        let mut all = JsonObject::new();
        all.insert("role".to_owned(), Value::from(role));
        if let Value::Object(properties) = properties {
            all.extend(properties);
        }
        self.features.push(Feature {
            geometry: Some(Geometry::new(shape)),
            properties: Some(all),
            ..Feature::default()
        });
    }

    fn position(&self, at: Point, place: &str) -> Result<Position, ExportError> {
        let degrees = self.globe.to_degrees(at).map_err(|error| match error {
            ProjectionError::TooFar | ProjectionError::NotOnTheGlobe { .. } => {
                ExportError::TooFar { path: place.to_owned() }
            }
        })?;
        let rounded = |degrees: f64| (degrees * 1e9).round() / 1e9;
        Ok(Position::from([rounded(degrees.longitude_deg), rounded(degrees.latitude_deg)]))
    }

    fn positions(&self, points: &[Point], place: &str) -> Result<Vec<Position>, ExportError> {
        points.iter().map(|at| self.position(*at, place)).collect()
    }

    /// A line, a point where it has one place only, or nothing.
    fn path(&self, points: &[Point], place: &str) -> Result<Option<GeometryValue>, ExportError> {
        let mut coordinates = self.positions(points, place)?;
        Ok(match coordinates.len() {
            0 => None,
            1 => coordinates.pop().map(|coordinates| GeometryValue::Point { coordinates }),
            _ => Some(GeometryValue::LineString { coordinates }),
        })
    }

    fn polygon(&self, rings: &[Vec<Point>], place: &str) -> Result<GeometryValue, ExportError> {
        Ok(GeometryValue::Polygon { coordinates: self.rings(rings, place)? })
    }

    /// An outer ring and its holes, wound and closed.
    fn rings(&self, rings: &[Vec<Point>], place: &str) -> Result<Vec<Vec<Position>>, ExportError> {
        rings
            .iter()
            .enumerate()
            .map(|(index, ring)| {
                let mut positions = self.positions(&wound(ring, index == 0), place)?;
                positions.extend(positions.first().cloned());
                Ok(positions)
            })
            .collect()
    }

    fn bytes(&self) -> Vec<u8> {
        let lines: Vec<String> = self
            .features
            .iter()
            .map(|feature| serde_json::to_string(feature).expect("a feature has string keys and finite numbers only"))
            .collect();
        format!("{{\"type\":\"FeatureCollection\",\"features\":[\n{}\n]}}\n", lines.join(",\n")).into_bytes()
    }
}
