"""The same network without time steps: by its eigenvalues, to judge ngspice's stepping.

Between the jumps at t = 0 the network is linear: C dv/dt = -G v for the fence, the source's
charge and, with an inductance, its current as further states; the earth pole is eliminated.
Every voltage is a sum of exponentials, here evaluated on a fine logarithmic grid of times.
Dense matrices: for networks of some hundred nodes.
"""

from __future__ import annotations

import numpy as np
from scipy.linalg import eig, eigh

from fence_network import BODY_OHM
from fence_spice import peak, settle_s

TIMES_A_DECADE = 1500


def states(net, animal=None):
    """(matrix, index of node, start): x' = matrix x, source voltage and current last."""
    index = {n: k for k, n in enumerate(range(2, net.nodes))}
    n, src = len(index), net.source
    g, c = np.zeros((n, n)), np.zeros(n)
    for a, b, ohm in net.resistors:
        i = index[a]
        g[i, i] += 1 / ohm
        if b != 0:
            j = index[b]
            g[j, j] += 1 / ohm
            g[i, j] -= 1 / ohm
            g[j, i] -= 1 / ohm
    for node, s in net.shunt_s.items():
        g[index[node], index[node]] += s
    for node, f in net.shunt_f.items():
        c[index[node]] += f
    if animal is not None:
        g[index[animal], index[animal]] += 1 / (BODY_OHM + net.feet_ohm)
    ohm, feed = src.rs + net.lead_ohm + net.earth_ohm, index[net.feed]
    size = n + 1 + (src.ls > 0)
    big, mass = np.zeros((size, size)), np.concatenate([c, [src.cs], [src.ls] * (src.ls > 0)])
    big[:n, :n] = g
    if src.ls:
        big[feed, n + 1], big[n, n + 1] = -1.0, 1.0
        big[n + 1, n], big[n + 1, feed], big[n + 1, n + 1] = -1.0, 1.0, ohm
    else:
        for i, j, sign in ((feed, feed, 1), (n, n, 1), (feed, n, -1), (n, feed, -1)):
            big[i, j] += sign / ohm
    start = np.zeros(size)
    start[n] = src.v0
    return big, mass, index, start


def peaks_v(net, nodes, animal=None):
    """Peak volts of each of `nodes`, as ngspice is asked for them."""
    big, mass, index, start = states(net, animal)
    root = np.sqrt(mass)
    scaled = big / root[:, None] / root[None, :]
    if net.source.ls:
        values, vectors = eig(-scaled)
        weight = np.linalg.solve(vectors, start * root)
    else:
        values, vectors = eigh(-scaled)
        weight = vectors.T @ (start * root)
    stop = 4 * settle_s(net)
    time_s = np.geomspace(1e-10, stop, int(TIMES_A_DECADE * np.log10(stop / 1e-10)))
    growth = weight[:, None] * np.exp(np.outer(values, time_s))
    rows = [index[n] for n in nodes]
    waves = ((vectors[rows] @ growth) / root[rows, None]).real
    return {n: peak(time_s, w)[0] for n, w in zip(nodes, waves)}
