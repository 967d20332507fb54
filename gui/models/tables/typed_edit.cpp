#include "models/tables/typed_edit.hpp"

#include "base/error.hpp"
#include "document/plan_address.hpp"
#include "document/shown_text.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

/// Shown values may be rounded: leaving one unchanged must not change the plan.
bool is_as_shown(const Plan& plan, const std::string& pointer, const FieldInfo& info, const QString& typed) {
  return typed == UnitView::shared().fieldShown(field_text(plan, pointer, info.key), info);
}

}  // namespace

std::optional<Refusal> set_typed(Document& document, const std::string& pointer, const std::string& key,
                                 const QString& typed, WhenLocked when_locked) {
  const FieldInfo* field = field_info(*document.plan(), pointer, key);
  if (!field) return Refusal{pointer, Document::tr("there is no such field")};
  if (is_as_shown(*document.plan(), pointer, *field, typed)) return std::nullopt;
  try {
    return document.setField(pointer, key, UnitView::shared().fieldTyped(typed, *field), when_locked);
  } catch (const InputError& error) {
    document.takeBack(pointer + "." + key);
    return Refusal{pointer, refusal_text(error)};
  }
}

}  // namespace seamtakt::desk
