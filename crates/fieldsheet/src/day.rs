//! A day of the calendar, as words.

use words::Words;
use words::texts::Sheet as Text;

/// A day of the Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day {
    year: u16,
    month: u8,
    of_month: u8,
}

impl Day {
    /// The day, where the calendar has it; years from 1583, the first whole one of this calendar, to 9999.
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let leap = year.is_multiple_of(4) && !year.is_multiple_of(100) || year.is_multiple_of(400);
        let days = match month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => return None,
        };
        ((1583..=9999).contains(&year) && (1..=days).contains(&day)).then_some(Self { year, month, of_month: day })
    }

    /// Days after Monday, by Sakamoto's rule (comp.lang.c, 1993).
    fn weekday(self) -> u16 {
        const SHIFT: [u16; 12] = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4];
        let year = if self.month < 3 { self.year - 1 } else { self.year };
        let after_sunday =
            (year + year / 4 - year / 100 + year / 400 + SHIFT[usize::from(self.month) - 1] + u16::from(self.of_month))
                % 7;
        (after_sunday + 6) % 7
    }

    /// The day in words, such as `Friday 18 June 2027`.
    pub(crate) fn said(self, words: Words) -> String {
        const WEEKDAYS: [Text; 7] =
            [Text::Monday, Text::Tuesday, Text::Wednesday, Text::Thursday, Text::Friday, Text::Saturday, Text::Sunday];
        const MONTHS: [Text; 12] = [
            Text::January,
            Text::February,
            Text::March,
            Text::April,
            Text::May,
            Text::June,
            Text::July,
            Text::August,
            Text::September,
            Text::October,
            Text::November,
            Text::December,
        ];
        words.say(
            Text::Day,
            &[
                ("weekday", words.text(WEEKDAYS[usize::from(self.weekday())])),
                ("day", &self.of_month.to_string()),
                ("month", words.text(MONTHS[usize::from(self.month) - 1])),
                ("year", &self.year.to_string()),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::Day;
    use words::Words;

    #[test]
    fn days_fall_on_their_weekdays() {
        for ((year, month, day), want) in [
            ((2000, 1, 1), "Saturday 1 January 2000"),
            ((2027, 6, 18), "Friday 18 June 2027"),
            ((2028, 2, 29), "Tuesday 29 February 2028"),
            // The first landing on the Moon, in universal time.
            ((1969, 7, 20), "Sunday 20 July 1969"),
        ] {
            assert_eq!(Day::new(year, month, day).map(|day| day.said(Words::default())).as_deref(), Some(want));
        }
        for (year, month, day) in
            [(2027, 2, 29), (1900, 2, 29), (2027, 0, 1), (2027, 13, 1), (2027, 4, 31), (2027, 4, 0)]
        {
            assert_eq!(Day::new(year, month, day), None);
        }
    }
}
