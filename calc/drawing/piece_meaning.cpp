#include "drawing/piece_meaning.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/wall_thickness.hpp"

namespace seamtakt::drawing {

namespace {

/// Away from the root along a surface, before looking straight in: the edge itself has no wall behind it.
constexpr double beside_root_mm = 0.5;
constexpr double mostly = 0.8;  ///< a cosine from which two directions count as the same

LocalPlate thinner(const Body& body, const gp_Pnt& at, const gp_Vec& normal, const gp_Vec& direction,
                   const gp_Vec& contact_normal, const gp_Vec& contact_direction, const gp_Vec& along) {
  LocalPlate plate;
  plate.across = normal;
  plate.thickness_mm = wall_thickness_mm(body, at.Translated(direction * beside_root_mm), normal, along);
  if (contact_normal.Magnitude() < 0.5) return plate;
  const auto other =
      wall_thickness_mm(body, at.Translated(contact_direction * beside_root_mm), contact_normal, along);
  if (!other || (plate.thickness_mm && *plate.thickness_mm <= *other * (1 + 1e-6))) return plate;
  return {other, contact_normal};
}

/// In the contact surface, away from the air.
gp_Vec into_contact(const gp_Vec& contact_normal, const gp_Vec& along, const gp_Vec& surface_normal) {
  gp_Vec into = contact_normal.Crossed(along);
  if (into.Magnitude() < 1e-6) return {0, 0, 0};
  into.Normalize();
  return into.Dot(surface_normal) > 0 ? -into : into;
}

}  // namespace

LocalPlate own_plate(const Part& part, const SeamPiece& piece) {
  if (part.thickness_direction) return {part.thickness_mm, *part.thickness_direction};
  LocalPlate plate =
      thinner(*part.body, piece.middle, piece.own_normal, piece.own_direction, piece.contact_normal,
              into_contact(piece.contact_normal, piece.along, piece.own_normal), piece.along);
  if (part.thickness_mm) plate.thickness_mm = part.thickness_mm;
  return plate;
}

LocalPlate other_plate(const Part& part, const SeamPiece& piece) {
  if (part.thickness_direction) return {part.thickness_mm, *part.thickness_direction};
  // Where the other goes on, it goes on under the seam too.
  const gp_Vec direction = piece.is_other_edge ? piece.other_direction : gp_Vec(0, 0, 0);
  const gp_Pnt on_other = piece.other_point;
  LocalPlate plate =
      thinner(*part.body, on_other, piece.other_normal, direction,
              piece.is_other_edge ? piece.other_contact_normal : gp_Vec(0, 0, 0),
              into_contact(piece.other_contact_normal, piece.along, piece.other_normal), piece.along);
  if (part.thickness_mm) plate.thickness_mm = part.thickness_mm;
  return plate;
}

Meeting meeting_of(const SeamPiece& piece, const LocalPlate& own, const LocalPlate& other) {
  const gp_Vec contact =
      piece.contact_normal.Magnitude() > 0.5 ? piece.contact_normal : piece.other_contact_normal;
  const double own_lies = std::abs(own.across.Dot(contact)), other_lies = std::abs(other.across.Dot(contact));
  if (own_lies > mostly && other_lies > mostly) return Meeting::lap;
  if (other_lies > mostly) return Meeting::standing;
  if (own_lies > mostly) return Meeting::under;
  return std::abs(own.across.Dot(other.across)) > mostly ? Meeting::butt : Meeting::mitre;
}

bool goes_on_behind(const std::vector<Part>& parts, const SeamPiece& piece, Meeting meeting,
                    const LocalPlate& own, const LocalPlate& other) {
  const bool own_stands = meeting == Meeting::standing;
  const LocalPlate& standing = own_stands ? own : other;
  const LocalPlate& through = own_stands ? other : own;
  const Body& body = *parts[static_cast<std::size_t>(own_stands ? piece.other : piece.own)].body;
  if (!standing.thickness_mm) return true;
  const gp_Vec& through_normal = own_stands ? piece.other_normal : piece.own_normal;
  gp_Vec away = own_stands ? piece.other_direction : piece.own_direction;
  if (piece.flags.flush) {
    // No surface of the part that goes on lies beside the air: look behind, across the standing one.
    away = through.across.Crossed(piece.along);
    if (away.Magnitude() < 0.5) return false;
    away.Normalize();
    if (away.Dot(piece.outward) < 0) away.Reverse();
  }
  const double depth = 0.25 * std::min(through.thickness_mm.value_or(4), 4.0);
  const gp_Vec in = piece.flags.flush
                        ? through.across * (through.across.Dot(piece.other_contact_normal) > 0 ? -1 : 1)
                        : -through_normal;
  const gp_Pnt behind =
      piece.middle.Translated(away * (-1.98 * *standing.thickness_mm) + in * (depth + piece.gap_largest_mm));
  return body.contains(behind);
}

bool is_across_end(const std::vector<Part>& parts, const SeamPiece& piece, Meeting meeting) {
  if (meeting == Meeting::lap) return false;
  const auto looks_out_of_end = [&](int part, const gp_Vec& normal) {
    const auto& across = parts[static_cast<std::size_t>(part)].thickness_direction;
    return across && std::abs(across->Dot(normal)) < 0.5;
  };
  if (meeting == Meeting::standing) return looks_out_of_end(piece.own, piece.own_normal);
  if (meeting == Meeting::under) return looks_out_of_end(piece.other, piece.other_normal);
  return looks_out_of_end(piece.own, piece.own_normal) || looks_out_of_end(piece.other, piece.other_normal);
}

const char* position_of(const gp_Vec& up, const gp_Vec& along, const gp_Vec& outward, bool is_butt) {
  constexpr double pi = 3.14159265358979323846;
  // Steeper than 45 degrees counts as vertical. Common practice; the standard's own ranges are finer.
  if (std::abs(along.Dot(up)) > std::sin(pi / 4)) return "PF";
  const double tilt_deg = std::acos(std::clamp(outward.Dot(up), -1.0, 1.0)) * 180 / pi;
  if (is_butt) return tilt_deg < 45 ? "PA" : tilt_deg <= 135 ? "PC" : "PE";
  if (tilt_deg < 22.5) return "PA";
  if (tilt_deg < 67.5) return "PB";
  if (tilt_deg <= 112.5) return "PC";
  return tilt_deg <= 157.5 ? "PD" : "PE";
}

}  // namespace seamtakt::drawing
