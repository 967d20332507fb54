#include "plan/fields/field.hpp"

#include <cmath>

#include "base/units/units.hpp"

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

void TableInfo::index_keys() {
  hashed.assign(4 * infos.size() + 1, 0);
  for (std::size_t i = 0; i < infos.size(); ++i) {
    required.set(i, infos[i]->required);
    beyond_own_rules.set(i, !stands_alone(*infos[i]));
    std::size_t slot = slot_of(infos[i]->key, hashed.size());
    while (hashed[slot] != 0) slot = (slot + 1) % hashed.size();
    hashed[slot] = static_cast<std::uint8_t>(i + 1);
  }
  for (const KeyGroup& group : groups) {
    KeySet keys;
    for (std::string_view key : group.keys) keys.set(find(key));
    group_sets.emplace_back(keys, group.needed);
    beyond_own_rules |= keys;
  }
}

std::size_t TableInfo::find(std::string_view key, std::size_t hint) const {
  if (hint < infos.size() && infos[hint]->key == key) return hint;
  if (key.empty()) return npos;
  for (std::size_t slot = slot_of(key, hashed.size()); hashed[slot] != 0; slot = (slot + 1) % hashed.size())
    if (infos[hashed[slot] - 1u]->key == key) return hashed[slot] - 1u;
  return npos;
}

}  // namespace seamtakt
