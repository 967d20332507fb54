#include "cell/timeline/timeline.hpp"

#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline/planned_order.hpp"

namespace seamtakt {

const char* to_string(MoveKind kind) {
  switch (kind) {
    case MoveKind::air:
      return "air";
    case MoveKind::sense:
      return "sense";
    case MoveKind::start:
      return "start";
    case MoveKind::arc:
      return "arc";
    case MoveKind::end:
      return "end";
    case MoveKind::wait:
      return "wait";
    case MoveKind::orientation:
      return "orientation";
    case MoveKind::service:
      return "service";
    case MoveKind::index:
      return "index";
    case MoveKind::load:
      return "load";
    case MoveKind::wire_change:
      return "wire-change";
  }
  return "";
}

CycleResult cycle_given(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation) {
  CompiledCell compiled = compile_cell(plan, weldment, evaluation);
  const PlannedOrder planned = planned_order(plan, weldment, compiled);
  CycleResult cycle = cycle_of(plan, weldment, compiled, planned.sequence, planned.balance);
  judge_cycle(plan, weldment, evaluation, cycle);
  return cycle;
}

}  // namespace seamtakt
