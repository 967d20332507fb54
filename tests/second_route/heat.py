"""Arc energy and heat input, cooling time t8/5, waiting time between passes."""
import math

from calculus import root
from given import inches_per_minute

# k by ISO 4063 process number.
# Source: en-1011-1, Table 1 (part read: values read, process numbers recalled)
THERMAL_EFFICIENCY = {"111": 0.8, "114": 0.8, "121": 1.0, "131": 0.8, "135": 0.8, "136": 0.8, "137": 0.8, "138": 0.8,
                      "139": 0.8, "141": 0.6, "15": 0.6}

# F2 of a calculation, F2 from, F2 to, F3 by joint.
# Source: en-1011-2, Table D.1 (recalled)
SHAPE_FACTORS = {"plate": (1, 1, 1, 1), "butt": (0.9, 0.9, 0.9, 0.9), "corner": (0.9, 0.67, 0.9, 0.67),
                 "tee": (0.67, 0.45, 0.67, 0.67), "lap": (0.67, 0.45, 0.67, 0.67)}

# W/(mm K), J/(mm3 K).
# Source: aws-welding-handbook (recalled)
CONDUCTIVITY, HEAT_CAPACITY = 0.028, 0.0044


def arc_energy_J_mm(given):
    """Source: iso-tr-18491, methods A (means over the speed), B (energy over the length), C (power over the speed);
    asme-ix, QW-409.1(c): power times arc time over length."""
    if "energy" in given:
        return given.number("energy", "J") / given.number("length", "mm")
    power_W = arc_power_W(given)
    if "travel-speed" in given:
        return power_W / given.number("travel-speed", "mm/s")
    return power_W * given.number("time", "s") / given.number("length", "mm")


def arc_power_W(given):
    """Source: iso-tr-18491, method A: the product of the means; or as given, method C."""
    if "power" in given:
        return given.number("power", "W")
    return given.number("voltage") * given.number("current")


def asme_arc_energy_J_in(given):
    """Source: asme-ix, QW-409.1(a): V A 60 / S with S in in/min."""
    return given.number("voltage") * given.number("current") * 60 / inches_per_minute(given)


def heat_input(given):
    """Source: en-1011-1: Q = k E; no process and no efficiency, no heat input."""
    energy = arc_energy_J_mm(given) / 1000
    k = THERMAL_EFFICIENCY.get(given.text("process"))
    if "efficiency" in given:
        k = given.number("efficiency")
    results = {"arc_energy_kJ_mm": energy, "arc_energy_kJ_in": energy * 25.4,
               "heat_input_kJ_mm": None if k is None else k * energy, "thermal_efficiency": k}
    if "energy" not in given:
        results["arc_power_W"] = arc_power_W(given)
    if all(name in given for name in ("voltage", "current", "travel-speed")):
        results["arc_energy_kJ_in"] = asme_arc_energy_J_in(given) / 1000
    return results


def t85_thick_s(preheat_C, heat_input_kJ_mm, f3):
    """Source: en-1011-2, Annex D, three-dimensional heat flow (part read)."""
    spread = 1 / (500 - preheat_C) - 1 / (800 - preheat_C)
    return (6700 - 5 * preheat_C) * heat_input_kJ_mm * spread * f3


def t85_thin_s(preheat_C, heat_input_kJ_mm, thickness_mm, f2):
    """Source: en-1011-2, Annex D, two-dimensional heat flow (part read)."""
    spread = 1 / (500 - preheat_C) ** 2 - 1 / (800 - preheat_C) ** 2
    return (4300 - 4.3 * preheat_C) * 1e5 * heat_input_kJ_mm**2 / thickness_mm**2 * spread * f2


def cooling_time(given):
    """The longer of the two times holds (Annex D: the plate is thin below the thickness at which both are the same)."""
    preheat = given.number("preheat", "", 20.0)
    f2, f2_low, f2_high, f3 = SHAPE_FACTORS[given.text("joint", "plate")]
    if "f2" in given:
        f2 = f2_low = f2_high = given.number("f2")
    f3 = given.number("f3", "", f3)
    if "thickness" not in given:
        thick = t85_thick_s(preheat, given.number("heat-input", "kJ/mm"), f3)
        return {"cooling_time_2d_s": None, "cooling_time_3d_s": thick}
    thickness = given.number("thickness", "mm")

    def longer(heat_input, factor):
        return max(t85_thin_s(preheat, heat_input, thickness, factor), t85_thick_s(preheat, heat_input, f3))

    if "cooling-time" in given:
        wanted = given.number("cooling-time", "s")
        return {"heat_input_kJ_mm": root(lambda q: longer(q, f2) - wanted, 1e-6, 1e3)}
    q = given.number("heat-input", "kJ/mm")
    thin, thick = t85_thin_s(preheat, q, thickness, f2), t85_thick_s(preheat, q, f3)
    span = [longer(q, f2_low), longer(q, f2_high)]
    return {
        "cooling_time_s": max(thin, thick), "cooling_time_2d_s": thin, "cooling_time_3d_s": thick,
        "regime": "2D" if thin > thick else "3D",
        "transition_thickness_mm": root(lambda d: t85_thin_s(preheat, q, d, f2) - thick, 1e-3, 1e4),
        "cooling_time_span_s": span[:1] if f2_low == f2_high else span,
    }


def interpass(given):
    """The time until the centre line behind the arc is down to the interpass temperature.
    Source: rykalin-1957, fast source: thick (q/v)/(2 pi lambda dT), thin ((q/v)/d)^2/(4 pi lambda rho_c dT^2)."""
    per_length = 1000 * given.number("heat-input", "kJ/mm")
    excess = given.number("interpass") - given.number("preheat", "", 20.0)
    if "thickness" not in given:
        return {"wait_s": per_length / (2 * math.pi * CONDUCTIVITY * excess)}
    across = per_length / given.number("thickness", "mm") / excess
    return {"wait_s": across**2 / (4 * math.pi * CONDUCTIVITY * HEAT_CAPACITY)}
