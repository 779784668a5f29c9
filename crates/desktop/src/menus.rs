//! The menus of the head: the plan's own, and the list of what was done.

use drawing::Theme;
use egui::{Align2, Id, Popup, PopupCloseBehavior, Response, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use plan::{Deed, Edit, Today};
use words::texts::{Files, Guides, Power, Shaping, Window as Text};
use words::{Language, Words};

use crate::asking::Ask;
use crate::editor::{Editor, Grid, Message};
use crate::field;
use crate::icons::Icon;
use crate::kit;
use crate::said::Said;
use crate::shelf;
use crate::size;
use crate::theme::{self, colour};

/// Width of a menu.
const WIDTH: f32 = 300.0;
/// The most letters of a plan's name.
const LONGEST_NAME: usize = 80;

/// The plan's menu, under its name.
pub(crate) fn plan(button: &Response, editor: &Editor, said: &mut Said) {
    let words = editor.words();
    Popup::menu(button).close_behavior(PopupCloseBehavior::CloseOnClickOutside).show(|ui| {
        frame(ui);
        let read = |text: &str| Ok(text.trim().chars().take(LONGEST_NAME).collect::<String>());
        let id = Id::unique("plan name");
        let (title, p) = (&editor.plan().title, editor.theme().palette());
        if let Some(title) = field::text(ui, p, id, words.text(Files::NameOfPlan), title, read)
            && title != editor.plan().title
        {
            said.say(Message::Make(Edit::SetTitle { title }));
        }
        rule(ui, editor);
        let mut chosen = |ui: &mut Ui, text: Files, keys: &str, ask: Ask| {
            if item(ui, words.text(text), &words.keys(keys), false, editor) {
                said.ask(ask);
                ui.close();
            }
        };
        chosen(ui, Files::Save, "Ctrl S", Ask::Save);
        chosen(ui, Files::SaveAs, "Ctrl Shift S", Ask::SaveAs);
        chosen(ui, Files::Open, "Ctrl O", Ask::Open);
        rule(ui, editor);
        chosen(ui, Files::NewFromRolls, "Ctrl N", Ask::NewFromRolls);
        chosen(ui, Files::NewEmpty, "", Ask::NewEmpty);
        chosen(ui, Files::Example, "", Ask::Example);
        chosen(ui, Files::BringIn, "", Ask::BringIn);
    });
}

/// How the window looks and speaks: theme, language, size.
pub(crate) fn view(button: &Response, editor: &Editor, said: &mut Said) {
    let words = editor.words();
    Popup::menu(button).close_behavior(PopupCloseBehavior::CloseOnClickOutside).show(|ui| {
        frame(ui);
        let p = editor.theme().palette();
        let row = |ui: &mut Ui, head: &str, choices: &mut dyn FnMut(&mut Ui)| {
            ui.add_space(4.0);
            kit::prose(ui, head, theme::regular(11.0), colour(p.ink2));
            ui.add_space(4.0);
            ui.horizontal(|ui| {
                ui.spacing_mut().item_spacing.x = 2.0;
                choices(ui);
            });
            ui.add_space(4.0);
        };
        row(ui, words.text(Text::Theme), &mut |ui| {
            for theme in Theme::OF_SCREENS {
                let name = crate::commands::theme_name(theme);
                if kit::choice(ui, words.text(name), editor.theme() == theme, p).clicked() {
                    said.say(Message::Theme(theme));
                }
            }
        });
        row(ui, words.text(Text::Language), &mut |ui| {
            for language in Language::ALL {
                if kit::choice(ui, language.name(), words.language == language, p).clicked() {
                    said.say(Message::Language(language));
                }
            }
        });
        row(ui, words.text(Guides::Grid), &mut |ui| {
            for grid in Grid::ALL {
                if kit::choice(ui, &grid.name(words), editor.grid() == grid, p).clicked() {
                    said.say(Message::Grid(grid));
                }
            }
        });
        row(ui, words.text(Files::Size), &mut |ui| {
            ui.vertical(|ui| size::choices(ui, editor));
        });
    });
}

/// The menu of the ground today, under its word.
pub(crate) fn today(button: &Response, editor: &Editor, said: &mut Said) {
    let words = editor.words();
    let now = editor.plan().ground.today;
    Popup::menu(button).show(|ui| {
        frame(ui);
        for today in Today::ALL {
            let (word, means) = today_words(today);
            let here = now.unwrap_or(Today::Damp) == today;
            if item(ui, words.text(word), words.text(means), here, editor) {
                if now != Some(today) {
                    said.say(Message::Make(Edit::SetToday { today: Some(today) }));
                }
                ui.close();
            }
        }
        rule(ui, editor);
        let p = editor.theme().palette();
        // A menu's lines reach from edge to edge; a sentence does not.
        ui.with_layout(egui::Layout::top_down(egui::Align::Min), |ui| {
            egui::Frame::NONE.inner_margin(egui::Margin::symmetric(8, 4)).show(ui, |ui| {
                kit::prose(ui, words.text(Power::TodayWhy), theme::regular(12.0), colour(p.ink2));
            });
        });
    });
}

/// The word for the ground today, and what it means.
pub(crate) fn today_words(today: Today) -> (Power, Power) {
    let means = match today {
        Today::Dry => Power::DryMeans,
        Today::Damp => Power::DampMeans,
        Today::Wet => Power::WetMeans,
        Today::Frozen => Power::FrozenMeans,
    };
    (care::bracing::today_word(today), means)
}

/// The button that opens the list of what was done, and the list.
pub(crate) fn history(ui: &mut Ui, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let (done, undone) = editor.deeds();
    let any = !done.is_empty() || !undone.is_empty();
    let button = kit::icon_button(ui, Icon::History, words.text(Shaping::History), any, false, p);
    Popup::menu(&button).show(|ui| {
        frame(ui);
        egui::ScrollArea::vertical().max_height(360.0).show(ui, |ui| {
            let now = done.len();
            let beginning = words.text(Shaping::Beginning).to_owned();
            let steps = done.iter().chain(&undone).map(|&deed| wording(words, deed).to_owned());
            for (step, text) in std::iter::once(beginning).chain(steps).enumerate() {
                let label = if step == 0 { text } else { format!("{step}  {text}") };
                if item(ui, &label, "", step == now, editor) {
                    said.say(Message::GoTo(step));
                    ui.close();
                }
            }
        });
    });
}

fn wording(words: Words, deed: Deed) -> &'static str {
    words.text(match deed {
        Deed::Change => Shaping::DoneChange,
        Deed::Name => Shaping::DoneName,
        Deed::Outline => Shaping::DoneOutline,
        Deed::MoveCorner => Shaping::DoneMoveCorner,
        Deed::InsertCorner => Shaping::DoneInsertCorner,
        Deed::RemoveCorner => Shaping::DoneRemoveCorner,
        Deed::AddRun => Shaping::DoneAddRun,
        Deed::RemoveRun => Shaping::DoneRemoveRun,
        Deed::Run => Shaping::DoneRun,
        Deed::Faults => Shaping::DoneFaults,
        Deed::Grass => Shaping::DoneGrass,
        Deed::Gates => Shaping::DoneGates,
        Deed::Pins => Shaping::DonePins,
        Deed::Branches => Shaping::DoneBranches,
        Deed::Feed => Shaping::DoneFeed,
        Deed::Strip => Shaping::DoneStrip,
        Deed::Paddock => Shaping::DonePaddock,
        Deed::KeepOuts => Shaping::DoneKeepOuts,
        Deed::Hazards => Shaping::DoneHazards,
        Deed::Gateway => Shaping::DoneGateway,
        Deed::Heights => Shaping::DoneHeights,
        Deed::Walls => Shaping::DoneWalls,
        Deed::Shade => Shaping::DoneShade,
        Deed::Damp => Shaping::DoneDamp,
        Deed::TapePoints => Shaping::DoneTapePoints,
        Deed::Labels => Shaping::DoneLabels,
        Deed::Picture => Shaping::DonePicture,
        Deed::TakeShape => Shaping::DoneTakeShape,
        Deed::Ground => Shaping::DoneGround,
        Deed::Store => Shaping::DoneStore,
        Deed::Coop => Shaping::DoneCoop,
        Deed::Readings => Shaping::DoneReadings,
        Deed::Move => Shaping::DoneMove,
        Deed::Turn => Shaping::DoneTurn,
        Deed::Duplicate => Shaping::DoneDuplicate,
        Deed::SideLength => Shaping::DoneSideLength,
        Deed::FitNets => Shaping::DoneFitNets,
        Deed::CutCorner => Shaping::DoneCutCorner,
        Deed::Brace => Shaping::DoneBrace,
        Deed::TakeBrace => Shaping::DoneTakeBrace,
        Deed::Remove => Shaping::DoneRemove,
        Deed::Paste => Shaping::DonePaste,
        Deed::LayOut => Shaping::DoneLayOut,
        Deed::Hide => Shaping::DoneHide,
        Deed::Lock => Shaping::DoneLock,
        Deed::Rename => Shaping::DoneRename,
        Deed::BringIn => Shaping::DoneBringIn,
        Deed::SlideSide
        | Deed::KeepLength
        | Deed::KeepAngle
        | Deed::SquareUp
        | Deed::Mirror
        | Deed::DuplicateBeside
        | Deed::SideBearing
        | Deed::SidePanels
        | Deed::CornerPlace
        | Deed::CornerTurn
        | Deed::CornerFigures => return words.text(shape_wording(deed)),
    })
}

