#include "plan/evaluate/evaluate_seam.hpp"

#include <algorithm>
#include <cmath>

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/interpass.hpp"
#include "formula/size/fillet.hpp"
#include "formula/size/groove.hpp"
#include "formula/strength/distortion.hpp"
#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/evaluation_notes.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"
#include "plan/evaluate/plate_waits.hpp"

namespace seamtakt {

namespace {

struct SeamWork {
  const Plan& plan;
  const PlanIndex& index;
  const Weldment& weldment;
  const Seam& seam;
  std::span<const PassEvaluation> passes;
  SeamEvaluation& result;
  ExplanationSink* sink;
};

void add_fillet_needed(const SeamWork& work) {
  const Seam& seam = work.seam;
  SeamEvaluation& result = work.result;
  if (seam.leg_mm) {
    result.leg_needed_mm = *seam.leg_mm;
    result.throat_needed_mm = fillet_throat_of_leg_mm(*seam.leg_mm, seam.dihedral_deg);
  } else {
    result.throat_needed_mm = *seam.throat_mm;
    result.leg_needed_mm = fillet_leg_of_throat_mm(*seam.throat_mm, seam.dihedral_deg);
  }
  result.area_needed_mm2 =
      fillet_area_needed_mm2(*result.leg_needed_mm, seam.area_allowance, seam.gap_mm, seam.dihedral_deg);
  if (work.sink)
    work.sink->add("area_needed_mm2", area_needed_note, result.area_needed_mm2, "mm2",
                   {{"z", "leg as drawn", *result.leg_needed_mm, "mm"},
                    {"g", "gap", seam.gap_mm, "mm"},
                    {"psi", "dihedral", seam.dihedral_deg, "deg"},
                    {"q", "area allowance", seam.area_allowance, ""}});
}

void add_fillet_obtained(const SeamWork& work) {
  const Seam& seam = work.seam;
  double leg =
      fillet_leg_obtained_mm(work.result.area_mm2, seam.area_allowance, seam.gap_mm, seam.dihedral_deg);
  leg = std::max(0.0, leg);
  // A lap fillet can't climb higher than the edge of the lapping plate.
  if (seam.joint == "lap")
    leg = std::min(leg, *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end()));
  work.result.leg_mm = leg;
  work.result.throat_mm = fillet_throat_of_leg_mm(leg, seam.dihedral_deg);
  if (!work.sink) return;
  work.sink->add("leg_mm", leg_note, leg, "mm",
                 {{"A", "area of all passes", work.result.area_mm2, "mm2"},
                  {"q", "area allowance", seam.area_allowance, ""},
                  {"psi", "dihedral", seam.dihedral_deg, "deg"},
                  {"g", "gap", seam.gap_mm, "mm"}});
  work.sink->add("throat_mm", throat_note, *work.result.throat_mm, "mm",
                 {{"z", "leg obtained", leg, "mm"}, {"psi", "dihedral", seam.dihedral_deg, "deg"}},
                 {"leg_mm"});
}

void add_leg_uncertainty(const SeamWork& work) {
  // d(leg)/d(ln v) and d(ln W) of each pass; passes are welded by the same instruments, so they move
  // together.
  const Seam& seam = work.seam;
  double by_speed = 0, by_feed = 0;
  bool known = false;
  if (!states_uncertainty(work.plan)) return;
  const std::string_view robot = measured_robot(work.plan, seam);
  for (const PassEvaluation& pass : work.passes) {
    const Schedule& schedule = *work.index.schedule(pass.schedule);
    const MeasuringUncertainty u =
        measuring_uncertainty(work.plan, robot,
                              {.current_A = pass.current_A,
                               .voltage_V = pass.voltage_V,
                               .travel_speed_mm_s = schedule.travel_speed_mm_s,
                               .wire_feed_speed_m_min = schedule.wire_feed_speed_m_min});
    known = known || u.known;
    by_speed += pass.deposit_area_mm2 * u.travel_speed;
    by_feed += pass.deposit_area_mm2 * u.wire_feed_speed;
  }
  if (!known) return;
  const Dual area(work.result.area_mm2, 1, 0);
  const Dual leg = fillet_leg_obtained_mm<Dual>(area, Dual(seam.area_allowance), Dual(seam.gap_mm),
                                                Dual(seam.dihedral_deg));
  const double by_area = leg.derivatives()[0];
  work.result.U_leg_mm = 2 * std::abs(by_area) * std::hypot(by_speed, by_feed);
  if (!work.sink) return;
  const double area_pct = work.result.area_mm2 / 100;
  work.sink->add_budget(
      "leg_mm",
      budget_of(
          {{"travel speed, of all passes alike"_word, 100, "%", by_speed / area_pct, -by_area * area_pct},
           {"wire feed speed, of all passes alike"_word, 100, "%", by_feed / area_pct, by_area * area_pct}}));
}

void add_groove(const SeamWork& work) {
  const Groove& groove = *work.seam.groove;
  GrooveShape<double> shape;
  shape.type = *groove_type_of(groove.type);
  shape.thickness_mm = *std::min_element(work.seam.thickness_mm.begin(), work.seam.thickness_mm.end());
  shape.angle_deg = groove.angle_deg;
  shape.gap_mm = groove.root_gap_mm;
  shape.root_face_mm = groove.root_face_mm;
  shape.root_radius_mm = groove.root_radius_mm;
  work.result.area_needed_mm2 =
      groove_area_mm2(shape) +
      groove_cap_area_mm2(shape.type, groove_top_width_mm(shape), groove.cap_height_mm);
}

/// On plates of finite size; false where the plan gives none that can be used.
bool add_plate_waits(const SeamWork& work) {
  if (!may_have_plates(work.weldment, work.seam) || !limits_a_later_pass(work.index, work.seam)) return false;
  const SeamPlates plates = plates_of(work.weldment, work.seam);
  if (!plates.shape) return false;
  work.result.interpass_waits_s =
      plate_waits_s(work.plan, work.index, work.seam, *plates.shape, work.passes, work.sink);
  for (const double wait : work.result.interpass_waits_s)
    work.result.interpass_wait_s = std::max(work.result.interpass_wait_s, wait);
  return true;
}

/// Before pass k: until the plate under pass k - 1 has cooled to the upper interpass temperature of pass k.
void add_interpass_waits(const SeamWork& work) {
  if (add_plate_waits(work)) return;
  const ShapeFactors shape = *shape_factors_of(work.seam.joint);
  const double thinner = *std::min_element(work.seam.thickness_mm.begin(), work.seam.thickness_mm.end());
  for (std::size_t k = 1; k < work.passes.size(); ++k) {
    const Schedule* next = work.index.schedule(work.passes[k].schedule);
    const std::optional<double> upper = upper_interpass_C(*next);
    const double start_C = work.index.schedule(work.passes[k - 1].schedule)->preheat_C;
    double wait = 0;
    if (upper && *upper > start_C) {
      const double Q = work.passes[k - 1].heat_input_kJ_mm * 1000, rise = *upper - start_C;
      const double thick = interpass_wait_thick_s(Q, rise, handbook_conductivity_W_mmK, shape.f3);
      const double thin = interpass_wait_thin_s(Q, thinner, rise, handbook_conductivity_W_mmK,
                                                handbook_heat_capacity_J_mm3K, shape.f2);
      wait = std::max(thick, thin);
      if (work.sink && wait >= work.result.interpass_wait_s)
        work.sink->add("interpass_wait_s", thin > thick ? interpass_thin_note : interpass_thick_note, wait,
                       "s",
                       {{"Q", "heat input of the pass before", Q / 1000, "kJ/mm"},
                        {"d", "thinner plate", thinner, "mm"},
                        {"lambda", "conductivity", handbook_conductivity_W_mmK, "W/(mm K)"},
                        {"rhoc", "volumetric heat capacity", handbook_heat_capacity_J_mm3K, "J/(mm3 K)"},
                        {"Ti", "upper interpass temperature", *upper, "C"},
                        {"T0", "plate", start_C, "C"},
                        {"F2", "shape factor", shape.f2, ""},
                        {"F3", "shape factor", shape.f3, ""}});
    }
    work.result.interpass_waits_s.push_back(wait);
    work.result.interpass_wait_s = std::max(work.result.interpass_wait_s, wait);
  }
}

void add_distortion(const SeamWork& work) {
  if (!work.seam.flange_width_mm || !work.result.leg_mm || *work.result.leg_mm <= 0) return;
  const double flange = work.seam.thickness_mm[0], width = *work.seam.flange_width_mm;
  work.result.angular_distortion_deg = fillet_angular_distortion_deg(width, *work.result.leg_mm, flange);
  if (work.sink)
    work.sink->add("angular_distortion_deg", fillet_angular_angle_note, *work.result.angular_distortion_deg,
                   "deg",
                   {{"D", "movement of the flange's edge",
                     fillet_angular_movement_mm(width, *work.result.leg_mm, flange), "mm"},
                    {"W", "flange width", width, "mm"}},
                   {"leg_mm"});
}

}  // namespace

SeamEvaluation evaluate_seam(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                             const Seam& seam, std::span<const PassEvaluation> passes,
                             ExplanationSink* sink) {
  SeamEvaluation result;
  result.weldment = weldment.id;
  result.seam = seam.id;
  const SeamWork work{plan, index, weldment, seam, passes, result, sink};
  for (const PassEvaluation& pass : passes) result.area_mm2 += pass.deposit_area_mm2;
  if (seam.groove) {
    add_groove(work);
  } else {
    add_fillet_needed(work);
    add_fillet_obtained(work);
    add_leg_uncertainty(work);
    add_distortion(work);
  }
  add_interpass_waits(work);
  return result;
}

}  // namespace seamtakt
