#include "models/tables/typed_edit.hpp"

#include "base/error.hpp"
#include "document/plan_address.hpp"
#include "document/shown_text.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

/// Shown values may be rounded: leaving one unchanged must not change the plan.
bool is_as_shown(const Plan& plan, const TypedField& field, const FieldInfo& info) {
  return field.typed == UnitView::shared().fieldShown(field_text(plan, field.pointer, field.key), info);
}

/// "F5S, Travel speed: found ..."
Refusal named(const Plan& plan, const TypedField& field, Refusal refusal) {
  const QString id = QString::fromStdString(field_text(plan, field.pointer, "id"));
  const FieldInfo* info = field_info(plan, field.pointer, field.key);
  refusal.text =
      Document::tr("Nothing is changed. %1, %2: %3")
          .arg(id, info ? core_label(info->label) : QString::fromStdString(field.key), refusal.text);
  return refusal;
}

}  // namespace

std::optional<Refusal> set_typed(Document& document, const std::string& pointer, const std::string& key,
                                 const QString& typed, WhenLocked when_locked) {
  const FieldInfo* field = field_info(*document.plan(), pointer, key);
  if (!field) return Refusal{pointer, Document::tr("there is no such field")};
  if (is_as_shown(*document.plan(), {pointer, key, typed}, *field)) return std::nullopt;
  try {
    return document.setField(pointer, key, UnitView::shared().fieldTyped(typed, *field), when_locked);
  } catch (const InputError& error) {
    document.takeBack(pointer + "." + key);
    return Refusal{pointer, refusal_text(error)};
  }
}

std::optional<Refusal> set_all_typed(Document& document, const QString& what,
                                     const std::vector<TypedField>& fields) {
  const PlanPtr plan = document.plan();
  std::vector<TypedField> changed;
  for (const TypedField& field : fields) {
    const FieldInfo* info = field_info(*plan, field.pointer, field.key);
    if (!info) return Refusal{field.pointer, Document::tr("there is no such field")};
    if (!is_as_shown(*plan, field, *info)) changed.push_back(field);
  }
  if (changed.empty()) return std::nullopt;
  std::size_t at = 0;
  auto refusal = document.edit(what, {}, [&](Plan& edited) {
    for (at = 0; at < changed.size(); ++at) {
      const auto& [pointer, key, typed] = changed[at];
      const std::string before = field_text(edited, pointer, key);
      set_field_text(edited, pointer, key,
                     UnitView::shared().fieldTyped(typed, *field_info(edited, pointer, key)));
      if (key == "id") follow_rename(edited, pointer, before, field_text(edited, pointer, key));
    }
  });
  if (!refusal || refusal->locked) return refusal;
  // An error of the plan as a whole, such as an unknown id, tells its place by its pointer.
  for (std::size_t i = 0; at == changed.size() && i < changed.size(); ++i)
    if (refusal->pointer.starts_with(changed[i].pointer + "/" + changed[i].key)) at = i;
  return at < changed.size() ? named(*plan, changed[at], *refusal) : refusal;
}

}  // namespace seamtakt::desk
