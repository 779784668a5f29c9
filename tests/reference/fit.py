"""The nearest outline of whole panels by trying every count, to hold a fit against.

    python fit.py make [FROM] [TO]   draw the sketches, search, write fit.json
    python fit.py check              search every eleventh again and compare with fit.json; exits 1 on a difference

For every sketch each way to cut the closed chain of panels into sides is tried: every order of the nets, both
directions, every post as the first corner. For each the corners are moved by SciPy's SLSQP, least squares subject to the
sides' lengths and, where there is ground, to staying on it. A count is left out only where it cannot win: a side can
change from l to d only if its corners move, |l - d| <= |m_i| + |m_i+1|, and the least sum of squares under these bounds
is a convex problem whose dual bounds it from below at any multipliers; where there is ground, also where the corners'
optimum on open ground is no better, since ground never brings an outline nearer.

Without ground a stationary point x with (I + L) x = a, L the side-weighted Laplacian of its multipliers, is the best of its
count wherever I + L is positive semidefinite (Lagrange duality); where it is not, more starts follow. With ground a row is
what several starts found, a bound that a fit must reach. Sketches that would take more than 400 counts, or 24 on ground, are
drawn anew: every count that could win has been tried for each committed row.

The plans hold metres and panels; the scripts read the model page, nothing of the crates.
"""

from __future__ import annotations

import itertools
import json
import math
import random
import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
import shapely
from scipy.optimize import minimize
from shapely import LinearRing, Polygon

from sameness import same

FILE = Path(__file__).parent / "fit.json"
SEED = 20270403
COUNT = 200
TOLERANCE_M = 1e-6
INSIDE_M = 1e-8
SLICE = 11
MORE, MOST_ON_GROUND, MOST_COUNTS = 8, 24, 400


# --- every count --------------------------------------------------------------------------------


def panels_of(net):
    return net.get("panel_lengths_m") or [net["length_m"] / net["panels"]] * net["panels"]


def chains(plan, double_back):
    """Panels round the outline, forward from some post: each way to chain the nets, once."""
    kinds = {net["id"]: tuple(panels_of(net)) for net in plan["store"]["nets"]}
    found = set()
    for order in set(itertools.permutations(plan["runs"][0]["nets"])):
        chain = sum((kinds[kind] for kind in order), ())
        chain = chain[: len(chain) - double_back]
        for way in (chain, chain[::-1]):
            found.add(min(way[k:] + way[:k] for k in range(len(way))))
    return sorted(found)


def cuttings(plan, double_back, corners):
    """Rows of side lengths and of panels a side: every cutting of every chain, each pair once."""
    rows = []
    for chain in chains(plan, double_back):
        count = len(chain)
        if count < corners:
            continue
        cuts = np.array(list(itertools.combinations(range(count), corners)))
        if len(set(chain)) == 1:
            cuts = cuts[cuts[:, 0] == 0]
        ends = np.concatenate([cuts[:, 1:], cuts[:, :1] + count], axis=1)
        along = np.concatenate([[0.0], np.cumsum(chain + chain)])
        lengths, panels = along[ends] - along[cuts], ends - cuts
        for turn in range(corners):
            rows.append(np.concatenate([np.roll(lengths, turn, 1), np.roll(panels, turn, 1)], axis=1))
    if not rows:
        return np.zeros((0, corners)), np.zeros((0, corners), int)
    rows = np.concatenate(rows)
    _, first = np.unique(np.round(rows, 9), axis=0, return_index=True)
    rows = rows[np.sort(first)]
    # One side as long as the rest encloses nothing.
    rows = rows[2 * rows[:, :corners].max(1) < rows[:, :corners].sum(1) - 1e-9]
    return rows[:, :corners], rows[:, corners:].astype(int)


