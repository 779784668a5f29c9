"""Lengths over random ground, and the gaps under chords over it, by SciPy, to hold Netfold's ground against.

    python slope.py make     draw the ground and the lines, measure, write slope.json
    python slope.py check    measure every committed line again; exits 1 on a difference

Each row is a plan file with one run, over spot heights (with holes in their hull's neighbourhood: some lines leave it) or over
a grid. The height at a place is SciPy's: Delaunay triangles by Qhull with linear interpolation on them; beyond their hull the
height of the hull's nearest place (GEOS). On a grid each square is four triangles about the mean of its corners, solved by
NumPy as barycentric coordinates. A line is halved until five places between its ends lie on the chord, so that its length is
that of the ground to rounding; nothing is known of where the triangles meet. `chords` are straight lines from one place along
the run's line in plan to another: the widest gap below and the highest ground above.
"""

from __future__ import annotations

import json
import math
import random
import sys
from pathlib import Path

import numpy as np
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import ConvexHull, Delaunay
from shapely import LinearRing, Point

from sameness import same

FILE = Path(__file__).parent / "slope.json"
SEED = 20270511
SPOTS, GRIDS, CHORDS = 45, 25, 4
WITHIN = (0.07, 0.2113, 0.5, 0.7319, 0.91)
STRAIGHT_M, SHORTEST_M = 1e-11, 1e-7


# --- ground ---------------------------------------------------------------------------------------


def over_spots(heights):
    places = np.array([spot["at"] for spot in heights])
    up = np.array([spot["up_m"] for spot in heights])
    inside = LinearNDInterpolator(Delaunay(places), up)
    hull = ConvexHull(places).vertices
    rim = LinearRing(places[hull])
    ring = np.append(hull, hull[0])
    along = np.append(0.0, np.cumsum(np.hypot(*np.diff(places[ring], axis=0).T)))

    def height(east, north):
        found = float(inside(east, north))
        if math.isnan(found):
            found = float(np.interp(rim.project(Point(east, north)), along, up[ring]))
        return found

    return height


def over_grid(grid):
    (west, south), cell, columns = grid["south_west"], grid["cell_m"], grid["columns"]
    up = np.array(grid["up_m"], dtype=float).reshape(-1, columns)

    def height(east, north):
        x, y = (east - west) / cell, (north - south) / cell
        column, row = min(int(x), columns - 2), min(int(y), len(up) - 2)
        u, v = x - column, y - row
        corners = [(0, 0), (1, 0), (1, 1), (0, 1)]
        z = [up[row + n, column + e] for e, n in corners]
        side = int(np.argmin([v, 1 - u, 1 - v, u]))
        a, b = corners[side], corners[(side + 1) % 4]
        matrix = np.array([[a[0], b[0], 0.5], [a[1], b[1], 0.5], [1.0, 1.0, 1.0]])
        shares = np.linalg.solve(matrix, [u, v, 1.0])
        return float(shares @ [z[side], z[(side + 1) % 4], sum(z) / 4])

    return height


# --- lines ----------------------------------------------------------------------------------------


