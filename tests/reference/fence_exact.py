"""The same network without time steps: by the matrix exponential.

Between the jumps at t = 0 the network is linear: C dv/dt = -G v for the fence, the source's charge and, with an
inductance, its current as further states, so x(t + h) = expm(A h) x(t). One exponential by SciPy for the shortest h,
squared for each octave of time; many samples an octave, whose peaks and energies are read as ngspice's are. The earth
pole is a node where earthed lines give it capacitance, else it is eliminated; so is the live terminal where the leads of
two runs with ohms meet there and nothing else does.
Dense matrices: for networks of some hundred nodes.
"""

from __future__ import annotations

import math

import numpy as np
from scipy.integrate import simpson
from scipy.linalg import expm

from fence_network import BODY_OHM
from fence_spice import all_farad, all_ohm, merged, peak

SAMPLES_AN_OCTAVE = 96
FIRST_S = 1e-9
SPENT = 1e-7  # of the greatest voltage


def states(net, animal=None):
    """(matrix, index of node, start): x' = matrix x, source voltage and current last."""
    alias = merged(net)
    leads = [(alias(feed), ohm) for feed, ohm in net.feeds]
    pole = alias(1)
    # One lead stands in series with the source: the terminal is the feed. Of several a lead without ohms makes its feed
    # the terminal, and the others hang there; where all have ohms, the terminal is a node of its own that holds nothing.
    terminal, lead_ohm = leads[0] if len(leads) == 1 else (alias(2), 0.0)
    apart = [(feed, ohm) for feed, ohm in leads if feed != terminal]
    farad = {}
    for node, f in [*net.shunt_f.items(), *net.earthed_f.items()]:
        farad[alias(node)] = farad.get(alias(node), 0.0) + f
    pairs = [(alias(a), alias(b), f) for a, b, f in net.coupling]
    held = {n for n, f in farad.items() if f > 0} | {n for a, b, f in pairs for n in (a, b)}
    bare = terminal not in held
    held |= {terminal}
    index = {n: k for k, n in enumerate(sorted(held - {0}))}
    n, src = len(index), net.source
    g, c = np.zeros((n, n)), np.zeros((n, n))

    def add(m, a, b, value):
        for i in (a, b):
            if i:
                m[index[i], index[i]] += value
        if a and b:
            m[index[a], index[b]] -= value
            m[index[b], index[a]] -= value

    for a, b, ohm in [*net.resistors, *net.earthed, *((terminal, feed, ohm) for feed, ohm in apart)]:
        if ohm > 0:
            add(g, alias(a), alias(b), 1 / ohm)
    for node, s in net.shunt_s.items():
        add(g, alias(node), 0, s)
    for node, f in farad.items():
        add(c, node, 0, f)
    for a, b, f in pairs:
        add(c, a, b, f)
    pole_is_node = pole in index
    if pole_is_node:
        add(g, pole, 0, 1 / net.earth_ohm)
    if animal is not None:
        a, b = animal
        add(g, alias(a), alias(b), 1 / (BODY_OHM + (net.feet_ohm if b == 0 else 0.0)))
    ohm = src.rs + lead_ohm + (0.0 if pole_is_node else net.earth_ohm)
    size = n + 1 + (src.ls > 0)
    k, mass = np.zeros((size, size)), np.zeros((size, size))
    k[:n, :n], mass[:n, :n] = g, c
    mass[n, n] = src.cs
    across = np.zeros(size)  # what drives the current: source, less feed, plus pole
    across[n], across[index[terminal]] = 1.0, -1.0
    if pole_is_node:
        across[index[pole]] = 1.0
    if src.ls:
        mass[n + 1, n + 1] = src.ls
        k[n + 1] = -across
        k[n + 1, n + 1] = ohm
        k[:, n + 1] += across
    else:
        k += np.outer(across, across) / ohm
    start = np.zeros(size)
    start[n] = src.v0
    if bare:
        # Its currents sum to nothing at every instant: its row gives its voltage, which is put into the others.
        at = index.pop(terminal)
        rest = np.delete(np.arange(size), at)
        k = k[np.ix_(rest, rest)] - np.outer(k[rest, at], k[at, rest]) / k[at, at]
        mass, start = mass[np.ix_(rest, rest)], start[rest]
        index = {node: place - (place > at) for node, place in index.items()}
    return -np.linalg.solve(mass, k), index, start


def waves(net, nodes, animal=None):
    """Peak volts of each of `nodes`; with an animal between two nodes, peak volts and joules of its body."""
    a, index, x = states(net, animal)
    alias = merged(net)
    row = lambda node: index.get(alias(node))
    # Beyond this even the slowest part has come to rest.
    slowest = max((-v.real for v in np.linalg.eigvals(a) if -v.real > 1e-9), default=1.0, key=lambda r: -r)
    stop = max(20 / slowest, 30 * all_ohm(net) * all_farad(net))
    h = FIRST_S / SAMPLES_AN_OCTAVE
    step = expm(a * h)
    times, samples, now = [0.0], [x], 0.0
    while now < stop:
        for _ in range(SAMPLES_AN_OCTAVE):
            x = step @ x
            now += h
            times.append(now)
            samples.append(x)
        step, h = step @ step, 2 * h
    times, samples = np.array(times), np.array(samples)
    volts = lambda node: samples[:, row(node)] if node and row(node) is not None else np.zeros(len(times))
    body = None
    if animal is not None:
        v = (volts(animal[0]) - volts(animal[1])) * (BODY_OHM / (BODY_OHM + net.feet_ohm) if animal[1] == 0 else 1.0)
        body = (peak(times, v)[0], energy(times, v) / BODY_OHM)
    return [peak(times, volts(node))[0] for node in nodes], body


def energy(times, v):
    """The integral of v squared, octave by octave, each of even steps."""
    n = SAMPLES_AN_OCTAVE
    return math.fsum(float(simpson(v[k:k + n + 1] ** 2, x=times[k:k + n + 1])) for k in range(0, len(times) - 1, n))
