//! Every command with its keys: the list that Ctrl+K or F1 opens, searched by what a command
//! is called, here and by keepers.
//!
//! A command is a name, the keys that do the same, and what it says; nothing here does anything itself. The page of
//! keys is printed from the same list.

use drawing::Theme;
use plan::{HazardKind, WallKind};
use words::texts::{
    Commands as Text, Damp, Files, Guides, Many, Search, Shape, Shaping, Taping, Underlay, Unroll, Window,
};
use words::{Language, Units, Words};
use workup::shaping::Keep;

use crate::asking::Ask;
use crate::editor::{Editor, Grid, ManyMessage, Message, Over, Page, ShapesMessage, ShapingMessage};
use crate::head;
use crate::map_view::NUDGE_M;
use crate::tool::{Drawn, Tool};

/// What a command does.
#[derive(Clone, Debug)]
pub(crate) enum Does {
    /// It says something to the editor.
    Say(Message),
    /// It asks the window.
    Ask(Ask),
    /// It asks the system for what stands on the clipboard.
    Paste,
    /// It makes all of the window larger, or smaller.
    Size { larger: bool },
    /// Nothing: its keys act on the map alone.
    Nothing,
}

/// One command.
#[derive(Clone, Debug)]
pub(crate) struct Command {
    /// Under which head it stands.
    pub(crate) group: Text,
    /// What it is called.
    pub(crate) name: String,
    /// Further words by which it is found.
    pub(crate) also: &'static str,
    /// The keys that do the same, as the language's keyboards name them; empty where none do.
    pub(crate) keys: String,
    /// Whether it can be done now.
    pub(crate) enabled: bool,
    /// What it does.
    pub(crate) does: Does,
}

/// All commands, in the order of their heads.
pub(crate) fn all(editor: &Editor) -> Vec<Command> {
    let mut list = List { words: editor.words(), group: Text::OfPages, commands: Vec::new() };
    pages(&mut list);
    plan(&mut list, editor);
    drawing(&mut list, editor);
    shaping(&mut list, editor);
    many(&mut list, editor);
    view(&mut list, editor);
    list.commands
}

/// How well a command fits what is asked, the best first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fits {
    /// Its name begins so.
    Begins,
    /// Its name holds the words as they stand.
    Said,
    /// Its name holds every word.
    Named,
    /// Its name and its further words do.
    Also,
}

/// The commands that hold every word of a query, by how well they fit.
pub(crate) fn found(commands: &[Command], query: &str) -> Vec<usize> {
    let query = query.to_lowercase();
    let asked: Vec<&str> = query.split_whitespace().collect();
    let holds = |text: &str| asked.iter().all(|word| text.contains(word));
    let fits = |command: &Command| {
        let name = command.name.to_lowercase();
        match asked.first() {
            Some(first) if holds(&name) && name.starts_with(first) => Some(Fits::Begins),
            _ if name.contains(query.trim()) => Some(Fits::Said),
            _ if holds(&name) => Some(Fits::Named),
            _ => holds(&format!("{name} {}", command.also.to_lowercase())).then_some(Fits::Also),
        }
    };
    // Of those that fit as well, what can be done now comes first: Enter takes the first.
    let ranked = |(index, command): (usize, &Command)| Some((fits(command)?, !command.enabled, index));
    let mut found: Vec<(Fits, bool, usize)> = commands.iter().enumerate().filter_map(ranked).collect();
    if !asked.is_empty() {
        found.sort_unstable();
    }
    found.into_iter().map(|(.., index)| index).collect()
}

struct List {
    words: Words,
    group: Text,
    commands: Vec<Command>,
}

impl List {
    fn add(&mut self, name: impl Into<String>, keys: &'static str, enabled: bool, does: Does) {
        let keys = self.words.keys(keys);
        self.commands.push(Command { group: self.group, name: name.into(), also: "", keys, enabled, does });
    }

