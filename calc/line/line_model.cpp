#include "line/line_model.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "line/random_stream.hpp"

namespace seamtakt {

namespace {

constexpr double least_yield_with_rework = 0.01;
/// No real plan has less; and quotients by it stay finite.
constexpr double least_availability = 1e-3;
/// More of them within one unit's work are a slip of a unit, and take long to draw.
constexpr double most_stops = 1000;
enum Purpose : std::uint64_t { up_time, repair_time, quality };

void require(bool holds, const std::string& where, double found, Word expected) {
  if (!holds) throw InputError(where, number_text(found), expected);
}

void check_stage(const LineStage& stage, int index, int last, const std::string& where) {
  const std::string at = where + ": stage " + stage.id;
  require(stage.servers >= 1, at + "/servers", stage.servers, "1 or more"_word);
  require(stage.buffer_after >= 0, at + "/buffer_after", stage.buffer_after, "0 or more"_word);
  require(stage.availability >= least_availability && stage.availability <= 1, at + "/availability",
          stage.availability, "a share from 0.001 to 1"_word);
  require(stage.repair_s >= 0, at + "/repair_s", stage.repair_s, "0 or more"_word);
  require(stage.rework_s >= 0, at + "/rework_s", stage.rework_s, "0 or more"_word);
  require(stage.yield >= 0 && stage.yield <= 1, at + "/yield_pct", stage.yield * 100, "0 to 100"_word);
  if (stage.rework_to < 0) return;
  if (stage.rework_to > index || stage.rework_to > last)
    throw InputError(at + "/rework_to", "a stage behind it"_word, "this stage or an earlier one"_word);
  require(stage.yield >= least_yield_with_rework, at + "/yield_pct", stage.yield * 100,
          "1 or more where the others are sent back, for else units hardly ever leave"_word);
}

double stops_in(const LineStage& stage, double work_s) {
  if (stage.availability >= 1 || stage.repair_s <= 0) return 0;
  return work_s * (1 - stage.availability) / stage.availability / stage.repair_s;
}

void check_stops(const LineStage& stage, double work_s, const std::string& where) {
  if (stops_in(stage, work_s) <= most_stops) return;
  throw InputError(where + ": stage " + stage.id + "/repair_s",
                   Sentence("line.refusal.stops"_key, {{"repair", UnitValue{stage.repair_s, "s", 15}},
                                                       {"stops", UnitValue{stops_in(stage, work_s), "", 3}},
                                                       {"work", UnitValue{work_s, "s", 6}}}),
                   Sentence("line.refusal.most-stops"_key, {{"most", UnitValue{most_stops, ""}}}));
}

}  // namespace

void check_line_model(const LineModel& model, const std::string& where) {
  if (model.stages.empty()) throw InputError(where, "a line without stages"_word, "at least one stage"_word);
  const int last = static_cast<int>(model.stage_count()) - 1;
  for (int i = 0; i <= last; ++i) check_stage(model.stages[static_cast<std::size_t>(i)], i, last, where);
  if (model.work_s.size() != model.unit_count() * model.stage_count())
    throw std::invalid_argument("line model: work times don't fit units and stages");
  if (!model.change_s.empty() && (model.change_s.size() != model.unit_count() || model.change_stage < 0))
    throw std::invalid_argument("line model: changes don't fit the units");
  const auto fits = [&](const std::vector<double>& list) {
    return list.empty() || list.size() == model.unit_count();
  };
  if (!fits(model.available_s) || !fits(model.due_s))
    throw std::invalid_argument("line model: orders' times don't fit the units");
  for (const double work_s : model.work_s)
    require(std::isfinite(work_s) && work_s >= 0, where, work_s, "a work time of 0 or more"_word);
  for (std::size_t i = 0; i < model.work_s.size(); ++i)
    check_stops(model.stages[i % model.stage_count()], model.work_s[i], where);
  for (const LineStage& stage : model.stages) check_stops(stage, stage.rework_s, where);
}

double expected_stops(const LineModel& model) {
  double stops = 0;
  for (std::size_t i = 0; i < model.work_s.size(); ++i)
    stops += stops_in(model.stages[i % model.stage_count()], model.work_s[i]);
  return stops;
}

bool is_certain(const LineModel& model) {
  return std::all_of(model.stages.begin(), model.stages.end(), [](const LineStage& stage) {
    const bool stops_by_chance = stage.availability < 1 && stage.repair_s > 0;
    return !stops_by_chance && (stage.yield >= 1 || stage.yield <= 0) && stage.variation.is_constant();
  });
}

StopTimes::StopTimes(const LineModel& model, std::uint64_t seed) {
  for (std::size_t i = 0; i < model.stage_count(); ++i) {
    const LineStage& given = model.stages[i];
    Stage stage{.up = {seed, i, up_time}, .repair = {seed, i, repair_time}, .quality = {seed, i, quality}};
    stage.yield = given.yield;
    stage.repair_s = given.repair_s;
    if (given.availability < 1) {
      const double down_per_up = (1 - given.availability) / given.availability;
      stage.kind = given.repair_s > 0 ? Kind::random : Kind::even;
      stage.even_per_s = down_per_up;
      stage.mean_up_s = given.repair_s / down_per_up;
    }
    stages_.push_back(stage);
  }
}

double StopTimes::drawn_s(const Stage& stage, std::uint32_t random_stream_id, std::uint32_t visit,
                          double work_s, double u) {
  double at_s = 0, stopped_s = 0;
  for (std::uint64_t stop = 0;; u = stage.up.uniform(random_stream_id, visit, ++stop)) {
    at_s -= std::log(u) * stage.mean_up_s;
    if (at_s >= work_s) return stopped_s;
    stopped_s -= std::log(stage.repair.uniform(random_stream_id, visit, stop)) * stage.repair_s;
  }
}

}  // namespace seamtakt
