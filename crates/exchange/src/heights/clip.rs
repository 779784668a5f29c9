//! From a file's heights to those over a plan's ground, in the plan's metres.

use plan::{HeightGrid, Origin, Plan, Point, Rest};

use super::{Frame, HeightsError, Import, MARGIN_M, MOST_KEPT, Note, Raster, STEEP_SHARE, STEEPEST};
use crate::projection::{Degrees, Local, TransverseMercator, WGS_84};

/// Cells of a field's survey: between a centimetre and a hundred metres.
const CELL_M: std::ops::RangeInclusive<f64> = 0.01..=100.0;
/// Heights farther apart than this show no dip under a panel, metres (docs/sources.md, husbandry 7: about 1 m).
const COARSE_M: f64 = 2.0;
/// The scale of a UTM zone on its meridian, and its false origin, metres.
const UTM_SCALE: f64 = 0.9996;
const UTM_EAST_M: f64 = 500_000.0;
const UTM_NORTH_M: f64 = 10_000_000.0;

pub(super) fn clip(raster: &Raster, plan: &Plan) -> Result<Import, HeightsError> {
    let ground = Ground::of(plan);
    let mut notes = Vec::new();
    let degrees = raster.could_be_degrees();
    let (frame, origin) = match raster.frame {
        Frame::Unsaid => match unsaid(raster, plan, ground.as_ref(), degrees)? {
            None => (None, None),
            Some(frame) => {
                notes.push(match frame {
                    Frame::Utm { zone, .. } => Note::TakenAsUtm { zone },
                    _ => Note::TakenAsDegrees,
                });
                (Some(frame), None)
            }
        },
        said => {
            // A plan that has ground but no place on the globe cannot take them; an empty one begins in their middle.
            let origin = match (&plan.origin, &ground) {
                (Some(_), _) => None,
                (None, Some(_)) => return Err(HeightsError::NoOrigin),
                (None, None) => Some(raster.middle(said).ok_or(HeightsError::WrongPlace { off_m: f64::INFINITY })?),
            };
            (Some(said), origin)
        }
    };
    let mut grid = match frame {
        None => {
            if !CELL_M.contains(&raster.step.0) || !CELL_M.contains(&raster.step.1) {
                return Err(HeightsError::Cell { cell: raster.step.0 });
            }
            if raster.square() {
                cut(raster, ground.as_ref())?
            } else {
                sample(raster, ground.as_ref(), &|at| Some((at.east_m, at.north_m)))?
            }
        }
        Some(frame) => {
            let origin = origin.as_ref().or(plan.origin.as_ref()).ok_or(HeightsError::NoOrigin)?;
            let way = Way::new(origin, frame).ok_or(HeightsError::WrongPlace { off_m: f64::INFINITY })?;
            sample(raster, ground.as_ref(), &|at| way.of(at))?
        }
    };
    let holes = grid.up_m.iter().filter(|up_m| up_m.is_none()).count();
    if holes == grid.up_m.len() {
        return Err(HeightsError::AllHoles);
    }
    let share = steep_share(&grid);
    if share > STEEP_SHARE {
        return Err(HeightsError::Steep { share });
    }
    for up_m in grid.up_m.iter_mut().flatten() {
        // To the millimetre: no survey is finer, and the plan stays readable.
        *up_m = (*up_m * 1e3).round() / 1e3;
    }
    if holes > 0 {
        notes.push(Note::Holes { holes });
    }
    if grid.cell_m > COARSE_M {
        notes.push(Note::Coarse { cell_m: grid.cell_m });
    }
    Ok(Import { grid, origin, notes })
}

