#include "cell/timeline.hpp"

#include "cell/cycle_result.hpp"

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
  std::vector<int> overtaken;
  const Sequence sequence = sequence_given(compiled.model, &overtaken);
  for (const int seam : overtaken)
    compiled.findings.push_back(
        {"cycle.order.after", Severity::note,
         weldment.id + "/" + weldment.seams[compiled.model.seams[seam].source].id, std::nullopt, std::nullopt,
         "",
         "In the file it stands before a seam that must be welded first: a later seam was taken ahead of it.",
         "plan"});
  CycleResult cycle = cycle_of(plan, weldment, compiled, sequence);
  judge_cycle(plan, weldment, evaluation, cycle);
  return cycle;
}

}  // namespace seamtakt
