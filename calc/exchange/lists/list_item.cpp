#include "exchange/lists/list_item.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "base/json/json_document.hpp"
#include "base/json/json_writer.hpp"
#include "plan/fields/field_access.hpp"
#include "plan/fields/field_path.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt {

namespace {

/// The object that holds a column's field: the item, or the one in it; made where it is absent.
ObjectRef holder_of(ObjectRef item, const ListColumn& column) {
  if (!column.object) return item;
  const NestedAccess& access = *column.object->objects;
  if (access.elements(item.data(), *column.object).count == 0) access.make(item.data(), *column.object, 1);
  return access.element_of(item.data(), *column.object, 0);
}

/// Numbers that a workbook can't keep to the last digit become the plan's again.
bool same_value(const JsonNode& a, const JsonNode& b) {
  if (a.kind != b.kind) return false;
  if (a.kind == JsonNode::Kind::number)
    return a.number == b.number || rounded_text(a.number, 15) == rounded_text(b.number, 15);
  if (a.kind == JsonNode::Kind::string) return a.string == b.string;
  if (a.kind == JsonNode::Kind::boolean) return a.boolean == b.boolean;
  return std::equal(a.elements.begin(), a.elements.end(), b.elements.begin(), b.elements.end(), same_value);
}

std::string shown(const JsonNode& node) {
  switch (node.kind) {
    case JsonNode::Kind::number:
      return number_text(node.number);
    case JsonNode::Kind::boolean:
      return node.boolean ? "true" : "false";
    case JsonNode::Kind::string:
      return node.string;
    default:
      return {};
  }
}

std::string shown_point(const JsonNode& point) {
  std::string text;
  for (const JsonNode& each : point.elements) text += (text.empty() ? "" : " ") + shown(each);
  return text;
}

std::string shown_list(const JsonNode& list) {
  std::vector<std::string> items;
  for (const JsonNode& each : list.elements)
    items.push_back(each.kind == JsonNode::Kind::array ? shown_point(each) : shown(each));
  return joined_items(items);
}

std::string shown_interval(const JsonNode& bounds) {
  const std::string low = shown(bounds.elements[0]), high = shown(bounds.elements[1]);
  return low + (low.empty() ? "" : " ") + ".." + (high.empty() ? "" : " ") + high;
}

}  // namespace

void set_json(ObjectRef object, const FieldInfo& field, const std::string& json) {
  const JsonDocument document(json, "");
  ReadContext context("", document.root());
  field.access->read(object.data(), document.root(), field, context);
}

void clear_column(ObjectRef item, const ListColumn& column) {
  if (column.object && column.object->objects->elements(item.data(), *column.object).count == 0) return;
  column.field->set_text(holder_of(item, column), "");
}

std::string column_json(ConstObjectRef item, const ListColumn& column) {
  ConstObjectRef holder = item;
  if (column.object) {
    const Elements elements = column.object->objects->elements(item.data(), *column.object);
    if (elements.count == 0) return "null";
    holder = NestedAccess::element(elements, *column.object, 0);
  }
  std::string json;
  column.field->access->write(holder.data(), *column.field, json);
  return json;
}

SheetCell column_cell(ConstObjectRef item, const ListColumn& column) {
  const JsonNode value = parse_json(column_json(item, column), "");
  if (value.kind == JsonNode::Kind::number) return value.number;
  const std::string text = column_text(item, column);
  if (text.empty()) return {};
  return text;
}

std::string column_text(ConstObjectRef item, const ListColumn& column) {
  const JsonNode value = parse_json(column_json(item, column), "");
  if (value.kind != JsonNode::Kind::array) return shown(value);
  if (column.field->kind == FieldKind::interval) return shown_interval(value);
  return column.field->kind == FieldKind::point ? shown_point(value) : shown_list(value);
}

bool same_to_15_digits(const std::string& a, const std::string& b) {
  return a == b || same_value(parse_json(a, ""), parse_json(b, ""));
}

RefusedCell ItemWriter::refusal(const BookRow& row, const MappedColumn* column,
                                const InputError& error) const {
  const BookSheet& sheet = book_.sheets[mapping_.sheet];
  return {sheet.name,
          row.number,
          column ? column->heading : std::string(),
          cell_place(book_, sheet, row.number, column ? column->column : 0),
          error.found(),
          error.expected()};
}

void ItemWriter::set(const BookRow& row, const MappedColumn& mapped, const ListColumn& column, ObjectRef item,
                     std::vector<RefusedCell>& refused, std::vector<std::string_view>& set_keys) const {
  const BookCell& cell = row.at(mapped.column);
  try {
    if (asks_to_clear(cell)) return clear_column(item, column);
    // A text as the list would show it: not read, since it may have blanks that reading drops.
    if (cell.kind == BookCell::Kind::text && cell.text == column_text(item, column)) {
      set_keys.push_back(column.top_key());
      return;
    }
    const std::string before = column_json(item, column);
    const std::string json = cell_json(cell, column, {mapped.unit, mapping_.decimal});
    set_keys.push_back(column.top_key());
    if (before != "null" && same_to_15_digits(before, json)) return;
    set_json(holder_of(item, column), *column.field, json);
  } catch (const InputError& error) {
    refused.push_back(refusal(row, &mapped, error));
  }
}

