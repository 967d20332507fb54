#include "formula/heat/interpass.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"heat-input", OptionKind::number, "kJ/mm", "net heat input, with efficiency", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "plate thickness; or --thick", nullptr, nullptr},
    {"thick", OptionKind::flag, "", "a body so thick that only the thick formula counts", nullptr, nullptr},
    {"ambient", OptionKind::number, "C", "temperature of the plate before welding", "20", nullptr},
    {"interpass", OptionKind::number, "C", "temperature to wait for", nullptr, nullptr},
    {"conductivity", OptionKind::number, "W/(mm K)", "thermal conductivity", "0.028", nullptr},
    {"heat-capacity", OptionKind::number, "J/(mm3 K)", "heat capacity per volume", "0.0044", nullptr},
};

constexpr ResultSpec results[] = {{"wait_s", "s", "wait"}};

constexpr const FormulaNote* notes[] = {&interpass_thick_note, &interpass_thin_note};

struct Interpass {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    require_only_one(in, {"thickness", "thick"});
    Real heat_input = positive(in, "heat-input"), ambient = in.number("ambient"),
         interpass = in.number("interpass");
    Real conductivity = positive(in, "conductivity"), heat_capacity = positive(in, "heat-capacity");
    if (!(value_of(interpass) > value_of(ambient)))
      throw InputError("--interpass", as_typed(value_of(interpass)), "a temperature above --ambient"_word);
    Real heat_J_mm = heat_input * 1000.0, rise = interpass - ambient, plain = Real(1.0);
    Real wait = interpass_wait_thick_s(heat_J_mm, rise, conductivity, plain);
    bool thin = false;
    if (!in.has("thick")) {
      Real thickness = positive(in, "thickness");
      Real wait_thin = interpass_wait_thin_s(heat_J_mm, thickness, rise, conductivity, heat_capacity, plain);
      thin = value_of(wait_thin) > value_of(wait);
      if (thin) wait = wait_thin;
    }
    out.set("wait_s", wait);
    out.explain(thin ? interpass_thin_note : interpass_thick_note, wait, "s",
                {{"Q", "heat input", heat_input, "kJ/mm"},
                 {"d", "plate thickness", in.find("thickness").value_or(plain), "mm"},
                 {"lambda", "conductivity", conductivity, "W/(mm K)"},
                 {"rhoc", "heat capacity", heat_capacity, "J/(mm3 K)"},
                 {"Ti", "interpass temperature", interpass, "C"},
                 {"T0", "ambient temperature", ambient, "C"},
                 {"F2", "shape factor", plain, ""},
                 {"F3", "shape factor", plain, ""}});
  }
};

}  // namespace

const Quantity interpass_quantity{"interpass",
                                  "wait until the weld has cooled to the interpass temperature",
                                  options,
                                  results,
                                  notes,
                                  &Interpass::compute<double>,
                                  &Interpass::compute<Dual>};

}  // namespace seamtakt
