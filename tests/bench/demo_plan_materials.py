"""Steels, wires, gases, sources, schedules and qualifications of the demo plan. All figures are invented.

Currents follow from the wires' melting law, so a schedule states wire feed, voltage and travel speed only.
Names: F5S = fillet, leg 5, solid wire; M = metal-cored; F = flux-cored; B8R/F/C = butt of 8 mm, root, fill,
cap; a name that begins with M is welded by hand; TK = tack.
"""

BASE_METALS = [
    {"id": "S355J2", "standard": "EN 10025-2 S355J2",
     "composition_pct": {"C": 0.14, "Si": 0.2, "Mn": 1.38, "P": 0.012, "S": 0.005, "Cr": 0.04, "Ni": 0.03,
                         "Cu": 0.06, "Mo": 0.005, "V": 0.003, "Nb": 0.022, "N": 0.004},
     "composition_basis": "certificate", "tensile_MPa": 528, "yield_MPa": 391},
    {"id": "S235JR", "standard": "EN 10025-2 S235JR",
     "composition_pct": {"C": 0.11, "Si": 0.17, "Mn": 0.72, "P": 0.014, "S": 0.009, "Cr": 0.05, "Ni": 0.04,
                         "Cu": 0.11, "Mo": 0.006, "N": 0.006},
     "composition_basis": "certificate", "tensile_MPa": 418, "yield_MPa": 286},
    {"id": "S355MC", "standard": "EN 10149-2 S355MC",
     "composition_pct": {"C": 0.07, "Si": 0.03, "Mn": 0.92, "P": 0.011, "S": 0.006, "Cr": 0.03, "Ni": 0.02,
                         "Cu": 0.04, "Mo": 0.004, "V": 0.002, "Nb": 0.026, "Ti": 0.014, "N": 0.004},
     "composition_basis": "certificate", "tensile_MPa": 467, "yield_MPa": 402},
]

WIRES = [
    {"id": "S12", "classification": "ISO 14341-A G 46 4 M21 4Si1", "form": "solid", "material": "mild-steel",
     "diameter_mm": 1.2, "density_g_cm3": 7.85, "alpha_mm_s_A": 0.3, "beta_per_s_A2": 5e-05,
     "deposition_efficiency": 0.96, "hydrogen_ml_100g": 4, "price_per_kg": 2.3},
    {"id": "F12", "classification": "ISO 17632-A T 46 2 P M21 1 H5", "form": "flux-cored",
     "material": "mild-steel", "diameter_mm": 1.2, "density_g_cm3": 7.0, "alpha_mm_s_A": 0.36,
     "beta_per_s_A2": 6e-05, "deposition_efficiency": 0.86, "hydrogen_ml_100g": 5, "price_per_kg": 4.1},
    {"id": "M12", "classification": "ISO 17632-A T 46 4 M M20 1 H5", "form": "metal-cored",
     "material": "mild-steel", "diameter_mm": 1.2, "density_g_cm3": 7.25, "alpha_mm_s_A": 0.36,
     "beta_per_s_A2": 6e-05, "deposition_efficiency": 0.93, "hydrogen_ml_100g": 4, "price_per_kg": 3.9},
    {"id": "M14", "classification": "ISO 17632-A T 46 4 M M21 1 H5", "form": "metal-cored",
     "material": "mild-steel", "diameter_mm": 1.4, "density_g_cm3": 7.25, "alpha_mm_s_A": 0.264,
     "beta_per_s_A2": 3.24e-05, "deposition_efficiency": 0.93, "hydrogen_ml_100g": 4, "price_per_kg": 3.7},
]

GASES = [
    {"id": "G18", "designation": "ISO 14175 M21-ArC-18", "price_per_m3": 5.8},
    {"id": "G8", "designation": "ISO 14175 M20-ArC-8", "price_per_m3": 7.4},
]

POWER_SOURCES = [
    {"id": "PS-R", "rated_current_A": 500, "rated_duty_pct": 60, "efficiency": 0.88},
    {"id": "PS-M", "rated_current_A": 400, "rated_duty_pct": 60, "efficiency": 0.86},
]

EXTENSION_MM = {"S12": 15, "F12": 15, "M12": 15, "M14": 17}
ARC_LENGTH_MM = 3


def current_A(wire_id, wire_feed_speed_m_min):
    """Inverse of the melting law W = alpha*I + beta*l*I^2."""
    wire = next(w for w in WIRES if w["id"] == wire_id)
    alpha, resistive = wire["alpha_mm_s_A"], wire["beta_per_s_A2"] * EXTENSION_MM[wire_id]
    speed_mm_s = wire_feed_speed_m_min * 1000 / 60
    return (-alpha + (alpha * alpha + 4 * resistive * speed_mm_s) ** 0.5) / (2 * resistive)