    /// Gives the command that was added last its further words.
    fn also(&mut self, search: Search) {
        let also = self.words.text(search);
        if let Some(last) = self.commands.last_mut() {
            last.also = also;
        }
    }

    fn say(&mut self, name: impl Into<String>, keys: &'static str, enabled: bool, message: Message) {
        self.add(name, keys, enabled, Does::Say(message));
    }
}

/// Keys of the pages, in their order.
const PAGE_KEYS: [&str; 6] = ["1", "2", "3", "4", "5", "6"];

fn pages(list: &mut List) {
    for (page, keys) in Page::ALL.into_iter().zip(PAGE_KEYS) {
        let name = list.words.say(Text::GoTo, &[("page", list.words.text(head::name(page)))]);
        list.say(name, keys, true, Message::Open(page));
        list.also(match page {
            Page::Ground => Search::Ground,
            Page::Run => Search::Run,
            Page::Power => Search::Power,
            Page::Moves => Search::Moves,
            Page::Book => Search::Book,
            Page::Sheet => Search::Sheet,
        });
    }
}

fn plan(list: &mut List, editor: &Editor) {
    list.group = Text::OfPlan;
    let words = list.words;
    for (name, keys, ask) in [
        (Files::Save, "Ctrl S", Ask::Save),
        (Files::SaveAs, "Ctrl Shift S", Ask::SaveAs),
        (Files::Open, "Ctrl O", Ask::Open),
        (Files::NewFromRolls, "Ctrl N", Ask::NewFromRolls),
        (Files::NewEmpty, "", Ask::NewEmpty),
        (Files::Example, "", Ask::Example),
        (Files::BringIn, "", Ask::BringIn),
    ] {
        list.add(words.text(name), keys, true, Does::Ask(ask));
        match ask {
            Ask::Save | Ask::SaveAs => list.also(Search::Save),
            Ask::Open => list.also(Search::Open),
            _ => {}
        }
    }
    list.say(words.text(Window::Undo), "Ctrl Z", editor.can_undo(), Message::Undo);
    list.also(Search::Undo);
    list.say(words.text(Window::Redo), "Ctrl Shift Z", editor.can_redo(), Message::Redo);
    list.add(words.text(Text::Quit), "Ctrl Q", true, Does::Ask(Ask::Close));
    list.also(Search::Quit);
}

