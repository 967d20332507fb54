#include "base/finding.hpp"

#include <algorithm>

namespace seamtakt {

const char* to_string(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::warn:
      return "warn";
    case Severity::fail:
      return "fail";
  }
  return "fail";
}

bool any_failed(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& finding) { return finding.severity == Severity::fail; });
}

}  // namespace seamtakt
