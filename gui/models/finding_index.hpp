#pragma once

#include <map>
#include <optional>
#include <string>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

/// The link of the chain that a finding belongs to.
enum class Link { seams, schedules, heat, cell, line, records };
inline constexpr int link_count = 6;

/// Which link a rule speaks about, by the beginning of its id.
Link link_of_rule(std::string_view rule);

/// Findings counted by severity.
struct Tally {
  int fail = 0, warn = 0, note = 0;
  void add(Severity severity);
  std::optional<Severity> worst() const;
  int total() const { return fail + warn + note; }
};

/// Findings looked up by place and by link. Accepted ones count as notes.
class FindingIndex {
 public:
  FindingIndex() = default;
  FindingIndex(const Plan& plan, const Findings& findings);

  /// Worst finding on a seam and its passes.
  std::optional<Severity> worstOfSeam(const std::string& weldment, const std::string& seam) const;
  /// Worst finding on a place and all below it ("BD", "BD/S03", "BD/S03/pass 1").
  std::optional<Severity> worstAt(const std::string& place) const;
  const Tally& tally(Link link) const { return links_[static_cast<std::size_t>(link)]; }
  const Tally& all() const { return all_; }

 private:
  std::map<std::string, Severity, std::less<>> worst_;
  Tally links_[link_count], all_;
};

/// The acceptance of this finding in the plan; nullptr where nobody accepted it.
const Acceptance* acceptance_of(const Plan& plan, const Finding& finding);

}  // namespace seamtakt::desk
