#pragma once

#include <array>
#include <string_view>
#include <unordered_map>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// Every derived value of one pass. `sink` collects how, where it isn't nullptr.
PassEvaluation evaluate_pass(const PassFacts& facts, ExplanationSink* sink = nullptr);

/// The same values for the passes of one plan, quicker: what follows from schedule, plates, joint and
/// instruments is computed once for all seams that share them. Borrows the plan; not for two threads at once.
class PassEvaluator {
 public:
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
  std::unordered_map<Settings, PassEvaluation, Hash> known_;
};

/// The upper interpass temperature of a schedule (degC); empty where none is stated.
std::optional<double> upper_interpass_C(const Schedule& schedule);

}  // namespace seamtakt
