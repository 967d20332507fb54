#include "document/document.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt::desk {

namespace {

std::size_t row_of(const ReferenceTable& table, std::string_view id) {
  for (std::size_t row = 0; row < table.size(); ++row)
    if (table.text(row, "id") == id) return row;
  return 0;
}

/// The standard's greatest shares: cautious until a certificate gives better values.
BaseMetal starting_metal() {
  const ReferenceTable steels("steels.csv");
  const std::size_t row = row_of(steels, "S355J2");
  BaseMetal metal;
  metal.id = steels.text(row, "id");
  metal.standard = steels.text(row, "standard");
  metal.composition_basis = "standard-maximum";
  for (const char* element : {"C", "Si", "Mn", "P", "S", "Cu"})
    if (const auto most = steels.number_or_empty(row, std::string(element) + "_max_pct"))
      metal.composition_pct.emplace_back(element, *most);
  return metal;
}

Wire starting_wire() {
  const ReferenceTable wires("wires.csv");
  const std::size_t row = row_of(wires, "solid-steel-1.2");
  Wire wire;
  wire.id = wires.text(row, "id");
  wire.classification = wires.text(row, "classification");
  wire.form = wires.text(row, "form");
  wire.material = wires.text(row, "material");
  wire.diameter_mm = wires.number(row, "diameter_mm");
  wire.density_g_cm3 = wires.number(row, "density_g_cm3");
  wire.alpha_mm_s_A = wires.number(row, "alpha_mm_s_A");
  wire.beta_per_s_A2 = wires.number(row, "beta_per_s_A2");
  wire.deposition_efficiency = 0.96;
  return wire;
}

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
  plan.base_metals.push_back(starting_metal());
  plan.wires.push_back(starting_wire());
  plan.gases.emplace_back();
  plan.gases[0].id = "G18";
  plan.gases[0].designation = "ISO 14175 M21-ArC-18";
  plan.schedules.push_back(starting_schedule(plan.wires[0].id, plan.gases[0].id));
  plan.weldments.emplace_back().id = "W1";
  return plan;
}

}  // namespace seamtakt::desk