def least_moves2(sketch, lengths):
    """Below the sum of squared moves of every count: dual of min sum m^2 over m_i + m_i+1 >= |l_i - d_i|."""
    change = np.abs(np.linalg.norm(np.roll(sketch, -1, 0) - sketch, axis=1) - lengths)
    dual = np.zeros_like(change)
    for _ in range(40):
        for k in range(change.shape[1]):
            sides = dual[:, k - 1] + dual[:, (k + 1) % change.shape[1]]
            dual[:, k] = np.maximum(0, change[:, k] - sides / 2)
    return (dual * change).sum(1) - ((dual + np.roll(dual, 1, 1)) ** 2).sum(1) / 4


# --- open ground --------------------------------------------------------------------------------


def sides_of(x):
    return np.roll(x, -1, 0) - x


def length_rows(x):
    """Derivative of every side's length by every coordinate."""
    e = sides_of(x)
    unit = e / np.maximum(np.linalg.norm(e, axis=1), 1e-12)[:, None]
    between = np.roll(np.eye(len(x)), 1, 1) - np.eye(len(x))
    return (between[:, :, None] * unit[:, None]).reshape(len(x), -1)


def slsqp(sketch, lengths, start, inequality=None):
    n = len(sketch)
    a = sketch.ravel()
    constraints = [{"type": "eq", "fun": lambda x: np.linalg.norm(sides_of(x.reshape(n, 2)), axis=1) - lengths,
                    "jac": lambda x: length_rows(x.reshape(n, 2))}]
    if inequality:
        constraints.append({"type": "ineq", "fun": lambda x: inequality(x.reshape(n, 2))[0],
                            "jac": lambda x: inequality(x.reshape(n, 2))[1]})
    done = minimize(lambda x: (((x - a) ** 2).sum(), 2 * (x - a)), start.ravel(), jac=True, method="SLSQP",
                    constraints=constraints, options={"maxiter": 200, "ftol": 1e-13})
    return done.x.reshape(n, 2)


def polished(sketch, lengths, x):
    """Newton's method on the stationary point that SLSQP has come near, and whether it is proved the best."""
    n = len(x)
    laplace = np.zeros((n, n, n))
    for k in range(n):
        j = (k + 1) % n
        laplace[k, k, k] = laplace[k, j, j] = 1
        laplace[k, k, j] = laplace[k, j, k] = -1

    def rows(x):
        return np.stack([(laplace[k] @ x).ravel() for k in range(n)])

    weights = np.linalg.lstsq(rows(x).T, (sketch - x).ravel(), rcond=None)[0]
    for _ in range(8):
        system = np.eye(n) + np.tensordot(weights, laplace, 1)
        slack = ((sides_of(x) ** 2).sum(1) - lengths**2) / 2
        kkt = np.block([[np.kron(system, np.eye(2)), rows(x).T], [rows(x), np.zeros((n, n))]])
        right = np.concatenate([-(system @ x - sketch).ravel(), -slack])
        step = np.linalg.lstsq(kkt, right, rcond=None)[0]
        x, weights = x + step[: 2 * n].reshape(n, 2), weights + step[2 * n :]
    system = np.eye(n) + np.tensordot(weights, laplace, 1)
    settled = np.abs(system @ x - sketch).max() < 1e-7 and length_error(x, lengths) < 1e-9
    return x, settled, bool(settled and np.linalg.eigvalsh(system)[0] > -1e-9)


def length_error(x, lengths):
    return np.abs(np.linalg.norm(sides_of(x), axis=1) - lengths).max()


def starts(sketch, lengths, seed):
    """The sketch, the sketch to scale, and the sketch with its corners moved by up to a panel or so."""
    middle = sketch.mean(0)
    around = np.linalg.norm(sides_of(sketch), axis=1).sum()
    yield sketch
    yield middle + (sketch - middle) * (lengths.sum() / around)
    rng = random.Random(seed)
    for spread in (0.03, 0.06, 0.1, 0.15) * 4:
        yield sketch + np.array([[rng.random() - 0.5, rng.random() - 0.5] for _ in sketch]) * 2 * spread * around