/// What a file's places count from that does not say: `None` for the plan's own metres.
fn unsaid(raster: &Raster, plan: &Plan, ground: Option<&Ground>, degrees: bool) -> Result<Option<Frame>, HeightsError> {
    if degrees {
        // Cells this small are no metres.
        return match &plan.origin {
            Some(_) => Ok(Some(Frame::Degrees)),
            None => Err(HeightsError::NoOrigin),
        };
    }
    let Some(ground) = ground else { return Ok(None) };
    let off_m = raster.off(ground.low, ground.high);
    if off_m <= 0.0 {
        return Ok(None);
    }
    // Elsewhere in the plan's metres; perhaps they are those of the UTM zone there.
    if let Some(origin) = &plan.origin {
        let zone = (((origin.longitude_deg + 180.0) / 6.0).floor() as i64).clamp(0, 59) as u32 + 1;
        let frame = Frame::Utm { zone, north: origin.latitude_deg >= 0.0 };
        let way = Way::new(origin, frame).ok_or(HeightsError::WrongPlace { off_m })?;
        if raster.off_by(ground, &|at| way.of(at)) <= 0.0 {
            return Ok(Some(frame));
        }
    }
    Err(HeightsError::WrongPlace { off_m })
}

/// The box round a plan's paddock and runs.
struct Ground {
    low: (f64, f64),
    high: (f64, f64),
}

impl Ground {
    fn of(plan: &Plan) -> Option<Self> {
        let places = plan.ground.boundary.iter().chain(plan.runs.iter().flat_map(|run| &run.outline));
        let mut ground: Option<Self> = None;
        for at in places {
            let ground = ground.get_or_insert(Self { low: (at.east_m, at.north_m), high: (at.east_m, at.north_m) });
            ground.low = (ground.low.0.min(at.east_m), ground.low.1.min(at.north_m));
            ground.high = (ground.high.0.max(at.east_m), ground.high.1.max(at.north_m));
        }
        ground
    }

    fn corners(&self) -> [Point; 4] {
        let ((west, south), (east, north)) = (self.low, self.high);
        [(west, south), (east, south), (east, north), (west, north)].map(Point::from)
    }
}

impl Raster {
    fn last(&self) -> (f64, f64) {
        let span = |first: f64, step: f64, count: usize| first + step * (count - 1) as f64;
        (span(self.first.0, self.step.0, self.columns), span(self.first.1, self.step.1, self.rows))
    }

    fn square(&self) -> bool {
        (self.step.0 - self.step.1).abs() <= 1e-9 * self.step.0
    }

    /// Whether its places can only be degrees: on the globe, and in steps of less than a hundredth.
    fn could_be_degrees(&self) -> bool {
        let (last, small) = (self.last(), 0.01);
        self.step.0 < small
            && self.step.1 < small
            && [self.first.0, last.0].iter().all(|east| east.abs() <= 180.0)
            && [self.first.1, last.1].iter().all(|north| north.abs() <= 90.0)
    }

    /// How far a box lies off the heights, in their own unit; 0 or less where they overlap.
    fn off(&self, low: (f64, f64), high: (f64, f64)) -> f64 {
        let last = self.last();
        let east = (self.first.0 - high.0).max(low.0 - last.0);
        let north = (self.first.1 - high.1).max(low.1 - last.1);
        if east > 0.0 && north > 0.0 { east.hypot(north) } else { east.max(north) }
    }

    /// The same for a plan's ground by a way to the heights' own places.
    fn off_by(&self, ground: &Ground, way: &dyn Fn(Point) -> Option<(f64, f64)>) -> f64 {
        let places: Vec<(f64, f64)> = ground.corners().into_iter().filter_map(way).collect();
        if places.is_empty() {
            return f64::INFINITY;
        }
        let fold =
            |of: fn(&(f64, f64)) -> f64, pick: fn(f64, f64) -> f64, from: f64| places.iter().map(of).fold(from, pick);
        let low = (fold(|at| at.0, f64::min, f64::INFINITY), fold(|at| at.1, f64::min, f64::INFINITY));
        let high = (fold(|at| at.0, f64::max, f64::NEG_INFINITY), fold(|at| at.1, f64::max, f64::NEG_INFINITY));
        self.off(low, high)
    }

    /// The middle of its heights on the globe.
    fn middle(&self, frame: Frame) -> Option<Origin> {
        let last = self.last();
        let at = (f64::midpoint(self.first.0, last.0), f64::midpoint(self.first.1, last.1));
        let degrees = match frame {
            Frame::Utm { zone, north } => utm_to_degrees(zone, north, at),
            _ => Degrees { latitude_deg: at.1, longitude_deg: at.0 },
        };
        Local::about(degrees).ok()?;
        let rounded = |degrees: f64| (degrees * 1e5).round() / 1e5;
        Some(Origin {
            latitude_deg: rounded(degrees.latitude_deg),
            longitude_deg: rounded(degrees.longitude_deg),
            rest: Rest::new(),
        })
    }

