#include "exchange/lists/list_import.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <type_traits>
#include <unordered_map>

#include "base/error.hpp"
#include "exchange/lists/list_item.hpp"
#include "exchange/lists/list_kinds.hpp"
#include "plan/fields/field_access.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

using State = ImportedRow::State;

template <class Item>
class ListImporter {
 public:
  ListImporter(const Plan& plan, const Book& book, const ListMapping& mapping,
               const ListImportOptions& options)
      : plan_(plan),
        book_(book),
        sheet_(book.sheets[mapping.sheet]),
        mapping_(mapping),
        options_(options),
        writer_(book, mapping, options.kind) {}

  ListImport import() {
    index_items();
    for (const std::size_t row : mapping_.rows) read_row(sheet_.rows[row]);
    if (read_.empty())
      throw InputError(cell_place(book_, sheet_, mapping_.head_row, 0), "heads without a row below them"_word,
                       "rows of the list"_word);
    while (build()) {
    }
    ListImport result;
    for (Read& read : read_) result.rows.push_back(std::move(read.row));
    result.plan = std::move(built_);
    result.new_weldments.assign(made_.begin(), made_.end());
    return result;
  }

 private:
  struct Read {
    ImportedRow row;
    const BookRow* source = nullptr;
    std::optional<Item> item;  ///< as the row makes it
    /// It refers to a refused row's item. Where refused rows aren't left out, that isn't its own fault.
    bool is_held_back = false;
  };
  struct Known {
    const Item* item = nullptr;
    std::size_t index = 0;  ///< in its list
  };

  static std::string place_of(const std::string& weldment, const std::string& id) {
    return weldment + "/" + id;
  }

  void index_items() {
    const auto add = [&](const std::string& weldment, const std::vector<Item>& items) {
      for (std::size_t i = 0; i < items.size(); ++i)
        known_.emplace(place_of(weldment, items[i].id), Known{&items[i], i});
    };
    if constexpr (std::is_same_v<Item, Seam>) {
      for (const Weldment& weldment : plan_.weldments) add(weldment.id, weldment.seams);
    } else {
      add({}, plan_.schedules);
    }
  }

  void refuse(Read& read, const MappedColumn* column, Phrase found, Phrase expected) const {
    read.row.refused.push_back(
        writer_.refusal(*read.source, column, InputError("", std::move(found), std::move(expected))));
    read.row.state = State::refused;
  }

  std::string text_at(const BookRow& row, const MappedColumn* column) const {
    if (!column) return {};
    const BookCell& cell = row.at(column->column);
    return cell.kind == BookCell::Kind::error ? std::string() : shown_cell(cell);
  }

  /// The weldment of a row; empty where there is none of that name, which is refused.
  void find_weldment(Read& read) const {
    if constexpr (!std::is_same_v<Item, Seam>) return;
    const MappedColumn* column = mapping_.column_of(weldment_key);
    std::string name = text_at(*read.source, column);
    if (name.empty()) name = options_.weldment;
    if (name.empty() && plan_.weldments.size() == 1) name = plan_.weldments.front().id;
    if (name.empty()) {
      if (column) return refuse(read, column, "nothing"_word, "the id of a weldment"_word);
      throw InputError(
          "--weldment",
          plan_.weldments.empty() ? "a plan without a weldment"_word : "a plan with several weldments"_word,
          "the weldment of the seams"_word);
    }
    const bool is_new_plan = std::all_of(plan_.weldments.begin(), plan_.weldments.end(),
                                         [](const Weldment& weldment) { return weldment.seams.empty(); });
    const bool may_be_made = is_new_plan || name == options_.weldment;
    if (!may_be_made && !find_by_id(plan_.weldments, name)) {
      std::vector<std::string_view> ids;
      for (const Weldment& weldment : plan_.weldments) ids.push_back(weldment.id);
      return refuse(read, column, quoted(name),
                    with_nearest(Sentence("the id of a weldment"_word), name, ids));
    }
    read.row.weldment = std::move(name);
  }

  void find_id(Read& read) {
    const MappedColumn* column = mapping_.column_of("id");
    read.row.id = text_at(*read.source, column);
    if (read.row.id.empty())
      return refuse(read, column, found_in(read.source->at(column ? column->column : 0)), "an id"_word);
    const auto [first, is_new] =
        first_rows_.emplace(place_of(read.row.weldment, read.row.id), read.source->number);
    if (!is_new)
      refuse(read, column,
             Sentence("list.id-twice"_key, {{"id", quoted(read.row.id)}, {"row", first->second}}),
             "each id once"_word);
  }

