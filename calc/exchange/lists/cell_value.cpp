#include "exchange/lists/cell_value.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/sentences/language.hpp"
#include "base/text/ascii.hpp"
#include "exchange/lists/heading_reader.hpp"
#include "exchange/lists/heading_words.hpp"

namespace seamtakt {

namespace {

/// Blanks that don't break or are narrow become blanks, the minus sign a hyphen.
std::string plain_text(std::string_view text) {
  constexpr std::pair<std::string_view, char> signs[] = {
      {"\xC2\xA0", ' '}, {"\xE2\x80\xAF", ' '}, {"\xE2\x80\x89", ' '}, {"\xE2\x88\x92", '-'}};
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char sign = text[i];
    for (const auto& [bytes, instead] : signs)
      if (text.substr(i).starts_with(bytes)) {
        sign = instead;
        i += bytes.size() - 1;
        break;
      }
    plain += sign;
  }
  return std::string(trimmed(plain));
}

/// "1,250" may be 1.25 or 1250.
bool may_be_thousands(std::string_view number) {
  if (!number.empty() && (number[0] == '-' || number[0] == '+')) number.remove_prefix(1);
  const std::size_t comma = number.find(',');
  return comma >= 1 && comma <= 3 && number.size() == comma + 4 && number[0] != '0';
}

/// Reads the values of one cell.
class CellReader {
 public:
  CellReader(const BookCell& cell, const ListColumn& column, const NumberReading& reading)
      : cell_(cell), column_(column), field_(*column.field), reading_(reading) {}

  std::string json() const {
    if (cell_.kind == BookCell::Kind::error) refuse();
    if (column_.is_part()) return part_json();
    switch (field_.kind) {
      case FieldKind::number:
      case FieldKind::integer:
      case FieldKind::choice_or_number:
        return number_json();
      case FieldKind::boolean:
        return truth_json();
      case FieldKind::interval:
        return interval_json();
      case FieldKind::number_list:
        return number_list_json();
      case FieldKind::text_list:
      case FieldKind::reference_list:
        return text_list_json();
      case FieldKind::point:
        return point_json(text());
      case FieldKind::path:
      case FieldKind::number_pairs:
        return points_json();
      case FieldKind::choice:
        return json_string(choice());
      case FieldKind::date:
        return json_string(date());
      default:
        return json_string(text());
    }
  }

 private:
  [[noreturn]] void refuse() const { refuse(found_in(cell_)); }
  [[noreturn]] void refuse(Sentence found) const {
    const bool is_element = column_.is_part();
    throw InputError("", std::move(found), is_element ? field_.element_expectation() : field_.expectation());
  }
  [[noreturn]] void refuse_piece(std::string_view piece) const {
    refuse(Sentence::verbatim('"' + printable(piece) + '"'));
  }

  std::string text() const { return plain_text(shown_cell(cell_)); }

  static std::string json_of(double value) {
    std::string json;
    append_json_value(json, value);
    return json;
  }

  double in_own_unit(double value, const Unit* unit) const {
    const Unit* own = *field_.unit == '\0' ? nullptr : find_unit(field_.unit);
    return own && unit && unit != own && unit->dimension == own->dimension ? convert(value, *unit, *own)
                                                                           : value;
  }

  /// The number alone, by the decimal signs that may be there.
  bool parse(std::string_view number, double& value) const {
    const bool has_comma = number.find(',') != std::string_view::npos;
    if (has_comma && reading_.decimal == DecimalSign::point) return false;
    if (has_comma && reading_.decimal == DecimalSign::either && may_be_thousands(number))
      throw InputError("", Sentence::verbatim('"' + printable(number) + '"'),
                       "a number whose comma can't be a sign for thousands"_word);
    return parse_number(number, value, has_comma);
  }

  /// A number in a text, with its unit or in the column's.
  double number_of(std::string_view piece) const {
    const std::string_view whole = trimmed(piece);
    const std::size_t end = whole.find_first_not_of("0123456789.,+-eE ");
    const std::string_view number = trimmed(whole.substr(0, end));
    double value = 0;
    if (end == std::string_view::npos || *field_.unit == '\0') {
      if (!parse(whole, value)) refuse_piece(piece);
      return in_own_unit(value, reading_.unit);
    }
    const Unit* own = find_unit(field_.unit);
    const Unit* unit = own ? unit_as_written(whole.substr(end), own->dimension) : nullptr;
    if (!unit || !parse(number, value)) refuse_piece(piece);
    return in_own_unit(value, unit);
  }

  double number() const {
    if (cell_.kind == BookCell::Kind::number) return in_own_unit(cell_.number, reading_.unit);
    if (cell_.kind != BookCell::Kind::text) refuse();
    return number_of(text());
  }

