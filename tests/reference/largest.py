"""The largest square, rectangle, hexagon, octagon and round in random paddocks, by a dense grid, to hold a search against.

    python largest.py make [FROM] [TO]   draw the paddocks, search, write largest.json
    python largest.py check              measure every committed outline, search some again; exits 1 on a difference

Free ground is the paddock less the keep-outs grown by their clearance (GEOS, round, 32 facets a turn, drawn outside the
true circle). A convex shape at a centre and an angle can grow until its side meets a corner of the free ground's edge or its
corner a side of it, whichever comes first, or until its perimeter is the nets' length; that size is exact. Centres stand on
a grid (its keep-outs drawn with 8 facets), angles and proportions on another, and about the best places the grid is thrown again, finer and finer. What is found
lies inside (GEOS says so), so it is a lower bound for the largest: a search must reach it.

Round is the regular polygon with sides of one panel: as many as have their corners on a circle inside the largest circle
that GEOS finds in the free ground. `closed_forms` are rows whose answer is a formula, with its source.
"""

from __future__ import annotations

import json
import math
import random
import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
import shapely
from shapely import Point, Polygon

from sameness import same

FILE = Path(__file__).parent / "largest.json"
SEED = 20270404
COUNT = 100
QUARTER = 8
INSIDE_M = 1e-6
SLICE = 25
CENTRES, BEST, ROUNDS, THROWN = 450, 10, 32, 100
FAMILIES = {"square": 4, "rectangle": 4, "hexagon": 6, "octagon": 8}


# --- ground ---------------------------------------------------------------------------------------


def free_ground(ground, quarter=QUARTER):
    """Where a line and what it encloses may lie."""
    free = Polygon(ground["boundary"])
    for keep_out in ground.get("keep_outs", []):
        clear = keep_out["clearance_m"] / math.cos(math.pi / (4 * quarter))
        free = free.difference(Polygon(keep_out["outline"]).buffer(clear, quad_segs=quarter))
    return free


def edges(free):
    """Both ends of every side of the free ground's edge."""
    starts, ends = [], []
    for part in shapely.get_parts(free):
        for ring in (part.exterior, *part.interiors):
            points = np.array(ring.coords)
            starts.append(points[:-1])
            ends.append(points[1:])
    return np.concatenate(starts), np.concatenate(ends)


# --- shapes ---------------------------------------------------------------------------------------


def unit(sides, proportion):
    """Corners of shapes of perimeter 1 about their centre, one for each proportion."""
    proportion = np.atleast_1d(proportion)
    if sides == 4:
        wide, deep = proportion / (4 * (1 + proportion)), 1 / (4 * (1 + proportion))
        return np.stack([np.stack([x * wide, y * deep], -1) for x, y in ((1, 1), (-1, 1), (-1, -1), (1, -1))], 1)
    radius = 1 / (2 * sides * math.sin(math.pi / sides))
    turns = 2 * math.pi * np.arange(sides) / sides
    return np.repeat(radius * np.stack([np.cos(turns), np.sin(turns)], -1)[None], len(proportion), 0)


def unit_area(corners):
    x, y = corners[..., 0], corners[..., 1]
    return (x * np.roll(y, -1, -1) - y * np.roll(x, -1, -1)).sum(-1) / 2


