//! World files: six lines that say where a picture lies.

use plan::World;
use words::Words;
use words::texts::Underlay as Text;

/// The most of a world file that is looked at, bytes: six numbers are short.
const MOST_BYTES: usize = 4096;
/// A pixel smaller than this is counted in degrees, metres: nobody flies so low.
const LEAST_M: f64 = 1e-4;

/// Why a world file places nothing.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum WorldError {
    /// `world/lines`: not six numbers.
    #[error("world/lines: {count}")]
    Lines {
        /// How many there are.
        count: usize,
    },
    /// `world/not-a-number`
    #[error("world/not-a-number: line {line}")]
    NotANumber {
        /// Line, from 1.
        line: usize,
    },
    /// `world/zero`: a pixel of no size.
    #[error("world/zero")]
    Zero,
    /// `world/degrees`: pixels far smaller than any picture's in metres.
    #[error("world/degrees")]
    Degrees,
}

/// Where a picture lies by its world file: east and north of a step to the right, of a step down, and of the middle of
/// the upper left pixel.
///
/// # Errors
/// [`WorldError`] where there are no six numbers, a pixel has no size, or one of degrees.
pub fn world(bytes: &[u8]) -> Result<World, WorldError> {
    let text = String::from_utf8_lossy(&bytes[..bytes.len().min(MOST_BYTES)]);
    let text = text.trim_start_matches('\u{feff}');
    let lines = text.lines().enumerate().map(|(index, line)| (index + 1, line.trim()));
    let stated: Vec<(usize, &str)> = lines.filter(|(_, line)| !line.is_empty()).collect();
    if stated.len() != 6 {
        return Err(WorldError::Lines { count: stated.len() });
    }
    let mut numbers = [0.0; 6];
    for (number, &(line, text)) in numbers.iter_mut().zip(&stated) {
        let read = text.parse::<f64>().ok().filter(|number| number.is_finite());
        *number = read.ok_or(WorldError::NotANumber { line })?;
    }
    let world = World(numbers);
    if !world.is_sound() {
        return Err(WorldError::Zero);
    }
    if world.metres_a_pixel() < LEAST_M {
        return Err(WorldError::Degrees);
    }
    Ok(world)
}

/// The names that a picture's world file may have.
pub fn names(picture: &str) -> Vec<String> {
    let Some((stem, ending)) = picture.rsplit_once('.') else { return vec![format!("{picture}.wld")] };
    let lower = ending.to_lowercase();
    let short = match lower.as_str() {
        "png" => "pgw",
        "jpg" | "jpeg" => "jgw",
        _ => "wld",
    };
    let mut names = vec![format!("{stem}.{short}"), format!("{stem}.{ending}w"), format!("{stem}.wld")];
    if ending != lower {
        names.insert(1, format!("{stem}.{}", short.to_uppercase()));
    }
    names
}

/// The sentence for what is wrong with a world file of that name.
pub fn sentence(words: Words, file: &str, error: &WorldError) -> String {
    match error {
        WorldError::Lines { count } => words.say(Text::WorldLines, &[("file", file), ("count", &count.to_string())]),
        WorldError::NotANumber { line } => words.say(Text::WorldNumber, &[("file", file), ("line", &line.to_string())]),
        WorldError::Zero => words.say(Text::WorldZero, &[("file", file)]),
        WorldError::Degrees => words.say(Text::WorldDegrees, &[("file", file)]),
    }
}