def around(value, share, digits=1):
    return [round(value * (1 - share), digits), round(value * (1 + share), digits)]


def limits(wire, feed, volts, travel, interpass, hand):
    """Tolerances around the working point: a robot keeps closer to it than a person does."""
    current = current_A(wire, feed)
    heat = 0.8 * volts * current / travel / 1000
    result = {
        "current_A": around(current, 0.1, 0),
        "voltage_V": [volts - 1.5, volts + 1.5],
        "wire_feed_speed_m_min": around(feed, 0.08),
        "travel_speed_mm_s": around(travel, 0.25 if hand else 0.08),
        "gas_flow_l_min": [13, 20],
        "heat_input_kJ_mm": around(heat, 0.3 if hand else 0.18, 2),
        "cooling_time_s": [1.5, 40],
    }
    if interpass:
        result["interpass_C"] = interpass
    result["hardness_HV"] = [None, 380]
    return result


def schedule(name, process, wire, feed, volts, travel, qualification, leg=None, thickness=None,
             positions=("PA", "PB"), hand=False, interpass=None, revision=2, **more):
    use = {"positions": list(positions)}
    if thickness:
        use["thickness_mm"] = list(thickness)
    use["gap_mm"] = [0, 2.5] if leg is None else [0, 1]
    if leg:
        use["leg_mm"] = list(leg)
    item = {
        "id": name, "revision": revision, "status": "approved", "approved_by": "weld engineer",
        "effective_from": "2026-01-12", "process": process, "transfer": more.pop("transfer", "spray"),
        "waveform": more.pop("waveform", "conventional"), "polarity": "DC+", "wire": wire,
        "gas": "G8" if wire == "M12" else "G18", "power_source": "PS-M" if hand else "PS-R",
        "wire_feed_speed_m_min": feed, "arc_voltage_V": volts, "travel_speed_mm_s": travel,
        "contact_tip_distance_mm": EXTENSION_MM[wire] + ARC_LENGTH_MM, "arc_length_mm": ARC_LENGTH_MM,
        "gas_flow_l_min": 16, "nozzle_mm": 16, "torch_work_deg": more.pop("work", 45), "torch_travel_deg": 10,
    }
    item.update(more)
    item["use"] = use
    item["limits"] = limits(wire, feed, volts, travel, interpass, hand)
    if qualification:
        item["qualification"] = qualification
    return item


def schedules():
    root = {"transfer": "dip", "waveform": "waveform-controlled", "waveform_factor": 0.94, "work": 90,
            "preparation": "V 60 deg, cut and ground", "backing": "ceramic"}
    groove = {"work": 90, "preparation": "V 60 deg, cut and ground", "backing": "ceramic"}
    cap = dict(groove, weave={"half_width_mm": 3, "frequency_Hz": 1.5, "dwell_s": 0.1})
    up = {"transfer": "globular", "weave": {"half_width_mm": 2.5, "frequency_Hz": 1.2, "dwell_s": 0.15}}
    hot = [20, 250]
    sweep = {"weave": {"half_width_mm": 1.2, "frequency_Hz": 3, "dwell_s": 0}}
    heavy = dict(interpass=[80, 250], preheat_C=80)
    return [
        schedule("F4S", "135", "S12", 8.6, 28, 13, "Q-135-THIN", (3, 4.5), (4, 8)),
        schedule("F5S", "135", "S12", 9.5, 29, 10.5, "Q-135-FW", (4, 6), (5, 14), revision=3),
        schedule("F6S", "135", "S12", 10, 29.5, 7.8, "Q-135-FW", (5, 6), (6, 20), **sweep),
        schedule("F10R", "135", "S12", 10, 29.5, 8.8, "Q-135-HW", (8, 10), (10, 30), **heavy),
        schedule("F10F", "135", "S12", 10, 29.5, 8.8, "Q-135-HW", (8, 10), (10, 30), **heavy),
        schedule("F10C", "135", "S12", 10, 29.5, 8.8, "Q-135-HW", (8, 10), (10, 30), **heavy),
        schedule("F4M", "138", "M14", 6.5, 27.5, 12, "Q-138-THIN", (3, 4.5), (4, 8)),
        schedule("F5M", "138", "M14", 7, 28.5, 9.5, "Q-138-FW", (4, 5), (5, 14)),
        schedule("F6M", "138", "M14", 8, 29.5, 7.8, "Q-138-FW", (5, 6), (6, 20), revision=4, **sweep),
        schedule("F8M", "138", "M14", 9.5, 31.5, 5.4, "Q-138-HW", (7, 8), (10, 24), **sweep),
        schedule("F6F", "136", "F12", 7, 25, 4.4, "Q-136-PF", (5, 6), (6, 20), ("PF",), **up),
        schedule("B8R", "135", "S12", 4.5, 19.5, 4.5, "Q-135-BR8", None, (6, 9), ("PA",), interpass=hot, **root),
        schedule("B8F", "135", "S12", 9, 28, 9, "Q-135-BW8", None, (6, 9), ("PA",), interpass=hot, **groove),
        schedule("B8C", "135", "S12", 9, 28, 9, "Q-135-BW8", None, (6, 9), ("PA",), interpass=hot, **cap),
        schedule("B12R", "135", "S12", 5, 20, 4, "Q-135-BR12", None, (10, 14), ("PA",), interpass=hot, **root),
        schedule("B12F", "135", "S12", 10, 29.5, 6.2, "Q-135-BW12", None, (10, 14), ("PA",), interpass=hot,
                 **groove),
        schedule("B12C", "135", "S12", 10, 29.5, 6, "Q-135-BW12", None, (10, 14), ("PA",), interpass=hot, **cap),
        schedule("MF5", "138", "M12", 8, 27, 7.2, "Q-138-HAND", (4, 5), (4, 14), ("PA", "PB"), hand=True),
        schedule("MF6", "136", "F12", 7, 25, 4.2, "Q-136-HAND", (5, 6), (6, 20), ("PB", "PF"), hand=True, **up),
        schedule("MF6H", "136", "F12", 7, 25, 4.2, "Q-136-HAND", (5, 6), (6, 24), ("PB", "PF"), hand=True,
                 preheat_C=80, interpass=[80, 180], **up),
        schedule("TK", "135", "S12", 7, 25, 8, None, (3, 4), (4, 24), ("PA", "PB", "PF"), hand=True, revision=1,
                 transfer="globular"),
    ]


