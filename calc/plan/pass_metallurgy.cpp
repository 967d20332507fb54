#include "plan/pass_metallurgy.hpp"

#include <algorithm>

#include "formula/carbon_equivalent.hpp"
#include "formula/composition.hpp"
#include "formula/haz_hardness.hpp"
#include "formula/penetration.hpp"
#include "formula/preheat.hpp"
#include "formula/transfer.hpp"

namespace seamtakt {

namespace {

using Steel = Composition<double>;

std::vector<SymbolValue> element_symbols(const Steel& steel) {
  std::vector<SymbolValue> symbols;
  for (const auto& [symbol, value] : Steel::members())
    symbols.push_back({std::string(symbol),
                       steel.was_reported(symbol) ? "mass %" : "mass %, not reported, taken as 0",
                       steel.*value, "%"});
  return symbols;
}

void add_carbon_equivalents(const Steel& steel, PassEvaluation& pass, ExplanationSink* sink) {
  pass.CE_IIW = carbon_equivalent_iiw_pct(steel);
  pass.CET = carbon_equivalent_cet_pct(steel);
  pass.Pcm = carbon_equivalent_pcm_pct(steel);
  pass.CEN = carbon_equivalent_cen_pct(steel);
  if (!sink) return;
  sink->add("CE_IIW", ce_iiw_note, pass.CE_IIW, "%", element_symbols(steel));
  sink->add("CET", cet_note, pass.CET, "%", element_symbols(steel));
  sink->add("Pcm", pcm_note, pass.Pcm, "%", element_symbols(steel));
  sink->add("CEN", cen_note, pass.CEN, "%", element_symbols(steel));
}

void add_preheat(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  if (!facts.wire.hydrogen_ml_100g) return;
  const double thicker = std::max(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]);
  const double hydrogen = *facts.wire.hydrogen_ml_100g;
  pass.preheat_needed_C = preheat_method_b_C(pass.CET, thicker, hydrogen, pass.heat_input_kJ_mm);
  if (sink)
    sink->add("preheat_needed_C", preheat_method_b_note, *pass.preheat_needed_C, "C",
              {{"CET", "of the metal with the higher one", pass.CET, "%"},
               {"d", "thicker plate", thicker, "mm"},
               {"HD", "diffusible hydrogen of the wire", hydrogen, "ml/100g"},
               {"Q", "heat input", pass.heat_input_kJ_mm, "kJ/mm"}},
              {"CET", "heat_input_kJ_mm"});
}

void add_hardness(const Steel (&steels)[2], PassEvaluation& pass, ExplanationSink* sink) {
  for (std::size_t plate = 0; plate < 2; ++plate) {
    const double time = pass.cooling_time_plate_s[plate];
    const HardeningElements elements = hardening_elements(steels[plate]);
    const std::optional<double> hardness = yurioka_hardness_HV(elements, time);
    if (!hardness || (pass.haz_hardness_HV && *hardness <= *pass.haz_hardness_HV)) continue;
    pass.haz_hardness_HV = hardness;
    if (!sink) continue;
    const TransformationTimes times = yurioka_times(elements);
    const HardnessLimits limits = yurioka_limits(elements);
    sink->add("haz_hardness_HV", yurioka_hardness_note, *hardness, "HV",
              {{"HM", "martensite", limits.martensite_HV, "HV"},
               {"HB", "bainite", limits.bainite_HV, "HV"},
               {"t", "cooling time t8/5 of plate " + std::to_string(plate + 1), time, "s"},
               {"tM", "all martensite up to", times.martensite_s, "s"},
               {"tB", "no martensite from", times.bainite_s, "s"}});
  }
}

void add_penetration(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const double speed = facts.schedule.travel_speed_mm_s;
  pass.penetration_mm = penetration_mm(pass.current_A, pass.voltage_V, speed, penetration_coefficient);
  if (sink)
    sink->add("penetration_mm", penetration_note, pass.penetration_mm, "mm",
              {{"K", "coefficient of the inch form", penetration_coefficient, ""},
               {"I", "current", pass.current_A, "A"},
               {"v", "travel speed", speed, "mm/s"},
               {"U", "arc voltage", pass.voltage_V, "V"}},
              {"current_A"});
}

/// As the schedule says; else from the published transition current.
void add_transfer(const PassFacts& facts, PassEvaluation& pass) {
  if (!facts.schedule.transfer.empty()) {
    pass.transfer_mode = facts.schedule.transfer;
    return;
  }
  pass.transfer_mode = "not published";
  const auto gas = facts.gas ? shielding_gas_of(facts.gas->designation) : std::nullopt;
  if (!gas || facts.wire.form != "solid") return;
  pass.transfer_mode = transfer_mode(
      transition_current<double>(facts.wire.material, facts.wire.diameter_mm, *gas), pass.current_A);
}

}  // namespace

void add_metallurgy(const PassFacts& facts, PassEvaluation& pass, ExplanationSink* sink) {
  const Steel steels[2] = {composition_of<double>(facts.metals[0]->composition_pct),
                           composition_of<double>(facts.metals[1]->composition_pct)};
  const bool second = carbon_equivalent_cet_pct(steels[1]) > carbon_equivalent_cet_pct(steels[0]);
  add_carbon_equivalents(steels[second ? 1 : 0], pass, sink);
  add_preheat(facts, pass, sink);
  add_hardness(steels, pass, sink);
  add_penetration(facts, pass, sink);
  add_transfer(facts, pass);
}

}  // namespace seamtakt
