#include "plan/evaluate/evaluate_pass.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"
#include "formula/wire/weld_metal_density.hpp"
#include "plan/evaluate/evaluation_notes.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"
#include "plan/evaluate/pass_metallurgy.hpp"
#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/planned_current.hpp"
#include "plan/seam_geometry.hpp"
#include "plan/wire_extension.hpp"

namespace seamtakt {

namespace {

void explain_pulse(const Pulse& pulse, ExplanationSink& sink) {
  const std::vector<SymbolValue> inputs = {{"Ip", "peak current", pulse.peak_A, "A"},
                                           {"Ib", "background current", pulse.background_A, "A"},
                                           {"tp", "peak time", pulse.peak_ms, "ms"},
                                           {"f", "frequency", pulse.frequency_Hz, "Hz"}};
  sink.add("current_A", pulse_mean_note, mean_current_A(pulse), "A", inputs);
  sink.add("rms_current_A", pulse_rms_note, rms_current_A(pulse), "A", inputs);
}

void add_current(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  if (const auto stated = stated_current_A(facts.schedule)) {
    pass.current_A = *stated;
    if (sink && !facts.schedule.current_A) explain_pulse(*facts.schedule.pulse, *sink);
    return;
  }
  const double feed = feed_mm_s_from_m_min(facts.schedule.wire_feed_speed_m_min);
  const double extension = wire_extension_mm(facts.schedule);
  pass.current_A = melting_current_A(feed, extension, facts.wire.alpha_mm_s_A, facts.wire.beta_per_s_A2);
  if (sink)
    sink->add("current_A", melting_current_note, pass.current_A, "A",
              {{"w", "wire feed speed", feed, "mm/s"},
               {"l", "electrode extension: contact tip distance less arc length", extension, "mm"},
               {"alpha", "of the wire", facts.wire.alpha_mm_s_A, "mm/(s A)"},
               {"beta", "of the wire", facts.wire.beta_per_s_A2, "1/(s A2)"}});
}

void add_heat(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const Schedule& schedule = facts.schedule;
  pass.voltage_V = schedule.arc_voltage_V;
  const double power_W = arc_power_W(pass.voltage_V, pass.current_A) * schedule.waveform_factor;
  pass.arc_power_kW = power_W / 1000;
  pass.arc_energy_kJ_mm = arc_energy_kJ_mm(power_W, schedule.travel_speed_mm_s);
  pass.thermal_efficiency = thermal_efficiency_of(schedule.process).value_or(0);
  pass.heat_input_kJ_mm = heat_input_kJ_mm(pass.arc_energy_kJ_mm, pass.thermal_efficiency);
  if (!sink) return;
  sink->add("arc_power_kW", pass_power_note, pass.arc_power_kW, "kW",
            {{"U", "arc voltage", pass.voltage_V, "V"},
             {"I", "current", pass.current_A, "A"},
             {"f", "waveform factor", schedule.waveform_factor, ""}},
            {"current_A"});
  sink->add("arc_energy_kJ_mm", arc_energy_note, pass.arc_energy_kJ_mm, "kJ/mm",
            {{"P", "arc power", power_W, "W"}, {"v", "travel speed", schedule.travel_speed_mm_s, "mm/s"}},
            {"arc_power_kW"});
  sink->add("heat_input_kJ_mm", heat_input_note, pass.heat_input_kJ_mm, "kJ/mm",
            {{"k", Sentence("symbol.thermal-efficiency"_key, {{"process", schedule.process}}),
              pass.thermal_efficiency, ""},
             {"E", "arc energy", pass.arc_energy_kJ_mm, "kJ/mm"}},
            {"arc_energy_kJ_mm"});
}

void add_deposit(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const Wire& wire = facts.wire;
  const double feed = facts.schedule.wire_feed_speed_m_min, speed = facts.schedule.travel_speed_mm_s;
  const double weld_density = weld_metal_density_g_cm3(wire.material);
  pass.melting_rate_kg_h = melting_rate_kg_h(wire_area_mm2(wire.diameter_mm), feed, wire.density_g_cm3);
  pass.deposition_rate_kg_h = deposition_rate_kg_h(pass.melting_rate_kg_h, wire.deposition_efficiency);
  pass.deposit_area_mm2 = deposit_area_mm2(pass.deposition_rate_kg_h, speed, weld_density);
  if (!sink) return;
  sink->add("melting_rate_kg_h", melting_mass_note, pass.melting_rate_kg_h, "kg/h",
            {{"d", "wire diameter", wire.diameter_mm, "mm"},
             {"W", "wire feed speed", feed, "m/min"},
             {"rho", "density of the wire as fed", wire.density_g_cm3, "g/cm3"}});
  sink->add("deposition_rate_kg_h", deposition_rate_note, pass.deposition_rate_kg_h, "kg/h",
            {{"eta", "deposition efficiency", wire.deposition_efficiency, ""},
             {"m", "melting rate", pass.melting_rate_kg_h, "kg/h"}},
            {"melting_rate_kg_h"});
  sink->add("deposit_area_mm2", deposit_area_note, pass.deposit_area_mm2, "mm2",
            {{"D", "deposition rate", pass.deposition_rate_kg_h, "kg/h"},
             {"v", "travel speed", speed, "mm/s"},
             {"rhow", "density of the weld metal", weld_density, "g/cm3"}},
            {"deposition_rate_kg_h"});
}

void explain_cooling(const PassFacts& facts, const PassEvaluation& pass, const ShapeFactors& shape,
                     double thickness, ExplanationSink* sink) {
  if (!sink) return;
  const bool two = pass.cooling_regime == "2D";
  std::vector<SymbolValue> inputs = {{"T0", "preheat", facts.schedule.preheat_C, "C"},
                                     {"Q", "heat input", pass.heat_input_kJ_mm, "kJ/mm"}};
  if (two) inputs.push_back({"d", "thinner plate", thickness, "mm"});
  inputs.emplace_back(two ? "F2" : "F3", Sentence("symbol.shape-factor"_key, {{"joint", facts.seam.joint}}),
                      two ? shape.f2 : shape.f3, "");
  sink->add("cooling_time_s", two ? cooling_time_2d_note : cooling_time_3d_note, *pass.cooling_time_s, "s",
            inputs, {"heat_input_kJ_mm"});
}

void add_cooling(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const ShapeFactors shape = *shape_factors_of(facts.seam.joint);
  const double Q = pass.heat_input_kJ_mm;
  const auto time_s = [&](const CoolingCase& at) { return cooling_time(Q, at).time_s; };
  const CoolingCases cases = cooling_cases(facts);
  const CoolingCase& at = cases.nominal;
  const double thinner = at.thickness_mm;
  const auto main = cooling_time(Q, at);
  pass.cooling_time_s = main.time_s;
  pass.cooling_regime = main.is_2d ? "2D" : "3D";
  const auto at_f2 = [&](double f2) { return time_s({thinner, at.start_C, f2, at.f3}); };
  pass.cooling_time_span_s = {at_f2(shape.f2_low), at_f2(shape.f2_high)};
  const auto of_plate = [&](std::size_t plate) {
    return time_s({facts.seam.thickness_mm[plate], at.start_C, at.f2, at.f3});
  };
  pass.cooling_time_plate_s = {of_plate(0), of_plate(1)};
  pass.cooling_time_fastest_s = time_s(cases.fastest);
  const std::optional<double> upper = upper_interpass_C(facts.schedule);
  if (upper && *upper < preheat_below_C) pass.cooling_time_hot_s = time_s({thinner, *upper, at.f2, at.f3});
  pass.cooling_time_slowest_s = time_s(cases.slowest);
  explain_cooling(facts, pass, shape, thinner, sink);
}

double post_flow_s(const PassFacts& facts) {
  if (!facts.plan.cell || facts.plan.cell->robots.empty() || facts.seam.by == "manual") return 0;
  const Robot* robot = facts.seam.robots.empty() ? nullptr : facts.index.robot(facts.seam.robots[0]);
  return (robot ? *robot : facts.plan.cell->robots[0]).post_flow_s;
}

void add_consumption(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const double speed = facts.schedule.travel_speed_mm_s, flow = facts.schedule.gas_flow_l_min;
  const double after = post_flow_s(facts),
               efficiency = facts.power_source ? facts.power_source->efficiency : 1;
  pass.length_mm = welded_length_mm(facts.seam);
  pass.arc_time_s = pass.length_mm / speed;
  pass.wire_g = pass.melting_rate_kg_h * pass.arc_time_s / 3.6;
  pass.gas_l = flow * (pass.arc_time_s + after) / 60;
  pass.energy_kWh = pass.arc_power_kW * pass.arc_time_s / 3600 / efficiency;
  if (!sink) return;
  sink->add("arc_time_s", arc_time_note, pass.arc_time_s, "s",
            {{"L", "welded length", pass.length_mm, "mm"}, {"v", "travel speed", speed, "mm/s"}});
  sink->add("wire_g", wire_mass_note, pass.wire_g, "g",
            {{"M", "melting rate", pass.melting_rate_kg_h, "kg/h"}, {"t", "arc time", pass.arc_time_s, "s"}},
            {"melting_rate_kg_h", "arc_time_s"});
  sink->add("gas_l", gas_note, pass.gas_l, "l",
            {{"F", "gas flow", flow, "l/min"},
             {"t", "arc time", pass.arc_time_s, "s"},
             {"tp", "post-flow", after, "s"}},
            {"arc_time_s"});
  sink->add("energy_kWh", energy_note, pass.energy_kWh, "kWh",
            {{"P", "arc power", pass.arc_power_kW, "kW"},
             {"t", "arc time", pass.arc_time_s, "s"},
             {"eta", "efficiency of the power source", efficiency, ""}},
            {"arc_power_kW", "arc_time_s"});
}

/// What follows from the schedule with its consumables, the plates, the joint and the instruments: the same
/// for every seam that is welded so.
void add_settings(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                  ExplanationSink* sink) {
  pass.schedule = facts.schedule.id;
  pass.process = facts.schedule.process;
  add_current(facts, pass, sink);
  add_heat(facts, pass, sink);
  add_deposit(facts, pass, sink);
  if (metals.is_ferritic) add_cooling(facts, pass, sink);
  add_metallurgy(facts, metals, pass, sink);
  pass.U_current_A = U_current_A(facts, pass);
  pass.U_heat_input_kJ_mm = U_heat_input_kJ_mm(facts, pass);
  if (pass.cooling_time_s)
    pass.U_cooling_time_s = U_cooling_time_s(facts, pass, cooling_cases(facts).nominal);
  if (!sink) return;
  PassBudgets budgets = pass_budgets(facts, pass);
  sink->add_budget("current_A", std::move(budgets.current));
  sink->add_budget("heat_input_kJ_mm", std::move(budgets.heat_input));
  sink->add_budget("cooling_time_s", std::move(budgets.cooling_time));
}

/// The rest: whose pass it is, and what its length takes.
void add_place_and_consumption(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  pass.weldment = facts.weldment.id;
  pass.seam = facts.seam.id;
  pass.pass = facts.pass;
  add_consumption(facts, pass, sink);
}

}  // namespace

PassEvaluation evaluate_pass(const PassFacts& facts, ExplanationSink* sink) {
  PassEvaluation pass;
  add_settings(facts, joint_metals(facts), pass, sink);
  add_place_and_consumption(facts, pass, sink);
  return pass;
}

void PassEvaluator::evaluate(const PassFacts& facts, PassEvaluation& pass) {
  const Settings settings{&facts.schedule,
                          {facts.metals[0], facts.metals[1]},
                          {facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]},
                          facts.seam.joint,
                          measured_robot(facts.plan, facts.seam)};
  if (known_.size() == most_known) known_.clear();
  const auto [known, is_new] = known_.try_emplace(settings, &pass);
  if (is_new)
    add_settings(facts, metals_of(facts), pass, nullptr);
  else
    pass = *known->second;
  add_place_and_consumption(facts, pass, nullptr);
}

const JointMetals& PassEvaluator::metals_of(const PassFacts& facts) {
  const auto thickness_mm = [&](std::size_t plate) {
    return depends_on_thickness(*facts.metals[plate]) ? facts.seam.thickness_mm[plate] : 0.0;
  };
  const MetalsKey key{facts.metals[0], facts.metals[1], &facts.wire, thickness_mm(0), thickness_mm(1)};
  const auto known = metals_.find(key);
  return known != metals_.end() ? known->second : metals_.emplace(key, joint_metals(facts)).first->second;
}

std::size_t PassEvaluator::Hash::operator()(const Settings& settings) const {
  std::size_t hash =
      std::hash<std::string_view>()(settings.joint) ^ std::hash<std::string_view>()(settings.robot);
  const auto add = [&](std::size_t part) { hash = (hash ^ part) * 0x9e3779b97f4a7c15u; };
  add(std::hash<const void*>()(settings.schedule));
  for (std::size_t plate = 0; plate < 2; ++plate) {
    add(std::hash<const void*>()(settings.metals[plate]));
    add(std::hash<double>()(settings.thickness_mm[plate]));
  }
  return hash;
}

}  // namespace seamtakt
