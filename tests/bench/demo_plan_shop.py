"""The shop's data beside the plan: orders, carts, manual seams, measured points. Invented."""

WEEK = ("2026-03-02", "2026-03-03", "2026-03-04")
# Ordered as they were sold: the heavy frames (T) are in a row, which is what levelling is for.
SOLD = "BTLBBBTTTTLLBLBBTLLBLBLB"
NAMES = {"B": "BD", "T": "TT", "L": "BL"}
UNITS_IN_LOG = 3


def orders():
    rows = [("unit_serial", "weldment", "due")]
    for i, letter in enumerate(SOLD):
        rows.append((f"AE-26-{101 + i:04d}", NAMES[letter], WEEK[i // 8]))
    return rows


def orders_of_a_day():
    """The same units due within one day of two shifts: half of them by the end of the first."""
    rows = orders()
    day, first_shift, second_shift = WEEK[0], "T14:00", "T22:00"
    units = rows[1:]
    return rows[:1] + [(serial, name, day + (first_shift if i < len(units) // 2 else second_shift))
                       for i, (serial, name, _) in enumerate(units)]


def cart(weldment, number):
    """Parts as kitted. The sixth cart lacks a gusset, the fourth carries a part too many."""
    rows = [("part", "quantity", "heat")]
    for i, part in enumerate(weldment["parts"]):
        quantity = part["quantity"]
        if number == 6 and part["id"] == "BD-gusset":
            quantity -= 1
        rows.append((part["id"], quantity, f"H{4100 + 7 * i + number % 3}"))
    if number == 4:
        rows.append(("BD-strip", 1, "H4100"))
    return rows


def manual_seams(plan):
    """Manual seams of the units in the sample log; the last seam of the last unit is still open."""
    weldments = {w["id"]: w for w in plan["weldments"]}
    rows = [("unit_serial", "seam", "pass", "welder", "schedule", "date", "result")]
    for i, (serial, name, _) in enumerate(orders()[1:UNITS_IN_LOG + 1]):
        for k, seam in enumerate(s for s in weldments[name]["seams"] if s["by"] == "manual"):
            for number, schedule in enumerate(seam["schedules"], 1):
                rows.append((serial, seam["id"], number, ("W07", "W11", "W15")[(i + k // 4) % 3], schedule, WEEK[0], "pass"))
    return rows[:-1]


JOBS = {"105": ("BD", "S05", 1), "106": ("BD", "S06", 1), "109": ("BD", "S09", 1), "110": ("BD", "S09", 2),
        "111": ("BD", "S09", 3), "201": ("TT", "S01", 1), "202": ("TT", "S02", 1)}


def unit_times():
    """When the units of job-log.csv.gz were in the cell."""
    return [("unit_serial", "weldment", "start", "end"),
            ("AE-26-0101", "BD", "2026-03-02T06:00:00Z", "2026-03-02T06:19:26Z"),
            ("AE-26-0102", "TT", "2026-03-02T06:19:26Z", "2026-03-02T07:30:00Z")]


def job_columns():
    """How job-log.csv.gz is read: a log with names of its own, that tells its passes by job numbers alone."""
    values = {job: dict(zip(("weldment", "seam", "pass"), place)) for job, place in JOBS.items()}
    return {"x_note": "Invented data: columns and job numbers of job-log.csv.gz, units in unit-times.csv",
            "time": {"columns": ["Stamp"]}, "current_A": {"column": "Amps", "unit": "A"},
            "voltage_V": {"column": "Volts", "unit": "V"}, "wire_feed_speed_m_min": {"column": "Wire", "unit": "m/min"},
            "travel_speed_mm_s": {"column": "Travel", "unit": "cm/min"}, "gas_flow_l_min": {"column": "Gas"},
            "interpass_C": {"column": "Interpass"},
            "schedule_revision": {"column": "Rev"}, "robot": {"column": "Robot"}, "job": {"column": "Job", "values": values}}


def points():
    """A dolly on the measuring table, turned by the table's own axes: only distances and angles matter."""
    shape = (("P1", 60, 200, 0), ("P2", 2938.4, 200.6, 0.4), ("P3", 60.7, 1301.2, -0.3), ("P4", 2938.9, 1300.4, 0.8),
             ("P5", 600.2, 201.5, 0.9), ("P6", 2400.9, 201.1, 1.1))
    cosine, sine = 0.9998, 0.02  # within 1e-6 of a rotation
    rows = [("point", "x_mm", "y_mm", "z_mm", "part_C")]
    for name, x, y, z in shape:
        rows.append((name, f"{cosine * x - sine * y + 412:.2f}", f"{sine * x + cosine * y + 96:.2f}", f"{z + 805:.2f}", 23.5))
    return rows


def files(plan):
    """File name -> rows."""
    weldments = {w["id"]: w for w in plan["weldments"]}
    result = {"orders.csv": orders(), "orders-day.csv": orders_of_a_day(), "manual-seams.csv": manual_seams(plan),
              "points.csv": points(), "unit-times.csv": unit_times()}
    for number, (serial, name, _) in enumerate(orders()[1:], 1):
        result[f"carts/{serial}.csv"] = cart(weldments[name], number)
    return result
