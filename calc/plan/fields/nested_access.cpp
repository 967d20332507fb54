#include "plan/fields/nested_access.hpp"

#include <stdexcept>

#include "base/json/json_document.hpp"
#include "base/parallel/thread_pool.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

/// Calls work(i, place) for each element. A long list is shared out to the pool's threads, each with a
/// place of its own; the first element that is refused is the one that is reported, as in a short list.
template <class Place, class Work>
void share_out(std::size_t count, Place& place, const Work& work) {
  constexpr std::size_t elements_a_piece = 32;
  if (count <= elements_a_piece || ThreadPool::is_inside_piece()) {
    for (std::size_t i = 0; i < count; ++i) work(i, place);
    return;
  }
  ThreadPool::shared().parallel_for(count, elements_a_piece, [&](std::size_t begin, std::size_t end) {
    Place own(place);
    for (std::size_t i = begin; i < end; ++i) work(i, own);
  });
}

const std::string& id_of(ConstObjectRef object) {
  return member_at<std::string>(object.data(), object.table().id_field->offset);
}

/// The first element whose id an earlier one has; their count where there is none.
std::size_t first_duplicate(const Elements& elements, const FieldInfo& field) {
  if (field.nested().id_field == nullptr) return elements.count;
  IdSet ids;
  ids.reserve(elements.count);
  for (std::size_t i = 0; i < elements.count; ++i)
    if (!ids.add(id_of(NestedAccess::element(elements, field, i)))) return i;
  return elements.count;
}

void refuse_duplicate(const std::string& id, FieldPath& place) {
  FieldPath::Step step(place, "id");
  place.refuse("the id " + quoted(id) + " a second time", "each id once in a list");
}

}  // namespace

void NestedAccess::set_text(void*, const FieldInfo& field, std::string_view text) const {
  FieldPath(field.key).refuse(quoted(text), "its fields one by one");
}

std::optional<double> NestedAccess::number(const void*, const FieldInfo&) const {
  return std::nullopt;
}

void NestedAccess::set_number(void*, const FieldInfo& field, std::optional<double>) const {
  FieldPath(field.key).refuse("a number", "its fields one by one");
}

void ObjectAccess::read(void* object, const JsonValue& node, const FieldInfo& field,
                        ReadContext& context) const {
  make(object, field, 1);
  read_object(element_of(object, field, 0), node, context);
}

bool ObjectAccess::is_written(const void* object, const FieldInfo& field, bool) const {
  return elements(object, field).count > 0;
}

void ObjectAccess::write(const void* object, const FieldInfo& field, std::string& json) const {
  write_object(element(elements(object, field), field, 0), json);
}

void ObjectAccess::check(const void* object, const FieldInfo& field, ReferenceCheck& check) const {
  const Elements found = elements(object, field);
  if (found.count > 0) check_object(element(found, field, 0), check);
}

std::string ObjectAccess::text(const void* object, const FieldInfo& field) const {
  return elements(object, field).count > 0 ? "1" : "";
}

void ObjectAccess::append_copy(void*, const FieldInfo&, std::size_t) const {
  throw std::logic_error("an object that isn't in a list");
}

void ObjectAccess::erase(void*, const FieldInfo&, std::size_t) const {
  throw std::logic_error("an object that isn't in a list");
}

void ObjectListAccess::read(void* object, const JsonValue& node, const FieldInfo& field,
                            ReadContext& context) const {
  require_kind(node, node.kind() == JsonValue::Kind::array, field, context);
  const std::vector<JsonValue> nodes = node.elements();
  make(object, field, nodes.size());
  const Elements made = elements(object, field);
  share_out(nodes.size(), context, [&](std::size_t i, ReadContext& place) {
    FieldPath::Step step(place, i);
    const ConstObjectRef found = element(made, field, i);
    read_object(ObjectRef(found.table(), const_cast<void*>(found.data())), nodes[i], place);
  });
}

bool ObjectListAccess::is_written(const void* object, const FieldInfo& field, bool was_in_file) const {
  return field.required || was_in_file || elements(object, field).count > 0;
}

void ObjectListAccess::write(const void* object, const FieldInfo& field, std::string& json) const {
  const Elements found = elements(object, field);
  json += '[';
  for (std::size_t i = 0; i < found.count; ++i) {
    if (i > 0) json += ", ";
    write_object(element(found, field, i), json);
  }
  json += ']';
}

void ObjectListAccess::check(const void* object, const FieldInfo& field, ReferenceCheck& check) const {
  const Elements found = elements(object, field);
  const std::size_t duplicate = first_duplicate(found, field);
  share_out(found.count, check, [&](std::size_t i, ReferenceCheck& place) {
    FieldPath::Step step(place, i);
    const ConstObjectRef item = element(found, field, i);
    if (i == duplicate) refuse_duplicate(id_of(item), place);
    place.enter(item);
    check_object(item, place);
  });
}

std::string ObjectListAccess::text(const void* object, const FieldInfo& field) const {
  return std::to_string(elements(object, field).count);
}

}  // namespace seamtakt