  std::string number_json() const {
    if (field_.kind == FieldKind::choice_or_number && cell_.kind == BookCell::Kind::text) {
      const std::string word = choice();
      if (std::ranges::find(field_.choices, word) != field_.choices.end()) return json_string(word);
    }
    return json_of(number());
  }

  std::string truth_json() const {
    if (cell_.kind == BookCell::Kind::boolean) return cell_.number != 0 ? "true" : "false";
    const std::string word = lower_case(text());
    for (const char* yes : {"true", "yes", "y", "ja", "j", "x", "1", "wahr"})
      if (word == yes) return "true";
    for (const char* no : {"false", "no", "n", "nein", "0", "falsch"})
      if (word == no) return "false";
    refuse();
  }

  /// A choice by its own word, or by what a language of the program or the trade calls it.
  std::string choice() const {
    const std::string given = text(), name = plain_name(given);
    if (std::ranges::find(field_.choices, given) != field_.choices.end()) return given;
    const auto is_choice = [&](std::string_view key) {
      return std::ranges::find(field_.choices, key) != field_.choices.end();
    };
    for (const std::string_view each : field_.choices)
      if (plain_name(each) == name) return std::string(each);
    for (const std::string& code : language_codes())
      for (const std::string_view each : field_.choices)
        if (plain_name(find_language(code)->word(each)) == name) return std::string(each);
    for (const auto& [word, key] : choice_words())
      if (word == name && is_choice(key)) return std::string(key);
    return given;
  }

  /// "02.03.2026" is no doubt a day; "03/02/2026" isn't clear and stays as it is.
  std::string date() const {
    const std::string given = text();
    const auto digits = [&](std::size_t begin, std::size_t end) {
      return std::all_of(given.begin() + static_cast<std::ptrdiff_t>(begin),
                         given.begin() + static_cast<std::ptrdiff_t>(end),
                         [](char c) { return c >= '0' && c <= '9'; });
    };
    if (given.size() == 10 && given[2] == '.' && given[5] == '.' && digits(0, 2) && digits(3, 5) &&
        digits(6, 10))
      return given.substr(6) + "-" + given.substr(3, 2) + "-" + given.substr(0, 2);
    return given;
  }

  std::string bound_json(std::string_view bound) const {
    return trimmed(bound).empty() ? "null" : json_of(number_of(bound));
  }

  std::string interval_json() const {
    const std::string given = text();
    const auto of = [&](std::string_view low, std::string_view high) {
      return "[" + bound_json(low) + ", " + bound_json(high) + "]";
    };
    const std::string_view all = given;
    for (const std::string_view least : {">=", "\xE2\x89\xA5", "from ", "ab "})
      if (lower_case(all).starts_with(least) && all.find(" to ") == std::string_view::npos)
        return of(all.substr(least.size()), {});
    for (const std::string_view most : {"<=", "\xE2\x89\xA4", "up to ", "bis "})
      if (lower_case(all).starts_with(most)) return of({}, all.substr(most.size()));
    for (const std::string_view between : {"..", " to ", " bis ", "\xE2\x80\x93", " - ", ";"})
      if (const std::size_t at = all.find(between); at != std::string_view::npos)
        return of(all.substr(0, at), all.substr(at + between.size()));
    // "253-309": a hyphen after a digit isn't a sign.
    for (std::size_t at = all.find('-', 1); at != std::string_view::npos; at = all.find('-', at + 1))
      if (all[at - 1] >= '0' && all[at - 1] <= '9') return of(all.substr(0, at), all.substr(at + 1));
    refuse();
  }

  static std::string array_of(const std::vector<std::string>& items) {
    std::string json = "[";
    for (const std::string& item : items) json += (json.size() > 1 ? ", " : "") + item;
    return json + "]";
  }

  /// One element stands for both of a list of two.
  std::string list_json(std::vector<std::string> items) const {
    if (items.size() == 1 && field_.least == 2 && field_.most == 2) items.push_back(items.front());
    return array_of(items);
  }

