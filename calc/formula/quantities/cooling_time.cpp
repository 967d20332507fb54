#include "formula/heat/cooling_time.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"heat-input", OptionKind::number, "kJ/mm", "heat input, with efficiency; or --cooling-time", nullptr,
     nullptr},
    {"cooling-time", OptionKind::number, "s", "t8/5 wanted: gives the heat input", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "plate thickness", nullptr, nullptr},
    {"preheat", OptionKind::number, "C", "preheat or interpass temperature", "20", nullptr},
    {"joint", OptionKind::text, "", "joint, for its shape factors", "plate", "plate|butt|corner|tee|lap"},
    {"f2", OptionKind::number, "", "shape factor of 2D heat flow, instead of the joint's", nullptr, nullptr},
    {"f3", OptionKind::number, "", "shape factor of 3D heat flow, instead of the joint's", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"cooling_time_s", "s", "t8/5"},
    {"cooling_time_span_s", "s", "t8/5 over the range of F2"},
    {"regime", "", "heat flow"},
    {"transition_thickness_mm", "mm", "transition thickness"},
    {"cooling_time_2d_s", "s", "t8/5, 2D"},
    {"cooling_time_3d_s", "s", "t8/5, 3D"},
    {"heat_input_kJ_mm", "kJ/mm", "heat input"},
};

constexpr const FormulaNote* notes[] = {&cooling_heat_input_note, &cooling_time_3d_note,
                                        &cooling_time_2d_note, &cooling_time_note,
                                        &transition_thickness_note};

template <class Real>
struct Factors {
  Real f2, f2_low, f2_high, f3;
};

template <class Real>
Factors<Real> given_factors(const Inputs<Real>& in) {
  ShapeFactors of_joint = *shape_factors_of(in.text("joint"));
  Factors<Real> factors{Real(of_joint.f2), Real(of_joint.f2_low), Real(of_joint.f2_high), Real(of_joint.f3)};
  for (const char* name : {"f2", "f3"})
    if (auto given = in.find(name); given && !(value_of(*given) > 0 && value_of(*given) <= 1))
      throw InputError("--" + std::string(name), number_text(value_of(*given)),
                       "a value above 0, at most 1"_word);
  if (auto f2 = in.find("f2")) factors.f2 = factors.f2_low = factors.f2_high = *f2;
  if (auto f3 = in.find("f3")) factors.f3 = *f3;
  return factors;
}

template <class Real>
Real given_preheat(const Inputs<Real>& in) {
  Real preheat = in.number("preheat");
  if (!(value_of(preheat) >= -273.15 && value_of(preheat) < preheat_below_C))
    throw InputError("--preheat", number_text(value_of(preheat)),
                     Sentence("cooling-time.preheat-below"_key, {{"below", UnitValue{preheat_below_C, "C"}},
                                                                 {"singular", UnitValue{500, "C"}}}));
  return preheat;
}

template <class Real>
std::optional<Real> given_heat_input(const Inputs<Real>& in, const std::optional<Real>& thickness,
                                     const Real& preheat, const Factors<Real>& factors, Results<Real>& out) {
  require_only_one(in, {"heat-input", "cooling-time"});
  if (in.has("heat-input")) return positive(in, "heat-input");
  if (!in.has("cooling-time")) return std::nullopt;
  Real time = positive(in, "cooling-time");
  if (!thickness) in.number("thickness");
  Real heat_input = heat_input_of_cooling_time_kJ_mm(time, *thickness, preheat, factors.f2, factors.f3);
  Real one = Real(1.0);
  out.explain(cooling_heat_input_note, heat_input, "kJ/mm",
              {{"t", "t8/5", time, "s"},
               {"t3", "3D at 1 kJ/mm", cooling_time_3d_s(one, preheat, factors.f3), "s"},
               {"t2", "2D at 1 kJ/mm", cooling_time_2d_s(one, *thickness, preheat, factors.f2), "s"}});
  return heat_input;
}

template <class Real>
void explain_times(const Real& heat_input, const Real& thickness, const Real& preheat,
                   const Factors<Real>& factors, const CoolingTime<Real>& cooling, const Real& transition,
                   Results<Real>& out) {
  std::initializer_list<Symbol<Real>> symbols = {{"Q", "heat input", heat_input, "kJ/mm"},
                                                 {"d", "plate thickness", thickness, "mm"},
                                                 {"T0", "preheat", preheat, "C"},
                                                 {"F2", "shape factor, 2D", factors.f2, ""},
                                                 {"F3", "shape factor, 3D", factors.f3, ""}};
  out.explain(cooling_time_2d_note, cooling.time_2d_s, "s", symbols);
  out.explain(cooling_time_note, cooling.time_s, "s",
              {{"t2", "2D", cooling.time_2d_s, "s"}, {"t3", "3D", cooling.time_3d_s, "s"}});
  out.explain(transition_thickness_note, transition, "mm", symbols);
}

struct CoolingTimeQuantity {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Factors<Real> factors = given_factors(in);
    Real preheat = given_preheat(in);
    auto thickness = find_positive(in, "thickness");
    auto heat_input = given_heat_input(in, thickness, preheat, factors, out);
    if (!heat_input) return;
    out.set("heat_input_kJ_mm", *heat_input);
    Real by_3d = cooling_time_3d_s(*heat_input, preheat, factors.f3);
    Real transition = transition_thickness_mm(*heat_input, preheat, factors.f2, factors.f3);
    out.set("cooling_time_3d_s", by_3d);
    out.set("transition_thickness_mm", transition);
    out.explain(cooling_time_3d_note, by_3d, "s",
                {{"Q", "heat input", *heat_input, "kJ/mm"},
                 {"T0", "preheat", preheat, "C"},
                 {"F3", "shape factor, 3D", factors.f3, ""}});
    if (!thickness) return;
    CoolingTime<Real> cooling = cooling_time(*heat_input, *thickness, preheat, factors.f2, factors.f3);
    auto at = [&](const Real& f2) {
      return cooling_time(*heat_input, *thickness, preheat, f2, factors.f3).time_s;
    };
    out.set("cooling_time_2d_s", cooling.time_2d_s);
    out.set("cooling_time_s", cooling.time_s);
    out.set_text("regime", cooling.regime());
    out.set_list("cooling_time_span_s", {at(factors.f2_low), at(factors.f2_high)});
    explain_times(*heat_input, *thickness, preheat, factors, cooling, transition, out);
  }
};

}  // namespace

const Quantity cooling_time_quantity{"cooling-time",
                                     "cooling time from 800 to 500 C, or the heat input for one",
                                     options,
                                     results,
                                     notes,
                                     &CoolingTimeQuantity::compute<double>,
                                     &CoolingTimeQuantity::compute<Dual>};

}  // namespace seamtakt
