#pragma once

#include "formula/tolerance/qualification_range.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

/// "WHAT USED is used, QUALIFICATION was tested with TESTED."
Finding unlike_test(const char* rule, Severity severity, Word what, const std::string& used,
                    const std::string& tested, const PassFacts& facts, const char* source);

/// A fail where the value is outside the range that the test qualifies.
void judge_qualified_range(const char* rule, Word what, const char* unit, double value,
                           const QualifiedRange<double>& range, const PassFacts& facts, Findings& findings);

}  // namespace seamtakt
