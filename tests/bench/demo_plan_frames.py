"""The three frames of the demo: where their seams run. Invented; coordinates in mm, x along, y across, z up.

The robots are at the two ends: R1 (solid wire) welds the side towards x = 0, R2 (metal-cored wire) the rest.
The positioner tilts a frame to the left or to the right, so that upright parts are flat under the torch.
"""

STEEL = {"deck": "S235JR", "rail": "S355MC", "plate": "S355J2"}
FLAT, LEFT, RIGHT = "flat", "tilt-left", "tilt-right"


class Frame:
    """Collects a weldment's seams in the order in which they are drawn."""

    def __init__(self, length_mm):
        self.middle_mm = length_mm / 2
        self.seams = []
        self.zone = []

    def add(self, path, **fields):
        seam = {"id": f"S{len(self.seams) + 1:02d}"}
        seam.update(fields)
        seam["path_mm"] = [[float(c) if c != int(c) else int(c) for c in point] for point in path]
        self.seams.append(seam)
        return seam["id"]

    def robot_of(self, path):
        return "R1" if sum(point[0] for point in path) / len(path) < self.middle_mm else "R2"

    def fillet(self, path, leg, thickness, steels, orientation=FLAT, schedules=None, by=None, middle=False, **more):
        """A fillet in the schedule of its leg, by the robot at its end of the frame."""
        robot = by or self.robot_of(path)
        if schedules is None:
            schedules = {"R1": [f"F{leg}S"], "R2": [f"F{leg}M"], "manual": ["MF5" if leg <= 5 else "MF6"]}[robot]
        fields = {"joint": more.pop("joint", "tee"), "thickness_mm": list(thickness),
                  "base_metals": [STEEL[s] for s in steels], "leg_mm": leg, "gap_mm": more.pop("gap", 0.3),
                  "area_allowance": 1.1, "position": more.pop("position", "PB"), "schedules": schedules}
        fields.update(self.handling(robot, orientation, path))
        fields.update(more)
        fields.setdefault("quality", "C")
        if "throat_mm" in fields:
            del fields["leg_mm"]
        name = self.add(path, **fields)
        if middle:
            self.zone.append(name)
        return name

    def handling(self, robot, orientation, path):
        if robot == "manual":
            return {"by": "manual"}
        long_seam = len(path) == 2 and abs(path[1][0] - path[0][0]) + abs(path[1][1] - path[0][1]) > 500
        return {"sense_points": 3 if long_seam else 2, "tracking": "none", "by": "robot", "robots": [robot],
                "orientation": orientation}

    def butt(self, path, thickness, steels, orientation, cap_mm, schedules):
        fields = {"joint": "butt", "thickness_mm": [thickness, thickness], "base_metals": [STEEL[s] for s in steels],
                  "groove": {"type": "single-v", "angle_deg": 60, "root_gap_mm": 2, "root_face_mm": 1,
                             "cap_height_mm": cap_mm}, "position": "PA", "schedules": schedules}
        fields.update(self.handling("R1", orientation, path))
        fields["quality"] = "B"
        return self.add(path, **fields)


def around_end(x, half_width, y, top, bottom=10):
    """Up one side of a cross member's end, over its top and down the other."""
    return [[x - half_width, y, bottom], [x - half_width, y, top], [x + half_width, y, top], [x + half_width, y, bottom]]


def rectangle(x, y, z, width, height):
    """A pad on an upright face, welded all around, the start in the middle of the lower edge."""
    return [[x, y, z], [x + width / 2, y, z], [x + width / 2, y, z + height], [x - width / 2, y, z + height],
            [x - width / 2, y, z], [x, y, z]]


def tacks(count, leg=3):
    return {"count": count, "length_mm": 20, "leg_mm": leg, "schedule": "TK"}