fn drawing(list: &mut List, editor: &Editor) {
    list.group = Text::OfDrawing;
    let words = list.words;
    let (has_run, has_coop) = (editor.run().is_some(), editor.plan().coops().next().is_some());
    for (name, keys, page, drawn, enabled) in [
        (Text::UnrollRun, "R", Page::Run, Drawn::Run, true),
        (Text::DrawBranch, "", Page::Run, Drawn::Branch, has_run),
        (Text::DrawPaddock, "", Page::Ground, Drawn::Paddock, true),
        (Text::DrawKeepOut, "", Page::Ground, Drawn::KeepOut, true),
        (Text::DrawWater, "", Page::Ground, Drawn::Water, true),
        (Text::PlaceCoop, "", Page::Ground, Drawn::Coop, true),
        (Text::PlaceFurtherCoop, "", Page::Ground, Drawn::FurtherCoop, has_coop),
        (Text::PlaceGateway, "", Page::Ground, Drawn::Gateway, true),
        (Text::PlaceHeight, "", Page::Ground, Drawn::Height, true),
    ] {
        list.say(words.text(name), keys, enabled, Message::UseOn(page, Tool::outline(drawn)));
        match drawn {
            Drawn::Coop | Drawn::FurtherCoop => list.also(Search::Coop),
            Drawn::KeepOut | Drawn::Water => list.also(Search::KeepOut),
            Drawn::Gateway => list.also(Search::Gateway),
            _ => {}
        }
    }
    for (kind, name) in [
        (HazardKind::OverheadLine, Shaping::DrawOverheadLine),
        (HazardKind::PublicWay, Shaping::DrawPublicWay),
        (HazardKind::OtherEnergisedFence, Shaping::DrawOtherFence),
        (HazardKind::ForeignEarth, Shaping::DrawForeignEarth),
    ] {
        let name = words.say(Text::DrawHazard, &[("hazard", words.text(name))]);
        list.say(name, "", true, Message::UseOn(Page::Ground, Tool::outline(Drawn::Hazard(kind))));
    }
    list.say(words.text(Guides::TapeTool), "T", true, Message::Use(Tool::tape()));
    for (name, page, drawn, enabled) in [
        (Underlay::CommandWall, Page::Ground, Drawn::Wall(WallKind::Wall), true),
        (Underlay::CommandHedge, Page::Ground, Drawn::Wall(WallKind::Hedge), true),
        (Underlay::CommandFence, Page::Ground, Drawn::Wall(WallKind::Fence), true),
        (Underlay::CommandShade, Page::Ground, Drawn::Shade, true),
        (Underlay::CommandLabel, Page::Ground, Drawn::Label, true),
        (Underlay::CommandDrop, Page::Run, Drawn::Drop(editor.run_index()), has_run),
        (Underlay::CommandFeed, Page::Power, Drawn::Feed(editor.run_index()), has_run),
        (Underlay::CommandKnown, Page::Ground, Drawn::Known, editor.plan().underlay.is_some()),
    ] {
        list.say(words.text(name), "", enabled, Message::UseOn(page, Tool::outline(drawn)));
        match drawn {
            Drawn::Feed(_) => list.also(Search::Feed),
            Drawn::Known => list.also(Search::Picture),
            _ => {}
        }
    }
    let known = Message::UseOn(Page::Ground, Tool::outline(Drawn::TapePoint));
    list.say(words.text(Taping::Command), "", true, known);
    for (name, page, drawn, enabled) in [
        (Damp::CommandDamp, Page::Ground, Drawn::Damp, true),
        (Damp::CommandEnergizer, Page::Power, Drawn::Energizer(editor.run_index()), has_run),
    ] {
        list.say(words.text(name), "", enabled, Message::UseOn(page, Tool::outline(drawn)));
    }
    list.add(words.text(Underlay::Bring), "", true, Does::Ask(Ask::BringPicture));
    list.also(Search::Picture);
    list.say(words.text(Text::LeaveTool), "Esc", true, Message::Escape);
}

fn shaping(list: &mut List, editor: &Editor) {
    list.group = Text::OfShaping;
    let words = list.words;
    let (picked, has_run) = (editor.picked().is_some(), editor.run().is_some());
    list.say(words.text(Shaping::Duplicate), "Ctrl D", picked, Message::Duplicate);
    list.say(words.text(Text::Remove), "Delete", picked, Message::Remove);
    list.say(words.text(Text::TurnLeft), "[", picked, Message::Turn(-crate::map_view::TURN_DEG));
    list.say(words.text(Text::TurnRight), "]", picked, Message::Turn(crate::map_view::TURN_DEG));
    shapes(list, editor);
    let typed = editor.side_to_type().is_some() || editor.place_to_type().is_some();
    list.add(words.text(Text::TypeIt), "Enter", typed, Does::Nothing);
    let [little, more] = [NUDGE_M, 10.0 * NUDGE_M].map(|step_m| words.length(step_m));
    list.add(words.say(Text::NudgeIt, &[("little", &little), ("more", &more)]), "← ↑ ↓ →", picked, Does::Nothing);
    let slide = words.say(Text::SlideIt, &[("little", &little), ("more", &more)]);
    list.add(slide, "← ↑ ↓ →", editor.slides_side(), Does::Nothing);
    list.add(words.text(Text::PickNext), "Tab", true, Does::Nothing);
    list.say(words.text(Text::FitNets), "", has_run, Message::FitNets(0));
    list.say(words.text(Text::OtherShapes), "", true, Message::Shapes(ShapesMessage::Open(true)));
}

