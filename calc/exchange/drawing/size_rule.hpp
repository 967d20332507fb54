#pragma once

#include <optional>
#include <string>

namespace seamtakt {

/// A share of the thinner plate's thickness: "0.5t".
struct SizeRule {
  double share = 0;
};

/// Common practice, no source: where nobody says otherwise, a throat of half the thinner plate.
inline constexpr SizeRule usual_throat_rule{0.5};

/// InputError at `option` where the text is no such rule, or its share isn't above 0 and at most 2.
SizeRule parse_size_rule(const std::string& text, const std::string& option);

/// The size that a rule gives, rounded up to half a millimetre, and at least `least_mm`. A proposal, no
/// design. Common practice, no source.
double size_by_rule_mm(const SizeRule& rule, double thinner_mm, double least_mm);

}  // namespace seamtakt