def on_open_ground(sketch, lengths, seed):
    """Best found corners of one count, their squared moves, and whether they are proved the best.

    They may cross themselves: the caller looks. What crosses is a bound for the count all the same.
    """
    best, best2, proved, simple, simple2 = None, math.inf, False, None, math.inf
    for start in itertools.islice(starts(sketch, lengths, seed), 6):
        x = slsqp(sketch, lengths, start)
        better, settled, sure = polished(sketch, lengths, x)
        if settled:
            x = better
        if length_error(x, lengths) > 1e-7:
            continue
        moved2 = ((x - sketch) ** 2).sum()
        if moved2 < best2:
            best, best2, proved = x, moved2, sure
        if moved2 < simple2 and Polygon(x).is_valid:
            simple, simple2 = x, moved2
        if sure:
            break
    return best, best2, proved, simple, simple2


# --- ground -------------------------------------------------------------------------------------


def anticlockwise(points):
    points = np.array(points, float)
    return points if Polygon(points).exterior.is_ccw else points[::-1]


def gaps(x, obstacles):
    """Signed distance of every side and every convex anticlockwise obstacle, and its derivative by the side's ends.

    Apart: the distance, by the nearest pair. Through one another: minus the least push that parts them.
    `obstacles` is (obstacles, corners, 2), filled up with the last corner.
    """
    a, b = x[:, None, None], np.roll(x, -1, 0)[:, None, None]
    corners = obstacles[None]
    sides = np.roll(obstacles, -1, 1) - obstacles
    long = np.linalg.norm(sides, axis=2)
    outward = np.stack([sides[..., 1], -sides[..., 0]], -1) / np.maximum(long, 1e-12)[..., None]
    n, m = len(x), len(obstacles)
    pick = np.arange(n)[:, None], np.arange(m)[None]

    # Parted by a side of the obstacle: the end that is nearer, or deeper.
    end = np.stack([((p - corners) * outward).sum(-1) for p in (a, b)], -1)
    end[:, long < 1e-9] = -np.inf
    k = end.min(-1).argmax(-1)
    value = end.min(-1)[(*pick, k)]
    low = end[(*pick, k)].argmin(-1)
    rows = np.zeros((n, m, 2, 2))
    rows[(*pick, low)] = outward[pick[1], k]
    # Parted by the side itself.
    e = (b - a)[:, 0, 0]
    span = np.maximum(np.linalg.norm(e, axis=1), 1e-9)
    for sign in (1, -1):
        normal = sign * np.stack([-e[:, 1], e[:, 0]], -1) / span[:, None]
        at = ((corners - a) * normal[:, None, None]).sum(-1)
        k = at.argmin(-1)
        t = ((obstacles[pick[1], k] - x[:, None]) * e[:, None]).sum(-1) / span[:, None] ** 2
        by = np.stack([-(1 - t)[..., None] * normal[:, None], -t[..., None] * normal[:, None]], 2)
        better = at[(*pick, k)] > value
        value, rows = np.where(better, at[(*pick, k)], value), np.where(better[..., None, None], by, rows)
    # Apart: obstacle's corners to the side, side's ends to the obstacle's sides.
    t = np.clip((((corners - a) * e[:, None, None]).sum(-1)) / span[:, None, None] ** 2, 0, 1)
    d = a + t[..., None] * e[:, None, None] - corners
    pairs, derivatives = [np.linalg.norm(d, axis=-1)], [np.stack([(1 - t)[..., None] * d, t[..., None] * d], -2)]
    for low, p in enumerate((a, b)):
        t = np.clip(((p - corners) * sides).sum(-1) / np.maximum(long, 1e-9) ** 2, 0, 1)
        d = p - corners - t[..., None] * sides
        pairs.append(np.linalg.norm(d, axis=-1))
        derivatives.append(np.stack([d, 0 * d] if low == 0 else [0 * d, d], -2))
    far, by = np.concatenate(pairs, 2), np.concatenate(derivatives, 2)
    k = far.argmin(-1)
    near = far[(*pick, k)]
    by = by[(*pick, k)] / np.maximum(near, 1e-12)[..., None, None]
    apart = value > 0
    return np.where(apart, near, value), np.where(apart[..., None, None], by, rows)


