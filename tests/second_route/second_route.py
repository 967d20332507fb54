#!/usr/bin/env python3
"""Computes what the rows of this folder expect, by formulas written again from their sources.

  second_route.py --check            compares, to the printed digits; names each row that differs and exits 1
  second_route.py --write            writes what differs into the rows
  ... --rows FOLDER                  other tables than those beside this program

It shares no code with the program that the rows check, on purpose. Exit 2: a row that can't be computed.
"""
import argparse
import csv
import pathlib
import re
import sys

sys.dont_write_bytecode = True  # nothing of Python's own beside the sources

import cell
import heat
import measure
import metal
import shrinkage
import size
import strength
import temperature
import wire
from given import Given

QUANTITIES = {
    "carbon-equivalent": metal.carbon_equivalent, "preheat": metal.preheat, "haz-hardness": metal.haz_hardness,
    "heat-input": heat.heat_input, "cooling-time": heat.cooling_time, "interpass": heat.interpass,
    "temperature": temperature.temperature, "haz-width": temperature.haz_width,
    "fillet": size.fillet, "groove": size.groove, "fillet-resistance": strength.fillet_resistance,
    "melting-rate": wire.melting_rate, "deposition": wire.deposition, "transfer": wire.transfer,
    "penetration": wire.penetration, "distortion": shrinkage.distortion,
    "duty-cycle": cell.duty_cycle, "move-time": cell.move_time, "takt": cell.takt,
    "waveform": measure.waveform, "guard-band": measure.guard_band,
}

COLUMNS = "quantity,inputs,key,expected,source,clause,tolerance_reason".split(",")


def computed(quantity, inputs, key):
    """A number, a text, True or False, or None: the value of `key`, of "key[0]" in a list, or of "u_key"."""
    results_of, given = QUANTITIES[quantity], Given(inputs)
    results = results_of(given)
    if key.startswith("u_"):
        return measure.standard_uncertainty(results_of, given, key[2:])
    element = re.fullmatch(r"(.*)\[(\d+)\]", key)
    return results[element[1]][int(element[2])] if element else results[key]


def decimals_of(printed):
    """Places after the point, and the power of ten after them: "25.3e-5" -> 1, -5."""
    mantissa, _, exponent = printed.partition("e")
    return len(mantissa.partition(".")[2]), int(exponent or 0)


def tolerance_of(row):
    """Half the last printed place, or what the row gives a reason for: "2 %: ..." or "0.3: ...". """
    printed = abs(float(row["expected"]))
    if row["tolerance_reason"]:
        number, percent = re.match(r"([\d.e+-]+)( %)?:", row["tolerance_reason"]).groups()
        return float(number) / 100 * printed if percent else float(number)
    places, exponent = decimals_of(row["expected"])
    return 0.5 * 10.0 ** (exponent - places) + 1e-9 * printed


def is_number(text):
    return re.fullmatch(r"[-+]?[\d.]+(e[-+]?\d+)?", text) is not None


def agrees(row, value):
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return is_number(row["expected"]) and abs(value - float(row["expected"])) <= tolerance_of(row)
    return text_of(value) == row["expected"]


def text_of(value, like="0"):
    """As a row prints it: a number with as many places as `like`."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return value
    places, exponent = decimals_of(like) if is_number(like) else (6, 0)
    return f"{value / 10.0**exponent:.{places}f}" + (f"e{exponent}" if exponent else "")


def with_expected(line, text):
    """The line of a table with another fourth field; the rest as it is written there."""
    fields = re.findall(r'("(?:[^"]|"")*"|[^,]*)(?:,|$)', line)
    return ",".join(fields[:3] + [text] + line.split(",".join(fields[:3]) + "," + fields[3] + ",", 1)[1:])


def refuse(text):
    print(text, file=sys.stderr)
    sys.exit(2)


def compare(path, write):
    """Rows of a table, and those of them that differ; rewritten in place where `write` says so."""
    lines = path.read_text(encoding="utf-8").split("\n")
    names = next(csv.reader(lines[:1]))
    if names != COLUMNS:
        refuse(f"{path}:1: {','.join(names)}, expected {','.join(COLUMNS)}")
    count = differ = 0
    for number, line in enumerate(lines[1:], start=2):
        if not line:
            continue
        row = dict(zip(names, next(csv.reader([line]))))
        place = f"{path.name}:{number}"
        try:
            value = computed(row["quantity"], row["inputs"], row["key"])
        except (KeyError, ValueError, IndexError, ArithmeticError) as error:
            refuse(f"{place}: {row['quantity']} {row['inputs']}: {row['key']} can't be computed here: {error}")
        count += 1
        if agrees(row, value):
            continue
        differ += 1
        found = text_of(value, row["expected"])
        print(f"{place}: {row['quantity']} {row['inputs']}: {row['key']} {row['expected']}, computed {found}"
              + (f" ({value!r})" if isinstance(value, float) else ""))
        lines[number - 1] = with_expected(line, found)
    if write and differ:
        path.write_text("\n".join(lines), encoding="utf-8")
    return count, differ


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    action = parser.add_mutually_exclusive_group(required=True)
    action.add_argument("--check", action="store_true")
    action.add_argument("--write", action="store_true")
    parser.add_argument("--rows", type=pathlib.Path, default=pathlib.Path(__file__).resolve().parent)
    asked = parser.parse_args()
    if not any(asked.rows.glob("*.csv")):
        refuse(f"no tables in {asked.rows}")
    totals = [compare(path, asked.write) for path in sorted(asked.rows.glob("*.csv"))]
    count, differ = (sum(column) for column in zip(*totals))
    print(f"{count} rows, {differ} " + ("rewritten" if asked.write else "differ"))
    sys.exit(1 if differ and not asked.write else 0)


if __name__ == "__main__":
    main()
