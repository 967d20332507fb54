#include "line/line_clock.hpp"

#include <cmath>

#include "line/order_times.hpp"

namespace seamtakt {

namespace {

/// The share of the runs from which on an order counts as late, not as one that may be.
constexpr double mostly = 0.5;

Sentence due_sentence(const UnitResult& unit, const std::string& due, double share) {
  std::vector<Argument> arguments{
      {"weldment", unit.weldment}, {"due", due}, {"share", UnitValue{100 * share, "%", 3}}};
  if (unit.scrapped) return Sentence("line.due.scrapped"_key, std::move(arguments));
  if (!unit.late_s) return Sentence("line.due.late.sometimes"_key, std::move(arguments));
  arguments.emplace_back("late", UnitValue{*unit.late_s / 3600, "h", 3});
  arguments.emplace_back("end", unit.end_clock);
  return Sentence("line.due.late"_key, std::move(arguments));
}

void judge_due(const Order& order, const WorkHours& clock, double share, bool late, UnitResult& unit,
               Findings& findings) {
  const double due_s = clock.elapsed_s(due_clock_s(order).value());
  unit.late_pct = 100 * share;
  if (late) unit.late_s = unit.end_s - due_s;
  if (share <= 0) return;
  findings.push_back({"line.due.late", share >= mostly ? Severity::fail : Severity::warn, unit.serial,
                      100 * share, 0, "%", due_sentence(unit, clock.clock(due_s), share), "plan limit"});
}

}  // namespace

void add_clock(const LineModel& model, const LineRun& run, const std::vector<Order>& orders,
               LineResult& line) {
  const WorkHours& clock = *model.hours;
  line.calendar_start = clock.clock(0);
  line.finished_clock = clock.clock(line.makespan_s);
  line.first_day = clock.day();
  line.first_day_clock = clock.clock(clock.day_end_s());
  line.has_dues = !model.due_s.empty();
  const double first_day_s = clock.work_s(clock.day_end_s());
  for (std::size_t i = 0; i < line.units.size(); ++i) {
    UnitResult& unit = line.units[i];
    const double end_s = run.units[i].end_s;
    unit.start_clock = clock.clock(unit.start_s);
    unit.end_clock = clock.clock(unit.end_s);
    if (unit.scrapped || is_late(end_s, first_day_s)) line.unfinished.push_back(unit.serial);
    if (!line.has_dues || !std::isfinite(model.due_s[i])) continue;
    const bool late = !unit.scrapped && is_late(end_s, model.due_s[i]);
    judge_due(orders[i], clock, line.figures.late_share[i], late, unit, line.findings);
  }
  for (const WaitingUnit& unit : line.waiting) line.unfinished.push_back(unit.order.serial);
}

}  // namespace seamtakt
