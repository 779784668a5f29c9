"""Draws fences as plan files: rings and open lines, nets, grass, faults, energizers, earths, branches,
netting wired alternately, and two runs on one energizer.

Everything is invented and follows from one seed. Each plan is as small as a plan can be and
fixes its placement, so that two programs place the same posts. Metres, ohms, siemens.
"""

from __future__ import annotations

import itertools
import math
import random

from fence_network import MEET_M, Line, chain_of

SEED = 20270401
COUNT = 300
TRIED_COUNT = 24  # more fences, with grass and faults on their branches
CLEAR_M = 0.05  # least distance between places that must not fall together

NETS = [
    {"id": "steel-50", "length_m": 50.0, "panels": 14, "line_resistance_ohm_per_m": 11.9,
     "live_line_heights_m": [0.10, 0.15, 0.20, 0.25, 0.30, 0.36, 0.43, 0.52, 0.62, 0.74, 0.88, 1.05]},
    {"id": "mixed-50", "length_m": 50.0, "panels": 14, "line_resistance_ohm_per_m": 0.335,
     "live_line_heights_m": [0.10, 0.15, 0.20, 0.25, 0.30, 0.36, 0.43, 0.52, 0.62, 0.74, 0.88, 1.05]},
    {"id": "steel-25", "length_m": 25.0, "panels": 7, "line_resistance_ohm_per_m": 6.79,
     "live_line_heights_m": [0.07, 0.17, 0.27, 0.37, 0.47, 0.57, 0.67, 0.77, 0.87, 0.97, 1.07]},
    {"id": "low-36", "length_m": 36.0, "panels": 10, "line_resistance_ohm_per_m": 13.6,
     "live_line_heights_m": [0.08, 0.18, 0.30, 0.45, 0.62, 0.80]},
    {"id": "copper-50", "length_m": 50.0, "panels": 16, "line_resistance_ohm_per_m": 0.12,
     "live_line_heights_m": [0.06, 0.14, 0.22, 0.31, 0.42, 0.56, 0.74, 0.98]},
    {"id": "uneven-20", "length_m": 20.0, "panel_lengths_m": [4.0, 3.5, 3.0, 2.5, 3.2, 3.8],
     "line_resistance_ohm_per_m": 3.82, "live_line_heights_m": [0.12, 0.28, 0.46, 0.70, 1.00]},
    {"id": "three-wire-40", "length_m": 40.0, "panels": 8, "line_resistance_ohm_per_m": 0.186,
     "live_line_heights_m": [0.20, 0.50, 0.90]},
]
# The last three cannot come from a resistance and a capacitor alone: they need an inductance.
ENERGIZERS = [
    {"no_load_kv": 7.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7, "stored_j": 1.0},
    {"no_load_kv": 8.0, "kv_at_500_ohm": 2.67, "output_j_at_500_ohm": 0.085, "stored_j": 0.4},
    {"no_load_kv": 9.5, "kv_at_500_ohm": 6.2, "output_j_at_500_ohm": 2.1, "stored_j": 3.5},
    {"no_load_kv": 6.0, "kv_at_500_ohm": 3.6, "output_j_at_500_ohm": 0.16, "stored_j": 0.3},
    {"no_load_kv": 8.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7, "stored_j": 1.0},
    {"no_load_kv": 9.0, "kv_at_500_ohm": 4.5, "output_j_at_500_ohm": 1.4, "stored_j": 2.2},
    {"no_load_kv": 10.0, "kv_at_500_ohm": 5.5, "output_j_at_500_ohm": 0.25, "stored_j": 0.35},
]
CLOSURES = ["ring-exact", "ring-spare", "ring-spare", "ring-opened", "ring-short",
            "open-exact", "open-spare", "open-short"]
GRASS_S_PER_M = [2e-7, 1e-5, 1e-4, 2e-6, 5e-5]
ZONES_S_PER_M = [0.0, 5e-6, 3e-5, 2e-4]
FAULTS = [[], ["short"], ["break"], ["break", "short"], ["line_break"], [], ["short", "short"],
          ["break", "break"], ["join"], ["line_break", "short", "line_break"], ["short"], ["all_lines"]]
