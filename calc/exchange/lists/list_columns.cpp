#include "exchange/lists/list_columns.hpp"

#include <charconv>

namespace seamtakt {

namespace {

bool is_listed(const FieldInfo& field) {
  switch (field.kind) {
    case FieldKind::object:
    case FieldKind::object_list:
    case FieldKind::composition:
    case FieldKind::text_pairs:
      return false;
    default:
      return true;
  }
}

std::vector<ListColumn> columns_of(ListKind kind) {
  std::vector<ListColumn> columns;
  if (kind == ListKind::seams) columns.push_back({std::string(weldment_key)});
  for (const FieldInfo& field : table_of(kind).fields) {
    if (is_listed(field)) columns.push_back({std::string(field.key), nullptr, &field});
    if (field.kind != FieldKind::object) continue;
    for (const FieldInfo& inner : field.nested().fields)
      if (is_listed(inner))
        columns.push_back({std::string(field.key) + "." + std::string(inner.key), &field, &inner});
  }
  return columns;
}

}  // namespace

const FieldTable& table_of(ListKind kind) {
  return kind == ListKind::seams ? fields_of<Seam>() : fields_of<Schedule>();
}

std::string_view ListColumn::top_key() const {
  return std::string_view(key).substr(0, key.find_first_of(".["));
}

const std::vector<ListColumn>& list_columns(ListKind kind) {
  static const std::vector<ListColumn> seams = columns_of(ListKind::seams),
                                       schedules = columns_of(ListKind::schedules);
  return kind == ListKind::seams ? seams : schedules;
}

bool has_parts(const ListColumn& column) {
  if (!column.field || column.object) return false;
  const FieldKind kind = column.field->kind;
  return kind == FieldKind::number_list || kind == FieldKind::reference_list || kind == FieldKind::path;
}

std::string_view whole_key(std::string_view key) {
  return key.substr(0, key.find('['));
}

std::optional<ListColumn> list_column(ListKind kind, std::string_view key) {
  const std::string_view whole = whole_key(key);
  for (const ListColumn& column : list_columns(kind)) {
    if (column.key != whole) continue;
    if (whole == key) return column;
    if (!has_parts(column)) return std::nullopt;
    ListColumn part = column;
    part.key = key;
    const char* const last = key.data() + key.size();
    const auto end = std::from_chars(key.data() + whole.size() + 1, last, part.element);
    if (end.ec != std::errc() || end.ptr == last || *end.ptr != ']') return std::nullopt;
    std::string_view rest(end.ptr + 1, static_cast<std::size_t>(last - end.ptr - 1));
    if (part.element < 1 || part.element > most_parts || part.element > column.field->most)
      return std::nullopt;
    if (column.field->kind != FieldKind::path) {
      if (rest.empty()) return part;
      return std::nullopt;
    }
    if (rest.size() != 2 || rest[0] != '.' || rest[1] < 'x' || rest[1] > 'z') return std::nullopt;
    part.axis = static_cast<std::size_t>(rest[1] - 'x') + 1;
    return part;
  }
  return std::nullopt;
}

}  // namespace seamtakt
