//! What is shown next on the map once the first run is laid.

use egui::{Align2, Rect, Shape, Stroke, Ui, pos2, vec2};
use plan::Point;
use words::texts::Rolls as Text;

use crate::editor::{Editor, Lesson, Page};
use crate::theme::{self, colour};
use crate::{icons, map_view};

/// What the keeper is shown next, inside the first run and over the unfolded line.
pub(crate) fn lesson(ui: &Ui, rect: Rect, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let painter = ui.painter().with_clip_rect(rect);
    match editor.lesson() {
        Lesson::Done => {}
        // Elsewhere the map is smaller or shows something else.
        Lesson::Drag if !matches!(editor.page(), Page::Run | Page::Ground) => {}
        Lesson::Drag => {
            let Some((run, _)) = editor.run() else { return };
            let lowest_m = run.outline.iter().map(|at| at.north_m).fold(f64::INFINITY, f64::min);
            let count = run.outline.len().max(1) as f64;
            let at = Point::new(run.outline.iter().map(|at| at.east_m).sum::<f64>() / count, lowest_m);
            let [x, y] = editor.view().spot(at);
            let head =
                painter.layout_no_wrap(words.text(Text::DragIt).to_owned(), theme::semi_bold(14.0), colour(p.ink));
            let how =
                painter.layout_no_wrap(words.text(Text::DragHow).to_owned(), theme::regular(12.0), colour(p.ink2));
            let size = vec2(head.size().x.max(how.size().x) + 40.0, head.size().y + how.size().y + 18.0);
            let foot = (rect.top() + y - 44.0).min(rect.bottom() - 60.0);
            let plate = Rect::from_center_size(pos2(rect.left() + x, foot - size.y / 2.0), size);
            let edge = Stroke::new(1.5, colour(p.pick));
            painter.add(Shape::convex_polygon(icons::cut_plate(plate, 7.0), colour(p.sheet), edge));
            let middle = plate.center().x;
            painter.galley(pos2(middle - head.size().x / 2.0, plate.top() + 8.0), head.clone(), colour(p.ink));
            let under = plate.top() + 10.0 + head.size().y;
            painter.galley(pos2(middle - how.size().x / 2.0, under), how, colour(p.ink2));
        }
        Lesson::ReadLine if map_view::hint_text(editor).is_some() => {}
        Lesson::ReadLine => {
            let at = pos2(rect.center().x, rect.bottom() - 34.0);
            let text = words.text(Text::ReadLine);
            painter.text(at, Align2::CENTER_CENTER, text, theme::medium(13.0), colour(p.ink));
            icons::chevron(&painter, at + vec2(0.0, 18.0), colour(p.ink));
        }
    }
}
