"""Areas of outlines and of their mown strips by GEOS, to hold a geometry against.

    python shapes.py make    draw the outlines, compute, write shapes.json
    python shapes.py check   compute again and compare with shapes.json; exits 1 on a difference

The strip is the union of exactly these pieces, each place counted once, less the keep-outs as
drawn: each side's rectangle, half a width either side and flat at its ends; at each vertex
between two sides, on the outer side, the kite of vertex, the two rectangles' outer corners and
the mitre's tip, or, where the tip lies farther than five half-widths from the vertex, the
triangle without the tip. The overlay snaps to a grid of 1e-9 m. Metres and square metres.
"""

from __future__ import annotations

import json
import math
import random
import sys
from pathlib import Path

import shapely
from shapely import LineString, Polygon, union_all

from sameness import same

FILE = Path(__file__).parent / "shapes.json"
SEED = 20270402
COUNT = 240
GRID_M = 1e-9
TIP_HALF_WIDTHS = 5.0
TOLERANCE_M2 = 1e-6


# --- the strip --------------------------------------------------------------------------------


def pieces(outline, closed, width_m):
    """Rectangles of the sides, kites or triangles of the corners."""
    half, n = width_m / 2, len(outline)
    sides = [(outline[k], outline[(k + 1) % n]) for k in range(n if closed else n - 1)]
    found, normals = [], []
    for a, b in sides:
        length = math.dist(a, b)
        nx, ny = (b[1] - a[1]) / length, (a[0] - b[0]) / length  # to the right of the side
        normals.append((nx, ny))
        found.append(Polygon([(a[0] + half * nx, a[1] + half * ny), (b[0] + half * nx, b[1] + half * ny),
                              (b[0] - half * nx, b[1] - half * ny), (a[0] - half * nx, a[1] - half * ny)]))
    for k in range(len(sides) if closed else len(sides) - 1):
        (px, py), (qx, qy) = normals[k], normals[(k + 1) % len(sides)]
        x, y = sides[k][1]
        cross, dot = px * qy - py * qx, px * qx + py * qy
        if cross == 0 and dot > 0:
            continue
        out = 1.0 if cross > 0 else -1.0  # turning left, the outer side is the right one
        first = (x + out * half * px, y + out * half * py)
        second = (x + out * half * qx, y + out * half * qy)
        # The sum of two unit normals is 2 cos(turn / 2) long; the tip is half / cos(turn / 2) away.
        sx, sy = px + qx, py + qy
        cos_half = math.hypot(sx, sy) / 2
        if 1 / cos_half > TIP_HALF_WIDTHS:
            found.append(Polygon([(x, y), first, second]))
        else:
            scale = out * half / (2 * cos_half * cos_half)
            found.append(Polygon([(x, y), first, (x + scale * sx, y + scale * sy), second]))
    return found


def areas(shape):
    """Area of the outline (0 for an open line) and of its strip."""
    outline = [tuple(p) for p in shape["outline"]]
    # Far from zero the overlay would lose digits: it works about the first vertex.
    x0, y0 = outline[0]
    local = [(x - x0, y - y0) for x, y in outline]
    strip = union_all(pieces(local, shape["closed"], shape["width_m"]), grid_size=GRID_M)
    for keep_out in shape["keep_outs"]:
        hole = Polygon([(x - x0, y - y0) for x, y in keep_out])
        strip = shapely.difference(strip, hole, grid_size=GRID_M)
    return (Polygon(local).area if shape["closed"] else 0.0), strip.area


# --- the outlines -------------------------------------------------------------------------------


class Dice:
    """Draws that stay the same in every Python: only `random()` of a seeded generator."""

    def __init__(self, seed):
        self.rng = random.Random(seed)

    def uniform(self, a, b):
        return a + (b - a) * self.rng.random()

    def whole(self, a, b):
        return a + int(self.rng.random() * (b - a + 1))


def convex(d):
    n, size = d.whole(3, 12), d.uniform(5, 60)
    turns = [(k + d.uniform(0, 0.8)) / n for k in range(n)]
    return [(size * math.cos(2 * math.pi * t), 0.7 * size * math.sin(2 * math.pi * t)) for t in turns], True


