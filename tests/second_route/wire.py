"""Melting of the wire, what it deposits, transfer mode, penetration."""
import math

from calculus import root
from given import inches_per_minute

# alpha in mm/(A s) and beta in 1/(A2 s) of the 1.2 mm solid wire.
# Source: lesnewich-1958 (recalled)
MELTING_OF_1_2_MM = {"mild-steel": (0.30, 5.0e-5), "aluminium": (0.75, 0.0)}

# Transition current in A by diameter in mm: 0.030, 0.035, 0.045, 0.052, 1/16 in.
# Source: mig-handbook, Table 1-2 (read)
TRANSITION_OF_MILD_STEEL_98AR_2O2 = {0.76: 150, 0.89: 165, 1.14: 220, 1.3: 240, 1.6: 275}


def melting_coefficients(given):
    """As given, or from 1.2 mm: alpha is proportional to 1/d^2, beta to 1/d^4. Source: derived."""
    if "alpha" in given:
        return given.number("alpha"), given.number("beta")
    alpha, beta = MELTING_OF_1_2_MM[given.text("wire-material")]
    smaller = 1.2 / given.number("wire-diameter", "mm")
    return alpha * smaller**2, beta * smaller**4


def melting_rate(given):
    """W = alpha I + beta l I^2 in mm/s, l from contact tip to arc root in mm. A waveform melts with its mean current in
    the first term and its root mean square in the second. Source: lesnewich-1958 (recalled); the waveform: derived."""
    alpha, beta = melting_coefficients(given)
    results = {"alpha_mm_s_A": alpha, "beta_per_s_A2": beta}

    def feed_m_min(current):
        rms = given.number("rms-current", "", current)
        return (alpha * current + beta * given.number("extension", "mm") * rms**2) * 60 / 1000

    if "current" in given:
        results["wire_feed_speed_m_min"] = feed_m_min(given.number("current"))
    elif "wire-feed" in given:
        wanted = given.number("wire-feed", "m/min")
        results["current_A"] = root(lambda current: feed_m_min(current) - wanted, 0.0, 1e4)
    return results


def deposition(given):
    """Mass balance: section of the wire times feed times density, times what stays. Source: derived."""
    per_second = math.pi / 4 * given.number("wire-diameter", "mm") ** 2 * given.number("wire-feed", "m/min") * 1000 / 60
    density_kg_mm3 = given.number("density") * 1e-6  # from g/cm3
    results = {"melting_rate_kg_h": per_second * density_kg_mm3 * 3600}
    results["deposition_rate_kg_h"] = results["melting_rate_kg_h"] * given.number("efficiency", "", 1.0)
    if "travel-speed" in given:
        results["deposit_area_mm2"] = per_second * given.number("efficiency") / given.number("travel-speed", "mm/s")
    return results


def transfer(given):
    """Between two diameters of the table: on the straight line. Rows here are of mild steel in 98 % argon."""
    table, diameter = TRANSITION_OF_MILD_STEEL_98AR_2O2, given.number("wire-diameter", "mm")
    if given.text("wire-material") != "mild-steel" or given.text("gas") != "98Ar 2O2":
        raise KeyError("only mild steel in 98Ar 2O2")
    if diameter in table:
        return {"transition_current_A": table[diameter], "interpolated": False}
    below, above = max(d for d in table if d < diameter), min(d for d in table if d > diameter)
    share = (diameter - below) / (above - below)
    return {"transition_current_A": (1 - share) * table[below] + share * table[above], "interpolated": True}


def penetration(given):
    """P = K (I^4/(S E^2))^(1/3), P in in, S in in/min. Source: jackson-shrubsall (recalled), K = 0.0012."""
    in_inches = given.number("coefficient", "", 0.0012) * (
        given.number("current") ** 4 / (inches_per_minute(given) * given.number("voltage") ** 2)) ** (1 / 3)
    return {"penetration_mm": in_inches * 25.4}
