//! The SVG pen: ink as a scalable picture (SVG 1.1, W3C Recommendation, 2011).
//!
//! One element for each item, in their order; sizes in pixels, two decimals. Nothing is embedded: text names
//! the font and a generic family to fall back on. The same ink gives the same bytes.

use std::fmt::Write as _;

use drawing::letters::BASELINE;
use drawing::{Anchor, Colour, Ink, Spot, Weight};

/// Draws ink as an SVG document.
///
/// Items with a place or size that is not finite are left out.
pub fn write(ink: &[Ink], size: [f32; 2], background: Colour, title: &str) -> String {
    let [width, height] = size.map(|px| if px.is_finite() { px.max(0.0) } else { 0.0 }).map(number);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"'IBM Plex Sans', sans-serif\">\n\
         <title>{}</title>\n",
        escaped(title)
    );
    push(&mut svg, format_args!("<rect width=\"{width}\" height=\"{height}\"{}/>\n", paint("fill", background)));
    for item in ink {
        if let Some(element) = element(item) {
            svg.push_str(&element);
            svg.push('\n');
        }
    }
    svg.push_str("</svg>\n");
    svg
}

fn push(svg: &mut String, text: std::fmt::Arguments<'_>) {
    svg.write_fmt(text).expect("a string takes any text");
}

fn element(item: &Ink) -> Option<String> {
    let mut text = String::new();
    match item {
        Ink::Area { rings, fill } => {
            let mut path = String::new();
            for ring in rings.iter().filter(|ring| ring.len() >= 3) {
                trace(&mut path, ring, true)?;
            }
            push(&mut text, format_args!("<path d=\"{path}\" fill-rule=\"evenodd\"{}/>", paint("fill", *fill)));
            (!path.is_empty()).then_some(text)
        }
        Ink::Line { spots, closed, width, colour, dash } => {
            if spots.len() < 2 || !width.is_finite() {
                return None;
            }
            let mut path = String::new();
            trace(&mut path, spots, *closed)?;
            push(
                &mut text,
                format_args!(
                    "<path d=\"{path}\" fill=\"none\"{} stroke-width=\"{}\"",
                    paint("stroke", *colour),
                    number(*width)
                ),
            );
            if let Some([dash, gap]) = dash {
                push(&mut text, format_args!(" stroke-dasharray=\"{} {}\"", number(*dash), number(*gap)));
            }
            text.push_str("/>");
            Some(text)
        }
        Ink::Disc { middle, radius, fill, edge } => {
            let [x, y] = finite(*middle)?.map(number);
            if !radius.is_finite() {
                return None;
            }
            push(&mut text, format_args!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{}\"", number(*radius)));
            match fill {
                Some(fill) => text.push_str(&paint("fill", *fill)),
                None => text.push_str(" fill=\"none\""),
            }
            if let Some((width, colour)) = edge {
                push(&mut text, format_args!("{} stroke-width=\"{}\"", paint("stroke", *colour), number(*width)));
            }
            text.push_str("/>");
            Some(text)
        }
        Ink::Text { at, text: says, size, weight, colour, anchor, turn_rad } => {
            let [x, y] = finite(*at)?;
            if !(size.is_finite() && turn_rad.is_finite()) {
                return None;
            }
            push(
                &mut text,
                format_args!(
                    "<text x=\"{}\" y=\"{}\" font-size=\"{}\" font-weight=\"{}\" text-anchor=\"{}\"{}",
                    number(x),
                    number(y + BASELINE * size),
                    number(*size),
                    weight_name(*weight),
                    anchor_name(*anchor),
                    paint("fill", *colour)
                ),
            );
            if *turn_rad != 0.0 {
                let degrees = number(turn_rad.to_degrees());
                push(&mut text, format_args!(" transform=\"rotate({degrees} {} {})\"", number(x), number(y)));
            }
            push(&mut text, format_args!(">{}</text>", escaped(says)));
            Some(text)
        }
    }
}

fn finite(spot: Spot) -> Option<Spot> {
    spot.iter().all(|px| px.is_finite()).then_some(spot)
}

fn trace(path: &mut String, spots: &[Spot], closed: bool) -> Option<()> {
    for (index, spot) in spots.iter().enumerate() {
        let [x, y] = finite(*spot)?.map(number);
        push(path, format_args!("{}{x} {y}", if index == 0 { 'M' } else { 'L' }));
    }
    if closed {
        path.push('Z');
    }
    Some(())
}

fn paint(what: &str, [red, green, blue, opacity]: Colour) -> String {
    let mut text = format!(" {what}=\"#{red:02x}{green:02x}{blue:02x}\"");
    if opacity < 255 {
        push(&mut text, format_args!(" {what}-opacity=\"{}\"", number(f32::from(opacity) / 255.0)));
    }
    text
}

const fn weight_name(weight: Weight) -> &'static str {
    match weight {
        Weight::Regular => "400",
        Weight::Medium => "500",
        Weight::SemiBold => "600",
    }
}

const fn anchor_name(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}

/// A number with at most two decimals and no `-0`.
fn number(value: f32) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Text that cannot end its element; characters that XML 1.0 does not allow are left out.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            _ => safe.push(letter),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use drawing::{Anchor, Ink, Weight};

    use super::write;

    fn text(says: &str) -> Ink {
        Ink::Text {
            at: [10.0, 20.0],
            text: says.to_owned(),
            size: 10.0,
            weight: Weight::Medium,
            colour: [1, 2, 3, 255],
            anchor: Anchor::Start,
            turn_rad: -std::f32::consts::FRAC_PI_2,
        }
    }

    #[test]
    fn names_cannot_break_out_of_their_element() {
        let svg = write(&[text("</text><script>\u{1}\"&")], [100.0, 50.0], [255; 4], "a<b");
        assert!(svg.contains("<title>a&lt;b</title>"));
        assert!(svg.contains("&lt;/text&gt;&lt;script&gt;&quot;&amp;</text>"), "{svg}");
        assert!(svg.contains("rotate(-90 10 20)"), "{svg}");
    }

    #[test]
    fn what_is_not_finite_is_left_out() {
        let line = |x| Ink::Line {
            spots: vec![[0.0, 0.0], [x, 1.0]],
            closed: false,
            width: 1.0,
            colour: [0, 0, 0, 128],
            dash: Some([5.0, 4.0]),
        };
        let svg = write(&[line(f32::NAN), line(3.456)], [10.0, 10.0], [255; 4], "");
        assert_eq!(svg.matches("<path").count(), 1);
        assert!(svg.contains("d=\"M0 0L3.46 1\" fill=\"none\" stroke=\"#000000\" stroke-opacity=\"0.5\""), "{svg}");
        assert!(svg.contains("stroke-dasharray=\"5 4\""));
    }
}