def star(d):
    n, size = d.whole(4, 9), d.uniform(10, 50)
    return [(r * math.cos(math.pi * k / n), r * math.sin(math.pi * k / n))
            for k in range(2 * n) for r in [size * (d.uniform(0.8, 1) if k % 2 else d.uniform(0.25, 0.6))]], True


def ell(d):
    a, b = d.uniform(15, 50), d.uniform(15, 50)
    c, e = a * d.uniform(0.2, 0.7), b * d.uniform(0.2, 0.7)
    return [(0, 0), (a, 0), (a, e), (c, e), (c, b), (0, b)], True


def you(d):
    a, b = d.uniform(20, 60), d.uniform(15, 50)
    c, e, f = a * d.uniform(0.2, 0.4), a * d.uniform(0.6, 0.8), b * d.uniform(0.2, 0.6)
    return [(0, 0), (a, 0), (a, b), (e, b), (e, f), (c, f), (c, b), (0, b)], True


def nearly_straight(d):
    """Sides bent by a hundredth of a degree up to a few degrees."""
    n, r = d.whole(3, 6), d.uniform(10, 60)
    corners = [(r * math.cos(2 * math.pi * k / n), r * math.sin(2 * math.pi * k / n)) for k in range(n)]
    points = []
    for (ax, ay), (bx, by) in zip(corners, corners[1:] + corners[:1]):
        points.append((ax, ay))
        t, bend = d.uniform(0.2, 0.8), 10 ** d.uniform(-4, -1.3) * (1 if d.uniform(0, 1) < 0.5 else -1)
        points.append((ax + t * (bx - ax) - bend * (by - ay), ay + t * (by - ay) + bend * (bx - ax)))
    return points, True


def acute(d):
    """A wedge whose tip turns by 150 to 178 degrees: some mitres are cut, some just not."""
    length, angle = d.uniform(15, 60), math.radians(d.uniform(2, 30))
    lean = d.uniform(0.6, 1.0)
    return [(0, 0), (length, 0), (lean * length * math.cos(angle), lean * length * math.sin(angle))], True


def open_line(d):
    n, x, y, heading = d.whole(2, 8), 0.0, 0.0, 0.0
    points = [(x, y)]
    for _ in range(n - 1):
        heading += d.uniform(-1.3, 1.3)
        step = d.uniform(4, 30)
        x, y = x + step * math.cos(heading), y + step * math.sin(heading)
        points.append((x, y))
    return points, False


def open_hairpin(d):
    """There and back at a small angle: the strip lies on itself for a long way."""
    length, gap, turn = d.uniform(10, 40), d.uniform(0.3, 2.5), d.uniform(0.8, 1.0)
    return [(0, 0), (length, 0), (length, gap), (length * (1 - turn), gap * d.uniform(1, 2))], False


def neck(d):
    """Two rooms and a passage narrower than the strip."""
    a, b, gap, long = d.uniform(8, 25), d.uniform(8, 25), d.uniform(0.15, 1.0), d.uniform(4, 15)
    low = d.uniform(0.2, 0.6) * b
    return [(0, 0), (a, 0), (a, low), (a + long, low), (a + long, 0), (2 * a + long, 0), (2 * a + long, b),
            (a + long, b), (a + long, low + gap), (a, low + gap), (a, b), (0, b)], True


def small_steps(d):
    """Steps shorter than the strip is wide: each rectangle swallows its neighbours' kites."""
    n, size, points = d.whole(3, 7), d.uniform(0.1, 0.6), [(0, 0), (30, 0), (30, 12)]
    for k in range(n):
        points += [(24 - 3 * k, 12 + size * (k % 2)), (24 - 3 * k, 12 + size * ((k + 1) % 2))]
    return points + [(0, 12 + size * (n % 2))], True


KINDS = [convex, star, ell, you, nearly_straight, acute, open_line, open_hairpin, neck, small_steps]


