#include "document/rename.hpp"

#include "base/error.hpp"
#include "document/plan_address.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt::desk {

namespace {

/// The list whose items references name, for the list that has the item at `pointer`.
IdList referencing_list(std::string_view pointer) {
  struct Kind {
    std::string_view key;
    IdList list;
  };
  static constexpr Kind kinds[] = {{"base_metals", IdList::base_metals},
                                   {"wires", IdList::wires},
                                   {"gases", IdList::gases},
                                   {"power_sources", IdList::power_sources},
                                   {"schedules", IdList::schedules},
                                   {"qualifications", IdList::qualifications},
                                   {"weldments", IdList::weldments},
                                   {"seams", IdList::seams},
                                   {"parts", IdList::parts},
                                   {"robots", IdList::robots},
                                   {"orientations", IdList::orientations},
                                   {"stages", IdList::stages}};
  const std::string_view list = pointer.substr(0, pointer.rfind('/'));
  for (const Kind& kind : kinds)
    if (list.substr(list.rfind('/') + 1) == kind.key) return kind.list;
  return IdList::none;
}

/// What is looked for.
struct Named {
  IdList list = IdList::none;
  std::string id, weldment;  ///< id of the weldment that it is in; empty: in none
  std::string within;        ///< pointer of that weldment: its seams and parts are named within it alone
};

Named named_at(const Plan& plan, std::string_view pointer) {
  Named named{referencing_list(pointer), field_text(plan, pointer, "id"), {}, {}};
  if (named.list != IdList::seams && named.list != IdList::parts) return named;
  named.within = pointer.substr(0, pointer.rfind('/'));
  named.within.resize(named.within.rfind('/'));
  named.weldment = field_text(plan, named.within, "id");
  return named;
}

/// The id that `reference`, a value of `field` in the object at `pointer`, has once the item is called
/// `after`; nothing where it names something else.
std::optional<std::string> followed_reference(const Named& named, const std::string& after,
                                              const FieldInfo& field, std::string_view pointer,
                                              const std::string& reference) {
  if (field.refers_to == IdList::seam_places) {
    if (named.list == IdList::seams && reference == named.weldment + "/" + named.id)
      return named.weldment + "/" + after;
    if (named.list == IdList::weldments && reference.starts_with(named.id + "/"))
      return after + reference.substr(named.id.size());
    return std::nullopt;
  }
  if (field.refers_to != named.list || reference != named.id) return std::nullopt;
  if (!named.within.empty() && !lies_in(pointer, named.within)) return std::nullopt;
  return after;
}

/// Calls visit(object, field, pointer) for each field that refers to ids, in `object` and all within it.
template <class Visit>
void each_referring(ConstObjectRef object, const std::string& pointer, const Visit& visit) {
  for (const FieldInfo& field : object.table().fields) {
    if (field.objects) {
      const Elements elements = field.objects->elements(object.data(), field);
      const std::string below = pointer + "/" + std::string(field.key);
      for (std::size_t i = 0; i < elements.count; ++i)
        each_referring(NestedAccess::element(elements, field, i),
                       field.kind == FieldKind::object_list ? below + "/" + std::to_string(i) : below, visit);
    } else if (field.refers_to != IdList::none) {
      visit(object, field, pointer);
    }
  }
}

/// Calls visit(id) for each id in a field of references; the object must be one that may be changed where
/// visit changes it.
template <class Visit>
void each_id(ConstObjectRef object, const FieldInfo& field, const Visit& visit) {
  void* data = const_cast<void*>(object.data());
  if (field.kind == FieldKind::reference) visit(member_at<std::string>(data, field.offset));
  if (field.kind == FieldKind::reference_list)
    for (std::string& id : member_at<std::vector<std::string>>(data, field.offset)) visit(id);
}

/// The place of an accepted finding after the item got another id; nothing where it isn't about the item.
std::optional<std::string> followed_place(const Named& named, const std::string& after,
                                          const std::string& place) {
  std::string before, now;
  if (named.list == IdList::weldments) {
    before = named.id;
    now = after;
  } else if (named.list == IdList::seams) {
    before = named.weldment + "/" + named.id;
    now = named.weldment + "/" + after;
  } else if (named.list == IdList::schedules) {
    before = place.starts_with("schedule ") ? "schedule " + named.id : named.id;
    now = place.starts_with("schedule ") ? "schedule " + after : after;
    if (place != before) return std::nullopt;
  } else {
    return std::nullopt;
  }
  if (!lies_in(place, before)) return std::nullopt;
  return now + place.substr(before.size());
}

void follow(Plan& plan, const Named& named, const std::string& after) {
  each_referring(plan, {}, [&](ConstObjectRef object, const FieldInfo& field, const std::string& at) {
    each_id(object, field, [&](std::string& id) {
      if (auto now = followed_reference(named, after, field, at, id)) id = std::move(*now);
    });
  });
  for (Acceptance& accepted : plan.accepted)
    if (auto now = followed_place(named, after, accepted.where)) accepted.where = std::move(*now);
}

}  // namespace

std::vector<Reference> references_to(const Plan& plan, std::string_view pointer) {
  const Named named = named_at(plan, pointer);
  std::vector<Reference> found;
  if (named.id.empty()) return found;
  each_referring(plan, {}, [&](ConstObjectRef object, const FieldInfo& field, const std::string& at) {
    const Reference here{at, std::string(field.key)};
    each_id(object, field, [&](const std::string& id) {
      if (followed_reference(named, {}, field, at, id) && (found.empty() || !(found.back() == here)))
        found.push_back(here);
    });
  });
  for (std::size_t i = 0; i < plan.accepted.size(); ++i)
    if (followed_place(named, {}, plan.accepted[i].where))
      found.push_back({"/accepted/" + std::to_string(i), "where"});
  return found;
}

void rename_item(Plan& plan, std::string_view pointer, const std::string& id) {
  const Named named = named_at(plan, pointer);
  if (named.id == id) return;
  if (id.empty()) throw InputError(std::string(pointer), "nothing"_word, "an id"_word);
  set_field_text(plan, pointer, "id", id);
  if (named.list != IdList::none) follow(plan, named, id);
}

void follow_rename(Plan& plan, std::string_view pointer, const std::string& before,
                   const std::string& after) {
  Named named = named_at(plan, pointer);
  named.id = before;
  if (named.list != IdList::none) follow(plan, named, after);
}

std::string item_name(const Plan& plan, std::string_view pointer) {
  std::string name;
  for (std::size_t at = 0; at != std::string_view::npos;) {
    at = pointer.find('/', at + 1);
    const auto object = object_at(plan, pointer.substr(0, at));
    if (!object || object->table().id_field == nullptr) continue;
    if (!name.empty()) name += '/';
    name += object->table().id_field->text(*object);
  }
  return name;
}

}  // namespace seamtakt::desk
