#!/usr/bin/env python3
"""The second verifier's verdict on many stores: their files come on standard input, a line each; prints a line each,
0 (trusted), 1, or 2 (not an anchor). Says what `verify_log.py FILE` says; a start of Python and of openssl for each store would take most
of the time."""
import argparse
import functools
import pathlib
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).parents[2] / "reference"))
import verify_log

# Each starts a program, and what it says follows from its arguments alone.
verify_log.signed = functools.cache(verify_log.signed)
verify_log.key_id = functools.cache(verify_log.key_id)

given = argparse.ArgumentParser(description=__doc__)
given.add_argument("--anchor", action="append", default=[])
given.add_argument("--pub")
given = given.parse_args()
anchors = [line.split() for name in given.anchor for line in open(name)]
pin = given.pub and verify_log.key_id(open(given.pub).read())
for line in sys.stdin:
    for found in (verify_log.problems, verify_log.notes, verify_log.mistyped):
        found.clear()
    try:
        verify_log.verify(line.rstrip("\n"), anchors, pin)
    except Exception as error:  # as the program itself takes it
        verify_log.bad(0, repr(error))
    print(1 if verify_log.problems else 2 if verify_log.mistyped else 0, flush=True)
