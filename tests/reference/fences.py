"""Peak volts of seeded fences by ngspice, to hold a solver against.

    python fences.py make      draw the fences, compute, write fences.json
    python fences.py check     compute again and compare with fences.json; exits 1 on a difference
    python fences.py check-third  the same with every third of them, for a slow machine
    python fences.py exact     fifty of them, and a few of two runs, by the matrix exponential, write fences_exact.json
    python fences.py check-exact  some of those again
    python fences.py converge  how far the figures move with finer steps, finer sections, no steps
    python fences.py time      how long ngspice itself takes for a ten-net fence

ngspice must be on the path; see README.md. Volts in kV, energy in J, lengths in m.
"""

from __future__ import annotations

import itertools
import json
import multiprocessing
import sys
from dataclasses import replace
from pathlib import Path

from fence_exact import waves as exact_waves
from fence_network import build
from fence_plans import SEED, animal_posts, draw_fences
from fence_spice import REFERENCE, animal, earth_peak_v, peaks_v, version
from sameness import same

FILE = Path(__file__).parent / "fences.json"
EXACT_FILE = Path(__file__).parent / "fences_exact.json"
EXACT_COUNT = 50
EXACT_DOUBLE = 2  # of two runs on one energizer besides, for each way of leads with ohms and without
EXACT_NODES = 220  # dense matrices
WORKERS = 2
TOLERANCE = 5e-4
FLOOR = 5e-3  # of the no-load voltage: smaller values are compared as if they were this large


def digits(x):
    """Seven significant digits; what is below a microvolt is nothing."""
    return float(f"{x:.7g}") if abs(x) > 1e-9 else 0.0


def figures(plan, animals_at, settings=REFERENCE):
    """All figures of one fence; `animals_at` lists (branch or None, net, post) of the first run."""
    net, chain = build(plan, settings.section_m)
    volts = peaks_v(net, settings)
    no_load = net.source.v0
    kv = lambda node: digits(min(volts[node], no_load) / 1e3)
    posts, branches, second = [], [[] for _ in plan["runs"][0].get("branches", [])], []
    touched = {}
    for run, branch, i, j, along, node, earthed in net.posts:
        row = {"net": i, "post": j, "along_m": digits(along), "peak_kv": kv(node)}
        (second if run else posts if branch is None else branches[branch]).append(row)
        if run == 0:
            touched[branch, i, j] = (node, earthed)
    faults = []
    for _, kind, along, before, after in net.faults:
        row = {"kind": kind, "along_m": digits(along)}
        if before == after:
            row["peak_kv"] = kv(before)
        else:
            row |= {"before_kv": kv(before), "after_kv": kv(after)}
        faults.append(row)
    animals = []
    for branch, i, j in animals_at:
        node, earthed = touched[branch, i, j]
        ways = [node] if earthed is None else [node, (node, earthed)]
        taken = [animal(net, way, settings) for way in ways]
        row = {"net": i, "post": j, "animal_kv": digits(max(t[0] for t in taken) / 1e3),
               "animal_j": digits(max(t[1] for t in taken))}
        animals.append(row if branch is None else {"branch": branch, **row})
    return {
        "line_m": digits(chain.line.length_m),
        "spare_m": digits(chain.spare_m),
        "short_m": digits(chain.short_m),
        "earth_ohm": digits(net.earth_ohm),
        "feed_kv": kv(net.feeds[0][0]),
        "earth_kv": digits(earth_peak_v(net, settings) / 1e3),
        "posts": posts,
        **({"branches": branches} if branches else {}),
        **({"second": second} if second else {}),
        "faults": faults,
        "animals": animals,
    }


def job(task):
    return figures(*task)


def figures_of_all(tasks):
    """Figures of every task, in their order, the long ones begun first."""
    order = sorted(range(len(tasks)), key=lambda k: -len(tasks[k][0]["runs"][0]["nets"]))
    with multiprocessing.Pool(WORKERS) as pool:
        found = dict(zip(order, pool.imap(job, [tasks[k] for k in order])))
    return [found[k] for k in range(len(tasks))]


def animals_at(fence):
    return [(a.get("branch"), a["net"], a["post"]) for a in fence["expected"]["animals"]]


