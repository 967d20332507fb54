#!/usr/bin/env python3
"""Time and memory of `seamtakt evaluate PLAN --json` at 1,000, 10,000 and 100,000 seams.

  evaluate_bench.py PROGRAM PLAN [SEAMS...]

First the plan's weldments are repeated under new ids until the seams are reached, so that seams share their settings. Then
plans of distinct_plan.py, in which they don't: in a weldment of 50 seams each, and in one weldment. Prints a JSON line a
plan: its kind, seams, passes, the file's bytes, the median and the least of five runs' seconds, and the greatest resident
memory.
"""
import copy
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time

sys.dont_write_bytecode = True
from distinct_plan import distinct_plan


def lengthened(seam, copy_number):
    """The seam, longer by a ten-thousandth a copy: no two copies have a length, a time or a mass in common."""
    seam["path_mm"] = [[round(value * (1 + copy_number * 1e-4), 6) for value in point] for point in seam["path_mm"]]
    return seam


def grown(plan, seams, varied=False):
    """The plan with its weldments repeated until it has this many seams; `varied`: each copy a little longer."""
    result = {key: value for key, value in plan.items() if key not in ("weldments", "accepted")}
    result["cell"] = {key: value for key, value in plan["cell"].items() if key != "zones"}
    result["weldments"] = []
    count = copies = 0
    while count < seams:
        for weldment in plan["weldments"]:
            if count >= seams:
                break
            clone = copy.deepcopy(weldment)
            clone["id"] = f"{weldment['id']}-{copies}"
            clone["seams"] = [{key: value for key, value in seam.items() if key not in ("robots", "orientation", "after")}
                              for seam in clone["seams"][:seams - count]]
            if varied:
                clone["seams"] = [lengthened(seam, copies) for seam in clone["seams"]]
            count += len(clone["seams"])
            result["weldments"].append(clone)
        copies += 1
    return result


def measure(program, path):
    """Seconds and greatest resident MiB of one run."""
    began = time.perf_counter()
    child = subprocess.Popen([program, "evaluate", path, "--json"], stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    if os.waitstatus_to_exitcode(status) not in (0, 1):
        sys.exit(f"{path}: evaluate ended with {status}")
    return time.perf_counter() - began, usage.ru_maxrss / 1024


def report(program, kind, plan):
    """The line of one plan."""
    with tempfile.NamedTemporaryFile("w", suffix=".weldplan.json") as file:
        json.dump(plan, file, separators=(",", ":"))
        file.flush()
        runs = [measure(program, file.name) for _ in range(5)]
        seams = [seam for weldment in plan["weldments"] for seam in weldment["seams"]]
        print(json.dumps({"plan": kind, "seams": len(seams), "passes": sum(len(seam["schedules"]) for seam in seams),
                          "bytes": os.path.getsize(file.name),
                          "median_s": round(statistics.median(run[0] for run in runs), 3),
                          "least_s": round(min(run[0] for run in runs), 3),
                          "resident_MiB": round(max(run[1] for run in runs), 1)}), flush=True)


def main():
    program, plan_file, *sizes = sys.argv[1:]
    with open(plan_file, encoding="utf-8") as file:
        plan = json.load(file)
    sizes = [int(size) for size in sizes] or [1000, 10000, 100000]
    for seams in sizes:
        report(program, "repeated", grown(plan, seams))
    for seams in sizes:
        report(program, "distinct", distinct_plan(seams, max(1, seams // 50)))
    report(program, "distinct, one weldment", distinct_plan(sizes[-1], 1))


if __name__ == "__main__":
    main()
