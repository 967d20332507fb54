#include "formula/quantities/quantity.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

/// In the order in which `seamtakt calc` lists them.
const Quantity* const all_quantities[] = {
    &heat_input_quantity,
    &waveform_quantity,
    &melting_rate_quantity,
    &deposition_quantity,
    &fillet_quantity,
    &fillet_minimum_quantity,
    &groove_quantity,
    &penetration_quantity,
    &transfer_quantity,
    &cooling_time_quantity,
    &carbon_equivalent_quantity,
    &preheat_quantity,
    &haz_hardness_quantity,
    &temperature_quantity,
    &haz_width_quantity,
    &interpass_quantity,
    &distortion_quantity,
    &tolerance_quantity,
    &imperfection_quantity,
    &fillet_resistance_quantity,
    &qualification_quantity,
    &guard_band_quantity,
    &duty_cycle_quantity,
    &move_time_quantity,
    &takt_quantity,
};

}  // namespace

std::span<const Quantity* const> quantities() {
  return all_quantities;
}

}  // namespace seamtakt
