"""Resistance of fillet welds."""
import math

# fu in MPa by steel.
# Source: en-1993-1-1, Table 3.1 (recalled); en-10025-2 (recalled)
TENSILE_MPA = {"en-1993-1-1": {"S235": 360, "S275": 430, "S355": 490, "S420": 520, "S460": 540},
               "en-10025": {"S235": 360, "S275": 410, "S355": 470}}

# Correlation factor by steel: edition 2005, and where the 2024 edition differs.
# Source: en-1993-1-8, Table 4.1 (2005 read, 2024 recalled)
BETA_W = {"S235": 0.80, "S275": 0.85, "S355": 0.90, "S420": 1.0, "S460": 1.0}
BETA_W_2024 = {"S420": 0.88, "S460": 0.85}

GAMMA_M2 = 1.25


def material_of(given):
    steel = given.text("steel")
    if "tensile" in given:
        tensile = given.number("tensile")
    else:
        tensile = TENSILE_MPA[given.text("tensile-table", "en-1993-1-1")][steel]
    if "beta-w" in given:
        return tensile, given.number("beta-w")
    return tensile, (BETA_W_2024 if given.text("edition") == "2024" else {}).get(steel, BETA_W[steel])


def fillet_resistance(given):
    """Source: en-1993-1-8, 4.5.3.3, simplified: F <= fu/(sqrt3 beta_w gamma_M2) a L; 4.5.3.2, directional:
    sqrt(s^2 + 3 (tp^2 + tl^2)) <= fu/(beta_w gamma_M2) and s <= 0.9 fu/gamma_M2, for T-joints whose fillets share the
    forces: s = tp = N/(a L sqrt2), tl = V/(a L) with the length of all (read)."""
    tensile, beta_w = material_of(given)
    strength = tensile / (math.sqrt(3) * beta_w * GAMMA_M2)
    results = {"design_shear_strength_MPa": strength}
    if "throat" not in given:
        return results
    area = given.number("throat", "mm") * given.number("length", "mm") * given.number("count", "", 1.0)
    results["resistance_N"] = strength * area
    across, along = given.number("force-normal-to-weld", "N", 0.0), given.number("force-along-weld", "N", 0.0)
    if across == 0 and along == 0:
        return results | {"utilisation_simplified": None, "utilisation_directional": None}
    normal = across / (area * math.sqrt(2))
    combined = math.sqrt(normal**2 + 3 * (normal**2 + (along / area) ** 2))
    results["utilisation_simplified"] = math.hypot(across, along) / (strength * area)
    results["utilisation_directional"] = max(combined / (tensile / (beta_w * GAMMA_M2)), normal / (0.9 * tensile / GAMMA_M2))
    return results
