//! Where what was found is mended: its page, and what is taken in hand there. Where on the page that stands is a matter of
//! the pages.

use care::{Finding, Subject};
use drawing::Thing;
use plan::Shape;

use super::{Editor, ManyMessage, Message, ShapesMessage, page_of_finding};

impl Editor {
    /// Every finding that is open. Of runs that are past nothing is left to be mended, unless one of them is in hand.
    pub(crate) fn open_findings(&self) -> impl Iterator<Item = (Thing, &Finding)> {
        let found = self.findings();
        let told = |run: usize| {
            let past = self.plan().runs.get(run).is_some_and(|run| run.status == plan::RunStatus::Past);
            !past || run == self.run_index()
        };
        let of_runs =
            found.runs.iter().enumerate().filter(move |(run, _)| told(*run)).map(|(run, list)| (Some(run), list));
        let of_plan = std::iter::once((None, &found.plan));
        of_runs.chain(of_plan).flat_map(|(run, list)| {
            list.iter().enumerate().map(move |(finding, one)| (Thing::Finding { run, finding }, one))
        })
    }

    /// The same, the gravest first and of like weight those of the run in hand first.
    pub(crate) fn findings_by_weight(&self) -> Vec<(Thing, &Finding)> {
        let elsewhere = |thing: Thing| match thing.run() {
            Some(run) if run == self.run_index() => 0,
            None => 1,
            Some(_) => 2,
        };
        let mut all: Vec<_> = self.open_findings().collect();
        all.sort_by_key(|&(thing, one)| (std::cmp::Reverse(one.severity), elsewhere(thing)));
        all
    }

    /// Leads to where a finding is mended; its sentence stays in sight until something else is done.
    pub(super) fn mend(&mut self, finding: Thing) {
        let Thing::Finding { run, finding: place } = finding else { return };
        let Some(found) = self.finding(run, place).cloned() else { return };
        self.receive(Message::Open(page_of_finding(&found, run.is_none())));
        if !leads(&found) {
            return self.take_up(Some(finding));
        }
        let is_comparing = self.shapes().is_open();
        match found.id {
            // How birds are counted is asked where shapes are compared.
            "birds-rule" if !is_comparing => self.receive(Message::Shapes(ShapesMessage::Open(true))),
            "birds-rule" => {}
            _ if is_comparing => self.receive(Message::Shapes(ShapesMessage::Open(false))),
            // What is hidden is shown again where everything is listed.
            "hidden-on-map" => self.receive(Message::Many(ManyMessage::List(true))),
            _ => {}
        }
        let picked = self.taken_in_hand(run, &found);
        // A page of its own would open for the thing: the finding's counts.
        self.take_up(picked);
        if let Some(run) = run {
            self.run = run;
        }
        self.led = Some(found.message);
    }

    /// What of the map is picked to mend a finding.
    fn taken_in_hand(&self, run: Option<usize>, found: &Finding) -> Option<Thing> {
        let plan = self.plan();
        let by_id = |id: &str| plan.runs.iter().position(|run| run.id == id);
        let of_run = || run.map(|run| Thing::Run { run });
        let ground = |whole: Thing, corner: Option<usize>, of: &dyn Fn(usize) -> Thing| {
            Some(corner.map_or(whole, of)).filter(|&thing| self.exists(thing)).or(Some(whole))
        };
        let thing = match &found.subject {
            Subject::Whole | Subject::Unit(_) | Subject::Net(_) => of_run(),
            Subject::Outline(shape, corner) => match *shape {
                Shape::Boundary => ground(Thing::Boundary, *corner, &|vertex| Thing::BoundaryCorner { vertex }),
                Shape::KeepOut(keep_out) => {
                    ground(Thing::KeepOut { keep_out }, *corner, &|vertex| Thing::KeepOutCorner { keep_out, vertex })
                }
                Shape::Hazard(hazard) => {
                    ground(Thing::Hazard { hazard }, *corner, &|vertex| Thing::HazardCorner { hazard, vertex })
                }
                Shape::Wall(wall) => {
                    ground(Thing::Wall { wall }, *corner, &|vertex| Thing::WallCorner { wall, vertex })
                }
                Shape::Shade(shade) => {
                    ground(Thing::Shade { shade }, *corner, &|vertex| Thing::ShadeCorner { shade, vertex })
                }
                Shape::Damp(damp) => {
                    ground(Thing::Damp { damp }, *corner, &|vertex| Thing::DampCorner { damp, vertex })
                }
                Shape::Run(ref id) => by_id(id)
                    .and_then(|run| ground(Thing::Run { run }, *corner, &|vertex| Thing::RunCorner { run, vertex })),
                Shape::Branch(ref id, branch) => by_id(id).and_then(|run| {
                    ground(Thing::Branch { run, branch }, *corner, &|vertex| Thing::BranchCorner {
                        run,
                        branch,
                        vertex,
                    })
                }),
            },
            Subject::Figure(key) => of_key(key).or_else(of_run),
            &Subject::Coop(coop) => Some(Thing::Coop { coop }),
            Subject::Gateway => Some(Thing::Gateway),
            _ => run.and_then(|run| self.of_run_in_hand(run, &found.subject)),
        };
        thing.filter(|&thing| self.exists(thing) || matches!(thing, Thing::Post { .. })).or_else(of_run)
    }

