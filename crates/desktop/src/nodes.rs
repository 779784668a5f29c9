//! A named node for everything on the canvas: what a screen reader reads and Tab walks, with its figures as its value.
//!
//! Runs come first, each before its parts, then what stands on the ground. Of much more than a few hundred in view only
//! the run in hand tells its parts; the list of everything is the way to the rest.

use care::names::{self, Named};
use drawing::Thing;
use egui::{EventFilter, Id, Key, Modifiers, Pos2, Rect, Role, Sense, Ui, Vec2, WidgetInfo};
use plan::{LeakageZone, Point};
use words::texts::{Damp, Earth, Faults, Many as Text, Power, Underlay, Window};

use crate::editor::hiding::is_hidden;
use crate::editor::{Editor, Message, Page};
use crate::roster::{self, Item};
use crate::said::Said;

/// Most nodes of a frame.
const MOST: usize = 400;
/// Side of a node, pixels.
const SIDE_PX: f32 = 18.0;

/// The node of a thing that can be picked.
pub(crate) fn id(thing: Thing) -> Id {
    Id::unique(("corner", thing))
}

/// The nodes of a frame.
struct Nodes<'a, 'b, S> {
    ui: &'a mut Ui,
    rect: Rect,
    editor: &'a Editor,
    on_sheet: &'a S,
    said: &'b mut Said,
    left: usize,
}

impl<S: Fn(Point) -> Pos2> Nodes<'_, '_, S> {
    /// A node that can be picked by the keyboard.
    fn thing(&mut self, thing: Thing, at: Point, label: impl Fn() -> String) {
        let spot = (self.on_sheet)(at);
        let picked = self.editor.picked() == Some(thing);
        if self.left == 0 || !self.rect.contains(spot) || self.waits(thing) {
            return;
        }
        self.left -= 1;
        let id = id(thing);
        let place = Rect::from_center_size(spot, Vec2::splat(SIDE_PX));
        let response = self.ui.interact(place, id, Sense::focusable_noninteractive());
        let editor = self.editor;
        response.widget_info(|| {
            let figures = roster::figures(editor, Item::Thing(thing));
            let value = (!figures.is_empty()).then_some(figures);
            let chosen = picked || editor.chosen().contains(&thing);
            WidgetInfo { current_text_value: value, ..WidgetInfo::selected(Role::Button, true, chosen, label()) }
        });
        if response.gained_focus() && !picked {
            self.said.say(Message::Pick(Some(thing)));
        }
        if response.has_focus() && matches!(thing, Thing::Finding { .. }) {
            let leads = self.ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
            if leads {
                self.said.say(Message::Mend(thing));
            }
        }
        if response.has_focus() {
            let filter = EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
            self.ui.memory_mut(|memory| memory.set_focus_lock_filter(id, filter));
        }
    }

    /// Whether a thing has no node now: while a hand drags one, the others wait.
    fn waits(&self, thing: Thing) -> bool {
        self.editor.held_from().is_some() && self.editor.picked() != Some(thing)
    }

    /// A node that only tells.
    fn told(&mut self, item: Item) {
        let editor = self.editor;
        if self.left == 0 || editor.held_from().is_some() {
            return;
        }
        let Some(spot) = roster::at(editor, item).map(|at| (self.on_sheet)(at)) else { return };
        if !self.rect.contains(spot) {
            return;
        }
        self.left -= 1;
        let place = Rect::from_center_size(spot, Vec2::splat(SIDE_PX));
        let response = self.ui.interact(place, Id::unique(("told on the map", item)), Sense::hover());
        response.widget_info(|| {
            let (name, figures) = (roster::full_name(editor, item), roster::figures(editor, item));
            let places = [("thing", name.as_str()), ("figures", figures.as_str())];
            let label = if figures.is_empty() { name.clone() } else { editor.words().say(Text::Figures, &places) };
            WidgetInfo::labeled(Role::Label, true, label)
        });
    }

