#pragma once

#include <optional>
#include <string>

#include "base/finding.hpp"

namespace seamtakt {

/// Where a formula holds, as its source says. Outside it the value is still given, with a finding.
struct ValidRange {
  const char* rule;  ///< "preheat.thickness.range"
  Word what;         ///< begins the sentence: "The plate thickness"
  double lower, upper;
  const char* unit;
  const char* source;  ///< standard and clause, or "common practice, no source"
};

inline bool is_inside(const ValidRange& range, double value) {
  return value >= range.lower && value <= range.upper;
}

/// A warning where `value` is outside the range; nothing inside, bounds included.
inline std::optional<Finding> outside_range(const ValidRange& range, double value, std::string where) {
  if (is_inside(range, value)) return std::nullopt;
  Finding finding;
  finding.rule = range.rule;
  finding.severity = Severity::warn;
  finding.where = std::move(where);
  finding.value = value;
  finding.limit = value < range.lower ? range.lower : range.upper;
  finding.unit = range.unit;
  constexpr int all_digits = 12;
  finding.sentence =
      Sentence("range.outside"_key, {{"what", range.what},
                                     {"lower", UnitValue{range.lower, range.unit, all_digits}},
                                     {"upper", UnitValue{range.upper, range.unit, all_digits}}});
  finding.source = range.source;
  return finding;
}

inline void add_if_any(Findings& findings, std::optional<Finding> finding) {
  if (finding) findings.push_back(*std::move(finding));
}

/// A finding without a limit: something to know beside the value.
inline Finding remark(const char* rule, std::string where, Sentence sentence, std::string source) {
  return Finding{rule, Severity::note,      std::move(where), std::nullopt, std::nullopt,
                 "",   std::move(sentence), std::move(source)};
}

}  // namespace seamtakt