/// A deed that shaped an outline.
fn shape_wording(deed: Deed) -> words::texts::Shape {
    use words::texts::Shape;
    match deed {
        Deed::SlideSide => Shape::DoneSlideSide,
        Deed::KeepLength => Shape::DoneKeepLength,
        Deed::KeepAngle => Shape::DoneKeepAngle,
        Deed::SquareUp => Shape::DoneSquareUp,
        Deed::Mirror => Shape::DoneMirror,
        Deed::DuplicateBeside => Shape::DoneBeside,
        Deed::SideBearing => Shape::DoneBearing,
        Deed::SidePanels => Shape::DonePanels,
        Deed::CornerTurn => Shape::DoneCornerTurn,
        Deed::CornerFigures => Shape::DoneFigures,
        _ => Shape::DonePlace,
    }
}

fn frame(ui: &mut Ui) {
    ui.set_width(WIDTH);
    ui.spacing_mut().item_spacing = vec2(8.0, 0.0);
}

fn rule(ui: &mut Ui, editor: &Editor) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 9.0), Sense::hover());
    ui.painter().hline(rect.x_range(), rect.center().y, Stroke::new(1.0, colour(editor.theme().palette().hairline)));
}

/// One line of a menu; says whether it was clicked.
fn item(ui: &mut Ui, label: &str, keys: &str, here: bool, editor: &Editor) -> bool {
    let p = editor.theme().palette();
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 28.0), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::MenuItem, true, here, label));
    if here {
        ui.painter().rect_filled(rect, 2.0, colour(p.picked_row));
    } else if response.hovered() {
        ui.painter().rect_filled(rect, 2.0, theme::thinned(p.rule, 0.18));
    }
    let font = if here { theme::semi_bold(13.0) } else { theme::regular(13.0) };
    let y = rect.center().y;
    ui.painter().text(pos2(rect.left() + 8.0, y), Align2::LEFT_CENTER, label, font, colour(p.ink));
    if !keys.is_empty() {
        let at = pos2(rect.right() - 8.0, y);
        ui.painter().text(at, Align2::RIGHT_CENTER, keys, theme::regular(11.0), colour(p.ink2));
    }
    kit::focus_ring(ui, &response, p);
    response.clicked()
}

/// The name of a plan, for a sentence or a title: its own, else its file's.
pub(crate) fn name_of(editor: &Editor) -> String {
    let words = editor.words();
    let file = editor.file().and_then(|path| path.file_name()).map(|name| name.to_string_lossy().into_owned());
    match (editor.plan().title.as_str(), file) {
        ("", Some(file)) => file.strip_suffix(shelf::PLAN_ENDING).unwrap_or(&file).to_owned(),
        ("", None) => words.text(Text::Untitled).to_owned(),
        (title, _) => title.to_owned(),
    }
}