def dolly():
    """Baggage dolly, 3.0 x 1.5 m: two rails, five cross members, deck strips, hitch, axle brackets."""
    f = Frame(3000)
    rails = {LEFT: 200, RIGHT: 1300}
    for y in rails.values():
        for begin, end in ((60, 1470), (1530, 2940)):
            f.fillet([[begin, y, 120], [end, y, 120]], 4, (6, 5), ("rail", "deck"), balance="deck", throat_mm=3,
                     intermittent={"length_mm": 60, "gap_mm": 90}, tacks=tacks(5))
    hitch = [f.fillet(path, 6, (8, 12), ("rail", "plate"), tacks=tacks(2, 4)) for path in
             ([[110, 550, 110], [110, 950, 110]], [[110, 950, 20], [110, 550, 20]])]
    for y in (550, 950):
        f.fillet([[110, y, 20], [110, y, 110]], 6, (8, 12), ("rail", "plate"), by="manual", position="PF",
                 after=hitch)
    butts = []
    for y, side in ((rails[LEFT], LEFT), (rails[RIGHT], RIGHT)):
        butts.append(f.butt([[1150, y, 0], [1150, y, 120]], 8, ("rail", "rail"), side, 1.2, ["B8R", "B8F", "B8C"]))
    for side, y in rails.items():
        for x in (150, 820, 1500, 2180, 2850):
            f.fillet(around_end(x, 40, y, 100), 5, (8, 6), ("rail", "rail"), side, by="R2" if x == 1500 else None,
                     after=[butts[0 if side == LEFT else 1]] if x == 820 else [], tacks=tacks(2),
                     middle=x in (820, 1500))
    for x, inward in ((190, 130), (2810, -130)):
        for y, across in ((200, 130), (1300, -130)):
            for dz in (46, 54):
                f.fillet([[x + inward, y, dz], [x, y, dz], [x, y + across, dz]], 5, (8, 8), ("rail", "plate"),
                         by="manual" if x > 1500 or dz > 50 else None)
    for x in (600, 2400):
        for side, y in ((RIGHT, 140), (LEFT, 1360)):
            f.fillet(rectangle(x, y, 10, 120, 100), 5, (8, 10), ("rail", "plate"), side, joint="lap", overlap_mm=15,
                     tacks=tacks(2))
    for y in (640, 860):
        f.fillet([[2890, y, 20], [2890, y, 110]], 6, (8, 12), ("rail", "plate"), by="manual", position="PF")
    return f


def tractor():
    """Tow tractor frame, 3.0 x 1.3 m: side plates, belly plate, four cross plates, hitch and bumper plates.

    Drawn assembly by assembly, as designers do: the cell loses time to tilting and to the wire change in this order.
    """
    f = Frame(3000)
    y_of = {LEFT: 150, RIGHT: 1150}
    bays = ((20, 390), (410, 990), (1010, 1690), (1710, 2390), (2410, 2980))
    for i, (begin, end) in enumerate(bays):
        for y in y_of.values():
            f.fillet([[begin, y, 12], [end, y, 12]], 5, (12, 12), ("plate", "plate"), balance=f"bay-{i + 1}",
                     tacks=tacks(3, 4), middle=i == 2)
    for i, x in enumerate((400, 1000, 1700, 2400)):
        for face in (-6, 6):
            f.fillet([[x + face, 160, 12], [x + face, 1140, 12]], 5, (12, 12), ("plate", "plate"), balance=f"cross-{i + 1}",
                     intermittent={"length_mm": 80, "gap_mm": 120}, tacks=tacks(4, 4), middle=i in (1, 2))
    for side, y in y_of.items():
        for i, x in enumerate((400, 1000, 1700, 2400)):
            for face in (-6, 6):
                f.fillet([[x + face, y, 20], [x + face, y, 260]], 5, (12, 12), ("plate", "plate"), side,
                         tacks=tacks(2, 4), middle=i in (1, 2))
        if side == RIGHT:
            f.butt([[700, 138, 0], [700, 138, 260]], 12, ("plate", "plate"), side, 1.5, ["B12R", "B12F", "B12F", "B12C"])
        f.fillet([[20, y, 20], [20, y, 270]], 10, (20, 12), ("plate", "plate"), side, ["F10R", "F10F", "F10C"], gap=0.5,
                 tacks=tacks(3, 5), flange_width_mm=350)
        f.fillet([[2980, y, 20], [2980, y, 270]], 8, (15, 12), ("plate", "plate"), side, tacks=tacks(3, 5))
        outer = 138 if side == RIGHT else 1162
        f.fillet([[1520, outer, 0], [2970, outer, 0]], 5, (12, 12), ("plate", "plate"), side, joint="lap",
                 tacks=tacks(6, 4))
        f.fillet([[30, outer, 0], [1480, outer, 0]], 5, (12, 12), ("plate", "plate"), by="manual", joint="lap",
                 tacks=tacks(6, 4))
    f.fillet([[20, 170, 12], [20, 1130, 12]], 6, (20, 12), ("plate", "plate"), schedules=["MF6H"], by="manual")
    f.fillet([[2980, 170, 12], [2980, 1130, 12]], 8, (15, 12), ("plate", "plate"), tacks=tacks(3, 5))
    for x in (550, 2200):
        for y, across in ((150, 150), (1150, -150)):
            for face in (-5, 5):
                drawn_6 = (x, y, face) == (550, 1150, 5)
                f.fillet([[x + face, y, 170], [x + face, y, 12], [x + face, y + across, 12]], 6 if drawn_6 else 5,
                         (12, 10), ("plate", "plate"), by="manual" if x > 1500 else None,
                         schedules=["F5S"] if drawn_6 else None, gap=0.35 if drawn_6 else 0.3)
    for x in (800, 2050):
        for side, y in ((RIGHT, 138), (LEFT, 1162)):
            f.fillet(rectangle(x, y, 60, 180, 140), 5, (12, 12), ("plate", "plate"), side, joint="lap", overlap_mm=20,
                     tacks=tacks(4, 4))
    for y in (400, 650, 900):
        for face in (-4, 4):
            f.fillet([[1740, y + face, 12], [2360, y + face, 12]], 5, (12, 8), ("plate", "deck"),
                     intermittent={"length_mm": 60, "gap_mm": 80}, balance="stiffeners", tacks=tacks(3))
    for y in (480, 820):
        f.fillet([[260, y, 12], [260, y, 212]], 6, (12, 12), ("plate", "plate"), schedules=["F6F"], by="R1", position="PF",
                 direction="as-drawn")
    for y in (560, 740):
        for face in (-10, 10):
            f.fillet([[-20, y + face, 90], [-20, y + face, 250]], 6, (20, 20), ("plate", "plate"), schedules=["MF6H"],
                     by="manual", position="PF")
    f.fillet([[100, 140, 40], [100, 140, 240]], 6, (12, 12), ("plate", "plate"), by="manual", position="PF")
    for x in (300, 2700):
        f.fillet([[x - 60, 650, 12], [x + 60, 650, 12], [x + 60, 670, 12], [x - 60, 670, 12], [x - 60, 650, 12]], 6,
                 (12, 12), ("plate", "plate"), by="manual", overlap_mm=20)
    return f


