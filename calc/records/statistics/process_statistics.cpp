#include "records/statistics/process_statistics.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "plan/limited_quantities.hpp"
#include "records/passes/recorded_value.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t least_values = 8;
constexpr double least_days = 1;
constexpr double wanted_Ppk = 1.33;
/// Most of the drifts said that may be chance.
constexpr double family_rate = 0.05;
constexpr const char* chart_source = "sqc-handbook-1956 (recalled)";
constexpr const char* capability_source =
    "iso-22514-2 (recalled); common practice, no source for the limit of 1.33";
constexpr const char* drift_source = "common practice, no source";

/// By its key, which names the unit in which the numbers of a sentence are: "current_A".
Word name_of(const LimitedQuantity& quantity) {
  return Word::of_table(quantity.key);
}

/// One finding a chart: where it first signals, and each rule with how often.
void add_signals(const QuantityStatistics& of, Word quantity, Findings& findings) {
  if (of.chart_signals.empty()) return;
  std::map<RunsRule, std::size_t> times;
  for (const RunsSignal& signal : of.chart_signals) ++times[signal.rule];
  std::vector<Sentence> rules;
  for (const auto& [rule, count] : times)
    rules.emplace_back("statistics.signal.rule"_key,
                       std::vector<Argument>{{"rule", name_of(rule)}, {"times", count}});
  const std::size_t first = of.chart_signals.front().at;
  findings.push_back({"statistics.signal", Severity::note, of.places[first], of.values[first],
                      of.chart.centre, of.unit,
                      Sentence("statistics.signal"_key, {{"quantity", quantity},
                                                         {"schedule", of.schedule},
                                                         {"robot", of.robot},
                                                         {"rules", std::move(rules)}}),
                      chart_source});
}

void add_capability(const QuantityStatistics& of, Word quantity, Findings& findings) {
  if (!of.capability || !of.capability->Ppk_low_95 || *of.capability->Ppk_low_95 >= wanted_Ppk) return;
  findings.push_back(
      {"statistics.capability.low", Severity::warn, "schedule " + of.schedule + "/" + of.robot,
       *of.capability->Ppk_low_95, wanted_Ppk, "",
       Sentence("statistics.capability.low"_key, {{"quantity", quantity},
                                                  {"low", UnitValue{*of.capability->Ppk_low_95, "", 3}},
                                                  {"Ppk", UnitValue{*of.capability->Ppk, "", 3}},
                                                  {"passes", of.values.size()}}),
       capability_source});
}

void add_quantity(const Schedule& schedule, const LimitedQuantity& quantity,
                  const std::vector<const PassRecord*>& records, ProcessStatistics& statistics,
                  Findings& findings) {
  QuantityStatistics of;
  of.schedule = schedule.id;
  of.robot = records.front()->robot;
  of.quantity = quantity.key;
  of.unit = quantity.unit;
  for (const PassRecord* record : records)
    if (const auto value = recorded_value(*record, quantity)) {
      of.values.push_back(*value);
      of.places.push_back(record->place());
    }
  if (of.values.size() < least_values) return;
  of.chart = *process_chart(of.values);
  of.chart_signals = runs_signals(of.values, of.chart);
  if (schedule.limits && (*schedule.limits).*quantity.limit) {
    const Interval& limit = *((*schedule.limits).*quantity.limit);
    of.capability = capability(of.values, limit.lower, limit.upper);
  }
  add_signals(of, name_of(quantity), findings);
  add_capability(of, name_of(quantity), findings);
  statistics.quantities.push_back(std::move(of));
}

/// A drift and the first of its records, whose names it has.
struct TestedDrift {
  const PassRecord* record;
  const LimitedQuantity* quantity;
  Drift drift;
};

void test_drift(const std::vector<const PassRecord*>& records, const LimitedQuantity& quantity,
                std::vector<TestedDrift>& tested) {
  std::vector<double> days, values;
  for (const PassRecord* record : records)
    if (const auto value = recorded_value(*record, quantity); value && record->has_calendar_time) {
      days.push_back(static_cast<double>(record->first_arc_ns) / 86400e9);
      values.push_back(*value);
    }
  if (values.size() < least_values) return;
  const auto [first, last] = std::minmax_element(days.begin(), days.end());
  if (*last - *first < least_days) return;
  const double begin = *first;
  for (double& day : days) day -= begin;
  if (const auto found = drift(days, values)) tested.push_back({records.front(), &quantity, *found});
}

