#include "plan/plan_check.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

template <class List>
void fill(IdSet& ids, const List& list) {
  ids.reserve(list.size());
  for (const auto& item : list) ids.add(item.id);
}

}  // namespace

std::vector<std::string_view> IdSet::all() const {
  std::vector<std::string_view> ids(ids_.begin(), ids_.end());
  std::ranges::sort(ids);  // the same message whatever the hash
  return ids;
}

PlanCheck::PlanCheck(const Plan& plan, std::string_view file, const JsonNode* root) : FieldPlace(file, root) {
  fill(ids(IdList::base_metals), plan.base_metals);
  fill(ids(IdList::wires), plan.wires);
  fill(ids(IdList::gases), plan.gases);
  fill(ids(IdList::power_sources), plan.power_sources);
  fill(ids(IdList::schedules), plan.schedules);
  fill(ids(IdList::qualifications), plan.qualifications);
  if (plan.cell) {
    fill(ids(IdList::robots), plan.cell->robots);
    fill(ids(IdList::orientations), plan.cell->orientations);
    if (!plan.cell->zones.empty()) add_seam_places(plan);
  }
  if (plan.line) fill(ids(IdList::stages), plan.line->stages);
}

void PlanCheck::add_seam_places(const Plan& plan) {
  // All are made before any is borrowed: a vector that grows moves its short strings.
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) seam_places_.push_back(weldment.id + "/" + seam.id);
  for (const std::string& place : seam_places_) ids(IdList::seam_places).add(place);
}

void PlanCheck::reference(std::string_view id, const FieldInfo& field) const {
  const IdSet& known = ids_[static_cast<std::size_t>(field.refers_to)];
  if (!known.has(id)) refuse(quoted(id), field.element_expectation() + nearest_hint(id, known.all()));
}

void PlanCheck::enter(const Weldment& weldment) {
  IdSet& seams = ids(IdList::seams);
  seams.clear();
  fill(seams, weldment.seams);
}

}  // namespace seamtakt