class Ground:
    """A paddock (convex, or with one bite taken out of it) and convex keep-outs."""

    def __init__(self, stated):
        self.last = None
        self.paddock = Polygon(stated["boundary"])
        hull = self.paddock.convex_hull
        self.hull = anticlockwise(list(hull.exterior.coords)[:-1])
        normal = sides_of(self.hull)[:, ::-1] * (-1, 1)
        self.inward = normal / np.linalg.norm(normal, axis=1)[:, None]
        bites = shapely.get_parts(hull.difference(self.paddock))
        self.obstacles = [(anticlockwise(list(bite.convex_hull.exterior.coords)[:-1]), 0.0) for bite in bites if bite.area > 1e-9]
        self.keep_outs = [(Polygon(k["outline"]), k["clearance_m"], k.get("may_enclose", False)) for k in stated.get("keep_outs", [])]
        self.obstacles += [(anticlockwise(list(k.exterior.coords)[:-1]), clear) for k, clear, _ in self.keep_outs]

    def margins(self, x):
        """What must not be negative, and its derivative: corners inside the hull, sides off every obstacle."""
        key = x.tobytes()
        if self.last and self.last[0] == key:
            return self.last[1]
        n = len(x)
        values = ((x[:, None] - self.hull) * self.inward).sum(-1).ravel()
        rows = np.einsum("ij,kc->ikjc", np.eye(n), self.inward).reshape(-1, 2 * n)
        if self.obstacles:
            most = max(len(o) for o, _ in self.obstacles)
            far, by = gaps(x, np.stack([np.concatenate([o, np.repeat(o[-1:], most - len(o), 0)]) for o, _ in self.obstacles]))
            off = np.zeros((n, len(self.obstacles), n, 2))
            for k in range(n):
                off[k, :, k], off[k, :, (k + 1) % n] = by[k, :, 0], by[k, :, 1]
            values = np.concatenate([values, (far - [clear for _, clear in self.obstacles]).ravel()])
            rows = np.concatenate([rows, off.reshape(-1, 2 * n)])
        self.last = key, (values, rows)
        return values, rows

    def holds(self, x):
        """By GEOS, on the outline as it stands."""
        run = Polygon(x)
        if not run.is_valid or not self.paddock.buffer(INSIDE_M).contains(run):
            return False
        return all((LinearRing(x) if enclose else run).distance(k) >= clear - INSIDE_M for k, clear, enclose in self.keep_outs)


def on_ground(ground, sketch, lengths, first, seed, limit2, many):
    """Best of several starts, or None."""
    best, best2 = None, limit2
    middles = [first, *itertools.islice(starts(sketch, lengths, seed), 1, many)]
    inside = np.array(ground.paddock.representative_point().coords[0])
    middles += [first + share * (inside - first.mean(0)) for share in (0.3, 0.8)]
    for start in middles:
        x = slsqp(sketch, lengths, start, ground.margins)
        moved2 = ((x - sketch) ** 2).sum()
        if moved2 < best2 and length_error(x, lengths) < 1e-8 and ground.holds(x):
            best, best2 = x, moved2
    return best, best2


# --- one sketch ---------------------------------------------------------------------------------


