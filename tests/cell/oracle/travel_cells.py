#!/usr/bin/env python3
"""Proves the optima of small cells with a load orientation, tracks, ways over a clearance and torches that keep a
distance, by trying every order, robot and direction. Written apart from the program: it has the rules alone (up,
over, down by trapezoids; the base opposite the torch; all robots home for a turn), finds forbidden delays by
bisection, and draws its cells from a generator of its own, which travel_oracle_test.cpp has again.

python3 travel_cells.py > travel_optima.csv   (about two minutes)
"""
import itertools
import math

CELLS = 12
START_S, END_S, SPEED_MM_S = 0.5, 1.0, 10.0
WRIST_S, AIR_MM_S, AIR_MM_S2 = 0.25, 1000.0, 4000.0
AXES = {"up": (0, 0), "down": (180, 0), "left": (90, 45)}
AXIS_DEG_S, SETTLE_S = (30, 20), 1.0
HOMES = ((-200.0, -300.0, 500.0), (700.0, -300.0, 500.0))
APPROACH_MM, CLEARANCE_MM, DISTANCE_MM = 40.0, 500.0, 300.0
TRACK = (-500.0, 2000.0, 400.0, 400.0)  # from, to, speed, acceleration, along x; the base is at x = 0


class Draws:
    def __init__(self, seed):
        self.state = seed

    def below(self, count):
        self.state = (self.state * 1664525 + 1013904223) % 2**32
        return (self.state >> 16) % count


class Cell:
    def __init__(self, number):
        kind, draws = number % 4, Draws(7000 + number)
        self.robots = 1 if kind < 2 else 2
        self.load = kind != 2
        self.travels = kind in (1, 3)  # track, approach and clearance
        self.apart = kind >= 2
        self.seams = []
        for _ in range(5 if kind < 2 else 4):
            if self.apart:
                begin = [draws.below(20) * 25.0, draws.below(10) * 25.0, 0.0]
            else:
                begin = [draws.below(60) * 25.0, draws.below(30) * 25.0, draws.below(10) * 25.0]
            end = list(begin)
            axis = draws.below(2)
            end[axis] += (4 + draws.below(20)) * 10.0
            fixed = draws.below(4) == 0
            pose = draws.below(3 if kind < 2 else 2)
            who = draws.below(3)
            self.seams.append({
                "ends": (tuple(begin), tuple(end)),
                "fixed": fixed,
                "pose": ("up", "down", "left")[pose] if self.load else None,
                "robots": (0,) if self.robots == 1 else ((0,), (1,), (0, 1))[who],
            })
        self.forbidden = {}


def trapezoid_s(way, speed, acceleration):
    ramp_s = min(speed / acceleration, math.sqrt(way / acceleration))
    peak = ramp_s * acceleration
    cruise = way - peak * ramp_s
    return 2 * ramp_s + (cruise / peak if peak > 0 and cruise > 0 else 0)


def air_s(cell, a, a_at_seam, b, b_at_seam):
    def over(p, q):
        return trapezoid_s(math.dist(p, q), AIR_MM_S, AIR_MM_S2)

    if not cell.travels:
        return over(a, b) + WRIST_S
    if math.dist(a, b) < 1e-6:
        return WRIST_S
    raised_a = (a[0], a[1], max(a[2] + (APPROACH_MM if a_at_seam else 0), CLEARANCE_MM))
    raised_b = (b[0], b[1], max(b[2] + (APPROACH_MM if b_at_seam else 0), CLEARANCE_MM))
    torch_s = over(a, raised_a) + over(raised_a, raised_b) + WRIST_S + over(raised_b, b)
    base = [min(max(p[0], TRACK[0]), TRACK[1]) for p in (a, b)]
    return max(torch_s, trapezoid_s(abs(base[0] - base[1]), TRACK[2], TRACK[3]))


def turn_s(a, b):
    if a == b:
        return 0.0
    around = [abs((x - y + 180) % 360 - 180) for x, y in zip(AXES[a], AXES[b])]
    return max(angle / speed for angle, speed in zip(around, AXIS_DEG_S)) + SETTLE_S


