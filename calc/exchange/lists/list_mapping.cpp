#include "exchange/lists/list_mapping.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/text/comma_list.hpp"
#include "exchange/lists/heading_reader.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t most_head_rows_tried = 5000;

/// A head that may be the list's.
struct Head {
  std::size_t row = 0, rows = 1;      ///< index of its last row; how many it has
  std::vector<std::string> headings;  ///< of each column of the sheet
  std::map<std::size_t, ReadHeading> known;
  std::size_t begin = 0, end = 0;  ///< its columns
  std::size_t score = 0;
};

std::string heading_of(const BookCell& cell) {
  std::string text = cell.kind == BookCell::Kind::error ? std::string() : shown_cell(cell);
  std::replace(text.begin(), text.end(), '\n', ' ');
  return std::string(trimmed(text));
}

/// Heads are compared as words; signs alone ("#") as they are.
bool same_heading(const std::string& a, const std::string& b) {
  if (a.empty() || b.empty()) return false;
  const std::string name = plain_name(a);
  return a == b || (!name.empty() && name == plain_name(b));
}

class ListFinder {
 public:
  ListFinder(const Book& book, ListKind kind, const ListColumnsFile& columns)
      : book_(book), kind_(kind), columns_(columns), reader_(kind) {}

  ListMapping find() {
    std::optional<Head> best;
    std::size_t best_sheet = 0;
    check_sheet_name();
    for (std::size_t i = 0; i < book_.sheets.size(); ++i) {
      if (!columns_.sheet.empty() && book_.sheets[i].name != columns_.sheet) continue;
      std::optional<Head> head = best_head(book_.sheets[i]);
      // Of equals one that is shown goes before a hidden one.
      const bool wins =
          head &&
          (!best || head->score > best->score ||
           (head->score == best->score && book_.sheets[best_sheet].is_hidden && !book_.sheets[i].is_hidden));
      if (!wins) continue;
      best = std::move(head);
      best_sheet = i;
    }
    if (!best) refuse_no_list();
    return mapping_of(best_sheet, *best);
  }

 private:
  void check_sheet_name() const {
    if (columns_.sheet.empty()) return;
    std::vector<std::string> names;
    for (const BookSheet& sheet : book_.sheets) {
      if (sheet.name == columns_.sheet) return;
      names.push_back(printable(sheet.name, 40));
    }
    throw InputError(printable(columns_.file),
                     Sentence("list.sheet"_key, {{"sheet", printable(columns_.sheet)}}),
                     Sentence("cli.one-of"_key, {{"choices", comma_list(names)}}));
  }

  [[noreturn]] void refuse_no_list() const {
    throw InputError(
        printable(book_.file),
        columns_.head_row > 0 ? "a row without known heads"_word : "no table with known heads"_word,
        kind_ == ListKind::seams
            ? "a row of heads with id and others, such as joint, thickness, leg, schedules, path"_word
            : "a row of heads with id and others, such as process, wire, wire feed speed"_word);
  }

  /// What a head is read as: by the columns file, else by its words.
  std::optional<ReadHeading> read_as(const std::string& heading, std::size_t column) const {
    for (const auto& entry : columns_.entries) {
      if (entry.number > 0 ? entry.number != column + 1 : !same_heading(entry.heading, heading)) continue;
      ReadHeading read{*list_column(kind_, entry.key), {}, entry.unit};
      if (read.unit || !read.column.field || *read.column.field->unit == '\0') return read;
      if (const auto own = reader_.recognise(heading); own && own->unit) {
        const Unit* wanted = find_unit(read.column.field->unit);
        if (wanted && wanted->dimension == own->unit->dimension) read.unit = own->unit;
      }
      return read;
    }
    for (const std::string& ignored : columns_.ignored)
      if (same_heading(ignored, heading)) return std::nullopt;
    return reader_.recognise(heading);
  }

  /// The head in this row and, for `rows` 2, the one above it.
  Head head_at(const BookSheet& sheet, std::size_t row, std::size_t rows) const {
    Head head;
    head.row = row;
    head.rows = rows;
    const BookRow& lower = sheet.rows[row];
    const BookRow* upper = rows > 1 ? &sheet.rows[row - 1] : nullptr;
    const std::size_t width = std::max(lower.cells.size(), upper ? upper->cells.size() : 0);
    head.headings.resize(width);
    for (std::size_t i = 0; i < width; ++i) {
      const std::string below = heading_of(lower.at(i)),
                        above = upper ? heading_of(upper->at(i)) : std::string();
      std::vector<std::string> candidates;
      if (!above.empty() && !below.empty() && above != below) candidates.push_back(above + " " + below);
      if (!below.empty()) candidates.push_back(below);
      if (below.empty() && !above.empty() && !upper->at(i).from_left) candidates.push_back(above);
      if (candidates.empty()) candidates.emplace_back();  // a column may be known by its number
      head.headings[i] = candidates.front();
      for (const std::string& candidate : candidates)
        if (const auto known = read_as(candidate, i)) {
          head.known.emplace(i, *known);
          head.headings[i] = candidate;
          break;
        }
    }
    return head;
  }

