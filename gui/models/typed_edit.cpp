#include "models/typed_edit.hpp"

#include "base/error.hpp"
#include "document/plan_address.hpp"
#include "models/refusal_text.hpp"
#include "models/unit_view.hpp"

namespace seamtakt::desk {

std::optional<Refusal> set_typed(Document& document, const std::string& pointer, const std::string& key,
                                 const QString& typed) {
  const FieldInfo* field = field_info(*document.plan(), pointer, key);
  if (!field) return Refusal{pointer, Document::tr("there is no such field")};
  // What is shown may be rounded: leaving it as it was must not change the plan.
  const UnitView& units = UnitView::shared();
  if (typed == units.fieldShown(field_text(*document.plan(), pointer, key), *field)) return std::nullopt;
  try {
    return document.setField(pointer, key, units.fieldTyped(typed, *field));
  } catch (const InputError& error) {
    return Refusal{pointer, refusal_text(error)};
  }
}

}  // namespace seamtakt::desk
