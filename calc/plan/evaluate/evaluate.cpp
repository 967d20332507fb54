#include "plan/evaluate/evaluate.hpp"

#include <algorithm>
#include <iterator>
#include <span>

#include "base/error.hpp"
#include "base/files/large_pages.hpp"
#include "base/text/comma_list.hpp"
#include "plan/bow/weldment_bow.hpp"
#include "plan/evaluate/evaluate_pass.hpp"
#include "plan/evaluate/evaluate_seam.hpp"
#include "plan/evaluate/evaluate_weldment.hpp"
#include "plan/evaluate/plate_waits.hpp"
#include "plan/rules/acceptance.hpp"
#include "plan/rules/hardness.hpp"
#include "plan/rules/preheat_range.hpp"
#include "plan/rules/rules.hpp"
#include "plan/rules/severity.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

namespace {

constexpr PassRule pass_rules[] = {judge_schedule_limits,
                                   judge_cooling_time,
                                   judge_hardness,
                                   judge_preheat,
                                   judge_melting_law,
                                   judge_power_source,
                                   judge_transfer_position,
                                   judge_schedule_use,
                                   judge_qualification_range,
                                   judge_qualification_variables,
                                   judge_qualification_d1_1};
constexpr SeamRule seam_rules[] = {judge_fillet_size, judge_excess_throat, judge_fillet_minimum,
                                   judge_groove_fill, judge_intermittent,  judge_tracking,
                                   judge_tacks,       judge_single_pass,   judge_dihedral,
                                   judge_root_gap,    judge_plate_waits};

/// The schedules that seams use, each once, in the order of the seams.
class UsedSchedules {
 public:
  void add(const Plan& plan, const Schedule& schedule) {
    if (is_in_.empty()) is_in_.resize(plan.schedules.size());
    const auto i = static_cast<std::size_t>(&schedule - plan.schedules.data());
    if (is_in_[i]) return;
    is_in_[i] = true;
    all_.push_back(&schedule);
  }
  void add(const Plan& plan, const UsedSchedules& later) {
    for (const Schedule* schedule : later.all_) add(plan, *schedule);
  }
  const std::vector<const Schedule*>& all() const { return all_; }

 private:
  std::vector<bool> is_in_;  ///< by the schedule's position in the plan
  std::vector<const Schedule*> all_;
};

/// What seams of one piece gave to find.
struct PieceFindings {
  Findings findings;
  PreheatRangeTally preheat_range;
  HardnessTally hardness;
  OpenLimitTally open;
  UsedSchedules used;
};

template <class Row>
void make_rows(std::vector<Row>& rows, std::size_t count) {
  rows.reserve(count);
  prefer_large_pages(rows.data(), count * sizeof(Row));
  rows.resize(count);
}

/// A seam and the index of its first pass among all passes.
struct SeamTask {
  const Weldment* weldment;
  const Seam* seam;
  std::size_t first_pass;
};

/// Evaluates all seams, each into its own place.
class SeamsEvaluation {
 public:
  SeamsEvaluation(const Plan& plan, const PlanIndex& index, Evaluation& evaluation)
      : plan_(plan), index_(index), evaluation_(evaluation) {
    std::size_t passes = 0;
    for (const Weldment& weldment : plan.weldments)
      for (const Seam& seam : weldment.seams) {
        seams_.push_back({&weldment, &seam, passes});
        passes += seam.schedules.size();
      }
    make_rows(evaluation_.passes, passes);
    make_rows(evaluation_.seams, seams_.size());
  }

  /// After run().
  const UsedSchedules& used() const { return used_; }

