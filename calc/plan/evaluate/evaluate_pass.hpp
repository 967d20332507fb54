#pragma once

#include <array>
#include <map>
#include <string_view>
#include <tuple>
#include <unordered_map>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/evaluate/joint_metals.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// Every derived value of one pass. `sink` collects how, where it isn't nullptr.
PassEvaluation evaluate_pass(const PassFacts& facts, ExplanationSink* sink = nullptr);

/// The same values for the passes of one plan, quicker: what follows from schedule, plates, joint and
/// instruments is computed once for seams that share them, what follows from the metals once for each three
/// of them. Borrows the plan; not for two threads at once.
class PassEvaluator {
 public:
  /// The row stays where it is while this lives: later passes with the same settings are copied from it.
  void evaluate(const PassFacts& facts, PassEvaluation& pass);

 private:
  struct Settings {
    const Schedule* schedule;
    std::array<const BaseMetal*, 2> metals;
    std::array<double, 2> thickness_mm;
    std::string_view joint, robot;  ///< robot: whose instruments count
    bool operator==(const Settings&) const = default;
  };
  struct Hash {
    std::size_t operator()(const Settings& settings) const;
  };
  const JointMetals& metals_of(const PassFacts& facts);

  /// Settings that are kept: a plan whose seams share them has few, and where none are shared it costs memory
  /// alone.
  static constexpr std::size_t most_known = 512;
  std::unordered_map<Settings, const PassEvaluation*, Hash> known_;
  /// The two plates' metals and the wire; a thickness where the metal's composition depends on it, else 0.
  using MetalsKey = std::tuple<const BaseMetal*, const BaseMetal*, const Wire*, double, double>;
  std::map<MetalsKey, JointMetals> metals_;
};

}  // namespace seamtakt