  std::string number_list_json() const {
    if (cell_.kind == BookCell::Kind::number) return list_json({json_of(number())});
    if (cell_.kind != BookCell::Kind::text) refuse();
    const std::string given = text();
    const bool has_separator = given.find_first_of(";\n") != std::string::npos;
    std::vector<std::string> pieces;
    if (has_separator) {
      pieces = list_items(given, ";\n");
    } else if (given.find('/') != std::string::npos) {
      pieces = list_items(given, "/");
    } else if (given.find(", ") != std::string::npos || reading_.decimal == DecimalSign::point) {
      // A comma with a blank after it parts elements, one without is a decimal sign.
      std::string parted = given;
      for (std::size_t at = parted.find(','); at != std::string::npos; at = parted.find(',', at + 1))
        if (reading_.decimal == DecimalSign::point || parted.substr(at + 1, 1) == " ") parted[at] = ';';
      pieces = list_items(parted, ";");
    } else if (given.find(',') != std::string::npos && reading_.decimal != DecimalSign::comma) {
      throw InputError("", Sentence::verbatim('"' + printable(given) + '"'),
                       "elements separated by a semicolon, such as 8; 12"_word);
    } else {
      pieces = {given};
    }
    std::vector<std::string> items;
    for (const std::string& piece : pieces) items.push_back(json_of(number_of(piece)));
    return list_json(std::move(items));
  }

  std::string text_list_json() const {
    const std::string given = text();
    const bool has_separator = given.find_first_of(";\n") != std::string::npos;
    std::vector<std::string> items;
    for (const std::string& item : list_items(given, has_separator ? ";\n" : ","))
      items.push_back(json_string(item));
    return list_json(std::move(items));
  }

  /// Coordinates are separated by blanks; commas after them and brackets around them are left out.
  std::string point_json(std::string_view given) const {
    std::vector<std::string> items;
    std::string piece;
    const auto take = [&] {
      if (piece.ends_with(',')) piece.pop_back();
      if (!piece.empty()) items.push_back(json_of(number_of(piece)));
      piece.clear();
    };
    for (const char c : given) {
      if (c == '(' || c == ')' || c == '[' || c == ']') continue;
      if (c == ' ' || c == '\t')
        take();
      else
        piece += c;
    }
    take();
    return array_of(items);
  }

  std::string points_json() const {
    std::vector<std::string> points;
    for (const std::string& point : list_items(text(), ";\n")) points.push_back(point_json(point));
    return array_of(points);
  }

  std::string part_json() const {
    if (field_.kind == FieldKind::number_list || field_.kind == FieldKind::path) return json_of(number());
    return json_string(text());
  }

  const BookCell& cell_;
  const ListColumn& column_;
  const FieldInfo& field_;
  const NumberReading& reading_;
};

}  // namespace

std::string shown_cell(const BookCell& cell) {
  switch (cell.kind) {
    case BookCell::Kind::number:
      return number_text(cell.number);
    case BookCell::Kind::boolean:
      return cell.number != 0 ? "true" : "false";
    default:
      return cell.text;
  }
}

Sentence found_in(const BookCell& cell) {
  const std::string shown = printable(shown_cell(cell), 60);
  switch (cell.kind) {
    case BookCell::Kind::empty:
      return Sentence("nothing"_word);
    case BookCell::Kind::error:
      return Sentence("list.found.error"_key, {{"error", shown}});
    case BookCell::Kind::date:
      return Sentence("list.found.date"_key, {{"date", shown}});
    case BookCell::Kind::text:
      return Sentence::verbatim('"' + shown + '"');
    default:
      return Sentence::verbatim(shown);
  }
}

bool asks_to_clear(const BookCell& cell) {
  if (cell.kind != BookCell::Kind::text) return false;
  const std::string text = plain_text(cell.text);
  return text == "-" || text == "\xE2\x80\x93" || text == "\xE2\x80\x94";
}

std::vector<std::string> list_items(std::string_view text, std::string_view separators) {
  std::vector<std::string> items;
  std::string item;
  bool is_quoted = false, was_quoted = false;
  const auto take = [&] {
    std::string whole = was_quoted ? item : std::string(trimmed(item));
    if (was_quoted || !whole.empty()) items.push_back(std::move(whole));
    item.clear();
    was_quoted = false;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"' && (is_quoted || trimmed(item).empty())) {
      if (is_quoted && i + 1 < text.size() && text[i + 1] == '"') {
        item += text[++i];
        continue;
      }
      if (!is_quoted) item.clear();
      is_quoted = !is_quoted;
      was_quoted = true;
    } else if (!is_quoted && separators.find(c) != std::string_view::npos) {
      take();
    } else if (!(was_quoted && !is_quoted && (c == ' ' || c == '\t'))) {
      item += c;
    }
  }
  take();
  return items;
}

std::string joined_items(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) {
    std::string shown = item;
    if (item.empty() || item.find_first_of(";,\"\n") != std::string::npos || trimmed(item) != item) {
      shown = "\"";
      for (const char c : item) shown += c == '"' ? std::string("\"\"") : std::string(1, c);
      shown += '"';
    }
    text += (text.empty() ? "" : "; ") + shown;
  }
  return text;
}

std::string cell_json(const BookCell& cell, const ListColumn& column, const NumberReading& reading) {
  return CellReader(cell, column, reading).json();
}

}  // namespace seamtakt