    /// A node of a sign that is nothing to pick.
    fn sign(&mut self, id: Id, at: Point, label: impl Fn() -> String) {
        let spot = (self.on_sheet)(at);
        if self.left == 0 || self.editor.held_from().is_some() || !self.rect.contains(spot) {
            return;
        }
        self.left -= 1;
        let response = self.ui.interact(Rect::from_center_size(spot, Vec2::splat(SIDE_PX)), id, Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, label()));
    }

    /// A node by the name of its entry; a whole is called as it is on the map, apart from its row beside it.
    fn named(&mut self, thing: Thing) {
        let editor = self.editor;
        if self.left == 0 || self.waits(thing) {
            return;
        }
        let Some(at) = roster::at(editor, Item::Thing(thing)) else { return };
        self.thing(thing, at, || {
            let name = roster::full_name(editor, Item::Thing(thing));
            editor.words().say(Text::OnMap, &[("thing", &name)])
        });
    }
}

/// Puts the nodes of what is in view down.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, on_sheet: &impl Fn(Point) -> Pos2, said: &mut Said) {
    let mut nodes = Nodes { ui, rect, editor, on_sheet, said, left: MOST };
    let (plan, worked) = (editor.plan(), &editor.workup().runs);
    let parts = |run: usize| {
        let lay = worked.get(run).and_then(|worked| worked.lay.as_ref());
        plan.runs[run].outline.len() + lay.map_or(0, |lay| lay.nets.len() + lay.corners.len())
    };
    let told: usize = (0..plan.runs.len()).map(|run| 1 + parts(run)).sum();
    for run in 0..plan.runs.len() {
        if plan.runs[run].hidden {
            continue;
        }
        nodes.named(Thing::Run { run });
        // What is dragged belongs to the run in hand, if it belongs to one.
        let alone = told > MOST || editor.held_from().is_some();
        if !alone || run == editor.run_index() {
            of_run(&mut nodes, run);
        }
    }
    let shown = |thing: &Thing| !is_hidden(plan, *thing);
    let coops = (0..plan.coop.iter().chain(&plan.other_coops).count()).map(|coop| Thing::Coop { coop });
    let keep_outs = (0..plan.ground.keep_outs.len()).map(|keep_out| Thing::KeepOut { keep_out });
    let hazards = (0..plan.ground.hazards.len()).map(|hazard| Thing::Hazard { hazard });
    let walls = (0..plan.walls.len()).map(|wall| Thing::Wall { wall });
    let shade = (0..plan.ground.shade.len()).map(|shade| Thing::Shade { shade });
    let damp = (0..plan.ground.damp.len()).map(|damp| Thing::Damp { damp });
    let heights = (0..plan.heights.len()).map(|height| Thing::Height { height });
    let points = (0..plan.tape_points.len()).map(|point| Thing::TapePoint { point });
    let gateway = plan.ground.gateway.iter().map(|_| Thing::Gateway);
    let outlines = coops.chain(keep_outs).chain(hazards).chain(walls).chain(shade).chain(damp);
    for thing in outlines.filter(shown).chain(heights).chain(points).chain(gateway) {
        nodes.named(thing);
    }
    for (label, stated) in plan.labels.iter().enumerate().filter(|(_, stated)| !stated.hidden) {
        let said = || editor.words().say(Underlay::LabelNode, &[("text", &stated.text)]);
        nodes.thing(Thing::Label { label }, stated.at, said);
    }
    if !plan.ground.boundary_hidden {
        nodes.named(Thing::Boundary);
    }
    if editor.page() == Page::Ground {
        ground(&mut nodes);
        features(&mut nodes);
    }
    findings(&mut nodes);
}

