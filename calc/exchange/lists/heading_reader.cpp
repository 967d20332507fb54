#include "exchange/lists/heading_reader.hpp"

#include <algorithm>
#include <utility>

#include "base/sentences/language.hpp"
#include "base/text/ascii.hpp"
#include "exchange/lists/heading_words.hpp"

namespace seamtakt {

namespace {

constexpr std::pair<std::string_view, std::string_view> written_out[] = {
    {"ä", "ae"}, {"ö", "oe"}, {"ü", "ue"}, {"Ä", "ae"}, {"Ö", "oe"}, {"Ü", "ue"}, {"ß", "ss"}};

bool is_word_sign(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || byte >= 0x80;
}

/// Names of units beside those that quantities are stated with.
constexpr std::pair<std::string_view, std::string_view> other_names[] = {
    {"\"", "in"},       {"inch", "in"},  {"inches", "in"},   {"zoll", "in"}, {"°", "deg"},
    {"degrees", "deg"}, {"grad", "deg"}, {"sec", "s"},       {"sek", "s"},   {"°c", "C"},
    {"°f", "F"},        {"grad c", "C"}, {"kj/cm", "kJ/cm"}, {"hz", "Hz"}};

bool is_unit(std::string_view text) {
  if (text.empty()) return false;
  if (find_unit(text) || find_unit(lower_case(text))) return true;
  for (const auto& [name, unit] : other_names)
    if (name == lower_case(text)) return true;
  return false;
}

/// A head parted into its name and the unit after it.
struct Parted {
  std::string_view name, unit;
};

Parted parted_at_bracket(std::string_view heading) {
  const std::size_t open = heading.find_last_of("[(");
  if (open == std::string_view::npos || open == 0 || heading.find_last_of("])") != heading.size() - 1)
    return {};
  return {trimmed(heading.substr(0, open)), trimmed(heading.substr(open + 1, heading.size() - open - 2))};
}

Parted parted_at(std::string_view heading, std::string_view separators) {
  const std::size_t at = heading.find_last_of(separators);
  if (at == std::string_view::npos || at == 0) return {};
  return {trimmed(heading.substr(0, at)), trimmed(heading.substr(at + 1))};
}

std::string_view without_in(std::string_view name) {
  return name.ends_with(" in") ? trimmed(name.substr(0, name.size() - 3)) : name;
}

/// A key without the unit that it ends in: "wire_feed_speed" of "wire_feed_speed_m_min".
std::string_view without_unit(std::string_view key) {
  const Unit* unit = unit_of_key(key);
  if (!unit) return key;
  // The shortest ending that names the unit: "_min" alone would be a time.
  for (std::size_t at = key.rfind('_'); at != std::string_view::npos && at > 0; at = key.rfind('_', at - 1))
    if (unit_of_key("k" + std::string(key.substr(at))) == unit) return key.substr(0, at);
  return key;
}

}  // namespace

std::string plain_name(std::string_view text) {
  std::string name;
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::string sign(1, text[i]);
    for (const auto& [letter, letters] : written_out)
      if (text.substr(i).starts_with(letter)) {
        sign = letters;
        i += letter.size() - 1;
        break;
      }
    // A blank that doesn't break, and a blank of another width.
    if (text.substr(i).starts_with("\xC2\xA0")) {
      sign = " ";
      ++i;
    }
    if (!is_word_sign(sign[0])) sign = " ";
    if (sign == " " && (name.empty() || name.back() == ' ')) continue;
    name += sign;
  }
  while (name.ends_with(' ')) name.pop_back();
  return lower_case(name);
}

const Unit* unit_as_written(std::string_view text, Dimension dimension) {
  if (text.empty()) return nullptr;
  if (const Unit* unit = find_unit(text, dimension)) return unit;
  const std::string lower = lower_case(text);
  if (const Unit* unit = find_unit(lower, dimension)) return unit;
  for (const auto& [name, unit] : other_names)
    if (name == lower) return find_unit(unit, dimension);
  return nullptr;
}