def perimeters(centres, angles, corners, a, b):
    """To which perimeter each shape can grow: centres (n, 2), angles (n,), unit corners (n, k, 2), edge from a to b."""
    c, s = np.cos(angles)[:, None], np.sin(angles)[:, None]

    def local(points):
        d = points[None] - centres[:, None]
        return np.stack([c * d[..., 0] + s * d[..., 1], c * d[..., 1] - s * d[..., 0]], -1)

    # Every shape here is its own mirror image about its centre: half its sides and corners, both ways, are all.
    half = corners.shape[1] // 2
    p, q = local(a), local(b)
    along = np.roll(corners, -1, 1) - corners
    normal = np.stack([along[..., 1], -along[..., 0]], -1)
    normal = normal / (normal * corners).sum(-1)[..., None]
    # A corner of the edge meets a side of the shape.
    meets = 0.0
    for k in range(half):
        meets = np.maximum(meets, np.abs(p[..., 0] * normal[:, k, 0, None] + p[..., 1] * normal[:, k, 1, None]))
    grown = meets.min(-1)
    # A corner of the shape meets a side of the edge: r v = p + t (q - p).
    e = q - p
    cross = np.abs(e[..., 0] * p[..., 1] - e[..., 1] * p[..., 0])
    for k in range(half):
        x, y = corners[:, k, 0, None], corners[:, k, 1, None]
        at_p, at_q = x * p[..., 1] - y * p[..., 0], x * q[..., 1] - y * q[..., 0]
        with np.errstate(divide="ignore", invalid="ignore"):
            # The ends lie on both sides of the line through the corner; at_p - at_q is e against v.
            r = np.where(at_p * at_q <= 0, cross / np.abs(at_p - at_q), np.inf)
        grown = np.minimum(grown, np.nanmin(r, -1, initial=np.inf))
    return grown


def outline(centre, angle, corners, perimeter):
    c, s = math.cos(angle), math.sin(angle)
    return centre + perimeter * corners @ np.array([[c, s], [-s, c]])


# --- the search -----------------------------------------------------------------------------------


def largest(free, edge, rough, line_m, family, centres, step_m, rng):
    sides = FAMILIES[family]
    quarter = 2 * math.pi / sides if family != "rectangle" else math.pi
    angles = np.arange(24 if family != "rectangle" else 36) / (24 if family != "rectangle" else 36) * quarter
    proportions = np.exp(np.linspace(0, math.log(6), 8)) if family == "rectangle" else np.array([1.0])
    found = []
    for angle in angles:
        for proportion in proportions:
            corners = unit(sides, proportion)
            grown = perimeters(centres, np.full(len(centres), angle), np.repeat(corners, len(centres), 0), *rough)
            areas = np.minimum(grown, line_m) ** 2 * unit_area(corners)
            for k in np.argpartition(-areas, 3)[:3]:
                found.append((areas[k], *centres[k], angle, math.log(proportion)))
    found.sort(reverse=True)
    kept = []
    for f in found:  # the best places that are not one another's neighbours
        if all(math.dist(f[1:3], g[1:3]) > 1.5 * step_m or abs(math.remainder(f[3] - g[3], quarter)) > 0.2 for g in kept):
            kept.append(f)
        if len(kept) == BEST:
            break
    # Each place twice: thrown about as widely as the grid, and closer.
    best = np.array(kept + kept)
    reach = np.array([step_m, step_m, quarter / len(angles), 0.25 if family == "rectangle" else 0.0])
    reach = reach * np.repeat([1.0, 0.3], len(kept))[:, None]
    for finer in range(ROUNDS):
        thrown = best[:, None, 1:] + rng.uniform(-1, 1, (len(best), THROWN, 4)) * reach[:, None]
        thrown[:, 0] = best[:, 1:]
        flat = thrown.reshape(-1, 4)
        corners = unit(sides, np.exp(flat[:, 3]))
        grown = np.minimum(perimeters(flat[:, :2], flat[:, 2], corners, *edge), line_m)
        inside = shapely.contains_xy(free, flat[:, 0], flat[:, 1])
        areas = np.where(inside, grown**2 * unit_area(corners), 0).reshape(len(best), THROWN)
        k = areas.argmax(1)
        # A throw that hardly gains is thrown finer.
        gains = areas.max(1) > best[:, 0] * (1 + 3e-4)
        reach = reach * np.where(gains, 1.0, 0.6)[:, None]
        best = np.concatenate([areas.max(1)[:, None], thrown[np.arange(len(best)), k]], 1)
        if finer == 8:
            keep = np.argsort(-best[:, 0])[:8]
            best, reach = best[keep], reach[keep]
    area, x, y, angle, log_proportion = best[best[:, 0].argmax()]
    corners = unit(sides, math.exp(log_proportion))[0]
    # A hair smaller, so that rounding leaves it inside.
    grown = min(perimeters(np.array([[x, y]]), np.array([angle]), corners[None], *edge)[0], line_m) * (1 - 1e-9)
    shape = outline(np.array([x, y]), angle, corners, grown)
    return {"family": family, "area_m2": Polygon(shape).area, "outline": np.round(shape, 9).tolist()}


