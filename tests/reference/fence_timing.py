"""How long ngspice takes for a ten-net fence, at the loosest settings that are still right.

The fence is a ring of 500 m, ten nets of 50 m and 14 panels, 1 ohm/m, 1e-5 S/m, and it is cut
into one section a panel, the coarsest ladder that has a node at each post. ngspice is given
every help:
- its own adaptive step, at the settings with the fewest samples whose peaks all stay within
  0.1 % of a tight run of the same ladder; found by trial over both methods, the tolerances, the
  charge below which it need not care, and longest steps from none to a fiftieth of the run;
- a stop just after the last peak, which nobody knows beforehand;
- peaks at all posts read by a parabola, which it has not itself, so that coarse samples do.
Counted is its own "Transient analysis time", without reading the netlist. Its clock tells whole
milliseconds and sums over the runs of one process, so one process runs the pulse hundreds of
times and the sum is divided.

The same pulse to its end, with energy and charge at the feed beside the peaks, wants a longer
run: until the charge is gone. Its loosest settings are sought in the same way, with all three
kinds of figure within 0.1 %.

An animal at every post is another circuit for every place. The cheapest way found is a single
process with a single netlist, read once: a branch of 1e15 ohm from every post to one pair of
feet, and for each post `alter` it to 500 ohm, run, and put it back. Volts and joules want
different runs: a short one with a bound step for the peak (`meas max`), a long one that ends
when the charge is gone and whose step may grow (`meas integ`), each at its own loosest settings
within 0.1 %. One vector is kept. The wall time holds the process, the netlist, the peaks at
all posts, written raw, and all animals. Dearer, when tried: one run for both figures (2.1 s
against 1.6 s), one netlist with a whole fence and animal for each post (4.9 s), a process each.
"""

from __future__ import annotations

import itertools
import os
import re
import statistics
import subprocess
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.integrate import simpson

from fence_network import BODY_OHM, build
from fence_spice import REFERENCE, animal, elements, merged, peak, read_raw, run, version

REPEATS = 9
RUNS = 400  # in one process, for a clock of whole milliseconds
ALLOWED = 1e-3
METHODS = ("trap", "gear")
RELTOLS = (3e-2, 1e-2, 3e-3, 1e-3, 3e-4, 1e-4, 3e-5, 1e-5)
TRTOLS = (1, 7, 50)
CHGTOLS = (1e-14, 1e-9)  # the first is ngspice's default
STEPS = (1, 8, 12, 16, 20, 30, 50)  # 1: no longest step
PLAN = {
    "format": "netfold-plan", "version": 1,
    "ground": {"soil": {"resistivity_ohm_m": 100.0}},
    "store": {
        "nets": [{"id": "long", "count": 10, "length_m": 50.0, "panels": 14, "height_m": 1.1,
                  "line_resistance_ohm_per_m": 12.0,
                  "live_line_heights_m": [0.10, 0.15, 0.20, 0.25, 0.30, 0.36, 0.43, 0.52, 0.62, 0.74, 0.88, 1.05]}],
        "energizers": [{"id": "field", "stored_j": 1.0, "no_load_kv": 7.0, "kv_at_500_ohm": 5.0,
                        "output_j_at_500_ohm": 0.7, "count": 1}],
        "earth_stake": {"length_m": 1.0, "diameter_m": 0.012}},
    "runs": [{"id": "run-1", "outline": [[0, 0], [150, 0], [150, 100], [0, 100]], "closed": True,
              "nets": ["long"] * 10, "start_m": 0.0, "reversed": False, "energizer": "field",
              "feed_at": [0, 0], "earth_stakes": {"count": 1, "spacing_m": 3.0, "at": [-1, -1]},
              "leakage_s_per_m": 1e-5, "live_loop": True}]}


@dataclass(frozen=True)
class Loose:
    """Settings of one trial; all else stays at ngspice's defaults."""

    method: str
    reltol: float
    trtol: float
    chgtol: float
    steps: int

    @property
    def options(self):
        return f"method={self.method} reltol={self.reltol:g} trtol={self.trtol:g} chgtol={self.chgtol:g}"

    def tran(self, stop_s):
        return f"tran 1e-9 {stop_s:.6g} 0 {stop_s / self.steps:.6g} uic"

    def __str__(self):
        return f"{self.options}, longest step " + (f"1/{self.steps} of the run" if self.steps > 1 else "unlimited")


