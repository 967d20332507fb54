"""Measured values: guard bands, waveforms, uncertainties."""
import csv
import math
import pathlib

from calculus import integral, slope
from heat import THERMAL_EFFICIENCY

HERE = pathlib.Path(__file__).resolve().parent

# What the records in waveforms/ are of: phases of one period as (seconds, volts from, to, amperes from, to), and periods.
ARC_V, ARC_OHM = 18.0, 0.03


def _on_arc(seconds, first_A, last_A):
    return seconds, ARC_V + ARC_OHM * first_A, ARC_V + ARC_OHM * last_A, first_A, last_A


WAVEFORMS = {
    "waveforms/pulse_rectangle.csv": ([_on_arc(0.0025, 380, 380), _on_arc(0.0075, 80, 80)], 10),
    "waveforms/pulse_trapezoid.csv": ([_on_arc(0.0005, 60, 400), _on_arc(0.0015, 400, 400), _on_arc(0.0005, 400, 60),
                                       _on_arc(0.005, 60, 60)], 4),
    "waveforms/dip_transfer.csv": ([(0.003, 4, 4, 250, 250), (0.009, 22, 22, 120, 120)], 5),
    "waveforms/constant.csv": ([(3, 24.8, 24.8, 205, 205), (7, 24.8, 24.8, 205, 205)], 1),
}


def corners_of(phases, periods):
    """The samples that say so: each phase's first and last, once where two are the same."""
    corners, time = [], 0.0
    for seconds, first_V, last_V, first_A, last_A in phases * periods:
        if not corners or corners[-1][1:] != (first_V, first_A):
            corners.append((time, first_V, first_A))
        time += seconds
        corners.append((time, last_V, last_A))
    return corners


def checked_samples(name, corners):
    """Number of samples in the file. ValueError where it isn't a record of these corners."""
    with open(HERE / name, encoding="utf-8", newline="") as file:
        rows = [tuple(float(row[column]) for column in ("time", "voltage", "current")) for row in csv.DictReader(file)]
    same = len(rows) == len(corners) and all(
        math.isclose(a, b, rel_tol=1e-9, abs_tol=1e-9) for row, corner in zip(rows, corners) for a, b in zip(row, corner))
    if not same:
        raise ValueError(f"{name} isn't the record that measure.py says it is")
    return len(rows)


def waveform(given):
    """Means over one period, phase by phase. Energy and method B, power and method C: Source: iso-tr-18491 (part read);
    k: Source: en-1011-1, Table 1; root mean square: derived from its definition."""
    name = given.text("file")
    phases, periods = WAVEFORMS[name]
    period_s = sum(phase[0] for phase in phases)

    def mean(of):
        """of(volts, amperes), averaged: each phase is a straight line in time."""
        return sum(phase[0] * integral(lambda u: of(phase[1] + (phase[2] - phase[1]) * u,
                                                    phase[3] + (phase[4] - phase[3]) * u), 0, 1)
                   for phase in phases) / period_s

    current, voltage, power = mean(lambda u, i: i), mean(lambda u, i: u), mean(lambda u, i: u * i)
    results = {"mean_current_A": current, "mean_voltage_V": voltage, "mean_power_W": power,
               "product_power_W": current * voltage, "rms_current_A": math.sqrt(mean(lambda u, i: i * i)),
               "samples": checked_samples(name, corners_of(phases, periods)), "duration_s": periods * period_s,
               "energy_J": power * periods * period_s}
    if "length" in given:
        results["arc_energy_kJ_mm"] = results["energy_J"] / given.number("length", "mm") / 1000
    elif "travel-speed" in given:
        results["arc_energy_kJ_mm"] = power / given.number("travel-speed", "mm/s") / 1000
    k = THERMAL_EFFICIENCY.get(given.text("process"))
    if "arc_energy_kJ_mm" in results:
        results["heat_input_kJ_mm"] = None if k is None else k * results["arc_energy_kJ_mm"]
    return results


def guard_band(given):
    """Source: ilac-g8, 4.2.2: the limits are drawn in by w = U = 2 u (read)."""
    value, guard = given.number("value"), 2 * given.number("u")
    lower = given.number("lower") if "lower" in given else None
    upper = given.number("upper") if "upper" in given else None
    acceptance = [None if lower is None else lower + guard, None if upper is None else upper - guard]

    def within(low, high):
        # A value on the drawn-in limit passes, however that was rounded.
        return (low is None or value >= low - 1e-12) and (high is None or value <= high + 1e-12)

    verdict = "pass" if within(*acceptance) else "undecided" if within(lower, upper) else "fail"
    return {"acceptance": acceptance, "verdict": verdict}


def standard_uncertainty(results_of, given, key):
    """Source: jcgm-100, 5.1.2: the inputs' standard uncertainties, each times the result's slope, added as squares; the
    slopes here by differences."""
    total = 0.0
    for name in given.names():
        if name.startswith("u-"):
            u = float(given.text(name))
            total += (u * slope(lambda by: results_of(given.moved(name[2:], by))[key], 0.0, u / 10)) ** 2
    return math.sqrt(total)
