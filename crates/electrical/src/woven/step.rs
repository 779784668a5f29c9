//! The pulse on a general graph, step by step: the scheme of `stepper`, the peaks and energies of `pulse`.

use crate::complex::Complex;
use crate::pulse::{Accuracy, BALANCED, Energy, Peaks, Pulse, RETRIES, Ringing, SHORTER, SPENT, settled_s};
use crate::stepper::{FIRST_INSTANT, POLE, WEIGHT};
use crate::woven::graph::{EARTH, Graph};
use crate::woven::order::{Factors, Figures, Order};
use crate::woven::poles::Poles;

/// One graph being stepped.
pub(crate) struct Stepping<'a> {
    graph: &'a Graph,
    order: &'a Order,
    figures: Figures,
    factors: Factors,
    volts: Vec<f64>,
    x: Vec<Complex>,
    source_v: f64,
    amperes: f64,
    time_s: f64,
    step_s: f64,
    s: Complex,
    scale: f64,
    weight: Complex,
    feeder_y: Complex,
}

/// Watts, or joules: source, stakes, wires, leakage, shorts.
type Powers = [f64; 5];

impl<'a> Stepping<'a> {
    pub(crate) fn new(graph: &'a Graph, order: &'a Order) -> Self {
        Self {
            graph,
            order,
            figures: Figures::new(graph, order),
            factors: Factors::default(),
            volts: Vec::new(),
            x: Vec::new(),
            source_v: 0.0,
            amperes: 0.0,
            time_s: 0.0,
            step_s: 0.0,
            s: Complex::ZERO,
            scale: 0.0,
            weight: Complex::ZERO,
            feeder_y: Complex::ZERO,
        }
    }

    /// The pulse, from a shorter first step where that is needed; peaks in the order of the probes.
    pub(crate) fn pulse(&mut self, accuracy: &Accuracy, peaks: &mut Peaks, out: &mut Pulse) {
        let probes: Vec<(usize, usize)> = self.graph.probes.iter().map(|probe| (probe.live, EARTH)).collect();
        self.read(&probes, accuracy, peaks, out);
    }

    /// As [`Stepping::pulse`], read between any nodes.
    pub(crate) fn read(&mut self, probes: &[(usize, usize)], accuracy: &Accuracy, peaks: &mut Peaks, out: &mut Pulse) {
        let ringing = self.ringing();
        let block = accuracy.steps_per_octave.max(2).next_multiple_of(2);
        let mut first_step_s = accuracy.first_step_s;
        if !(first_step_s > 0.0 && first_step_s.is_finite()) {
            first_step_s = Accuracy::default().first_step_s;
        }
        let mut residual_before = f64::INFINITY;
        for retry in 0..=RETRIES {
            self.integrate(probes, first_step_s, block, &ringing, (peaks, out));
            let residual = out.energy.residual().abs();
            let unbalanced = residual > BALANCED && residual < 0.5 * residual_before;
            if !(unbalanced || peaks.are_early(first_step_s * block as f64)) {
                break;
            }
            residual_before = residual;
            first_step_s /= SHORTER.powi(retry + 1);
        }
    }

    fn integrate(
        &mut self,
        probes: &[(usize, usize)],
        first_step_s: f64,
        block: usize,
        ringing: &Ringing,
        (peaks, out): (&mut Peaks, &mut Pulse),
    ) {
        let graph = self.graph;
        let stored_j = graph.feeder.stored_j();
        let longest_s = longest_s(graph, None);
        self.start();
        let mut read_v = vec![0.0; probes.len()];
        let read = |volts: &[f64], read_v: &mut [f64]| {
            for (read_v, (from, to)) in read_v.iter_mut().zip(probes) {
                *read_v = volts[*from] - volts[*to];
            }
        };
        read(&self.volts, &mut read_v);
        peaks.start(graph.feeder.v0, &read_v, (0..probes.len()).map(Some));
        let mut spent: Powers = [0.0; 5];
        let mut add = |power: &Powers, weight: f64| {
            for (spent, power) in spent.iter_mut().zip(power) {
                *spent += weight * power;
            }
        };
        let mut power = self.power();
        let mut step_s = first_step_s;
        out.steps = 0;
        loop {
            let allowed_s = ringing.step_s(self.time_s);
            let taken_s = step_s.min(allowed_s);
            if (taken_s - self.step_s).abs() > 0.0 {
                self.factor(POLE * taken_s.recip(), taken_s.recip(), WEIGHT);
                self.step_s = taken_s;
            }
            for _ in 0..block / 2 {
                add(&power, taken_s / 3.0);
                for weight in [4.0, 1.0] {
                    self.advance();
                    read(&self.volts, &mut read_v);
                    peaks.note(&read_v, self.time_s);
                    power = self.power();
                    add(&power, weight * taken_s / 3.0);
                }
                out.steps += 2;
            }
            peaks.look();
            if self.left_j() < SPENT * stored_j || self.time_s > longest_s {
                break;
            }
            if taken_s >= step_s {
                step_s *= 2.0;
            }
        }
        let [source_j, earth_j, wire_j, leakage_j, shorts_j] = spent;
        out.energy = Energy { stored_j, source_j, earth_j, wire_j, leakage_j, shorts_j, left_j: self.left_j() };
        out.charge_c = graph.feeder.farad * (graph.feeder.v0 - self.source_v);
        out.end_s = self.time_s;
    }

