//! How long things take: who is at work, what makes it longer, and every rate, on demand.

use egui::{Id, Ui, vec2};
use plan::{Rates, Store};
use words::texts::Window;
use words::texts::{About, Store as Text};
use words::{Measure, Range};

use super::{Desk, Owner, set_store};
use crate::field;
use crate::kit;

/// A rate: where it is stated, what stands in, and its field.
struct Rate {
    of: fn(&mut Rates) -> &mut Option<f64>,
    value: fn(&Rates) -> f64,
    label: Window,
    measure: Measure,
    range: Range,
}

macro_rules! rate {
    ($name:ident, $label:ident, $measure:ident, $range:expr) => {
        Rate {
            of: |rates| &mut rates.$name,
            value: |rates| rates.$name(),
            label: Window::$label,
            measure: Measure::$measure,
            range: $range,
        }
    };
}

const MINUTES: Range = Range::zero_to(600.0);
const SECONDS: Range = Range::zero_to(3_600.0);
const ON_FOOT: Range = Range::between(0.05, 5.0);
const TIMES: Range = Range::between(0.1, 20.0);

/// Every rate, in the order of the work.
const RATES: [Rate; 18] = [
    rate!(unroll_minutes, KeyUnroll, Minutes, MINUTES),
    rate!(tread_post_s, KeyTread, Seconds, SECONDS),
    rate!(join_minutes, KeyJoin, Minutes, MINUTES),
    rate!(brace_minutes, KeyBraceMinutes, Minutes, MINUTES),
    rate!(further_post_minutes, KeyFurtherPost, Minutes, MINUTES),
    rate!(power_minutes, KeyPower, Minutes, MINUTES),
    rate!(fold_minutes, KeyFold, Minutes, MINUTES),
    rate!(pull_post_s, KeyPull, Seconds, SECONDS),
    rate!(untie_minutes, KeyUntie, Minutes, MINUTES),
    rate!(draw_brace_minutes, KeyDrawBrace, Minutes, MINUTES),
    rate!(walk_m_per_s, KeyWalk, Speed, ON_FOOT),
    rate!(carry_m_per_s, KeyCarry, Speed, ON_FOOT),
    rate!(first_time_factor, KeyFirstTime, Number, Range::between(1.0, 20.0)),
    rate!(two_people_factor, KeyTwoPeople, Percent, Range::between(0.1, 1.0)),
    rate!(stony_factor, KeyStony, Number, TIMES),
    rate!(long_grass_factor, KeyLongGrass, Number, TIMES),
    rate!(rain_factor, KeyRain, Number, TIMES),
    rate!(dark_factor, KeyDark, Number, TIMES),
];

/// Who is at work and in what, in sight; the rates themselves behind a link.
pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    let was = &desk.editor.plan().store;
    let mut store = was.clone();
    desk.section(ui, words.text(Text::Hands), "", About::Rates);
    ui.add_space(6.0);
    people(ui, desk, &mut store);
    hindrances(ui, desk, &mut store);
    ui.add_space(6.0);
    let id = Id::unique("rates open");
    let open: bool = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    let label = words.text(if open { Text::FoldRates } else { Text::ShowRates });
    if kit::link(ui, label, desk.p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if open {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::RatesWhy));
        ui.add_space(6.0);
        let owner = Owner { id: Id::unique("rate field"), name: words.text(Text::Hands) };
        for rate in &RATES {
            let value = (rate.value)(&was.rates);
            owner.rate(ui, desk, rate, (rate.of)(&mut store.rates), value);
        }
    }
    set_store(desk, store);
}

fn people(ui: &mut Ui, desk: &Desk<'_>, store: &mut Store) {
    let (words, p) = (desk.words, desk.p);
    let counts = [(1, words.text(Text::One)), (2, words.text(Text::Two))];
    let rates = &mut store.rates;
    if let Some(people) = field::choice(ui, p, words.text(Window::KeyPeople), &counts, Some(rates.people())) {
        rates.people = Some(people);
    }
    if let Some(rolls) = field::choice(ui, p, words.text(Window::KeyRollsATrip), &counts, Some(rates.rolls_a_trip())) {
        rates.rolls_a_trip = Some(rolls);
    }
}

/// What makes it longer today: each on or off.
fn hindrances(ui: &mut Ui, desk: &Desk<'_>, store: &mut Store) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        let rates = &mut store.rates;
        for (label, of) in [
            (Text::Stony, &mut rates.stony),
            (Text::LongGrass, &mut rates.long_grass),
            (Text::Rain, &mut rates.rain),
            (Text::Dark, &mut rates.dark),
        ] {
            let on = of.unwrap_or(false);
            if kit::choice(ui, words.text(label), on, p).clicked() {
                *of = Some(!on);
            }
        }
    });
}

impl Owner<'_> {
    fn rate(self, ui: &mut Ui, desk: &Desk<'_>, rate: &Rate, statement: &mut Option<f64>, value: f64) {
        let words = desk.words;
        let shown = field::Shown::of(words, rate.measure, value, statement.is_none());
        let read = field::or_nothing(field::figure(words, rate.measure, rate.range));
        let name = words.text(rate.label);
        if let Some(stated) = field::line(ui, desk.p, self.id.with(name), name, &shown, read) {
            *statement = stated;
        }
    }
}
