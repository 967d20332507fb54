#pragma once

#include <string_view>

#include "records/passes/pass_review.hpp"

namespace seamtakt {

/// Resistance of the leads between where a robot's voltage is measured and the arc; 0 where the plan states
/// none.
double lead_ohm(const Plan& plan, std::string_view robot);

/// Takes the voltage that the leads lose off the record's mean voltages, power and energy: U - R*I, and R*I^2
/// where power is voltage times current (Ohm's law). Power and energy that were logged as such stay, as does
/// what tells of single samples (least and largest voltage, its standard deviation).
void correct_for_leads(PassReview& review);

}  // namespace seamtakt
