#include <iterator>

#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline/duty.hpp"
#include "plan/rules/acceptance.hpp"

namespace seamtakt {

void judge_cycle(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                 CycleResult& cycle) {
  Findings duty = duty_of_timeline(plan, weldment, evaluation, cycle);
  cycle.findings.insert(cycle.findings.end(), std::make_move_iterator(duty.begin()),
                        std::make_move_iterator(duty.end()));
  apply_acceptances(plan, AcceptanceScope::cycle_of(weldment.id), cycle.findings);
}

}  // namespace seamtakt