  /// Whether a column without a head has no values either: it parts tables that are side by side.
  static bool is_gap(const BookSheet& sheet, const Head& head, std::size_t column) {
    if (!head.headings[column].empty()) return false;
    constexpr std::size_t looked_at = 200;
    const std::size_t end = std::min(sheet.rows.size(), head.row + looked_at);
    for (std::size_t row = head.row + 1; row < end; ++row)
      if (!sheet.rows[row].at(column).is_empty()) return false;
    return true;
  }

  /// Leaves the part of the head, between gaps, that knows most columns, each of them once.
  void choose_block(const BookSheet& sheet, Head& head) const {
    std::size_t begin = 0;
    Head best = head;
    best.score = 0;
    for (std::size_t i = 0; i <= head.headings.size(); ++i) {
      if (i < head.headings.size() && !is_gap(sheet, head, i)) continue;
      std::set<std::string> keys;
      for (std::size_t k = begin; k < i; ++k)
        if (const auto known = head.known.find(k); known != head.known.end())
          keys.insert(known->second.column.key);
      const std::size_t score = keys.contains("id") && keys.size() > 1 ? keys.size() : 0;
      if (score > best.score) {
        best.score = score;
        best.begin = begin;
        best.end = i;
      }
      begin = i + 1;
    }
    head = std::move(best);
  }

  std::optional<Head> best_head(const BookSheet& sheet) const {
    std::optional<Head> best;
    const std::size_t count = std::min(sheet.rows.size(), most_head_rows_tried);
    std::size_t known_above = 0;
    for (std::size_t row = 0; row < count; ++row) {
      if (columns_.head_row > 0 && sheet.rows[row].number + 1 < columns_.head_row) continue;
      if (columns_.head_row > 0 && sheet.rows[row].number > columns_.head_row) break;
      const bool is_wanted = columns_.head_row == 0 || sheet.rows[row].number == columns_.head_row;
      const bool has_upper = row > 0 && sheet.rows[row - 1].number + 1 == sheet.rows[row].number;
      const std::size_t above = known_above;
      for (std::size_t rows = 1; rows <= (has_upper ? 2u : 1u); ++rows) {
        if (rows == 2 && known_above + above < 2) continue;  // most rows are values
        Head head = head_at(sheet, row, rows);
        if (rows == 1) known_above = head.known.size();
        if (head.known.size() < 2 || !is_wanted) continue;
        choose_block(sheet, head);
        if (head.score > (best ? best->score : 0)) best = std::move(head);
      }
    }
    return best;
  }

  bool is_empty_in(const BookRow& row, const Head& head) const {
    for (std::size_t i = head.begin; i < head.end; ++i)
      if (!row.at(i).is_empty() && !row.at(i).from_left) return false;
    return true;
  }

  enum class RowIs { data, repeated_head, other_head };

  RowIs kind_of_row(const BookRow& row, const Head& head, bool after_gap) const {
    std::size_t known = 0, same = 0, words = 0, others = 0;
    for (std::size_t i = head.begin; i < head.end; ++i) {
      const BookCell& cell = row.at(i);
      if (cell.is_empty() || cell.from_left) continue;
      const bool is_word =
          cell.kind == BookCell::Kind::text && cell.text.find_first_of("0123456789") == std::string::npos;
      ++(is_word ? words : others);
      if (cell.kind != BookCell::Kind::text) continue;
      const auto read = read_as(heading_of(cell), i);
      if (!read) continue;
      ++known;
      const auto here = head.known.find(i);
      if (here != head.known.end() && here->second.column.key == read->column.key) ++same;
    }
    if (known >= 2 && 2 * same >= known && 2 * known >= words + others) return RowIs::repeated_head;
    if (known >= 2 && others == 0) return RowIs::other_head;
    return after_gap && words >= 2 && others == 0 ? RowIs::other_head : RowIs::data;
  }

  void take_rows(const BookSheet& sheet, const Head& head, ListMapping& mapping) const {
    std::size_t last_number = sheet.rows[head.row].number;
    for (std::size_t row = head.row + 1; row < sheet.rows.size(); ++row) {
      const BookRow& each = sheet.rows[row];
      if (is_empty_in(each, head)) continue;
      const RowIs kind = kind_of_row(each, head, each.number > last_number + 1);
      if (kind == RowIs::other_head) {
        for (; row < sheet.rows.size(); ++row) mapping.rows_below += !sheet.rows[row].is_empty();
        return;
      }
      last_number = each.number;
      if (kind == RowIs::data) mapping.rows.push_back(row);
    }
  }

  void check_unit(const BookSheet& sheet, const Head& head, std::size_t column,
                  const ReadHeading& read) const {
    const FieldInfo* field = read.column.field;
    if (read.unit || read.unit_text.empty() || !field || *field->unit == '\0') return;
    throw InputError(cell_place(book_, sheet, sheet.rows[head.row].number, column),
                     Sentence("columns.unit"_key, {{"unit", printable(read.unit_text)}}),
                     units_that_fit(find_unit(field->unit)->dimension));
  }

