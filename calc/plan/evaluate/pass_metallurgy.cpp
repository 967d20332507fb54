#include "plan/evaluate/pass_metallurgy.hpp"

#include <algorithm>

#include "formula/metal/carbon_equivalent.hpp"
#include "formula/metal/cev_limit.hpp"
#include "formula/metal/composition.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/size/penetration.hpp"
#include "formula/wire/transfer.hpp"
#include "plan/evaluate/evaluation_notes.hpp"

namespace seamtakt {

namespace {

using Steel = Composition<double>;

bool is_scaled(double Steel::*member) {
  const auto scaled = alloying_members<double>();
  return std::find(scaled.begin(), scaled.end(), member) != scaled.end();
}

std::vector<SymbolValue> element_symbols(const SteelOfMetal& of) {
  std::vector<SymbolValue> symbols;
  for (const auto& [symbol, value] : Steel::members()) {
    const char* meaning = !of.steel.was_reported(symbol)           ? "mass %, not reported, taken as 0"
                          : of.alloy_share < 1 && is_scaled(value) ? "mass %, its maximum times f"
                                                                   : "mass %";
    symbols.push_back({std::string(symbol), meaning, of.steel.*value, "%"});
  }
  return symbols;
}

/// Why the alloying elements stay below their maxima.
void explain_alloy_share(const CompositionPct& composition_pct, const SteelOfMetal& of,
                         ExplanationSink& sink) {
  const auto at_maxima = composition_of<double>(composition_pct);
  sink.add("alloy_share", alloy_share_note, of.alloy_share, "",
           {{"CEV", "highest that the standard or the certificate has", *of.cev_pct, "%"},
            {"CE", "of every element at its maximum", carbon_equivalent_iiw_pct(at_maxima), "%"},
            {"C", "mass %", at_maxima.C, "%"}});
}

void add_carbon_equivalents(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                            ExplanationSink* sink) {
  if (!metals.is_ferritic) return;
  const Steel& steel = metals.steels[metals.higher_cet];
  const SteelOfMetal& of = metals.of_metals[metals.higher_cet];
  pass.CE_IIW = of.CE_IIW_pct;
  pass.CET = metals.cet_pct;
  pass.Pcm = carbon_equivalent_pcm_pct(steel);
  pass.CEN = carbon_equivalent_cen_pct(steel);
  if (!sink) return;
  const BaseMetal& metal = *facts.metals[metals.higher_cet];
  std::vector<std::string> below;
  if (of.alloy_share < 1) {
    explain_alloy_share(metal.composition_pct, of, *sink);
    below = {"alloy_share"};
  }
  if (metal.CEV)
    sink->add("CE_IIW", stated_cev_note, *pass.CE_IIW, "%", {{"CEV", "of the certificate", *metal.CEV, "%"}});
  else
    sink->add("CE_IIW", ce_iiw_note, *pass.CE_IIW, "%", element_symbols(of), below);
  if (pass.CET) sink->add("CET", cet_note, *pass.CET, "%", element_symbols(of), below);
  sink->add("Pcm", pcm_note, *pass.Pcm, "%", element_symbols(of), below);
  sink->add("CEN", cen_note, *pass.CEN, "%", element_symbols(of), below);
}

void explain_preheat(const JointMetals& metals, const PreheatCase& judged, const PassEvaluation& pass,
                     ExplanationSink* sink) {
  if (!sink) return;
  const PreheatInputs& in = judged.inputs;
  std::vector<SymbolValue> inputs = {
      {"CET", "higher one of the joined metals, or of the weld metal where given", in.cet_pct, "%"},
      {"d", "thicker plate", in.thickness_mm, "mm"},
      {"HD", "diffusible hydrogen of the wire", in.hydrogen_ml_100g, "ml/100g"},
      {"Q", "heat input", in.heat_input_kJ_mm, "kJ/mm"}};
  for (std::size_t i = 0; i < inputs.size(); ++i)
    if (judged.at_edge & preheat_input_ranges[i].bit)
      inputs[i].meaning = Sentence("symbol.at-edge"_key, {{"meaning", std::move(inputs[i].meaning)}});
  if (metals.weld_metal_cet_pct)
    sink->add("cet_used", design_cet_note, *metals.design_cet_pct, "%",
              {{"CET", "parent metal", *metals.cet_pct, "%"},
               {"CETw", "weld metal", *metals.weld_metal_cet_pct, "%"}},
              {"CET"});
  const double by_method =
      preheat_method_b_C(in.cet_pct, in.thickness_mm, in.hydrogen_ml_100g, in.heat_input_kJ_mm);
  const std::vector<std::string> below = {metals.weld_metal_cet_pct ? "cet_used" : "CET", "heat_input_kJ_mm"};
  if (by_method >= coldest_plate_C) {
    sink->add("preheat_needed_C", preheat_method_b_note, by_method, "C", inputs, below);
    return;
  }
  sink->add("preheat_C", preheat_method_b_note, by_method, "C", inputs, below);
  sink->add("preheat_needed_C", coldest_plate_note, *pass.preheat_needed_C, "C",
            {{"Tp", "by method B", by_method, "C"}, {"Tmin", "coldest plate", coldest_plate_C, "C"}},
            {"preheat_C"});
}

void add_preheat(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                 ExplanationSink* sink) {
  const std::optional<PreheatCase> judged = preheat_case_of(facts, metals, pass.heat_input_kJ_mm);
  if (!judged) return;
  pass.preheat_at_edge = judged->at_edge;
  pass.preheat_beyond = judged->beyond;
  if (judged->beyond) return;
  const PreheatInputs& in = judged->inputs;
  pass.preheat_needed_C =
      preheat_needed_C(in.cet_pct, in.thickness_mm, in.hydrogen_ml_100g, in.heat_input_kJ_mm);
  explain_preheat(metals, *judged, pass, sink);
}

void add_hardness(const JointMetals& metals, PassEvaluation& pass, ExplanationSink* sink) {
  if (!metals.has_hardness) return;
  for (std::size_t plate = 0; plate < 2; ++plate) {
    const double time = (*pass.cooling_time_plate_s)[plate];
    const HardeningElements elements = hardening_elements(metals.steels[plate]);
    const std::optional<double> hardness = yurioka_hardness_HV(elements, time);
    if (!hardness || (pass.haz_hardness_HV && *hardness <= *pass.haz_hardness_HV)) continue;
    pass.haz_hardness_HV = hardness;
    if (!sink) continue;
    const TransformationTimes times = yurioka_times(elements);
    const HardnessLimits limits = yurioka_limits(elements);
    sink->add("haz_hardness_HV", yurioka_hardness_note, *hardness, "HV",
              {{"HM", "martensite", limits.martensite_HV, "HV"},
               {"HB", "bainite", limits.bainite_HV, "HV"},
               {"t", Sentence("symbol.cooling-time-of-plate"_key, {{"plate", plate + 1}}), time, "s"},
               {"tM", "all martensite up to", times.martensite_s, "s"},
               {"tB", "no martensite from", times.bainite_s, "s"}},
              metals.of_metals[metals.higher_cet].alloy_share < 1 ? std::vector<std::string>{"alloy_share"}
                                                                  : std::vector<std::string>{});
  }
}

void add_penetration(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                     ExplanationSink* sink) {
  if (!metals.is_ferritic) return;
  const double speed = facts.schedule.travel_speed_mm_s;
  pass.penetration_mm = penetration_mm(pass.current_A, pass.voltage_V, speed, penetration_coefficient);
  if (sink)
    sink->add("penetration_mm", penetration_note, *pass.penetration_mm, "mm",
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

void add_metallurgy(const PassFacts& facts, const JointMetals& metals, PassEvaluation& pass,
                    ExplanationSink* sink) {
  add_carbon_equivalents(facts, metals, pass, sink);
  add_preheat(facts, metals, pass, sink);
  add_hardness(metals, pass, sink);
  add_penetration(facts, metals, pass, sink);
  add_transfer(facts, pass);
}

}  // namespace seamtakt
