//! Opens a plan file in the window, to look at: `look PLAN [PAGE] [light|dark] [WIDTHxHEIGHT PICTURE.png] [metric|feet]
//! [en|de|longer]`.

use std::time::Instant;

use desktop::editor::Page;
use desktop::{Opening, Smoke, Start};
use drawing::Theme;
use words::{Language, Units, Words};

#[allow(clippy::disallowed_methods, reason = "an example reads a file and a clock as the program does")]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let since = Instant::now();
    tracing_subscriber::fmt()
        .with_max_level(tracing_subscriber::filter::LevelFilter::INFO)
        .with_writer(std::io::stderr)
        .init();
    let mut arguments = std::env::args().skip(1);
    let path = arguments.next().ok_or("which plan?")?;
    let plan = plan::read(&std::fs::read(&path)?)?.plan;
    let page = match arguments.next().as_deref() {
        Some("ground") => Page::Ground,
        Some("power") => Page::Power,
        Some("moves") => Page::Moves,
        Some("book") => Page::Book,
        Some("sheet") => Page::Sheet,
        _ => Page::Run,
    };
    let theme = match arguments.next().as_deref() {
        Some("dark") => Theme::Dark,
        Some("contrast") => Theme::Contrast,
        _ => Theme::Light,
    };
    let smoke = arguments.next().zip(arguments.next()).map(|(size, picture)| {
        let (width, height) = size.split_once('x').unwrap_or(("1280", "800"));
        let size = [width.parse().unwrap_or(1280.0), height.parse().unwrap_or(800.0)];
        Smoke { frames: 3, picture: Some(picture.into()), size }
    });
    let units = if arguments.next().as_deref() == Some("feet") { Units::Feet } else { Units::Metric };
    let language = match arguments.next().as_deref() {
        Some("de") => Language::German,
        Some("longer") => Language::Longer,
        _ => Language::English,
    };
    let words = Words { units, language };
    let opening = Opening { plan, words, path: Some(path.into()), ..Opening::default() };
    desktop::run(Start { opening, theme: Some(theme), page, smoke, since })?;
    eprintln!("ended after {} ms", since.elapsed().as_millis());
    Ok(())
}