NET_COUNTS = [2, 1, 3, 2, 2, 4, 1, 3, 2, 1, 5, 2, 3]
LONG_EVERY, LONG_NETS = 60, 10  # every so many fences one of ten nets
# On branches; nothing is cut off that is without an answer: grass leaks there.
BRANCH_FAULTS = [["short"], ["line_break"], ["break"], ["short", "line_break"], ["join"], [], ["all_lines"], ["short", "short"]]
ALTERNATE_EVERY, BRANCHED_EVERY, DOUBLE_EVERY = 4, 3, 5  # how often which of them comes
EARTHS = [1, 2, 3, "measured"]
SHORT_OHM = [30.0, 120.0, 500.0, 1500.0, 5000.0]
SOILS_OHM_M = [100.0, 30.0, 300.0, 1000.0, 150.0]


class Dice:
    """Draws that stay the same in every Python: only `random()` of a seeded generator."""

    def __init__(self, seed):
        self.rng = random.Random(seed)

    def uniform(self, a, b):
        return a + (b - a) * self.rng.random()

    def pick(self, items):
        return items[int(self.rng.random() * len(items))]

    def chance(self, p):
        return self.rng.random() < p


def outline(dice, length_m, closed):
    """A closed polygon or an open line of the given length, starting at a round point."""
    if closed:
        shape = dice.pick(["rectangle", "hexagon", "ell", "round", "triangle"])
        if shape == "rectangle":
            # Quarter metres, so that a rectangle can close on whole nets to the last bit.
            a = math.floor(4 * length_m * dice.uniform(0.12, 0.38)) / 4
            b = length_m / 2 - a
            points = [(0, 0), (a, 0), (a, b), (0, b)]
        elif shape == "ell":
            points = [(0, 0), (4, 0), (4, 1.5), (1.8, 1.5), (1.8, 3.5), (0, 3.5)]
        elif shape == "triangle":
            points = [(0, 0), (5, 0.5), (2, 3.5)]
        else:
            n = 6 if shape == "hexagon" else 5 + int(dice.uniform(0, 5))
            wide = dice.uniform(1.0, 1.6)
            turns = sorted((k + (dice.uniform(0, 0.6) if shape == "round" else 0)) / n for k in range(n))
            points = [(wide * math.cos(2 * math.pi * t), math.sin(2 * math.pi * t)) for t in turns]
        if dice.chance(0.3):
            points = points[::-1]
    else:
        shape = dice.pick(["straight", "bent", "zigzag"])
        points = {"straight": [(0, 0), (3, 0.8)], "bent": [(0, 0), (2, 0.2), (2.6, 1.9)],
                  "zigzag": [(0, 0), (1, 0.3), (1.9, -0.1), (3.4, 0.6)]}[shape]
    k = length_m / Line(points, closed).length_m
    x0, y0 = points[0]
    shift = (10 * int(dice.uniform(1, 9)), 10 * int(dice.uniform(1, 9)))
    return [[k * (x - x0) + shift[0], k * (y - y0) + shift[1]] for x, y in points]


def alternate(net):
    """The same net with every second line earthed."""
    lines = net["live_line_heights_m"]
    return {**net, "live_line_heights_m": lines[::2], "earthed_line_heights_m": lines[1::2]}


def add_branches(dice, plan, places, chain, woven):
    """One or two lines of netting that hang on the first run; False where the dice fell badly."""
    run, store = plan["runs"][0], plan["store"]["nets"]
    run["branches"] = []
    for _ in range(dice.pick([1, 1, 2])):
        along = round(chain.along_of(places.draw(0.03, 0.97)), 3)
        x, y = chain.line.at(along)
        ids = []
        for _ in range(dice.pick([1, 1, 2])):
            net = dice.pick(NETS)
            if net["id"] not in [n["id"] for n in store]:
                net = alternate(net) if woven and dice.chance(0.6) else net
                store.append({**net, "count": 1, "height_m": 1.1})
            ids.append(net["id"])
        length = sum(n["length_m"] for i in ids for n in store if n["id"] == i)
        line_m = length + dice.pick([0.0, -dice.uniform(0.5, 8.0), dice.uniform(0.5, 8.0)])
        turn = dice.uniform(0, 2 * math.pi)
        legs = [(0.6, turn), (0.4, turn + dice.uniform(-1.0, 1.0))] if dice.chance(0.5) else [(1.0, turn)]
        points = [[x, y]]
        for share, way in legs:
            points.append([points[-1][0] + share * line_m * math.cos(way), points[-1][1] + share * line_m * math.sin(way)])
        line = Line(points, False)
        stands = [s for row in chain_of(plan, {"outline": points, "closed": False, "nets": ids}).posts for s in row]
        if abs(line_m - length) > 1e-9 and any(abs(s - line.length_m) < 0.2 for s in stands):
            return False
        run["branches"].append({"from_m": along, "outline": points, "nets": ids})
    return True


