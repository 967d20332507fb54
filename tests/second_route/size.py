"""Sections of fillets and grooves: corners laid out on paper, areas by the shoelace rule, arcs by an integral."""
import math

from calculus import integral, root


def polygon_area(corners):
    """Source: derived: the shoelace rule."""
    pairs = zip(corners, corners[1:] + corners[:1])
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2


def distance_to_segment(point, start, end):
    along = ((point[0] - start[0]) * (end[0] - start[0]) + (point[1] - start[1]) * (end[1] - start[1])) \
        / math.dist(start, end) ** 2
    along = min(1.0, max(0.0, along))
    foot = (start[0] + along * (end[0] - start[0]), start[1] + along * (end[1] - start[1]))
    return math.dist(point, foot)


def segment_area(chord, height):
    """Between a chord and an arc of that height over it. Source: derived: the arc's height integrated along the chord,
    the angle from the circle's centre as the variable."""
    if height == 0:
        return 0.0
    radius = (chord**2 / 4 + height**2) / (2 * height)
    half_angle = math.asin(chord / (2 * radius))
    return integral(lambda angle: (radius * math.cos(angle) - (radius - height)) * radius * math.cos(angle),
                    -half_angle, half_angle)


def fillet_section(leg, leg_2, dihedral):
    """Area of the triangle, face, throat: the root's distance from the face, EN 1993-1-8, 4.5.2(1) (read).
    Source: en-1993-1-8; geometry derived."""
    near, far = (leg, 0.0), (leg_2 * math.cos(dihedral), leg_2 * math.sin(dihedral))
    return polygon_area([(0.0, 0.0), near, far]), math.dist(near, far), distance_to_segment((0.0, 0.0), near, far)


def fillet(given):
    """The leg from a throat or an area by halving. A gap shortens both legs, a hollow face the throat.
    Source: aws-d1-1, fit-up and concavity (recalled)."""
    dihedral, bulge = math.radians(given.number("dihedral", "", 90.0)), given.number("convexity", "mm", 0.0)

    def section_area(leg, leg_2):
        area, face, _ = fillet_section(leg, leg_2, dihedral)
        return area + math.copysign(segment_area(face, abs(bulge)), bulge)

    if "leg" in given:
        leg = given.number("leg", "mm")
    elif "throat" in given:
        throat = given.number("throat", "mm")
        leg = root(lambda z: fillet_section(z, z, dihedral)[2] - throat, 1e-6, 1e3)
    else:
        area = given.number("area", "mm2")
        leg = root(lambda z: section_area(z, z) - area, max(1e-6, 2 * abs(bulge)), 1e3)
    leg_2 = given.number("leg-2", "mm", leg)
    gap = given.number("gap", "mm", 0.0)
    return {
        "leg_mm": leg, "area_mm2": section_area(leg, leg_2), "throat_mm": fillet_section(leg, leg_2, dihedral)[2],
        "effective_throat_mm": fillet_section(leg - gap, leg_2 - gap, dihedral)[2] - max(0.0, -bulge),
    }


def u_groove_half_width(height, radius, wall_angle):
    """How far the wall of a U is from the root face's edge at a height over the root face: first the arc about a centre
    straight above that edge, then the straight wall that touches it."""
    touch = radius * (1 - math.sin(wall_angle))
    if height <= touch:
        return math.sqrt(radius**2 - (radius - height) ** 2)
    return radius * math.cos(wall_angle) + (height - touch) * math.tan(wall_angle)


def groove(given):
    """Area without and with the cap, two thirds of its width times its height (a parabola). Source: derived."""
    kind, thickness, gap = given.text("type"), given.number("thickness", "mm"), given.number("gap", "mm")
    root_face, angle = given.number("root-face", "mm", 0.0), math.radians(given.number("angle", "", 0.0))
    depth = thickness - root_face
    if kind == "square":
        widened, area = 0.0, gap * thickness
    elif kind == "single-u":
        radius = given.number("root-radius", "mm")
        touch = radius * (1 - math.sin(angle))

        def half(height):
            return u_groove_half_width(height, radius, angle)

        # The arc is vertical at its foot: height = touch s^2 makes the integrand smooth there.
        below = integral(lambda s: half(touch * s * s) * 2 * touch * s, 0, 1)
        area = gap * thickness + 2 * (below + integral(half, touch, depth))
        widened = 2 * half(depth)
    else:
        sides = 2 if kind.startswith("double") else 1  # prepared from one face of the plate or from both
        deep = depth / sides
        flanks = 1 if kind.endswith("bevel") else 2  # slanted walls, each at its share of the angle
        widened = flanks * deep * math.tan(angle / flanks)
        one_side = polygon_area([(0.0, 0.0), (gap, 0.0), (gap + widened, deep), (0.0, deep)])
        area = sides * one_side + gap * root_face
    top = gap + widened
    cap = 2 / 3 * top * given.number("cap-height", "mm", 0.0)
    return {"groove_area_mm2": area, "top_width_mm": top, "cap_area_mm2": cap, "area_mm2": area + cap}
