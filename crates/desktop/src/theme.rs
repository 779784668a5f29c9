//! How egui looks: the one font family in three weights, and its visuals from the palette of `drawing`.
//!
//! This is the one place of the window where a colour of the palette becomes a colour of egui; no other file
//! makes one. Sizes are points, on a grid of four.

use std::sync::Arc;

use drawing::{Colour, Palette, Theme};
use egui::style::{ScrollStyle, Selection, WidgetVisuals, Widgets};
use egui::{Color32, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Margin, Stroke, TextStyle, Visuals};

const REGULAR: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_400Regular.ttf");
const MEDIUM: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_500Medium.ttf");
const SEMI_BOLD: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_600SemiBold.ttf");

/// Rounding of buttons and fields.
pub(crate) const RADIUS: u8 = 2;

/// A colour of the palette for egui.
#[allow(clippy::disallowed_methods, reason = "the one place where a colour of the palette becomes one of egui")]
pub(crate) fn colour([red, green, blue, opacity]: Colour) -> Color32 {
    Color32::from_rgba_unmultiplied(red, green, blue, opacity)
}

/// A colour of the palette, thinned to a share of its opacity.
pub(crate) fn thinned(of: Colour, share: f32) -> Color32 {
    colour(of).gamma_multiply(share)
}

/// The font at a size and weight.
pub(crate) fn font(size: f32, weight: drawing::Weight) -> FontId {
    FontId::new(
        size,
        match weight {
            drawing::Weight::Regular => FontFamily::Proportional,
            drawing::Weight::Medium => FontFamily::Name("medium".into()),
            drawing::Weight::SemiBold => FontFamily::Name("semibold".into()),
        },
    )
}

/// The font in weight 400.
pub(crate) fn regular(size: f32) -> FontId {
    font(size, drawing::Weight::Regular)
}

/// The font in weight 500.
pub(crate) fn medium(size: f32) -> FontId {
    font(size, drawing::Weight::Medium)
}

/// The font in weight 600.
pub(crate) fn semi_bold(size: f32) -> FontId {
    font(size, drawing::Weight::SemiBold)
}

/// Gives a context the fonts and the habits of the window. Once, before the first frame; [`show`] gives it a theme.
pub(crate) fn set_up(ctx: &egui::Context) {
    ctx.set_fonts(fonts());
    ctx.options_mut(|options| {
        // Ctrl+Q closes, as the window manager does: where work is unsaved the window asks first.
        options.input_options.line_scroll_speed = 24.0;
        // The keys that make all larger step through the menu's sizes.
        options.zoom_with_keyboard = false;
    });
}

/// Shows that theme from the next frame on.
pub(crate) fn show(ctx: &egui::Context, theme: Theme) {
    // egui knows two; each of ours takes the place of the one whose ground is as light.
    let place = if is_dark(theme) { egui::Theme::Dark } else { egui::Theme::Light };
    ctx.set_style_of(place, style(theme));
    ctx.set_theme(place);
}

fn is_dark(theme: Theme) -> bool {
    matches!(theme, Theme::Dark | Theme::Contrast)
}

fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    let mut add = |name: &str, bytes: &'static [u8], families: &[FontFamily]| {
        fonts.font_data.insert(name.to_owned(), Arc::new(FontData::from_static(bytes)));
        for family in families {
            fonts.families.insert(family.clone(), vec![name.to_owned()]);
        }
    };
    add("plex", REGULAR, &[FontFamily::Proportional, FontFamily::Monospace]);
    add("plex medium", MEDIUM, &[FontFamily::Name("medium".into())]);
    add("plex semibold", SEMI_BOLD, &[FontFamily::Name("semibold".into())]);
    fonts
}

fn style(theme: Theme) -> egui::Style {
    let mut style = egui::Style { visuals: visuals(theme), animation_time: 0.0, ..egui::Style::default() };
    style.text_styles = [
        (TextStyle::Small, regular(11.0)),
        (TextStyle::Body, regular(13.0)),
        (TextStyle::Button, regular(13.0)),
        (TextStyle::Monospace, regular(13.0)),
        (TextStyle::Heading, semi_bold(20.0)),
    ]
    .into();
    style.scroll_animation = egui::style::ScrollAnimation::none();
    style.interaction.selectable_labels = false;
    style.interaction.tooltip_delay = 0.4;
    let spacing = &mut style.spacing;
    spacing.item_spacing = egui::vec2(8.0, 0.0);
    spacing.button_padding = egui::vec2(8.0, 4.0);
    spacing.interact_size = egui::vec2(32.0, 24.0);
    spacing.window_margin = Margin::same(12);
    spacing.scroll = ScrollStyle { bar_width: 4.0, floating_width: 4.0, ..ScrollStyle::floating() };
    spacing.scroll.fade.strength = 0.0;
    spacing.scroll.dormant_handle_opacity = 0.3;
    spacing.scroll.active_handle_opacity = 0.4;
    spacing.scroll.interact_handle_opacity = 0.6;
    spacing.scroll.dormant_background_opacity = 0.0;
    spacing.scroll.active_background_opacity = 0.0;
    spacing.scroll.interact_background_opacity = 0.0;
    spacing.extra_text_line_spacing = 1.0;
    style
}

fn visuals(theme: Theme) -> Visuals {
    let p = theme.palette();
    let base = if is_dark(theme) { Visuals::dark() } else { Visuals::light() };
    let corner_radius = CornerRadius::same(RADIUS);
    let mut visuals = Visuals {
        widgets: Widgets {
            noninteractive: state(p, p.sheet, p.rule, 1.0),
            inactive: state(p, p.sheet, p.rule, 1.0),
            hovered: state(p, p.sheet, p.ink, 1.0),
            active: state(p, p.picked_row, p.pick, 1.5),
            open: state(p, p.picked_row, p.pick, 1.5),
        },
        selection: Selection { bg_fill: colour(p.picked_row), stroke: Stroke::new(2.0, colour(p.pick)) },
        hyperlink_color: colour(p.pick),
        faint_bg_color: colour(p.paper),
        extreme_bg_color: colour(p.sheet),
        text_edit_bg_color: Some(colour(p.sheet)),
        code_bg_color: colour(p.paper),
        warn_fg_color: colour(p.danger),
        error_fg_color: colour(p.danger),
        window_corner_radius: corner_radius,
        window_shadow: egui::Shadow::NONE,
        window_fill: colour(p.sheet),
        window_stroke: Stroke::new(1.0, colour(p.rule)),
        menu_corner_radius: corner_radius,
        panel_fill: colour(p.sheet),
        popup_shadow: egui::Shadow::NONE,
        weak_text_color: Some(colour(p.ink2)),
        override_text_color: None,
        disabled_alpha: 0.45,
        ..base
    };
    visuals.text_cursor.blink = false;
    visuals.text_cursor.stroke = Stroke::new(2.0, colour(p.pick));
    visuals
}

fn state(p: &Palette, fill: Colour, edge: Colour, width: f32) -> WidgetVisuals {
    WidgetVisuals {
        bg_fill: colour(fill),
        weak_bg_fill: colour(fill),
        bg_stroke: Stroke::new(width, colour(edge)),
        corner_radius: CornerRadius::same(RADIUS),
        fg_stroke: Stroke::new(1.0, colour(p.ink)),
        expansion: 0.0,
    }
}
