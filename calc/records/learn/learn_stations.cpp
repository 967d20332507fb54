// From the gaps between units: the time of an index, or of loading.
#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

#include "records/learn/learn_parts.hpp"

namespace seamtakt {

namespace {

/// From a unit's last arc to the next one's first.
struct UnitChange {
  const UnitActual *before, *after;
  double time_s = 0;  ///< without what the plan has between arc and station: the way home, the way out
};

/// Every pass welded as planned: else its last arc isn't the plan's.
bool as_planned(const UnitActual& unit) {
  return unit.time_s && std::all_of(unit.robots.begin(), unit.robots.end(), [](const RobotActual& robot) {
           return robot.skipped.empty() && robot.extra.empty();
         });
}

std::vector<UnitChange> changes_of(const CycleActual& actual) {
  std::vector<const UnitActual*> units;
  for (const UnitActual& unit : actual.units)
    if (unit.first != nullptr) units.push_back(&unit);
  std::sort(units.begin(), units.end(), [](const UnitActual* a, const UnitActual* b) {
    return std::tie(a->clock, a->first->first_arc_ns) < std::tie(b->clock, b->first->first_arc_ns);
  });
  std::vector<UnitChange> changes;
  for (std::size_t i = 1; i < units.size(); ++i) {
    const UnitActual &before = *units[i - 1], &after = *units[i];
    if (before.clock != after.clock || !as_planned(before) || !as_planned(after)) continue;
    const std::int64_t gap_ns = after.first->first_arc_ns - before.last->last_arc_ns;
    if (gap_ns < 0) continue;
    const PlannedTimeline &last = *actual.planned.at(before.weldment),
                          &next = *actual.planned.at(after.weldment);
    const double rest_s = before.last->end_stand_s && after.first->start_stand_s
                              ? *before.last->end_stand_s + *after.first->start_stand_s
                              : 0;
    changes.push_back({&before, &after,
                       static_cast<double>(gap_ns) / 1e9 + rest_s -
                           (last.cycle().weld_s - last.last_arc_s()) - next.first_arc_s()});
  }
  return changes;
}

/// The robust level of the changes, in place of a time of the plan.
void learn_level(const std::vector<UnitChange>& changes, const std::string& name, double& value,
                 Learned& learned) {
  if (changes.size() < least_records) {
    learned.undetermined.push_back({name, "Too few changes from one unit to the next hold it."_word});
    return;
  }
  std::unordered_map<const PassRecord*, double> time_s;
  Examples rows;
  for (const UnitChange& change : changes) {
    time_s[change.after->first] = change.time_s;
    rows.push_back({change.after->first, nullptr});
  }
  const ExampleResidual residual = [&](const Example& example, const Eigen::VectorXd& changed,
                                       Eigen::Ref<Eigen::VectorXd> slopes) {
    slopes[0] = -1;
    return time_s.at(example.record) - value - changed[0];
  };
  const auto checked = checked_fit(rows, residual, Eigen::VectorXd::Zero(1));
  if (!checked || 2 * checked->fit.rejected >= checked->fit.rows) {
    learned.undetermined.push_back({name, "The changes from one unit to the next don't agree."_word});
    return;
  }
  LearnedParameter parameter = changed_time(name, value, *checked, 0);
  if (parameter.proposed) value = parameter.new_value;
  learned.parameters.push_back(std::move(parameter));
}

/// Two stations: where the robots are the longer side, the index is all that is between two units.
void learn_index(std::vector<UnitChange> changes, Learned& learned) {
  std::erase_if(changes, [&](const UnitChange& change) {
    const Weldment& before = *find_by_id(learned.proposal.weldments, change.before->weldment);
    const Weldment& after = *find_by_id(learned.proposal.weldments, change.after->weldment);
    return change.before->time_s.value_or(0) < before.unload_s + after.load_s;
  });
  learn_level(changes, "cell/index_s", learned.proposal.cell->index_s, learned);
}

/// One station: the last unit is unloaded and the next one loaded. A log tells both together.
void learn_load(const std::vector<UnitChange>& changes, Learned& learned) {
  std::map<std::string, std::vector<UnitChange>> by_weldment;
  for (const UnitChange& change : changes) by_weldment[change.after->weldment].push_back(change);
  for (const auto& [id, of_weldment] : by_weldment) {
    Weldment& weldment = *find_by_id(learned.proposal.weldments, id);
    const std::string name = "weldments/" + id + "/load_s";
    const bool unloads = std::any_of(of_weldment.begin(), of_weldment.end(), [&](const UnitChange& change) {
      return find_by_id(learned.proposal.weldments, change.before->weldment)->unload_s > 0;
    });
    if (unloads)
      learned.undetermined.push_back({name, "A log tells loading only together with unloading."_word});
    else
      learn_level(of_weldment, name, weldment.load_s, learned);
  }
}

bool changes_fixtures(const Cell& cell, const UnitChange& change) {
  return change.before->weldment != change.after->weldment &&
         (cell.changeover_s > 0 || !cell.changeovers.empty());
}

}  // namespace

void learn_stations(const CycleActual& actual, Learned& learned) {
  // Where a robot's own times aren't the cell's, those between units aren't either.
  for (const GapUse& use : learned.gaps)
    if (use.used == 0) return;
  std::vector<UnitChange> changes = changes_of(actual);
  const Cell& cell = *learned.proposal.cell;
  std::erase_if(changes, [&](const UnitChange& change) { return changes_fixtures(cell, change); });
  if (changes.empty()) return;
  if (cell.stations >= 2)
    learn_index(std::move(changes), learned);
  else
    learn_load(changes, learned);
}

}  // namespace seamtakt