def loader():
    """Belt loader base, 6.0 x 1.6 m: two spliced rails, seven cross members, deck strips, pivots, fork plates."""
    f = Frame(6000)
    rails = {LEFT: 250, RIGHT: 1350}
    for side, y in rails.items():
        butt = f.butt([[1650, y, 0], [1650, y, 160]], 8, ("rail", "rail"), side, 1.2, ["B8R", "B8F", "B8C"])
        for x in (300, 1200, 2100, 3000, 3900, 4800, 5700):
            f.fillet(around_end(x, 50, y, 140), 5, (8, 8), ("rail", "rail"), side, tacks=tacks(3),
                     by="R2" if x >= 2100 else None, after=[butt] if x == 1200 else [], middle=x in (2100, 3000))
        outer = 1410 if side == LEFT else 190
        for x in (700, 5100):
            f.fillet(rectangle(x, outer, 10, 200, 140), 5, (8, 12), ("rail", "plate"), side, joint="lap", overlap_mm=20,
                     tacks=tacks(4, 4))
    for begin, end in ((80, 1960), (2040, 2980), (3020, 5920)):
        for y in rails.values():
            f.fillet([[begin, y, 160], [end, y, 160]], 4, (8, 6), ("rail", "deck"), balance="deck",
                     by="R1" if begin < 3000 else "R2", tracking="optical", tacks=tacks(8),
                     intermittent={"length_mm": 60, "gap_mm": 120}, middle=begin == 2040)
    for x in (900, 4500):
        for y in (520, 1080):
            for face in (-6, 6):
                f.fillet([[x, y + face, 160], [x + 240, y + face, 160]], 6, (8, 12), ("rail", "plate"), tacks=tacks(2, 4),
                         balance=f"pivot-{x}", gap_max_mm=0.4, tracking="through-arc")
    for y in (560, 720, 880, 1040):
        f.fillet([[5200, y, 12], [5560, y, 12]], 8, (12, 12), ("plate", "plate"), tacks=tacks(2, 5), balance="cylinder")
    for x, inward in ((350, 160), (5650, -160)):
        for y, across in ((250, 160), (1350, -160)):
            for dz in (66, 74):
                f.fillet([[x + inward, y, dz], [x, y, dz], [x, y + across, dz]], 5, (8, 8), ("rail", "plate"), by="manual")
    for y in (720, 880):
        f.fillet([[5960, y, 20], [5960, y, 140]], 6, (8, 12), ("rail", "plate"), by="manual", position="PF")
    for x in (1400, 3300):
        for y in (190, 1410):
            f.fillet([[x, y, 40], [x + 200, y, 40]], 5, (8, 6), ("rail", "deck"), by="manual", joint="lap")
    return f
