#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "ledger/store/ledger.hpp"
#include "plan/plan.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt {

/// What a store knows of schedules and instruments on days past.
struct StoreHistory {
  struct Revision {
    std::uint64_t seq = 0;
    Schedule schedule;
  };
  struct Calibration {
    std::uint64_t seq = 0;
    std::string instrument, certificate;
    std::string date, due;  ///< "2026-11-25"
  };
  std::vector<Revision> schedules;  ///< in the order in which they were stored
  std::vector<Calibration> calibrations;
};

/// Those of the plan's schedules and instruments; void records don't count.
StoreHistory history_of(const Ledger& ledger, const Plan& plan);

/// The revision of a schedule that was in force on a day: of the plan's and the store's, the one that came
/// into force last before it; drafts only where there is nothing else. Approved earlier revisions of its
/// family (Schedule::revision_of) count with it, until its own first day. nullptr where none was in force
/// yet.
const Schedule* effective_revision(const Plan& plan, const StoreHistory& history, std::string_view id,
                                   std::string_view day);

/// The calibration valid on a day: the newest one made on it or before. nullptr where the store has none:
/// then the plan's `due` counts.
const StoreHistory::Calibration* calibration_in_force(const StoreHistory& history,
                                                      std::string_view instrument, std::string_view day);

/// The plan with the schedules and the instruments' due dates that were in force on a day.
Plan plan_in_force(const Plan& plan, const StoreHistory& history, std::string_view day);

/// An audit in which each pass is judged by the revisions in force on the day on which it was welded.
/// `audited` was made with `plan`; where another revision was in force, `audit_again` is asked for the same
/// logs with that plan. A pass whose schedule wasn't in force yet is undecided, and a finding says so.
AuditResult judged_in_force(AuditResult audited, const Plan& plan, const StoreHistory& history,
                            const std::function<AuditResult(const Plan&)>& audit_again);

}  // namespace seamtakt
