#include "plan/fields/field.hpp"

#include <cmath>
#include <functional>
#include <stdexcept>

#include "base/units/units.hpp"
#include "plan/fields/field_access.hpp"

namespace seamtakt {

namespace {

const char* id_of(IdList list) {
  switch (list) {
    case IdList::none:
      break;
    case IdList::base_metals:
      return "the id of a base metal";
    case IdList::wires:
      return "the id of a wire";
    case IdList::gases:
      return "the id of a gas";
    case IdList::power_sources:
      return "the id of a power source";
    case IdList::schedules:
      return "the id of a schedule";
    case IdList::qualifications:
      return "the id of a qualification";
    case IdList::seams:
      return "the id of a seam of this weldment";
    case IdList::robots:
      return "the id of a robot";
    case IdList::orientations:
      return "the id of an orientation";
    case IdList::stages:
      return "the id of a stage";
    case IdList::seam_places:
      return "a seam as weldment/seam";
  }
  return "an id";
}

std::string number_text_of(const FieldInfo& field) {
  std::string text = field.kind == FieldKind::integer ? "a whole number" : "a number";
  if (const std::string range = field.range.text(); !range.empty()) text += " " + range;
  if (*field.unit != '\0') text += std::string(field.range.text().empty() ? " in " : " ") + field.unit;
  return text;
}

std::string list_text(const FieldInfo& field) {
  std::string text = "a list of ";
  if (field.least == field.most) return text + std::to_string(field.least) + ", each ";
  if (field.least > 0) text += "at least " + std::to_string(field.least) + ", each ";
  return field.least > 0 ? text : "a list, each ";
}

/// Whether the reader has seen all that there is to check in a field of this kind.
bool stands_alone(const FieldInfo& field) {
  switch (field.kind) {
    case FieldKind::text:
    case FieldKind::choice:
    case FieldKind::date:
    case FieldKind::number:
    case FieldKind::integer:
    case FieldKind::boolean:
    case FieldKind::interval:
    case FieldKind::text_list:
    case FieldKind::number_list:
    case FieldKind::point:
    case FieldKind::path:
      return field.refers_to == IdList::none;
    default:
      return false;
  }
}

std::string choices_text(const FieldInfo& field) {
  return (field.choices.size() > 1 ? "one of " : "the text ") + listed(field.choices);
}

}  // namespace

bool Range::contains(double value) const {
  if (!std::isfinite(value)) return false;
  return (lower_open ? value > lower : value >= lower) && (upper_open ? value < upper : value <= upper);
}

std::string Range::text() const {
  const bool has_lower = std::isfinite(lower), has_upper = std::isfinite(upper);
  const std::string low = has_lower ? number_text(lower) : "", high = has_upper ? number_text(upper) : "";
  if (has_lower && lower == upper) return "equal to " + low;
  if (has_lower && has_upper && !lower_open && !upper_open) return "from " + low + " to " + high;
  std::string text;
  if (has_lower) text = (lower_open ? "above " : "of at least ") + low;
  if (has_upper) text += (has_lower ? " and " : "") + std::string(upper_open ? "below " : "at most ") + high;
  return text;
}

std::string FieldInfo::element_expectation() const {
  switch (kind) {
    case FieldKind::text_list:
      return "a text that isn't empty";
    case FieldKind::reference:
    case FieldKind::reference_list:
      return id_of(refers_to);
    case FieldKind::number:
    case FieldKind::integer:
    case FieldKind::number_list:
    case FieldKind::choice_or_number:
      return number_text_of(*this);
    case FieldKind::interval:
      return "null or " + number_text_of(*this);
    case FieldKind::composition:
      return "a mass percentage from 0 to 100";
    case FieldKind::point:
      return "a number in mm";
    case FieldKind::path:
      return "[x, y, z] in mm";
    default:
      return expectation();
  }
}

std::string FieldInfo::expectation() const {
  switch (kind) {
    case FieldKind::text:
      return required ? "a text that isn't empty" : "a text";
    case FieldKind::choice:
      return choices_text(*this);
    case FieldKind::date:
      return "a date YYYY-MM-DD";
    case FieldKind::boolean:
      return "true or false";
    case FieldKind::interval:
      return "[lower, upper], each " + element_expectation();
    case FieldKind::choice_or_number:
      return choices_text(*this) + ", or " + number_text_of(*this);
    case FieldKind::text_list:
    case FieldKind::reference_list:
    case FieldKind::number_list:
    case FieldKind::path:
      return list_text(*this) + element_expectation();
    case FieldKind::point:
      return "[x, y, z] in mm";
    case FieldKind::composition:
      return "an object of mass percentages by element symbol";
    case FieldKind::object:
      return std::string("an object (") + nested().title + ")";
    case FieldKind::object_list:
      return std::string("a list of objects (each ") + nested().title + ")";
    default:
      return element_expectation() + (nullable ? ", or null" : "");
  }
}

namespace {

std::size_t slot_of(std::string_view key, std::size_t count) {
  std::size_t hash = key.size();
  for (const std::size_t place : {std::size_t{0}, key.size() / 2, key.size() - 1})
    hash = hash * 31 + static_cast<unsigned char>(key[place]);
  return hash % count;
}

}  // namespace

FieldTable::FieldTable(const StructInfo& type, std::vector<FieldInfo> fields_,
                       std::initializer_list<KeyGroup> groups_)
    : name(type.name), title(type.title), fields(std::move(fields_)), groups(groups_), file_keys(type.file_keys) {
  for (FieldInfo& field : fields) {
    field.standard = type.standard;
    if (*field.unit != '\0') continue;
    if (const Unit* unit = unit_of_key(field.key)) field.unit = unit->name;
  }
  own_choices();
  index_keys();
  id_field = named("id");
}

/// The lists that the fields were made with end with the expression that makes the table.
void FieldTable::own_choices() {
  std::size_t count = 0;
  for (const FieldInfo& field : fields) count += field.choices.size();
  choices_.reserve(count);
  for (FieldInfo& field : fields) {
    const std::size_t begin = choices_.size();
    choices_.insert(choices_.end(), field.choices.begin(), field.choices.end());
    field.choices = std::span(choices_).subspan(begin);
  }
}

void FieldTable::index_keys() {
  hashed_.assign(4 * fields.size() + 1, 0);
  for (std::size_t i = 0; i < fields.size(); ++i) {
    required_.set(i, fields[i].required);
    beyond_own_rules_.set(i, !stands_alone(fields[i]));
    std::size_t slot = slot_of(fields[i].key, hashed_.size());
    while (hashed_[slot] != 0) slot = (slot + 1) % hashed_.size();
    hashed_[slot] = static_cast<std::uint8_t>(i + 1);
  }
  for (const KeyGroup& group : groups) {
    KeySet keys;
    for (std::string_view key : group.keys) keys.set(find(key));
    group_sets_.emplace_back(keys, group.needed);
    beyond_own_rules_ |= keys;
  }
}

std::size_t FieldTable::find(std::string_view key, std::size_t hint) const {
  if (hint < fields.size() && fields[hint].key == key) return hint;
  if (key.empty()) return npos;
  for (std::size_t slot = slot_of(key, hashed_.size()); hashed_[slot] != 0;
       slot = (slot + 1) % hashed_.size())
    if (fields[hashed_[slot] - 1u].key == key) return hashed_[slot] - 1u;
  return npos;
}

const FieldInfo* FieldTable::named(std::string_view key) const {
  const std::size_t at = find(key);
  return at == npos ? nullptr : &fields[at];
}

namespace {

/// A field of another struct would reach into memory that it knows nothing of.
const void* data_of(ConstObjectRef object, const FieldInfo& field) {
  const FieldInfo* first = object.table().fields.data();
  if (std::less<>()(&field, first) || !std::less<>()(&field, first + object.table().fields.size()))
    throw std::logic_error("a field of another struct");
  return object.data();
}

void* data_of(ObjectRef object, const FieldInfo& field) {
  data_of(ConstObjectRef(object), field);
  return object.data();
}

}  // namespace

std::string FieldInfo::default_json() const {
  return required ? std::string() : access->default_json(standard, *this);
}

std::string FieldInfo::text(ConstObjectRef object) const {
  return access->text(data_of(object, *this), *this);
}

void FieldInfo::set_text(ObjectRef object, std::string_view text) const {
  access->set_text(data_of(object, *this), *this, text);
}

std::optional<double> FieldInfo::number(ConstObjectRef object) const {
  return access->number(data_of(object, *this), *this);
}

void FieldInfo::set_number(ObjectRef object, std::optional<double> number) const {
  access->set_number(data_of(object, *this), *this, number);
}

}  // namespace seamtakt
