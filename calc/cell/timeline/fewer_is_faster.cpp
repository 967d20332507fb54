#include "cell/timeline/fewer_is_faster.hpp"

#include <algorithm>

#include "base/text/comma_list.hpp"
#include "cell/timeline/cycle_columns.hpp"

namespace seamtakt {

namespace {

constexpr const char* fewer_is_faster_rule = "cell.fewer-is-faster";
/// Sums of the same times in another order differ by less.
constexpr double same_share = 1e-9;

/// What the robots wait for less, and by how much; the largest.
WaitSum wait_that_is_gone(const CycleResult& whole, const CycleResult& fewer) {
  WaitSum most;
  const std::vector<WaitSum> left = wait_sums(fewer);
  for (const WaitSum& wait : wait_sums(whole)) {
    const auto same = std::find_if(left.begin(), left.end(),
                                   [&](const WaitSum& other) { return other.cause == wait.cause; });
    const double gone_s = wait.time_s - (same == left.end() ? 0 : same->time_s);
    if (gone_s > most.time_s) most = {wait.cause, gone_s};
  }
  return most;
}

}  // namespace

std::optional<Finding> faster_with_fewer(const CycleResult& whole, const CycleResult& fewer,
                                         std::string_view robot, std::size_t by_hand) {
  if (!whole.unwelded.empty() || !fewer.unwelded.empty()) return std::nullopt;
  if (fewer.cycle_time_s >= whole.cycle_time_s * (1 - same_share)) return std::nullopt;
  const UnitValue time{fewer.cycle_time_s, "s", 5}, whole_time{whole.cycle_time_s, "s", 5};
  const WaitSum wait = wait_that_is_gone(whole, fewer);
  Sentence sentence("cell.fewer-is-faster.order"_key,
                    {{"robot", robot}, {"time", time}, {"whole", whole_time}});
  if (by_hand > 0)
    sentence = Sentence("cell.fewer-is-faster.hand"_key,
                        {{"robot", robot}, {"time", time}, {"whole", whole_time}, {"seams", by_hand}});
  else if (wait.cause != WaitCause::none)
    sentence = Sentence("cell.fewer-is-faster.waits"_key, {{"robot", robot},
                                                           {"time", time},
                                                           {"whole", whole_time},
                                                           {"less", UnitValue{wait.time_s, "s", 4}},
                                                           {"cause", name_of(wait.cause)}});
  return Finding{fewer_is_faster_rule,
                 Severity::note,
                 fewer.weldment,
                 fewer.cycle_time_s,
                 whole.cycle_time_s,
                 "s",
                 sentence,
                 "common practice, no source"};
}

Findings faster_with_fewer(const std::vector<CycleResult>& whole, const std::vector<CycleResult>& fewer,
                           std::string_view robot, const std::vector<std::string>& by_hand) {
  Findings findings;
  for (const CycleResult& cycle : fewer) {
    const auto same = std::find_if(whole.begin(), whole.end(), [&](const CycleResult& other) {
      return other.weldment == cycle.weldment;
    });
    if (same == whole.end()) continue;
    const auto hand = static_cast<std::size_t>(std::count(by_hand.begin(), by_hand.end(), cycle.weldment));
    if (auto found = faster_with_fewer(*same, cycle, robot, hand)) findings.push_back(std::move(*found));
  }
  return findings;
}

std::optional<Finding> more_with_fewer(double whole_per_h, double fewer_per_h, std::string_view robot,
                                       const Findings& cycles, const std::vector<std::string>& by_hand) {
  if (fewer_per_h <= whole_per_h * (1 + same_share)) return std::nullopt;
  const UnitValue rate{fewer_per_h, "1/h", 4}, whole{whole_per_h, "1/h", 4};
  std::vector<std::string> shorter;
  for (const Finding& finding : cycles)
    if (finding.rule == fewer_is_faster_rule) shorter.push_back(finding.where);
  Sentence sentence("cell.fewer-is-faster.line.overtaking"_key,
                    {{"robot", robot}, {"rate", rate}, {"whole", whole}});
  if (!by_hand.empty())
    sentence = Sentence("cell.fewer-is-faster.line.hand"_key,
                        {{"robot", robot}, {"rate", rate}, {"whole", whole}, {"seams", by_hand.size()}});
  else if (!shorter.empty())
    sentence =
        Sentence("cell.fewer-is-faster.line.cycles"_key,
                 {{"robot", robot}, {"rate", rate}, {"whole", whole}, {"weldments", comma_list(shorter)}});
  return Finding{fewer_is_faster_rule, Severity::note, "line",   fewer_per_h,
                 whole_per_h,          "1/h",          sentence, "common practice, no source"};
}

}  // namespace seamtakt