def differences(fence, got):
    """Every figure that is off, as a sentence; and how far off the worst of all is, in tolerances."""
    want = fence["expected"]
    sheet = fence["plan"]["store"]["energizers"][0]
    floor_kv = FLOOR * sheet["no_load_kv"]
    floors = {"_kv": floor_kv, "_j": FLOOR**2 * sheet["stored_j"], "_m": 1.0, "_ohm": 1.0}
    rows, worst = [], 0.0

    def compare(path, a, b):
        nonlocal worst
        if isinstance(a, dict) and isinstance(b, dict) and a.keys() == b.keys():
            for key in a:
                compare(f"{path}.{key}", a[key], b[key])
        elif isinstance(a, list) and isinstance(b, list) and len(a) == len(b):
            for k, pair in enumerate(zip(a, b)):
                compare(f"{path}[{k}]", *pair)
        elif isinstance(a, float) and isinstance(b, (int, float)):
            floor = next((f for end, f in floors.items() if path.endswith(end)), 0.0)
            off = abs(a - b) / (TOLERANCE * max(abs(a), floor))
            worst = max(worst, off)
            if not off <= 1:
                rows.append(f"{fence['name']}: {path} is {b:.7g}, committed {a:.7g}")
        elif a != b:
            rows.append(f"{fence['name']}: {path} is {b!r}, committed {a!r}")

    compare("expected", want, got)
    return rows, worst


def compact(fences):
    """JSON text with one line for each plan and each fence's figures."""
    rows = ",\n".join(
        " {" + ",\n  ".join(f"{json.dumps(k)}: {json.dumps(v)}" for k, v in f.items()) + "}" for f in fences
    )
    return "[\n" + rows + "\n]\n"


def make():
    fences = draw_fences()
    tasks = []
    for k, fence in enumerate(fences):
        net = build(fence["plan"], None)[0]
        fed = net.fed()
        posts = [p for p in net.posts if p[0] == 0 and p[5] in fed]
        tasks.append((fence["plan"], [posts[n][1:4] for n in animal_posts(posts, k)]))
    for fence, got in zip(fences, figures_of_all(tasks)):
        fence["expected"] = got
    FILE.write_text(compact(fences))
    print(f"wrote {len(fences)} fences, seed {SEED}, {version()}")


