//! Everything that is read or tells something stands out from the ground it lies on: 4.5 for text, 3 for marks
//! (WCAG 2.2, success criteria 1.4.3 and 1.4.11).

use crate::hand;
use crate::sheet::{contrast, ground, over, text_corners};
use drawing::{Colour, Ink, LineView, Palette, Theme, View, line, map};

const THEMES: [Theme; 4] = [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print];

/// What a theme owes a text, where the others owe it 4.5, and a mark, where they owe it 3: high contrast more (WCAG 2.2,
/// success criterion 1.4.6, for text).
fn owed(theme: Theme, least: f64) -> f64 {
    if theme == Theme::Contrast { least + if least > 4.0 { 2.5 } else { 1.5 } } else { least }
}

fn grounds(p: &Palette) -> [(&'static str, Colour); 13] {
    let far_strip = over([p.strip[0], p.strip[1], p.strip[2], 128], p.run);
    [
        ("sheet", p.sheet),
        ("paper", p.paper),
        ("grass", p.grass),
        ("run", p.run),
        ("strip", p.strip),
        ("strip from afar", far_strip),
        ("water", p.water),
        ("picked row", p.picked_row),
        // Water lies over shade.
        ("paper in shade", over(p.shade, p.paper)),
        ("grass in shade", over(p.shade, p.grass)),
        ("run in shade", over(p.shade, p.run)),
        ("strip in shade", over(p.shade, p.strip)),
        ("strip from afar in shade", over(p.shade, far_strip)),
    ]
}

#[test]
fn the_formula_meets_its_own_ends() {
    // WCAG 2.2: white on black is 21, a colour on itself 1.
    assert!((contrast([255; 4], [0, 0, 0, 255]) - 21.0).abs() < 1e-9);
    assert!((contrast([12, 34, 56, 255], [12, 34, 56, 255]) - 1.0).abs() < 1e-9);
}

#[test]
fn every_text_and_mark_stands_out_from_every_ground() {
    let mut faults = Vec::new();
    for theme in THEMES {
        let p = theme.palette();
        for (name, on) in grounds(p) {
            let texts = [
                ("ink", p.ink),
                ("ink2", p.ink2),
                ("pick", p.pick),
                ("danger", p.danger),
                ("ghost", p.ghost),
                ("green", p.green),
            ];
            let marks = [
                ("rule", p.rule),
                ("edge of the net", p.edge),
                ("edge of water", p.water_edge),
                ("edge of a hedge and of shade", p.hedge_edge),
            ];
            for (what, colour, least) in texts
                .map(|(what, colour)| (what, colour, 4.5))
                .into_iter()
                .chain(marks.map(|(what, colour)| (what, colour, 3.0)))
            {
                let (ratio, least) = (contrast(colour, on), owed(theme, least));
                if ratio < least {
                    faults.push(format!("{theme:?}: {what} on {name} {ratio:.2} < {least}"));
                }
            }
        }
        // Words keep off a hedge, or have a plate; a line may cross it.
        for (what, colour) in [
            ("ink", p.ink),
            ("ink2", p.ink2),
            ("edge of the net", p.edge),
            ("pick", p.pick),
            ("danger", p.danger),
            ("ghost", p.ghost),
            ("green", p.green),
        ] {
            let (ratio, least) = (contrast(colour, p.hedge), owed(theme, 3.0));
            if ratio < least {
                faults.push(format!("{theme:?}: {what} on a hedge {ratio:.2} < {least}"));
            }
        }
        for (name, on) in grounds(p) {
            let on = over(p.screen, on);
            for (what, colour) in [("ink", p.ink), ("ink2", p.ink2)] {
                let (ratio, least) = (contrast(colour, on), owed(theme, 4.5));
                if ratio < least {
                    faults.push(format!("{theme:?}: {what} on {name} out of reach {ratio:.2} < {least}"));
                }
            }
        }
        let within = [
            ("number on a picked plate", p.sheet, p.pick, 4.5),
            ("pulse on an energizer", p.sheet, p.ink, 4.5),
            ("strokes of a danger", p.danger_stroke, p.danger_fill, 3.0),
            ("edge of a danger", p.ink, p.danger_fill, 3.0),
            ("strokes of a warning", p.warning_stroke, p.warning_fill, 3.0),
            ("stroke of a note", p.pick, p.sheet, 3.0),
        ];
        for (what, colour, on, least) in within {
            let (ratio, least) = (contrast(colour, on), owed(theme, least));
            if ratio < least {
                faults.push(format!("{theme:?}: {what} {ratio:.2} < {least}"));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

/// Every text of the ink against what really lies beneath its middle and ends.
fn check(ink: &[Ink], (theme, paper): (Theme, Colour), where_: &str, faults: &mut Vec<String>) -> usize {
    let (mut texts, least) = (0, owed(theme, 4.5));
    for (index, item) in ink.iter().enumerate() {
        let (Ink::Text { text, colour, at, .. }, Some([a, b, c, d])) = (item, text_corners(item)) else { continue };
        texts += 1;
        let middle = |a: [f32; 2], b: [f32; 2]| [f32::midpoint(a[0], b[0]), f32::midpoint(a[1], b[1])];
        for spot in [*at, middle(a, d), middle(b, c)] {
            let on = ground(&ink[..index], spot, paper);
            let ratio = contrast(*colour, on);
            if ratio < least {
                faults.push(format!("{where_}: \"{text}\" {colour:?} on {on:?} {ratio:.2}"));
            }
        }
    }
    texts
}

#[test]
fn every_text_that_is_drawn_can_be_read_where_it_lies() {
    let mut faults = Vec::new();
    let mut texts = 0;
    for (name, hand) in [("field", hand::field()), ("bare", hand::bare()), ("kinds", hand::kinds())] {
        let drawing = map(&hand.scene());
        for theme in THEMES {
            for px_per_m in [2.0, 3.5, 6.0, 9.0, 11.0, 18.0, 40.0] {
                let mut view = View::fit(drawing.bounds(), [1200.0, 800.0], 20.0, theme);
                view.px_per_m = px_per_m;
                view.picked = Some(drawing::Thing::RunCorner { run: 0, vertex: 1 });
                let ink = drawing.ink(&view);
                texts +=
                    check(&ink, (theme, theme.palette().paper), &format!("{name} {theme:?} {px_per_m}"), &mut faults);
            }
            for run in 0..hand.plan.runs.len() {
                let view = LineView { width: 1000.0, height: 128.0, theme, picked: None, hovered: None, stale: false };
                let ink = line(&hand.scene(), run, &view).ink;
                texts += check(&ink, (theme, theme.palette().sheet), &format!("line {name} {theme:?}"), &mut faults);
            }
        }
    }
    assert!(texts > 500, "{texts} texts were looked at");
    assert!(faults.is_empty(), "{faults:#?}");
}

/// The strokes of a sign in ink, each on its own halo, over every ground; and a kite that is half filled.
#[test]
fn the_signs_of_wind_and_of_a_weak_brace_stand_out_and_are_drawn_where_they_are_looked_at() {
    let mut hand = hand::field();
    let lay = hand.workup.runs[0].lay.as_mut().unwrap();
    (lay.corners[0].braced, lay.corners[0].holds) = (true, false);
    let over = hand.goes_over();
    let at = over.at;
    let wind = workup::bracing::Wind { fouled: Some(over), ..Default::default() };
    let bare = map(&hand.scene());
    hand.workup.runs[0].bracing = Some(workup::bracing::Bracing { wind, ..Default::default() });
    let drawing = map(&hand.scene());
    assert_eq!(drawing.shapes().count(), bare.shapes().count() + 1);
    for theme in THEMES {
        let p = theme.palette();
        for px_per_m in [2.0, 6.0, 18.0] {
            let mut view = View::fit(drawing.bounds(), [1200.0, 800.0], 20.0, theme);
            (view.px_per_m, view.middle) = (px_per_m, at);
            let calm = drawing.ink(&view);
            view.wind = true;
            // Its post's number may give way; what is put down besides is the sign.
            let strokes = drawing.ink(&view).into_iter().filter(|item| !calm.contains(item)).count();
            assert_eq!(strokes, if px_per_m < 4.0 { 0 } else { 4 }, "{theme:?} at {px_per_m}");
        }
        for (name, on) in grounds(p) {
            assert!(contrast(p.ink, on) >= 3.0 && contrast(p.ink, p.sheet) >= 3.0, "{theme:?} on {name}");
        }
    }
}
