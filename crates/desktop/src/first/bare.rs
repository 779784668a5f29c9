//! What the map of an empty plan says: how many rolls, and the other ways in. It is no question that waits for an answer:
//! the map beneath is drawn on as any, and with the first thing on it, or a tool in the hand, it is gone.

use drawing::Thing;
use egui::{Rect, Role, Shape, Ui, UiBuilder, Vec2, vec2};
use words::texts::Rolls as Text;

use super::other_ways;
use crate::asking::Ask;
use crate::editor::Editor;
use crate::icons::Icon;
use crate::kit;
use crate::roster::{self, Item};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::tool::Tool;

/// Size of what is said, points.
const BLOCK: Vec2 = vec2(470.0, 96.0);

/// Says it, in the middle of the map.
pub(crate) fn bare(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    if editor.question().is_some() || *editor.tool() != Tool::Pick || !is_bare(editor) {
        return;
    }
    let (words, p) = (editor.words(), editor.theme().palette());
    let block = Rect::from_center_size(rect.center(), BLOCK.min(rect.size() - Vec2::splat(24.0)));
    // No cross of the bare ground stands in the words, however many lines they take.
    let ground = ui.painter().add(Shape::Noop);
    let mut inside = ui.new_child(UiBuilder::new().id_salt("bare plan").max_rect(block));
    inside.spacing_mut().item_spacing = vec2(8.0, 0.0);
    let head = kit::prose(&mut inside, words.text(Text::BareHead), theme::semi_bold(16.0), colour(p.ink));
    head.widget_info(|| egui::WidgetInfo::labeled(Role::Heading, true, words.text(Text::BareHead)));
    inside.add_space(12.0);
    if kit::button(&mut inside, Icon::Coil, words.text(Text::StartOwn), true, p).clicked() {
        said.ask(Ask::NewFromRolls);
    }
    inside.add_space(14.0);
    let below = Rect::from_min_max(inside.cursor().min, block.max);
    let ways = other_ways(ui, below, editor, said);
    let around = inside.min_rect().union(ways).expand(14.0);
    ui.painter().set(ground, Shape::rect_filled(around, 2.0, colour(p.paper)));
}

/// Whether nothing lies on the ground, stands in a run or is a net of the store.
fn is_bare(editor: &Editor) -> bool {
    let is_told = |item| matches!(item, Item::Head(_) | Item::Thing(Thing::Finding { .. }));
    let plan = editor.plan();
    plan.store.nets.is_empty()
        && plan.runs.is_empty()
        && roster::entries(editor, false).iter().all(|entry| is_told(entry.item))
}
