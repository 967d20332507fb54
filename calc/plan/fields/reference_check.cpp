#include "plan/fields/reference_check.hpp"

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

ReferenceCheck::PlanIds::PlanIds(const Plan& plan) {
  fill(of(IdList::base_metals), plan.base_metals);
  fill(of(IdList::wires), plan.wires);
  fill(of(IdList::gases), plan.gases);
  fill(of(IdList::power_sources), plan.power_sources);
  fill(of(IdList::schedules), plan.schedules);
  fill(of(IdList::qualifications), plan.qualifications);
  fill(of(IdList::weldments), plan.weldments);
  if (plan.line) fill(of(IdList::stages), plan.line->stages);
  if (!plan.cell) return;
  fill(of(IdList::robots), plan.cell->robots);
  fill(of(IdList::orientations), plan.cell->orientations);
  if (plan.cell->zones.empty()) return;
  // All are made before any is borrowed: a vector that grows moves its short strings.
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) seam_places.push_back(weldment.id + "/" + seam.id);
  for (const std::string& place : seam_places) of(IdList::seam_places).add(place);
}

ReferenceCheck::ReferenceCheck(const Plan& plan, std::string_view file, std::optional<JsonValue> root)
    : FieldPath(file, root),
      ids_(std::make_shared<const PlanIds>(plan)),
      values_are_known_good_(root.has_value()) {}

void ReferenceCheck::reference(std::string_view id, const FieldInfo& field) {
  const auto list = static_cast<std::size_t>(field.refers_to);
  const bool of_weldment = field.refers_to == IdList::seams || field.refers_to == IdList::parts;
  if (!id.empty() && id == last_found_[list] && !of_weldment) return;
  if (of_weldment && weldment_) {
    fill(seams_, weldment_->seams);
    fill(parts_, weldment_->parts);
    weldment_ = nullptr;
  }
  const IdSet& known = field.refers_to == IdList::seams   ? seams_
                       : field.refers_to == IdList::parts ? parts_
                                                          : ids_->ids[list];
  if (!known.has(id)) refuse(quoted(id), with_nearest(field.element_expectation(), id, known.all()));
  last_found_[list] = id;
}

void ReferenceCheck::enter(ConstObjectRef object) {
  if (&object.table() != &fields_of<Weldment>()) return;
  seams_.clear();
  parts_.clear();
  weldment_ = static_cast<const Weldment*>(object.data());
}

}  // namespace seamtakt
