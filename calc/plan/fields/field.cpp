#include "plan/fields/field.hpp"

#include <cmath>
#include <functional>
#include <stdexcept>

#include "base/sentences/name_list.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_access.hpp"

namespace seamtakt {

namespace {

Word id_of(IdList list) {
  switch (list) {
    case IdList::none:
      break;
    case IdList::base_metals:
      return "the id of a base metal"_word;
    case IdList::wires:
      return "the id of a wire"_word;
    case IdList::gases:
      return "the id of a gas"_word;
    case IdList::power_sources:
      return "the id of a power source"_word;
    case IdList::schedules:
      return "the id of a schedule"_word;
    case IdList::qualifications:
      return "the id of a qualification"_word;
    case IdList::seams:
      return "the id of a seam of this weldment"_word;
    case IdList::robots:
      return "the id of a robot"_word;
    case IdList::orientations:
      return "the id of an orientation"_word;
    case IdList::stages:
      return "the id of a stage"_word;
    case IdList::seam_places:
      return "a seam as weldment/seam"_word;
    case IdList::weldments:
      return "the id of a weldment"_word;
    case IdList::parts:
      return "the id of a part of this weldment"_word;
  }
  return "an id"_word;
}

SentenceKey key_of(const Range& range) {
  const bool has_lower = std::isfinite(range.lower), has_upper = std::isfinite(range.upper);
  if (!has_lower) return range.upper_open ? "field.number.below"_key : "field.number.at-most"_key;
  if (!has_upper) return range.lower_open ? "field.number.above"_key : "field.number.at-least"_key;
  if (range.lower == range.upper) return "field.number.equal"_key;
  if (range.lower_open)
    return range.upper_open ? "field.number.above-and-below"_key : "field.number.above-and-at-most"_key;
  return range.upper_open ? "field.number.at-least-and-below"_key : "field.number.from-to"_key;
}

/// "a number from 0 to 100 mm".
Sentence number_of(const FieldInfo& field) {
  const Word number = field.kind == FieldKind::integer ? "a whole number"_word : "a number"_word;
  const auto bound = [&](double value) { return UnitValue{value, field.unit, UnitValue::all_digits}; };
  const Range& range = field.range;
  if (std::isfinite(range.lower) || std::isfinite(range.upper)) {
    std::vector<Argument> arguments{{"number", number}};
    if (std::isfinite(range.lower)) arguments.emplace_back("low", bound(range.lower));
    if (std::isfinite(range.upper) && range.lower != range.upper)
      arguments.emplace_back("high", bound(range.upper));
    return Sentence(key_of(range), std::move(arguments));
  }
  if (*field.unit == '\0') return number;
  return Sentence("field.number.in-unit"_key, {{"number", number}, {"quantity", bound(0)}});
}

Sentence list_of(const FieldInfo& field) {
  if (field.least == 0) return Sentence("field.list"_key, {{"element", field.element_expectation()}});
  return Sentence(field.least == field.most ? "field.list.count"_key : "field.list.at-least"_key,
                  {{"count", field.least}, {"element", field.element_expectation()}});
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
    case FieldKind::number_pairs:
    case FieldKind::text_pairs:
    case FieldKind::point:
    case FieldKind::path:
      return field.refers_to == IdList::none;
    default:
      return false;
  }
}

Sentence choice_of(const FieldInfo& field) {
  return Sentence(field.choices.size() > 1 ? "field.choice"_key : "field.choice.single"_key,
                  {{"choices", all_of_names(field.choices)}});
}

}  // namespace

bool Range::contains(double value) const {
  if (!std::isfinite(value)) return false;
  return (lower_open ? value > lower : value >= lower) && (upper_open ? value < upper : value <= upper);
}

Sentence FieldInfo::element_expectation() const {
  switch (kind) {
    case FieldKind::text_list:
      return "a text that isn't empty"_word;
    case FieldKind::reference:
    case FieldKind::reference_list:
      return id_of(refers_to);
    case FieldKind::number:
    case FieldKind::integer:
    case FieldKind::number_list:
    case FieldKind::choice_or_number:
      return number_of(*this);
    case FieldKind::interval:
      return Sentence("field.null-or"_key, {{"value", number_of(*this)}});
    case FieldKind::composition:
      return "a mass percentage from 0 to 100"_word;
    case FieldKind::point:
      return Sentence("field.number.in-unit"_key,
                      {{"number", "a number"_word}, {"quantity", UnitValue{0, "mm"}}});
    case FieldKind::path:
      return point_expectation();
    case FieldKind::number_pairs:
      return Sentence("field.pair"_key, {{"element", number_of(*this)}});
    case FieldKind::text_pairs:
      return Sentence("field.pair"_key, {{"element", Sentence("a text that isn't empty"_word)}});
    default:
      return expectation();
  }
}

Sentence FieldInfo::expectation() const {
  switch (kind) {
    case FieldKind::text:
      return required ? "a text that isn't empty"_word : "a text"_word;
    case FieldKind::choice:
      return choice_of(*this);
    case FieldKind::date:
      return "a date YYYY-MM-DD"_word;
    case FieldKind::boolean:
      return "true or false"_word;
    case FieldKind::interval:
      return Sentence("field.interval"_key, {{"bound", element_expectation()}});
    case FieldKind::choice_or_number:
      return Sentence("field.choice-or-number"_key,
                      {{"choice", choice_of(*this)}, {"number", number_of(*this)}});
    case FieldKind::text_list:
    case FieldKind::reference_list:
    case FieldKind::number_list:
    case FieldKind::number_pairs:
    case FieldKind::text_pairs:
    case FieldKind::path:
      return list_of(*this);
    case FieldKind::point:
      return point_expectation();
    case FieldKind::composition:
      return "an object of mass percentages by element symbol"_word;
    case FieldKind::object:
      return object_expectation(nested());
    case FieldKind::object_list:
      return Sentence("field.objects"_key, {{"title", Word::of_table(nested().title)}});
    default:
      return nullable ? Sentence("field.or-null"_key, {{"value", element_expectation()}})
                      : element_expectation();
  }
}

Sentence point_expectation() {
  return Sentence("field.point"_key, {{"quantity", UnitValue{0, "mm"}}});
}

Sentence object_expectation(const FieldTable& table) {
  return Sentence("field.object"_key, {{"title", Word::of_table(table.title)}});
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
    : name(type.name),
      title(type.title),
      fields(std::move(fields_)),
      groups(groups_),
      file_keys(type.file_keys) {
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
