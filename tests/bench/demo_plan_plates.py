"""Plates and hollow sections of the demo's three frames, so that each seam lies on the two that it joins.

Invented, like the frames. Coordinates in mm, as in demo_plan_frames. Where two plates meet at a corner both run
through it; where a seam runs over the edge of a section, the plate under it goes on a little.
"""

X, Y, Z = (1, 0, 0), (0, 1, 0), (0, 0, 1)


class Solids:
    """Collects a weldment's plates and tubes; each gets a number after its name."""

    def __init__(self):
        self.plates, self.tubes, self.counts = [], [], {}

    def name(self, stem):
        self.counts[stem] = self.counts.get(stem, 0) + 1
        return f"{stem}-{self.counts[stem]}"

    def plate(self, stem, part, origin, u, v, outline, thickness, holes=()):
        item = {"id": self.name(stem)}
        if part:
            item["part"] = part
        item.update({"origin_mm": list(origin), "u": list(u), "v": list(v),
                     "outline_mm": [list(corner) for corner in outline], "thickness_mm": thickness})
        if holes:
            item["holes"] = [{"outline_mm": [list(corner) for corner in hole]} for hole in holes]
        self.plates.append(item)

    def flat(self, stem, part, x, y, z, holes=()):
        """A rectangular plate between two coordinates along each axis; its thickness is the least of the three
        ways. Holes: (from, to) along the two other axes, in the order of their letters."""
        ways = [b - a for a, b in (x, y, z)]
        through = ways.index(min(ways))
        # u x v points along the thickness: y, z for x; z, x for y; x, y for z.
        u, v = ((Y, Z), (Z, X), (X, Y))[through]
        wide, high = ways[(through + 1) % 3], ways[(through + 2) % 3]
        origin = (x[0], y[0], z[0])
        cut = []
        for hole in holes:
            spans = list(hole) if through != 1 else [hole[1], hole[0]]
            (a, b), (c, d) = [[edge - origin[(through + 1 + k) % 3] for edge in span] for k, span in enumerate(spans)]
            cut.append([[a, c], [b, c], [b, d], [a, d]])
        self.plate(stem, part, origin, u, v, [[0, 0], [wide, 0], [wide, high], [0, high]], ways[through], cut)

    def gusset(self, stem, part, origin, u, v, legs, thickness):
        """A triangle with its right angle at the origin."""
        self.plate(stem, part, origin, u, v, [[0, 0], [legs[0], 0], [0, legs[1]]], thickness)

    def beam(self, stem, part, begin, end, b, h, t, r):
        """A rectangular hollow section."""
        item = {"id": self.name(stem)}
        if part:
            item["part"] = part
        item.update({"axis_mm": [list(begin), list(end)],
                     "section": {"kind": "rect", "b_mm": b, "h_mm": h, "t_mm": t, "r_mm": r}})
        self.tubes.append(item)


def outward(y, inner, by):
    """From a rail's inner face outward by some way, as (low, high)."""
    return (inner - by, inner) if y < 750 else (inner, inner + by)


def rail(s, part, y, top, length, splice, strips, flange, deck):
    """A box of four plates, 60 mm wide, its inner web in two parts, with the deck's strips on it. The upper flange
    reaches 10 mm inward, under the strips' welds."""
    side = "left" if y < 750 else "right"
    outer = outward(y, y, 60)
    inner_web, outer_web = outward(y, y, 8), ((outer[0], outer[0] + 8) if y < 750 else (outer[1] - 8, outer[1]))
    for x in ((0, splice), (splice, length)):
        s.flat(f"rail-{side}-inner", part, x, inner_web, (0, top))
    s.flat(f"rail-{side}-outer", part, (0, length), outer_web, (0, top))
    over = (outer[0], outer[1] + 10) if y < 750 else (outer[0] - 10, outer[1])
    s.flat(f"rail-{side}-top", part, (0, length), over, (top - flange, top))
    s.flat(f"rail-{side}-bottom", part, (0, length), outer, (0, flange))
    for x in strips:
        s.flat(f"strip-{side}", part.split("-")[0] + "-strip", x, outward(y, y, 50), (top, top + deck))


