//! What of a sheet has its words and signs already, so that what is written over it later finds room beside them.

use crate::ink::{Ink, Spot};
use crate::inking::blocks::Block;
use crate::inking::trace::{Px, apart};
use crate::told::Told;
use crate::view::View;

/// Room between plates.
const APART_PX: f64 = 2.0;
/// A patch under words reaches so far beyond them.
const PATCH_PX: f64 = 2.5;
/// Plates keep so far from the sheet's edges.
const EDGE_PX: f64 = 4.0;

/// The taken parts of a sheet.
#[derive(Clone, Debug, Default)]
pub struct Taken {
    /// Plates, signs and circles, and what stands at the pointer.
    blocks: Vec<Block>,
    /// Plain words.
    words: Vec<Block>,
    /// Nets, which a plate covers only where it finds no other room.
    nets: Vec<[Px; 2]>,
    /// Of the plates those that hang on a leader, such as the weakest post's: what is in the hand is judged by them.
    flags: Vec<Block>,
    /// Figures among words and flags.
    told: Vec<(Block, Told)>,
}

impl Taken {
    pub(crate) fn new(mut blocks: Vec<Block>, mut words: Vec<Block>, nets: Vec<[Px; 2]>, flags: Vec<Block>) -> Self {
        blocks.extend(&flags);
        // What a flag says is no plain word.
        words.retain(|word| !flags.iter().any(|flag| flag.overlaps(word)));
        Self { blocks, words, nets, flags, told: Vec::new() }
    }

    /// The same, with the figures that stand on it.
    pub(crate) fn telling(self, told: Vec<(Block, Told)>) -> Self {
        Self { told, ..self }
    }

    /// What the figure at a spot is.
    pub fn told_at(&self, spot: Spot) -> Option<Told> {
        let at = spot.map(f64::from);
        self.told.iter().find(|(block, _)| block.grown(PATCH_PX).holds(at)).map(|&(_, told)| told)
    }

    /// How many plates on a leader lie under a part: left, top, right, bottom.
    pub fn flags_under(&self, part: [f32; 4]) -> usize {
        let part = Block::of(part.map(f64::from)).grown(APART_PX);
        self.flags.iter().filter(|flag| flag.overlaps(&part)).count()
    }

    /// How many plates and signs lie under a part, left, top, right, bottom: of those that stand near a spot, and of all.
    pub fn signs_under(&self, part: [f32; 4], about: Spot, reach_px: f64) -> (usize, usize) {
        let (part, about) = (Block::of(part.map(f64::from)), about.map(f64::from));
        let under = self.blocks.iter().filter(|sign| sign.overlaps(&part));
        let is_near = |sign: &Block| apart(sign.middle(), about) <= reach_px;
        under.fold((0, 0), |(near, all), sign| (near + usize::from(is_near(sign)), all + 1))
    }

    /// The plain words of which something lies under any of some parts, left, top, right, bottom, by their places.
    pub fn words_under(&self, parts: &[[f32; 4]]) -> Vec<usize> {
        let parts: Vec<Block> = parts.iter().map(|part| Block::of(part.map(f64::from))).collect();
        let under = |word: &Block| parts.iter().any(|part| part.overlaps(word));
        self.words.iter().enumerate().filter(|(_, word)| under(word)).map(|(place, _)| place).collect()
    }

    /// The ink without those of its words: a part of a word is worse than none.
    #[must_use]
    pub fn without(&self, ink: &[Ink], words: &[usize]) -> Vec<Ink> {
        let gone: Vec<Block> =
            words.iter().filter_map(|&place| self.words.get(place)).map(|word| word.grown(PATCH_PX)).collect();
        let is_gone = |spots: &[Spot]| gone.iter().any(|word| spots.iter().all(|at| word.holds(at.map(f64::from))));
        let stays = |item: &&Ink| match item {
            Ink::Text { at, .. } => !is_gone(&[*at]),
            // What was laid beneath it.
            Ink::Area { rings, .. } => !rings.iter().all(|ring| is_gone(ring)),
            Ink::Line { .. } | Ink::Disc { .. } => true,
        };
        ink.iter().filter(stays).cloned().collect()
    }

    /// Takes a part: left, top, right, bottom.
    pub fn take(&mut self, part: [f32; 4]) {
        self.block(Block::of(part.map(f64::from)));
    }

    pub(crate) fn block(&mut self, block: Block) {
        self.blocks.push(block);
    }

    /// What another drawing on the same sheet takes.
    pub fn extend(&mut self, other: Self) {
        self.blocks.extend(other.blocks);
        self.words.extend(other.words);
        self.nets.extend(other.nets);
        self.flags.extend(other.flags);
        self.told.extend(other.told);
    }

    /// Takes the first of some places that has room for a plate of that size, off the nets if one has; `None` where none
    /// has room.
    pub(crate) fn room(&mut self, view: &View, size: [f64; 2], places: impl IntoIterator<Item = Px>) -> Option<Px> {
        // Most find room at their first place: no place is looked at before it is its turn.
        let mut clear = self.free(view, size, places).filter(|&at| self.words_beneath(at, size) == 0);
        let first = clear.next()?;
        let off_nets = std::iter::once(first).chain(clear).find(|&at| self.is_off_nets(at, size));
        let middle = off_nets.unwrap_or(first);
        self.block(Block::new(middle, size[0], size[1]));
        Some(middle)
    }

    /// The same for what is not to be left out: rather than say nothing it lies over plain words, as few as can be.
    pub(crate) fn room_or_words(
        &mut self,
        view: &View,
        size: [f64; 2],
        places: impl IntoIterator<Item = Px>,
    ) -> Option<Px> {
        let places: Vec<Px> = places.into_iter().collect();
        self.room(view, size, places.iter().copied()).or_else(|| {
            let middle = self.free(view, size, places).min_by_key(|&at| self.words_beneath(at, size))?;
            self.block(Block::new(middle, size[0], size[1]));
            Some(middle)
        })
    }

    /// The places at which such a plate lies within the sheet and on no other plate, sign or circle.
    fn free(&self, view: &View, size: [f64; 2], places: impl IntoIterator<Item = Px>) -> impl Iterator<Item = Px> {
        let sheet = view.size.map(f64::from);
        let is_free = move |middle: &Px| {
            let within = (0..2).all(|axis| {
                let half = size[axis] / 2.0;
                middle[axis] - half >= EDGE_PX && middle[axis] + half <= sheet[axis] - EDGE_PX
            });
            let grown = Block::new(*middle, size[0], size[1]).grown(APART_PX);
            within && self.blocks.iter().all(|other| !other.overlaps(&grown))
        };
        places.into_iter().filter(is_free)
    }

    fn words_beneath(&self, middle: Px, size: [f64; 2]) -> usize {
        let plate = Block::new(middle, size[0], size[1]).grown(APART_PX);
        self.words.iter().filter(|other| other.overlaps(&plate)).count()
    }

    fn is_off_nets(&self, middle: Px, size: [f64; 2]) -> bool {
        let plate = Block::new(middle, size[0], size[1]).grown(APART_PX);
        self.nets.iter().all(|&[from, to]| !plate.meets(from, to))
    }
}
