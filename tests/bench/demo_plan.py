#!/usr/bin/env python3
"""Writes the demo: demo_plan.py FOLDER fills reference/demo (all but the arc log, which demo_log writes).

The plan is invented: airport ground equipment as a small plant might weld it. 158 seams with their paths are too
many to type, so the frames are drawn by rules here. The output depends on nothing but these files.
"""
import json
import pathlib
import sys

sys.dont_write_bytecode = True
import demo_plan_frames as frames
import demo_plan_materials as materials
import demo_plan_plates as plates
import demo_plan_shop as shop


def parts(*pairs):
    return [{"id": name, "quantity": count} for name, count in pairs]


def weldment(name, drawing, frame, part_list, times, features, section):
    item = {"id": name, "drawing": drawing, "parts": part_list, "tolerance_class": "BF", "section": section}
    item.update(zip(("load_s", "unload_s", "tack_s", "manual_s", "measure_s", "inspect_s"), times))
    item["features"] = features
    solids = plates.SOLIDS[name]()
    item["plates"] = solids.plates
    if solids.tubes:
        item["tubes"] = solids.tubes
    item["seams"] = [{key: value for key, value in seam.items() if value != []} for seam in frame.seams]
    return item


def lengths(*rows):
    return [{"id": name, "kind": "length", "points": list(points), "nominal_mm": nominal}
            for name, points, nominal in rows]


def weldments(dolly, tractor, loader):
    return [
        weldment("BD", "AE-1001 baggage dolly", dolly,
                 parts(("BD-rail", 2), ("BD-cross", 5), ("BD-strip", 2), ("BD-hitch", 1), ("BD-gusset", 4),
                       ("BD-axle-bracket", 4), ("BD-coupling", 1)),
                 (150, 90, 1500, 1400, 600, 420),
                 lengths(("overall-length", ("P1", "P2"), 2880), ("rail-spacing", ("P1", "P3"), 1100),
                         ("axle-distance", ("P5", "P6"), 1800)) +
                 [{"id": "rail-straight", "kind": "straightness", "points": ["P1", "P5", "P6", "P2"]},
                  {"id": "front-corner", "kind": "angle", "points": ["P2", "P1", "P3"], "nominal_deg": 90}],
                 {"area_mm2": 3600, "second_moment_mm4": 7200000, "neutral_axis_mm": [750, 58]}),
        weldment("TT", "AE-2001 tow tractor frame", tractor,
                 parts(("TT-side", 2), ("TT-belly", 1), ("TT-cross", 4), ("TT-hitch-plate", 1), ("TT-bumper", 1),
                       ("TT-gusset", 4), ("TT-axle-pad", 4), ("TT-stiffener", 3), ("TT-post", 2), ("TT-cheek", 2),
                       ("TT-lug", 2)),
                 (300, 180, 3200, 3300, 900, 700),
                 lengths(("overall-length", ("P1", "P2"), 3000), ("side-spacing", ("P1", "P3"), 1000),
                         ("axle-distance", ("P5", "P6"), 1250)),
                 {"area_mm2": 24600, "second_moment_mm4": 410000000, "neutral_axis_mm": [650, 120]}),
        weldment("BL", "AE-3001 belt loader base", loader,
                 parts(("BL-rail", 6), ("BL-cross", 7), ("BL-strip", 6), ("BL-pivot", 4), ("BL-cylinder-plate", 2),
                       ("BL-gusset", 4), ("BL-fork-plate", 4), ("BL-tow-eye", 1), ("BL-step", 2)),
                 (260, 160, 2700, 2500, 900, 600),
                 lengths(("overall-length", ("P1", "P2"), 5860), ("rail-spacing", ("P1", "P3"), 1100),
                         ("wheelbase", ("P5", "P6"), 4400)),
                 {"area_mm2": 5400, "second_moment_mm4": 19500000, "neutral_axis_mm": [800, 80]}),
    ]


def cell(zone):
    robot = {"air_speed_mm_s": 1000, "air_acceleration_mm_s2": 4000, "wrist_s": 0.3, "sense_point_s": 1.8,
             "arc_start_s": 0.4, "crater_fill_s": 0.6, "post_flow_s": 0.5}
    return {
        "robots": [
            dict({"id": "R1", "home_mm": [-900, 750, 900],
                  "loaded": {"wire": "S12", "gas": "G18", "power_source": "PS-R"}, "wire_change_s": 90}, **robot),
            dict({"id": "R2", "home_mm": [6900, 750, 900],
                  "loaded": {"wire": "M14", "gas": "G18", "power_source": "PS-R"}, "wire_change_s": None}, **robot)],
        "orientations": [{"id": frames.FLAT, "rotation_deg": [0, 0, 0]},
                         {"id": frames.LEFT, "rotation_deg": [90, 0, 0]},
                         {"id": frames.RIGHT, "rotation_deg": [-90, 0, 0]}],
        "orientation_change_s": 14, "torch_service": {"every_arc_s": 480, "time_s": 9}, "stations": 2, "index_s": 6,
        "zones": [{"id": "middle", "seams": zone}],
    }


