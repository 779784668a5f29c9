//! The keeper's braces and mower.

use egui::{Id, Ui};
use words::texts::Store as Text;
use words::{Measure, Range};

use super::{Desk, Figure, Owner, set_store};

const STAKE_LENGTH: Figure = Figure::new(Text::StakeLength, Measure::Small, Range::between(0.05, 3.0));
const STAKE_THICKNESS: Figure = Figure::new(Text::StakeThickness, Measure::Thin, Range::between(0.001, 0.2));
const LOOP_HEIGHT: Figure = Figure::new(Text::LoopHeight, Measure::Small, Range::zero_to(2.0));
const STAND_OFF: Figure = Figure::new(Text::StandOff, Measure::Length, Range::between(0.1, 20.0));
const CUT_WIDTH: Figure = Figure::new(Text::CutWidth, Measure::Small, Range::between(0.1, 10.0));
const CUT_OVERLAP: Figure = Figure::new(Text::CutOverlap, Measure::Percent, Range::zero_to(0.9));

pub(super) fn braces(ui: &mut Ui, desk: &mut Desk<'_>) {
    let head = desk.words.text(Text::Braces);
    desk.section(ui, head, "");
    ui.add_space(4.0);
    desk.second(ui, desk.words.text(Text::BracesWhy));
    ui.add_space(6.0);
    let owner = Owner { id: Id::unique("brace field"), name: head };
    let mut store = desk.editor.plan().store.clone();
    let brace = &mut store.brace;
    if let Some(length_m) = owner.stated(ui, desk, &STAKE_LENGTH, brace.stake_length_m, brace.stake_length_m()) {
        brace.stake_length_m = length_m;
    }
    if let Some(diameter_m) = owner.stated(ui, desk, &STAKE_THICKNESS, brace.stake_diameter_m, brace.stake_diameter_m())
    {
        brace.stake_diameter_m = diameter_m;
    }
    if let Some(height_m) = owner.stated(ui, desk, &LOOP_HEIGHT, brace.loop_height_m, brace.loop_height_m()) {
        brace.loop_height_m = height_m;
    }
    if let Some(stand_off_m) = owner.stated(ui, desk, &STAND_OFF, brace.stand_off_m, brace.stand_off_m()) {
        brace.stand_off_m = stand_off_m;
    }
    set_store(desk, store);
}

pub(super) fn mower(ui: &mut Ui, desk: &mut Desk<'_>) {
    let head = desk.words.text(Text::Mower);
    desk.section(ui, head, "");
    ui.add_space(6.0);
    let owner = Owner { id: Id::unique("mower field"), name: head };
    let mut store = desk.editor.plan().store.clone();
    let mower = &mut store.mower;
    if let Some(width_m) = owner.stated(ui, desk, &CUT_WIDTH, mower.width_m, mower.width_m()) {
        mower.width_m = width_m;
    }
    if let Some(overlap) = owner.stated(ui, desk, &CUT_OVERLAP, mower.overlap, mower.overlap()) {
        mower.overlap = overlap;
    }
    set_store(desk, store);
}
