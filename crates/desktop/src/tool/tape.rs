//! The tape: laid from place to place.

use plan::Point;

use super::{Hand, SAME_PLACE_M, apart_m};

/// A tape that is laid from place to place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tape {
    /// The places so far.
    pub places: Vec<Point>,
    /// Where the hand is.
    pub pointer: Option<Point>,
    /// Whether it lies as it is: the next click begins anew.
    pub done: bool,
    /// Places that were taken up again, the one that stood first last.
    pub lifted: Vec<Point>,
}

impl Tape {
    /// All places, the hand last while it is not done.
    pub fn all(&self) -> Vec<Point> {
        let hand = self.pointer.filter(|_| !self.done && !self.places.is_empty());
        let far = |hand: &Point| self.places.last().is_none_or(|&last| apart_m(last, *hand) > SAME_PLACE_M);
        self.places.iter().copied().chain(hand.filter(far)).collect()
    }

    pub(super) fn step(mut self, hand: Hand) -> Self {
        match hand {
            Hand::Move(at) => self.pointer = Some(at),
            Hand::Click { at, .. } => self.set(at),
            Hand::Set => {
                if let Some(at) = self.pointer {
                    self.set(at);
                }
            }
            // The hand's own place is the last one.
            Hand::Close | Hand::CloseHere => {
                self.places = self.all();
                self.done = self.places.len() > 1;
            }
            Hand::Back => {
                self.lifted.extend(self.places.pop());
                self.done = false;
            }
            Hand::Again => self.places.extend(self.lifted.pop()),
            Hand::Off => self.pointer = None,
            Hand::Type(_) | Hand::Leave => {}
        }
        self
    }

    fn set(&mut self, at: Point) {
        if self.done {
            *self = Self::default();
        }
        self.pointer = Some(at);
        self.lifted.clear();
        if self.places.last().is_none_or(|&last| apart_m(last, at) > SAME_PLACE_M) {
            self.places.push(at);
        }
    }
}