void HeadingReader::add(const std::string& name, const std::string& key) {
  if (!name.empty()) keys_.emplace(name, key);
}

/// Elements of a list are numbered: "thickness 1", "t1"; coordinates too: "x1", "z2".
void HeadingReader::add_column(const ListColumn& column, std::string_view name) {
  add(plain_name(name), column.key);
  if (!has_parts(column) || column.field->kind == FieldKind::path) return;
  for (std::size_t i = 1; i <= std::min<std::size_t>(column.field->most, 9); ++i) {
    const std::string number = std::to_string(i), key = column.key + "[" + number + "]";
    add(plain_name(name) + " " + number, key);
    add(plain_name(name) + number, key);
  }
}

HeadingReader::HeadingReader(ListKind kind) : kind_(kind) {
  const auto each_field = [&](const auto& visit) {
    for (const ListColumn& column : list_columns(kind))
      if (column.field) visit(column);
  };
  if (kind == ListKind::seams) add(std::string(weldment_key), std::string(weldment_key));
  each_field([&](const ListColumn& column) { add_column(column, column.key); });
  each_field([&](const ListColumn& column) {
    const std::string group = column.object ? std::string(column.object->key) + " " : std::string();
    add_column(column, group + std::string(without_unit(column.field->key)));
  });
  for (const std::string& code : language_codes()) {
    const Language& language = *find_language(code);
    if (kind == ListKind::seams) add(plain_name(language.word("Weldment")), std::string(weldment_key));
    each_field([&](const ListColumn& column) {
      const std::string group =
          column.object ? std::string(language.word(column.object->label)) + " " : std::string();
      add_column(column, group + std::string(language.word(column.field->label)));
    });
  }
  for (const auto& [name, key] : kind == ListKind::seams ? seam_heading_words() : schedule_heading_words()) {
    const auto column = list_column(kind, key);
    if (column && !column->is_part()) add_column(*column, name);
    if (column && column->is_part()) add(std::string(name), std::string(key));
  }
  if (kind != ListKind::seams) return;
  for (std::size_t i = 1; i <= 9; ++i)
    for (const char axis : {'x', 'y', 'z'}) {
      const std::string number = std::to_string(i), key = "path_mm[" + number + "]." + axis;
      add(axis + number, key);
      add(axis + (" " + number), key);
      add("path mm " + number + " " + axis, key);
    }
}

std::optional<ListColumn> HeadingReader::find(std::string_view name) const {
  const auto found = keys_.find(plain_name(name));
  if (found == keys_.end()) return std::nullopt;
  return list_column(kind_, found->second);
}

std::optional<ReadHeading> HeadingReader::recognise(std::string_view heading) const {
  heading = trimmed(heading);
  if (heading.empty()) return std::nullopt;
  if (auto column = list_column(kind_, heading)) return ReadHeading{*column, {}, nullptr};
  const auto with_unit = [&](const Parted& parted) -> std::optional<ReadHeading> {
    if (parted.name.empty() || !is_unit(parted.unit)) return std::nullopt;
    std::optional<ListColumn> column = find(parted.name);
    if (!column) column = find(without_in(parted.name));
    if (!column) return std::nullopt;
    const Unit* own = column->field ? find_unit(column->field->unit) : nullptr;
    const bool has_unit = own && *column->field->unit != '\0';
    return ReadHeading{*column, std::string(parted.unit),
                       has_unit ? unit_as_written(parted.unit, own->dimension) : nullptr};
  };
  const Parted bracket = parted_at_bracket(heading);
  if (auto found = with_unit(bracket)) return found;
  if (auto found = with_unit(parted_at(heading, ","))) return found;
  if (auto column = find(heading)) return ReadHeading{*column, {}, nullptr};
  if (auto found = with_unit(parted_at(heading, " _"))) return found;
  // "Position (ISO 6947)": what is in brackets is a remark.
  if (!bracket.name.empty() && !is_unit(bracket.unit))
    if (auto column = find(bracket.name)) return ReadHeading{*column, {}, nullptr};
  return std::nullopt;
}

}  // namespace seamtakt
