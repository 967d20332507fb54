#include "document/document.hpp"
#include "document/plan_items.hpp"

namespace seamtakt::desk {

namespace {

/// A 1.2 mm wire in spray, common practice without a source: a draft to be changed.
Schedule starting_schedule(const std::string& wire, const std::string& gas) {
  Schedule schedule;
  schedule.id = "F1";
  schedule.status = "draft";
  schedule.process = "135";
  schedule.wire = wire;
  schedule.gas = gas;
  schedule.wire_feed_speed_m_min = 9.5;
  schedule.arc_voltage_V = 29;
  schedule.travel_speed_mm_s = 8;
  schedule.contact_tip_distance_mm = 18;
  schedule.arc_length_mm = 3;
  schedule.gas_flow_l_min = 16;
  return schedule;
}

}  // namespace

Plan starting_plan() {
  Plan plan;
  plan.base_metals.push_back(catalogue_metal("S355J2"));
  plan.wires.push_back(catalogue_wire("solid-steel-1.2"));
  plan.gases.emplace_back();
  plan.gases[0].id = "G18";
  plan.gases[0].designation = "ISO 14175 M21-ArC-18";
  plan.schedules.push_back(starting_schedule(plan.wires[0].id, plan.gases[0].id));
  plan.weldments.emplace_back().id = "W1";
  return plan;
}

}  // namespace seamtakt::desk
