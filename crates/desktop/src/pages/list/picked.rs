//! What is picked, under the rows: its name and its figures, to be typed.

use drawing::Thing;
use egui::{Id, Rect, ScrollArea, Ui, UiBuilder, vec2};
use plan::{Edit, Run};
use words::texts::Many as Text;
use workup::Lay;

use super::kept;
use crate::editor::hiding;
use crate::editor::{Editor, ManyMessage, Message};
use crate::field::{self, Label};
use crate::kit;
use crate::pages::coordinates::{self, Stands, Typed};
use crate::pages::{Desk, branches, gates, ground, power};
use crate::roster::{self, Item};
use crate::said::Said;
use crate::theme::{self, colour};

/// Most height of what can be said of what is picked; what is longer scrolls.
pub(super) const PICKED: f32 = 232.0;

/// The field in which a thing is named; `None` where it has no name of its own.
pub(super) fn name_field(thing: Thing) -> Option<Id> {
    Some(match thing {
        Thing::KeepOut { keep_out } => Id::unique(("keep-out fields", keep_out)).with("name"),
        Thing::Hazard { hazard } => Id::unique(("hazard fields", hazard)).with("name"),
        Thing::Coop { coop } => ground::coops::name_id(coop),
        Thing::TapePoint { point } => ground::taping::name_id(point),
        Thing::Damp { damp } => Id::unique(("damp fields", damp)).with("name"),
        Thing::Wall { wall } => ground::features::wall_name(wall),
        Thing::Shade { shade } => ground::features::shade_name(shade),
        Thing::Run { .. } | Thing::Label { .. } => kept().with(("name", thing)),
        _ => return None,
    })
}

/// What is picked: its name and its figures, to be typed; how high all of it is.
pub(super) fn picked(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) -> f32 {
    let (words, p) = (editor.words(), editor.theme().palette());
    let mut inside = ui.new_child(UiBuilder::new().id_salt("picked in the list").max_rect(rect));
    let mut desk = Desk { editor, said, words, p, sections: Vec::new() };
    let Some(thing) = editor.picked() else {
        inside.add_space(10.0);
        kit::prose(&mut inside, words.text(Text::Keys), theme::regular(11.0), colour(p.ink2));
        return inside.min_rect().height() + 10.0;
    };
    let output = ScrollArea::vertical().id_salt(("picked", thing)).auto_shrink(false).show(&mut inside, |ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 0.0);
        ui.add_space(10.0);
        let full = roster::full_name(editor, Item::Thing(thing));
        let figures = roster::figures(editor, Item::Thing(thing));
        kit::prose(ui, &full, theme::semi_bold(13.0), colour(p.ink));
        if !figures.is_empty() {
            kit::prose(ui, &figures, theme::regular(12.0), colour(p.ink2));
        }
        ui.add_space(6.0);
        fields(ui, &mut desk, thing, &full);
        ui.add_space(6.0);
        kit::prose(ui, words.text(Text::Keys), theme::regular(11.0), colour(p.ink2));
        ui.add_space(10.0);
    });
    output.content_size.y
}

fn fields(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, name: &str) {
    let (words, p, plan) = (desk.words, desk.p, desk.editor.plan());
    if let Some((shape, corner)) = crate::editor::corner_of(plan, thing) {
        let at = plan.outline(&shape).and_then(|outline| outline.get(corner)).copied();
        let id = kept().with(("corner", &shape, corner));
        let to = at.and_then(|at| coordinates::fields(ui, desk, id, name, Stands::Always(at)));
        if let Some(to) = to.and_then(Typed::place) {
            desk.said.say(Message::Make(Edit::MoveCorner { shape, corner, to }));
        }
        return;
    }
    match thing {
        Thing::Run { .. } | Thing::Label { .. } => {
            let (Some(stated), Some(id)) = (hiding::name_of(plan, thing), name_field(thing)) else { return };
            let said = words.say(Text::NameOf, &[("thing", name)]);
            let label = Label { shown: words.text(Text::Name), said: &said };
            let read = |text: &str| Ok::<_, String>(text.to_owned());
            if let Some(name) = field::text(ui, p, id, label, stated, read) {
                desk.said.say(Message::Many(ManyMessage::Rename(thing, name)));
            }
            place(ui, desk, thing, name);
        }
        Thing::Energizer { run } => power::energizer::fields(ui, desk, run, name),
        Thing::Fault { .. } | Thing::Zone { .. } | Thing::ZoneEnd { .. } => power::faults::fields(ui, desk, thing),
        Thing::Branch { branch, .. } => on_run(desk, |run, lay, desk| branches::fields(ui, desk, run, lay, branch)),
        Thing::Gate { gate, .. } => on_run(desk, |run, lay, desk| gates::fields(ui, desk, run, lay, gate)),
        _ => {
            ground::lead::fields(ui, desk, thing);
            place(ui, desk, thing, name);
        }
    }
}

/// Where a thing stands that is one place, and how high that is.
fn place(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, name: &str) {
    let is_place = matches!(
        thing,
        Thing::Gateway
            | Thing::Height { .. }
            | Thing::Label { .. }
            | Thing::Drop { .. }
            | Thing::Feed { .. }
            | Thing::EarthStake { .. }
    );
    let Some(at) = roster::at(desk.editor, Item::Thing(thing)).filter(|_| is_place) else { return };
    let id = kept().with(("place", thing));
    if let Some(to) = coordinates::fields(ui, desk, id, name, Stands::Always(at)).and_then(Typed::place) {
        desk.said.say(Message::PutAt(thing, to));
    }
    if let Thing::Height { height } = thing {
        ground::heights::spot(ui, desk, height);
    }
}

/// Fields of something on the run in hand, where that is laid.
fn on_run(desk: &mut Desk<'_>, fields: impl FnOnce(&Run, &Lay, &mut Desk<'_>)) {
    let editor = desk.editor;
    if let Some((run, worked)) = editor.run()
        && let Some(lay) = &worked.lay
    {
        fields(run, lay, desk);
    }
}
