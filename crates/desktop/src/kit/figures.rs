//! Large figures side by side, each with its unit, what it is and where it comes from.

use std::sync::Arc;

use drawing::Palette;
use egui::{Align2, Color32, FontId, Galley, Painter, Pos2, Rect, Role, Sense, Ui, Vec2, pos2, vec2};
use words::texts::About;
use words::{Message, Words};

use super::name;
use super::words::{explain, put};
use crate::theme::{self, colour};

/// Least space between two figures side by side.
const APART: f32 = 10.0;

/// A figure and its unit on one baseline, the unit smaller and in ink2.
pub(crate) struct Measure {
    figure: Arc<Galley>,
    unit: Option<Arc<Galley>>,
    gap: f32,
}

impl Measure {
    /// A figure in a font and ink, and its unit.
    pub(crate) fn new(ui: &Ui, figure: &str, unit: &str, font: FontId, ink: Color32, p: &Palette) -> Self {
        let gap = if font.size > 20.0 { 5.0 } else { 4.0 };
        let unit = (!unit.is_empty()).then(|| put(ui, unit, theme::regular(12.0), colour(p.ink2)));
        Self { figure: put(ui, figure, font, ink), unit, gap }
    }

    /// Width and height.
    pub(crate) fn size(&self) -> Vec2 {
        let unit = self.unit.as_ref().map_or(0.0, |unit| self.gap + unit.size().x);
        self.figure.size() + vec2(unit, 0.0)
    }

    /// Width of the figure alone.
    pub(crate) fn figure_width(&self) -> f32 {
        self.figure.size().x
    }

    /// Paints it with its upper left corner at a place.
    pub(crate) fn paint(&self, painter: &Painter, at: Pos2) {
        if let Some(unit) = &self.unit {
            let drop = baseline(&self.figure) - baseline(unit);
            painter.galley(at + vec2(self.figure.size().x + self.gap, drop), unit.clone(), Color32::PLACEHOLDER);
        }
        painter.galley(at, self.figure.clone(), Color32::PLACEHOLDER);
    }
}

/// Where the letters of a text stand, below its top.
fn baseline(galley: &Galley) -> f32 {
    galley.rows.first().map_or(0.0, |row| row.pos.y + row.glyphs.first().map_or(row.size.y, |glyph| glyph.pos.y))
}

/// A large figure, its unit, and what it is.
pub(crate) struct Figure<'a> {
    /// The figure.
    pub(crate) value: &'a str,
    /// Its unit.
    pub(crate) unit: &'a str,
    /// What it is.
    pub(crate) label: &'a str,
    /// What it is, its unit and where it comes from, in a sentence or two.
    pub(crate) about: &'a str,
    /// Whether it rests on something assumed.
    pub(crate) assumed: bool,
}

impl<'a> Figure<'a> {
    /// One that rests on nothing assumed: the figure and its unit, and the texts that tell what it is.
    pub(crate) fn told(words: Words, [value, unit]: [&'a str; 2], label: impl Message, about: About) -> Self {
        Self { value, unit, label: words.text(label), about: words.text(about), assumed: false }
    }
}

/// Large figures side by side, in columns of equal width.
pub(crate) fn figures(ui: &mut Ui, figures: &[Figure<'_>], p: &Palette) {
    let wide = ui.available_width();
    let galleys: Vec<_> = figures
        .iter()
        .map(|one| Measure::new(ui, one.value, one.unit, theme::medium(24.0), colour(p.ink), p))
        .collect();
    let label_width = |ui: &Ui, one: &Figure<'_>| put(ui, one.label, theme::regular(11.0), colour(p.ink2)).size().x;
    let needs: Vec<f32> =
        figures.iter().zip(&galleys).map(|(one, galley)| galley.size().x.max(label_width(ui, one))).collect();
    // Long words take two lines of figures.
    let count = figures.len();
    if count > 1 && needs.iter().sum::<f32>() + APART * (count - 1) as f32 > wide {
        let (first, rest) = figures.split_at(count.div_ceil(2));
        self::figures(ui, first, p);
        ui.add_space(8.0);
        self::figures(ui, rest, p);
        return;
    }
    let (rect, _) = ui.allocate_exact_size(vec2(wide, 46.0), Sense::hover());
    // Columns start where an even division says, or as close after it as long figures and labels allow.
    let even = wide / figures.len().max(1) as f32;
    let slack: f32 = wide - needs.iter().sum::<f32>();
    let tight = needs.iter().any(|need| need + 8.0 > even);
    let mut left = rect.left();
    for (index, (one, galley)) in figures.iter().zip(galleys).enumerate() {
        let column =
            Rect::from_min_size(pos2(left, rect.top()), vec2(if tight { needs[index] } else { even }, rect.height()));
        let response = ui.interact(column, ui.scope_id().with(("figure", index, one.label)), Sense::hover());
        name(&response, Role::Label, format!("{} {} {}", one.value, one.unit, one.label).trim());
        explain(ui, &response, one.about);
        left += if tight { needs[index] + slack / figures.len().saturating_sub(1).max(1) as f32 } else { even };
        galley.paint(ui.painter(), column.min);
        if one.assumed {
            let right = column.left() + galley.figure_width();
            dots(ui.painter(), column.left(), right, column.top() + galley.size().y - 2.0, p);
        }
        ui.painter().text(
            column.min + vec2(0.0, 31.0),
            Align2::LEFT_TOP,
            one.label,
            theme::regular(11.0),
            colour(p.ink2),
        );
    }
}

/// The row of dots under what is assumed.
pub(crate) fn dots(painter: &Painter, left: f32, right: f32, y: f32, p: &Palette) {
    let mut x = left + 1.0;
    while x <= right {
        painter.circle_filled(pos2(x, y), 0.85, colour(p.ink2));
        x += 4.5;
    }
}
