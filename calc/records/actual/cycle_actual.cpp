#include "records/actual/cycle_actual.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "base/error.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "records/actual/robot_comparison.hpp"

namespace seamtakt {

namespace {

constexpr double no_difference_s = 1e-3;

struct IsText {
  const char* contract;
  Word name;
};

/// In the order of ArcIs.
constexpr IsText is_texts[] = {{"planned", "as planned"_word},
                               {"again", "welded again"_word},
                               {"out-of-order", "out of the planned order"_word},
                               {"other-robot", "planned for another robot"_word},
                               {"not-planned", "not planned"_word}};
static_assert(std::size(is_texts) == static_cast<std::size_t>(ArcIs::not_planned) + 1);

/// Records of one unit, in the order of the log.
struct RecordsOfUnit {
  const PassRecord* first;
  std::vector<const PassRecord*> records;
};

std::vector<RecordsOfUnit> units_of(const std::vector<PassRecord>& records) {
  std::vector<RecordsOfUnit> units;
  std::map<std::pair<std::string_view, std::string_view>, std::size_t> index;
  for (const PassRecord& record : records) {
    if (record.arc_time_s <= 0) continue;
    const auto [at, is_new] = index.emplace(
        std::pair<std::string_view, std::string_view>(record.unit_serial, record.weldment), units.size());
    if (is_new) units.push_back({&record, {}});
    units[at->second].records.push_back(&record);
  }
  return units;
}

/// The planned timelines of the weldments that the records are of.
class Timelines {
 public:
  Timelines(const Plan& plan, CycleActual& actual) : plan_(plan), actual_(actual) {}

  /// nullptr where there is none: the weldment isn't the plan's, or its cell can't weld it.
  const PlannedTimeline* of(const std::string& weldment_id) {
    if (const auto at = actual_.planned.find(weldment_id); at != actual_.planned.end())
      return at->second.get();
    const Weldment* weldment = find_by_id(plan_.weldments, weldment_id);
    std::unique_ptr<const PlannedTimeline>& made = actual_.planned[weldment_id];
    if (weldment == nullptr) return nullptr;
    try {
      if (!evaluation_) evaluation_ = evaluate(plan_);
      made = std::make_unique<const PlannedTimeline>(cycle_given(plan_, *weldment, *evaluation_));
    } catch (const InputError&) {
      // A cell that gives no timeline is no reason to refuse a log: `cycle` says what is wrong with it.
    } catch (const std::invalid_argument&) {
      // Nor is a plan that can't be evaluated as a whole.
    }
    return made.get();
  }

 private:
  const Plan& plan_;
  CycleActual& actual_;
  std::optional<Evaluation> evaluation_;
};

/// The plan's robot that a record belongs to: the logged one, else the one that the plan has for its pass.
std::string robot_of(const PassRecord& record, const Plan& plan, const PlannedTimeline& planned) {
  if (!record.robot.empty() && find_by_id(plan.cell->robots, record.robot) != nullptr) return record.robot;
  if (const PlannedArc* pass = planned.pass(record.seam, record.pass.value_or(1))) return pass->robot;
  return plan.cell->robots.size() == 1 ? plan.cell->robots[0].id : std::string();
}

/// What a record's times count from; two records with the same can be compared.
std::string clock_of(const PassRecord& record) {
  return record.has_calendar_time ? "UTC" : record.source + '\n' + record.source_last;
}

/// Before robots are compared: which clock a unit has, and where it is zero.
struct UnitClock {
  std::optional<std::string> common;
  const WeldedArc* zero = nullptr;
  const PlannedArc* planned_zero = nullptr;
  std::string zero_robot;
};

class UnitComparison {
 public:
  UnitComparison(const RecordsOfUnit& unit, const Plan& plan, const PlannedTimeline& planned)
      : unit_(unit), plan_(plan), planned_(planned) {}

  UnitActual compare() {
    UnitActual actual;
    actual.unit_serial = unit_.first->unit_serial;
    actual.weldment = unit_.first->weldment;
    actual.planned_cycle_s = planned_.cycle().cycle_time_s;
    deal_out(actual);
    find_clock(actual);
    for (RobotComparison& robot : robots_)
      actual.robots.push_back(
          robot.compare(clock_.common && !robot.is_impossible() ? zero_of() : std::nullopt));
    if (clock_.zero != nullptr) sum_up(actual);
    return actual;
  }

 private:
  void deal_out(UnitActual& actual) {
    std::map<std::string, std::vector<const PassRecord*>> by_robot;
    bool taken = false;
    for (const PassRecord* record : unit_.records) {
      const std::string robot = robot_of(*record, plan_, planned_);
      taken = taken || robot != record->robot;
      by_robot[robot].push_back(record);
    }
    if (taken) actual.notes.push_back(Sentence("actual.robot.taken"_key));
    if (const auto at = by_robot.find(""); at != by_robot.end()) {
      actual.notes.push_back(Sentence("actual.robot.unknown"_key, {{"passes", at->second.size()}}));
      incomplete_ = true;
    }
    for (const Robot& robot : plan_.cell->robots) {
      const auto at = by_robot.find(robot.id);
      if (at != by_robot.end() || !planned_.passes(robot.id).empty())
        robots_.emplace_back(robot.id, planned_,
                             at != by_robot.end() ? at->second : std::vector<const PassRecord*>());
    }
  }

