"""Runs a fence network in ngspice and reads peaks and energies from its waveforms.

The netlist holds every section as a pi of resistors and capacitors. ngspice steps it from
t = 0 with the energizer's capacitor charged and all else at rest, its step held by a local
truncation error far below the wanted accuracy. A peak is the vertex of the parabola through
the greatest sample and its neighbours; an energy is Simpson's rule on the samples.
Volts, ohms, farads, henries, seconds.
"""

from __future__ import annotations

import math
import os
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.integrate import simpson

from fence_network import BODY_OHM

FIRST_STEP_S = 1e-12
LONGEST_RUN_S = 1e3


@dataclass(frozen=True)
class Settings:
    """How closely ngspice follows the equations."""

    reltol: float = 2e-7
    trtol: float = 1.0
    method: str = "gear"
    section_m: float | None = 0.5
    steps_at_least: int = 100  # no step longer than this part of the run, nor than the next
    longest_step_s: float = 5e-6  # also sets the shortest step that ngspice accepts, 1e-11 of it
    chgtol: float = 1e-10  # smaller charges are followed as if they were this large

    def options(self):
        return (f".options method={self.method} reltol={self.reltol:g} trtol={self.trtol:g}"
                f" abstol=1e-12 vntol=1e-9 chgtol={self.chgtol:g} itl4=50")


REFERENCE = Settings()


def version():
    """The version line of the ngspice on the path."""
    text = subprocess.run(["ngspice", "--version"], capture_output=True, text=True, check=True).stdout
    return next(line.strip("* ").split(" :")[0] for line in text.splitlines() if "ngspice-" in line)


def elements(net, capacitance=True, animal=None):
    """The netlist's elements, one a line; an animal touches `animal`, a node against its feet or a pair of nodes."""
    alias = merged(net)
    name = lambda n: "0" if alias(n) == 0 else f"n{alias(n)}"
    src = net.source
    rows = [f"cs top n1 {src.cs!r} ic={src.v0!r}"]
    after = "mid" if src.ls else name(2)
    rows.append(f"rs top {after} {src.rs!r}")
    if src.ls:
        rows.append(f"ls mid {name(2)} {src.ls!r} ic=0")
    rows.append(f"re n1 0 {net.earth_ohm!r}")
    rows += [f"rl{k} {name(2)} {name(node)} {ohm!r}" for k, (node, ohm) in enumerate(net.feeds) if ohm > 0]
    rows += [f"r{k} {name(a)} {name(b)} {ohm!r}" for k, (a, b, ohm) in enumerate(net.resistors) if ohm > 0]
    rows += [f"rg{n} {name(n)} 0 {1 / g!r}" for n, g in net.shunt_s.items() if g > 0]
    if capacitance:
        rows += [f"cg{n} {name(n)} 0 {c!r} ic=0" for n, c in net.shunt_f.items()]
        # Without capacitance nothing leads to the earthed lines: they carry nothing and are left out.
        rows += [f"ra{k} {name(a)} {name(b)} {ohm!r}" for k, (a, b, ohm) in enumerate(net.earthed) if ohm > 0]
        rows += [f"ca{n} {name(n)} 0 {c!r} ic=0" for n, c in net.earthed_f.items()]
        rows += [f"cb{k} {name(a)} {name(b)} {c!r} ic=0" for k, (a, b, c) in enumerate(net.coupling)]
    if isinstance(animal, tuple):
        rows += [f"rbody {name(animal[0])} {name(animal[1])} {BODY_OHM!r}"]
    elif animal is not None:
        rows += [f"rbody {name(animal)} feet {BODY_OHM!r}", f"rfeet feet 0 {net.feet_ohm!r}"]
    return rows


def merged(net):
    """The node that stands for each: what no ohm keeps apart is one."""
    parent = {}

    def root(n):
        while parent.get(n, n) != n:
            n = parent[n]
        return n

    ideal = [(a, b) for a, b, ohm in [*net.resistors, *net.earthed] if ohm == 0]
    ideal += [(2, node) for node, ohm in net.feeds if ohm == 0]
    for a, b in ideal:
        a, b = root(a), root(b)
        parent[max(a, b)] = min(a, b)
    return root


def read_raw(path):
    """Time and the saved vectors of a binary raw file, name -> samples."""
    data = Path(path).read_bytes()
    head, _, body = data.partition(b"Binary:\n")
    lines = head.decode().splitlines()
    count = int(next(x for x in lines if x.startswith("No. Variables")).split(":")[1])
    points = int(next(x for x in lines if x.startswith("No. Points")).split(":")[1])
    start = lines.index("Variables:") + 1
    names = [x.split()[1] for x in lines[start:start + count]]
    table = np.frombuffer(body, dtype="<f8", count=count * points).reshape(points, count)
    return table[:, 0], {n: table[:, k] for k, n in enumerate(names)}


