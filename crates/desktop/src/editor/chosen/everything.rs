//! What there is to be picked: every whole thing, every corner, everything that a page is about, and what lies in a
//! rectangle.

use drawing::Thing;
use plan::{Plan, Point};

use super::places::places_of;
use crate::editor::hiding::is_hidden;
use crate::editor::{Editor, Page};

/// Every whole thing that stands on the ground, but the paddock and the picture, on which everything lies.
fn standing(plan: &Plan) -> impl Iterator<Item = Thing> {
    let ground = &plan.ground;
    let keep_outs = (0..ground.keep_outs.len()).map(|keep_out| Thing::KeepOut { keep_out });
    let hazards = (0..ground.hazards.len()).map(|hazard| Thing::Hazard { hazard });
    let walls = (0..plan.walls.len()).map(|wall| Thing::Wall { wall });
    let shade = (0..ground.shade.len()).map(|shade| Thing::Shade { shade });
    let damp = (0..ground.damp.len()).map(|damp| Thing::Damp { damp });
    let labels = (0..plan.labels.len()).map(|label| Thing::Label { label });
    let heights = (0..plan.heights.len()).map(|height| Thing::Height { height });
    let points = (0..plan.tape_points.len()).map(|point| Thing::TapePoint { point });
    let gateway = ground.gateway.iter().map(|_| Thing::Gateway);
    let coops = (0..plan.coop.iter().chain(&plan.other_coops).count()).map(|coop| Thing::Coop { coop });
    let lines = keep_outs.chain(hazards).chain(walls).chain(shade).chain(damp);
    lines.chain(labels).chain(heights).chain(points).chain(gateway).chain(coops)
}

impl Editor {
    /// Picks what lies wholly in a rectangle: whole things, or where none does corners.
    pub(super) fn pick_within(&mut self, one: Point, other: Point, also: bool) {
        self.chosen.by_rectangle = false;
        let (east, north) = (
            [one.east_m.min(other.east_m), one.east_m.max(other.east_m)],
            [one.north_m.min(other.north_m), one.north_m.max(other.north_m)],
        );
        let inside =
            |at: &Point| (east[0]..=east[1]).contains(&at.east_m) && (north[0]..=north[1]).contains(&at.north_m);
        let holds = |thing: &Thing| {
            let places = places_of(&self.plan, *thing);
            !places.is_empty() && places.iter().all(inside)
        };
        let mut found: Vec<Thing> = self.wholes().into_iter().filter(holds).collect();
        if found.is_empty() {
            found = self.corners().into_iter().filter(holds).collect();
        }
        if also {
            let mut all = self.chosen();
            all.reverse();
            found.retain(|thing| !all.contains(thing));
            all.extend(found);
            found = all;
        }
        self.pick_things(found);
    }

    /// Every whole thing that is drawn.
    fn wholes(&self) -> Vec<Thing> {
        let plan = &self.plan;
        let paddock = self.page == Page::Ground && !plan.ground.boundary.is_empty();
        let drops = plan.runs.iter().enumerate().filter(|(_, stated)| stated.drop_at.is_some());
        let drops = drops.map(|(run, _)| Thing::Drop { run });
        let runs = (0..plan.runs.len()).map(|run| Thing::Run { run });
        let all = std::iter::once(Thing::Boundary).filter(|_| paddock).chain(standing(plan)).chain(drops).chain(runs);
        all.filter(|&thing| !is_hidden(plan, thing)).collect()
    }

    /// Every corner that is drawn and can be moved.
    fn corners(&self) -> Vec<Thing> {
        let (plan, ground) = (&self.plan, &self.plan.ground);
        let of_runs =
            plan.runs.iter().enumerate().flat_map(|(run, stated)| {
                (0..stated.outline.len()).map(move |vertex| Thing::RunCorner { run, vertex })
            });
        let paddock = (0..ground.boundary.len()).map(|vertex| Thing::BoundaryCorner { vertex });
        let keep_outs = ground.keep_outs.iter().enumerate().flat_map(|(keep_out, stated)| {
            (0..stated.outline.len()).map(move |vertex| Thing::KeepOutCorner { keep_out, vertex })
        });
        let walls =
            plan.walls.iter().enumerate().flat_map(|(wall, stated)| {
                (0..stated.path.len()).map(move |vertex| Thing::WallCorner { wall, vertex })
            });
        let shade = ground.shade.iter().enumerate().flat_map(|(shade, stated)| {
            (0..stated.outline.len()).map(move |vertex| Thing::ShadeCorner { shade, vertex })
        });
        let damp =
            ground.damp.iter().enumerate().flat_map(|(damp, stated)| {
                (0..stated.outline.len()).map(move |vertex| Thing::DampCorner { damp, vertex })
            });
        // One that is a place is its sign.
        let paths = ground.hazards.iter().enumerate().filter(|(_, stated)| stated.path.len() > 1);
        let hazards = paths.flat_map(|(hazard, stated)| {
            (0..stated.path.len()).map(move |vertex| Thing::HazardCorner { hazard, vertex })
        });
        // Those of the ground are moved by its page alone.
        let of_ground = paddock.chain(keep_outs).chain(walls).chain(shade).chain(damp).chain(hazards);
        let of_ground = of_ground.filter(|_| self.page == Page::Ground);
        of_runs.chain(of_ground).filter(|&thing| !is_hidden(plan, thing)).collect()
    }

    /// Everything that the open page is about: what stands on the ground, what is on the fence, or the runs.
    pub(super) fn all_of_page(&self) -> Vec<Thing> {
        let plan = &self.plan;
        let shown = |thing: &Thing| !is_hidden(plan, *thing);
        match self.page {
            Page::Ground => standing(plan).filter(shown).collect(),
            Page::Power => {
                let run = self.run;
                let Some(stated) = plan.runs.get(run) else { return Vec::new() };
                stated
                    .lines()
                    .flat_map(|branch| {
                        let faults =
                            (0..stated.faults_on(branch).len()).map(move |fault| Thing::Fault { run, branch, fault });
                        let zones =
                            (0..stated.zones_on(branch).len()).map(move |zone| Thing::Zone { run, branch, zone });
                        faults.chain(zones)
                    })
                    .chain((0..workup::earth::places(stated).len()).map(|stake| Thing::EarthStake { run, stake }))
                    .chain(stated.energizer_at.iter().map(|_| Thing::Energizer { run }))
                    .collect()
            }
            _ => (0..plan.runs.len()).map(|run| Thing::Run { run }).filter(shown).collect(),
        }
    }
}