def round_run(free, line_m, panels):
    """Regular polygon with sides of one panel on a circle inside the largest free one."""
    side = line_m / panels
    radius, centre = 0.0, None
    for part in shapely.get_parts(free):
        circle = shapely.maximum_inscribed_circle(part, tolerance=1e-4)
        if circle.length > radius:
            radius, centre = circle.length, Point(circle.coords[0])
    count = panels
    while count >= 3 and side / (2 * math.sin(math.pi / count)) > radius:
        count -= 1
    if count < 3:
        return None
    r = side / (2 * math.sin(math.pi / count)) * (1 - 1e-9)
    shape = [[centre.x + r * math.cos(2 * math.pi * k / count), centre.y + r * math.sin(2 * math.pi * k / count)] for k in range(count)]
    return {"family": "round", "area_m2": Polygon(shape).area, "outline": np.round(shape, 9).tolist()}


def search(row):
    plan, net = row["plan"], row["plan"]["store"]["nets"][0]
    line_m = row["nets"] * net["length_m"]
    free = free_ground(plan["ground"])
    edge, rough = edges(free), edges(free_ground(plan["ground"], 2))
    rng = np.random.default_rng(SEED)
    x0, y0, x1, y1 = free.bounds
    step = math.sqrt(free.area / CENTRES)
    grid = np.stack(np.meshgrid(np.arange(x0 + step / 2, x1, step), np.arange(y0 + step / 2, y1, step)), -1).reshape(-1, 2)
    centres = grid[shapely.contains_xy(free, grid[:, 0], grid[:, 1])]
    found = [largest(free, edge, rough, line_m, family, centres, step, rng) for family in FAMILIES]
    if whole := round_run(free, line_m, row["nets"] * net["panels"]):
        found.append(whole)
    return found


# --- the paddocks ---------------------------------------------------------------------------------


class Dice:
    """Draws that stay the same in every Python: only `random()` of a seeded generator."""

    def __init__(self, seed):
        self.rng = random.Random(seed)

    def uniform(self, a, b):
        return a + (b - a) * self.rng.random()

    def whole(self, a, b):
        return a + int(self.rng.random() * (b - a + 1))


def ring(d, corners, size, near, at):
    turns = [(k + d.uniform(0, 0.8)) / corners for k in range(corners)]
    flat = d.uniform(0.6, 1)
    return [[round(at[0] + r * math.cos(2 * math.pi * t), 2), round(at[1] + flat * r * math.sin(2 * math.pi * t), 2)]
            for t in turns for r in [size * d.uniform(near, 1)]]


def draw_row(k, seed):
    """A paddock of 4 to 12 corners, some deeply dented, up to four keep-outs, and nets from ample to short."""
    d = Dice(seed)
    size, at = d.uniform(20, 60), (d.uniform(-80, 80), d.uniform(-80, 80))
    boundary = ring(d, d.whole(4, 12), size, 0.45 if k % 3 == 0 else 0.8, at)
    keep_outs = []
    for _ in range(d.whole(0 if k % 10 == 0 else 1, 4)):
        place = (at[0] + d.uniform(-0.8, 0.8) * size, at[1] + d.uniform(-0.6, 0.6) * size)
        keep_outs.append({"name": f"keep-out {len(keep_outs) + 1}", "clearance_m": round(d.uniform(0, 3), 1),
                          "outline": ring(d, d.whole(3, 7), d.uniform(0.04, 0.15) * size, 0.7, place)})
    shapes = [Polygon(boundary), *(Polygon(keep_out["outline"]) for keep_out in keep_outs)]
    if not all(shape.is_valid for shape in shapes):
        return None
    # Keep-outs that lie outside or on one another are another test's matter.
    if any(not shapes[0].contains(s) or any(s.intersects(t) for t in shapes[1:j + 1]) for j, s in enumerate(shapes[1:])):
        return None
    nets = d.whole(1, 5)
    length_m = round(shapes[0].length * d.uniform(0.35, 1.1) / nets, 1)
    plan = {"format": "netfold-plan", "version": 1, "ground": {"boundary": boundary, "keep_outs": keep_outs},
            "store": {"nets": [{"id": "a", "count": nets, "length_m": length_m, "panels": max(4, round(length_m / 3.5))}]}}
    return {"name": f"{k + 1:03d} {len(boundary)} corners, {len(keep_outs)} keep-outs, {nets} nets", "plan": plan, "nets": nets}