  void run(ThreadPool& pool) {
    // A piece remembers settings of its own, so few large pieces compute less; 32 are enough to share out
    // evenly.
    const std::size_t seams_a_piece = std::max<std::size_t>(128, seams_.size() / 32 + 1);
    std::vector<PieceFindings> found(seams_.size() / seams_a_piece + 1);
    pool.parallel_for(seams_.size(), seams_a_piece, [&](std::size_t begin, std::size_t end) {
      PassEvaluator pass_evaluator;
      for (std::size_t i = begin; i < end; ++i) evaluate_one(i, pass_evaluator, found[begin / seams_a_piece]);
    });
    // Room for those of the schedules and timelines, which follow: to grow would take twice the memory.
    std::size_t count = 2 * plan_.schedules.size() + 4 * plan_.weldments.size() + 100;
    for (const PieceFindings& each : found) count += each.findings.size();
    evaluation_.findings.reserve(count);
    prefer_large_pages(evaluation_.findings.data(), count * sizeof(Finding));
    PreheatRangeTally preheat_range;
    HardnessTally hardness;
    OpenLimitTally open;
    for (auto& [findings, range, hard, left_open, used] : found) {
      std::move(findings.begin(), findings.end(), std::back_inserter(evaluation_.findings));
      findings = Findings();
      preheat_range.add(range);
      hardness.add(hard);
      open.add(left_open);
      used_.add(plan_, used);
    }
    preheat_range.report(plan_, evaluation_.findings);
    hardness.report(plan_, evaluation_.findings);
    open.report(plan_, evaluation_.findings);
  }

 private:
  void evaluate_one(std::size_t i, PassEvaluator& pass_evaluator, PieceFindings& found) const {
    const auto& [weldment, seam, first] = seams_[i];
    Findings& findings = found.findings;
    const std::span<PassEvaluation> passes =
        std::span(evaluation_.passes).subspan(first, seam->schedules.size());
    for (std::size_t k = 0; k < passes.size(); ++k) {
      const PassFacts facts = pass_facts(plan_, index_, *weldment, *seam, static_cast<int>(k) + 1);
      pass_evaluator.evaluate(facts, passes[k]);
      passes[k].left_open = open_limits(facts, passes[k]);
      passes[k].judged = judged_by(facts, passes[k]);
      for (PassRule rule : pass_rules) rule(facts, passes[k], findings);
      found.preheat_range.add(facts, passes[k]);
      found.hardness.add(facts, passes[k]);
      found.open.add(facts, passes[k]);
      found.used.add(plan_, facts.schedule);
    }
    evaluation_.seams[i] = evaluate_seam(plan_, index_, *weldment, *seam, passes);
    const SeamFacts facts{plan_, index_, *weldment, *seam, evaluation_.seams[i]};
    for (SeamRule rule : seam_rules) rule(facts, findings);
  }

  const Plan& plan_;
  const PlanIndex& index_;
  Evaluation& evaluation_;
  std::vector<SeamTask> seams_;
  UsedSchedules used_;
};

void evaluate_weldments(const Plan& plan, const PlanIndex& index, Evaluation& evaluation, ThreadPool& pool) {
  std::vector<std::size_t> first_pass;
  std::size_t passes = 0;
  for (const Weldment& weldment : plan.weldments) {
    first_pass.push_back(passes);
    for (const Seam& seam : weldment.seams) passes += seam.schedules.size();
  }
  first_pass.push_back(passes);
  evaluation.weldments.resize(plan.weldments.size());
  constexpr std::size_t weldments_a_piece = 16;
  pool.parallel_for(plan.weldments.size(), weldments_a_piece, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      evaluation.weldments[i] = evaluate_weldment(
          plan, index, plan.weldments[i],
          std::span(evaluation.passes).subspan(first_pass[i], first_pass[i + 1] - first_pass[i]));
  });
}

/// Where a place is named: the weldment, the seam (nullptr: the weldment as a whole), and the pass (0: the
/// seam as a whole).
struct Place {
  const Weldment* weldment = nullptr;
  const Seam* seam = nullptr;
  int pass = 0;
};

Place find_place(const Plan& plan, std::string_view text) {
  if (const Weldment* weldment = find_by_id(plan.weldments, text)) return {weldment, nullptr, 0};
  std::vector<Place> by_seam_alone;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      if (text == seam.id) by_seam_alone.push_back({&weldment, &seam, 0});
      if (text == seam_place(weldment.id, seam.id)) return {&weldment, &seam, 0};
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass)
        if (text == pass_place(weldment.id, seam.id, pass)) return {&weldment, &seam, pass};
    }
  if (by_seam_alone.size() == 1) return by_seam_alone.front();
  throw InputError(
      "--explain", "\"" + printable(text) + "\"",
      "a weldment, a seam such as \"WELDMENT/SEAM\" or a pass such as \"WELDMENT/SEAM/pass 1\" of the plan"_word);
}

