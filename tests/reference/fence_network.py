"""The fences of a plan as a network of resistors and capacitors.

Reads the runs of a plan file, all on one energizer, and nothing else, and places posts, feed,
faults and leakage zones along the chain of nets. Lengths in metres, ohms, siemens, farads, volts.

Where the model's page is silent the choice stands here: the runs' earths lie side by side; all
leakage runs from live lines to remote earth; joins with ohms stand in live and earthed lines,
faults in live ones alone, the loop that is not clipped in neither; a branch is tied to the line
without ohms, takes the run's leakage and no fault.

`along_m` is measured on the outline from its first vertex; `s` is measured along the chain
from its start. The placement must be fixed in the plan: `start_m` of a closed run, `reversed`
and the order of `nets`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
from scipy.optimize import brentq

VACUUM_F_PER_M = 8.8541878128e-12
CONDUCTOR_RADIUS_M = 1e-3
STANDARD_LOAD_OHM = 500.0
BODY_OHM = 500.0
FEET = 4
FOOT_RADIUS_M = 0.02
MEET_M = 0.01  # lengths nearer than this meet
SAME_PLACE_M = 1e-9


# --- the line -------------------------------------------------------------------------------


class Line:
    """The outline of a run as a line with a length."""

    def __init__(self, outline, closed):
        self.closed = closed
        self.points = [tuple(map(float, p)) for p in outline]
        ends = self.points[1:] + (self.points[:1] if closed else [])
        self.sides = list(zip(self.points, ends))
        self.side_m = [math.dist(a, b) for a, b in self.sides]
        self.length_m = math.fsum(self.side_m)

    def at(self, along_m):
        """The point at `along_m`."""
        for (a, b), length in zip(self.sides, self.side_m):
            if along_m <= length:
                t = along_m / length
                return (a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
            along_m -= length
        return self.sides[-1][1]

    def nearest(self, point):
        """`along_m` of the place nearest to `point`, and its distance."""
        best, before = (math.inf, 0.0), 0.0
        for (a, b), length in zip(self.sides, self.side_m):
            ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
            t = min(max((point[0] - a[0]) * ux + (point[1] - a[1]) * uy, 0.0), length)
            gap = math.hypot(a[0] + t * ux - point[0], a[1] + t * uy - point[1])
            if gap < best[0] - SAME_PLACE_M:
                best = (gap, before + t)
            before += length
        along = best[1]
        if self.closed and along > self.length_m - SAME_PLACE_M:
            along = 0.0
        return along, best[0]


# --- per metre, source, earth -------------------------------------------------------------------


def capacitance_f_per_m(live_m, earthed_m=()):
    """Live lines to earth, earthed lines to earth, live to earthed: partial Maxwell capacitances."""
    h = np.array([*live_m, *earthed_m], float)
    total = h[:, None] + h[None, :]
    apart = np.abs(h[:, None] - h[None, :])
    np.fill_diagonal(apart, CONDUCTOR_RADIUS_M)
    q = np.linalg.inv(np.log(total / apart) / (2 * math.pi * VACUUM_F_PER_M))
    n = len(live_m)
    mutual = -q[:n, n:].sum()
    return float(q[:n, :n].sum() - mutual), float(q[n:, n:].sum() - mutual), float(mutual)


def loaded_peak_v(v0, rs, cs, ls, load):
    """Peak over `load` of a capacitor `cs` at `v0` behind `rs` and `ls`."""
    a, w2 = (rs + load) / (2 * ls), 1 / (ls * cs)
    d2 = a * a - w2
    if d2 > 0:
        d = math.sqrt(d2)
        s1, s2 = w2 / (a + d), a + d
        t = math.log(s2 / s1) / (s2 - s1)
        current = v0 / (ls * (s2 - s1)) * (math.exp(-s1 * t) - math.exp(-s2 * t))
    else:
        w = math.sqrt(-d2)
        t = math.atan2(w, a) / w
        current = v0 / (ls * w) * math.exp(-a * t) * math.sin(w * t)
    return load * current


@dataclass
class Source:
    v0: float
    rs: float
    cs: float
    ls: float


def fit_source(sheet):
    """Capacitor, resistance and, where the sheet demands it, inductance of an energizer."""
    v0, vm = 1e3 * sheet["no_load_kv"], 1e3 * sheet["kv_at_500_ohm"]
    out, stored, rm = sheet["output_j_at_500_ohm"], sheet["stored_j"], STANDARD_LOAD_OHM
    rs = rm * (v0 / vm - 1)
    cs = 2 * out * (rs + rm) / (v0 * v0 * rm)
    if cs * v0 * v0 / 2 <= stored * (1 + 1e-12):
        return Source(v0, rs, cs, 0.0)
    cs, rs = 2 * stored / v0**2, rm * (stored / out - 1)
    # Large ls starves the load, small ls leaves v0 rm / (rs + rm), which is above vm here.
    ls = brentq(lambda x: loaded_peak_v(v0, rs, cs, math.exp(x), rm) - vm, math.log(1e-9), 0.0,
                xtol=1e-14, rtol=1e-14)
    return Source(v0, rs, cs, math.exp(ls))


def earth_ohm(run, plan):
    """Earth electrode: the keeper's own measurement, else stakes in line, as a matrix."""
    if "earth_ohm" in run:
        return run["earth_ohm"]
    rho = plan["ground"]["soil"]["resistivity_ohm_m"]
    length, diameter = (plan["store"]["earth_stake"][k] for k in ("length_m", "diameter_m"))
    count, spacing = run["earth_stakes"]["count"], run["earth_stakes"]["spacing_m"]
    scale = rho / (2 * math.pi * length)

    def pair(k):
        if k == 0:
            return scale * (math.log(8 * length / diameter) - 1)
        x = k * spacing / (2 * length)
        return scale * (math.asinh(1 / x) - math.sqrt(1 + x * x) + x)

    m = np.array([[pair(abs(i - j)) for j in range(count)] for i in range(count)])
    ones = np.ones(count)
    return float(1 / (ones @ np.linalg.solve(m, ones)))


