#include "formula/uncertainty/fast_monte_carlo.hpp"

#include <string_view>

#include "formula/heat/heat_input.hpp"
#include "formula/kernel/heat_input_monte_carlo.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {

namespace {

double u_of(const QuantityRequest& request, std::string_view name) {
  const auto found = request.standard_uncertainty.find(name);
  return found == request.standard_uncertainty.end() ? 0 : found->second;
}

}  // namespace

std::optional<UncertaintyByName> fast_monte_carlo(const Quantity& quantity, const Inputs<double>& inputs,
                                                  const QuantityRequest& request,
                                                  const Results<double>& results) {
  if (&quantity != &heat_input_quantity) return std::nullopt;
  const auto voltage = inputs.find("voltage"), current = inputs.find("current"),
             speed = inputs.find("travel-speed");
  const auto efficiency = results.values.find("thermal_efficiency");
  if (!voltage || !current || !speed || efficiency == results.values.end()) return std::nullopt;
  UncertainHeatInput input;
  input.voltage_V = *voltage;
  input.u_voltage_V = u_of(request, "voltage");
  input.current_A = *current;
  input.u_current_A = u_of(request, "current");
  input.travel_speed_mm_s = *speed;
  input.u_travel_speed_mm_s = u_of(request, "travel-speed");
  input.efficiency_low = input.efficiency_high = efficiency->second.number.value_or(0);
  input.u_efficiency = u_of(request, "efficiency");
  // A sample whose efficiency is above 1 is left out, which the kernel doesn't do.
  const bool stays_below_1 = input.efficiency_high + 7 * input.u_efficiency <= 1 || input.u_efficiency == 0;
  if (!stays_below_1 || !can_be_drawn(input)) return std::nullopt;
  const HeatInputDeviations drawn = heat_input_deviations(input, request.monte_carlo_samples, request.seed);
  return UncertaintyByName{{"arc_power_W", drawn.power_W},
                           {"arc_energy_kJ_mm", drawn.energy_kJ_mm},
                           {"thermal_efficiency", drawn.thermal_efficiency},
                           {"heat_input_kJ_mm", drawn.heat_input_kJ_mm},
                           {"arc_energy_kJ_in", arc_energy_kJ_in(drawn.energy_kJ_mm)}};
}

}  // namespace seamtakt