/// What is done to several things, to what is hidden and locked, and with the clipboard.
fn many(list: &mut List, editor: &Editor) {
    let words = list.words;
    let picked = editor.picked().is_some();
    for (name, keys, enabled, message) in [
        (Many::ListAll, "L", true, ManyMessage::List(!editor.is_listing())),
        (Many::ByRectangle, "B", true, ManyMessage::ByRectangle(true)),
        (Many::PickAll, "Ctrl A", true, ManyMessage::All),
        (Many::Copy, "Ctrl C", picked, ManyMessage::Copy),
        (Many::Cut, "Ctrl X", picked, ManyMessage::Cut),
        (Many::Hide, "H", picked, ManyMessage::HidePicked),
        (Many::ShowAll, "Shift H", true, ManyMessage::ShowAll),
        (Many::Lock, "K", picked, ManyMessage::LockPicked),
    ] {
        list.say(words.text(name), keys, enabled, Message::Many(message));
    }
    list.add(words.text(Many::Paste), "Ctrl V", true, Does::Paste);
    list.add(words.text(Many::PasteHere), "Ctrl Shift V", true, Does::Nothing);
    list.add(words.text(Many::NudgePanel), "Ctrl ← ↑ ↓ →", picked, Does::Nothing);
    list.add(words.text(Many::PickAlso), "Shift", true, Does::Nothing);
    for (name, keys) in [(Many::WalkAlso, "Shift ↑ ↓"), (Many::WalkPast, "Ctrl ↑ ↓"), (Many::PickHere, "Space")]
    {
        list.add(words.text(name), keys, editor.is_listing(), Does::Nothing);
    }
}

/// What is done to the outline of what is picked.
fn shapes(list: &mut List, editor: &Editor) {
    let words = list.words;
    let (outline, side) = (editor.shaped().is_some(), editor.has_side());
    let corner = editor.picked().is_some_and(|thing| crate::editor::corner_of(editor.plan(), thing).is_some());
    let of_run = matches!(editor.picked(), Some(drawing::Thing::RunCorner { .. }));
    for (name, keys, enabled, said) in [
        (Shape::SquareUp, "Q", outline, ShapingMessage::SquareUp),
        (Shape::CutCorner, "C", of_run, ShapingMessage::CutCorner),
        (Shape::MirrorEastWest, "M", editor.mirrors(), ShapingMessage::Mirror(Over::EastWest)),
        (Shape::MirrorNorthSouth, "Shift M", editor.mirrors(), ShapingMessage::Mirror(Over::NorthSouth)),
        (Shape::MirrorOverSide, "", side, ShapingMessage::Mirror(Over::Side)),
        (Shape::BesideMirrored, "N", editor.shares_side(), ShapingMessage::Beside(true)),
        (Shape::BesideShifted, "Shift N", editor.shares_side(), ShapingMessage::Beside(false)),
        (Shape::InsertCorner, "I", editor.takes_corner(), ShapingMessage::InsertCorner),
        (Shape::TurnHere, "P", corner, ShapingMessage::PivotHere),
        (Shape::TurnMiddle, "", editor.has_pivot(), ShapingMessage::PivotMiddle),
        (Shape::CornerFree, "", editor.keep() != Keep::Free, ShapingMessage::Keep(Keep::Free)),
        (Shape::CornerLength, "", editor.keep() != Keep::Length, ShapingMessage::Keep(Keep::Length)),
        (Shape::CornerAngle, "A", editor.keep() != Keep::Angle, ShapingMessage::Keep(Keep::Angle)),
    ] {
        list.say(words.text(name), keys, enabled, Message::Shaping(said));
    }
}