/// Of the drifts tested at once, those that aren't chance.
void add_drifts(const std::vector<TestedDrift>& tested, ProcessStatistics& statistics, Findings& findings) {
  std::vector<double> p_values;
  for (const TestedDrift& each : tested) p_values.push_back(each.drift.p_value);
  const std::vector<bool> is_certain = certain_at_family_rate(p_values, family_rate);
  for (std::size_t i = 0; i < tested.size(); ++i) {
    if (!is_certain[i]) continue;
    const PassRecord& record = *tested[i].record;
    const LimitedQuantity& quantity = *tested[i].quantity;
    const Drift& found = tested[i].drift;
    statistics.drifts.push_back(
        {record.weldment, record.seam, record.robot, quantity.key, quantity.unit, found});
    findings.push_back({"statistics.drift", Severity::warn,
                        record.weldment + "/" + record.seam + "/" + record.robot, found.slope, std::nullopt,
                        std::string(quantity.unit) + "/d",
                        Sentence("statistics.drift"_key, {{"quantity", name_of(quantity)},
                                                          {"slope", UnitValue{found.slope}},
                                                          {"low", UnitValue{found.low_95}},
                                                          {"high", UnitValue{found.high_95}},
                                                          {"passes", found.values}}),
                        drift_source});
  }
}

void write_chart(JsonWriter& json, const ProcessChart& chart) {
  json.member("centre", chart.centre).member("sigma", chart.sigma).member("lower", chart.lower);
  json.member("upper", chart.upper).member("mean_moving_range", chart.mean_range);
  json.member("moving_range_upper", chart.range_upper);
}

void write_capability(JsonWriter& json, const std::optional<Capability>& capability) {
  if (!capability) {
    json.null_member("capability");
    return;
  }
  json.key("capability").begin_object(JsonWriter::Layout::compact);
  json.member("mean", capability->mean).member("overall_sd", capability->overall_sd);
  json.member("within_sd", capability->within_sd).member("Pp", capability->Pp).member("Ppk", capability->Ppk);
  json.member("Cp", capability->Cp)
      .member("Cpk", capability->Cpk)
      .member("Ppk_low_95", capability->Ppk_low_95);
  json.end_object();
}

}  // namespace

ProcessStatistics process_statistics(const std::vector<PassRecord>& records, const Plan& plan,
                                     Findings& findings) {
  ProcessStatistics statistics;
  for (const Schedule& schedule : plan.schedules) {
    std::map<std::string_view, std::vector<const PassRecord*>> by_robot;
    for (const PassRecord& record : records)
      if (record.schedule == schedule.id && record.arc_time_s > 0) by_robot[record.robot].push_back(&record);
    for (const auto& [robot, of_robot] : by_robot)
      for (const LimitedQuantity& quantity : limited_quantities)
        if (quantity.in_statistics) add_quantity(schedule, quantity, of_robot, statistics, findings);
  }
  std::map<std::tuple<std::string, std::string, int, std::string>, std::vector<const PassRecord*>> by_seam;
  for (const PassRecord& record : records)
    if (!record.schedule.empty() && record.arc_time_s > 0)
      by_seam[{record.weldment, record.seam, record.pass.value_or(0), record.robot}].push_back(&record);
  std::vector<TestedDrift> tested;
  for (const auto& [seam, of_seam] : by_seam)
    for (const LimitedQuantity& quantity : limited_quantities)
      if (quantity.in_statistics) test_drift(of_seam, quantity, tested);
  add_drifts(tested, statistics, findings);
  return statistics;
}

void write_statistics(JsonWriter& json, const ProcessStatistics& statistics) {
  json.key("statistics").begin_object();
  json.key("quantities").begin_array();
  for (const QuantityStatistics& of : statistics.quantities) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("schedule", of.schedule).member("robot", of.robot).member("quantity", of.quantity);
    json.member("unit", of.unit);
    json.member("passes", of.values.size());
    write_chart(json, of.chart);
    json.key("signals").begin_array();
    for (const RunsSignal& signal : of.chart_signals) {
      json.begin_object();
      json.member("rule", name_of(signal.rule).english()).member("where", of.places[signal.at]);
      json.member("value", of.values[signal.at]).end_object();
    }
    json.end_array();
    write_capability(json, of.capability);
    json.end_object();
  }
  json.end_array();
  json.key("drifts").begin_array();
  for (const SeamDrift& each : statistics.drifts) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("weldment", each.weldment).member("seam", each.seam).member("robot", each.robot);
    json.member("quantity", each.quantity).member("unit", each.unit).member("per_day", each.per_day.slope);
    json.member("low_95", each.per_day.low_95).member("high_95", each.per_day.high_95);
    json.member("passes", each.per_day.values).end_object();
  }
  json.end_array();
  json.end_object();
}

}  // namespace seamtakt
