"""Transverse Mercator coordinates by PROJ, to hold a projection against.

    python projection.py make    compute, write projection.json
    python projection.py check   compute again and compare with projection.json; exits 1 on a difference

`local` rows: WGS 84, centred on an origin, scale 1, no false origin; sixty points within 5 km of
twelve origins. `published` rows: worked examples on other ellipsoids and grids with the figures
printed there, which PROJ must meet to the digits printed. PROJ's `tmerc` is Krueger's series to
the sixth order. Degrees and metres.
"""

from __future__ import annotations

import json
import math
import random
import sys
from pathlib import Path

import pyproj

from sameness import same

FILE = Path(__file__).parent / "projection.json"
SEED = 20270403
POINTS_PER_ORIGIN = 5
REACH_M = 5000.0
TOLERANCE_M = 1e-6
WGS_84 = {"a_m": 6378137.0, "inverse_flattening": 298.257223563}

ORIGINS = [  # name, latitude, longitude
    ("mid north", 52.0, -3.0),
    ("mid north, east", 47.3, 11.4),
    ("equator", 0.0, 36.8),
    ("just south of the equator", -0.02, -78.5),
    ("high north", 70.0, 25.7),
    ("just west of the antimeridian", -16.8, 179.99),
    ("just east of the antimeridian", 65.5, -179.99),
    ("far south", -54.8, -68.3),
    ("mid south", -34.6, 150.9),
    ("southern tropics", -19.9, 30.1),
    ("prime meridian", 44.8, 0.0),
    ("far west", 21.3, -157.8),
]

# name, where printed, ellipsoid, latitude, longitude, origin, k0, false east and north,
# printed east and north, half a unit of the last printed digit
PUBLISHED = [
    ("Snyder", "Snyder 1987, USGS Professional Paper 1395, transverse Mercator example",
     {"a_m": 6378206.4, "b_m": 6356583.8}, 40.5, -73.5, (0.0, -75.0), 0.9996, 0.0, 0.0, 127106.5, 4484124.4, 0.05),
    ("OS", "Ordnance Survey, A guide to coordinate systems in Great Britain, worked example",
     {"a_m": 6377563.396, "b_m": 6356256.909}, 52 + 39 / 60 + 27.2531 / 3600, 1 + 43 / 60 + 4.5177 / 3600,
     (49.0, -2.0), 0.9996012717, 400000.0, -100000.0, 651409.903, 313177.270, 5e-4),
    ("UTM 30N on its meridian", "no publication; recomputed, two libraries agree", WGS_84, 52.0, -3.0, (0.0, -3.0), 0.9996, 500000.0, 0.0,
     500000.000, 5761038.213, 5e-4),
    ("UTM 30N, 1.5 degrees off", "no publication; recomputed, two libraries agree", WGS_84, 52.0, -1.5, (0.0, -3.0), 0.9996, 500000.0, 0.0,
     602972.982, 5762100.490, 5e-4),
]


def project(row):
    """East and north of a row by PROJ."""
    shape = row["ellipsoid"]
    other = f"+b={shape['b_m']!r}" if "b_m" in shape else f"+rf={shape['inverse_flattening']!r}"
    lat0, lon0 = row["origin"]["latitude_deg"], row["origin"]["longitude_deg"]
    there = pyproj.Transformer.from_pipeline(
        f"+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad"
        f" +step +proj=tmerc +algo=poder_engsager +lat_0={lat0!r} +lon_0={lon0!r} +k_0={row['scale']!r}"
        f" +x_0={row['false_east_m']!r} +y_0={row['false_north_m']!r} +a={shape['a_m']!r} {other}")
    return there.transform(row["longitude_deg"], row["latitude_deg"])


def row_of(name, ellipsoid, latitude, longitude, origin, scale=1.0, false_east=0.0, false_north=0.0):
    return {"name": name, "ellipsoid": ellipsoid,
            "origin": {"latitude_deg": origin[0], "longitude_deg": origin[1]},
            "scale": scale, "false_east_m": false_east, "false_north_m": false_north,
            "latitude_deg": latitude, "longitude_deg": longitude}


def local_rows():
    """Points about each origin: one close by, the rest out to the reach, in all directions."""
    rng, geod = random.Random(SEED), pyproj.Geod(a=WGS_84["a_m"], rf=WGS_84["inverse_flattening"])
    rows = []
    for name, lat0, lon0 in ORIGINS:
        for k in range(POINTS_PER_ORIGIN):
            away = 30.0 if k == 0 else REACH_M * math.sqrt((k - rng.random()) / (POINTS_PER_ORIGIN - 1))
            lon, lat, _ = geod.fwd(lon0, lat0, 360 * (k + rng.random()) / POINTS_PER_ORIGIN, away)
            rows.append(row_of(f"{name}, {k + 1}", WGS_84, round(lat, 9), round(lon, 9), (lat0, lon0)))
    return rows


def published_rows():
    rows = []
    for name, source, shape, lat, lon, origin, scale, fe, fn, east, north, half_digit in PUBLISHED:
        row = row_of(name, shape, lat, lon, origin, scale, fe, fn)
        rows.append(row | {"source": source, "printed_east_m": east, "printed_north_m": north, "printed_to_m": half_digit})
    return rows


def drawn():
    return {"local": local_rows(), "published": published_rows()}


def make():
    table = drawn()
    for rows in table.values():
        for row in rows:
            row["east_m"], row["north_m"] = (round(x, 6) + 0.0 for x in project(row))
    body = ",\n".join(f' "{key}": [\n' + ",\n".join("  " + json.dumps(r) for r in rows) + "\n ]" for key, rows in table.items())
    FILE.write_text("{\n" + body + "\n}\n")
    print(f"wrote {sum(map(len, table.values()))} points, seed {SEED}, pyproj {pyproj.__version__}, PROJ {pyproj.proj_version_str}")


def check():
    table, bad, worst, count = json.loads(FILE.read_text()), 0, 0.0, 0
    for key, rows in drawn().items():
        for row, kept in zip(rows, table[key], strict=True):
            count += 1
            if not same({k: kept[k] for k in row}, row):
                bad += 1
                print(f"DIFFERS {row['name']}: another point than committed")
            east, north = project(kept)
            off = max(abs(east - kept["east_m"]), abs(north - kept["north_m"]))
            worst = max(worst, off)
            if not off <= TOLERANCE_M:
                bad += 1
                print(f"DIFFERS {row['name']}: {east:.7f}, {north:.7f}, committed {kept['east_m']}, {kept['north_m']}")
            for got, axis in ((east, "east"), (north, "north")):
                if key == "published" and not abs(got - kept[f"printed_{axis}_m"]) <= kept["printed_to_m"] * 1.001:
                    bad += 1
                    print(f"DIFFERS {row['name']}: {axis} {got:.6f} m, printed {kept[f'printed_{axis}_m']} m")
    if count < 64:
        sys.exit(f"only {count} points in {FILE.name}")
    print(f"{count} points, pyproj {pyproj.__version__}, PROJ {pyproj.proj_version_str},"
          f" worst difference {worst:.1e} m of {TOLERANCE_M:g} m allowed")
    sys.exit(1 if bad else 0)


if __name__ == "__main__":
    commands = {f.__name__: f for f in (make, check)}
    if len(sys.argv) != 2 or sys.argv[1] not in commands:
        sys.exit("usage: projection.py " + "|".join(commands))
    commands[sys.argv[1]]()
