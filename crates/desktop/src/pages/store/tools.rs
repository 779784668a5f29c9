//! The keeper's braces and mower.

use egui::{Id, Ui};
use words::texts::{About, Store as Text};
use words::{Measure, Range};

use super::{Desk, Figure, Owner, set_store};
use crate::kit;

const STAKE_LENGTH: Figure = Figure::new(Text::StakeLength, Measure::Small, Range::between(0.05, 3.0));
const STAKE_THICKNESS: Figure = Figure::new(Text::StakeThickness, Measure::Thin, Range::between(0.001, 0.2));
const LOOP_HEIGHT: Figure = Figure::new(Text::LoopHeight, Measure::Small, Range::zero_to(2.0));
const STAND_OFF: Figure = Figure::new(Text::StandOff, Measure::Length, Range::between(0.1, 20.0));
const GUY_HEIGHT: Figure = Figure::new(Text::GuyHeight, Measure::Length, Range::between(0.1, 2.0));
const GUY_ANGLE: Figure = Figure::new(Text::GuyAngle, Measure::Degrees, Range::between(10.0, 80.0));
const PEGS: Figure = Figure::new(Text::Pegs, Measure::Count, Range::between(1.0, 4.0));
const POST_DEEP: Figure = Figure::new(Text::PostDeep, Measure::Small, Range::between(0.05, 3.0));
const POST_THICK: Figure = Figure::new(Text::PostThick, Measure::Thin, Range::between(0.001, 0.2));
const SAFETY: Figure = Figure::new(Text::HoldAsked, Measure::Number, Range::between(1.0, 10.0));
const MINUTES: Range = Range::zero_to(600.0);
const LONGER_PEG: Figure = Figure::new(Text::LongerPegRate, Measure::Minutes, MINUTES);
const SECOND_PEG: Figure = Figure::new(Text::SecondPegRate, Measure::Minutes, MINUTES);
const BRACE_POST: Figure = Figure::new(Text::BracePostRate, Measure::Minutes, MINUTES);
const CUT_POST: Figure = Figure::new(Text::CutPostRate, Measure::Minutes, MINUTES);
const CARRYING: Figure = Figure::new(Text::CarryRate, Measure::Minutes, MINUTES);
const CUT_WIDTH: Figure = Figure::new(Text::CutWidth, Measure::Small, Range::between(0.1, 10.0));
const CUT_OVERLAP: Figure = Figure::new(Text::CutOverlap, Measure::Percent, Range::zero_to(0.9));
const PACE: Figure = Figure::new(Text::MowSpeed, Measure::Speed, Range::between(0.1, 5.0));
const SHARE: Figure = Figure::new(Text::MowShare, Measure::Percent, Range::between(0.1, 1.0));
const CUT_HEIGHT: Figure = Figure::new(Text::CutHeight, Measure::Small, Range::zero_to(0.3));

pub(super) fn braces(ui: &mut Ui, desk: &mut Desk<'_>) {
    let head = desk.words.text(Text::Braces);
    desk.section(ui, head, "", About::Stated);
    ui.add_space(4.0);
    desk.second(ui, desk.words.text(Text::BracesWhy));
    ui.add_space(6.0);
    let owner = Owner { id: Id::unique("brace field"), name: head };
    let plan = desk.editor.plan();
    let (was, mut store) = (&plan.store.brace, plan.store.clone());
    let brace = &mut store.brace;
    owner.stated(ui, desk, &STAKE_LENGTH, &mut brace.stake_length_m, was.stake_length_m());
    owner.stated(ui, desk, &STAKE_THICKNESS, &mut brace.stake_diameter_m, was.stake_diameter_m());
    owner.stated(ui, desk, &LOOP_HEIGHT, &mut brace.loop_height_m, was.loop_height_m());
    owner.stated(ui, desk, &STAND_OFF, &mut brace.stand_off_m, was.stand_off_m());
    owner.stated(ui, desk, &GUY_HEIGHT, &mut brace.guy_height_m, was.guy_height_m());
    let made_deg = was.guy_height_m().atan2(was.stand_off_m()).to_degrees();
    owner.stated(ui, desk, &GUY_ANGLE, &mut brace.guy_angle_deg, was.guy_angle_deg.unwrap_or(made_deg));
    owner.counted(ui, desk, &PEGS, &mut brace.pegs, was.pegs());
    owner.stated(ui, desk, &POST_DEEP, &mut brace.post_length_m, was.post_length_m());
    owner.stated(ui, desk, &POST_THICK, &mut brace.post_diameter_m, was.post_diameter_m());
    owner.stated(ui, desk, &SAFETY, &mut brace.safety_factor, was.safety_factor());
    set_store(desk, store);
    rates(ui, desk);
}

/// How long braces take, behind a link: the rates that the cheapest mend and the minutes rest on.
fn rates(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    ui.add_space(6.0);
    let id = Id::unique("brace rates open");
    let open: bool = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    let label = words.text(if open { Text::FoldBraceRates } else { Text::ShowBraceRates });
    if kit::link(ui, label, desk.p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if !open {
        return;
    }
    ui.add_space(6.0);
    let owner = Owner { id: Id::unique("brace rate"), name: words.text(Text::Braces) };
    let plan = desk.editor.plan();
    let (was, mut store) = (&plan.store.brace, plan.store.clone());
    let brace = &mut store.brace;
    owner.stated(ui, desk, &LONGER_PEG, &mut brace.longer_peg_minutes, was.longer_peg_minutes());
    owner.stated(ui, desk, &SECOND_PEG, &mut brace.second_peg_minutes, was.second_peg_minutes());
    owner.stated(ui, desk, &BRACE_POST, &mut brace.post_minutes, was.post_minutes());
    owner.stated(ui, desk, &CUT_POST, &mut brace.cut_post_minutes, was.cut_post_minutes());
    owner.stated(ui, desk, &CARRYING, &mut brace.carry_minutes, was.carry_minutes());
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::BraceRatesWhy));
    set_store(desk, store);
}

pub(super) fn mower(ui: &mut Ui, desk: &mut Desk<'_>) {
    let head = desk.words.text(Text::Mower);
    desk.section(ui, head, "", About::Stated);
    ui.add_space(6.0);
    let owner = Owner { id: Id::unique("mower field"), name: head };
    let plan = desk.editor.plan();
    let (was, mut store) = (&plan.store.mower, plan.store.clone());
    let mower = &mut store.mower;
    owner.stated(ui, desk, &CUT_WIDTH, &mut mower.width_m, was.width_m());
    owner.stated(ui, desk, &CUT_OVERLAP, &mut mower.overlap, was.overlap());
    owner.stated(ui, desk, &PACE, &mut mower.speed_m_per_s, was.speed_m_per_s());
    owner.stated(ui, desk, &SHARE, &mut mower.efficiency, was.efficiency());
    owner.stated(ui, desk, &CUT_HEIGHT, &mut mower.cut_height_m, was.cut_height_m());
    set_store(desk, store);
}