def line():
    return {"takt_s": 2160, "planning_pct": 100, "stages": [
        {"id": "kit", "servers": 1, "buffer_after": 2, "time": "kit"},
        {"id": "tack", "servers": 2, "buffer_after": 1, "time": "tack", "availability": 0.98, "repair_s": 900},
        {"id": "cell", "servers": 1, "buffer_after": 1, "time": "cell", "availability": 0.92, "repair_s": 600},
        {"id": "manual", "servers": 2, "buffer_after": 1, "time": "manual"},
        {"id": "measure", "servers": 1, "buffer_after": 1, "time": "measure"},
        {"id": "inspect", "servers": 1, "buffer_after": 4, "time": "inspect", "yield_pct": 96, "rework_to": "manual",
         "rework_s": 900}]}


def instruments():
    rows = []
    for robot in ("R1", "R2"):
        for quantity, half_width, of, full_scale in (("current", 2.5, "full-scale", 500), ("voltage", 1, "full-scale", 60),
                                                     ("travel_speed", 0.5, "reading", None),
                                                     ("wire_feed_speed", 1.5, "reading", None)):
            item = {"id": f"{robot}-{quantity.replace('_', '-')}", "robot": robot, "quantity": quantity,
                    "half_width_pct": half_width, "of": of}
            if full_scale:
                item["full_scale"] = full_scale
            item.update({"due": "2026-11-30" if robot == "R1" else "2027-01-31",
                         "certificate": f"invented-cal-{robot}-{len(rows) + 1:02d}"})
            rows.append(item)
    return rows


def plan():
    shapes = {"BD": frames.dolly(), "TT": frames.tractor(), "BL": frames.loader()}
    zone = [f"{name}/{seam}" for name, frame in shapes.items() for seam in frame.zone]
    return {
        "format": "weldplan", "version": 1, "title": "Airport ground equipment, three welded frames (invented data)",
        "notes": "Invented data: no real product, plant, procedure or certificate stands behind any figure here.",
        "code": "EN 1090-2", "base_metals": materials.BASE_METALS, "wires": materials.WIRES, "gases": materials.GASES,
        "power_sources": materials.POWER_SOURCES, "schedules": materials.schedules(),
        "qualifications": materials.QUALIFICATIONS, "weldments": weldments(*shapes.values()), "cell": cell(zone),
        "line": line(), "instruments": instruments(),
        "costs": {"robot_per_h": 62, "labour_per_h": 48, "energy_per_kWh": 0.21, "currency": "EUR"},
        "measuring": {"u_current_pct": 1.5, "u_voltage_pct": 1, "u_travel_speed_pct": 1, "decision": "simple"},
        "record_requires": ["robot", "schedule_revision"],
        "accepted": [{"rule": "fillet.throat.below-minimum", "where": f"BL/{seam['id']}", "by": "weld engineer",
                      "date": "2026-01-12", "why": "Deck strips carry no load."}
                     for seam in shapes["BL"].seams if seam.get("balance") == "deck"],
    }


def inline(value):
    return json.dumps(value, ensure_ascii=False)


def lay_out(value, indent=0):
    """JSON with one line an item: short enough to read, long enough to compare line by line."""
    pad = " " * indent
    if isinstance(value, dict) and any(isinstance(v, list) and v and isinstance(v[0], dict) and len(inline(v)) > 160
                                       for v in value.values()):
        rows = [f'{pad} {inline(key)}: {lay_out(item, indent + 1).lstrip()}' for key, item in value.items()]
        return f"{pad}{{\n" + ",\n".join(rows) + f"\n{pad}}}"
    if isinstance(value, list) and value and isinstance(value[0], dict) and len(inline(value)) > 160:
        return f"{pad}[\n" + ",\n".join(lay_out(item, indent + 1) for item in value) + f"\n{pad}]"
    return pad + inline(value)


def write(folder):
    drafted = plan()
    texts = {"ground-equipment.weldplan.json": lay_out(drafted) + "\n"}
    for name, rows in shop.files(drafted).items():
        texts[name] = "".join(",".join(str(cell) for cell in row) + "\n" for row in rows)
    texts["job-log.columns.json"] = "{\n" + ",\n".join(
        f" {inline(key)}: {inline(value)}" for key, value in shop.job_columns().items()) + "\n}\n"
    for name, text in texts.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: demo_plan.py FOLDER")
    write(pathlib.Path(sys.argv[1]))
