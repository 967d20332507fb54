#pragma once

#include <map>
#include <string>
#include <vector>

#include "line/line_result.hpp"
#include "line/orders.hpp"

namespace seamtakt::test {

inline Stage named_stage(const std::string& time_of, int servers = 1, int buffer_after = 0) {
  Stage stage;
  stage.id = time_of;
  stage.time_of = time_of;
  stage.servers = servers;
  stage.buffer_after = buffer_after;
  return stage;
}

inline Stage timed_stage(const std::string& id, double time_s, int servers = 1, int buffer_after = 0) {
  Stage stage = named_stage("", servers, buffer_after);
  stage.id = id;
  stage.time_s = time_s;
  return stage;
}

inline Weldment weldment_of(const std::string& id, double load_s, double unload_s) {
  Weldment weldment;
  weldment.id = id;
  weldment.load_s = load_s;
  weldment.unload_s = unload_s;
  return weldment;
}

/// A line with these stages, a cell with `stations` and an index of 10 s, and two weldments: A (load 100,
/// unload 50) and B (load 300, unload 200).
inline Plan line_plan(std::vector<Stage> stages, int stations = 1) {
  Plan plan;
  plan.weldments = {weldment_of("A", 100, 50), weldment_of("B", 300, 200)};
  plan.cell = Cell{};
  plan.cell->stations = stations;
  plan.cell->index_s = 10;
  plan.line = Line{};
  plan.line->takt_s = 1000;
  plan.line->stages = std::move(stages);
  return plan;
}

inline Shift shift_of(std::vector<std::string> days, const std::string& from, const std::string& to,
                      std::vector<TextPair> breaks = {}) {
  Shift shift;
  shift.days = std::move(days);
  shift.from = from;
  shift.to = to;
  shift.breaks = std::move(breaks);
  return shift;
}

/// "ABBA": an order a letter, all without a due date.
inline std::vector<Order> orders_of(const std::string& letters) {
  std::vector<Order> orders;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    Order order;
    order.serial = "U" + std::to_string(i + 1);
    order.weldment = letters.substr(i, 1);
    order.number = static_cast<std::uint32_t>(i);
    order.due_key = "9999-99-99";
    orders.push_back(order);
  }
  return orders;
}

/// Cycles with a given time to weld, as if the cell had been asked.
inline LineRequest request_with(const std::map<std::string, double>& weld_s) {
  LineRequest request;
  request.cycle_of = [weld_s](const Weldment& weldment) {
    CycleResult cycle;
    cycle.weldment = weldment.id;
    cycle.weld_s = weld_s.contains(weldment.id) ? weld_s.at(weldment.id) : 0;
    return cycle;
  };
  return request;
}

inline LineResult line_of(const Plan& plan, const std::string& letters, const LineRequest& request) {
  return simulate_line(plan, Evaluation{}, release_all(orders_of(letters)), request);
}

inline std::vector<double> ends_of(const LineResult& line) {
  std::vector<double> ends;
  for (const UnitResult& unit : line.units) ends.push_back(unit.end_s);
  return ends;
}

/// The first finding of a rule; nullptr where there is none.
inline const Finding* finding_of(const Findings& findings, const std::string& rule) {
  for (const Finding& finding : findings)
    if (finding.rule == rule) return &finding;
  return nullptr;
}

inline const Finding* finding_of(const LineResult& line, const std::string& rule) {
  return finding_of(line.findings, rule);
}

}  // namespace seamtakt::test
