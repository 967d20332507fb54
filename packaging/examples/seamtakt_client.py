#!/usr/bin/env python3
"""Asks seamtakt from Python: one process, any number of requests.

    packaging/examples/seamtakt_client.py PLAN      the plan's worst heat input, and how long its cycle is

SEAMTAKT names the program where it isn't in the PATH.
"""
import json
import os
import subprocess
import sys


class Refused(Exception):
    """What the program found wrong, and what it expected."""


class Seamtakt:
    def __init__(self, program=os.environ.get("SEAMTAKT", "seamtakt")):
        self.process = subprocess.Popen([program, "serve", "--stdio"], stdin=subprocess.PIPE,
                                        stdout=subprocess.PIPE, text=True, encoding="utf-8")
        self.asked = 0

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.stdin.close()
        self.process.wait()

    def __call__(self, command, **arguments):
        """seamtakt("calc fillet", leg="5mm"); an underscore stands for the dash of travel-speed."""
        self.asked += 1
        request = {"id": self.asked, "command": command,
                   "arguments": {name.replace("_", "-"): value for name, value in arguments.items()}}
        self.process.stdin.write(json.dumps(request) + "\n")
        self.process.stdin.flush()
        answer = json.loads(self.process.stdout.readline())
        if "error" in answer:
            raise Refused("{where}: found {found}, expected {expected}".format(**answer["error"]))
        return answer["result"]


def main(plan):
    with Seamtakt() as seamtakt:
        passes = seamtakt("evaluate", PLAN=plan)["passes"]
        worst = max(passes, key=lambda each: each["heat_input_kJ_mm"] or 0)
        print("{weldment}/{seam}/pass {pass}: {heat_input_kJ_mm:.3f} kJ/mm".format(**worst))
        for cycle in seamtakt("cycle", PLAN=plan)["weldments"]:
            print("{weldment}: {cycle_time_s:.0f} s".format(**cycle))
        try:
            seamtakt("calc fillet", leg="5 parrots")
        except Refused as refused:
            print(refused)


if __name__ == "__main__":
    main(sys.argv[1])
