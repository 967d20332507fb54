#include "drawing/touch_lines.hpp"

#include <ElCLib.hxx>
#include <ElSLib.hxx>
#include <algorithm>
#include <cmath>

#include "drawing/intervals.hpp"

namespace seamtakt::drawing {

namespace {

constexpr double parallel_sine = 1e-4;
/// Deeper, the bodies run into each other.
constexpr double deepest_mm = 1e-3;
constexpr double shortest_touch_mm = 2;
constexpr double touch_border_mm = 1e-3;
/// More than a pair of bodies changes along the line.
constexpr int touch_cells = 24;
/// A thinner wall isn't looked for.
constexpr double into_wall_mm = 0.05;

struct TouchLine {
  int own_face = -1, other_face = -1;
  gp_Pnt begin;  ///< at `first` = 0
  gp_Vec along;
  gp_Vec normal;  ///< of the other, towards own
  bool is_other_round = false;
  double first = 0, last = 0, angle_rad = 0, radius_mm = 0, gap_mm = 0;
  gp_Pnt at(double place) const { return begin.Translated(along * place); }
};

bool is_convex(const Body& body, int index) {
  const BRepAdaptor_Surface& surface = body.faces()[static_cast<std::size_t>(index)].surface;
  const double u = (surface.FirstUParameter() + surface.LastUParameter()) / 2, v = surface.FirstVParameter();
  const gp_Lin axis(surface.Cylinder().Axis());
  const gp_Pnt point = surface.Value(u, v);
  const gp_Vec out(ElCLib::Value(ElCLib::Parameter(axis, point), axis), point);
  return body.normal_at(index, u, v).Dot(out) > 0;
}

/// The direction from the other's surface to the cylinder's axis, and the air between the two surfaces.
struct Beside {
  gp_Vec normal;
  double gap_mm = 0;
};
std::optional<Beside> beside_of(const gp_Cylinder& own, const Body& other, int index) {
  const BodyFace& face = other.faces()[static_cast<std::size_t>(index)];
  const gp_Vec along(own.Axis().Direction());
  if (face.is_plane) {
    const gp_Vec normal = other.normal_at(index, 0, 0);
    if (std::abs(normal.Dot(along)) > parallel_sine) return {};
    return Beside{normal, gp_Vec(face.plane.Location(), own.Location()).Dot(normal) - own.Radius()};
  }
  if (face.surface.GetType() != GeomAbs_Cylinder || !is_convex(other, index)) return {};
  const gp_Cylinder round = face.surface.Cylinder();
  if (gp_Vec(round.Axis().Direction()).Crossed(along).Magnitude() > parallel_sine) return {};
  const gp_Vec between(round.Location(), own.Location());
  const gp_Vec across = between - along * between.Dot(along);
  if (across.Magnitude() < 1e-6) return {};
  return Beside{across.Normalized(), across.Magnitude() - own.Radius() - round.Radius()};
}

std::optional<TouchLine> touch_of(const Body& own, int own_face, const Body& other, int other_face,
                                  double gap_mm) {
  const BRepAdaptor_Surface& surface = own.faces()[static_cast<std::size_t>(own_face)].surface;
  const gp_Cylinder cylinder = surface.Cylinder();
  const auto beside = beside_of(cylinder, other, other_face);
  if (!beside || beside->gap_mm < -deepest_mm || beside->gap_mm > gap_mm) return {};
  TouchLine line;
  line.own_face = own_face;
  line.other_face = other_face;
  line.normal = beside->normal;
  line.is_other_round = !other.faces()[static_cast<std::size_t>(other_face)].is_plane;
  line.gap_mm = std::max(beside->gap_mm, 0.0);
  line.radius_mm = cylinder.Radius();
  line.along = gp_Vec(cylinder.Axis().Direction());
  line.begin = cylinder.Location().Translated(line.normal * -line.radius_mm);
  double at = 0;
  ElSLib::Parameters(cylinder, line.begin, line.angle_rad, at);
  line.first = surface.FirstVParameter();
  line.last = surface.LastVParameter();
  return line;
}

class TouchedSides {
 public:
  TouchedSides(const Body& own, const Body& other, const std::vector<const Body*>& thirds)
      : own_(own), other_(other), thirds_(thirds) {}

  bool touches(const TouchLine& line, double at) const {
    const BodyFace& face = own_.faces()[static_cast<std::size_t>(line.own_face)];
    return face.domain->Perform(gp_Pnt2d(line.angle_rad, at)) != TopAbs_OUT &&
           other_.nearest_on_face(line.other_face, line.at(at), line.gap_mm + 0.01).has_value();
  }

