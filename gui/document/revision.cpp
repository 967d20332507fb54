#include "document/revision.hpp"

#include "document/shown_text.hpp"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "document/new_item.hpp"
#include "plan/approval.hpp"

namespace seamtakt::desk {

namespace {

/// Puts the item of `before` back into its place; the edited one goes to the end under an id of its own.
template <class List>
void copy_item(List& list, const List& before, std::size_t at, std::string& copy) {
  auto edited = list.at(at);
  list[at] = before.at(at);
  if (edited.id == list[at].id) edited.id = next_id(list, edited.id + "-2");
  copy = edited.id;
  list.push_back(std::move(edited));
}

}  // namespace

QString locked_names(const Plan& plan, const std::vector<std::size_t>& schedules) {
  QStringList names;
  for (const std::size_t at : schedules) {
    const Schedule& schedule = plan.schedules.at(at);
    names << QStringLiteral("%1 (%2)").arg(QString::fromStdString(schedule.id), shown_word(schedule.status));
  }
  return names.join(QStringLiteral(", "));
}

Schedule next_revision(const Plan& plan, const Schedule& schedule) {
  Schedule next = schedule;
  std::string family = family_of(schedule);
  // "F5S-r4" of a plan that doesn't name families was made from "F5S": the next one is "F5S-r5".
  const std::string own = "-r" + std::to_string(schedule.revision);
  if (schedule.revision_of.empty() && family.size() > own.size() && family.ends_with(own))
    family.resize(family.size() - own.size());
  do {
    ++next.revision;
    next.id = family + "-r" + std::to_string(next.revision);
  } while (find_by_id(plan.schedules, next.id));
  next.revision_of = find_by_id(plan.schedules, family) ? family : schedule.id;
  next.status = "draft";
  clear_approval(next);
  return next;
}

std::vector<SeamPlace> seams_welded_by(const Plan& plan, const std::string& schedule) {
  std::vector<SeamPlace> places;
  for (std::size_t w = 0; w < plan.weldments.size(); ++w)
    for (std::size_t s = 0; s < plan.weldments[w].seams.size(); ++s) {
      const Seam& seam = plan.weldments[w].seams[s];
      if (std::ranges::count(seam.schedules, schedule) > 0 ||
          (seam.tacks && seam.tacks->schedule == schedule))
        places.push_back({w, s});
    }
  return places;
}

std::vector<std::string> seam_names(const Plan& plan, const std::vector<SeamPlace>& seams) {
  std::vector<std::string> names;
  for (const SeamPlace& at : seams) {
    const Weldment& weldment = plan.weldments.at(at.weldment);
    names.push_back(weldment.id + "/" + weldment.seams.at(at.seam).id);
  }
  return names;
}

void move_seam(Plan& plan, const SeamPlace& at, const std::string& before, const std::string& after) {
  Seam& seam = plan.weldments.at(at.weldment).seams.at(at.seam);
  std::ranges::replace(seam.schedules, before, after);
  if (seam.tacks && seam.tacks->schedule == before) seam.tacks->schedule = after;
}

Plan plan_with_drafts(const LockedEdit& edit, std::vector<Revised>& revised) {
  Plan plan = *edit.after;
  std::vector<std::size_t> locked = edit.change.changed;
  locked.insert(locked.end(), edit.change.withdrawn.begin(), edit.change.withdrawn.end());
  std::vector<Schedule> drafts;
  for (const std::size_t at : locked) {
    const Schedule& held = edit.before->schedules.at(at);
    Schedule& place = plan.schedules.at(same_schedule(*edit.before, at, *edit.after));
    Schedule asked = place;
    place = held;
    // Seams followed a new id; they stay with the schedule that they had.
    if (asked.id != held.id) follow_rename(plan, schedule_address(at), asked.id, held.id);
    drafts.push_back(std::move(asked));
  }
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const Schedule& held = edit.before->schedules.at(locked[i]);
    Schedule draft = next_revision(plan, held);
    const std::string id = drafts[i].id == held.id ? draft.id : next_id(plan.schedules, drafts[i].id);
    const int revision = std::max(draft.revision, drafts[i].revision);
    const std::string family = draft.revision_of;
    draft = std::move(drafts[i]);
    draft.id = id;
    draft.revision_of = family;
    draft.revision = revision;
    draft.status = "draft";
    clear_approval(draft);
    revised.push_back({held.id, draft.id, draft.revision, seams_welded_by(plan, held.id)});
    plan.schedules.push_back(std::move(draft));
  }
  return plan;
}

Plan plan_with_copy(const LockedEdit& edit, std::string& copy) {
  Plan plan = *edit.after;
  const PointerStep list = first_step(edit.change.item);
  const Plan& before = *edit.before;
  const auto copy_in = [&](auto& items, const auto& held) {
    copy_item(items, held, list_index(first_step(list.rest).part, held.size()), copy);
  };
  if (list.part == "wires") copy_in(plan.wires, before.wires);
  if (list.part == "gases") copy_in(plan.gases, before.gases);
  if (list.part == "power_sources") copy_in(plan.power_sources, before.power_sources);
  return plan;
}

Plan plan_with_withdrawn(const LockedEdit& edit) {
  Plan plan = *edit.after;
  for (const std::size_t at : edit.change.withdrawn)
    clear_approval(plan.schedules.at(same_schedule(*edit.before, at, *edit.after)));
  return plan;
}

}  // namespace seamtakt::desk
