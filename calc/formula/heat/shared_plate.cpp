#include "formula/heat/shared_plate.hpp"

#include <algorithm>
#include <cmath>

#include "formula/heat/handbook_steel.hpp"

namespace seamtakt {

namespace {

constexpr double plate_diffusivity_mm2_s = handbook_conductivity_W_mmK / handbook_heat_capacity_J_mm3K;

/// K per J of heat in the plate.
double response_K_J(const SharedPlate& plate, const PlatePoint& point, const PlatePoint& source,
                    double age_s) {
  return closed_rod_per_mm(point.u_mm, source.u_mm, plate.u_mm, age_s) *
         closed_rod_per_mm(point.v_mm, source.v_mm, plate.v_mm, age_s) /
         (handbook_heat_capacity_J_mm3K * plate.thickness_mm);
}

/// The arc as pieces no longer than heat has spread, each an instantaneous source at its middle.
double arc_rise_K(const SharedPlate& plate, const JointSide& source, const JointSide& at,
                  const PlatePoint& point, double at_s, const PlateArc& arc) {
  constexpr double youngest_counted_s = 1, most_pieces = 64;
  const double burned_s = std::min(arc.end_s, at_s) - arc.begin_s, duration_s = arc.end_s - arc.begin_s;
  if (!(burned_s > 0) || !(duration_s > 0)) return 0;
  const double part = burned_s / duration_s;
  const double u_mm = (arc.to.u_mm - arc.from.u_mm) * part, v_mm = (arc.to.v_mm - arc.from.v_mm) * part;
  const double length_mm = std::hypot(u_mm, v_mm);
  const double youngest_s = std::max(at_s - arc.begin_s - burned_s, youngest_counted_s);
  const double spread_mm = std::sqrt(4 * plate_diffusivity_mm2_s * youngest_s);
  const double pieces = std::clamp(std::ceil(length_mm / spread_mm), 1.0, most_pieces);
  double sum = 0;
  for (double piece = 0.5; piece < pieces; ++piece) {
    const double along = piece / pieces;
    const double age_s = std::max(at_s - arc.begin_s - burned_s * along, youngest_counted_s);
    const double held =
        1 / (1 / source.field->share_held(source.side, age_s) + 1 / at.field->share_held(at.side, age_s) - 1);
    sum += held * std::exp(-source.field->loss_per_s() * age_s) *
           response_K_J(plate, point, {arc.from.u_mm + u_mm * along, arc.from.v_mm + v_mm * along}, age_s);
  }
  return sum * arc.heat_J_mm * length_mm / pieces;
}

}  // namespace

double neighbour_rise_K(const SharedPlate& plate, const JointSide& source, const JointSide& at,
                        const PlatePoint& point, double at_s, std::span<const PlateArc> arcs) {
  double sum = 0;
  for (const PlateArc& arc : arcs) sum += arc_rise_K(plate, source, at, point, at_s, arc);
  return sum;
}

}  // namespace seamtakt
