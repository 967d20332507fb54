#pragma once

#include <string>
#include <string_view>

#include "plan/plan.hpp"

/// What an approval covers, and which revision of a schedule is in force. Common practice in the control of
/// documents, no source.
namespace seamtakt {

/// What of a schedule an approval or a review covers, as text for comparison: each field that says something,
/// as JSON in the order of the field tables. Without status, approver, effective date and the digest itself.
std::string locked_text(const Schedule& schedule);
/// The same of what a schedule names. Left out, because they don't change how it is welded: a wire's price
/// and the coefficients and uncertainty of its melting law, which are refitted; a gas's price; a power
/// source's efficiency.
std::string locked_text(const Wire& wire);
std::string locked_text(const Gas& gas);
std::string locked_text(const PowerSource& source);

/// What Schedule::approved_sha256 states of a schedule as it is now, lower-case hex: SHA-256 over the lines
/// locked_text, approved_by, effective_from, and locked_text of its wire, gas and power source, each ended
/// by "\n"; one that isn't named, or isn't in the plan, is an empty line. The order of a file's keys and
/// keys that state a default don't count.
std::string approval_sha256(const Plan& plan, const Schedule& schedule);

/// Takes an approval away: a copy or a changed schedule hasn't been approved. Its empty keys aren't written
/// to a file either.
void clear_approval(Schedule& schedule);

/// Whether the schedule is approved and states a digest that isn't that of its present content.
bool is_changed_since_approval(const Plan& plan, const Schedule& schedule);

/// The id by which a schedule's revisions belong together: that of the family's first one.
const std::string& family_of(const Schedule& schedule);

/// The highest approved revision of the family of the schedule `id` whose first day is on or before `day`
/// (YYYY-MM-DD); a revision without a first day has been in force from the beginning. Of two with the same
/// number, the later one in the plan. nullptr where none is in force or there is no such schedule. Seams are
/// welded by the schedule that they name all the same.
const Schedule* schedule_in_force(const Plan& plan, std::string_view id, std::string_view day);

}  // namespace seamtakt
