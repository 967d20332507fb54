#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

enum class Severity { note, warn, fail };

const char* to_string(Severity severity);

/// An engineering judgement: not an error. `rule` and `where` are stable, so that a person's
/// acceptance can be kept against them.
struct Finding {
  std::string rule;  ///< e.g. "fillet.leg.undersize"
  Severity severity = Severity::note;
  std::string where;            ///< e.g. "BD-2/S03/pass 1"
  std::optional<double> value;  ///< what was found, in `unit`
  std::optional<double> limit;  ///< what it is judged against, in `unit`
  std::string unit;             ///< "mm", "kJ/mm", ... ; empty for a dimensionless value
  Sentence sentence;            ///< what is found, with its numbers and names
  std::string source;           ///< standard and clause, "plan limit", or "common practice, no source"

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

using Findings = std::vector<Finding>;

bool any_failed(const Findings& findings);

}  // namespace seamtakt
