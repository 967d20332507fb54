#pragma once

#include "records/passes/pass_review.hpp"

namespace seamtakt {

/// Takes the voltage that the leads lose off the record's mean voltages, power and energy: U - R*I, and R*I^2
/// where power is voltage times current (Ohm's law). Power and energy that were logged as such stay, as does
/// what tells of single samples (least and largest voltage, its standard deviation).
void correct_for_leads(PassReview& review);

}  // namespace seamtakt