    /// The pulse over time at every probe, until it is nearly spent.
    pub(crate) fn curves(
        &mut self,
        accuracy: &Accuracy,
        drawn: f64,
        most_samples: usize,
        longest_s: f64,
    ) -> (Vec<f64>, Vec<Vec<f64>>) {
        let graph = self.graph;
        let ringing = self.ringing();
        let block = accuracy.steps_per_octave.max(2);
        let spent_v = drawn * graph.feeder.v0.abs();
        self.start();
        let mut times_s = vec![0.0];
        let mut samples: Vec<Vec<f64>> = graph.probes.iter().map(|probe| vec![self.volts[probe.live]]).collect();
        let mut step_s = accuracy.first_step_s;
        loop {
            let most_v = self.volts.iter().fold(self.source_v.abs(), |most, volts| most.max(volts.abs()));
            if most_v <= spent_v || times_s.len() >= most_samples || self.time_s > longest_s {
                break;
            }
            let allowed_s = ringing.step_s(self.time_s);
            let taken_s = step_s.min(allowed_s);
            self.factor(POLE * taken_s.recip(), taken_s.recip(), WEIGHT);
            self.step_s = taken_s;
            for _ in 0..block {
                self.advance();
                times_s.push(self.time_s);
                for (row, probe) in samples.iter_mut().zip(&graph.probes) {
                    row.push(self.volts[probe.live]);
                }
            }
            if step_s <= allowed_s {
                step_s *= 2.0;
            }
        }
        (times_s, samples)
    }

    /// The state just after the pulse has started: capacitors hold, all else settles.
    fn start(&mut self) {
        let nodes = self.graph.nodes;
        self.volts.clear();
        self.volts.resize(nodes, 0.0);
        self.x.clear();
        self.x.resize(nodes, Complex::ZERO);
        (self.source_v, self.amperes, self.time_s, self.step_s) = (self.graph.feeder.v0, 0.0, 0.0, 0.0);
        self.factor(Complex::real(FIRST_INSTANT), FIRST_INSTANT, Complex::real(1.0));
        self.advance();
        self.step_s = 0.0;
    }

    fn factor(&mut self, s: Complex, scale: f64, weight: Complex) {
        (self.s, self.scale, self.weight) = (s, scale, weight);
        self.feeder_y = self.factors.factor(self.graph, self.order, &self.figures, s);
    }

    fn advance(&mut self) {
        let graph = self.graph;
        let scale = self.scale;
        for ((x, farad), volts) in self.x.iter_mut().zip(&graph.farad).zip(&self.volts) {
            *x = Complex::real(scale * farad * volts);
        }
        for &(a, b, farad) in &graph.coupling {
            let held = Complex::real(scale * farad * (self.volts[a] - self.volts[b]));
            self.x[a] += held;
            self.x[b] = self.x[b] - held;
        }
        let inverse_s = self.s.inverse();
        let driving_v = (inverse_s * self.source_v + Complex::real(graph.feeder.henry * self.amperes)) * scale;
        let driven = self.feeder_y * driving_v;
        self.x[graph.terminal] += driven;
        self.x[graph.pole] = self.x[graph.pole] - driven;
        self.factors.solve(self.order, &mut self.x);
        let across = self.x[graph.terminal] - self.x[graph.pole];
        let amperes = self.feeder_y * (driving_v - across);
        let source_v = (Complex::real(scale * self.source_v) - amperes * graph.feeder.farad.recip()) * inverse_s;
        let weight = self.weight;
        let real = |x: Complex| weight.re * x.re - weight.im * x.im;
        for (volts, x) in self.volts.iter_mut().zip(&self.x) {
            *volts = real(*x);
        }
        self.source_v = real(source_v);
        self.amperes = real(amperes);
        self.time_s += self.step_s;
    }

    fn power(&self) -> Powers {
        let (graph, volts) = (self.graph, &self.volts);
        let over = |links: &[(usize, usize, f64)]| -> f64 {
            links.iter().map(|&(a, b, s)| s * (volts[a] - volts[b]).powi(2)).sum()
        };
        let leakage = graph.leak_s.iter().zip(volts).map(|(s, v)| s * v * v).sum();
        let stakes = graph.stakes_s * volts[graph.pole].powi(2);
        let source = graph.feeder.source_ohm * self.amperes * self.amperes;
        [source, stakes, over(&graph.wires), leakage, over(&graph.shorts)]
    }

    fn left_j(&self) -> f64 {
        let (graph, volts) = (self.graph, &self.volts);
        let feeder = &graph.feeder;
        let own: f64 = graph.farad.iter().zip(volts).map(|(c, v)| c * v * v).sum();
        let between: f64 = graph.coupling.iter().map(|&(a, b, c)| c * (volts[a] - volts[b]).powi(2)).sum();
        let source = feeder.farad * self.source_v * self.source_v + feeder.henry * self.amperes * self.amperes;
        0.5 * (own + between + source)
    }

    /// How the inductance bounds the step.
    fn ringing(&self) -> Ringing {
        Ringing::at(Poles::new(self.graph, self.order).of_circuit())
    }
}

/// When even the slowest part has settled. A touch conducts besides what the graph has.
pub(crate) fn longest_s(graph: &Graph, touch_ohm: Option<f64>) -> f64 {
    let feeder = &graph.feeder;
    let series_ohm: f64 = feeder.ohm()
        + graph.wires.iter().map(|wire| 1.0 / wire.2).sum::<f64>()
        + if graph.stakes_s > 0.0 { 1.0 / graph.stakes_s } else { 0.0 };
    let leak_s: f64 = graph.leak_s.iter().sum::<f64>()
        + graph.shorts.iter().map(|short| short.2).sum::<f64>()
        + touch_ohm.map_or(0.0, f64::recip);
    settled_s(feeder, series_ohm, leak_s, graph.capacitances().map(|link| link.2).sum())
}