def feet_ohm(plan):
    """Four feet side by side, each a disc on the soil."""
    return plan["ground"]["soil"]["resistivity_ohm_m"] / (4 * FOOT_RADIUS_M * FEET)


# --- the chain of nets ----------------------------------------------------------------------


@dataclass
class Chain:
    """Nets in chain order and where they lie, before any electricity."""

    line: Line
    kinds: list  # store entry of each net
    bounds: list  # s at which each net starts, and at last where the chain ends
    posts: list  # s of each post, for each net
    start_m: float
    reversed: bool

    @property
    def total_m(self):
        return self.bounds[-1]

    @property
    def spare_m(self):
        return max(self.total_m - self.line.length_m, 0.0)

    @property
    def short_m(self):
        return max(self.line.length_m - self.total_m, 0.0)

    @property
    def on_line_m(self):
        """Chain length that lies on the line."""
        return self.total_m if self.spare_m < MEET_M else self.line.length_m

    def s_of(self, along_m):
        s = self.start_m - along_m if self.reversed else along_m - self.start_m
        if not self.line.closed:
            return s
        s %= self.line.length_m
        return 0.0 if s > self.line.length_m - SAME_PLACE_M else s

    def along_of(self, s):
        along = self.start_m - s if self.reversed else self.start_m + s
        return along % self.line.length_m if self.line.closed else along

    def net_at(self, s):
        return next(i for i in range(len(self.kinds)) if s <= self.bounds[i + 1] + SAME_PLACE_M)


def chain_of(plan, run=None):
    """The chain of the plan's first run, or of a run or branch of it."""
    run = run or plan["runs"][0]
    store = {n["id"]: n for n in plan["store"]["nets"]}
    line = Line(run["outline"], run.get("closed", True))
    kinds = [store[i] for i in run["nets"]]
    bounds, posts = [0.0], []
    for kind in kinds:
        panels = kind.get("panel_lengths_m") or [kind["length_m"] / kind["panels"]] * kind["panels"]
        steps = [math.fsum(panels[:k]) for k in range(len(panels) + 1)]
        steps[-1] = kind["length_m"]
        posts.append([bounds[-1] + x for x in steps])
        bounds.append(bounds[-1] + kind["length_m"])
    turned = run.get("reversed", False)
    start = run["start_m"] if line.closed else (line.length_m if turned else 0.0)
    return Chain(line, kinds, bounds, posts, start, turned)


# --- the network ------------------------------------------------------------------------------


