#pragma once

#include "formula/quantities/quantity.hpp"

namespace seamtakt {

// One object a quantity, each defined in the file of its name in this folder; quantities.cpp lists them.
extern const Quantity heat_input_quantity;
extern const Quantity waveform_quantity;
extern const Quantity melting_rate_quantity;
extern const Quantity deposition_quantity;
extern const Quantity fillet_quantity;
extern const Quantity fillet_minimum_quantity;
extern const Quantity groove_quantity;
extern const Quantity penetration_quantity;
extern const Quantity transfer_quantity;
extern const Quantity cooling_time_quantity;
extern const Quantity carbon_equivalent_quantity;
extern const Quantity preheat_quantity;
extern const Quantity haz_hardness_quantity;
extern const Quantity temperature_quantity;
extern const Quantity haz_width_quantity;
extern const Quantity interpass_quantity;
extern const Quantity distortion_quantity;
extern const Quantity tolerance_quantity;
extern const Quantity imperfection_quantity;
extern const Quantity fillet_resistance_quantity;
extern const Quantity qualification_quantity;
extern const Quantity guard_band_quantity;
extern const Quantity duty_cycle_quantity;
extern const Quantity move_time_quantity;
extern const Quantity takt_quantity;

}  // namespace seamtakt