  void check_entries(const ListMapping& mapping) const {
    if (columns_.is_memory) return;
    for (const auto& entry : columns_.entries) {
      if ((entry.heading.empty() && entry.number == 0) || mapping.column_of(entry.key)) continue;
      std::vector<std::string> headings;
      for (const MappedColumn& column : mapping.columns) headings.push_back(printable(column.heading, 40));
      throw InputError(
          printable(columns_.file),
          Sentence("list.no-column"_key, {{"column", entry.heading.empty() ? std::to_string(entry.number)
                                                                           : printable(entry.heading)}}),
          Sentence("cli.one-of"_key, {{"choices", printable(comma_list(headings), 400)}}));
    }
  }

  ListMapping mapping_of(std::size_t sheet_index, const Head& head) const {
    const BookSheet& sheet = book_.sheets[sheet_index];
    ListMapping mapping;
    mapping.sheet = sheet_index;
    mapping.head_row = sheet.rows[head.row].number;
    mapping.head_rows = head.rows;
    mapping.decimal = columns_.states_decimal         ? columns_.decimal
                      : book_.has_decimal_comma       ? DecimalSign::comma
                      : book_.form == Book::Form::csv ? DecimalSign::point
                                                      : DecimalSign::either;
    std::set<std::string, std::less<>> stated, taken;
    for (const auto& entry : columns_.entries)
      if (!entry.heading.empty() || entry.number > 0) stated.insert(entry.key);
    for (std::size_t i = head.begin; i < head.end; ++i) {
      const auto known = head.known.find(i);
      if (head.headings[i].empty() && known == head.known.end()) continue;
      MappedColumn& column = mapping.columns.emplace_back(MappedColumn{i, head.headings[i], {}, nullptr});
      if (known == head.known.end()) continue;
      // A column that the file names goes before others that look the same.
      const bool is_stated = stated.contains(known->second.column.key) &&
                             !is_named_by_entry(known->second.column.key, head.headings[i], i);
      if (is_stated || !taken.insert(known->second.column.key).second) continue;
      check_unit(sheet, head, i, known->second);
      column.key = known->second.column.key;
      column.unit = known->second.unit;
    }
    check_entries(mapping);
    take_rows(sheet, head, mapping);
    return mapping;
  }

  bool is_named_by_entry(std::string_view key, const std::string& heading, std::size_t column) const {
    for (const auto& entry : columns_.entries)
      if (entry.key == key && (entry.number == column + 1 || same_heading(entry.heading, heading)))
        return true;
    return columns_.is_memory;
  }

  const Book& book_;
  ListKind kind_;
  const ListColumnsFile& columns_;
  HeadingReader reader_;
};

/// What a list that the program wrote says of itself.
bool is_origin(const std::string& heading) {
  for (const char* key :
       {"program", "plan_file", "plan_sha256", "catalogue_sha256", "made_at_utc", "caution"})
    if (heading == key) return true;
  return false;
}

}  // namespace

const MappedColumn* ListMapping::column_of(std::string_view key) const {
  for (const MappedColumn& column : columns)
    if (column.key == key) return &column;
  return nullptr;
}

ListMapping find_list(const Book& book, ListKind kind, const ListColumnsFile& columns) {
  return ListFinder(book, kind, columns).find();
}

std::vector<Sentence> mapping_notes(const Book& book, ListKind, const ListMapping& mapping) {
  const BookSheet& sheet = book.sheets[mapping.sheet];
  std::vector<Sentence> notes;
  const auto add = [&](SentenceKey key, std::size_t count) {
    if (count > 0) notes.emplace_back(key, std::vector<Argument>{{"count", count}});
  };
  if (sheet.is_hidden)
    notes.emplace_back("list.note.hidden-sheet"_key, std::vector<Argument>{{"sheet", sheet.name}});
  std::size_t hidden_rows = 0, hidden_columns = 0;
  for (const std::size_t row : mapping.rows) hidden_rows += sheet.rows[row].is_hidden;
  std::vector<std::string> unread;
  for (const MappedColumn& column : mapping.columns) {
    hidden_columns += !column.key.empty() && sheet.is_hidden_column(column.column);
    if (column.key.empty() && !is_origin(column.heading)) unread.push_back(printable(column.heading, 40));
  }
  add("list.note.hidden-rows"_key, hidden_rows);
  add("list.note.hidden-columns"_key, hidden_columns);
  add("list.note.merged"_key, sheet.merged);
  add("list.note.formulas"_key, sheet.formulas);
  if (!unread.empty())
    notes.emplace_back("list.note.unread"_key,
                       std::vector<Argument>{{"columns", printable(comma_list(unread), 400)}});
  add("list.note.rows-below"_key, mapping.rows_below);
  return notes;
}

}  // namespace seamtakt
