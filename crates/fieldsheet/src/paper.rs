//! The paper: its sizes, margins and columns, in points (1/72 inch) from the top left corner.

/// Points in a millimetre.
pub(crate) const MM: f32 = 72.0 / 25.4;
/// Margin all round.
pub(crate) const MARGIN: f32 = 15.0 * MM;
/// Between two columns.
pub(crate) const GUTTER: f32 = 4.0 * MM;
/// How many columns there are.
const COLUMNS: f32 = 6.0;

/// A size of paper, upright.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 inches (ANSI/ASME Y14.1, size A).
    Letter,
}

impl Paper {
    /// Width and height.
    pub const fn size(self) -> [f32; 2] {
        match self {
            Self::A4 => [210.0 * MM, 297.0 * MM],
            Self::Letter => [612.0, 792.0],
        }
    }

    /// Left and right edge of what is printed.
    pub(crate) fn sides(self) -> [f32; 2] {
        [MARGIN, self.size()[0] - MARGIN]
    }

    /// Upper and lower edge of what is printed.
    pub(crate) fn ends(self) -> [f32; 2] {
        [MARGIN, self.size()[1] - MARGIN]
    }

    /// Left and right edge of some columns of the six, from the first, counted from 0.
    pub(crate) fn columns(self, first: u8, count: u8) -> [f32; 2] {
        let [left, right] = self.sides();
        let width = (right - left - (COLUMNS - 1.0) * GUTTER) / COLUMNS;
        let start = left + f32::from(first) * (width + GUTTER);
        [start, start + f32::from(count) * (width + GUTTER) - GUTTER]
    }

    /// Height of the map. Letter is shorter than A4 and gives some of it up, so that the rest has room.
    pub(crate) const fn map_height(self) -> f32 {
        match self {
            Self::A4 => 113.0 * MM,
            Self::Letter => 108.0 * MM,
        }
    }
}
