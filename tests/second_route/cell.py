"""Power source, moves, takt."""
from calculus import root


def duty_cycle(given):
    """The heat in the source is proportional to I^2 times the share of time. Source: power-source-manuals, duty-cycle
    page (read); no share is above 100 %."""
    heat = given.number("rated-current") ** 2 * given.number("rated-duty")
    if "duty" in given:
        return {"current_A": (heat / given.number("duty")) ** 0.5}
    return {"duty_pct": min(100.0, heat / given.number("current") ** 2)}


def move_time(given):
    """From rest to rest with constant acceleration and deceleration, no faster than the speed. Source: derived."""
    distance, speed = given.number("distance", "mm"), given.number("speed", "mm/s")
    up = given.number("acceleration")
    down = given.number("deceleration", "", up)

    def ramps(reached):
        return reached**2 / (2 * up) + reached**2 / (2 * down)

    reached = speed if ramps(speed) <= distance else root(lambda v: ramps(v) - distance, 0.0, speed)
    return {"reached_speed_mm_s": reached,
            "time_s": reached / up + (distance - ramps(reached)) / reached + reached / down}


def takt(given):
    """Time there is over pieces asked for. Source: derived: definition."""
    takt_s = given.number("available", "h") * 3600 / given.number("demand")
    return {"takt_s": takt_s, "units_per_h": 3600 / takt_s}