def ngspice(deck, folder, *more):
    """Runs a deck in a folder; returns what it said and the wall time."""
    (folder / "fence.cir").write_text("\n".join(deck) + "\n")
    began = time.perf_counter()
    done = subprocess.run(["ngspice", "-n", "-b", *more, "fence.cir"], cwd=folder, capture_output=True,
                          text=True, env={**os.environ, "OMP_NUM_THREADS": "1"})
    return done.stdout + done.stderr, time.perf_counter() - began


def peaks(time_s, volts, net, nodes):
    """Peaks at all posts."""
    return [peak(time_s, volts[f"v(n{n})"])[0] for n in nodes]


def whole(time_s, volts, net, nodes):
    """Peaks at all posts, then the energy and the charge that passed the energizer's poles."""
    ampere = (volts["v(top)"] - volts[feed(net)]) / net.source.rs
    across = volts[feed(net)] - volts["v(n1)"]
    return [*peaks(time_s, volts, net, nodes),
            simpson(across * ampere, x=time_s), simpson(ampere, x=time_s)]


def feed(net):
    return f"v(n{merged(net)(2)})"


def saves(net, nodes):
    return list(dict.fromkeys([*(f"v(n{n})" for n in nodes), feed(net), "v(top)", "v(n1)"]))


def tried(net, nodes, loose, stop_s, figures):
    """What `figures` reads of one run, and the number of samples; None where ngspice gave up."""
    deck = ["* pulse", *elements(net), ".options " + loose.options,
            ".save " + " ".join(saves(net, nodes)), "." + loose.tran(stop_s), ".end"]
    with tempfile.TemporaryDirectory() as name:
        ngspice(deck, Path(name), "-r", "fence.raw")
        if not (Path(name) / "fence.raw").exists():
            return None
        time_s, volts = read_raw(Path(name) / "fence.raw")
    if time_s[-1] < 0.999 * stop_s:
        return None
    return figures(time_s, volts, net, nodes), len(time_s)


def analysis_s(net, nodes, loose, stop_s):
    """The analysis time of one pulse: the mean of many in one process."""
    script = ["option " + loose.options, "save " + " ".join(saves(net, nodes)),
              f"repeat {RUNS}", loose.tran(stop_s), "destroy all", "end", "rusage all", "quit"]
    with tempfile.TemporaryDirectory() as name:
        said, _ = ngspice(["* pulses", *elements(net), ".control", *script, ".endc", ".end"], Path(name))
    return float(re.search(r"Transient analysis time = ([\d.eE+-]+)", said).group(1)) / RUNS


def animals(net, nodes, touched, first, for_peak, for_energy):
    """Volts and joules in the body at each of `touched`, samples of both runs, wall time.

    `first`, `for_peak` and `for_energy` are (settings, stop) of the run for the peaks at all
    posts (or None) and of the two runs for each animal.
    """
    rows = [*elements(net), f"rfeet feet 0 {net.feet_ohm!r}", *(f"rb{n} n{n} feet 1e15" for n in touched)]
    script = []
    if first:
        script += ["option " + first[0].options, "save " + " ".join(f"v(n{n})" for n in nodes),
                   first[0].tran(first[1]), "write fence.raw", "destroy all", "delete all"]
    script.append("save v(feet)")
    for n in touched:
        script.append(f"alter rb{n} = {BODY_OHM:g}")
        for what, (loose, stop_s) in (("max v(feet)", for_peak), ("integ square", for_energy)):
            script += ["option " + loose.options, loose.tran(stop_s), "let square = v(feet)*v(feet)",
                       f"meas tran figure {what}", "let samples = length(time)", "print samples", "destroy all"]
        script.append(f"alter rb{n} = 1e15")
    deck = ["* animals", *rows, ".control", *script, "quit", ".endc", ".end"]
    with tempfile.TemporaryDirectory() as name:
        said, wall = ngspice(deck, Path(name))
    number = r"\s*=\s*([-\d.eE+]+)"
    figures = np.array([float(x) for x in re.findall(r"^figure" + number, said, re.M)])
    samples = [float(x) for x in re.findall(r"^samples" + number, said, re.M)]
    if len(figures) != 2 * len(touched) or len(samples) != len(figures):
        return None
    ratio = BODY_OHM / net.feet_ohm  # body and feet carry the same current
    return (figures[::2] * ratio, figures[1::2] * ratio**2 / BODY_OHM,
            statistics.mean(samples[::2]), statistics.mean(samples[1::2]), wall)