def least_distance_mm(a, b, delay_s):
    """Of two torches; the arc of a begins delay_s after that of b. Sampled by golden section: the distance of two
    points in straight uniform motion is convex in time."""
    arc_a, arc_b = math.dist(*a) / SPEED_MM_S, math.dist(*b) / SPEED_MM_S
    low, high = max(0.0, delay_s), min(arc_b, arc_a + delay_s)
    if low >= high:
        return math.inf

    def apart(time_s):
        p = [x + (y - x) * (time_s - delay_s) / arc_a for x, y in zip(*a)]
        q = [x + (y - x) * time_s / arc_b for x, y in zip(*b)]
        return math.dist(p, q)

    golden = (math.sqrt(5) - 1) / 2
    for _ in range(60):
        c, d = high - golden * (high - low), low + golden * (high - low)
        if apart(c) < apart(d):
            high = d
        else:
            low = c
    return apart((low + high) / 2)


def forbidden(cell, a, a_reversed, b, b_reversed):
    """The range of delays of a's arc after b's, or None."""
    key = (a, a_reversed, b, b_reversed)
    if key in cell.forbidden:
        return cell.forbidden[key]
    path_a = cell.seams[a]["ends"][:: -1 if a_reversed else 1]
    path_b = cell.seams[b]["ends"][:: -1 if b_reversed else 1]
    first, last = -math.dist(*path_a) / SPEED_MM_S, math.dist(*path_b) / SPEED_MM_S
    grid = [first + (last - first) * i / 600 for i in range(1, 600)]
    near = [t for t in grid if least_distance_mm(path_a, path_b, t) < DISTANCE_MM]
    found = None
    if near:
        ends = []
        for inside, outside in ((near[0], near[0] - (last - first) / 600), (near[-1], near[-1] + (last - first) / 600)):
            for _ in range(60):
                middle = (inside + outside) / 2
                if least_distance_mm(path_a, path_b, middle) < DISTANCE_MM:
                    inside = middle
                else:
                    outside = middle
            ends.append(outside)
        found = tuple(ends)
    cell.forbidden[key] = found
    return found


def makespan_s(cell, steps, table):
    free = [0.0] * cell.robots
    at = [("home", r) for r in range(cell.robots)]
    pose, turned = ("up" if cell.load else None), 0.0
    arcs = []

    def home_s(r):
        return free[r] if at[r][0] == "home" else free[r] + table[(at[r], ("home", r))]

    for seam, robot, is_reversed in steps:
        wanted = cell.seams[seam]["pose"]
        leave = max(free[robot], turned)
        if wanted and pose and wanted != pose:
            away = max([turned] + [home_s(r) for r in range(cell.robots)])
            for r in range(cell.robots):
                free[r] = home_s(r)
                at[r] = ("home", r)
            turned = away + turn_s(pose, wanted)
            leave = max(leave, turned)
        if wanted:
            pose = wanted
        entry, leaving = ("seam", seam, int(is_reversed)), ("seam", seam, 1 - int(is_reversed))
        begin = leave + table[(at[robot], entry)]
        if cell.apart:
            moved = True
            while moved:
                moved = False
                for other, other_robot, other_reversed, other_arc in arcs:
                    if other_robot == robot:
                        continue
                    ban = forbidden(cell, seam, is_reversed, other, other_reversed)
                    if ban and ban[0] + 1e-9 < begin + START_S - other_arc < ban[1] - 1e-9:
                        begin = other_arc + ban[1] - START_S
                        moved = True
        arcs.append((seam, robot, is_reversed, begin + START_S))
        free[robot] = begin + START_S + math.dist(*cell.seams[seam]["ends"]) / SPEED_MM_S + END_S
        at[robot] = leaving
    last = max(home_s(r) for r in range(cell.robots))
    return last + (turn_s(pose, "up") if cell.load else 0.0)


def optimum_s(cell):
    places = {("home", r): (HOMES[r], False) for r in range(cell.robots)}
    for i, seam in enumerate(cell.seams):
        for end in (0, 1):
            places[("seam", i, end)] = (seam["ends"][end], True)
    table = {(a, b): air_s(cell, *places[a], *places[b]) for a in places for b in places}
    best = math.inf
    choices = [[(i, r, d) for r in seam["robots"] for d in ((False,) if seam["fixed"] else (False, True))]
               for i, seam in enumerate(cell.seams)]
    for order in itertools.permutations(range(len(cell.seams))):
        for steps in itertools.product(*(choices[i] for i in order)):
            best = min(best, makespan_s(cell, steps, table))
    return best


if __name__ == "__main__":
    print("cell,robots,seams,optimum_s")
    for number in range(CELLS):
        cell = Cell(number)
        print(f"{number},{cell.robots},{len(cell.seams)},{optimum_s(cell):.6f}", flush=True)
