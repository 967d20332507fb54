#include "exchange/drawing/size_rule.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/error.hpp"

namespace seamtakt {

SizeRule parse_size_rule(const std::string& text, const std::string& option) {
  SizeRule rule;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), rule.share);
  const bool is_rule = error == std::errc() && end + 1 == text.data() + text.size() && *end == 't' &&
                       rule.share > 0 && rule.share <= 2;
  if (!is_rule)
    throw InputError(option, '"' + printable(text) + '"',
                     "a share of the thickness up to 2t, such as 0.5t"_word);
  return rule;
}

double size_by_rule_mm(const SizeRule& rule, double thinner_mm, double least_mm) {
  constexpr double step_mm = 0.5;
  // 0.7 times 10 is 7.000000000000001 in binary: not a reason for half a millimetre more.
  constexpr double noise = 1e-9;
  return std::max(least_mm, std::ceil(rule.share * thinner_mm / step_mm - noise) * step_mm);
}

}  // namespace seamtakt