def qualification(name, number, process, joint, thickness, heat, filler, runs, position, throat=None,
                  preheat=20, interpass=180, transfer="spray", gas="M21", hand=False):
    tested = {"process": process, "joint": joint, "group": "1.2", "thickness_mm": thickness}
    if throat:
        tested["throat_mm"] = throat
    tested.update({"heat_input_kJ_mm": heat, "preheat_C": preheat, "interpass_C": interpass,
                   "transfer": transfer, "filler": filler, "gas": gas,
                   "mechanisation": "partly mechanised" if hand else "automatic",
                   "impact_tested": joint == "butt", "hardness_tested": True, "runs": runs,
                   "position": position})
    return {"id": name, "basis": "ISO 15614-1", "certificate": f"invented-{number:03d}", "date": "2025-03-18",
            "last_used": "2026-02-20", "tested": tested}


QUALIFICATIONS = [
    qualification("Q-135-THIN", 1, "135", "tee", 6, 0.5, "G 46 4 M21 4Si1", "single", "PB", throat=3.2),
    qualification("Q-135-FW", 2, "135", "tee", 12, 0.84, "G 46 4 M21 4Si1", "single", "PB", throat=4),
    qualification("Q-135-HW", 3, "135", "tee", 20, 0.85, "G 46 4 M21 4Si1", "multi", "PB", throat=7, preheat=80,
                  interpass=250),
    qualification("Q-138-THIN", 4, "138", "tee", 6, 0.5, "T 46 4 M M21 1 H5", "single", "PB", throat=3.2),
    qualification("Q-138-FW", 5, "138", "tee", 12, 0.84, "T 46 4 M M21 1 H5", "single", "PB", throat=4),
    qualification("Q-138-HW", 6, "138", "tee", 15, 1.6, "T 46 4 M M21 1 H5", "single", "PB", throat=5.5),
    qualification("Q-136-PF", 7, "136", "tee", 12, 1, "T 46 2 P M21 1 H5", "single", "PF", throat=4.2,
                  transfer="globular"),
    qualification("Q-135-BW8", 8, "135", "butt", 8, 0.65, "G 46 4 M21 4Si1", "multi", "PA", interpass=250),
    qualification("Q-135-BW12", 9, "135", "butt", 12, 1.05, "G 46 4 M21 4Si1", "multi", "PA", interpass=250),
    qualification("Q-135-BR8", 11, "135", "butt", 8, 0.55, "G 46 4 M21 4Si1", "multi", "PA", transfer="dip",
                  interpass=250),
    qualification("Q-135-BR12", 12, "135", "butt", 12, 0.72, "G 46 4 M21 4Si1", "multi", "PA", transfer="dip",
                  interpass=250),
    qualification("Q-138-HAND", 10, "138", "tee", 10, 0.7, "T 46 4 M M20 1 H5", "single", "PB", throat=3.8,
                  gas="M20", hand=True),
    qualification("Q-136-HAND", 13, "136", "tee", 12, 1, "T 46 2 P M21 1 H5", "single", "PF", throat=4.2,
                  transfer="globular", hand=True),
]
