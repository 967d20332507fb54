#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "exchange/report/plan_sections.hpp"
#include "exchange/schedules/schedule_uses.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// Sketches on a sheet: one of each kind and size of joint, those that most seams are like first.
inline constexpr std::size_t most_sketches = 4;

/// Schedule sheets of a plan, each a page: title block, sketches of the joints with dimensions and runs, the
/// items of ISO 15609-1, the seams that it welds, findings on it, what changed from the revision before,
/// places to sign. Borrows the report's parts until the sheets are made.
class ScheduleSheets {
 public:
  explicit ScheduleSheets(const PlanReport& report);

  /// A page of its own.
  GroupBlock page_of(const Schedule& schedule) const;
  /// All items as rows: schedule, item, value.
  Sheet table_of(const std::vector<const Schedule*>& schedules) const;

 private:
  std::vector<Block> findings_on(const Schedule& schedule) const;
  std::vector<const Finding*> findings_at(const Schedule& schedule) const;

  const PlanReport& report_;
  PlanIndex index_;
  ScheduleUses uses_;
  std::unordered_map<std::string, std::vector<const Finding*>> findings_;  ///< by schedule, seam or pass
};

/// The schedules with these ids, in the plan's order; none named: all. InputError where the plan has no such
/// id; `where` names the option or field.
std::vector<const Schedule*> schedules_named(const Plan& plan, const std::vector<std::string>& ids,
                                             const std::string& where);

/// A report of such pages alone.
Report schedule_report(const PlanReport& report, const std::vector<const Schedule*>& schedules);
/// Its tables: "schedules" and "about".
std::vector<Sheet> schedule_report_sheets(const PlanReport& report,
                                          const std::vector<const Schedule*>& schedules);

}  // namespace seamtakt
