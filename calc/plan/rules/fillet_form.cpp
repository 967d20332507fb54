// How large a pass may be in its position, at which angle two plates make a fillet, and over which gap.
#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>

#include "formula/size/largest_single_pass.hpp"
#include "formula/tolerance/imperfection.hpp"
#include "formula/valid_range.hpp"
#include "plan/qualification_basis.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

/// Gas-shielded or cored-wire welding, by ISO 4063.
bool is_gmaw_or_fcaw(const std::string& process) {
  return process.starts_with("13") || process == "114";
}

bool is_prequalified(const Qualification* qualification) {
  return qualification && qualification_route(qualification->basis) == QualificationRoute::prequalified;
}

}  // namespace

// D1.1 asks it of prequalified procedures; elsewhere it is what the pool can be held at.
void judge_single_pass(const SeamFacts& facts, Findings& findings) {
  const Seam& seam = facts.seam;
  if (!facts.figures.leg_needed_mm || seam.schedules.size() != 1) return;
  const Schedule& schedule = *facts.index.schedule(seam.schedules.front());
  const auto most = largest_single_pass_leg_mm(seam.position);
  const double leg = *facts.figures.leg_needed_mm;
  if (!most || !is_gmaw_or_fcaw(schedule.process) || leg <= *most) return;
  const bool is_asked =
      facts.plan.code == "AWS D1.1" && is_prequalified(facts.index.qualification(schedule.qualification));
  findings.push_back({"fillet.leg.single-pass", is_asked ? Severity::warn : Severity::note, facts.place(),
                      leg, *most, "mm",
                      Sentence("fillet.leg.single-pass"_key, {{"leg", UnitValue{leg, "mm", 3}},
                                                              {"position", seam.position},
                                                              {"most", UnitValue{*most, "mm", 3}}}),
                      is_asked ? "AWS D1.1:2020, Table 5.1 (part read)" : "common practice, no source"});
}

// Below 60 deg the weld counts as a butt weld with partial penetration, above 120 deg tests decide.
void judge_dihedral(const SeamFacts& facts, Findings& findings) {
  constexpr double least_deg = 60, most_deg = 120;
  const double angle = facts.seam.dihedral_deg;
  if (facts.seam.groove || (angle >= least_deg && angle <= most_deg)) return;
  findings.push_back({"fillet.dihedral.outside", Severity::warn, facts.place(), angle,
                      angle < least_deg ? least_deg : most_deg, "deg",
                      Sentence("fillet.dihedral.outside"_key, {{"angle", UnitValue{angle, "deg"}},
                                                               {"least", UnitValue{least_deg, "deg"}},
                                                               {"most", UnitValue{most_deg, "deg"}}}),
                      "EN 1993-1-8:2005, 4.3.2.1 (recalled)"});
}

// The largest gap that the plan allows is an imperfection that it foresees. A deeper throat may make up for
// it, so it is no fail.
void judge_root_gap(const SeamFacts& facts, Findings& findings) {
  const Seam& seam = facts.seam;
  if (seam.quality.empty() || !facts.figures.throat_needed_mm) return;
  const double gap = std::max(seam.gap_mm, seam.gap_max_mm.value_or(0));
  const double thinner = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  const ImperfectionJudgement judged = judge_imperfection("root_gap", {seam.quality, thinner, false});
  if (judged.permission != Permission::limited) return;
  const double most = imperfection_limit_mm(*judged.rule, *facts.figures.throat_needed_mm);
  if (gap <= most * (1 + 1e-9)) return;
  const bool is_recalled = judged.rule->basis == SourceBasis::recalled;
  findings.push_back(
      {"fillet.gap.quality", Severity::warn, facts.place(), gap, most, "mm",
       Sentence(
           "fillet.gap.quality"_key,
           {{"gap", UnitValue{gap, "mm", 3}}, {"level", seam.quality}, {"most", UnitValue{most, "mm", 3}}}),
       is_recalled ? "ISO 5817:2014, Table 1, 617 (recalled)" : "ISO 5817:2014, Table 1, 617"});
}

// A torch off the bisector lays more on one plate. How much more no published relation says, so that the
// imperfection 512 can't be foreseen: that is said instead of being passed over.
void judge_unequal_legs(const Plan& plan, const PlanIndex& index, Findings& findings) {
  constexpr double as_set_deg = 1e-6;
  std::unordered_map<std::string_view, std::size_t> fillets_of;  // of schedules that turn the torch
  for (const Schedule& schedule : plan.schedules)
    if (schedule.torch_work_deg) fillets_of.emplace(schedule.id, 0);
  if (fillets_of.empty()) return;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      if (seam.groove || seam.quality.empty()) continue;
      for (auto name = seam.schedules.begin(); name != seam.schedules.end(); ++name) {
        const auto found = fillets_of.find(*name);
        if (found == fillets_of.end() || std::find(seam.schedules.begin(), name, *name) != name) continue;
        const double work_deg = std::abs(*index.schedule(*name)->torch_work_deg);
        found->second += std::abs(work_deg - seam.dihedral_deg / 2) > as_set_deg;
      }
    }
  for (const Schedule& schedule : plan.schedules) {
    const auto found = fillets_of.find(schedule.id);
    const std::size_t fillets = found == fillets_of.end() ? 0 : found->second;
    if (fillets == 0) continue;
    findings.push_back(remark("fillet.legs.not-judged", schedule.id,
                              Sentence("fillet.legs.not-judged"_key,
                                       {{"schedule", schedule.id},
                                        {"angle", UnitValue{std::abs(*schedule.torch_work_deg), "deg"}},
                                        {"fillets", fillets}}),
                              "ISO 5817:2014, Table 1, 512"));
  }
}

}  // namespace seamtakt