    /// Straight between the four heights round a place in the file's own unit; a hole where one is missing.
    fn between(&self, (east, north): (f64, f64)) -> Option<f64> {
        let (x, y) = ((east - self.first.0) / self.step.0, (north - self.first.1) / self.step.1);
        const EDGE: f64 = 1e-6;
        let within = |at: f64, count: usize| (-EDGE..=(count - 1) as f64 + EDGE).contains(&at);
        if !within(x, self.columns) || !within(y, self.rows) {
            return None;
        }
        let column = (x.max(0.0) as usize).min(self.columns - 2);
        let row = (y.max(0.0) as usize).min(self.rows - 2);
        let (u, v) = (x - column as f64, y - row as f64);
        let node = |east: usize, north: usize| self.up_m[(row + north) * self.columns + column + east];
        let south = node(0, 0)? * (1.0 - u) + node(1, 0)? * u;
        let north = node(0, 1)? * (1.0 - u) + node(1, 1)? * u;
        Some(south * (1.0 - v) + north * v)
    }
}

/// From the plan's metres to the places of a file.
struct Way {
    local: Local,
    frame: Frame,
    mercator: TransverseMercator,
}

impl Way {
    fn new(origin: &Origin, frame: Frame) -> Option<Self> {
        let origin = Degrees { latitude_deg: origin.latitude_deg, longitude_deg: origin.longitude_deg };
        Some(Self { local: Local::about(origin).ok()?, frame, mercator: TransverseMercator::new(WGS_84, UTM_SCALE) })
    }

    fn of(&self, at: Point) -> Option<(f64, f64)> {
        let degrees = self.local.to_degrees(at).ok()?;
        Some(match self.frame {
            Frame::Utm { zone, north } => {
                let off_deg = crate::projection::wrapped(degrees.longitude_deg - meridian_deg(zone));
                let (east_m, north_m) = self.mercator.forward(degrees.latitude_deg.to_radians(), off_deg.to_radians());
                (east_m + UTM_EAST_M, north_m + if north { 0.0 } else { UTM_NORTH_M })
            }
            _ => (degrees.longitude_deg, degrees.latitude_deg),
        })
    }
}

/// The central meridian of a UTM zone, degrees.
fn meridian_deg(zone: u32) -> f64 {
    f64::from(zone) * 6.0 - 183.0
}

fn utm_to_degrees(zone: u32, north: bool, (east_m, north_m): (f64, f64)) -> Degrees {
    let mercator = TransverseMercator::new(WGS_84, UTM_SCALE);
    let false_north_m = if north { 0.0 } else { UTM_NORTH_M };
    let (latitude_rad, longitude_rad) = mercator.inverse(east_m - UTM_EAST_M, north_m - false_north_m);
    Degrees {
        latitude_deg: latitude_rad.to_degrees(),
        longitude_deg: crate::projection::wrapped(meridian_deg(zone) + longitude_rad.to_degrees()),
    }
}

/// The heights over the ground as they stand.
fn cut(raster: &Raster, ground: Option<&Ground>) -> Result<HeightGrid, HeightsError> {
    let (columns, rows) = match ground {
        None => (0..=raster.columns - 1, 0..=raster.rows - 1),
        Some(ground) => {
            let span = |first: f64, step: f64, count: usize, low: f64, high: f64| {
                let last = (count - 1) as f64;
                let from = ((low - MARGIN_M - first) / step).floor().clamp(0.0, last - 1.0);
                let to = ((high + MARGIN_M - first) / step).ceil().clamp(from + 1.0, last);
                from as usize..=to as usize
            };
            (
                span(raster.first.0, raster.step.0, raster.columns, ground.low.0, ground.high.0),
                span(raster.first.1, raster.step.1, raster.rows, ground.low.1, ground.high.1),
            )
        }
    };
    let wide = columns.end() - columns.start() + 1;
    limit(wide, rows.end() - rows.start() + 1)?;
    let at = |first: f64, step: f64, index: usize| first + step * index as f64;
    Ok(HeightGrid {
        south_west: Point::new(
            at(raster.first.0, raster.step.0, *columns.start()),
            at(raster.first.1, raster.step.1, *rows.start()),
        ),
        cell_m: raster.step.0,
        columns: wide as u32,
        up_m: rows
            .flat_map(|row| columns.clone().map(move |column| raster.up_m[row * raster.columns + column]))
            .collect(),
        rest: Rest::new(),
    })
}

