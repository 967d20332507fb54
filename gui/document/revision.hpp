#pragma once

#include <QString>
#include <memory>
#include <string>
#include <vector>

#include "document/plan_address.hpp"
#include "document/schedule_lock.hpp"

namespace seamtakt::desk {

/// An edit that wasn't made because it would change something locked, and the plan that it asked for: kept so
/// that a person may choose what to do instead.
struct LockedEdit {
  QString what;
  std::shared_ptr<const Plan> before, after;
  LockedChange change;
};

/// "F4S (approved), F5S (reviewed)", in the view's language.
QString locked_names(const Plan& plan, const std::vector<std::size_t>& schedules);

/// The next revision of a schedule as a draft of its family, under an id that the plan doesn't have.
Schedule next_revision(const Plan& plan, const Schedule& schedule);

/// Seams with a pass or tacks that the schedule welds.
std::vector<SeamPlace> seams_welded_by(const Plan& plan, const std::string& schedule);
/// "BD/S03" for each.
std::vector<std::string> seam_names(const Plan& plan, const std::vector<SeamPlace>& seams);
/// Passes and tacks of one seam that `before` welds are welded by `after`.
void move_seam(Plan& plan, const SeamPlace& seam, const std::string& before, const std::string& after);

/// A locked schedule, the draft that takes the edit, and the seams that may be moved to it.
struct Revised {
  std::string held, draft;
  int revision = 0;
  std::vector<SeamPlace> seams;
};
/// The plan in which locked schedules stay as they were and the edit goes into drafts at the list's end; no
/// seam is moved. `revised`: one for each schedule that the edit would change.
Plan plan_with_drafts(const LockedEdit& edit, std::vector<Revised>& revised);

/// The plan in which the locked wire, gas or power source stays as it was and the edit goes into a copy;
/// `copy`: the copy's id.
Plan plan_with_copy(const LockedEdit& edit, std::string& copy);

/// The plan in which the schedules have the earlier status that the edit asked for; approver and effective
/// date are removed.
Plan plan_with_withdrawn(const LockedEdit& edit);

}  // namespace seamtakt::desk
