//! Where on its page a finding is mended: the row, the field or the section that comes into sight.

use care::{Finding, Subject};
use drawing::Thing;
use egui::{Context, Id};
use plan::Shape;
use words::texts::{Bracing, Compare, Damp, Faults, Gates, Power, Shape as Table, Slope, Store, Window as Text};
use words::{Message, Words};

use super::steady::Mark;
use super::{bracing, gates, sides, store};
use crate::editor::{Editor, Page, leads, page_of_finding};
use crate::facts;

/// Where a finding is mended on its page; what is folded there is unfolded. `None` where nothing on a page mends it: then
/// its own sentence is what there is to see.
pub(super) fn mark(ctx: &Context, editor: &Editor, run: Option<usize>, found: &Finding) -> Option<Mark> {
    if !leads(found) {
        return None;
    }
    let at = At { ctx, editor, words: editor.words(), run };
    let page = page_of_finding(found, run.is_none());
    Some(match (found.id, &found.subject) {
        ("corner-between-posts", &Subject::Corner(corner)) => at.between_posts(corner),
        (_, &Subject::Corner(corner)) => at.brace(corner),
        (_, &Subject::Gate(gate)) => first([Mark::Row(gates::gate_row(gate)), at.section(Gates::Gates)]),
        (_, &Subject::Pin(pin)) => first([Mark::Row(gates::pin_row(pin)), at.section(Gates::Pins)]),
        (_, Subject::Net(net)) => at.net(net),
        (_, Subject::Unit(unit)) => at.energizer(unit),
        (_, &Subject::Fault(branch, fault)) => at.row(|run| Thing::Fault { run, branch, fault }, Faults::Try),
        (_, &Subject::Zone(branch, zone)) => at.row(|run| Thing::Zone { run, branch, zone }, Faults::Try),
        (_, &Subject::Branch(branch)) => at.row(|run| Thing::Branch { run, branch }, Power::Branches),
        (_, Subject::Energizer | Subject::Feed) => at.section(Damp::WhereItStands),
        ("earth-lead-short", _) => at.earth_field(store::earth::LEAD_FIELD),
        ("earth-stake-weak", _) => at.earth_field(store::earth::LENGTH_FIELD),
        (_, &Subject::EarthStake(stake)) => at.stake(stake),
        (_, Subject::Outline(Shape::Run(id), corner)) => at.corner_of_run(id, corner.unwrap_or(0)),
        ("bad-value", Subject::Figure(key)) => at.figure(key),
        // What is picked leads the page about the ground, whose tools are at its head.
        (_, Subject::Outline(..) | Subject::Coop(_) | Subject::Gateway) => Mark::Top,
        (id, _) => at.section_of(id, page),
    })
}

/// The first of several that is on the page.
fn first<const COUNT: usize>(marks: [Mark; COUNT]) -> Mark {
    Mark::First(marks.into())
}

#[derive(Clone, Copy)]
struct At<'a> {
    ctx: &'a Context,
    editor: &'a Editor,
    words: Words,
    run: Option<usize>,
}

