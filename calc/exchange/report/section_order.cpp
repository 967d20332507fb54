#include <algorithm>
#include <set>
#include <utility>

#include "exchange/report/plan_sections.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// A pass as a robot's programmer needs it. An intermittent seam's runs are one pass, which begins with the
/// first of them.
struct OrderedPass {
  const Move* arc;  ///< its first run
  std::size_t robot;
};

std::size_t robot_index(const Plan& plan, const std::string& id) {
  const auto& robots = plan.cell->robots;
  return static_cast<std::size_t>(
      std::find_if(robots.begin(), robots.end(), [&](const Robot& robot) { return robot.id == id; }) -
      robots.begin());
}

/// The passes of a cycle: robot by robot as the cell has them, each robot's in order of time.
std::vector<OrderedPass> passes_in_order(const Plan& plan, const CycleResult& cycle) {
  std::vector<OrderedPass> passes;
  std::set<std::pair<std::string_view, int>> seen;
  for (const Move& move : cycle.moves)
    if (move.kind == MoveKind::arc && seen.emplace(move.seam, move.pass).second)
      passes.push_back({&move, robot_index(plan, move.robot)});
  std::stable_sort(passes.begin(), passes.end(), [](const OrderedPass& a, const OrderedPass& b) {
    return a.robot != b.robot ? a.robot < b.robot : a.arc->start_s < b.arc->start_s;
  });
  return passes;
}

SheetCell text_or_none(const std::string& text) {
  return text.empty() ? SheetCell() : SheetCell(text);
}

std::vector<SheetCell> row_of(const CycleResult& cycle, const Seam& seam, const Move& arc, int number) {
  const auto pass = static_cast<std::size_t>(arc.pass);
  return {cycle.weldment,
          arc.robot,
          static_cast<double>(number),
          seam.id,
          static_cast<double>(arc.pass),
          Choice{arc.reversed ? "reversed" : "as-drawn"},
          text_or_none(seam.orientation),
          seam.schedules[pass - 1],
          arc.start_s,
          welded_length_mm(seam),
          pass <= seam.jobs.size() ? text_or_none(seam.jobs[pass - 1]) : SheetCell()};
}

void add_rows(const Plan& plan, const CycleResult& cycle, Sheet& sheet) {
  const Weldment* weldment = find_by_id(plan.weldments, cycle.weldment);
  if (!weldment || !plan.cell) return;
  std::size_t robot = plan.cell->robots.size();
  int number = 0;
  for (const OrderedPass& pass : passes_in_order(plan, cycle)) {
    if (pass.robot != robot) number = 0;
    robot = pass.robot;
    const Seam* seam = find_by_id(weldment->seams, pass.arc->seam);
    sheet.rows.push_back(row_of(cycle, *seam, *pass.arc, ++number));
  }
}

Sheet order_sheet() {
  return {"order",
          {{"weldment", {"Weldment"_word}},
           {"robot", {"Robot"_word}},
           {"number", {"Number"_word}, 0},
           {"seam", {"Seam"_word}},
           {"pass", {"Pass"_word}, 0},
           {"direction", {"Direction"_word}},
           {"orientation", {"Orientation"_word}},
           {"schedule", {"Schedule"_word}},
           {"planned_start_s", {"Planned start"_word, "s"}, 5},
           {"length_mm", {"Length"_word, "mm"}, 4},
           {"job", {"Job"_word}}},
          {}};
}

}  // namespace

/// For whoever programs the robots: which pass each robot welds as its first, second, ... of a weldment.
ReportSection order_section(const PlanReport& report) {
  Sheet sheet = order_sheet();
  for (const CycleResult& cycle : report.cycles) add_rows(report.plan, cycle, sheet);
  return {titled_table("Order sheet"_word, sheet), {sheet}};
}

}  // namespace seamtakt
