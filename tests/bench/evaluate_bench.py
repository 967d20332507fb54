#!/usr/bin/env python3
"""Time and memory of `seamtakt evaluate PLAN --json` at 1,000, 10,000 and 100,000 seams.

  evaluate_bench.py PROGRAM PLAN [SEAMS...]

The plan's weldments are repeated under new ids until the seams are reached. Prints a JSON line a size: seams, passes, the
plan file's bytes, the least of five runs' seconds, and the greatest resident memory.
"""
import copy
import json
import os
import subprocess
import sys
import tempfile
import time


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


def main():
    program, plan_file, *sizes = sys.argv[1:]
    with open(plan_file, encoding="utf-8") as file:
        plan = json.load(file)
    for seams in [int(size) for size in sizes] or [1000, 10000, 100000]:
        big = grown(plan, seams)
        with tempfile.NamedTemporaryFile("w", suffix=".weldplan.json") as file:
            json.dump(big, file)
            file.flush()
            runs = [measure(program, file.name) for _ in range(5)]
            passes = sum(len(seam["schedules"]) for weldment in big["weldments"] for seam in weldment["seams"])
            print(json.dumps({"seams": seams, "passes": passes, "bytes": os.path.getsize(file.name),
                              "seconds": round(min(run[0] for run in runs), 3),
                              "resident_MiB": round(max(run[1] for run in runs), 1)}))


if __name__ == "__main__":
    main()