  void read_row(const BookRow& row) {
    Read read;
    read.row.row = row.number;
    read.source = &row;
    find_weldment(read);
    if (read.row.refused.empty()) find_id(read);
    Item item;
    const auto known = known_.find(place_of(read.row.weldment, read.row.id));
    const Item* before = known == known_.end() ? nullptr : known->second.item;
    if (before)
      item = *before;
    else
      begin_item(item, read);
    writer_.write(row, item, read.row.refused);
    if (before)
      compare(*before, item, read);
    else if (!read.row.id.empty())
      check_presence_in(item, read);
    if (!read.row.refused.empty())
      read.row.state = State::refused;
    else
      read.row.state = !before ? State::added : read.row.changes.empty() ? State::unchanged : State::changed;
    read.item = std::move(item);
    read_.push_back(std::move(read));
  }

  /// A new item has the defaults that were given; what the row says then replaces them.
  void begin_item(Item& item, const Read& read) const {
    item.id = read.row.id;
    for (const auto& [key, text] : options_.standards) {
      const auto column = list_column(options_.kind, key);
      if (!column || !column->field || column->is_part() || column->object || column->is_id())
        throw InputError(key, "no column that may have a default"_word, "the key of a whole value"_word);
      BookCell cell;
      cell.kind = BookCell::Kind::text;
      cell.text = text;
      try {
        set_json(item, *column->field, cell_json(cell, *column, {}));
      } catch (const InputError& error) {
        throw InputError(key, error.found(), error.expected());
      }
    }
  }

  void compare(const Item& before, const Item& after, Read& read) const {
    for (const ListColumn& column : list_columns(options_.kind)) {
      if (!column.field || column_json(before, column) == column_json(after, column)) continue;
      read.row.changes.push_back({column.key, column_text(before, column), column_text(after, column)});
    }
    if (!read.row.changes.empty() && is_locked(before))
      refuse(read, mapping_.column_of("id"), Sentence("list.locked"_key, {{"id", quoted(before.id)}}),
             "a draft, or a new id"_word);
  }

  /// Names each required key that a new item lacks, and groups of which none is given.
  void check_presence_in(const Item& item, Read& read) const {
    const FieldTable& table = table_of(options_.kind);
    KeySet present;
    for (std::size_t i = 0; i < table.fields.size(); ++i) {
      const FieldInfo& field = table.fields[i];
      const bool is_set = field.access->is_written(&item, field, false) && !is_unset(item, field);
      present.set(i, is_set || says_none(read, field.key));
      const bool was_refused = is_refused(read, field.key);
      if (field.required && !is_set && !was_refused && &field != table.id_field &&
          !says_none(read, field.key))
        refuse(read, column_for(field.key), Sentence("list.lacks"_key, {{"key", quoted(field.key)}}),
               field.expectation());
    }
    if (!read.row.refused.empty()) return;
    FieldPath place("");
    try {
      check_presence(table, present, place);
    } catch (const InputError& error) {
      read.row.refused.push_back(writer_.refusal(*read.source, nullptr, error));
    }
  }

  /// A dash in a seam's list of schedules says that there are none.
  bool says_none(const Read& read, std::string_view key) const {
    const MappedColumn* column = column_for(key);
    return column && asks_to_clear(read.source->at(column->column));
  }

  /// A required field as an item has it in which nothing was set.
  static bool is_unset(const Item& item, const FieldInfo& field) {
    if (!field.required) return false;
    std::string json, standard;
    field.access->write(&item, field, json);
    field.access->write(field.standard, field, standard);
    return json == standard;
  }

  /// The column of a field, or of a part of it.
  const MappedColumn* column_for(std::string_view key) const {
    for (const MappedColumn& column : mapping_.columns) {
      const auto known = column.key.empty() ? std::nullopt : list_column(options_.kind, column.key);
      if (known && known->top_key() == key) return &column;
    }
    return nullptr;
  }

  bool is_refused(const Read& read, std::string_view key) const {
    const MappedColumn* column = column_for(key);
    if (!column) return false;
    return std::any_of(read.row.refused.begin(), read.row.refused.end(),
                       [&](const RefusedCell& cell) { return cell.heading == column->heading; });
  }

  void make_weldment(const std::string& id) {
    if (find_by_id(built_.weldments, id)) return;
    made_.insert(id);
    built_.weldments.emplace_back().id = id;
  }

  /// Rows that refer to items of refused rows, and rows that refer to those.
  void hold_back_dependents() {
    std::unordered_map<std::string, std::vector<Read*>> dependents;
    std::vector<const Read*> gone;
    std::set<std::string> taken;
    for (Read& read : read_) {
      if (read.item)
        for (const std::string& id : referred(*read.item))
          dependents[place_of(read.row.weldment, id)].push_back(&read);
      if (read.row.state == State::refused)
        gone.push_back(&read);
      else if (!read.is_held_back)
        taken.insert(place_of(read.row.weldment, read.row.id));
    }
    while (!gone.empty()) {
      const Read* lost = gone.back();
      gone.pop_back();
      const std::string place = place_of(lost->row.weldment, lost->row.id);
      // The plan's own is still there, or that of another row with the same id.
      if (known_.contains(place) || lost->row.id.empty()) continue;
      if (lost->row.state == State::refused && taken.contains(place)) continue;
      for (Read* read : dependents[place]) {
        if (read->row.state == State::refused || read->is_held_back) continue;
        read->is_held_back = true;
        gone.push_back(read);
        if (!options_.skip_refused) continue;
        const InputError error("", Sentence("list.refers-to-refused"_key, {{"id", quoted(lost->row.id)}}),
                               "a seam that is taken"_word);
        add_refusal(*read, error, "after");
      }
    }
  }