@dataclass
class Network:
    """Node 0 is remote earth, 1 the energizer's earth pole, 2 its live terminal."""

    source: Source
    earth_ohm: float
    feet_ohm: float
    nodes: int = 3
    resistors: list = field(default_factory=list)  # (node, node, ohm)
    earthed: list = field(default_factory=list)  # likewise, of the earthed lines
    shunt_s: dict = field(default_factory=dict)
    shunt_f: dict = field(default_factory=dict)
    earthed_f: dict = field(default_factory=dict)
    coupling: list = field(default_factory=list)  # (live node, earthed node, farad)
    feeds: list = field(default_factory=list)  # (node, lead ohm) of each run
    # (run, branch or None, net, post, along_m, node, earthed node or None)
    posts: list = field(default_factory=list)
    faults: list = field(default_factory=list)  # (run, kind, along_m, node before, node after)

    def node(self):
        self.nodes += 1
        return self.nodes - 1

    def resistor(self, a, b, ohm):
        self.resistors.append((a, b, ohm))

    def fed(self):
        """Nodes that the feed reaches along the net."""
        links = {}
        for a, b, _ in self.resistors:
            if b != 0:
                links.setdefault(a, []).append(b)
                links.setdefault(b, []).append(a)
        todo = [feed for feed, _ in self.feeds]
        seen = set(todo)
        while todo:
            for n in links.get(todo.pop(), []):
                if n not in seen:
                    seen.add(n)
                    todo.append(n)
        return seen

    def shunt(self, node, siemens, farad):
        self.shunt_s[node] = self.shunt_s.get(node, 0.0) + siemens
        self.shunt_f[node] = self.shunt_f.get(node, 0.0) + farad


def leakage_s_per_m(run, chain, s):
    """Leakage at a place of the chain; of overlapping zones the later counts, spare has none."""
    g = run["leakage_s_per_m"]
    if s > chain.on_line_m:
        return g
    along = chain.along_of(s)
    for zone in run.get("leakage_zones", []):
        a, b = zone["from_m"], zone["to_m"]
        if a <= along <= b or (a > b and (along >= a or along <= b)):
            g = zone["s_per_m"]
    return g


class Netting:
    """Sections of netting one after the other, live lines and earthed ones side by side."""

    def __init__(self, net, section_m):
        self.net, self.section_m = net, section_m
        self.node, self.earth = net.node(), None
        self.first_earth = None
        self.rows = []  # (s, live before, live after, earthed)

    def mark(self, s, after=None, earth=None):
        self.rows.append((s, self.node, self.node if after is None else after, self.earth if earth is None else earth))

    def join(self, ohm, earthed_ohm, earthed):
        """Between two nets, of which the second has earthed lines or none."""
        if ohm > 0:
            node = self.net.node()
            self.net.resistor(self.node, node, ohm)
            self.node = node
        if not earthed:
            self.earth = None
        elif self.earth is None:
            self.earth = self.net.node()
        elif earthed_ohm > 0:
            node = self.net.node()
            self.net.earthed.append((self.earth, node, earthed_ohm))
            self.earth = node

    def part(self):
        """Every live line open here."""
        self.node = self.net.node()

    def lay(self, length_m, kind, broken, g, onto=(None, None)):
        """One span of one net; its far ends may be nodes that are there already."""
        live, earthed = kind["live_line_heights_m"], kind.get("earthed_line_heights_m", [])
        r = kind["line_resistance_ohm_per_m"] / (len(live) - broken)
        if self.section_m == "model":
            coarse = r * g * length_m**2 > 1e-3
            count = math.ceil(length_m / 2.0) if coarse else 1
        else:
            count = max(1, math.ceil(length_m / self.section_m - 1e-9)) if self.section_m else 1
        d, (c, c_earthed, c_between) = length_m / count, capacitance_f_per_m(live, earthed)
        for k in range(count):
            last = k == count - 1
            node = onto[0] if last and onto[0] is not None else self.net.node()
            self.net.resistor(self.node, node, r * d)
            for end in (self.node, node):
                self.net.shunt(end, g * d / 2, c * d / 2)
            if self.earth is not None:
                earth = onto[1] if last and onto[1] is not None else self.net.node()
                self.net.earthed.append((self.earth, earth, kind["line_resistance_ohm_per_m"] / len(earthed) * d))
                for end, beside in ((self.earth, self.node), (earth, node)):
                    self.net.earthed_f[end] = self.net.earthed_f.get(end, 0.0) + c_earthed * d / 2
                    self.net.coupling.append((beside, end, c_between * d / 2))
                self.earth = earth
            self.node = node

    def find(self, s):
        return next(row for row in self.rows if abs(row[0] - s) < SAME_PLACE_M)


