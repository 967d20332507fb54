#!/usr/bin/env python3
"""How fast `seamtakt audit` reads arc logs, side by side with other programs on the same file.

  audit_bench.py PROGRAM LOG [--runs N] [--threads 1,2] [--option X]... [--peer NAME=COMMAND]...

COMMAND is run by the shell with {log} put in; `wc -l` is always among them, as a program that only reads. The commands
run in turns, N times each, so that other load on the machine affects all equally. Prints, for each, the median time,
the rate in MB/s (1 MB = 1e6 bytes), the ratio to the last peer and the greatest resident memory (never shown below this
script's own). With several --threads it checks that the results are the same bytes.
"""
import argparse
import hashlib
import os
import statistics
import subprocess
import sys
import time


def run(command):
    """Seconds, greatest resident memory in MiB, SHA-256 of the output."""
    begun = time.perf_counter()
    process = subprocess.Popen(command, shell=isinstance(command, str), stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
    digest = hashlib.sha256()
    while block := process.stdout.read(1 << 20):
        digest.update(block)
    process.stdout.close()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode not in (0, 1):
        sys.exit(f"{command}: exit code {process.returncode}")
    return time.perf_counter() - begun, usage.ru_maxrss / 1024, digest.hexdigest()


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("program")
    parser.add_argument("log")
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--threads", default="1,2")
    parser.add_argument("--option", action="append", default=[], help="a further option of the audit")
    parser.add_argument("--peer", action="append", default=[])
    given = parser.parse_args()
    size = os.path.getsize(given.log)
    with open(given.log, "rb") as log:  # into the page cache
        while log.read(1 << 24):
            pass
    commands = {}
    for threads in given.threads.split(","):
        commands[f"audit, {threads} thread(s)"] = [
            given.program, "audit", given.log, "--threads", threads, "--json", *given.option]
    commands["wc -l"] = f"wc -l {given.log}"
    for peer in given.peer:
        name, command = peer.split("=", 1)
        commands[name] = command.replace("{log}", given.log)
    results = {name: [] for name in commands}
    for _ in range(given.runs):
        for name, command in commands.items():
            results[name].append(run(command))
    print(f"{os.path.basename(given.log)}: {size / 1e6:.1f} MB, {os.cpu_count()} cores, median of {given.runs}, "
          f"load {os.getloadavg()[0]:.1f}")
    slowest = statistics.median(seconds for seconds, _, _ in results[list(results)[-1]])
    for name, runs in results.items():
        seconds = [each[0] for each in runs]
        median = statistics.median(seconds)
        print(f"{name:24} {median:9.4f} s  {min(seconds):9.4f} s best  {size / 1e6 / median:9.1f} MB/s "
              f"{slowest / median:8.1f} x  {max(each[1] for each in runs):7.1f} MiB")
    outputs = {each[2] for name, runs in results.items() if name.startswith("audit") for each in runs}
    if len(outputs) != 1:
        sys.exit("the audits' results differ")
    print("results are the same bytes in every audit")


if __name__ == "__main__":
    main()