  /// Air on this side, with the round surface above it and the other's below.
  bool is_open(const TouchLine& line, double at, const gp_Vec& sideways) const {
    const double away_mm = line.radius_mm / 2;
    const double rise_mm = line.radius_mm - std::sqrt(line.radius_mm * line.radius_mm - away_mm * away_mm);
    const gp_Pnt beside = line.at(at).Translated(sideways * away_mm);
    const gp_Pnt probe = beside.Translated(line.normal * ((rise_mm - line.gap_mm) / 2));
    if (!own_.contains(beside.Translated(line.normal * (rise_mm + into_wall_mm)))) return false;
    if (!other_.nearest_on_face(line.other_face, probe, line.radius_mm)) return false;
    if (own_.contains(probe) || other_.contains(probe)) return false;
    return std::none_of(thirds_.begin(), thirds_.end(),
                        [&](const Body* third) { return third->contains(probe); });
  }

  std::vector<double> cuts(const TouchLine& line) const {
    std::vector<double> cuts;
    for (int i = 0; i <= touch_cells; ++i)
      cuts.push_back(line.first + (line.last - line.first) * i / touch_cells);
    for (const gp_Pnt& vertex : other_.vertices()) {
      const double at = gp_Vec(line.begin, vertex).Dot(line.along);
      if (at > line.first && at < line.last) cuts.push_back(at);
    }
    return cuts;
  }

 private:
  const Body &own_, &other_;
  const std::vector<const Body*>& thirds_;
};

SeamPiece piece_of(const TouchLine& line, int own, int other, const gp_Vec& sideways, double from,
                   double to) {
  SeamPiece piece;
  piece.own = own;
  piece.other = other;
  piece.path = {line.at(from), line.at(to)};
  piece.length_mm = to - from;
  piece.has_dihedral = false;
  piece.gap_least_mm = piece.gap_largest_mm = line.gap_mm;
  piece.middle = line.at((from + to) / 2);
  piece.other_point = piece.middle.Translated(line.normal * -line.gap_mm);
  piece.along = line.along;
  // On a flat one as of a fillet, from the side and from above; between two round ones from the side.
  piece.outward = line.is_other_round ? sideways : (sideways + line.normal).Normalized();
  piece.own_normal = -line.normal;
  piece.other_normal = piece.other_contact_normal = line.normal;
  piece.flags.flare = true;
  return piece;
}

/// Files cut a cylinder into halves, and the line may run along the cut: then both halves have it. Two round
/// surfaces are met from either part.
bool is_there(const std::vector<SeamPiece>& pieces, const SeamPiece& piece) {
  return std::any_of(pieces.begin(), pieces.end(), [&](const SeamPiece& known) {
    return known.middle.Distance(piece.middle) < 0.1 + piece.gap_largest_mm &&
           known.outward.Dot(piece.outward) > 0.7;
  });
}

void add_touches(const std::vector<Part>& parts, int own, int other, const std::vector<const Body*>& thirds,
                 const FindOptions& options, std::vector<SeamPiece>& pieces) {
  const Body& own_body = *parts[static_cast<std::size_t>(own)].body;
  const Body& other_body = *parts[static_cast<std::size_t>(other)].body;
  const TouchedSides sides(own_body, other_body, thirds);
  for (std::size_t i = 0; i < own_body.faces().size(); ++i) {
    const BodyFace& round = own_body.faces()[i];
    if (round.surface.GetType() != GeomAbs_Cylinder || !is_convex(own_body, static_cast<int>(i))) continue;
    Bnd_Box near = round.box;
    near.Enlarge(options.gap_mm + 1e-3);
    if (near.IsOut(other_body.box())) continue;
    for (std::size_t k = 0; k < other_body.faces().size(); ++k) {
      if (near.IsOut(other_body.faces()[k].box)) continue;
      const auto line =
          touch_of(own_body, static_cast<int>(i), other_body, static_cast<int>(k), options.gap_mm);
      if (!line) continue;
      for (const double sign : {1.0, -1.0}) {
        const gp_Vec sideways = line->normal.Crossed(line->along) * sign;
        const auto is_seam = [&](double at) {
          return sides.touches(*line, at) && sides.is_open(*line, at, sideways);
        };
        for (const auto& [from, to] : stretches_where(sides.cuts(*line), touch_border_mm, is_seam)) {
          SeamPiece piece = piece_of(*line, own, other, sideways, from, to);
          if (piece.length_mm >= shortest_touch_mm && !is_there(pieces, piece))
            pieces.push_back(std::move(piece));
        }
      }
    }
  }
}

}  // namespace

std::vector<SeamPiece> touch_lines(const std::vector<Part>& parts, int a, int b,
                                   const std::vector<const Body*>& thirds, const FindOptions& options) {
  std::vector<SeamPiece> pieces;
  add_touches(parts, a, b, thirds, options, pieces);
  add_touches(parts, b, a, thirds, options, pieces);
  return pieces;
}

}  // namespace seamtakt::drawing
