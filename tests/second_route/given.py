"""What a row gives: "thickness=10; preheat=100 C; cyclic" as numbers in the units that a formula asks for."""
import re

# unit: (dimension, size in the dimension's first unit)
UNITS = {
    "mm": ("length", 1), "cm": ("length", 10), "in": ("length", 25.4),
    "mm2": ("area", 1), "in2": ("area", 25.4**2),
    "mm4": ("second moment", 1), "in4": ("second moment", 25.4**4),
    "s": ("time", 1), "min": ("time", 60), "h": ("time", 3600),
    "mm/s": ("speed", 1), "cm/min": ("speed", 10 / 60), "m/min": ("speed", 1000 / 60), "in/min": ("speed", 25.4 / 60),
    "J": ("energy", 1), "kJ": ("energy", 1000),
    "W": ("power", 1), "kW": ("power", 1000),
    "N": ("force", 1), "kN": ("force", 1000),
    "J/mm": ("energy per length", 1), "kJ/mm": ("energy per length", 1000),
}


class Given:
    """The inputs of one row. A number without a unit has the unit that it is asked for in, so ask for the
    option's own unit (`seamtakt calc QUANTITY --help`)."""

    def __init__(self, inputs):
        self._texts = {}
        for part in inputs.split(";"):
            name, equals, text = part.partition("=")
            if name.strip():
                self._texts[name.strip()] = text.strip() if equals else "yes"

    def __contains__(self, name):
        return name in self._texts

    def names(self):
        return list(self._texts)

    def text(self, name, default=None):
        return self._texts.get(name, default)

    def number(self, name, unit="", default=None):
        """`default` where the row doesn't give it; KeyError where there is none."""
        if name not in self._texts:
            if default is None:
                raise KeyError(f"{name} isn't given")
            return default
        found = re.fullmatch(r"([-+]?[\d.]+(?:e[-+]?\d+)?)\s*(.*)", self._texts[name])
        if not found:
            raise ValueError(f"{name}={self._texts[name]} is no number")
        value, of_unit = float(found[1]), found[2] or unit
        if of_unit == unit:
            return value
        if UNITS[of_unit][0] != UNITS[unit][0]:
            raise ValueError(f"{name}={self._texts[name]} isn't in a unit of {UNITS[unit][0]}")
        return value * UNITS[of_unit][1] / UNITS[unit][1]

    def moved(self, name, by):
        """The same inputs with the number `name` greater by `by`, in the unit that it has."""
        found = re.fullmatch(r"([-+]?[\d.]+(?:e[-+]?\d+)?)\s*(.*)", self._texts[name])
        other = Given("")
        other._texts = dict(self._texts)
        other._texts[name] = f"{float(found[1]) + by:.17g} {found[2]}"
        return other

    def composition(self):
        """Mass % by element; what isn't named is 0."""
        shares = dict.fromkeys("C Si Mn Cr Ni Cu Mo V Nb B N".split(), 0.0)
        for part in self._texts["composition"].split(","):
            element, _, share = part.partition("=")
            shares[element.strip()] = float(share)
        return shares


def inches_per_minute(given):
    """Travel speed, whose own unit is mm/s."""
    return given.number("travel-speed", "mm/s") * 60 / 25.4