/// Points of which the row gives coordinates; an axis without a column is 0.
std::string ItemWriter::points_json(const BookRow& row, const std::vector<Part>& parts,
                                    const Part*& at) const {
  std::map<std::size_t, std::array<std::string, 3>> points;
  std::map<std::size_t, std::array<bool, 3>> has_column;
  for (const Part& part : parts) {
    at = &part;
    has_column[part.column.element][part.column.axis - 1] = true;
    const BookCell& cell = row.at(part.mapped->column);
    if (cell.is_empty()) continue;
    points[part.column.element][part.column.axis - 1] =
        cell_json(cell, part.column, {part.mapped->unit, mapping_.decimal});
  }
  std::string json = "[";
  for (auto& [element, point] : points) {
    json += json.size() > 1 ? ", [" : "[";
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (point[axis].empty() && has_column[element][axis]) {
        for (const Part& part : parts)
          if (part.column.element == element && part.column.axis == axis + 1) at = &part;
        throw InputError("", "nothing"_word, at->column.field->element_expectation());
      }
      json += (axis > 0 ? ", " : "") + (point[axis].empty() ? "0" : point[axis]);
    }
    json += "]";
  }
  return json + "]";
}

/// The list with the elements that the row gives; others stay as they are.
std::string ItemWriter::elements_json(const BookRow& row, const std::vector<Part>& parts, ConstObjectRef item,
                                      const Part*& at) const {
  const JsonNode before =
      parse_json(column_json(item, *list_column(kind_, whole_key(parts.front().column.key))), "");
  std::vector<std::string> items;
  for (const JsonNode& each : before.elements)
    items.push_back(each.kind == JsonNode::Kind::number ? number_text(each.number)
                                                        : json_string(each.string));
  for (const Part& part : parts) {
    at = &part;
    const BookCell& cell = row.at(part.mapped->column);
    if (cell.is_empty()) continue;
    const std::string json = cell_json(cell, part.column, {part.mapped->unit, mapping_.decimal});
    if (part.column.element > items.size() + 1)
      throw InputError("", found_in(cell), "the elements before it"_word);
    if (part.column.element > items.size())
      items.push_back(json);
    else
      items[part.column.element - 1] = json;
  }
  std::string json = "[";
  for (const std::string& each : items) json += (json.size() > 1 ? ", " : "") + each;
  return json + "]";
}

void ItemWriter::set_parts(const BookRow& row, const std::vector<Part>& parts, ObjectRef item,
                           std::vector<RefusedCell>& refused) const {
  const auto is_empty = [&](const Part& part) { return row.at(part.mapped->column).is_empty(); };
  if (std::all_of(parts.begin(), parts.end(), is_empty)) return;
  const Part* at = &parts.front();
  const FieldInfo& field = *at->column.field;
  try {
    const std::string before = column_json(item, *list_column(kind_, whole_key(at->column.key)));
    const std::string json =
        field.kind == FieldKind::path ? points_json(row, parts, at) : elements_json(row, parts, item, at);
    if (same_to_15_digits(before, json)) return;
    set_json(item, field, json);
  } catch (const InputError& error) {
    refused.push_back(refusal(row, at->mapped, error));
  }
}

void ItemWriter::write(const BookRow& row, ObjectRef item, std::vector<RefusedCell>& refused) const {
  std::map<std::string_view, std::vector<Part>> parts;  // by the key of the whole list
  std::vector<std::string_view> set_keys;
  std::vector<ListColumn> columns;  // whose keys `set_keys` refers to
  columns.reserve(mapping_.columns.size());
  for (const MappedColumn& mapped : mapping_.columns) {
    const auto column = mapped.key.empty() ? std::nullopt : list_column(kind_, mapped.key);
    if (!column || !column->field || column->is_id()) continue;
    columns.push_back(*column);
    if (column->is_part())
      parts[whole_key(mapped.key)].push_back({&mapped, *column});
    else if (!row.at(mapped.column).is_empty() && !row.at(mapped.column).from_left)
      set(row, mapped, columns.back(), item, refused, set_keys);
  }
  for (auto& [key, list] : parts) {
    std::stable_sort(list.begin(), list.end(),
                     [](const Part& a, const Part& b) { return a.column.element < b.column.element; });
    set_parts(row, list, item, refused);
  }
  // Of keys that exclude one another, the one that the row gives replaces the others.
  for (const KeyGroup& group : item.table().groups) {
    std::vector<std::string_view> given;
    for (const std::string_view key : group.keys)
      if (std::find(set_keys.begin(), set_keys.end(), key) != set_keys.end()) given.push_back(key);
    if (given.size() != 1) continue;
    for (const std::string_view key : group.keys) {
      if (key == given.front()) continue;
      const FieldInfo& other = *item.table().named(key);
      if (other.kind == FieldKind::object)
        other.objects->make(item.data(), other, 0);
      else
        other.set_text(item, "");
    }
  }
}

}  // namespace seamtakt
