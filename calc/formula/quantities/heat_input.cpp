#include "formula/heat/heat_input.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/process_option.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"process", OptionKind::text, "", "ISO 4063 process number; tells the thermal efficiency", nullptr,
     nullptr},
    {"efficiency", OptionKind::number, "", "thermal efficiency k, 0 to 1; overrides the process's", nullptr,
     nullptr},
    {"voltage", OptionKind::number, "V", "arc voltage, arithmetic mean", nullptr, nullptr},
    {"current", OptionKind::number, "A", "current, arithmetic mean", nullptr, nullptr},
    {"travel-speed", OptionKind::number, "mm/s", "travel speed", nullptr, nullptr},
    {"energy", OptionKind::number, "J", "energy of the whole weld", nullptr, nullptr},
    {"length", OptionKind::number, "mm", "length of the weld", nullptr, nullptr},
    {"power", OptionKind::number, "W", "mean instantaneous power", nullptr, nullptr},
    {"time", OptionKind::number, "s", "arc time", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"arc_power_W", "W", "arc power"},
    {"arc_energy_kJ_mm", "kJ/mm", "arc energy"},
    {"thermal_efficiency", "", "thermal efficiency"},
    {"heat_input_kJ_mm", "kJ/mm", "heat input"},
    {"arc_energy_kJ_in", "kJ/in", "arc energy (ASME IX, AWS D1.1)"},
};

constexpr const FormulaNote* notes[] = {&arc_power_note, &arc_energy_note, &arc_energy_of_weld_note,
                                        &heat_input_note, &arc_energy_inch_note};

/// The four ways to give the energy exclude each other.
template <class Real>
void require_one_form(const Inputs<Real>& in) {
  require_only_one(in, {"energy", "power", "voltage"});
  require_only_one(in, {"energy", "power", "current"});
  require_only_one(in, {"energy", "travel-speed", "time"});
  require_only_one(in, {"travel-speed", "length"});
}

template <class Real>
std::optional<Real> arc_power(const Inputs<Real>& in, Results<Real>& out) {
  std::optional<Real> power = find_not_negative(in, "power");
  auto voltage = find_not_negative(in, "voltage"), current = find_not_negative(in, "current");
  if (voltage && current) {
    power = arc_power_W(*voltage, *current);
    out.explain(arc_power_note, *power, "W",
                {{"U", "arc voltage", *voltage, "V"}, {"I", "current", *current, "A"}});
  }
  if (power) out.set("arc_power_W", *power);
  return power;
}

template <class Real>
std::optional<Real> arc_energy(const Inputs<Real>& in, const std::optional<Real>& power, Results<Real>& out) {
  auto speed = find_positive(in, "travel-speed"), length = find_positive(in, "length"),
       time = find_positive(in, "time");
  std::optional<Real> energy_J = find_not_negative(in, "energy");
  if (power && time) energy_J = Real(*power * *time);
  std::optional<Real> energy;
  if (energy_J && length) {
    energy = arc_energy_of_weld_kJ_mm(*energy_J, *length);
    out.explain(arc_energy_of_weld_note, *energy, "kJ/mm",
                {{"W", "energy of the weld", *energy_J, "J"}, {"L", "length", *length, "mm"}});
  } else if (power && speed) {
    energy = arc_energy_kJ_mm(*power, *speed);
    out.explain(arc_energy_note, *energy, "kJ/mm",
                {{"P", "arc power", *power, "W"}, {"v", "travel speed", *speed, "mm/s"}});
  }
  return energy;
}

struct HeatInput {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    require_one_form(in);
    std::optional<Real> efficiency = find_efficiency(in);
    if (efficiency) out.set("thermal_efficiency", *efficiency);
    std::optional<Real> energy = arc_energy(in, arc_power(in, out), out);
    if (!energy) return;
    out.set("arc_energy_kJ_mm", *energy);
    Real per_inch = arc_energy_kJ_in(*energy);
    out.set("arc_energy_kJ_in", per_inch);
    if (efficiency) {
      Real heat_input = heat_input_kJ_mm(*energy, *efficiency);
      out.set("heat_input_kJ_mm", heat_input);
      out.explain(heat_input_note, heat_input, "kJ/mm",
                  {{"k", "thermal efficiency", *efficiency, ""}, {"E", "arc energy", *energy, "kJ/mm"}});
    }
    out.explain(arc_energy_inch_note, per_inch, "kJ/in", {{"E", "arc energy", *energy, "kJ/mm"}});
  }
};

}  // namespace

const Quantity heat_input_quantity{"heat-input",
                                   "arc energy and heat input of a weld",
                                   options,
                                   results,
                                   notes,
                                   &HeatInput::compute<double>,
                                   &HeatInput::compute<Dual>};

}  // namespace seamtakt
