#!/usr/bin/env python3
"""A heat-input sheet of 100,000 rows: `seamtakt evaluate` of as many passes beside a spreadsheet's recalculation.

  sheet_bench.py PROGRAM PLAN [--rows N] [--rounds N] [--varied] [--cpu]

PROGRAM evaluates PLAN with its weldments repeated until they have N passes, file in to JSON out: every derived value and finding of
each pass. LibreOffice, where it is installed, loads a sheet of N rows without stored results, computes one formula a
row (k*U*I/v) and writes it out; the time of an empty sheet, which is its start, is given separately. Medians of rounds
in turns. --cpu takes the CPU time of both instead of the wall time: on a shared machine it leaves out waiting.
"""
import argparse
import json
import os
import resource
import shutil
import statistics
import subprocess
import tempfile
import time

from evaluate_bench import grown

HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"
 xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2"
 office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet><table:table table:name="heat">
"""
TAIL = "</table:table></office:spreadsheet></office:body></office:document>\n"


def cell(value):
    return f'<table:table-cell office:value-type="float" office:value="{value}"/>'


def sheet(rows):
    """Voltage, current, speed and k of each row, and the formula of its heat input without a result."""
    lines = []
    for row in range(1, rows + 1):
        numbers = (24 + row % 7 / 10, 220 + row % 41, 6 + row % 13 / 10, 0.8)
        formula = f"of:=[.D{row}]*[.A{row}]*[.B{row}]/[.C{row}]/1000"
        lines.append("<table:table-row>" + "".join(map(cell, numbers)) +
                     f'<table:table-cell table:formula="{formula}"/></table:table-row>\n')
    return HEAD + "".join(lines) + TAIL


def clock(cpu):
    """Seconds of the wall's clock, or of CPU that ended children have used."""
    if not cpu:
        return time.perf_counter()
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def timed(command, cpu):
    began = clock(cpu)
    done = subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
    return clock(cpu) - began, done.returncode


def plan_with_passes(plan, passes, varied=False):
    """The plan's weldments repeated until there are that many passes (a little more: whole seams)."""
    per_seam = sum(len(seam["schedules"]) for w in plan["weldments"] for seam in w["seams"]) / sum(
        len(w["seams"]) for w in plan["weldments"])
    return grown(plan, int(passes / per_seam) + 1, varied)


def convert(office, folder, name, rows, cpu):
    path = os.path.join(folder, name + ".fods")
    if not os.path.exists(path):
        with open(path, "w", encoding="utf-8") as file:
            file.write(sheet(rows))
    profile = "-env:UserInstallation=file://" + os.path.join(folder, "profile")
    seconds, code = timed([office, profile, "--headless", "--convert-to", "csv", "--outdir", folder, path], cpu)
    with open(os.path.join(folder, name + ".csv"), encoding="utf-8") as file:
        written = file.read().splitlines()
    if code != 0 or (rows and (len(written) != rows or not written[-1].split(",")[-1])):
        raise SystemExit(f"LibreOffice did not compute the sheet: code {code}, {len(written)} rows")
    return seconds


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("program")
    parser.add_argument("plan")
    parser.add_argument("--rows", type=int, default=100000)
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--varied", action="store_true", help="seams of all lengths: few figures come twice")
    parser.add_argument("--cpu", action="store_true", help="CPU time instead of the wall's")
    options = parser.parse_args()
    office = shutil.which("soffice") or shutil.which("libreoffice")
    with open(options.plan, encoding="utf-8") as file:
        big = plan_with_passes(json.load(file), options.rows, options.varied)
    passes = sum(len(seam["schedules"]) for w in big["weldments"] for seam in w["seams"])
    with tempfile.TemporaryDirectory() as folder:
        plan_file = os.path.join(folder, "big.weldplan.json")
        with open(plan_file, "w", encoding="utf-8") as file:
            json.dump(big, file)
        if office:
            convert(office, folder, "warm", 0, options.cpu)  # makes the profile
        ours, theirs, start = [], [], []
        for _ in range(options.rounds):
            seconds, code = timed([options.program, "evaluate", plan_file, "--json"], options.cpu)
            if code not in (0, 1):
                raise SystemExit(f"evaluate ended with {code}")
            ours.append(seconds)
            if office:
                start.append(convert(office, folder, "warm", 0, options.cpu))
                theirs.append(convert(office, folder, "heat", options.rows, options.cpu))
        evaluate = statistics.median(ours)
        print(f"load average {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores, {options.rounds} rounds")
        print(f"evaluate of {passes} passes, {os.path.getsize(plan_file) / 1e6:.0f} MB in, JSON out: {evaluate:.3f} s")
        if not office:
            print("LibreOffice isn't installed: nothing to compare with")
            return
        whole, empty = statistics.median(theirs), statistics.median(start)
        print(f"LibreOffice, {options.rows} rows of one formula: {whole:.2f} s, of which its start {empty:.2f} s")
        print(f"ratio {whole / evaluate:.1f}, without its start {(whole - empty) / evaluate:.1f} (goal 20)")


if __name__ == "__main__":
    main()
