//! A line of a journal: sixteen hexadecimal digits, a blank, JSON, a line end.
//!
//! The digits are a running sum over the JSON of this line and of every line before it, so that a line torn,
//! altered, missing, or out of another journal is noticed. The sum is FNV-1a of 64 bits (Fowler, Noll and Vo);
//! each of its steps can be undone, so that a single altered byte is always noticed. It guards against
//! accidents, not against somebody who forges a journal.

/// The running sum.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sum(u64);

impl Sum {
    /// The sum of nothing.
    pub(crate) const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    /// The sum with these bytes after those before.
    fn with(self, bytes: &[u8]) -> Self {
        Self(bytes.iter().fold(self.0, |sum, &byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)))
    }

    /// The digits.
    fn digits(self) -> String {
        format!("{:016x}", self.0)
    }
}

/// Writes a line after those before; JSON has no line end within.
pub(crate) fn push(text: &mut Vec<u8>, sum: &mut Sum, json: &[u8]) {
    *sum = sum.with(json).with(b"\n");
    text.extend_from_slice(sum.digits().as_bytes());
    text.push(b' ');
    text.extend_from_slice(json);
    text.push(b'\n');
}

/// The JSON of each line, up to the first that is not whole.
#[derive(Clone, Debug)]
pub(crate) struct Lines<'a> {
    rest: &'a [u8],
    sum: Sum,
}

impl<'a> Lines<'a> {
    /// The lines of a journal.
    pub(crate) fn new(bytes: &'a [u8]) -> Self {
        Self { rest: bytes, sum: Sum::new() }
    }

    /// What has not been read.
    pub(crate) fn rest(&self) -> &'a [u8] {
        self.rest
    }
}

impl<'a> Iterator for Lines<'a> {
    type Item = &'a [u8];

    fn next(&mut self) -> Option<Self::Item> {
        let end = self.rest.iter().position(|&byte| byte == b'\n')?;
        let (line, rest) = (&self.rest[..end], &self.rest[end + 1..]);
        let (digits, json) = (line.get(..16)?, line.get(17..)?);
        let sum = self.sum.with(json).with(b"\n");
        if digits != sum.digits().as_bytes() || line[16] != b' ' {
            return None;
        }
        (self.rest, self.sum) = (rest, sum);
        Some(json)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sum_meets_published_values() {
        // Test vectors of the authors of FNV-1a, 64 bits; from memory.
        for (text, sum) in
            [("", 0xcbf2_9ce4_8422_2325), ("a", 0xaf63_dc4c_8601_ec8c), ("foobar", 0x8594_4171_f739_67e8_u64)]
        {
            assert_eq!(Sum::new().with(text.as_bytes()).0, sum, "{text}");
        }
    }

    #[test]
    fn a_line_altered_missing_or_doubled_ends_the_reading() {
        let mut text = Vec::new();
        let mut sum = Sum::new();
        let json: Vec<String> = (0..5).map(|number| format!("[{number}]")).collect();
        for json in &json {
            push(&mut text, &mut sum, json.as_bytes());
        }
        assert_eq!(Lines::new(&text).collect::<Vec<_>>(), json.iter().map(String::as_bytes).collect::<Vec<_>>());
        for at in 0..text.len() {
            for bit in 0..8 {
                let mut altered = text.clone();
                altered[at] ^= 1 << bit;
                let line = text[..at].split(|&byte| byte == b'\n').count() - 1;
                assert_eq!(Lines::new(&altered).count(), line, "byte {at}, bit {bit}");
            }
        }
        let lines: Vec<&[u8]> = text.split_inclusive(|&byte| byte == b'\n').collect();
        assert_eq!(Lines::new(&[lines[0], lines[2], lines[3]].concat()).count(), 1);
        assert_eq!(Lines::new(&[lines[0], lines[1], lines[1]].concat()).count(), 2);
    }
}