def try_on_branches(dice, plan, k):
    """Grass and faults on every branch of the first run; False where the dice fell badly."""
    store = {n["id"]: n for n in plan["store"]["nets"]}
    kinds = BRANCH_FAULTS[k % len(BRANCH_FAULTS)]
    for branch in plan["runs"][0]["branches"]:
        chain = chain_of(plan, {**branch, "closed": False})
        places = Places(dice, chain)
        if dice.chance(0.7):
            a, b = sorted(round(places.draw(), 3) for _ in range(2))
            branch["leakage_zones"] = [{"from_m": a, "to_m": b, "s_per_m": dice.pick(ZONES_S_PER_M[1:])}]
        branch["faults"] = []
        for kind in kinds:
            if kind == "join":
                if not [s for s in chain.bounds[1:-1] if s < chain.on_line_m - 1.0]:
                    return False
                s, fault = places.draw(), {"ohm": dice.pick([100.0, 1000.0, 10000.0])}
            else:
                s = places.draw(0.1, 0.95)
                lines = len(store[branch["nets"][chain.net_at(s)]]["live_line_heights_m"])
                # Of the three to six lines of a net wired alternately one breaks at most twice.
                fault = {"short": {"ohm": dice.pick(SHORT_OHM)}, "break": {}, "all_lines": {"lines": lines},
                         "line_break": {"lines": 1 + int(dice.uniform(0, min(3, lines - 1)))}}[kind]
            at = places.point(s)
            if at is None:
                return False
            branch["faults"].append({"at": at, "kind": "line_break" if kind == "all_lines" else kind, **fault})
    return True


def second_run(dice, plan):
    """Another standing run on the same energizer, a ring of its own some way off."""
    store = plan["store"]["nets"]
    ids = [dice.pick(store)["id"] for _ in range(dice.pick([1, 2]))]
    length = sum(n["length_m"] for i in ids for n in store if n["id"] == i)
    side = math.floor(4 * length * dice.uniform(0.15, 0.3)) / 4
    other = length / 2 - side - dice.uniform(0.3, 1.5)
    x, y = 1000.0, 10.0
    return {"id": "run-2", "outline": [[x, y], [x + side, y], [x + side, y + other], [x, y + other]], "closed": True,
            "nets": ids, "start_m": round(dice.uniform(1.0, 3.0), 2), "reversed": dice.chance(0.5), "energizer": "field",
            "status": "standing", "feed_at": [x + side / 2 + 0.123, y], "live_loop": dice.chance(0.7),
            "earth_stakes": {"count": dice.pick([1, 2]), "spacing_m": 3.0, "at": [x - 1.0, y - 1.0]},
            "leakage_s_per_m": dice.pick([2e-7, 2e-6, 1e-5]), "lead_ohm": dice.pick([0.0, 8.0, 40.0])}


def misses_m(plan):
    """Sum of distances along an open line from each corner to the nearest post."""
    chain = chain_of(plan)
    stands = [chain.along_of(s) for row in chain.posts for s in row if s <= chain.on_line_m]
    total, along, pts = 0.0, 0.0, chain.line.points
    for a, b, c in zip(pts, pts[1:], pts[2:]):
        along += math.dist(a, b)
        turn = math.atan2(c[1] - b[1], c[0] - b[0]) - math.atan2(b[1] - a[1], b[0] - a[0])
        if abs(math.remainder(turn, 2 * math.pi)) >= math.radians(5):
            total += min(abs(along - x) for x in stands)
    return total


def settled(plan):
    """Whether an open line's stated placement is also the one that is best on its own.

    An open line's `start_m` may be read as fixing the placement or as ignored: with this
    both readings give the same posts.
    """
    run = plan["runs"][0]
    ours = misses_m(plan)
    if len(run["outline"]) == 2:
        chain = chain_of(plan)
        near_end = chain.line.nearest(run["feed_at"])[0] > chain.line.length_m / 2
        return len(set(run["nets"])) == 1 and near_end == run["reversed"]
    for order in sorted(set(itertools.permutations(run["nets"]))):
        for turned in (False, True):
            if (list(order), turned) == (run["nets"], run["reversed"]):
                continue
            other = {**plan, "runs": [{**run, "nets": list(order), "reversed": turned}]}
            if misses_m(other) < ours + 1e-3:
                return False
    return True


