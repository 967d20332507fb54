"""Temperature about a moving source, peak temperature beside the weld."""
import math

from calculus import integral
from heat import CONDUCTIVITY, HEAT_CAPACITY

# degC, plain carbon steel.
# Source: aws-welding-handbook (recalled)
MELTING_C = 1510.0


def bessel_k0(x):
    """Source: abramowitz-stegun, 9.6.24: the integral of exp(-x cosh t) over t > 0. The trapezoidal rule converges
    faster than any power of its step, since all derivatives vanish at both ends."""
    step, total, t = 0.02, 0.5 * math.exp(-x), 0.0
    while True:
        t += step
        term = math.exp(-x * math.cosh(t)) if x * math.cosh(t) < 745 else 0.0
        if term <= 1e-18 * total:
            return total * step
        total += term


def thick_plate_C(q, v, x, y, z, conductivity, heat_capacity, preheat):
    """Source: rosenthal-1946, point source on a thick plate."""
    distance = math.sqrt(x * x + y * y + z * z)
    if distance == 0:
        return None
    fading = v * heat_capacity / (2 * conductivity)
    return preheat + q / (2 * math.pi * conductivity * distance) * math.exp(-fading * (x + distance))


def thin_plate_C(q, v, x, y, thickness, conductivity, heat_capacity, preheat):
    """Source: rykalin-1957, line source through a thin plate."""
    fading, distance = v * heat_capacity / (2 * conductivity), math.hypot(x, y)
    if distance == 0:
        return None
    return preheat + q / (2 * math.pi * conductivity * thickness) * math.exp(-fading * x) * bessel_k0(fading * distance)


def plate_C(q, v, x, y, z, thickness, conductivity, heat_capacity, preheat):
    """A plate between two faces that let no heat through: the cosine series across the thickness (the program sums
    images of the source). Source: grong-1997, chapter 1; the series: derived from the same equation."""
    fading, distance = v * heat_capacity / (2 * conductivity), math.hypot(x, y)
    total, m = bessel_k0(fading * distance), 0
    while True:
        m += 1
        term = 2 * bessel_k0(distance * math.hypot(fading, m * math.pi / thickness))
        total += term * math.cos(m * math.pi * z / thickness)
        if term < 1e-15 * abs(total):
            break
    return preheat + q / (2 * math.pi * conductivity * thickness) * math.exp(-fading * x) * total


def ellipsoid_C(q, v, ahead, across, down, a, b, front, rear, f_front, time, conductivity, heat_capacity, preheat):
    """A double ellipsoid that has moved for `time` over a half-space: what each instant and each slice of the source
    has left, summed up; no closed form along the travel, so that the correction of it is checked.
    Source: goldak-1984, density of the source; the heat kernel of a half-space from any textbook."""
    diffusivity = conductivity / heat_capacity

    def slices(age):
        """What the slices along the travel, each smeared by a Gaussian of the age, give at the point."""
        blur, centre = math.sqrt(4 * diffusivity * age), ahead + v * age
        total = 0.0
        for share, length, side in ((f_front, front, 1), (2 - f_front, rear, -1)):
            # Slices at u from the source's middle: side * u > 0. Their kernel is exp(-((centre - u)/blur)^2).
            low, high = max(0.0, side * centre - 7 * blur), min(4 * length, side * centre + 7 * blur)
            if high > low:
                total += share / length * integral(
                    lambda u: math.exp(-3 * (u / length) ** 2 - ((side * centre - u) / blur) ** 2), low, high, 2)
        return total / (math.sqrt(math.pi) * blur)

    def left_of(age):
        """Temperature that the heat of one instant has left, per second of it."""
        wide, deep = a * a + 12 * diffusivity * age, b * b + 12 * diffusivity * age
        section = a * b / math.sqrt(wide * deep) * math.exp(-3 * across**2 / wide - 3 * down**2 / deep)
        return section * slices(age)

    # age = time u^3: the young ages, where things change quickly, are spread out.
    summed = integral(lambda u: left_of(time * u**3) * 3 * time * u**2, 0, 1, 12)
    density = 6 * math.sqrt(3) * q / (math.pi * math.sqrt(math.pi) * a * b)
    return preheat + density * summed / heat_capacity


def temperature(given):
    """Inside the pool a point or line source has no temperature to speak of: null."""
    conductivity = given.number("conductivity", "", CONDUCTIVITY)
    heat_capacity = given.number("heat-capacity", "", HEAT_CAPACITY)
    preheat = given.number("preheat", "", 20.0)
    q, v = given.number("net-power", "W"), given.number("travel-speed", "mm/s")
    x, y, z = (given.number(name, "mm", 0.0) for name in "xyz")
    material = conductivity, heat_capacity, preheat
    model = given.text("model", "plate" if "thickness" in given else "thick")
    if model == "ellipsoid":
        a, b, front, rear = (given.number(name, "mm") for name in ("a", "b", "c-front", "c-rear"))
        return {"temperature_C": ellipsoid_C(q, v, x, y, z, a, b, front, rear, given.number("f-front"),
                                             given.number("time", "s"), *material)}
    if model == "thick":
        found = thick_plate_C(q, v, x, y, z, *material)
    elif model == "thin":
        found = thin_plate_C(q, v, x, y, given.number("thickness", "mm"), *material)
    else:
        found = plate_C(q, v, x, y, z, given.number("thickness", "mm"), *material)
    inside = found is not None and found >= given.number("melting", "", MELTING_C)
    return {"temperature_C": None if inside else found}


def haz_width(given):
    """Distance from the fusion line at which the peak temperature is reached, or the peak at a distance.
    Source: adams, thin plate: 1/(Tp-T0) = sqrt(2 pi e) rho_c d Y/(q/v) + 1/(Tm-T0);
    rykalin-1957, fast source on a thick plate: Tp-T0 = 2/(pi e) (q/v)/(rho_c r^2), r from the source."""
    per_length = 1000 * given.number("heat-input", "kJ/mm")
    preheat, melting = given.number("preheat", "", 20.0), given.number("melting", "", MELTING_C)
    peak = given.number("peak", "", 730.0)
    if "thickness" in given:
        growth = math.sqrt(2 * math.pi * math.e) * HEAT_CAPACITY * given.number("thickness", "mm") / per_length
        if "distance" in given:
            return {"peak_temperature_C": preheat + 1 / (growth * given.number("distance", "mm") + 1 / (melting - preheat))}
        return {"distance_mm": (1 / (peak - preheat) - 1 / (melting - preheat)) / growth}
    spread = 2 / (math.pi * math.e) * per_length / HEAT_CAPACITY
    fusion_line = math.sqrt(spread / (melting - preheat))
    if "distance" in given:
        return {"peak_temperature_C": preheat + spread / (fusion_line + given.number("distance", "mm")) ** 2}
    return {"distance_mm": math.sqrt(spread / (peak - preheat)) - fusion_line}
