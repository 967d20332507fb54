#pragma once

#include <cstddef>
#include <map>
#include <string_view>

#include "plan/rules/rules.hpp"

namespace seamtakt {

/// Passes whose estimated hardness keeps its limit by less than the estimate's scatter (+-56 HV): counted
/// pass by pass, said once a schedule, as most fillets of structural steel are so. Borrows the plan.
class HardnessTally {
 public:
  void add(const PassFacts& facts, const PassEvaluation& pass);
  void add(const HardnessTally& other);
  void report(const Plan& plan, Findings& findings) const;

 private:
  struct Near {
    std::size_t passes = 0;
    double beyond_HV = 0;  ///< of the one nearest to the limit, negative: inside
    double hardness_HV = 0, limit_HV = 0;
  };
  static void add(const Near& more, Near& to);

  std::map<std::string_view, Near> near_;  ///< by the schedule's id
};

}  // namespace seamtakt