fn view(list: &mut List, editor: &Editor) {
    list.group = Text::OfView;
    let words = list.words;
    list.say(words.text(Window::Fit), "F", true, Message::Fit);
    list.also(Search::Fit);
    let middle = editor.view().size.map(|side| side / 2.0);
    list.say(words.text(Text::ZoomIn), "+", true, Message::Zoom(ZOOM, middle));
    list.say(words.text(Text::ZoomOut), "−", true, Message::Zoom(1.0 / ZOOM, middle));
    list.add(words.text(Text::PanIt), "← ↑ ↓ →", editor.picked().is_none(), Does::Nothing);
    list.say(words.text(Guides::KeepDimensions), "D", true, Message::KeepDimensions(!editor.keeps_dimensions()));
    for grid in Grid::ALL {
        let name = words.say(Guides::GridIs, &[("step", &grid.name(words))]);
        list.say(name, "", editor.grid() != grid, Message::Grid(grid));
    }
    list.say(words.text(Text::Fold), "F9", true, Message::Fold(!editor.is_folded()));
    for theme in Theme::OF_SCREENS {
        let name = words.say(Text::ThemeIs, &[("theme", words.text(theme_name(theme)))]);
        list.say(name, "", editor.theme() != theme, Message::Theme(theme));
        list.also(Search::Theme);
    }
    for language in Language::ALL {
        let name = words.say(Text::LanguageIs, &[("language", language.name())]);
        list.say(name, "", words.language != language, Message::Language(language));
        list.also(Search::Language);
    }
    for (units, name) in [(Units::Metric, Window::Metres), (Units::Feet, Window::Feet)] {
        let name = words.say(Text::UnitsAre, &[("units", words.text(name))]);
        list.say(name, "", words.units != units, Message::Units(units));
        list.also(Search::Units);
    }
    list.add(words.text(Text::Larger), "Ctrl +", true, Does::Size { larger: true });
    list.also(Search::Size);
    list.add(words.text(Text::Smaller), "Ctrl −", true, Does::Size { larger: false });
    list.also(Search::Size);
    list.add(words.text(Text::Keys), "", true, Does::Ask(Ask::SaveKeys));
    list.also(Search::Keys);
}

/// How much the keys zoom the map.
pub(crate) const ZOOM: f64 = std::f64::consts::SQRT_2;

/// What a theme is called.
pub(crate) fn theme_name(theme: Theme) -> Window {
    match theme {
        Theme::Dark => Window::DarkTheme,
        Theme::Contrast => Window::ContrastTheme,
        Theme::Light | Theme::Print => Window::LightTheme,
    }
}

/// What keys do while a run is unrolled: on the page meanwhile, and on the page of keys.
pub(crate) const WHILE_UNROLLING: [(&str, Unroll); 7] = [
    ("Enter", Unroll::KeyEnter),
    ("Tab", Unroll::KeyTab),
    ("Alt", Unroll::KeyAlt),
    ("Backspace", Unroll::KeyBack),
    ("Ctrl Z", Unroll::KeyUndo),
    ("Esc", Unroll::KeyEsc),
    ("← ↑ ↓ →", Unroll::KeyArrows),
];

/// Every command that has keys, by its head: what the page of keys is printed from.
pub(crate) fn keys(editor: &Editor) -> Vec<fieldsheet::KeyGroup> {
    let words = editor.words();
    let mut groups: Vec<fieldsheet::KeyGroup> = Vec::new();
    for command in all(editor).into_iter().filter(|command| !command.keys.is_empty()) {
        let head = words.text(command.group);
        if groups.last().is_none_or(|(last, _)| last != head) {
            groups.push((head.to_owned(), Vec::new()));
        }
        if let Some((_, rows)) = groups.last_mut() {
            rows.push((command.name, command.keys));
        }
    }
    let rows = WHILE_UNROLLING.map(|(keys, does)| (words.text(does).to_owned(), words.keys(keys)));
    groups.push((words.text(Unroll::WhileYouDraw).to_owned(), rows.to_vec()));
    groups
}
