//! Walls, shade and the keeper's words on the ground page: drawn, listed, named, described.

use care::names::{self, Named};
use drawing::Thing;
use egui::{Align2, Id, Ui, pos2};
use plan::{Edit, Label as Written, LabelSize, Shade, Wall, WallKind};
use words::texts::{About, Ground, Underlay as Text};

use super::fields::read_name;
use super::{Desk, tool};
use crate::editor::Message;
use crate::field::{self, Label};
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};
use crate::tool::Drawn;

/// The most letters of what is written on the map.
const LONGEST_LABEL: usize = 80;

/// The tools that draw them.
pub(super) fn tools(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    for (drawn, icon, text) in [
        (Drawn::Wall(WallKind::Wall), Icon::Wall, Text::DrawWall),
        (Drawn::Wall(WallKind::Hedge), Icon::Hedge, Text::DrawHedge),
        (Drawn::Wall(WallKind::Fence), Icon::Fence, Text::DrawFence),
        (Drawn::Shade, Icon::Shade, Text::DrawShade),
        (Drawn::Label, Icon::Letter, Text::WriteLabel),
    ] {
        tool(ui, desk, drawn, icon, words.text(text));
    }
}

/// Walls, hedges and permanent fences.
pub(super) fn walls(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    desk.section(ui, words.text(Text::Walls), "", About::Walls);
    let plan = editor.plan();
    if plan.walls.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoWalls));
        return;
    }
    kit::rule(ui, desk.p);
    for (index, wall) in plan.walls.iter().enumerate() {
        let name = names::listed(plan, words, Named::Wall(index));
        let holds = words.text(if wall.holds_birds() { Text::HoldsThem } else { Text::HoldsNone });
        let is_it = |thing: Option<Thing>| matches!(thing, Some(Thing::Wall { wall } | Thing::WallCorner { wall, .. }) if wall == index);
        row(ui, desk, ("wall row", index), Thing::Wall { wall: index }, &is_it, [&name, holds]);
    }
}

/// A row that picks its thing.
pub(super) fn row(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    id: (&str, usize),
    thing: Thing,
    is_it: &dyn Fn(Option<Thing>) -> bool,
    [left, right]: [&str; 2],
) {
    let (p, editor) = (desk.p, desk.editor);
    let picked = is_it(editor.picked());
    let label = format!("{left}: {right}");
    let (rect, response) = kit::row(ui, Id::unique(id), picked, is_it(editor.hovered()), &label, p);
    if response.hovered() {
        desk.said.hovered = desk.said.hovered.or(Some(thing));
    }
    if response.clicked() {
        desk.said.say(Message::Pick(Some(thing).filter(|_| !picked)));
    }
    let y = rect.center().y;
    let right = kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, right, theme::regular(13.0), colour(p.ink2));
    let room = right.left() - rect.left() - 12.0;
    let name = kit::shortened(ui, left, theme::regular(13.0), colour(p.ink), room);
    ui.painter().galley(pos2(rect.left(), y - name.size().y / 2.0), name, colour(p.ink));
}

fn said_of(desk: &Desk<'_>, field: &str, name: &str) -> String {
    desk.words.say(Text::FieldOf, &[("field", field), ("name", name)])
}

/// A field for a name; the new one.
pub(super) fn name_field(ui: &mut Ui, desk: &Desk<'_>, id: Id, stands: &str, name: &str) -> Option<String> {
    let shown = desk.words.text(Ground::Name);
    let said = said_of(desk, shown, name);
    field::text(ui, desk.p, id, Label { shown, said: &said }, stands, |text| Ok::<_, String>(read_name(text)))
}

fn yes_no(ui: &mut Ui, desk: &Desk<'_>, text: Text, name: &str, on: bool) -> Option<bool> {
    let words = desk.words;
    let options = [(true, words.text(Ground::Yes)), (false, words.text(Ground::No))];
    let (shown, said) = (words.text(text), said_of(desk, words.text(text), name));
    field::choice(ui, desk.p, Label { shown, said: &said }, &options, Some(on)).filter(|&now| now != on)
}

/// The field for a wall's name.
pub(in crate::pages) fn wall_name(index: usize) -> Id {
    Id::unique(("wall fields", index)).with("name")
}

/// The field for the name of shade.
pub(in crate::pages) fn shade_name(index: usize) -> Id {
    Id::unique(("shade name", index))
}

