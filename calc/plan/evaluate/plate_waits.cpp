#include "plan/evaluate/plate_waits.hpp"

#include <algorithm>
#include <cmath>

#include "plan/evaluate/cooling_case.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

void explain_wait(ExplanationSink& sink, double wait_s, double base_C, double limit_C, double rise_K) {
  sink.add("interpass_wait_s", interpass_plates_note, wait_s, "s",
           {{"T0", "plate", base_C, "C"},
            {"dT", "rise by all passes before, at the end of the wait", rise_K, "K"},
            {"Ti", "upper interpass temperature", limit_C, "C"}});
}

}  // namespace

bool limits_a_later_pass(const PlanIndex& index, const Seam& seam) {
  for (std::size_t k = 1; k < seam.schedules.size(); ++k) {
    const Schedule* schedule = index.schedule(seam.schedules[k]);
    if (schedule && upper_interpass_C(*schedule)) return true;
  }
  return false;
}

std::vector<ArcHeat> arcs_of_pass(const Seam& seam, int pass, double begin_s, double arc_time_s,
                                  double heat_J_mm) {
  std::vector<WeldRun> runs = weld_runs(seam);
  if (pass % 2 == 0 && may_reverse(seam)) {
    std::reverse(runs.begin(), runs.end());
    for (WeldRun& run : runs) std::swap(run.from_mm, run.to_mm);
  }
  double total_mm = 0;
  for (const WeldRun& run : runs) total_mm += std::abs(run.to_mm - run.from_mm);
  std::vector<ArcHeat> arcs;
  for (const WeldRun& run : runs) {
    const double end_s = begin_s + arc_time_s * std::abs(run.to_mm - run.from_mm) / total_mm;
    arcs.push_back({run.from_mm, run.to_mm, begin_s, end_s, heat_J_mm});
    begin_s = end_s;
  }
  return arcs;
}

double plate_base_C(const PlanIndex& index, const Seam& seam, int pass) {
  const auto preheat_C = [&](int of_pass) {
    const Schedule* schedule = index.schedule(seam.schedules[static_cast<std::size_t>(of_pass - 1)]);
    return schedule ? schedule->preheat_C : Schedule().preheat_C;
  };
  return pass > 1 ? std::max(preheat_C(pass), preheat_C(pass - 1)) : preheat_C(pass);
}

std::vector<double> plate_waits_s(const Plan& plan, const PlanIndex& index, const Seam& seam,
                                  const JointShape& shape, std::span<const PassEvaluation> passes,
                                  ExplanationSink* sink) {
  std::vector<double> waits(passes.empty() ? 0 : passes.size() - 1, 0.0);
  if (!limits_a_later_pass(index, seam)) return waits;
  const JointField field(shape, plan.heat_loss_W_m2K);
  std::vector<ArcHeat> before;
  double begin_s = 0, longest_s = 0;
  for (std::size_t k = 0; k < passes.size(); ++k) {
    const int pass = static_cast<int>(k) + 1;
    const Schedule* schedule = index.schedule(passes[k].schedule);
    const std::optional<double> limit_C = schedule ? upper_interpass_C(*schedule) : std::nullopt;
    std::vector<ArcHeat> arcs =
        arcs_of_pass(seam, pass, begin_s, passes[k].arc_time_s, passes[k].heat_input_kJ_mm * 1000);
    if (arcs.empty()) return waits;
    if (k > 0 && limit_C) {
      const double base_C = plate_base_C(index, seam, pass), at_mm = arcs.front().from_mm;
      const double cooled_s = field.cooled_at_s(at_mm, *limit_C - base_C, begin_s, longest_wait_s, before);
      const double wait_s = std::min(cooled_s - begin_s, longest_wait_s);
      waits[k - 1] = wait_s;
      begin_s += wait_s;
      if (sink && wait_s >= longest_s)
        explain_wait(*sink, wait_s, base_C, *limit_C, field.rise_K(at_mm, begin_s, before));
      longest_s = std::max(longest_s, wait_s);
      arcs = arcs_of_pass(seam, pass, begin_s, passes[k].arc_time_s, passes[k].heat_input_kJ_mm * 1000);
    }
    before.insert(before.end(), arcs.begin(), arcs.end());
    begin_s += passes[k].arc_time_s;
  }
  return waits;
}

namespace {

void judge_long_waits(const SeamFacts& facts, Findings& findings) {
  for (std::size_t k = 0; k < facts.figures.interpass_waits_s.size(); ++k) {
    const double wait_s = facts.figures.interpass_waits_s[k];
    if (wait_s <= never_above_s) continue;
    const int pass = static_cast<int>(k) + 2;
    const Schedule* schedule = facts.index.schedule(facts.seam.schedules[k + 1]);
    const double limit_C = *upper_interpass_C(*schedule);
    const bool ends = wait_s < longest_wait_s;
    findings.push_back(
        {"interpass.never", Severity::fail, pass_place(facts.weldment.id, facts.seam.id, pass), wait_s,
         never_above_s, "s",
         Sentence(ends ? "interpass.never"_key : "interpass.never.day"_key,
                  {{"limit", UnitValue{limit_C, "C"}}, {"wait", UnitValue{wait_s / 3600, "h"}}}),
         "common practice, no source"});
  }
}

}  // namespace

void judge_plate_waits(const SeamFacts& facts, Findings& findings) {
  if (!may_have_plates(facts.weldment, facts.seam) || !limits_a_later_pass(facts.index, facts.seam)) return;
  const SeamPlates plates = plates_of(facts.weldment, facts.seam);
  if (plates.shape) return judge_long_waits(facts, findings);
  const auto note = [&](const char* rule, Sentence sentence) {
    findings.push_back(
        {rule, Severity::note, facts.place(), {}, {}, "", std::move(sentence), "common practice, no source"});
  };
  switch (plates.missing) {
    case PlatesMissing::bent:
      return note("interpass.plates", Sentence("interpass.plates.bent"_key));
    case PlatesMissing::too_short:
      return note("interpass.plates", Sentence("interpass.plates.short"_key));
    case PlatesMissing::unmatched:
      return note("interpass.plates", Sentence("interpass.plates.unmatched"_key));
    case PlatesMissing::none:
    case PlatesMissing::not_given:
      return;
  }
}

}  // namespace seamtakt
