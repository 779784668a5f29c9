//! Which way up a camera held a picture: the orientation of its Exif head, and where each pixel then stands.
//!
//! Exif 2.32 (CIPA DC-008-2019), 4.6.4 and 4.6.5: a TIFF 6.0 head whose first directory may hold tag 274, a short, 1 to 8:
//! where the first row and the first column of the file lie as the picture is seen. Without it, or with anything else
//! there, the picture is seen as it lies in the file.

use plan::World;

/// How a picture lies in its file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Orientation {
    /// 1: as it is seen.
    #[default]
    AsSeen,
    /// 2: left and right changed.
    Mirrored,
    /// 3: upside down.
    HalfTurned,
    /// 4: top and bottom changed.
    Flipped,
    /// 5: rows and columns changed.
    Transposed,
    /// 6: to be turned a quarter clockwise.
    TurnedLeft,
    /// 7: rows and columns changed, and upside down.
    Transverse,
    /// 8: to be turned a quarter counter-clockwise.
    TurnedRight,
}

/// Tag of the orientation.
const ORIENTATION: u16 = 274;
/// The kind of entry that it is: a short of two bytes.
const SHORT: u16 = 3;
/// Bytes of an entry of a directory.
const ENTRY: usize = 12;

impl Orientation {
    /// By the Exif head of a picture, from its TIFF head on.
    pub(super) fn of_exif(exif: &[u8]) -> Self {
        Self::found(exif).unwrap_or_default()
    }

    fn found(exif: &[u8]) -> Option<Self> {
        let little = match exif.get(..4)? {
            b"II*\0" => true,
            b"MM\0*" => false,
            _ => return None,
        };
        let short = |at: usize| {
            let bytes = exif.get(at..at.checked_add(2)?)?.try_into().ok()?;
            Some(if little { u16::from_le_bytes(bytes) } else { u16::from_be_bytes(bytes) })
        };
        let long = |at: usize| {
            let bytes = exif.get(at..at.checked_add(4)?)?.try_into().ok()?;
            Some(if little { u32::from_le_bytes(bytes) } else { u32::from_be_bytes(bytes) })
        };
        let directory = usize::try_from(long(4)?).ok()?;
        let count = usize::from(short(directory)?);
        let entries = (0..count).map_while(|entry| directory.checked_add(2 + entry * ENTRY));
        let entry = entries.into_iter().find(|&at| short(at) == Some(ORIENTATION))?;
        if (short(entry + 2)?, long(entry + 4)?) != (SHORT, 1) {
            return None;
        }
        Some(match short(entry + 8)? {
            2 => Self::Mirrored,
            3 => Self::HalfTurned,
            4 => Self::Flipped,
            5 => Self::Transposed,
            6 => Self::TurnedLeft,
            7 => Self::Transverse,
            8 => Self::TurnedRight,
            _ => Self::AsSeen,
        })
    }

    /// Whether the file's rows are seen as columns.
    fn is_on_its_side(self) -> bool {
        matches!(self, Self::Transposed | Self::TurnedLeft | Self::Transverse | Self::TurnedRight)
    }

    /// Width and height as it is seen, of so many in the file.
    pub(super) fn seen<T>(self, [wide, tall]: [T; 2]) -> [T; 2] {
        if self.is_on_its_side() { [tall, wide] } else { [wide, tall] }
    }

    /// Where in the file a pixel is that is seen in that column and row; `size` is that of the file.
    pub(super) fn in_file(self, [column, row]: [i64; 2], [wide, tall]: [u32; 2]) -> [i64; 2] {
        let (from_right, from_foot) = (|at: i64| i64::from(wide) - 1 - at, |at: i64| i64::from(tall) - 1 - at);
        match self {
            Self::AsSeen => [column, row],
            Self::Mirrored => [from_right(column), row],
            Self::HalfTurned => [from_right(column), from_foot(row)],
            Self::Flipped => [column, from_foot(row)],
            Self::Transposed => [row, column],
            Self::TurnedLeft => [row, from_foot(column)],
            Self::Transverse => [from_right(row), from_foot(column)],
            Self::TurnedRight => [from_right(row), column],
        }
    }

    /// The place of the picture as it is seen, by a world file: that one counts the file's own columns and rows.
    #[must_use]
    pub fn world(self, world: World, size_px: [u32; 2]) -> World {
        let World([a, d, b, e, c, f]) = world;
        // The middle of a pixel as it is seen.
        let place = |seen: [i64; 2]| {
            let [column, row] = self.in_file(seen, size_px).map(|at| at as f64);
            [a * column + b * row + c, d * column + e * row + f]
        };
        let [first, ahead, down] = [[0, 0], [1, 0], [0, 1]].map(place);
        let step = |to: [f64; 2]| [to[0] - first[0], to[1] - first[1]];
        if self == Self::AsSeen {
            return world;
        }
        World([step(ahead)[0], step(ahead)[1], step(down)[0], step(down)[1], first[0], first[1]])
    }
}