fn limit(columns: usize, rows: usize) -> Result<(), HeightsError> {
    let heights = columns.saturating_mul(rows);
    if heights > MOST_KEPT { Err(HeightsError::TooMany { heights }) } else { Ok(()) }
}

/// The heights over the ground, sampled on a grid of the plan's own metres.
fn sample(
    raster: &Raster,
    ground: Option<&Ground>,
    way: &dyn Fn(Point) -> Option<(f64, f64)>,
) -> Result<HeightGrid, HeightsError> {
    let middle = ground.map_or(Point::default(), |ground| {
        Point::new(f64::midpoint(ground.low.0, ground.high.0), f64::midpoint(ground.low.1, ground.high.1))
    });
    // How far a metre goes in the file's own unit, along either axis.
    let apart = |to: Point| {
        let (from, to) = (way(middle)?, way(to)?);
        Some((to.0 - from.0, to.1 - from.1))
    };
    let metre = (
        apart(Point::new(middle.east_m + 1.0, middle.north_m)),
        apart(Point::new(middle.east_m, middle.north_m + 1.0)),
    );
    let (Some(east), Some(north)) = metre else { return Err(HeightsError::WrongPlace { off_m: f64::INFINITY }) };
    let unit = (east.0.hypot(north.0), east.1.hypot(north.1));
    let step_m = (raster.step.0 / unit.0, raster.step.1 / unit.1);
    let cell_m = step_m.0.min(step_m.1);
    if !CELL_M.contains(&cell_m) {
        return Err(HeightsError::Cell { cell: raster.step.0 });
    }
    let own = Ground {
        low: (-step_m.0 * raster.columns as f64 / 2.0, -step_m.1 * raster.rows as f64 / 2.0),
        high: (step_m.0 * raster.columns as f64 / 2.0, step_m.1 * raster.rows as f64 / 2.0),
    };
    let over = ground.unwrap_or(&own);
    let off = raster.off_by(over, way);
    if off > 0.0 {
        return Err(HeightsError::WrongPlace { off_m: off / unit.0.max(unit.1) });
    }
    let margin_m = if ground.is_some() { MARGIN_M } else { 0.0 };
    let south_west = Point::new(over.low.0 - margin_m, over.low.1 - margin_m);
    let count = |low: f64, high: f64| ((high - low + margin_m) / cell_m).ceil() as usize + 1;
    let (columns, rows) = (count(south_west.east_m, over.high.0), count(south_west.north_m, over.high.1));
    limit(columns, rows)?;
    let at = |column: usize, row: usize| {
        Point::new(south_west.east_m + cell_m * column as f64, south_west.north_m + cell_m * row as f64)
    };
    let up_m = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
    let up_m = up_m.map(|(column, row)| way(at(column, row)).and_then(|place| raster.between(place))).collect();
    Ok(HeightGrid { south_west, cell_m, columns: columns as u32, up_m, rest: Rest::new() })
}

/// Share of neighbouring heights between which the ground is steeper than any field.
fn steep_share(grid: &HeightGrid) -> f64 {
    let columns = grid.columns as usize;
    let (mut all, mut steep) = (0_usize, 0_usize);
    for (index, up_m) in grid.up_m.iter().enumerate() {
        let east = ((index + 1) % columns != 0).then(|| grid.up_m.get(index + 1)).flatten();
        for next in [east, grid.up_m.get(index + columns)].into_iter().flatten() {
            if let (Some(one), Some(other)) = (up_m, next) {
                all += 1;
                steep += usize::from((one - other).abs() > STEEPEST * grid.cell_m);
            }
        }
    }
    if all == 0 { 0.0 } else { steep as f64 / all as f64 }
}
