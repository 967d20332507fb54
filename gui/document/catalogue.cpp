#include "document/plan_items.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt::desk {

namespace {

/// The first one where there is no such row: a table of one's own may lack it.
std::size_t row_of(const ReferenceTable& table, std::string_view id) {
  for (std::size_t row = 0; row < table.size(); ++row)
    if (table.text(row, "id") == id) return row;
  return 0;
}

const char* table_of(std::string_view list) {
  if (list == "/base_metals") return "steels.csv";
  if (list == "/wires") return "wires.csv";
  return list == "/gases" ? "gases.csv" : nullptr;
}

/// Of a wire of that form under argon with carbon dioxide, as most are welded.
double deposition_efficiency_of(std::string_view form) {
  const ReferenceTable table("deposition_efficiency.csv");
  double first = 0;
  for (std::size_t row = 0; row < table.size(); ++row) {
    if (table.text(row, "form") != form) continue;
    const double efficiency = table.number(row, "deposition_efficiency");
    if (table.text(row, "gas") == "Ar + 25 % CO2") return efficiency;
    if (first == 0) first = efficiency;
  }
  return first;
}

Robot starter_robot(const Plan& plan, const char* id) {
  Robot robot;
  robot.id = id;
  robot.wrist_s = 1;
  robot.sense_point_s = 3;
  robot.arc_start_s = 0.5;
  robot.crater_fill_s = 0.5;
  robot.post_flow_s = 0.5;
  if (plan.wires.empty()) return robot;
  robot.loaded.emplace();
  robot.loaded->wire = plan.wires[0].id;
  if (!plan.gases.empty()) robot.loaded->gas = plan.gases[0].id;
  if (!plan.power_sources.empty()) robot.loaded->power_source = plan.power_sources[0].id;
  return robot;
}

}  // namespace

std::vector<std::string> catalogue_of(std::string_view list) {
  std::vector<std::string> ids;
  const char* name = table_of(list);
  if (name == nullptr) return ids;
  const ReferenceTable table(name);
  for (std::size_t row = 0; row < table.size(); ++row) ids.emplace_back(table.text(row, "id"));
  return ids;
}

BaseMetal catalogue_metal(std::string_view id) {
  const ReferenceTable steels("steels.csv");
  const std::size_t row = row_of(steels, id);
  BaseMetal metal;
  metal.id = steels.text(row, "id");
  metal.standard = steels.text(row, "standard") + ' ' + metal.id;
  metal.composition_basis = "standard-maximum";
  for (const char* element :
       {"C", "Si", "Mn", "P", "S", "N", "Cu", "Cr", "Ni", "Mo", "V", "Nb", "Ti", "B", "Mg", "Zn", "Fe"})
    if (const auto most = steels.number_or_empty(row, std::string(element) + "_max_pct"))
      metal.composition_pct.emplace_back(element, *most);
  return metal;
}

Wire catalogue_wire(std::string_view id) {
  const ReferenceTable wires("wires.csv");
  const std::size_t row = row_of(wires, id);
  Wire wire;
  wire.id = wires.text(row, "id");
  wire.classification = wires.text(row, "classification");
  wire.form = wires.text(row, "form");
  wire.material = wires.text(row, "material");
  wire.diameter_mm = wires.number(row, "diameter_mm");
  wire.density_g_cm3 = wires.number(row, "density_g_cm3");
  wire.alpha_mm_s_A = wires.number(row, "alpha_mm_s_A");
  wire.beta_per_s_A2 = wires.number(row, "beta_per_s_A2");
  wire.deposition_efficiency = deposition_efficiency_of(wire.form);
  return wire;
}

Gas catalogue_gas(std::string_view id) {
  const ReferenceTable gases("gases.csv");
  Gas gas;
  gas.id = gases.text(row_of(gases, id), "id");
  gas.designation = "ISO 14175 " + gas.id;
  return gas;
}

Cell starter_cell(const Plan& plan) {
  Cell cell;
  for (const char* id : {"R1", "R2"}) cell.robots.push_back(starter_robot(plan, id));
  for (const char* id : {"flat", "turned"}) cell.orientations.emplace_back().id = id;
  cell.orientations[0].rotation_deg = {0, 0, 0};
  cell.orientations[1].rotation_deg = {90, 0, 0};
  cell.orientation_change_s = 10;
  cell.positioner.emplace();
  cell.positioner->load_orientation = "flat";
  cell.positioner->turns.emplace_back();
  cell.positioner->turns[0].from = "flat";
  cell.positioner->turns[0].to = "turned";
  cell.positioner->turns[0].time_s = 10;
  cell.stations = 2;
  cell.index_s = 15;
  cell.torch_service.emplace();
  cell.torch_service->every_arc_s = 900;
  cell.torch_service->time_s = 30;
  return cell;
}

}  // namespace seamtakt::desk