def worst(got, want):
    return float(np.max(np.abs(np.array(got) / np.array(want) - 1)))


def report():
    """Prints settings, analysis time and wall time."""
    net, _ = build(PLAN, section_m=None)
    alias = merged(net)
    nodes = list(dict.fromkeys(alias(p[5]) for p in net.posts))
    print(f"{version()}; ring of 500 m, {len(nodes)} places of posts, {net.nodes} nodes")

    # Long enough for all but e^-16 of the energy and e^-8 of the charge to be gone.
    load_ohm = net.source.rs + net.earth_ohm + 1 / sum(net.shunt_s.values())
    spent_s = 8 * load_ohm * net.source.cs
    time_s, volts, _ = run(elements(net), [v[2:-1] for v in saves(net, nodes)], spent_s, REFERENCE)
    found = [peak(time_s, volts[f"v(n{n})"]) for n in nodes]
    last_s = max(t for _, t in found)
    stop_s = 1.5 * last_s
    volt = [v for v, _ in found]
    print(f"peaks {min(volt):.3f} to {max(volt):.3f} V, the last at {1e6 * last_s:.2f} us; run to {1e6 * stop_s:.2f} us")

    grid = [Loose(*x) for x in itertools.product(METHODS, RELTOLS, TRTOLS, CHGTOLS, STEPS)]
    fastest = {}
    for what, figures, until_s in (("peaks", peaks, stop_s), ("peaks, energy and charge", whole, spent_s)):
        want = figures(time_s, volts, net, nodes)
        tries = []
        for loose in grid:
            result = tried(net, nodes, loose, until_s, figures)
            if result and worst(result[0], want) <= ALLOWED:
                tries.append((result[1], worst(result[0], want), loose))
        tries.sort(key=lambda x: x[:2])
        fastest[what] = tries
        print(f"{what}, to {1e6 * until_s:.1f} us: {len(tries)} of {len(grid)} settings keep them within 0.1 %;"
              " with the fewest samples:")
        plain = [t for t in tries if t[2].steps == 1]
        for samples, off, loose in tries[:3] + plain[:1]:
            times = [analysis_s(net, nodes, loose, until_s) for _ in range(REPEATS)]
            print(f"  {loose}: {samples} samples, within {100 * off:.3f} %; Transient analysis time of one pulse,"
                  f" mean of {RUNS}, median of {REPEATS}, {1e3 * statistics.median(times):.3f} ms,"
                  f" least {1e3 * min(times):.3f} ms")
    tries = fastest["peaks"]

    # Animals: the loosest settings are sought on a few posts and then held against all.
    ohm = net.source.rs + net.earth_ohm + BODY_OHM + net.feet_ohm
    gone_s = 5 * ohm * net.source.cs  # at most e^-10 of the energy is left
    sure = dict(zip(nodes, (animal(net, n) for n in nodes)))
    few = nodes[:: len(nodes) // 6]
    ways = {0: [], 1: []}  # settings good for volts, for joules: (samples, settings)
    for loose in (g for g in grid if g.method == "trap" and g.chgtol == CHGTOLS[1]):
        got = animals(net, nodes, few, None, (loose, stop_s), (loose, gone_s))
        for k in (0, 1) if got else ():
            if worst(got[k], [sure[n][k] for n in few]) <= 0.8 * ALLOWED:
                ways[k].append((got[2 + k], loose))
    for k in ways:
        ways[k].sort(key=lambda x: x[0])
    run_of = lambda k: ways[k][0][1]
    first = (tries[0][2], stop_s)
    got = [animals(net, nodes, nodes, first, (run_of(0), stop_s), (run_of(1), gone_s)) for _ in range(REPEATS)]
    walls = [g[4] for g in got]
    offs = [worst(got[0][k], [sure[n][k] for n in nodes]) for k in (0, 1)]
    print(f"an animal at {len(nodes)} places, {min(v for v, _ in sure.values()):.1f} to {max(v for v, _ in sure.values()):.1f} V")
    print(f"  volts: {run_of(0)}, {ways[0][0][0]:.0f} samples to {1e6 * stop_s:.1f} us, within {100 * offs[0]:.3f} %")
    print(f"  joules: {run_of(1)}, {ways[1][0][0]:.0f} samples to {1e6 * gone_s:.0f} us, within {100 * offs[1]:.3f} %")
    print(f"  one process with peaks and all animals: wall time, median of {REPEATS}, {statistics.median(walls):.3f} s,"
          f" least {min(walls):.3f} s")