  void find_clock(UnitActual& actual) {
    std::set<std::string> clocks, logs;
    for (const PassRecord* record : unit_.records) {
      clocks.insert(clock_of(*record));
      logs.insert(record->source);
    }
    if (clocks.size() > 1) {
      actual.notes.push_back(Sentence("actual.clock.none"_key, {{"clocks", clocks.size()}}));
      return;
    }
    if (logs.size() > 1) actual.notes.push_back(Sentence("actual.clock.logs"_key, {{"logs", logs.size()}}));
    clock_.common = *clocks.begin();
    actual.clock = *clocks.begin();
    for (RobotComparison& robot : robots_) {
      if (robot.is_impossible()) {
        incomplete_ = true;
        continue;
      }
      const auto first = robot.first_planned();
      if (!first.first || (clock_.zero && clock_.zero->begin_ns <= first.first->begin_ns)) continue;
      clock_.zero = first.first;
      clock_.planned_zero = first.second;
      clock_.zero_robot = robot.robot();
    }
    if (clock_.zero == nullptr) actual.notes.push_back(Sentence("actual.nothing-planned"_key));
  }

  std::optional<ComparisonZero> zero_of() const {
    if (clock_.zero == nullptr) return std::nullopt;
    return ComparisonZero{clock_.zero->begin_ns, clock_.planned_zero->start_s, clock_.zero_robot,
                          name_of_planned(*clock_.planned_zero)};
  }

  void sum_up(UnitActual& actual) const {
    actual.aligned_at = clock_.zero_robot + ": " + name_of_planned(*clock_.planned_zero).text();
    if (incomplete_) return;
    actual.first = actual.last = clock_.zero->record;
    std::int64_t first_ns = clock_.zero->begin_ns, last_ns = clock_.zero->end_ns;
    for (const PassRecord* record : unit_.records) {
      first_ns = std::min(first_ns, record->first_ns);
      last_ns = std::max(last_ns, record->first_ns + std::int64_t{std::llround(record->duration_s * 1e9)});
      if (record->first_arc_ns < actual.first->first_arc_ns) actual.first = record;
      if (record->last_arc_ns > actual.last->last_arc_ns) actual.last = record;
    }
    actual.time_s = static_cast<double>(actual.last->last_arc_ns - actual.first->first_arc_ns) / 1e9;
    actual.logged_s = static_cast<double>(last_ns - first_ns) / 1e9;
    actual.planned_s = planned_.last_arc_s() - planned_.first_arc_s();
    actual.difference_s = *actual.time_s - *actual.planned_s;
  }

  const RecordsOfUnit& unit_;
  const Plan& plan_;
  const PlannedTimeline& planned_;
  std::vector<RobotComparison> robots_;
  UnitClock clock_;
  bool incomplete_ = false;  ///< a robot's times can't be used, so neither can the unit's
};

}  // namespace

const char* to_string(ArcIs is) {
  return is_texts[static_cast<std::size_t>(is)].contract;
}

Word name_of(ArcIs is) {
  return is_texts[static_cast<std::size_t>(is)].name;
}

std::string ArcName::text() const {
  std::string name = seam.empty() ? "-" : seam;
  if (pass > 0) name += "/pass " + std::to_string(pass);
  if (run > 0) name += "/run " + std::to_string(run);
  if (part > 1) name += " (" + std::to_string(part) + ")";
  return name;
}

std::vector<const CycleStep*> UnitActual::largest(std::size_t most) const {
  std::vector<const CycleStep*> steps;
  for (const RobotActual& robot : robots)
    for (const CycleStep& step : robot.steps)
      if (step.difference_s && std::fabs(*step.difference_s) >= no_difference_s) steps.push_back(&step);
  std::stable_sort(steps.begin(), steps.end(), [](const CycleStep* a, const CycleStep* b) {
    return std::fabs(*a->difference_s) > std::fabs(*b->difference_s);
  });
  if (steps.size() > most) steps.resize(most);
  return steps;
}

CycleActual cycle_actual(const std::vector<PassRecord>& records, const Plan& plan) {
  CycleActual actual;
  if (!plan.cell || plan.cell->robots.empty()) return actual;
  Timelines timelines(plan, actual);
  for (const RecordsOfUnit& unit : units_of(records)) {
    const PlannedTimeline* planned = timelines.of(unit.first->weldment);
    if (planned != nullptr) {
      actual.units.push_back(UnitComparison(unit, plan, *planned).compare());
      continue;
    }
    UnitActual without;
    without.unit_serial = unit.first->unit_serial;
    without.weldment = unit.first->weldment;
    without.notes.push_back(Sentence("actual.no-timeline"_key));
    actual.units.push_back(std::move(without));
  }
  return actual;
}

}  // namespace seamtakt