def search(row, patient=True):
    plan = row["plan"]
    sketch = np.array(plan["runs"][0]["outline"], float)
    corners = len(sketch)
    ground = Ground(plan["ground"]) if "ground" in plan else None
    lengths, panels = cuttings(plan, row["double_back"], corners)
    if not len(lengths):
        return None
    bounds = least_moves2(sketch, lengths)
    best, best2, tried, proved, again = None, math.inf, 0, True, []
    for k in np.argsort(bounds, kind="stable"):
        if bounds[k] >= best2:
            break
        tried += 1
        any_, any2, sure, simple, simple2 = on_open_ground(sketch, lengths[k], int(k))
        if any_ is None or any2 >= best2:
            proved &= sure
            continue
        if ground is None:
            # The best of a count that crosses itself may hide a nearby simple one that SLSQP did not meet.
            proved &= sure and simple2 <= any2
            x, moved2 = simple, simple2
        elif ground.holds(any_):
            proved &= sure
            x, moved2 = any_, any2
        else:
            proved = False
            x, moved2 = on_ground(ground, sketch, lengths[k], any_, int(k), best2, 4)
            again.append((any2, k, any_))
        if not patient and (len(again) > MOST_ON_GROUND or tried > MOST_COUNTS):
            return None
        if x is not None and moved2 < best2:
            best, best2, at = x, moved2, k
    # Ground has many local optima: the likeliest counts once more, from more starts.
    for any2, k, any_ in sorted(again, key=lambda a: a[0])[:MORE]:
        if any2 < best2:
            x, moved2 = on_ground(ground, sketch, lengths[k], any_, int(k), best2, 14)
            if x is not None:
                best, best2, at = x, moved2, k
    if best is None:
        return None
    return {"moved_rms_m": math.sqrt(best2 / corners), "side_panels": panels[at].tolist(),
            "outline": np.round(best, 9).tolist(), "counts": len(lengths), "tried": tried, "proved": bool(proved)}


# --- the sketches -------------------------------------------------------------------------------


class Dice:
    """Draws that stay the same in every Python: only `random()` of a seeded generator."""

    def __init__(self, seed):
        self.rng = random.Random(seed)

    def uniform(self, a, b):
        return a + (b - a) * self.rng.random()

    def whole(self, a, b):
        return a + int(self.rng.random() * (b - a + 1))


def polygon(d, corners, dent):
    turns = [(k + d.uniform(0, 0.7)) / corners for k in range(corners)]
    flat = d.uniform(0.5, 1)
    far = [d.uniform(0.8, 1) for _ in turns]
    if dent:
        far[d.whole(0, corners - 1)] = d.uniform(0.15, 0.5)
    return np.array([(r * math.cos(2 * math.pi * t), flat * r * math.sin(2 * math.pi * t)) for r, t in zip(far, turns)])


def turned(points, d):
    angle = d.uniform(0, 2 * math.pi)
    c, s = math.cos(angle), math.sin(angle)
    return points @ np.array([[c, s], [-s, c]])


def nets_of(k, d):
    """Kinds and the run's nets: mostly one kind, some with a short panel at the end, some of two kinds."""
    kind = {"id": "a", "count": 4, "length_m": round(d.uniform(12, 40), 1), "panels": d.whole(4, 8)}
    if k % 10 == 3:  # a short panel at the end, or all of them unequal
        full = round(d.uniform(2.5, 4.5), 2)
        lengths = [full] * d.whole(3, 5) + [round(full * d.uniform(0.3, 0.8), 2)]
        if k % 20 == 3:
            lengths = [round(d.uniform(1.5, 4.5), 2) for _ in lengths]
        kind = {"id": "a", "count": 4, "length_m": round(sum(lengths), 2), "panel_lengths_m": lengths}
        return [kind], ["a"] * d.whole(1, 2)
    if k % 10 == 6:
        other = {"id": "b", "count": 4, "length_m": round(d.uniform(12, 30), 1), "panels": d.whole(4, 6)}
        return [kind | {"panels": d.whole(4, 6)}, other], ["a", "b"] + (["b"] if k % 20 == 6 else [])
    return [kind], ["a"] * d.whole(1, 3)


