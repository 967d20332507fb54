#pragma once

#include <optional>
#include <string_view>

namespace seamtakt {

/// How far a variable may move from its value in the procedure test before the procedure is to be tested
/// again, in % of the tested value.
struct AllowedChange {
  double decrease_pct = 0, increase_pct = 0;
};

/// By a document of reference/essential_variables.csv ("aws-d1-1": AWS D1.1, essential variables of GMAW and
/// FCAW, recalled) for a quantity such as "current_A"; empty where the table has no such row.
std::optional<AllowedChange> allowed_change(std::string_view document, std::string_view quantity);

}  // namespace seamtakt
