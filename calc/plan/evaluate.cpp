#include "plan/evaluate.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "plan/acceptance.hpp"
#include "plan/evaluate_pass.hpp"
#include "plan/evaluate_seam.hpp"
#include "plan/evaluate_weldment.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

constexpr PassRule pass_rules[] = {judge_schedule_limits, judge_cooling_time, judge_hardness,     judge_preheat,
                                   judge_melting_law,     judge_power_source, judge_schedule_use, judge_qualification_range};
constexpr SeamRule seam_rules[] = {judge_fillet_size, judge_fillet_minimum, judge_groove_fill,
                                   judge_intermittent, judge_tracking,      judge_tacks};

void evaluate_one_seam(const Plan& plan, const PlanIndex& index, const Weldment& weldment, const Seam& seam,
                       Evaluation& evaluation) {
  const std::size_t first = evaluation.passes.size();
  for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass) {
    const PassFacts facts = pass_facts(plan, index, weldment, seam, pass);
    evaluation.passes.push_back(evaluate_pass(facts));
    for (PassRule rule : pass_rules) rule(facts, evaluation.passes.back(), evaluation.findings);
  }
  const std::span<const PassEvaluation> passes = std::span(evaluation.passes).subspan(first);
  evaluation.seams.push_back(evaluate_seam(plan, index, weldment, seam, passes));
  const SeamFacts facts{plan, index, weldment, seam, evaluation.seams.back()};
  for (SeamRule rule : seam_rules) rule(facts, evaluation.findings);
}

/// Where a place is named: the weldment, the seam, and the pass (0: the seam as a whole).
struct Place {
  const Weldment* weldment = nullptr;
  const Seam* seam = nullptr;
  int pass = 0;
};

Place find_place(const Plan& plan, std::string_view text) {
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      if (text == seam_place(weldment.id, seam.id)) return {&weldment, &seam, 0};
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass)
        if (text == pass_place(weldment.id, seam.id, pass)) return {&weldment, &seam, pass};
    }
  throw InputError("--explain", "\"" + printable(text) + "\"",
                   "a seam such as \"WELDMENT/SEAM\" or a pass such as \"WELDMENT/SEAM/pass 1\" of the plan");
}

/// The entry of `key` and what it rests on, each once.
void gather(const ExplanationSink& sink, std::string_view key, std::vector<Explanation>& gathered,
            std::vector<std::string>& taken) {
  if (std::find(taken.begin(), taken.end(), key) != taken.end()) return;
  // Where a key was computed more than once (waits before several passes) the last entry is the one that holds.
  for (auto entry = sink.entries.rbegin(); entry != sink.entries.rend(); ++entry) {
    if (entry->key != key) continue;
    taken.emplace_back(key);
    gathered.push_back(entry->explanation);
    for (const std::string& below : entry->rests_on) gather(sink, below, gathered, taken);
    return;
  }
}

}  // namespace

Evaluation evaluate(const Plan& plan, std::string_view date) {
  const PlanIndex index(plan);
  Evaluation evaluation;
  std::size_t seams = 0, passes = 0;
  for (const Weldment& weldment : plan.weldments) {
    seams += weldment.seams.size();
    for (const Seam& seam : weldment.seams) passes += seam.schedules.size();
  }
  evaluation.passes.reserve(passes);
  evaluation.seams.reserve(seams);
  for (const Weldment& weldment : plan.weldments) {
    const std::size_t first_pass = evaluation.passes.size();
    for (const Seam& seam : weldment.seams) evaluate_one_seam(plan, index, weldment, seam, evaluation);
    evaluation.weldments.push_back(
        evaluate_weldment(plan, index, weldment, std::span(evaluation.passes).subspan(first_pass)));
  }
  judge_schedule_status(plan, index, evaluation.findings);
  judge_qualification_dates(plan, date, evaluation.findings);
  judge_composition_basis(plan, evaluation.findings);
  apply_acceptances(plan, AcceptanceScope::evaluation(), evaluation.findings);
  return evaluation;
}

std::vector<Explanation> explain(const Plan& plan, std::string_view place_text, std::string_view key) {
  const PlanIndex index(plan);
  const Place place = find_place(plan, place_text);
  ExplanationSink sink;
  std::vector<PassEvaluation> passes;
  for (int pass = 1; pass <= static_cast<int>(place.seam->schedules.size()); ++pass) {
    const bool wanted = pass == place.pass;
    passes.push_back(evaluate_pass(pass_facts(plan, index, *place.weldment, *place.seam, pass), wanted ? &sink : nullptr));
  }
  if (!place.pass) evaluate_seam(plan, index, *place.weldment, *place.seam, passes, &sink);
  std::vector<Explanation> gathered;
  std::vector<std::string> taken;
  gather(sink, key, gathered, taken);
  if (!gathered.empty()) return gathered;
  std::string known;
  for (const auto& entry : sink.entries)
    if (known.find(entry.key) == std::string::npos) known += (known.empty() ? "" : ", ") + entry.key;
  throw InputError("--explain", "the key \"" + printable(key) + "\"", "one of " + known);
}

}  // namespace seamtakt
