"""Runs the netlists that `netfold export --to spice` writes, as they are, and compares them with the report.

Each plan of a row of small fences is exported, run by ngspice without a change, and every post's measure is held
against `samples[].peak_kv` of `netfold report --json`: within 0.2 % of the value, or of half a percent of the no-load
figure where that is more. Usage: spice_export.py NETFOLD
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

SHARE = 2e-3
HEIGHTS = [0.05, 0.10, 0.15, 0.20, 0.26, 0.33, 0.42, 0.54, 0.69, 0.87, 1.08]
UNITS = [
    {"id": "plain", "stored_j": 1.0, "no_load_kv": 7.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7},
    {"id": "slow", "stored_j": 1.0, "no_load_kv": 8.0, "kv_at_500_ohm": 5.0, "output_j_at_500_ohm": 0.7},
]


def plan(run=None, net=None, second=None):
    """A square of three nets with what is changed of its run and its net; a second run shares its energizer."""
    long = {"id": "long", "count": 9, "length_m": 50.0, "panels": 14, "live_line_heights_m": HEIGHTS,
            "line_resistance_ohm_per_m": 11.9, **(net or {})}
    square = [[0, 0], [37.5, 0], [37.5, 37.5], [0, 37.5]]
    first = {"id": "run-1", "outline": square, "nets": ["long"] * 3, "energizer": "plain", "feed_at": [10, 0],
             **(run or {})}
    runs = [first] if second is None else [{**first, "status": "standing"}, {**second, "status": "standing"}]
    return {"format": "netfold-plan", "version": 1, "title": "netlist", "store": {"nets": [long], "energizers": UNITS},
            "runs": runs}


def cases():
    """Every part of the model that a netlist has to hold, one by one and together."""
    yield "ring", plan()
    yield "open line", plan({"closed": False, "outline": [[0, 0], [150, 0]]})
    yield "energizer with inductance", plan({"energizer": "slow"})
    yield "joins, lead, zones", plan({"join_ohm": 40.0, "lead_ohm": 25.0, "leakage_s_per_m": 4e-6, "leakage_zones": [
        {"from_m": 120.0, "to_m": 10.0, "s_per_m": 8e-5}, {"from_m": 40.0, "to_m": 55.0, "s_per_m": 2e-7}]})
    yield "gate tied only", plan({"live_loop": False, "start_m": 20.0})
    yield "spare", plan({"outline": [[0, 0], [30, 0], [30, 37.5], [0, 37.5]]})
    yield "faults", plan({"faults": [
        {"at": [37.5, 12], "kind": "short", "ohm": 300.0}, {"at": [20, 37.5], "kind": "line_break", "lines": 6},
        {"at": [0, 20], "kind": "join", "ohm": 900.0}]})
    yield "a break", plan({"faults": [{"at": [37.5, 20], "kind": "break"}]})
    yield "a branch", plan({"branches": [{"from_m": 60.0, "outline": [[37.5, 22.5], [80, 22.5]], "nets": ["long"]}]})
    tried = {"from_m": 60.0, "outline": [[37.5, 22.5], [80, 22.5], [80, 60]], "nets": ["long", "long"],
             "leakage_zones": [{"from_m": 5.0, "to_m": 30.0, "s_per_m": 8e-5},
                               {"from_m": 20.0, "to_m": 44.0, "s_per_m": 2e-7}],
             "faults": [{"at": [60, 22.5], "kind": "short", "ohm": 700.0},
                        {"at": [48, 22.5], "kind": "line_break", "lines": 5},
                        {"at": [80, 30], "kind": "join", "ohm": 900.0}]}
    yield "zones and faults on a branch", plan({"join_ohm": 10.0, "branches": [tried]})
    yield "a break on a branch", plan({"branches": [{**tried, "faults": [{"at": [64, 22.5], "kind": "break"}]}]})
    low, high = HEIGHTS[0::2], HEIGHTS[1::2]
    yield "wired alternately", plan({"join_ohm": 5.0}, {"live_line_heights_m": low, "earthed_line_heights_m": high})
    yield "alternately, with spare and a branch", plan(
        {"join_ohm": 5.0, "outline": [[0, 0], [30, 0], [30, 37.5], [0, 37.5]],
         "branches": [{"from_m": 48.75, "outline": [[30, 18.75], [80, 18.75]], "nets": ["long"]}]},
        {"live_line_heights_m": low, "earthed_line_heights_m": high})
    yield "alternately, with grass and a short on a branch", plan(
        {"branches": [tried]}, {"live_line_heights_m": low, "earthed_line_heights_m": high})
    yield "two runs", plan(second={"id": "run-2", "outline": [[60, 0], [85, 0], [85, 25], [60, 25]],
                                   "nets": ["long"] * 2, "energizer": "plain", "lead_ohm": 8.0})


def measures(text):
    """The figures that ngspice printed, by name."""
    return {name: float(value) for name, value in re.findall(r"^(\w+)\s*=\s*([-+0-9.e]+)", text, re.M)}


def main(netfold):
    worst = 0.0
    for name, stated in cases():
        with tempfile.TemporaryDirectory() as folder:
            path, deck = Path(folder) / "plan.json", Path(folder) / "fence.cir"
            path.write_text(json.dumps(stated))
            subprocess.run([netfold, "export", path, "--to", "spice", "-o", deck], check=True)
            report = json.loads(subprocess.run([netfold, "report", path, "--json"], check=True,
                                               capture_output=True, text=True).stdout)
            done = subprocess.run(["ngspice", "-b", deck], capture_output=True, text=True)
            found = measures(done.stdout)
        voltage = report["runs"][0]["voltage"]
        posts = report["runs"][0]["posts"]
        unit = next(one for one in UNITS if one["id"] == stated["runs"][0]["energizer"])
        least = 0.005 * unit["no_load_kv"]
        wrong = []
        samples = voltage["samples"]
        read_at = [(f"post_{post + 1}", sample) for post, sample in enumerate(samples[:len(posts)])]
        for branch, laid in enumerate(report["runs"][0].get("branches", [])):
            # Posts of a branch are counted on from net to net, as the netlist does; its faults come after them.
            own = [sample for sample in samples if sample.get("branch") == branch][:len(laid["posts"])]
            read_at += [(f"branch_{branch + 1}_post_{post + 1}", sample) for post, sample in enumerate(own)]
        for post, sample in read_at:
            read = found.get(post)
            if read is None:
                sys.exit(f"{name}: ngspice measured no {post}: {done.stdout[-600:]} {done.stderr[-600:]}")
            # The report never credits a reading above the no-load figure.
            read_kv = min(read / 1e3, unit["no_load_kv"])
            off = abs(read_kv - sample["peak_kv"]) / max(sample["peak_kv"], least)
            worst = max(worst, off)
            if off > SHARE:
                wrong.append((post, sample["peak_kv"], read_kv))
        if wrong:
            sys.exit(f"{name}: {len(wrong)} of {len(read_at)} posts differ, first {wrong[:3]}")
        print(f"{name}: {len(read_at)} posts agree")
    print(f"greatest difference {worst:.2e} of the value (allowed {SHARE:g})")


if __name__ == "__main__":
    main(sys.argv[1])
