#pragma once

#include <string>
#include <string_view>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Which acceptances a command can judge: it sees only its own findings, so an acceptance of another's isn't
/// "without finding" there. Rules of a cycle begin with "cycle.", of the line with "line.", of records with
/// "record."; all others are the evaluation's.
class AcceptanceScope {
 public:
  static AcceptanceScope evaluation() { return {"", ""}; }
  static AcceptanceScope cycle_of(std::string weldment) { return {"cycle.", std::move(weldment)}; }

  bool covers(const Acceptance& acceptance) const;

 private:
  AcceptanceScope(std::string_view family, std::string weldment)
      : family_(family), weldment_(std::move(weldment)) {}

  std::string_view family_;  ///< empty: the evaluation's
  std::string weldment_;     ///< empty: any place
};

/// Turns each finding that the plan accepts into a note which names who accepted it, when and why, and adds
/// the note `acceptance.without-finding` for each acceptance of the scope whose finding isn't there.
void apply_acceptances(const Plan& plan, const AcceptanceScope& scope, Findings& findings);

}  // namespace seamtakt