class Places:
    """Places on the chain that keep clear of joins, posts and one another."""

    def __init__(self, dice, chain):
        self.dice, self.chain = dice, chain
        self.posts = [s for row in chain.posts for s in row]
        self.taken = []

    def clear(self, s):
        used = [*self.posts, *self.taken, 0.0, self.chain.on_line_m]
        return all(abs(s - x) > CLEAR_M for x in used)

    def draw(self, lo=0.0, hi=1.0):
        while True:
            s = self.dice.uniform(lo, hi) * self.chain.on_line_m
            if self.clear(s):
                self.taken.append(s)
                return s

    def post(self):
        """A post that is no join and lies on the line."""
        inner = [s for row in self.chain.posts for s in row[1:-1] if s < self.chain.on_line_m - 1.0]
        inner = [s for s in inner if all(abs(s - x) > CLEAR_M for x in self.taken)]
        s = self.dice.pick(inner)
        self.taken.append(s)
        return s

    def point(self, s, off_m=0.0):
        """A point on the line at `s`, or `off_m` beside it, whose nearest place is `s`."""
        line, along = self.chain.line, self.chain.along_of(s)
        x, y = line.at(along)
        (a, b) = next(p for p, end in zip(line.sides, itertools.accumulate(line.side_m)) if along <= end + 1e-9)
        n = (b[1] - a[1], a[0] - b[0])
        k = off_m / math.hypot(*n)
        at = [round(x + k * n[0], 3), round(y + k * n[1], 3)]
        found, gap = line.nearest(at)
        away = abs(found - along)
        if min(away, line.length_m - away) > 0.01 or gap > off_m + 0.01:
            return None
        return at