def draw_ground(d, sketch, size):
    """A paddock that the sketch fills tightly or overruns, keep-outs by its sides, at a corner, or inside."""
    middle = sketch.mean(0)
    wide, deep = np.ptp(sketch, axis=0) / 2 * d.uniform(0.95, 1.25)
    box = np.array([(-wide, -deep), (wide, -deep), (wide, deep), (-wide, deep)]) * 1.0
    box += np.array([[d.uniform(-0.1, 0.1), d.uniform(-0.1, 0.1)] for _ in box]) * size
    paddock = Polygon(box + middle)
    if d.uniform(0, 1) < 0.3:  # a bite at a corner
        a, b = d.uniform(0.1, 0.35) * wide, d.uniform(0.1, 0.35) * deep
        corner = box[2] + middle
        paddock = paddock.difference(Polygon([corner + (-a, -b), corner + (9, -b), corner + (9, 9), corner + (-a, 9)]))
    keep_outs = []
    for _ in range(d.whole(0, 2)):
        n, r, t = d.whole(3, 6), d.uniform(0.04, 0.1) * size, d.uniform(0, 1)
        k = d.whole(0, len(sketch) - 1)
        at = sketch[k] + t * (sketch[(k + 1) % len(sketch)] - sketch[k])
        inside = d.uniform(0, 1) < 0.25
        at = middle + 0.2 * (at - middle) if inside else at + (at - middle) * d.uniform(-0.1, 0.25)
        ring = [[round(float(at[0] + r * math.cos(2 * math.pi * i / n)), 3), round(float(at[1] + r * math.sin(2 * math.pi * i / n)), 3)] for i in range(n)]
        keep_outs.append({"name": f"keep-out {len(keep_outs) + 1}", "outline": ring,
                          "clearance_m": round(d.uniform(0.2, 1.5), 2), "may_enclose": bool(inside)})
    boundary = [[round(x, 3), round(y, 3)] for x, y in list(paddock.exterior.coords)[:-1]]
    return {"boundary": boundary, "keep_outs": keep_outs}


def draw_row(k, seed):
    d = Dice(seed)
    kinds, nets = nets_of(k, d)
    mixed = k % 10 in (3, 6)
    panels = sum(len(panels_of(next(kind for kind in kinds if kind["id"] == net))) for net in nets)
    double_back = d.whole(1, 2) if k % 16 == 5 and panels > 8 else 0
    corners = d.whole(3, 4 if mixed and panels > 9 else 6)
    if panels - double_back < corners + 1:
        return None
    total = sum(next(kind for kind in kinds if kind["id"] == net)["length_m"] for net in nets)
    points = turned(polygon(d, corners, dent=corners > 3 and k % 5 == 2), d)
    around = np.linalg.norm(sides_of(points), axis=1).sum()
    size = total / around * (d.uniform(0.75, 1.3) if k % 4 == 1 else d.uniform(0.92, 1.08))
    points = points * size + (d.uniform(-50, 50), d.uniform(-50, 50))
    if k % 3 == 0:
        points = points[::-1]
    sketch = [[round(float(x), 3), round(float(y), 3)] for x, y in points]
    if not Polygon(sketch).is_valid:
        return None
    plan = {"format": "netfold-plan", "version": 1, "store": {"nets": kinds},
            "runs": [{"id": "run", "outline": sketch, "closed": True, "nets": nets}]}
    words = [f"{corners} corners", f"{panels} panels"]
    if k % 3 == 1:
        plan["ground"] = draw_ground(d, points, size)
        shapes = [Polygon(plan["ground"]["boundary"]), *(Polygon(o["outline"]) for o in plan["ground"]["keep_outs"])]
        if not all(s.is_valid for s in shapes) or len(shapes) > 2 and shapes[1].intersects(shapes[2]):
            return None
        words.append("on ground")
    if double_back:
        words.append(f"{double_back} doubled back")
    if mixed:
        words.append("unequal panels")
    return {"name": f"{k + 1:03d} {', '.join(words)}", "plan": plan, "double_back": double_back}


