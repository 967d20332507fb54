#include "formula/wire/melting.hpp"
#include "plan/planned_current.hpp"
#include "plan/rules/rules.hpp"
#include "plan/wire_extension.hpp"

namespace seamtakt {

void judge_melting_law(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (stated_current_A(facts.schedule)) return;
  const double extension = wire_extension_mm(facts.schedule);
  if (!is_inside(melting_current_range, pass.current_A))
    add_if_any(findings, outside_range(melting_current_range, pass.current_A, facts.place()));
  if (!is_inside(melting_extension_range, extension))
    add_if_any(findings, outside_range(melting_extension_range, extension, facts.place()));
}

// Without its length the arc counts as none, and the whole distance as wire that heats itself: the current is
// then too low, by about 5 % at 15 mm.
void judge_arc_length(std::span<const Schedule* const> used, Findings& findings) {
  for (const Schedule* schedule : used) {
    if (schedule->arc_length_mm > 0 || stated_current_A(*schedule)) continue;
    findings.push_back({"schedule.arc-length.absent",
                        Severity::note,
                        schedule->id,
                        schedule->arc_length_mm,
                        {},
                        "mm",
                        Sentence("schedule.arc-length.absent"_key,
                                 {{"schedule", schedule->id},
                                  {"distance", UnitValue{schedule->contact_tip_distance_mm, "mm", 3}}}),
                        "common practice, no source"});
  }
}

// The law is fitted to steady arcs. Records of pulsed and of waveform-controlled arcs have currents far below
// it, at any wire.
void judge_melting_waveform(std::span<const Schedule* const> used, Findings& findings) {
  for (const Schedule* schedule : used) {
    const double error_pct = melting_error_of_waveform_pct(*schedule);
    if (error_pct == 0) continue;
    const bool is_pulsed = schedule->transfer == "pulsed";
    findings.push_back(
        {"schedule.melting.waveform",
         Severity::warn,
         schedule->id,
         error_pct,
         {},
         "%",
         Sentence(is_pulsed ? "schedule.melting.pulsed"_key : "schedule.melting.controlled-dip"_key,
                  {{"schedule", schedule->id}, {"error", UnitValue{error_pct, "%", 2}}}),
         "common practice, no source"});
  }
}

}  // namespace seamtakt