pub(super) fn wall_fields(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, wall: &Wall, name: &str) {
    let words = desk.words;
    let mut changed: Option<Wall> = None;
    if let Some(name) = name_field(ui, desk, wall_name(index), &wall.name, name) {
        changed = Some(Wall { name, ..wall.clone() });
    }
    let kinds = [
        (WallKind::Wall, words.text(Text::DrawWall)),
        (WallKind::Hedge, words.text(Text::DrawHedge)),
        (WallKind::Fence, words.text(Text::DrawFence)),
    ];
    let (shown, said) = (words.text(Text::Kind), said_of(desk, words.text(Text::Kind), name));
    if let Some(kind) = field::choice(ui, desk.p, Label { shown, said: &said }, &kinds, Some(wall.kind())) {
        changed = Some(Wall { kind: Some(kind), ..wall.clone() });
    }
    if let Some(holds) = yes_no(ui, desk, Text::HoldsBirds, name, wall.holds_birds()) {
        changed = Some(Wall { holds_birds: Some(holds), ..wall.clone() });
    }
    if let Some(stops) = yes_no(ui, desk, Text::StopsFoxes, name, wall.stops_foxes.unwrap_or(false)) {
        changed = Some(Wall { stops_foxes: Some(stops), ..wall.clone() });
    }
    if let Some(changed) = changed {
        let mut walls = desk.editor.plan().walls.clone();
        walls[index] = changed;
        desk.said.say(Message::Make(Edit::SetWalls { walls }));
    }
}

/// Trees and roofs.
pub(super) fn shade(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    desk.section(ui, words.text(Text::Shade), "", About::Shade);
    let all = &editor.plan().ground.shade;
    if all.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoShade));
        return;
    }
    kit::rule(ui, desk.p);
    for (index, one) in all.iter().enumerate() {
        let name = names::listed(editor.plan(), words, Named::Shade(index));
        let is_it = |thing: Option<Thing>| {
            matches!(
                thing,
                Some(Thing::Shade { shade } | Thing::ShadeCorner { shade, .. } | Thing::ShadeSide { shade, .. })
                    if shade == index
            )
        };
        let area = words.area(area_m2(&one.outline));
        row(ui, desk, ("shade row", index), Thing::Shade { shade: index }, &is_it, [&name, &area]);
    }
}

pub(super) fn shade_fields(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, name: &str) {
    let all = &desk.editor.plan().ground.shade;
    let one = &all[index];
    if let Some(name) = name_field(ui, desk, shade_name(index), &one.name, name) {
        let mut shade = all.clone();
        shade[index] = Shade { name, ..one.clone() };
        desk.said.say(Message::Make(Edit::SetShade { shade }));
    }
}

/// Ground of an outline, square metres.
fn area_m2(outline: &[plan::Point]) -> f64 {
    drawing::map::area_m2(outline)
}

/// The keeper's words on the map.
pub(super) fn labels(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    desk.section(ui, words.text(Text::Labels), "", None);
    let all = &editor.plan().labels;
    if all.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoLabels));
        return;
    }
    kit::rule(ui, desk.p);
    for (index, one) in all.iter().enumerate() {
        let size = words.text(if one.size() == LabelSize::Large { Text::Large } else { Text::Small });
        let is_it = |thing: Option<Thing>| thing == Some(Thing::Label { label: index });
        row(ui, desk, ("label row", index), Thing::Label { label: index }, &is_it, [&one.text, size]);
    }
}

/// The field for the words of a label.
pub(super) fn label_field(index: usize) -> Id {
    Id::unique(("label fields", index))
}

pub(super) fn label_fields(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, one: &Written) {
    let words = desk.words;
    let id = label_field(index);
    let mut changed: Option<Written> = None;
    let (shown, said) = (words.text(Text::LabelText), said_of(desk, words.text(Text::LabelText), &one.text));
    let read = |text: &str| Ok::<String, String>(text.trim().chars().take(LONGEST_LABEL).collect());
    if let Some(text) = field::text(ui, desk.p, id, Label { shown, said: &said }, &one.text, read) {
        changed = Some(Written { text, ..one.clone() });
    }
    let sizes = [(LabelSize::Small, words.text(Text::Small)), (LabelSize::Large, words.text(Text::Large))];
    let (shown, said) = (words.text(Text::LabelSize), said_of(desk, words.text(Text::LabelSize), &one.text));
    if let Some(size) = field::choice(ui, desk.p, Label { shown, said: &said }, &sizes, Some(one.size())) {
        changed = Some(Written { size: Some(size), ..one.clone() });
    }
    if let Some(changed) = changed {
        let mut labels = desk.editor.plan().labels.clone();
        // Emptied words are none.
        if changed.text.is_empty() {
            labels.remove(index);
        } else {
            labels[index] = changed;
        }
        desk.said.say(Message::Make(Edit::SetLabels { labels }));
    }
}
