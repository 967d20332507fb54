#pragma once

#include <string>
#include <string_view>

namespace seamtakt {

/// A text of the program with formulas in plain letters, as people read it: "10^5" is "10⁵", "v^2" is "v²",
/// "+-15 %" is "±15 %", "A*B" is "A·B", "<=" is "≤", and a number's unit is as readable_unit() has it
/// ("40 degC" is "40 °C", "180 deg" is "180°", "7.85 g/cm3" is "7.85 g/cm³"). A power that isn't whole stays
/// as it is. A text that is set already comes back unchanged.
std::string typeset(std::string_view text);

}  // namespace seamtakt