def drawn(k):
    for n in range(1000):
        if row := draw_row(k, SEED + 1000 * k + n):
            return row


def closed_forms():
    """Paddocks whose largest shape is a formula; nets ample where the ground is to bind."""
    root3 = math.sqrt(3)

    def ngon(n, side, turn=0.3):
        r = side / (2 * math.sin(math.pi / n))
        return [[r * math.cos(turn + 2 * math.pi * k / n), r * math.sin(turn + 2 * math.pi * k / n)] for k in range(n)]

    def row(name, boundary, length_m, family, area_m2, source):
        return {"name": name, "family": family, "area_m2": area_m2, "source": source, "nets": 2,
                "plan": {"format": "netfold-plan", "version": 1, "ground": {"boundary": boundary},
                         "store": {"nets": [{"id": "a", "count": 2, "length_m": length_m, "panels": 14}]}}}

    box = [[0, 0], [20, 0], [20, 20], [0, 20]]
    oblong = [[0, 0], [60, 0], [60, 10], [0, 10]]
    field = [[-100, -100], [100, -100], [100, 100], [-100, 100]]
    rows = [
        row("square in a square", box, 60.0, "square", 400.0, "arithmetic"),
        row("rectangle in a square", box, 60.0, "rectangle", 400.0, "arithmetic"),
        row("square in a turned square", ngon(4, 20), 60.0, "square", 400.0, "arithmetic"),
        row("hexagon in a square", box, 60.0, "hexagon", 1.5 * root3 * (10 / math.cos(math.pi / 12)) ** 2,
            "widths 2 R cos 15 degrees both ways; Dilworth and Mane, J. Geom. 99, 2010 (from memory)"),
        row("octagon in a square", box, 60.0, "octagon", 2 * 20**2 * (math.sqrt(2) - 1), "width across flats, arithmetic"),
        row("square in a hexagon", ngon(6, 20), 60.0, "square", (20 * (3 - root3)) ** 2,
            "side 3 - sqrt 3; Dilworth and Mane, J. Geom. 99, 2010 (from memory)"),
        row("square in an equilateral triangle", ngon(3, 40), 60.0, "square", (40 * (2 * root3 - 3)) ** 2,
            "b h / (b + h), similar triangles"),
        row("hexagon in an equilateral triangle", ngon(3, 45), 60.0, "hexagon", 1.5 * root3 * 15**2, "a third of the side"),
        row("hexagon in a hexagon", ngon(6, 20), 70.0, "hexagon", 1.5 * root3 * 20**2, "itself"),
        row("octagon in an octagon", ngon(8, 15), 70.0, "octagon", 2 * 15**2 * (1 + math.sqrt(2)), "itself"),
        row("rectangle in a right triangle", [[0, 0], [40, 0], [0, 30]], 80.0, "rectangle", 300.0,
            "half the triangle; Euclid VI.27"),
        row("rectangle in a triangle", [[3, 1], [45, 8], [17, 35]], 80.0, "rectangle",
            Polygon([[3, 1], [45, 8], [17, 35]]).area / 2, "half the triangle; Euclid VI.27"),
        row("rectangle in a strip, nets bind", oblong, 30.0, "rectangle", 200.0, "20 by 10 of 60 m"),
        row("rectangle in a strip, ground binds", oblong, 100.0, "rectangle", 600.0, "the strip itself"),
        row("square in a strip", oblong, 30.0, "square", 100.0, "arithmetic"),
    ]
    for family, area in (("square", 625.0), ("rectangle", 625.0), ("hexagon", 721.688), ("octagon", 754.442), ("round", 792.43)):
        rows.append(row(f"{family} in a wide field", field, 50.0, family, area, "docs/sources.md, husbandry 8.1 and 11 (N01, N02, N43)"))
    return rows