  /// Makes the plan with the rows that aren't refused yet, and checks them in it; true where that refused
  /// another one, so that it has to be made again.
  bool build() {
    hold_back_dependents();
    built_ = plan_;
    made_.clear();
    std::vector<std::pair<Read*, std::size_t>> taken;
    for (Read& read : read_) {
      if (read.row.state == State::refused || read.is_held_back) continue;
      if constexpr (std::is_same_v<Item, Seam>) make_weldment(read.row.weldment);
      auto& items = items_of(built_, read.row.weldment, static_cast<const Item*>(nullptr));
      const auto known = known_.find(place_of(read.row.weldment, read.row.id));
      std::size_t index = items.size();
      if (known == known_.end()) {
        items.push_back(*read.item);
      } else {
        index = known->second.index;
        if (read.row.state == State::changed) items[index] = *read.item;
      }
      taken.emplace_back(&read, index);
    }
    return refuse_by_checks(taken) || refuse_by_whole_plan(taken);
  }

  /// References of each row's item, and what it shows by itself.
  bool refuse_by_checks(const std::vector<std::pair<Read*, std::size_t>>& taken) {
    ReferenceCheck check(built_, book_.file);
    const Weldment* entered = nullptr;
    bool any = false;
    for (const auto& [read, index] : taken) {
      if (read->row.state == State::unchanged) continue;
      if constexpr (std::is_same_v<Item, Seam>) {
        const Weldment* weldment = find_by_id(built_.weldments, read->row.weldment);
        if (weldment != entered) check.enter(*weldment);
        entered = weldment;
      }
      const Item& item = items_of(built_, read->row.weldment, static_cast<const Item*>(nullptr))[index];
      try {
        check_object(item, check);
        check_alone(item, check);
      } catch (const InputError& error) {
        add_refusal(*read, error, first_key(error.pointer()));
        any = true;
      }
    }
    return any;
  }

  /// What only the plan as a whole shows, such as seams that come after one another in a circle.
  bool refuse_by_whole_plan(const std::vector<std::pair<Read*, std::size_t>>& taken) {
    try {
      check_plan(built_, book_.file);
      return false;
    } catch (const InputError& error) {
      for (const auto& [read, index] : taken) {
        const std::string pointer = pointer_of(*read, index);
        if (read->row.state == State::unchanged || !error.pointer().starts_with(pointer + "/")) continue;
        add_refusal(*read, error, first_key(error.pointer().substr(pointer.size())));
        return true;
      }
      throw;
    }
  }

  std::string pointer_of(const Read& read, std::size_t index) const {
    if constexpr (!std::is_same_v<Item, Seam>) {
      return "/schedules/" + std::to_string(index);
    } else {
      const auto weldment = find_by_id(built_.weldments, read.row.weldment) - built_.weldments.data();
      return "/weldments/" + std::to_string(weldment) + "/seams/" + std::to_string(index);
    }
  }

  void add_refusal(Read& read, const InputError& error, const std::string& key) const {
    read.row.refused.push_back(writer_.refusal(*read.source, column_for(key), error));
    read.row.state = State::refused;
    read.row.changes.clear();
  }

  const Plan& plan_;
  const Book& book_;
  const BookSheet& sheet_;
  const ListMapping& mapping_;
  const ListImportOptions& options_;
  ItemWriter writer_;
  std::unordered_map<std::string, Known> known_;             ///< by weldment/id
  std::unordered_map<std::string, std::size_t> first_rows_;  ///< where an id came first
  std::vector<Read> read_;
  Plan built_;
  std::set<std::string> made_;
};

}  // namespace

std::size_t ListImport::count(ImportedRow::State state) const {
  return static_cast<std::size_t>(std::count_if(
      rows.begin(), rows.end(), [state](const ImportedRow& row) { return row.state == state; }));
}

std::vector<RefusedCell> ListImport::refused() const {
  std::vector<RefusedCell> cells;
  for (const ImportedRow& row : rows) cells.insert(cells.end(), row.refused.begin(), row.refused.end());
  return cells;
}

ListImport import_list(const Plan& plan, const Book& book, const ListMapping& mapping,
                       const ListImportOptions& options) {
  if (options.kind == ListKind::seams) return ListImporter<Seam>(plan, book, mapping, options).import();
  return ListImporter<Schedule>(plan, book, mapping, options).import();
}

}  // namespace seamtakt