def check(every=1):
    fences = json.loads(FILE.read_text())
    if len(fences) < 324:
        sys.exit(f"only {len(fences)} fences in {FILE.name}")
    rows, worst = [], 0.0
    for fence, drawn in zip(fences, draw_fences(), strict=True):
        if not same([fence["name"], fence["plan"]], [drawn["name"], drawn["plan"]]):
            rows.append(f"{fence['name']}: the seed draws another plan")
    # Branches come every third fence as well: the slice shifts by one each time, so that it meets all kinds.
    again = [fence for k, fence in enumerate(fences) if (k + k // every) % every == 0]
    for fence, got in zip(again, figures_of_all([(f["plan"], animals_at(f)) for f in again])):
        more, off = differences(fence, got)
        rows, worst = rows + more, max(worst, off)
    for row in rows:
        print("DIFFERS", row)
    print(f"{len(again)} of {len(fences)} fences, {version()}, worst difference"
          f" {100 * TOLERANCE * worst:.5f} % of {100 * TOLERANCE} % allowed")
    sys.exit(1 if rows else 0)


def check_third():
    check(every=3)


def exact():
    """Fences by the matrix exponential: the coarsest sections that the model's page allows, no step's error."""
    fences = json.loads(FILE.read_text())
    chosen = exact_fences(fences)
    if len(chosen) < EXACT_COUNT + 4 * EXACT_DOUBLE:
        sys.exit(f"only {len(chosen)} fences are small enough")
    with multiprocessing.Pool(WORKERS) as pool:
        got = pool.map(exact_figures, [(f["plan"], animals_at(f)) for f in chosen])
    rows = [{"name": fence["name"], "expected": figures} for fence, figures in zip(chosen, got)]
    EXACT_FILE.write_text(compact(rows))
    print(f"wrote {len(rows)} fences")


def check_exact():
    """Every sixth of those again, the last ones of two runs."""
    plans = {f["name"]: f for f in json.loads(FILE.read_text())}
    worst, rows = 0.0, json.loads(EXACT_FILE.read_text())
    for row in rows[::6]:
        fence = plans[row["name"]]
        got = exact_figures((fence["plan"], animals_at(fence)))
        for key in ("posts", "animals"):
            for a, b in zip(row["expected"][key], got[key], strict=True):
                worst = max([worst, *(abs(a[f] - b[f]) / max(abs(a[f]), 1e-3) for f in a if f.endswith(("_kv", "_j")))])
    print(f"{len(rows[::6])} of {len(rows)} fences by the matrix exponential, worst difference {100 * worst:.6f} %")
    sys.exit(0 if worst < 1e-5 else 1)


def exact_fences(fences):
    """The first fences that are small enough: of one run, then of two, sorted by which of their leads have ohms."""
    small = [(f, net) for f in fences for net in [build(f["plan"], "model")[0]] if net.nodes <= EXACT_NODES]
    chosen = [f for f, net in small if len(net.feeds) == 1][:EXACT_COUNT]
    for ohms in itertools.product([False, True], repeat=2):
        alike = [f for f, net in small if [ohm > 0 for _, ohm in net.feeds] == [*ohms]]
        # Not where a piece of earthed lines may float beyond netting without any: it rests at 0 in a mode of rate 0, and
        # what rounding leaves of that grows over the run's long end.
        earthed = lambda f: {"earthed_line_heights_m" in net for net in f["plan"]["store"]["nets"]}
        alike = [f for f in alike if len(earthed(f)) == 1]
        # One with earthed lines where there is one: its earth pole is a node.
        woven = sorted(alike, key=lambda f: True not in earthed(f))
        chosen += [woven[0], *(f for f in alike if f is not woven[0])][:EXACT_DOUBLE]
    return chosen


def exact_figures(task):
    plan, animals = task
    net, _ = build(plan, "model")
    posts = {p[1:4]: p for p in net.posts if p[0] == 0}
    peaks, _ = exact_waves(net, [p[5] for p in net.posts])
    rows = [{**({"run": run} if run else {}), "branch": branch, "net": i, "post": j,
             "peak_kv": digits(min(v, net.source.v0) / 1e3)}
            for (run, branch, i, j, *_), v in zip(net.posts, peaks)]
    touched = []
    for key in animals:
        node, earthed = posts[key][5:7]
        ways = [(node, 0)] if earthed is None else [(node, 0), (node, earthed)]
        taken = [exact_waves(net, [], way) for way in ways]
        touched.append({"branch": key[0], "net": key[1], "post": key[2],
                        "animal_kv": digits(max(t[1][0] for t in taken) / 1e3), "animal_j": digits(max(t[1][1] for t in taken))})
    return {"posts": rows, "animals": touched}


def converge():
    """Some fences again, more finely and without steps; none may move by 0.02 %."""
    fences = json.loads(FILE.read_text())[::5]
    # The step grows with the cube root of the tolerance: an eighth of it halves the step.
    finer = replace(REFERENCE, reltol=REFERENCE.reltol / 8, steps_at_least=2 * REFERENCE.steps_at_least,
                    longest_step_s=REFERENCE.longest_step_s / 2)
    ways = [
        ("half the step", finer),
        ("half the step and section", replace(finer, section_m=0.25)),
        ("a section a panel", replace(REFERENCE, section_m=None)),
    ]
    bad = False
    for what, settings in ways:
        got = figures_of_all([(f["plan"], animals_at(f), settings) for f in fences])
        moved = [TOLERANCE * differences(f, g)[1] for f, g in zip(fences, got)]
        print(f"{what}: " + ", ".join(f"{f['name'][:2]}: {100 * m:.4f} %" for f, m in zip(fences, moved)))
        print(f"{what}: worst of {len(fences)} fences {100 * max(moved):.4f} %")
        bad |= settings.section_m is not None and max(moved) > 2e-4

    moved = []
    for fence in json.loads(FILE.read_text()):
        net, _ = build(fence["plan"], REFERENCE.section_m)
        if net.nodes > 250 or len(fence["plan"]["runs"]) > 1:
            continue
        on_line = [p[5] for p in net.posts if p[1] is None]
        volts, _ = exact_waves(net, on_line)
        for v, post in zip(volts, fence["expected"]["posts"], strict=True):
            kv = min(v, net.source.v0) / 1e3
            moved.append(abs(kv - post["peak_kv"]) / max(kv, FLOOR * net.source.v0 / 1e3))
    print(f"without steps, by the matrix exponential: worst of {len(moved)} posts {100 * max(moved):.4f} %")
    sys.exit("not converged" if bad or max(moved) > 2e-4 else 0)


def time():
    from fence_timing import report

    report()


if __name__ == "__main__":
    commands = {f.__name__.replace("_", "-"): f for f in (make, check, check_third, exact, check_exact, converge, time)}
    if len(sys.argv) != 2 or sys.argv[1] not in commands:
        sys.exit("usage: fences.py " + "|".join(commands))
    commands[sys.argv[1]]()
