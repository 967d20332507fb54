#include "cell/timeline/timeline.hpp"

#include <iterator>

#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline/planned_order.hpp"

namespace seamtakt {

namespace {

struct KindText {
  const char* contract;
  SentenceKey sentence;
};

/// In the order of MoveKind.
constexpr KindText kind_texts[] = {
    {"air", "cycle.move.air"_key},
    {"sense", "cycle.move.sense"_key},
    {"start", "cycle.move.start"_key},
    {"arc", "cycle.move.arc"_key},
    {"end", "cycle.move.end"_key},
    {"wait", "cycle.move.wait"_key},
    {"orientation", "cycle.move.orientation"_key},
    {"service", "cycle.move.service"_key},
    {"index", "cycle.move.index"_key},
    {"load", "cycle.move.load"_key},
    {"wire-change", "cycle.move.wire-change"_key},
    {"tip-change", "cycle.move.tip-change"_key},
    {"spool-change", "cycle.move.spool-change"_key},
};
static_assert(std::size(kind_texts) == static_cast<std::size_t>(last_move_kind) + 1);

}  // namespace

const char* to_string(MoveKind kind) {
  return kind_texts[static_cast<std::size_t>(kind)].contract;
}

Sentence kind_sentence(MoveKind kind) {
  return Sentence(kind_texts[static_cast<std::size_t>(kind)].sentence);
}

CycleResult cycle_given(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation) {
  CompiledCell compiled = compile_cell(plan, weldment, evaluation);
  const PlannedOrder planned = planned_order(plan, weldment, compiled);
  CycleResult cycle = cycle_of(plan, weldment, compiled, planned.sequence, planned.balance);
  judge_cycle(plan, weldment, evaluation, cycle);
  return cycle;
}

}  // namespace seamtakt