# --- commands -------------------------------------------------------------------------------------


def searched(k):
    row = drawn(k)
    return row | {"expected": search(row)}


def make(first=0, last=COUNT):
    rows = []
    with ProcessPoolExecutor(2) as pool:
        for row in pool.map(searched, range(int(first), int(last))):
            rows.append(row)
            print(row["name"], {e["family"]: round(e["area_m2"], 2) for e in row["expected"]}, flush=True)
    if len(rows) == COUNT:
        FILE.write_text('{ "paddocks": [\n' + ",\n".join(map(json.dumps, rows)) + '\n],\n"closed_forms": [\n' +
                        ",\n".join(map(json.dumps, closed_forms())) + "\n] }\n")
        print(f"wrote {len(rows)} paddocks, seed {SEED}, shapely {shapely.__version__}, GEOS {shapely.geos_version_string}")


def faults(row, got):
    """What is wrong with a committed outline, by GEOS."""
    net = row["plan"]["store"]["nets"][0]
    shape = Polygon(got["outline"])
    if not free_ground(row["plan"]["ground"]).buffer(INSIDE_M).contains(shape):
        yield "leaves the free ground"
    if shape.length > row["nets"] * net["length_m"] * (1 + 1e-8):
        yield "is longer than the nets"
    if abs(shape.area - got["area_m2"]) > 1e-5:
        yield f"has {shape.area} m2, committed {got['area_m2']}"


def check():
    table = json.loads(FILE.read_text())
    rows = table["paddocks"]
    if len(rows) != COUNT:
        sys.exit(f"{len(rows)} paddocks in {FILE.name}, not {COUNT}")
    wrong, worst = [], 0.0
    if not same(table["closed_forms"], closed_forms()):
        wrong.append("the closed forms are others")
    for k, row in enumerate(rows):
        if not same({key: row[key] for key in ("name", "plan", "nets")}, drawn(k)):
            wrong.append(f"{row['name']}: the seed draws another paddock")
        wrong += [f"{row['name']}: {got['family']} {fault}" for got in row["expected"] for fault in faults(row, got)]
    picked = rows[::SLICE]
    # The closed forms by the same search: it must come near them, and never above.
    formulas = [row for row in table["closed_forms"] if row["family"] != "round"]
    with ProcessPoolExecutor(2) as pool:
        anew = list(pool.map(search, picked + formulas))
    for row, found in zip(picked, anew):
        for got, want in zip(found, row["expected"], strict=True):
            off = abs(got["area_m2"] / want["area_m2"] - 1)
            worst = max(worst, off)
            if off > 1e-3:
                wrong.append(f"{row['name']}: {got['family']} {got['area_m2']} m2, committed {want['area_m2']}")
    least = 1.0
    for row, found in zip(formulas, anew[len(picked):]):
        share = next(f["area_m2"] for f in found if f["family"] == row["family"]) / row["area_m2"]
        least = min(least, share)
        if not 0.997 <= share <= 1 + 1e-5:
            wrong.append(f"{row['name']}: the grid finds {share:.5f} of the closed form")
    print(*(f"DIFFERS {line}" for line in wrong), sep="\n", end="\n" if wrong else "")
    print(f"{len(rows)} paddocks measured, {len(picked)} searched anew, worst difference {worst:.1e} of 1e-3 allowed;"
          f" closed forms reached to {least:.5f}")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    commands = {f.__name__: f for f in (make, check)}
    if len(sys.argv) < 2 or sys.argv[1] not in commands:
        sys.exit("usage: largest.py " + "|".join(commands))
    commands[sys.argv[1]](*sys.argv[2:])