def corner_gusset(s, part, x, y, z, reach, thickness):
    """Level, in the corner of a rail and a cross member; reach is signed along x and y."""
    if reach[0] * reach[1] > 0:
        s.gusset("gusset", part, (x, y, z), (reach[0] // abs(reach[0]), 0, 0), (0, reach[1] // abs(reach[1]), 0),
                 (abs(reach[0]), abs(reach[1])), thickness)
    else:
        s.gusset("gusset", part, (x, y, z), (0, reach[1] // abs(reach[1]), 0), (reach[0] // abs(reach[0]), 0, 0),
                 (abs(reach[1]), abs(reach[0])), thickness)


def dolly():
    s = Solids()
    for y in (200, 1300):
        rail(s, "BD-rail", y, 120, 3000, 1150, ((60, 1470), (1530, 2940)), 6, 5)
    for x in (820, 1500, 2180):
        s.beam("cross", "BD-cross", (x, 200, 55), (x, 1300, 55), 80, 90, 6, 8)
    # The outer plate of the two end members is higher: hitch and coupling are welded to it.
    for x, outer, inner in ((150, (110, 118), (184, 190)), (2850, (2882, 2890), (2810, 2816))):
        end = "front" if x < 1500 else "rear"
        s.flat(f"cross-{end}-outer", "BD-cross", outer, (200, 1300), (10, 115))
        s.flat(f"cross-{end}-inner", "BD-cross", inner, (200, 1300), (10, 100))
        s.flat(f"cross-{end}-top", "BD-cross", (x - 40, x + 40), (200, 1300), (94, 100))
        s.flat(f"cross-{end}-bottom", "BD-cross", (x - 40, x + 40), (200, 1300), (10, 16))
    s.flat("hitch", "BD-hitch", (98, 110), (550, 950), (20, 110))
    for x, inward in ((190, 130), (2810, -130)):
        for y, across in ((200, 130), (1300, -130)):
            corner_gusset(s, "BD-gusset", x, y, 46, (inward, across), 8)
    for x in (600, 2400):
        for y in ((130, 140), (1360, 1370)):
            s.flat("axle-bracket", "BD-axle-bracket", (x - 60, x + 60), y, (10, 110))
    for y in ((640, 652), (848, 860)):
        s.flat("coupling", "BD-coupling", (2890, 2990), y, (20, 110))
    return s


def tractor():
    s = Solids()
    s.flat("belly", "TT-belly", (20, 2980), (138, 1162), (0, 12))
    # A lug is set into the left side plate.
    s.flat("side-left", "TT-side", (20, 700), (138, 150), (0, 270), [((60, 140), (30, 250))])
    s.flat("side-left", "TT-side", (700, 2980), (138, 150), (0, 270))
    s.flat("side-right", "TT-side", (20, 2980), (1150, 1162), (0, 270))
    for x in (400, 1000, 1700, 2400):
        s.flat("cross", "TT-cross", (x - 6, x + 6), (150, 1150), (12, 260))
    s.flat("end", "TT-hitch-plate", (0, 20), (138, 1162), (0, 270))
    s.flat("bumper", "TT-bumper", (2980, 2995), (138, 1162), (0, 270))
    for x in (550, 2200):
        s.gusset("gusset", "TT-gusset", (x - 5, 150, 12), Y, Z, (150, 158), 10)
        s.gusset("gusset", "TT-gusset", (x - 5, 1150, 12), Z, (0, -1, 0), (158, 150), 10)
    for x in (800, 2050):
        for y in ((126, 138), (1162, 1174)):
            s.flat("axle-pad", "TT-axle-pad", (x - 90, x + 90), y, (60, 200))
    for y in (400, 650, 900):
        s.flat("stiffener", "TT-stiffener", (1740, 2360), (y - 4, y + 4), (12, 100))
    for y in (480, 820):
        s.flat("post", "TT-post", (260, 272), (y - 60, y + 60), (12, 212))
        s.flat("post-rib", "TT-post", (180, 260), (y, y + 12), (12, 212))
    s.flat("hitch-plate", "TT-hitch-plate", (-20, 0), (450, 850), (60, 260))
    for y in (560, 740):
        s.flat("cheek", "TT-cheek", (-120, -20), (y - 10, y + 10), (90, 250))
    s.flat("lug", "TT-lug", (60, 140), (140, 152), (30, 250))
    s.flat("lug", "TT-lug", (100, 112), (60, 140), (40, 240))
    for x in (300, 2700):
        s.flat("belly-pad", None, (x - 60, x + 60), (650, 670), (12, 24))
    return s


def loader():
    s = Solids()
    for y in (250, 1350):
        rail(s, "BL-rail", y, 160, 6000, 1650, ((80, 1960), (2040, 2980), (3020, 5920)), 8, 6)
    for x in (300, 1200, 2100, 3000, 3900, 4800, 5700):
        s.beam("cross", "BL-cross", (x, 250, 75), (x, 1350, 75), 100, 130, 8, 10)
    for x in (700, 5100):
        for y in ((178, 190), (1410, 1422)):
            s.flat("outer-pad", None, (x - 100, x + 100), y, (10, 150))
    for x in (900, 4500):
        for y in (520, 1080):
            s.flat("pivot-base", None, (x - 20, x + 260), (y - 60, y + 60), (152, 160))
            s.flat("pivot", "BL-pivot", (x, x + 240), (y - 6, y + 6), (160, 300))
    s.flat("cylinder-base", "BL-cylinder-plate", (5180, 5580), (540, 1060), (0, 12))
    for y in ((560, 572), (708, 720), (880, 892), (1028, 1040)):
        s.flat("cylinder-plate", "BL-cylinder-plate", (5200, 5560), y, (12, 130))
    for x, inward in ((350, 160), (5650, -160)):
        for y, across in ((250, 160), (1350, -160)):
            corner_gusset(s, "BL-gusset", x, y, 66, (inward, across), 8)
    s.flat("rear", None, (5952, 5960), (250, 1350), (0, 160))
    for y in ((720, 732), (868, 880)):
        s.flat("fork-plate", "BL-fork-plate", (5960, 6100), y, (20, 140))
    for x in (1400, 3300):
        for y in ((184, 190), (1410, 1416)):
            s.flat("step", "BL-step", (x, x + 200), y, (40, 140))
    return s


SOLIDS = {"BD": dolly, "TT": tractor, "BL": loader}