def run(rows, saves, stop_s, settings, first_step_s=FIRST_STEP_S):
    """One transient run; returns time and the saved node voltages, and ngspice's own words."""
    longest = min(stop_s / settings.steps_at_least, settings.longest_step_s)
    deck = ["* fence", *rows, settings.options(), ".save " + " ".join(f"v({n})" for n in saves),
            f".tran {10 * first_step_s:g} {stop_s:.9g} 0 {longest:.9g} uic", ".end"]
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "fence.cir").write_text("\n".join(deck) + "\n")
        done = subprocess.run(["ngspice", "-n", "-b", "-r", "fence.raw", "fence.cir"], cwd=folder,
                              capture_output=True, text=True, env={**os.environ, "OMP_NUM_THREADS": "1"})
        said = done.stdout + done.stderr
        if done.returncode or not (Path(folder) / "fence.raw").exists():
            raise RuntimeError("ngspice failed: " + said[-2000:])
        time_s, volts = read_raw(Path(folder) / "fence.raw")
    if time_s[-1] < 0.999 * stop_s:
        raise RuntimeError(f"ngspice stopped at {time_s[-1]} of {stop_s} s: " + said[-2000:])
    return time_s, volts, said


def peak(time_s, v):
    """Greatest value and its time: vertex of the parabola through the greatest sample."""
    k = int(np.argmax(v))
    if k == 0 or k == len(v) - 1:
        return float(v[k]), float(time_s[k])
    (ta, tb, tc), (a, b, c) = time_s[k - 1:k + 2], v[k - 1:k + 2]
    left, right = (b - a) / (tb - ta), (c - b) / (tc - tb)
    bend = (right - left) / (tc - ta)
    if bend >= 0:
        return float(b), float(tb)
    slope = left + bend * (tb - ta)  # at tb
    t = -slope / (2 * bend)
    return float(b + slope * t / 2), float(tb + t)


def all_ohm(net):
    """Every resistance that current can have to pass, in series."""
    return (net.source.rs + net.earth_ohm + sum(ohm for _, ohm in net.feeds)
            + sum(x[2] for x in net.resistors if x[1] != 0) + sum(x[2] for x in net.earthed))


def all_farad(net):
    return sum(net.shunt_f.values()) + sum(net.earthed_f.values()) + sum(x[2] for x in net.coupling)


def settle_s(net):
    """A time by which every part of the fence has been reached; peaks come before it."""
    return 30 * (all_ohm(net) * all_farad(net) + math.sqrt(net.source.ls * all_farad(net)))


def read_nodes(net):
    sides = [n for f in net.faults for n in f[3:] if n is not None]
    return {n for n, _ in net.feeds} | {p[5] for p in net.posts} | set(sides)


def peaks_v(net, settings=REFERENCE):
    """Peak volts to remote earth of every node that is read, node -> volts."""
    alias = merged(net)
    wanted = sorted({alias(n) for n in read_nodes(net)})
    saves, stop = [f"n{n}" for n in wanted], settle_s(net)
    while True:
        time_s, volts, _ = run(elements(net), saves, stop, settings)
        found = {n: peak(time_s, volts[f"v(n{n})"]) for n in wanted}
        # A peak near the end means that the run was too short, unless it is an asymptote.
        late = [n for n, (v, t) in found.items() if v > 1e-6 and t > 0.8 * stop]
        risen = [n for n in late if found[n][0] > np.interp(stop / 4, time_s, volts[f"v(n{n})"]) * (1 + 1e-6)]
        if not risen:
            return {n: found[alias(n)][0] for n in read_nodes(net)}
        stop *= 4
        if stop > LONGEST_RUN_S:
            raise RuntimeError("no peak found")


def earth_peak_v(net, settings=REFERENCE):
    """Greatest magnitude of the earth pole's voltage, the net's capacitance left out."""
    src, rows = net.source, elements(net, capacitance=False)
    if src.ls == 0:
        # The greatest value is the first: the source capacitor has not begun to empty.
        time_s, volts, _ = run(rows, ["n1"], 1e-10, settings, first_step_s=1e-14)
        return float(np.max(np.abs(volts["v(n1)"])))
    stop = 20 * math.sqrt(src.ls * src.cs)
    time_s, volts, _ = run(rows, ["n1"], stop, settings, first_step_s=1e-11)
    return max(peak(time_s, volts["v(n1)"])[0], peak(time_s, -volts["v(n1)"])[0])


def animal(net, node, settings=REFERENCE):
    """Peak volts across, and joules in, the body of an animal at a node, or between a pair of nodes."""
    src, alias = net.source, merged(net)
    ohm = all_ohm(net) + BODY_OHM + net.feet_ohm
    stop = 25 * (ohm * (src.cs + all_farad(net)) + math.sqrt(src.ls * src.cs))
    if isinstance(node, tuple):
        ends = [f"n{alias(n)}" for n in node]
    else:
        ends = [f"n{alias(node)}", "feet"]
    time_s, volts, _ = run(elements(net, animal=node), ends, stop, settings)
    body = volts[f"v({ends[0]})"] - volts[f"v({ends[1]})"]
    return peak(time_s, body)[0], float(simpson(body * body, x=time_s) / BODY_OHM)
