#!/usr/bin/env python3
"""The line of line_bench "shifts+varying" with SimPy 4: 10 stations, buffers of 3, two shifts a day, log-normal work.

  line_simpy.py [UNITS]

Prints the time of the run alone (drawing isn't in it) and the makespan on the clock, which is that of line_bench: the
draws are the same ones.
"""
import bisect
import math
import statistics
import sys
import time

import simpy

MASK = (1 << 64) - 1
STATIONS, BUFFER, CV, SEED, WORK_TIME = 10, 3, 0.2, 1, 3
DAY, WEEK = 86400.0, 7 * 86400.0


def split_mix(x):
    x = (x + 0x9E3779B97F4A7C15) & MASK
    x = ((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9) & MASK
    x = ((x ^ (x >> 27)) * 0x94D049BB133111EB) & MASK
    return x ^ (x >> 31)


def mean_s(unit, station):
    x = ((unit * 10 + station + 1) * 0x9E3779B97F4A7C15) & MASK
    x ^= x >> 30
    x = (x * 0xBF58476D1CE4E5B9) & MASK
    x ^= x >> 27
    return 600 * (0.8 + 0.7 * ((x >> 11) * 2.0**-53))


def drawn_times(units):
    normal = statistics.NormalDist()
    sigma = math.sqrt(math.log1p(CV * CV))
    keys = [split_mix((split_mix((split_mix(SEED) + j) & MASK) + WORK_TIME) & MASK) for j in range(STATIONS)]
    rows = []
    for unit in range(units):
        row = []
        for station in range(STATIONS):
            u = ((split_mix(keys[station] ^ (unit << 32)) >> 11) + 1) * 2.0**-53
            z = normal.inv_cdf(min(u, 1 - 2.0**-53))
            row.append(mean_s(unit, station) * math.exp(sigma * (z - sigma / 2)))
        rows.append(row)
    return rows


class Shifts:
    """Monday to Friday 06:00 to 22:00 with two breaks; time 0 is Monday 06:00."""

    def __init__(self):
        hours = [(6.0, 10.0), (10.5, 18.0), (18.5, 22.0)]
        self.begin = [d * DAY + (a - 6) * 3600 for d in range(5) for a, _ in hours]
        self.end = [d * DAY + (b - 6) * 3600 for d in range(5) for _, b in hours]

    def duration(self, now, work):
        """How long it takes from now until so much is worked."""
        week = math.floor(now / WEEK) * WEEK
        i = bisect.bisect_right(self.begin, now - week) - 1
        at = now
        while True:
            end = week + self.end[i]
            if at < end:
                if work <= end - at:
                    return at + work - now
                work -= end - at
            i += 1
            if i == len(self.begin):
                i, week = 0, week + WEEK
            at = week + self.begin[i]


def unit_of(env, times, stations, buffers, shifts):
    here = stations[0].request()
    yield here
    for j in range(STATIONS):
        yield env.timeout(shifts.duration(env.now, times[j]))
        if j + 1 == STATIONS:
            stations[j].release(here)
            return
        place = buffers[j].request()
        yield place
        stations[j].release(here)
        here = stations[j + 1].request()
        yield here
        buffers[j].release(place)


def main():
    units = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    rows = drawn_times(units)
    env = simpy.Environment()
    stations = [simpy.Resource(env, 1) for _ in range(STATIONS)]
    buffers = [simpy.Resource(env, BUFFER) for _ in range(STATIONS)]
    shifts = Shifts()
    begin = time.perf_counter()
    for row in rows:
        env.process(unit_of(env, row, stations, buffers, shifts))
    env.run()
    seconds = time.perf_counter() - begin
    print(f"simpy {simpy.__version__} shifts+varying {units} units\t{seconds:.2f} s\t"
          f"{units / seconds:.0f} units/s\tmakespan {env.now:.9g}")


if __name__ == "__main__":
    main()