def build(plan, section_m=0.5):
    """The network of the plan's runs, and the first one's chain.

    Sections of at most `section_m`; None: a section a panel; "model": as coarse as the model's page allows.
    """
    sheet = next(e for e in plan["store"]["energizers"] if e["id"] == plan["runs"][0]["energizer"])
    earths = [earth_ohm(run, plan) for run in plan["runs"]]
    net = Network(fit_source(sheet), 1 / sum(1 / ohm for ohm in earths), feet_ohm(plan))
    for n, run in enumerate(plan["runs"]):
        add_run(net, plan, n, run, section_m)
    return net, chain_of(plan)


def add_run(net, plan, number, run, section_m):
    chain = chain_of(plan, run)
    place = lambda point: chain.s_of(chain.line.nearest(point)[0])
    feed_s = place(run["feed_at"])
    faults = [(f, place(f["at"])) for f in run.get("faults", [])]
    ring_end = chain.on_line_m if chain.line.closed and chain.short_m < MEET_M else None
    zone_ends = [chain.s_of(z[k]) for z in run.get("leakage_zones", []) for k in ("from_m", "to_m")]
    branches = [(b, chain.s_of(b["from_m"])) for b in run.get("branches", [])]
    marks = [feed_s, *zone_ends, *(s for f, s in faults if f["kind"] != "join"), *(s for _, s in branches)]
    marks += [chain.on_line_m] if chain.spare_m >= MEET_M else []

    broken, breaks = broken_in(chain, faults)

    # Joins: join k lies at the end of net k; the last one closes the ring.
    joins = list(range(len(chain.kinds) - 1 + (ring_end is not None)))
    join_s = [ring_end if k == len(chain.kinds) - 1 else chain.bounds[k + 1] for k in joins]
    every_ohm = run.get("join_ohm", 0.0)
    join_ohm = [every_ohm for _ in joins]
    join_of_fault = {}
    for n, (fault, s) in enumerate(faults):
        if fault["kind"] == "join":
            gap = [min(abs(s - x), chain.line.length_m - abs(s - x) if chain.line.closed else math.inf)
                   for x in join_s]
            k = gap.index(min(gap))
            join_ohm[k] += fault["ohm"]
            join_of_fault[n] = k

    netting = Netting(net, section_m)
    looped = ring_end is not None and run.get("live_loop", True)
    has_earthed = [bool(kind.get("earthed_line_heights_m")) for kind in chain.kinds]
    first = netting.node
    first_earth = None
    sides = {}  # join k: (before, after)
    closing = None
    for i, kind in enumerate(chain.kinds):
        lo, hi = chain.bounds[i], chain.bounds[i + 1]
        here = sorted([*chain.posts[i], *(s for s in marks if lo < s < hi)])
        here = [s for k, s in enumerate(here) if k == 0 or s - here[k - 1] > SAME_PLACE_M]
        before = netting.node
        netting.join(join_ohm[i - 1] if i else 0.0, every_ohm if i else 0.0, has_earthed[i])
        if i == 0:
            first_earth = netting.earth
        else:
            sides[i - 1] = (before, netting.node)
        start = len(netting.rows)
        netting.mark(lo)
        for s0, s1 in zip(here, here[1:]):
            g = leakage_s_per_m(run, chain, (s0 + s1) / 2)
            ends = looped and abs(s1 - ring_end) < SAME_PLACE_M
            live_onto = first if ends and join_ohm[-1] == 0 else None
            earth_onto = first_earth if ends and every_ohm == 0 and has_earthed[i] else None
            netting.lay(s1 - s0, kind, broken.get(i, 0), g, (live_onto, earth_onto))
            if ends:
                closing = (netting.node, netting.earth)
            after = net.node() if any(abs(s1 - s) < SAME_PLACE_M for s in breaks) else None
            netting.mark(s1, after)
            netting.node = netting.rows[-1][2]
        for j, s in enumerate(chain.posts[i]):
            if s <= chain.on_line_m + SAME_PLACE_M:
                row = next(row for row in netting.rows[start:] if abs(row[0] - s) < SAME_PLACE_M)
                net.posts.append((number, None, i, j, chain.along_of(min(s, chain.line.length_m)), row[1], row[3]))
    if closing and join_ohm[-1] > 0:
        net.resistor(closing[0], first, join_ohm[-1])
    if closing and every_ohm > 0 and closing[1] is not None and first_earth is not None:
        net.earthed.append((closing[1], first_earth, every_ohm))
    if ring_end is not None:
        sides[len(chain.kinds) - 1] = (closing[0] if closing else None, first)

    _, _, feed, earth = netting.find(feed_s)
    net.feeds.append((feed, run.get("lead_ohm", 0.0)))
    if earth is not None:
        net.earthed.append((1, earth, 0.0))
    for n, (fault, s) in enumerate(faults):
        if fault["kind"] == "join":
            k = join_of_fault[n]
            before, after = sides[k]
            s = join_s[k]
        else:
            _, before, after, _ = netting.find(s)
        if fault["kind"] == "short":
            net.resistor(before, 0, fault["ohm"])
        net.faults.append((number, fault["kind"], chain.along_of(s), before, after))
    for k, (branch, s) in enumerate(branches):
        add_branch(net, plan, number, k, run, branch, netting.find(s), section_m)


