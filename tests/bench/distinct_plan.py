#!/usr/bin/env python3
"""Writes a large plan whose seams share nothing that is expensive to compute.

  distinct_plan.py SEAMS WELDMENTS [SCHEDULES] [SEED]      to standard output

Each seam has plates, gap, size, length and place of its own; SCHEDULES (default: a fifth of the seams) differ in current,
voltage, speeds, stick-out and preheat. So no two passes have the same settings, as they do where the demo is repeated.
There are about one and a half findings per seam. The random numbers are those of SEED (default 1). All data is
invented.
"""
import json
import random
import sys

COMPOSITIONS = [
    {"C": 0.14, "Si": 0.2, "Mn": 1.38, "P": 0.012, "S": 0.005, "Cr": 0.04, "Ni": 0.03, "Cu": 0.06, "Mo": 0.005, "N": 0.004},
    {"C": 0.11, "Si": 0.17, "Mn": 0.72, "P": 0.014, "S": 0.009, "Cr": 0.05, "Ni": 0.04, "Cu": 0.11, "Mo": 0.006, "N": 0.006},
    {"C": 0.17, "Si": 0.35, "Mn": 1.45, "P": 0.011, "S": 0.004, "Cr": 0.06, "Ni": 0.05, "Cu": 0.05, "Mo": 0.01, "N": 0.005},
]


def schedule(number, draw):
    """A spray-arc fillet schedule; a third of them have limits that their own values may miss."""
    feed = round(draw.uniform(7, 12), 3)
    current = round(120 + 16.5 * feed + draw.uniform(-8, 8), 2)
    made = {"id": f"W{number}", "process": "135", "transfer": "spray", "wire": "S12", "gas": "G18", "power_source": "PS",
            "wire_feed_speed_m_min": feed, "arc_voltage_V": round(draw.uniform(25, 31), 3),
            "travel_speed_mm_s": round(draw.uniform(5, 12), 3), "contact_tip_distance_mm": round(draw.uniform(16, 20), 2),
            "arc_length_mm": round(draw.uniform(2, 4), 2), "gas_flow_l_min": round(draw.uniform(14, 18), 2),
            "current_A": current, "preheat_C": round(draw.uniform(15, 120), 1)}
    if number % 3 == 0:
        made["limits"] = {"heat_input_kJ_mm": [0.6, round(draw.uniform(0.9, 1.6), 3)], "interpass_C": [None, 200]}
    return made


def seam(number, schedules, draw):
    """A fillet on plates of its own; every tenth has a second pass."""
    x, y, z = (round(draw.uniform(0, 5000), 1) for _ in range(3))
    passes = [f"W{number % schedules}"]
    if number % 10 == 0:
        passes.append(f"W{(number * 7 + 3) % schedules}")
    return {"id": f"S{number}", "joint": "tee", "thickness_mm": [round(draw.uniform(6, 25), 2), round(draw.uniform(6, 25), 2)],
            "base_metals": [f"M{draw.randrange(3)}", f"M{draw.randrange(3)}"], "leg_mm": round(draw.uniform(4, 8), 2),
            "gap_mm": round(draw.uniform(0, 0.5), 3), "position": "PB", "schedules": passes,
            "path_mm": [[x, y, z], [round(x + draw.uniform(80, 900), 1), y, z]]}


def robot(number, x):
    return {"id": f"R{number}", "home_mm": [x, 0, 900], "loaded": {"wire": "S12", "gas": "G18", "power_source": "PS"},
            "air_speed_mm_s": 1000, "air_acceleration_mm_s2": 4000, "wrist_s": 0.3, "arc_start_s": 0.4,
            "crater_fill_s": 0.6, "post_flow_s": 0.5}


def distinct_plan(seams, weldments, schedules=None, seed=1):
    draw = random.Random(seed)
    schedules = schedules or max(1, seams // 5)
    plan = {
        "format": "weldplan", "version": 1, "title": "Seams that share nothing (invented data)",
        "base_metals": [{"id": f"M{i}", "standard": "invented", "composition_pct": composition,
                         "composition_basis": "certificate"} for i, composition in enumerate(COMPOSITIONS)],
        "wires": [{"id": "S12", "classification": "ISO 14341-A G 46 4 M21 4Si1", "form": "solid", "material": "mild-steel",
                   "diameter_mm": 1.2, "density_g_cm3": 7.85, "alpha_mm_s_A": 0.3, "beta_per_s_A2": 5e-05,
                   "deposition_efficiency": 0.96, "hydrogen_ml_100g": 4, "price_per_kg": 2.3}],
        "gases": [{"id": "G18", "designation": "ISO 14175 M21-ArC-18", "price_per_m3": 5.8}],
        "power_sources": [{"id": "PS", "rated_current_A": 360, "rated_duty_pct": 60, "efficiency": 0.88}],
        "schedules": [schedule(number, draw) for number in range(schedules)],
        "measuring": {"u_current_pct": 1.5, "u_voltage_pct": 1, "u_travel_speed_pct": 1, "decision": "guarded"},
        "cell": {"robots": [robot(1, -900), robot(2, 5900)]},
        "weldments": [],
    }
    bounds = [seams * i // weldments for i in range(weldments + 1)]
    for i in range(weldments):
        plan["weldments"].append({"id": f"V{i}", "load_s": 120, "unload_s": 60,
                                  "seams": [seam(number, schedules, draw) for number in range(bounds[i], bounds[i + 1])]})
    return plan


if __name__ == "__main__":
    json.dump(distinct_plan(*(int(word) for word in sys.argv[1:])), sys.stdout, separators=(",", ":"))