def profile(height, start, end):
    """Shares of the way and heights between which the ground is straight."""
    at = lambda share: height(start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
    side_m = math.dist(start, end)
    found = [(0.0, at(0.0))]

    def halve(low, high):
        (a, up_a), (b, up_b) = low, high
        straight = all(abs(at(a + t * (b - a)) - (up_a + t * (up_b - up_a))) <= STRAIGHT_M for t in WITHIN)
        if straight or (b - a) * side_m < SHORTEST_M:
            found.append(high)
            return
        middle = ((a + b) / 2, at((a + b) / 2))
        halve(low, middle)
        halve(middle, high)

    # A kink that all five places miss by chance is met by starting from many pieces.
    pieces = 64
    knots = [(piece / pieces, at(piece / pieces)) for piece in range(pieces + 1)]
    for low, high in zip(knots, knots[1:]):
        halve(low, high)
    return found


def measure(plan, chords):
    height = over_spots(plan["heights"]) if "heights" in plan else over_grid(plan["ground"]["height_grid"])
    outline = plan["runs"][0]["outline"]
    sides, knots, level_m = [], [], 0.0
    for start, end in zip(outline, outline[1:] + outline[:1]):
        side_m = math.dist(start, end)
        found = profile(height, start, end)
        sides.append(sum(
            math.hypot((b - a) * side_m, up_b - up_a) for (a, up_a), (b, up_b) in zip(found, found[1:])
        ))
        knots += [(level_m + share * side_m, up) for share, up in found]
        level_m += side_m
    levels, ups = np.array(knots).T
    gaps = []
    for start_m, end_m in chords:
        ends = np.interp([start_m, end_m], levels, ups)
        between = (levels > start_m) & (levels < end_m)
        off = ends[0] + (levels[between] - start_m) / (end_m - start_m) * (ends[1] - ends[0]) - ups[between]
        gaps.append([max(0.0, float(off.max(initial=0.0))), max(0.0, float((-off).max(initial=0.0)))])
    return {"level_m": level_m, "surface_m": sum(sides), "sides_m": sides, "gaps_m": gaps}


# --- rows -----------------------------------------------------------------------------------------


def round_outline(draw, radius_m, corners):
    turns = sorted(draw.uniform(0, 2 * math.pi) for _ in range(corners))
    spread = [turn + 0.7 * (2 * math.pi * index / corners - turn) for index, turn in enumerate(turns)]
    far = [radius_m * draw.uniform(0.6, 1.0) for _ in spread]
    return [[round(r * math.cos(a), 3), round(r * math.sin(a), 3)] for r, a in zip(far, spread)]


def ground(draw):
    """A hill, a tilt and some waves, metres."""
    tilt = (draw.uniform(-0.2, 0.2), draw.uniform(-0.2, 0.2))
    waves = [(draw.uniform(0.02, 1.2), draw.uniform(4, 25), draw.uniform(0, 7), draw.uniform(0, 7)) for _ in range(4)]

    def up(east, north):
        waved = sum(a * math.sin(east / l + p) * math.cos(north / l + q) for a, l, p, q in waves)
        return round(tilt[0] * east + tilt[1] * north + waved + 90, 3)

    return up


def draw_rows():
    draw = random.Random(SEED)
    rows = []
    for index in range(SPOTS + GRIDS):
        radius_m, up = draw.uniform(10, 26), ground(draw)
        plan = {"format": "netfold-plan", "version": 1, "ground": {}}
        if index < SPOTS:
            # Every third line leaves the hull of its spots.
            reach_m = radius_m * (0.7 if index % 3 == 0 else 1.6)
            count = draw.choice([4, 7, 15, 40, 120])
            spots = [[round(draw.uniform(-reach_m, reach_m), 3) for _ in range(2)] for _ in range(count)]
            plan["heights"] = [{"at": spot, "up_m": up(*spot)} for spot in spots]
        else:
            cell_m = draw.choice([1.0, 2.0])
            low = [round(-radius_m - draw.uniform(2, 6), 2) for _ in range(2)]
            columns = [math.ceil((radius_m + 3 - at) / cell_m) + 1 for at in low]
            place = lambda column, row: (low[0] + cell_m * column, low[1] + cell_m * row)
            heights = [up(*place(column, row)) for row in range(columns[1]) for column in range(columns[0])]
            grid = {"south_west": low, "cell_m": cell_m, "columns": columns[0], "up_m": heights}
            plan["ground"]["height_grid"] = grid
        outline = round_outline(draw, radius_m, draw.randint(3, 9))
        plan["runs"] = [{"id": "run", "outline": outline}]
        level_m = sum(math.dist(a, b) for a, b in zip(outline, outline[1:] + outline[:1]))
        starts = [draw.uniform(0, level_m - 6) for _ in range(CHORDS)]
        chords = [[round(start, 3), round(start + draw.uniform(2, 5), 3)] for start in starts]
        rows.append({"name": f"{'spots' if index < SPOTS else 'grid'}-{index}", "plan": plan, "chords": chords})
    return rows


def make():
    rows = draw_rows()
    for row in rows:
        row["expected"] = measure(row["plan"], row["chords"])
    FILE.write_text("[\n" + ",\n".join(json.dumps(row) for row in rows) + "\n]\n")
    print(f"{len(rows)} lines over random ground")


def check():
    rows = json.loads(FILE.read_text())
    wrong, worst = [], 0.0
    for row, drawn in zip(rows, draw_rows(), strict=True):
        if not same({key: row[key] for key in drawn}, drawn):
            wrong.append(f"{row['name']}: the seed draws another line")
        found, want = measure(row["plan"], row["chords"]), row["expected"]
        pairs = [(found["surface_m"], want["surface_m"]), *zip(found["sides_m"], want["sides_m"])]
        pairs += [(a + 1, b + 1) for gap, gap_w in zip(found["gaps_m"], want["gaps_m"]) for a, b in zip(gap, gap_w)]
        for got, committed in pairs:
            off = abs(got / committed - 1)
            worst = max(worst, off)
            if off > 1e-8:
                wrong.append(f"{row['name']}: {got}, committed {committed}")
    print(*(f"DIFFERS {line}" for line in wrong), sep="\n", end="\n" if wrong else "")
    print(f"{len(rows)} lines measured, worst difference {worst:.1e} of 1e-8 allowed")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    commands = {f.__name__: f for f in (make, check)}
    if len(sys.argv) < 2 or sys.argv[1] not in commands:
        sys.exit("usage: slope.py " + "|".join(commands))
    commands[sys.argv[1]](*sys.argv[2:])