def impossible():
    """Where no outline exists, and why."""
    def plan(outline, nets, **more):
        return {"format": "netfold-plan", "version": 1, "store": {"nets": nets},
                "runs": [{"id": "run", "outline": outline, "closed": True, "nets": ["a"]}], **more}

    def net(length_m, panels):
        return [{"id": "a", "count": 1, "length_m": length_m, "panels": panels}]

    triangle = [[0, 0], [5, 0], [2, 4]]
    square = [[0, 0], [10, 0], [10, 10], [0, 10]]
    return [
        {"name": "fewer panels than corners", "plan": plan(triangle, net(12.0, 2)), "double_back": 0},
        {"name": "a triangle of four equal panels lies flat", "plan": plan(triangle, net(14.0, 4)), "double_back": 0},
        {"name": "a square of five panels, two of them doubled back", "plan": plan(square, net(40.0, 5)), "double_back": 2},
        {"name": "a triangle wider than its paddock", "double_back": 0,
         "plan": plan(triangle, net(36.0, 12), ground={"boundary": [[0, 0], [5, 0], [5, 5], [0, 5]]})},
    ]


def searched(k):
    for n in range(1000):
        row = draw_row(k, SEED + 1000 * k + n)
        if row and (found := search(row, patient=False)):
            return row | {"draw": n, "expected": found}


# --- commands -----------------------------------------------------------------------------------


def make(first=0, last=COUNT):
    rows = []
    with ProcessPoolExecutor(2) as pool:
        for row in pool.map(searched, range(int(first), int(last))):
            rows.append(row)
            e = row["expected"]
            print(f"{row['name']}: {e['moved_rms_m']:.4f} m, {e['tried']} of {e['counts']} counts, proved {e['proved']}", flush=True)
    if len(rows) < COUNT:
        return
    refused = impossible()
    assert all(search(row) is None for row in refused)
    FILE.write_text('{ "fits": [\n' + ",\n".join(map(json.dumps, rows)) + '\n],\n"impossible": [\n' + ",\n".join(map(json.dumps, refused)) + "\n] }\n")
    print(f"wrote {len(rows)} fits, {sum(r['expected']['proved'] for r in rows)} proved, seed {SEED}")


def check():
    table = json.loads(FILE.read_text())
    rows = table["fits"]
    if len(rows) != COUNT:
        sys.exit(f"{len(rows)} fits in {FILE.name}, not {COUNT}")
    bad, worst = 0, 0.0
    for k, row in enumerate(rows):
        if not same({key: row[key] for key in ("name", "plan", "double_back")}, draw_row(k, SEED + 1000 * k + row["draw"])):
            bad += 1
            print(f"DIFFERS {row['name']}: the seed draws another sketch")
    picked = rows[::SLICE]
    with ProcessPoolExecutor(2) as pool:
        for row, got in zip(picked, pool.map(search, picked), strict=True):
            off = abs(got["moved_rms_m"] - row["expected"]["moved_rms_m"]) if got else math.inf
            worst = max(worst, off)
            if not off <= TOLERANCE_M or got["proved"] != row["expected"]["proved"]:
                bad += 1
                print(f"DIFFERS {row['name']}: {got and got['moved_rms_m']}, committed {row['expected']['moved_rms_m']}")
    if not same(table["impossible"], impossible()):
        bad += 1
        print("DIFFERS: the impossible sketches are others")
    for row in table["impossible"]:
        # Where ground forbids, every count is tried from every start: `make` alone does that.
        if "ground" not in row["plan"] and search(row) is not None:
            bad += 1
            print(f"DIFFERS {row['name']}: there is an outline")
    print(f"{len(picked)} of {len(rows)} fits searched anew, worst difference {worst:.1e} m of {TOLERANCE_M:g} m allowed")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    commands = {f.__name__: f for f in (make, check)}
    if len(sys.argv) < 2 or sys.argv[1] not in commands:
        sys.exit("usage: fit.py " + "|".join(commands))
    commands[sys.argv[1]](*sys.argv[2:])