def draw_shape(k, seed):
    """Shape number `k`; None where it crosses itself or a mitre's cut is a matter of rounding."""
    d = Dice(seed)
    kind = KINDS[k % len(KINDS)]
    points, closed = kind(d)
    width = round(d.uniform(0.4, 3.0), 2)
    far = 1e4 if k % 7 == 3 else 0.0
    turn, dx, dy = d.uniform(0, 2 * math.pi), far + d.uniform(-50, 50), -far + d.uniform(-50, 50)
    if k % 3 == 0:
        points = points[::-1]
    if kind in (ell, you, small_steps) and k // len(KINDS) % 4 == 0:
        turn = 0.0  # along the axes
    outline = [[x * math.cos(turn) - y * math.sin(turn) + dx, x * math.sin(turn) + y * math.cos(turn) + dy]
               for x, y in points]
    if far == 0 and k // len(KINDS) % 2:
        outline = [[round(x, 3), round(y, 3)] for x, y in outline]
    keep_outs = []
    for _ in range(d.whole(1, 3) if k % 9 in (1, 4, 6) else 0):
        # Near the line, so that it takes some of the strip; keep-outs may lie on one another.
        a, b = outline[d.whole(0, len(outline) - 2)], outline[d.whole(1, len(outline) - 1)]
        t, r, n = d.uniform(0, 1), d.uniform(0.3, 6), d.whole(3, 8)
        x, y = a[0] + t * (b[0] - a[0]) + d.uniform(-1, 1), a[1] + t * (b[1] - a[1]) + d.uniform(-1, 1)
        keep_outs.append([[x + r * math.cos(2 * math.pi * i / n), y + r * math.sin(2 * math.pi * i / n)] for i in range(n)])
    if not (Polygon(outline).is_valid if closed else LineString(outline).is_simple):
        return None
    n = len(outline)
    for i in range(n):
        a, b, c = outline[i - 1], outline[i], outline[(i + 1) % n]
        turn_rad = abs(math.remainder(math.atan2(c[1] - b[1], c[0] - b[0]) - math.atan2(b[1] - a[1], b[0] - a[0]), 2 * math.pi))
        if abs(turn_rad - 2 * math.acos(1 / TIP_HALF_WIDTHS)) < 1e-3:
            return None
    return {"name": f"{k + 1:03d} {kind.__name__.replace('_', ' ')}{', far' if far else ''}{', keep-outs' if keep_outs else ''}",
            "outline": outline, "closed": closed, "width_m": width, "keep_outs": keep_outs}


def draw_shapes():
    return [next(filter(None, (draw_shape(k, SEED + 1000 * k + n) for n in range(1000)))) for k in range(COUNT)]


# --- commands -----------------------------------------------------------------------------------


def make():
    shapes = draw_shapes()
    for shape in shapes:
        shape["area_m2"], shape["strip_area_m2"] = (round(a, 9) for a in areas(shape))
    FILE.write_text("[\n" + ",\n".join(json.dumps(s) for s in shapes) + "\n]\n")
    print(f"wrote {len(shapes)} shapes, seed {SEED}, shapely {shapely.__version__}, GEOS {shapely.geos_version_string}")


def check():
    shapes = json.loads(FILE.read_text())
    if len(shapes) < 200:
        sys.exit(f"only {len(shapes)} shapes in {FILE.name}")
    bad, worst = 0, 0.0
    for shape, drawn in zip(shapes, draw_shapes(), strict=True):
        if not same({key: shape[key] for key in drawn}, drawn):
            bad += 1
            print(f"DIFFERS {shape['name']}: the seed draws another shape")
        for key, got in zip(("area_m2", "strip_area_m2"), areas(shape)):
            off = abs(got - shape[key])
            worst = max(worst, off)
            if not off <= TOLERANCE_M2:
                bad += 1
                print(f"DIFFERS {shape['name']}: {key} is {got:.9f}, committed {shape[key]:.9f}")
    print(f"{len(shapes)} shapes, shapely {shapely.__version__}, GEOS {shapely.geos_version_string},"
          f" worst difference {worst:.1e} m2 of {TOLERANCE_M2:g} m2 allowed")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    commands = {f.__name__: f for f in (make, check)}
    if len(sys.argv) != 2 or sys.argv[1] not in commands:
        sys.exit("usage: shapes.py " + "|".join(commands))
    commands[sys.argv[1]]()
