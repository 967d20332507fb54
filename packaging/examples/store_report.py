#!/usr/bin/env python3
"""Reads a store with SQL alone: passes of a unit, and what failed.

    packaging/examples/store_report.py records.sqlite VIEWS.sql SERIAL

VIEWS.sql is share/seamtakt/sql/store-views.sqlite.sql. Nothing is written to the store.
"""
import sqlite3
import sys
import urllib.parse

store, views, unit = sys.argv[1:]
base = sqlite3.connect("file:" + urllib.parse.quote(store) + "?mode=ro", uri=True)
base.executescript(open(views, encoding="utf-8").read())

query = """SELECT seam, pass, schedule, round(heat_input_kJ_mm, 3), verdict
           FROM passes WHERE unit_serial = ? AND NOT is_void ORDER BY seam, pass"""
for row in base.execute(query, (unit,)):
    print(*row)
(failed,) = base.execute("SELECT count(*) FROM nonconformances WHERE unit_serial = ?", (unit,)).fetchone()
print(failed, "nonconformances")