def draw_fence(k, seed):
    """Fence number `k`; None where the dice fell badly."""
    dice = Dice(seed)
    closure, grass = CLOSURES[k % len(CLOSURES)], GRASS_S_PER_M[k % len(GRASS_S_PER_M)]
    kinds_of_fault, count = FAULTS[k % len(FAULTS)], NET_COUNTS[k % len(NET_COUNTS)]
    if k % 100 == 33:
        grass = 0.0  # nothing leaks: the peak is an asymptote
    woven, branched = k % ALTERNATE_EVERY == 1, k % BRANCHED_EVERY == 2 or k >= COUNT
    if k % LONG_EVERY == 10:
        count = LONG_NETS
    closed = closure.startswith("ring")
    if not closed:
        count = min(count, 5)
    if "join" in kinds_of_fault:
        count = max(count, 2)

    first, second = dice.pick(NETS), dice.pick(NETS)
    ids = [first["id"] if dice.chance(0.6) else second["id"] for _ in range(count)]
    used = [n for n in NETS if n["id"] in ids]
    if woven:
        # Where kinds differ one of them may stay without earthed lines.
        plain = dice.pick(used)["id"] if len(used) > 1 and dice.chance(0.5) else None
        used = [n if n["id"] == plain else alternate(n) for n in used]
    total = sum(next(n["length_m"] for n in NETS if n["id"] == i) for i in ids)
    spare = dice.uniform(0.5, min(30.0, 0.3 * total)) if "spare" in closure or closure == "ring-opened" else 0.0
    if closure == "ring-opened" and dice.chance(0.5):
        spare = 0.0
    if "short" in closure:
        spare = -dice.uniform(0.5, 15.0)
    line_m = total if spare == 0 else round(total - spare, 2)

    earth = EARTHS[k % len(EARTHS)]
    soil = SOILS_OHM_M[(k // 2) % len(SOILS_OHM_M)]
    sheet = ENERGIZERS[(k + k // 7) % len(ENERGIZERS)]
    run = {"id": "run-1", "outline": outline(dice, line_m, closed), "closed": closed, "nets": ids,
           "start_m": 0.0, "reversed": dice.chance(0.35), "energizer": "field"}
    plan = {"format": "netfold-plan", "version": 1,
            "ground": {"soil": {"resistivity_ohm_m": soil}},
            "store": {"nets": [{**n, "count": ids.count(n["id"]), "height_m": 1.1} for n in used],
                      "energizers": [{"id": "field", **sheet, "count": 1}],
                      "earth_stake": {"length_m": dice.pick([1.0, 1.2, 0.8]), "diameter_m": 0.012}},
            "runs": [run]}
    if closed and dice.chance(0.4):
        run["start_m"] = round(dice.uniform(0.0, line_m - 0.1), 2)
    if not closed and run["reversed"]:
        run["start_m"] = Line(run["outline"], False).length_m
    if closed:
        run["live_loop"] = closure != "ring-opened"

    chain = chain_of(plan)
    if spare == 0 and abs(chain.total_m - chain.line.length_m) > 1e-9:
        return None
    if spare > 0 and any(abs(s - line_m) < 0.2 for row in chain.posts for s in row):
        return None
    places = Places(dice, chain)
    with_join_ohm = dice.chance(0.25) and "join" not in kinds_of_fault

    # Feed: at the chain's start where that is one place, on a post, between posts, or beside the line.
    where = dice.pick(["start", "anywhere", "post", "beside"])
    if where == "start" and run["start_m"] == 0 and not run["reversed"] and not with_join_ohm and "join" not in kinds_of_fault:
        places.taken.append(0.0)
        run["feed_at"] = list(run["outline"][0])
    else:
        s = places.post() if where == "post" else places.draw(0.02, 0.98)
        run["feed_at"] = places.point(s, dice.uniform(0.5, 2.5) if where == "beside" else 0.0)
    if run["feed_at"] is None:
        return None
    if earth == "measured":
        run["earth_ohm"] = round(dice.uniform(8.0, 220.0), 1)
    else:
        run["earth_stakes"] = {"count": earth, "spacing_m": dice.pick([3.0, 2.0, 4.5]),
                               "at": [round(run["feed_at"][0] + 1.0, 3), round(run["feed_at"][1] + 1.0, 3)]}
    run["leakage_s_per_m"] = grass
    if dice.chance(0.4):
        run["leakage_zones"] = []
        for _ in range(dice.pick([1, 2])):
            a, b = (round(chain.along_of(places.draw()), 3) for _ in range(2))
            if not closed:
                a, b = min(a, b), max(a, b)
            run["leakage_zones"].append({"from_m": a, "to_m": b, "s_per_m": dice.pick(ZONES_S_PER_M)})
    if with_join_ohm:
        run["join_ohm"] = dice.pick([2.0, 15.0, 80.0, 400.0])
    if dice.chance(0.3):
        run["lead_ohm"] = dice.pick([1.5, 12.0, 60.0])

    faults = []
    for kind in kinds_of_fault:
        if kind == "join":
            inner = [s for s in chain.bounds[1:-1] if s < chain.on_line_m - 1.0]
            if not inner:
                return None
            s = dice.pick(inner)
            fault = {"ohm": dice.pick([20.0, 100.0, 1000.0, 10000.0])}
        else:
            s = places.post() if kind == "short" and dice.chance(0.3) else places.draw()
            lines = len(chain.kinds[chain.net_at(s)]["live_line_heights_m"])
            fault = {"short": {"ohm": dice.pick(SHORT_OHM)}, "break": {}, "all_lines": {"lines": lines},
                     "line_break": {"lines": 1 + int(dice.uniform(0, 3))}}[kind]
            kind = "line_break" if kind == "all_lines" else kind
        at = places.point(s)
        if at is None:
            return None
        faults.append({"at": at, "kind": kind, **fault})
    if faults:
        run["faults"] = faults
    # Stay clear of what the model calls otherwise or leaves without an answer: every line of a
    # net broken, and a stretch cut off that nothing leaks from.
    some = sum(f.get("lines", 0) for f in faults) >= min(len(n["live_line_heights_m"]) for n in used)
    if some and "all_lines" not in kinds_of_fault:
        return None
    if {"break", "all_lines"} & {*kinds_of_fault} and any(z["s_per_m"] == 0 for z in run.get("leakage_zones", [])):
        return None
    if not closed and not settled(plan):
        return None
    if branched and not add_branches(dice, plan, places, chain, woven):
        return None
    if k >= COUNT and (grass == 0 or not try_on_branches(dice, plan, k)):
        return None
    if k % DOUBLE_EVERY == 3:
        run["status"] = "standing"
        plan["runs"].append(second_run(dice, plan))
    more = ", alternate" * woven + ", branched" * branched + ", tried on it" * (k >= COUNT) + ", two runs" * (len(plan["runs"]) > 1)
    name = f"{k + 1:03d} {closure}, {count} net{'s' * (count > 1)}, {'+'.join(kinds_of_fault) or 'sound'}{more}"
    return {"name": name, "plan": plan}


def draw_fences():
    """All fences, the same ones every time."""
    return [next(filter(None, (draw_fence(k, SEED + 1000 * k + n) for n in range(1000)))) for k in range(COUNT + TRIED_COUNT)]


def animal_posts(posts, k):
    """Three posts of the list at which an animal touches the fence, far apart; every post of two fences."""
    if k in (1, 2):
        return list(range(len(posts)))
    dice = Dice(SEED + k)
    third = len(posts) / 3
    return [min(len(posts) - 1, int(third * n + dice.uniform(0, third))) for n in range(3)]