/// The entry of `key` and its inputs, each once.
void gather(const ExplanationSink& sink, std::string_view key, std::vector<Explanation>& gathered,
            std::vector<std::string>& taken) {
  if (std::find(taken.begin(), taken.end(), key) != taken.end()) return;
  // Where a key was computed more than once (waits before several passes) the last entry is the one that
  // holds.
  for (auto entry = sink.entries.rbegin(); entry != sink.entries.rend(); ++entry) {
    if (entry->key != key) continue;
    taken.emplace_back(key);
    gathered.push_back(entry->explanation);
    for (const std::string& below : entry->rests_on) gather(sink, below, gathered, taken);
    return;
  }
}

/// The value of `key` at the place and what it rests on; nothing where the place has none. `known` gains the
/// place's keys.
std::vector<Explanation> explained(const Plan& plan, const PlanIndex& index, const Place& place,
                                   std::string_view key, std::vector<std::string>& known) {
  ExplanationSink sink;
  std::vector<PassEvaluation> passes;
  for (const Seam& seam : place.weldment->seams)
    for (int pass = 1;
         (!place.seam || &seam == place.seam) && pass <= static_cast<int>(seam.schedules.size()); ++pass)
      passes.push_back(evaluate_pass(pass_facts(plan, index, *place.weldment, seam, pass),
                                     place.seam && pass == place.pass ? &sink : nullptr));
  if (!place.seam)
    evaluate_weldment(plan, index, *place.weldment, passes, &sink);
  else if (!place.pass)
    evaluate_seam(plan, index, *place.weldment, *place.seam, passes, &sink);
  for (const auto& entry : sink.entries)
    if (std::find(known.begin(), known.end(), entry.key) == known.end()) known.push_back(entry.key);
  std::vector<Explanation> gathered;
  std::vector<std::string> taken;
  gather(sink, key, gathered, taken);
  // An uncertainty is explained by the budget of its value.
  if (gathered.empty() && key.starts_with("U_")) gather(sink, key.substr(2), gathered, taken);
  return gathered;
}

}  // namespace

Evaluation evaluate(const Plan& plan, std::string_view date, ThreadPool& pool) {
  const PlanIndex index(plan);
  Evaluation evaluation;
  SeamsEvaluation seams(plan, index, evaluation);
  seams.run(pool);
  evaluate_weldments(plan, index, evaluation, pool);
  judge_schedule_status(seams.used().all(), evaluation.findings);
  judge_approved_changes(plan, evaluation.findings);
  judge_arc_length(seams.used().all(), evaluation.findings);
  judge_melting_waveform(seams.used().all(), evaluation.findings);
  judge_tack_lengths(plan, evaluation.findings);
  judge_run_gaps(plan, evaluation.findings);
  judge_qualification_dates(plan, date, evaluation.findings);
  judge_qualification_lapse(plan, index, date, evaluation.findings);
  judge_qualification_basis(plan, evaluation.findings);
  judge_qualification_positions(plan, index, evaluation.findings);
  judge_job_numbers(plan, evaluation.findings);
  judge_composition_basis(plan, evaluation.findings);
  judge_composition_range(plan, evaluation.findings);
  judge_section_axis(plan, evaluation.findings);
  judge_unequal_legs(plan, index, evaluation.findings);
  apply_severities(plan, evaluation.findings);
  apply_acceptances(plan, AcceptanceScope::evaluation(), evaluation.findings);
  return evaluation;
}

std::vector<Explanation> explain(const Plan& plan, std::string_view place_text, std::string_view key) {
  const PlanIndex index(plan);
  const Place place = find_place(plan, place_text);
  std::vector<std::string> known;
  std::vector<Explanation> gathered = explained(plan, index, place, key, known);
  // A seam of one pass is named by the seam.
  if (gathered.empty() && place.seam && !place.pass && place.seam->schedules.size() == 1)
    gathered = explained(plan, index, {place.weldment, place.seam, 1}, key, known);
  if (!gathered.empty()) return gathered;
  if (known.empty()) known = {"bow_mm"};  // of a weldment, where its section is stated
  throw InputError("--explain", Sentence("plan.the-key"_key, {{"key", printable(key)}}),
                   Sentence("plan.one-of"_key, {{"names", comma_list(known)}}));
}

}  // namespace seamtakt