impl At<'_> {
    fn section(self, head: impl Message) -> Mark {
        Mark::Section(self.words.text(head).to_owned())
    }

    /// Findings of a page that are about no one thing, by their sections.
    fn section_of(self, id: &str, page: Page) -> Mark {
        match id {
            "no-nets" | "net-too-short" | "too-many-posts" | "chain-too-long" => self.section(Store::YourNets),
            "bend-leans" => self.section(Text::Corners),
            "posts-go-over" => self.section(Bracing::Wind),
            "gate-no-join" => self.section(Gates::Gates),
            "dip-under-net" | "ridge-under-net" => first([self.section(Slope::DipsHead), self.section(Slope::Head)]),
            "slope-steep" | "sides-do-not-close" => self.section(Slope::Head),
            "no-strip" => first([self.section(Text::StripToMow), self.section(Store::Mower)]),
            "two-fences-near" | "runs-overlap" => match self.run.and_then(|run| self.editor.plan().runs.get(run)) {
                Some(run) => self.corner_of_run(&run.id, 0),
                None => Mark::Top,
            },
            "birds-rule" => self.section(Compare::BirdsHead),
            "weak-post" | "leakage-zero" | "leakage-enormous" => self.section(Text::GrassOnTheNet),
            "no-energizer" => self.section(Store::Energizer),
            "resistivity-odd" => self.section(Power::SoilSlider),
            "foreign-earth-near" | "foreign-earth-unchecked" | "earths-near" | "earth-damper-near" => {
                self.section(Text::Earth)
            }
            id if id.starts_with("earth-stake") => self.section(Text::Earth),
            "two-soils" | "soil-refuses" | "no-such-class" | "seen-nowhere" | "corners-contradict" => {
                self.section(Text::SoilHead)
            }
            id if page == Page::Ground && id.starts_with("height") => self.section(Slope::HeightsHead),
            // The fit to the nets, the tools of the ground, what is read next: they stand at the head.
            _ => Mark::Top,
        }
    }

    /// The brace of a corner among what holds them; where nothing can be set there, the corner.
    fn brace(self, corner: usize) -> Mark {
        first([Mark::Row(bracing::mend_row(corner)), self.section(Bracing::Mends), self.section(Text::Corners)])
    }

    /// The way to a post of a corner between two.
    fn between_posts(self, corner: usize) -> Mark {
        let vertex = || {
            let run = self.run?;
            let lay = self.editor.workup().runs.get(run)?.lay.as_ref()?;
            facts::stated_vertex(self.editor.plan().runs.get(run)?, lay.corners.get(corner)?)
        };
        let way = vertex().map(|vertex| Mark::Row(gates::way_to_post(vertex)));
        Mark::First(way.into_iter().chain([self.section(Text::Corners)]).collect())
    }

    /// The row of what belongs to the run, else the section that lists its like.
    fn row(self, of: impl Fn(usize) -> Thing, head: impl Message) -> Mark {
        let row = self.run.map(|run| Mark::Row(super::row_id(of(run))));
        Mark::First(row.into_iter().chain([self.section(head)]).collect())
    }

    fn stake(self, stake: usize) -> Mark {
        let row = self.run.map(|run| Mark::Row(store::earth::row_id(Thing::EarthStake { run, stake })));
        Mark::First(row.into_iter().chain([self.section(Text::Earth)]).collect())
    }

    fn earth_field(self, field: Store) -> Mark {
        let run = self.run.and_then(|run| self.editor.plan().runs.get(run));
        let id = run.map(|run| Mark::Row(store::earth::field_id(&run.id, self.words.text(field))));
        Mark::First(id.into_iter().chain([self.section(Text::Earth)]).collect())
    }

    /// A corner in the table of the run's sides and corners; a traced line has none.
    fn corner_of_run(self, id: &str, corner: usize) -> Mark {
        let corner = Mark::Row(sides::corner_id(&Shape::Run(id.to_owned()), corner));
        first([corner, self.section(Table::Table), Mark::Top])
    }

    /// A net of the store, unfolded.
    fn net(self, net: &str) -> Mark {
        store::unfold_net(self.ctx, net);
        first([Mark::Row(store::net_row(net)), self.section(Store::YourNets)])
    }

    /// An energizer of the store, unfolded.
    fn energizer(self, unit: &str) -> Mark {
        store::unfold_energizer(self.ctx, unit);
        first([Mark::Row(store::energizer_row(unit)), self.section(Store::Energizer)])
    }

    /// A figure by its key in the file.
    fn figure(self, key: &str) -> Mark {
        let store = &self.editor.plan().store;
        let number = |list: &str| -> Option<usize> { key.strip_prefix(list)?.split_once(']')?.0.parse().ok() };
        if let Some(net) = number("store.nets[").and_then(|net| store.nets.get(net)) {
            return self.net(&net.id);
        }
        if let Some(unit) = number("store.energizers[").and_then(|unit| store.energizers.get(unit)) {
            return self.energizer(&unit.id);
        }
        let own = key.strip_prefix("runs[").and_then(|rest| rest.split_once("].")).map_or(key, |(_, name)| name);
        let sections: [(&str, Mark); 16] = [
            ("store.brace", self.section(Store::Braces)),
            ("store.mower", self.section(Store::Mower)),
            ("store.rates", self.section(Store::Hands)),
            ("store.earth_stake", self.section(Text::Earth)),
            ("ground.wind", self.section(Bracing::Wind)),
            ("ground.fouled", self.section(Bracing::Wind)),
            ("ground.soil.resistivity", self.section(Power::SoilSlider)),
            ("ground.soil", self.section(Text::SoilHead)),
            ("height", self.section(Slope::HeightsHead)),
            ("ground.height_grid", self.section(Slope::HeightsHead)),
            ("earth", self.section(Text::Earth)),
            ("energizer", self.section(Damp::WhereItStands)),
            ("strip", first([self.section(Text::StripToMow), self.section(Store::Mower)])),
            ("gates", self.section(Gates::Gates)),
            ("gap_under", self.section(Slope::Head)),
            ("side_slopes", self.section(Slope::Head)),
        ];
        let more = [
            ("braces", self.section(Bracing::Mends)),
            ("leakage_s", self.section(Text::GrassOnTheNet)),
            ("leakage", self.section(Faults::Try)),
            ("faults", self.section(Faults::Try)),
            ("join", self.section(Faults::Fence)),
            ("lead", self.section(Faults::Fence)),
        ];
        let mut all = sections.into_iter().chain(more);
        let found = all.find(|(with, _)| own.starts_with(with)).map(|(_, mark)| mark);
        let on_branch = || own.starts_with("branches[").then(|| self.section(Faults::Try));
        found.or_else(on_branch).unwrap_or(Mark::Top)
    }
}

/// The id of the sentence of a finding on its page.
pub(super) fn sentence(thing: Thing) -> Mark {
    Mark::Widget(sentence_id(thing))
}

pub(super) fn sentence_id(thing: Thing) -> Id {
    Id::unique(("finding", thing))
}
