"""Carbon equivalents, preheat, hardness of the heat-affected zone. Compositions in mass %."""
import math


def carbon_equivalents(x):
    """CE_IIW and CET: Source: en-1011-2, Annex C (read). Pcm: Source: ito-bessyo-1968 (part read).
    CEN: Source: yurioka-1983 (part read)."""
    accommodation = 0.75 + 0.25 * math.tanh(20 * (x["C"] - 0.12))
    return {
        "CE_IIW": x["C"] + x["Mn"] / 6 + (x["Cr"] + x["Mo"] + x["V"]) / 5 + (x["Ni"] + x["Cu"]) / 15,
        "CET": x["C"] + (x["Mn"] + x["Mo"]) / 10 + (x["Cr"] + x["Cu"]) / 20 + x["Ni"] / 40,
        "Pcm": x["C"] + x["Si"] / 30 + (x["Mn"] + x["Cu"] + x["Cr"]) / 20 + x["Ni"] / 60 + x["Mo"] / 15 + x["V"] / 10
        + 5 * x["B"],
        "CEN": x["C"] + accommodation * (x["Si"] / 24 + x["Mn"] / 6 + x["Cu"] / 15 + x["Ni"] / 20
                                         + (x["Cr"] + x["Mo"] + x["Nb"] + x["V"]) / 5 + 5 * x["B"]),
    }


def carbon_equivalent(given):
    return carbon_equivalents(given.composition())


def cet_used(given):
    """Source: en-1011-2, Annex C.3: the parent metal's; where that exceeds the weld metal's by less than 0.03, the
    weld metal's and 0.03. A parent metal below the weld metal isn't in the rows here."""
    parent = given.number("cet") if "cet" in given else carbon_equivalents(given.composition())["CET"]
    if "weld-metal-cet" in given and 0 <= parent - given.number("weld-metal-cet") < 0.03:
        return given.number("weld-metal-cet") + 0.03
    return parent


def preheat(given):
    """Source: en-1011-2, Annex C.3, equation C.8 (read), thickness of the plate in mm, hydrogen in ml/100 g, heat input
    in kJ/mm; aws-d1-1, hydrogen control (recalled): index 12 Pcm + log10 of the hydrogen of the level."""
    if given.text("method") == "aws-hydrogen":
        of_level = {"H1": 5, "H2": 10, "H3": 30}.get(given.text("hydrogen-level"))
        hydrogen = given.number("hydrogen", "", of_level)
        return {"susceptibility_index": 12 * given.number("pcm") + math.log10(hydrogen)}
    cet = cet_used(given)
    if "heat-input" not in given:
        return {"cet_used": cet}
    at_C = (697 * cet + 160 * math.tanh(given.number("thickness", "mm") / 35) + 62 * given.number("hydrogen") ** 0.35
            + (53 * cet - 32) * given.number("heat-input", "kJ/mm") - 328)
    return {"cet_used": cet, "preheat_C": at_C}


def yurioka_HV(x, cooling_time_s):
    """Martensite, bainite and, where the cooling time is given, the hardness between them. No boron in the rows here.
    Source: yurioka-1987 (recalled)."""
    carbon = x["C"] if x["C"] <= 0.3 else x["C"] / 6 + 0.25
    first = (carbon + x["Si"] / 24 + x["Mn"] / 6 + x["Cu"] / 15 + x["Ni"] / 12
             + x["Cr"] * (1 - 0.16 * math.sqrt(x["Cr"])) / 8 + x["Mo"] / 4)
    second = (x["C"] + x["Si"] / 24 + x["Mn"] / 5 + x["Cu"] / 10 + x["Ni"] / 18 + x["Cr"] / 5 + x["Mo"] / 2.5 + x["V"] / 5
              + x["Nb"] / 3)
    third = carbon + x["Mn"] / 3.6 + x["Cu"] / 20 + x["Ni"] / 9 + x["Cr"] / 5 + x["Mo"] / 4
    martensite = 884 * x["C"] * (1 - 0.3 * x["C"] ** 2) + 294
    bainite = 145 + 130 * math.tanh(2.65 * second - 0.69)
    if cooling_time_s is None:
        return martensite, bainite, None
    all_martensite_s, no_martensite_s = math.exp(10.6 * first - 4.8), math.exp(6.2 * third + 0.74)
    place = 4 * math.log(cooling_time_s / all_martensite_s) / math.log(no_martensite_s / all_martensite_s) - 2
    between = (martensite + bainite) / 2 - (martensite - bainite) / 2.2 * math.atan(place)
    return martensite, bainite, min(martensite, max(bainite, between))


def dueren_HV(x, cooling_time_s):
    """Source: dueren (recalled)."""
    alloy = x["Si"] / 11 + x["Mn"] / 8 + x["Cu"] / 9 + x["Cr"] / 5 + x["Ni"] / 17 + x["Mo"] / 6 + x["V"] / 3
    martensite, bainite = 802 * x["C"] + 305, 350 * (x["C"] + alloy) + 101
    if cooling_time_s is None:
        return martensite, bainite, None
    log_time = math.log10(cooling_time_s)
    mixed = 2019 * (x["C"] * (1 - 0.5 * log_time) + 0.3 * alloy) + 66 * (1 - 0.8 * log_time)
    return martensite, bainite, min(martensite, max(bainite, mixed))


def haz_hardness(given):
    method = dueren_HV if given.text("method") == "dueren" else yurioka_HV
    time = given.number("cooling-time", "s") if "cooling-time" in given else None
    martensite, bainite, hardness = method(given.composition(), time)
    return {"martensite_hardness_HV": martensite, "bainite_hardness_HV": bainite, "hardness_HV": hardness}