def broken_in(chain, faults):
    """Broken lines of each net that goes on over others, and the places where every line is open."""
    broken = {}
    for fault, s in faults:
        if fault["kind"] == "line_break":
            i = chain.net_at(s)
            broken[i] = broken.get(i, 0) + fault["lines"]
    whole = {i for i, n in broken.items() if n >= len(chain.kinds[i]["live_line_heights_m"])}
    breaks = [s for f, s in faults
              if f["kind"] == "break" or (f["kind"] == "line_break" and chain.net_at(s) in whole)]
    for i in whole:
        broken[i] = 0
    return broken, breaks


def add_branch(net, plan, number, k, run, branch, root, section_m):
    chain = chain_of(plan, {**branch, "closed": False})
    zoned = {"leakage_s_per_m": run["leakage_s_per_m"], "leakage_zones": branch.get("leakage_zones", [])}
    faults = [(f, chain.s_of(chain.line.nearest(f["at"])[0])) for f in branch.get("faults", [])]
    marks = [chain.on_line_m, *(z[end] for z in zoned["leakage_zones"] for end in ("from_m", "to_m")),
             *(s for f, s in faults if f["kind"] != "join")]
    broken, breaks = broken_in(chain, faults)
    every_ohm = run.get("join_ohm", 0.0)
    join_ohm = [every_ohm for _ in chain.kinds[1:]]
    for fault, s in faults:
        if fault["kind"] == "join":
            # The nearest join on the line; where the branch hangs is none.
            on_line = [j for j in range(len(join_ohm)) if chain.bounds[j + 1] < chain.on_line_m]
            join_ohm[min(on_line, key=lambda j: abs(chain.bounds[j + 1] - s))] += fault["ohm"]
    netting = Netting(net, section_m)
    net.resistor(root[2], netting.node, 0.0)
    for i, kind in enumerate(chain.kinds):
        has_earthed = bool(kind.get("earthed_line_heights_m"))
        netting.join(join_ohm[i - 1] if i else 0.0, every_ohm if i else 0.0, has_earthed)
        if i == 0 and has_earthed and root[3] is not None:
            net.earthed.append((root[3], netting.earth, 0.0))
        start = len(netting.rows)
        lo, hi = chain.bounds[i], chain.bounds[i + 1]
        netting.mark(lo)
        for s0, s1 in zip(chain.posts[i], chain.posts[i][1:]):
            cut = [s0, *sorted({s for s in marks if s0 < s < s1 and lo < s < hi}), s1]
            for a, b in zip(cut, cut[1:]):
                netting.lay(b - a, kind, broken.get(i, 0), leakage_s_per_m(zoned, chain, (a + b) / 2))
                if any(abs(b - s) < SAME_PLACE_M for s in breaks):
                    netting.part()
                for fault, s in faults:
                    if fault["kind"] == "short" and abs(b - s) < SAME_PLACE_M:
                        net.resistor(netting.node, 0, fault["ohm"])
            netting.mark(s1)
        for j, s in enumerate(chain.posts[i]):
            if s <= chain.on_line_m + SAME_PLACE_M:
                row = next(row for row in netting.rows[start:] if abs(row[0] - s) < SAME_PLACE_M)
                net.posts.append((number, k, i, j, chain.along_of(min(s, chain.line.length_m)), row[1], row[3]))