/// A run's corners, nets and braces, its gates and branches, its power, its faults and its grass.
fn of_run<S: Fn(Point) -> Pos2>(nodes: &mut Nodes<'_, '_, S>, run: usize) {
    let (editor, words) = (nodes.editor, nodes.editor.words());
    let stated = &editor.plan().runs[run];
    let name = care::run_name(stated);
    let in_hand = editor.page() == Page::Power && run == editor.run_index();
    for entry in roster::parts(editor, run) {
        match entry.item {
            Item::Thing(thing @ Thing::RunCorner { vertex, .. }) => {
                let Some(&at) = stated.outline.get(vertex) else { continue };
                let number = (vertex + 1).to_string();
                nodes.thing(thing, at, || words.say(Window::CornerOfRun, &[("number", &number), ("run", name)]));
            }
            Item::Thing(thing @ Thing::BranchCorner { branch, vertex, .. }) => {
                let Some(&at) = stated.branches.get(branch).and_then(|branch| branch.outline.get(vertex)) else {
                    continue;
                };
                let (corner, branch) = ((vertex + 1).to_string(), (branch + 1).to_string());
                let places = [("number", corner.as_str()), ("branch", branch.as_str()), ("run", name)];
                let text = if vertex == 0 { Power::StartOfBranch } else { Power::CornerOfBranch };
                nodes.thing(thing, at, || words.say(text, &places));
            }
            Item::Thing(thing @ Thing::Drop { .. }) => {
                let Some(at) = stated.drop_at else { continue };
                nodes.thing(thing, at, || words.say(Underlay::DropNode, &[("run", name)]));
            }
            // What is tried and staked on the fence is told on the page that is about it.
            Item::Thing(thing @ Thing::EarthStake { stake, .. }) if in_hand => {
                let Some(&at) = workup::earth::places(stated).get(stake) else { continue };
                let number = (stake + 1).to_string();
                nodes.thing(thing, at, || words.say(Earth::StakeOf, &[("number", &number), ("run", name)]));
            }
            Item::Thing(Thing::Fault { branch, fault, .. }) if in_hand => {
                let Some((alone, lay)) = editor.on_line(run, branch) else { continue };
                let Some(stated) = alone.faults.get(fault) else { continue };
                let landed = workup::faults::land(&alone, &lay, stated.kind, stated.at);
                let at = landed.map_or(stated.at, |landing| landing.at);
                let label = || care::fault_said::name(&alone, &lay, branch, stated, words);
                nodes.thing(Thing::Fault { run, branch, fault }, at, label);
            }
            Item::Thing(Thing::Zone { branch, zone, .. }) if in_hand => {
                let Some((alone, lay)) = editor.on_line(run, branch) else { continue };
                if let Some(stated) = alone.leakage_zones.get(zone) {
                    zone_nodes(nodes, &lay, (run, branch, zone), stated);
                }
            }
            Item::Thing(Thing::EarthStake { .. } | Thing::Fault { .. } | Thing::Zone { .. }) | Item::Head(_) => {}
            Item::Thing(thing) => nodes.named(thing),
            item @ (Item::Net { .. } | Item::Brace { .. }) => nodes.told(item),
        }
    }
    if let Some(best) = editor.earth_suggested().filter(|_| in_hand) {
        let place = names::amid(editor.plan(), words, Named::Damp(best.damp));
        for (stake, &at) in best.places.iter().enumerate() {
            let number = (stake + 1).to_string();
            let places = [("number", number.as_str()), ("run", name), ("place", place.as_str())];
            nodes.sign(Id::unique(("suggested earth", stake)), at, || words.say(Damp::BestNode, &places));
        }
    }
}

/// The nodes of a stretch of grass: its start, its end, and all of it.
fn zone_nodes<S: Fn(Point) -> Pos2>(
    nodes: &mut Nodes<'_, '_, S>,
    lay: &workup::Lay,
    (run, branch, zone): (usize, Option<usize>, usize),
    stated: &LeakageZone,
) {
    let words = nodes.editor.words();
    let long_m = care::fault_said::zone_m(lay, stated);
    // One that lies nowhere on the line is drawn nowhere.
    if !(long_m > 0.0 && stated.from_m.is_finite()) {
        return;
    }
    if let Some(middle) = lay.place_at(stated.from_m + long_m / 2.0) {
        nodes.thing(Thing::Zone { run, branch, zone }, middle, || {
            let (name, length) = (care::fault_said::zone(stated, words), words.length(long_m));
            let ends = care::fault_said::zone_ends_within(lay, branch, stated, words);
            words.say(Faults::ZoneNode, &[("name", &name), ("length", &length), ("ends", &ends)])
        });
    }
    for (last, at_m) in [(false, stated.from_m), (true, stated.to_m)] {
        if let Some(at) = lay.place_at(at_m) {
            let label = || care::fault_said::zone_end(lay, branch, stated, last, words);
            nodes.thing(Thing::ZoneEnd { run, branch, zone, last }, at, label);
        }
    }
}

