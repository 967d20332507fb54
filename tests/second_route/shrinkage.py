"""Distortion."""

MODULUS_MPA = 210000.0


def fillet_angular(given):
    """D = 0.02 W w^1.3 / t^2, all in in. Source: blodgett (recalled)."""
    width, leg, thickness = (given.number(name, "mm") / 25.4 for name in ("flange-width", "leg", "thickness"))
    return {"movement_mm": 0.02 * width * leg**1.3 / thickness**2 * 25.4}


def longitudinal_bow(given):
    """D = 0.005 Aw L^2 d / I. Source: blodgett (recalled)."""
    return {"movement_mm": 0.005 * given.number("weld-area", "mm2") * given.number("length", "mm") ** 2
            * given.number("eccentricity", "mm") / given.number("second-moment", "mm4")}


def butt_transverse(given):
    """0.1 Aw / t. Source: shrinkage-method-statement (read)."""
    return {"movement_mm": 0.1 * given.number("weld-area", "mm2") / given.number("thickness", "mm")}


def tendon(given):
    """F = 0.2 kN per J/mm. Source: white-leggatt-dwight-1980 (recalled). The force acts along the weld: bow F e L^2/(8 E I),
    shortening F L/(E A). Source: derived: beam under a constant moment and a constant force."""
    force = 0.2 * given.number("heat-input", "kJ/mm") * 1000 * 1000
    modulus = given.number("modulus", "", MODULUS_MPA)
    results = {"force_kN": force / 1000, "movement_mm": None, "bow_mm": None, "shortening_mm": None}
    if "eccentricity" in given:
        results["bow_mm"] = force * given.number("eccentricity", "mm") * given.number("length", "mm") ** 2 / (
            8 * modulus * given.number("second-moment", "mm4"))
    if "section-area" in given:
        results["shortening_mm"] = force * given.number("length", "mm") / (modulus * given.number("section-area", "mm2"))
    return results


def distortion(given):
    return {"fillet-angular": fillet_angular, "longitudinal-bow": longitudinal_bow, "butt-transverse": butt_transverse,
            "tendon": tendon}[given.text("type")](given)