    /// A part of a run, as the map knows it.
    fn of_run_in_hand(&self, run: usize, subject: &Subject) -> Option<Thing> {
        Some(match *subject {
            Subject::Corner(corner) => {
                let at = self.workup().runs.get(run)?.lay.as_ref()?.corners.get(corner)?;
                let vertex = crate::facts::stated_vertex(self.plan().runs.get(run)?, at);
                match vertex.filter(|_| !at.end) {
                    Some(vertex) => Thing::RunCorner { run, vertex },
                    None => Thing::Brace { run, corner },
                }
            }
            Subject::Branch(branch) => Thing::Branch { run, branch },
            Subject::Post(post) => Thing::Post { run, post },
            Subject::Gate(gate) => Thing::Gate { run, gate },
            Subject::Pin(pin) => Thing::Pin { run, pin },
            Subject::Fault(branch, fault) => Thing::Fault { run, branch, fault },
            Subject::Zone(branch, zone) => Thing::Zone { run, branch, zone },
            Subject::EarthStake(stake) => Thing::EarthStake { run, stake },
            Subject::Energizer => Thing::Energizer { run },
            Subject::Feed => Thing::Feed { run },
            _ => return None,
        })
    }
}

/// Whether something in the window mends it: not what is said of every plan, what is mended in the file, or by a hand that
/// switches the power off.
pub(crate) fn leads(found: &Finding) -> bool {
    !matches!(found.id, "buried-services" | "local-codes-first" | "gate-power-off" | "unknown-key")
}

/// What a figure of the ground belongs to, by its key.
fn of_key(key: &str) -> Option<Thing> {
    let number = |list: &str| key.strip_prefix(list)?.split_once(']')?.0.parse().ok();
    if let Some(keep_out) = number("ground.keep_outs[") {
        return Some(Thing::KeepOut { keep_out });
    }
    if let Some(hazard) = number("ground.hazards[") {
        return Some(Thing::Hazard { hazard });
    }
    if let Some(damp) = number("ground.damp[") {
        return Some(Thing::Damp { damp });
    }
    if let Some(height) = number("heights[") {
        return Some(Thing::Height { height });
    }
    key.starts_with("coop.").then_some(Thing::Coop { coop: 0 })
}

#[cfg(test)]
mod tests {
    use drawing::Thing;

    use super::of_key;

    #[test]
    fn a_figure_of_the_ground_belongs_to_what_its_key_names() {
        assert_eq!(of_key("ground.keep_outs[2].clearance_m"), Some(Thing::KeepOut { keep_out: 2 }));
        assert_eq!(of_key("heights[0].up_m"), Some(Thing::Height { height: 0 }));
        assert_eq!(of_key("coop.width_m"), Some(Thing::Coop { coop: 0 }));
        assert_eq!(of_key("store.nets[0].length_m"), None);
    }
}
