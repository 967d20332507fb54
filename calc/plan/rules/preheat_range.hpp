#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string_view>

#include "formula/metal/preheat.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

inline constexpr const char* method_b_source = preheat_limit.source;

/// What of the passes' preheat is judged at the edge of method B's range, and what can't be judged: counted
/// pass by pass, said once for the plan or once for a schedule. Borrows the plan.
class PreheatRangeTally {
 public:
  /// A pass whose figures are known.
  void add(const PassFacts& facts, const PassEvaluation& pass) {
    passes_at_edge_ += pass.preheat_at_edge != 0;
    inputs_at_edge_ |= pass.preheat_at_edge;
    if (pass.preheat_beyond) add_beyond(facts, pass);
  }
  void add(const PreheatRangeTally& other);
  void report(const Plan& plan, Findings& findings) const;

 private:
  struct Beyond {
    std::size_t passes = 0;
    double farthest = 0;  ///< of their values from the range
  };
  static constexpr std::size_t inputs = std::size(preheat_input_ranges);

  void add_beyond(const PassFacts& facts, const PassEvaluation& pass);
  static void take(Beyond& to, const Beyond& more, const PreheatInputRange& input);
  void report_edge(Findings& findings) const;

  std::size_t passes_at_edge_ = 0;
  std::uint8_t inputs_at_edge_ = 0;
  std::map<std::string_view, std::array<Beyond, inputs>> beyond_;  ///< by the schedule's id
};

}  // namespace seamtakt
