#!/usr/bin/env python3
"""The row kernels beside other programs on the same work, in turns, and the ratios of the medians.

  kernels_bench.py BUILD [--peers FOLDER] [--rounds N] [--threads 1 2] [--cpu]

BUILD is the build folder with tests/bench/*_bench. FOLDER holds scripts that print one line with their time ("24.1 ms"
or "0.55 s"): owmap_numpy.py, field_numpy.py and mc_numpy.py; where it isn't given, or numpy isn't there, only the
kernels' times are printed. --cpu takes the CPU time of both sides instead of the wall time, with one thread: on a
shared machine it leaves out waiting. Run it with a Python that has numpy. The sums over the maps are compared with
numpy's for the same formulas.
"""
import argparse
import json
import os
import re
import statistics
import subprocess
import sys

PEERS = {
    "window": ["owmap_numpy.py", "numpy-bcast"],
    "preheat": ["field_numpy.py", "preheat"],
    "field": ["field_numpy.py", "rosenthal"],
    "monte_carlo": ["mc_numpy.py", "1e7"],
}
GOALS = {"window": {1: 12, 2: 20}, "field": {1: 6, 2: 12}, "monte_carlo": {1: 5, 2: 12}}


# A script that reads perf_counter reads the CPU clock instead.
CPU_CLOCK = "import runpy, sys, time; time.perf_counter = time.process_time; sys.argv = sys.argv[1:]; runpy.run_path(sys.argv[0], run_name='__main__')"


def kernel_run(build, work, threads, cpu):
    """The last line a bench prints: the widest instruction set of this machine."""
    program = os.path.join(build, "tests", "bench", f"{work}_bench")
    environment = {**os.environ, "BENCH_CLOCK": "cpu" if cpu else "wall"}
    lines = subprocess.run([program, str(threads)], check=True, capture_output=True, text=True,
                           env=environment).stdout.splitlines()
    return json.loads(lines[-1])


def peer_ms(folder, work, cpu):
    """Milliseconds from a peer's line, and the line."""
    script, *arguments = PEERS[work]
    path = os.path.join(folder, script)
    python = [sys.executable, "-c", CPU_CLOCK] if cpu else [sys.executable]
    line = subprocess.run([*python, path, *arguments], check=True, capture_output=True, text=True).stdout.strip()
    value, unit = re.search(r"([0-9.]+) (ms|s)\b", line).groups()
    return float(value) * (1000 if unit == "s" else 1), line


def numpy_window_sums():
    """Sums of the seven maps by the formulas as numpy writes them."""
    import numpy as np
    feed = np.linspace(3, 14, 1000)[:, None] * 1000 / 60
    speed = np.linspace(3, 20, 1000)[None, :]
    current = (np.sqrt(0.3**2 + 4 * 5e-5 * 15 * feed) - 0.3) / (2 * 5e-5 * 15)
    heat = 0.8 * (14 + 0.05 * current) * current / speed / 1000
    area = 0.98 * np.pi / 4 * 1.2**2 * feed / speed
    span_1, span_2 = 1 / 480 - 1 / 780, 1 / 480**2 - 1 / 780**2
    time_2d = (4300 - 4.3 * 20) * 1e5 * (heat / 20)**2 * span_2 * 0.9
    time_3d = (6700 - 5 * 20) * heat * span_1 * 0.9
    preheat = 697 * 0.35 + 160 * np.tanh(20 / 35) + 62 * 5**0.35 + (53 * 0.35 - 32) * heat - 328
    return [float(current.sum() * 1000), *(float(x.sum()) for x in (heat, area, np.sqrt(2 * area), time_2d, time_3d, preheat))]


def check_window(sums):
    try:
        wanted = numpy_window_sums()
    except ImportError:
        return "numpy isn't there: sums not compared"
    worst = max(abs(a - b) / abs(b) for a, b in zip(sums, wanted))
    if worst > 1e-10:
        sys.exit(f"window: the sums differ from numpy's by {worst:.2g}")
    return f"window: sums of seven maps within {worst:.1g} of numpy's"


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("build")
    parser.add_argument("--peers", help="folder of the peers' scripts")
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--threads", type=int, nargs="+", default=[1, 2])
    parser.add_argument("--cpu", action="store_true", help="CPU time instead of the wall's, one thread")
    options = parser.parse_args()
    if options.cpu:
        options.threads = [1]

    peers, kernels, remarks = {}, {}, []
    for _ in range(options.rounds):
        for work in PEERS:
            if options.peers:
                ms, line = peer_ms(options.peers, work, options.cpu)
                peers.setdefault(work, []).append(ms)
                remarks.append(line)
            if work == "preheat":
                continue
            for threads in options.threads:
                run = kernel_run(options.build, work, threads, options.cpu)
                kernels.setdefault((work, threads), []).append(run)
                if work == "window":
                    kernels.setdefault(("preheat", threads), []).append({**run, "ms": run["preheat_ms"]})

    print(f"load average while measuring: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    print(check_window(kernels[("window", options.threads[0])][0]["sums"]))
    print(f"{'work':12} {'threads':>7} {'instructions':>12} {'ms':>9} {'peer ms':>9} {'ratio':>7} {'goal':>5}")
    for (work, threads), runs in sorted(kernels.items()):
        ms = statistics.median(run["ms"] for run in runs)
        peer = statistics.median(peers[work]) if work in peers else None
        goal = GOALS.get(work, {}).get(threads)
        print(f"{work:12} {threads:7} {runs[0]['instructions']:>12} {ms:9.2f} {peer if peer else float('nan'):9.2f} "
              f"{peer / ms if peer else float('nan'):7.1f} {goal if goal else '-':>5}")
    print("peers said:", *sorted(set(remarks))[:12], sep="\n  ") if remarks else None


if __name__ == "__main__":
    main()
