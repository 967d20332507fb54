#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>

#include "base/finding.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

inline bool is_open(const PassEvaluation& pass, OpenLimit limit) {
  return (pass.left_open & static_cast<std::uint8_t>(limit)) != 0;
}

/// Above this share of a limit's width (of one end alone: of its value) an uncertainty leaves the decision
/// to chance (common practice, no source: an uncertainty of at most a quarter of what is to be told apart).
inline constexpr double most_of_limit = 0.25;

/// Whether a planned value with this U is too uncertain to be judged by a limit, as its current follows from
/// the melting law. Under a guarded decision alone.
bool is_left_open(const PassFacts& facts, std::optional<double> U, const Interval& limit);

/// The limits of the schedule, and of its procedure test, that aren't judged for the pass: bits of OpenLimit.
/// Against a test whose wire feed is known heat input and current stay judged: the law's error is common to
/// both.
std::uint8_t open_limits(const PassFacts& facts, const PassEvaluation& pass);

/// Passes with such limits, counted pass by pass, said once a schedule: its current is to be measured.
/// Borrows the plan.
class OpenLimitTally {
 public:
  void add(const PassFacts& facts, const PassEvaluation& pass);
  void add(const OpenLimitTally& other);
  void report(const Plan& plan, Findings& findings) const;

 private:
  struct Open {
    std::size_t passes = 0;
    std::uint8_t limits = 0;
    double U_current_pct = 0;  ///< the largest
  };
  static void add(const Open& more, Open& to);

  std::map<std::string_view, Open> open_;  ///< by the schedule's id
};

}  // namespace seamtakt