/// The paddock, its corners and those of keep-outs, which the page about the ground moves.
fn ground<S: Fn(Point) -> Pos2>(nodes: &mut Nodes<'_, '_, S>) {
    let (editor, words) = (nodes.editor, nodes.editor.words());
    let ground = &editor.plan().ground;
    let paddock = (!ground.boundary_hidden).then_some(&ground.boundary);
    for (vertex, &at) in paddock.into_iter().flatten().enumerate() {
        let number = (vertex + 1).to_string();
        let label = || words.say(Window::CornerOfPaddock, &[("number", &number)]);
        nodes.thing(Thing::BoundaryCorner { vertex }, at, label);
    }
    for (keep_out, stated) in ground.keep_outs.iter().enumerate().filter(|(_, stated)| !stated.hidden) {
        let name = names::listed(editor.plan(), words, Named::KeepOut(keep_out));
        for (vertex, &at) in stated.outline.iter().enumerate() {
            let number = (vertex + 1).to_string();
            let label = || words.say(Window::CornerOfKeepOut, &[("number", &number), ("name", &name)]);
            nodes.thing(Thing::KeepOutCorner { keep_out, vertex }, at, label);
        }
    }
}

/// The corners of walls, dangers, shade and damp ground, the coop's door and the picture.
fn features<S: Fn(Point) -> Pos2>(nodes: &mut Nodes<'_, '_, S>) {
    let (plan, words) = (nodes.editor.plan(), nodes.editor.words());
    for (wall, stated) in plan.walls.iter().enumerate().filter(|(_, stated)| !stated.hidden) {
        let name = names::listed(plan, words, Named::Wall(wall));
        for (vertex, &at) in stated.path.iter().enumerate() {
            let number = (vertex + 1).to_string();
            let label = || words.say(Underlay::CornerOfWall, &[("number", &number), ("name", &name)]);
            nodes.thing(Thing::WallCorner { wall, vertex }, at, label);
        }
    }
    // A danger that is one place is its sign.
    let paths = |hazard: &&plan::Hazard| !hazard.hidden && hazard.path.len() > 1;
    for (hazard, stated) in plan.ground.hazards.iter().enumerate().filter(|(_, stated)| paths(stated)) {
        let name = names::listed(plan, words, Named::Hazard(hazard));
        for (vertex, &at) in stated.path.iter().enumerate() {
            let number = (vertex + 1).to_string();
            let label = || words.say(Underlay::CornerOfWall, &[("number", &number), ("name", &name)]);
            nodes.thing(Thing::HazardCorner { hazard, vertex }, at, label);
        }
    }
    for (shade, stated) in plan.ground.shade.iter().enumerate().filter(|(_, stated)| !stated.hidden) {
        let name = names::listed(plan, words, Named::Shade(shade));
        for (vertex, &at) in stated.outline.iter().enumerate() {
            let number = (vertex + 1).to_string();
            let label = || words.say(Underlay::CornerOfShade, &[("number", &number), ("name", &name)]);
            nodes.thing(Thing::ShadeCorner { shade, vertex }, at, label);
        }
    }
    for (damp, stated) in plan.ground.damp.iter().enumerate().filter(|(_, stated)| !stated.hidden) {
        let name = names::listed(plan, words, Named::Damp(damp));
        for (vertex, &at) in stated.outline.iter().enumerate() {
            let number = (vertex + 1).to_string();
            let label = || words.say(Damp::CornerOfPlace, &[("number", &number), ("name", &name)]);
            nodes.thing(Thing::DampCorner { damp, vertex }, at, label);
        }
    }
    if let Some(coop) = plan.coop.as_ref().filter(|coop| !coop.hidden) {
        nodes.thing(Thing::CoopDoor, coop.door_at(), || words.text(Underlay::DoorNode).to_owned());
    }
    if let Some(underlay) = plan.underlay.as_ref().filter(|underlay| !underlay.hidden) {
        let [one, _, other, _] = underlay.corners();
        let middle = Point::new(one.east_m.midpoint(other.east_m), one.north_m.midpoint(other.north_m));
        nodes.thing(Thing::Underlay, middle, || words.text(Underlay::TheUnderlay).to_owned());
    }
}

/// The tags of findings.
fn findings<S: Fn(Point) -> Pos2>(nodes: &mut Nodes<'_, '_, S>) {
    let tags = nodes.editor.drawing().shapes();
    for shape in tags.filter(|shape| matches!(shape.role, drawing::Role::Tag { .. })) {
        if let Some(thing @ Thing::Finding { .. }) = shape.thing {
            nodes.named(thing);
        }
    }
}
