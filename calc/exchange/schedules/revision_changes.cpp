#include "exchange/schedules/revision_changes.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "base/csv/csv.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/approval.hpp"
#include "plan/fields/field.hpp"

namespace seamtakt {

namespace {

/// Of the document, not of how it is welded.
constexpr std::array<std::string_view, 7> of_the_document = {
    "id", "revision", "revision_of", "status", "approved_by", "approved_sha256", "effective_from"};

bool is_of_the_document(std::string_view key) {
  return std::find(of_the_document.begin(), of_the_document.end(), key) != of_the_document.end();
}

std::optional<double> number_in(std::string_view text) {
  const auto begin = text.find_first_not_of(' '), end = text.find_last_not_of(' ');
  if (begin == std::string_view::npos) return std::nullopt;
  double value = 0;
  if (!parse_number(text.substr(begin, end - begin + 1), value)) return std::nullopt;
  return value;
}

/// "2 .. 6", either end open.
SheetCell range_of(const std::string& text, std::string_view unit) {
  constexpr std::string_view between = "..";
  const std::size_t at = text.find(between);
  if (at == std::string::npos) return text;
  const std::string_view all = text;
  return MeasureRange{number_in(all.substr(0, at)), number_in(all.substr(at + between.size())), unit};
}

SheetCell field_cell(const FieldInfo& field, ConstObjectRef object) {
  const std::string text = field.text(object);
  if (text.empty()) return not_stated;
  if (const auto number = field.number(object)) return Measure{*number, field.unit};
  if (field.kind == FieldKind::interval) return range_of(text, field.unit);
  if (field.kind == FieldKind::choice) return Choice{text};
  return text;
}

class Changes {
 public:
  /// `within`: the label of the object that holds the fields; none for the schedule itself.
  void add(ConstObjectRef before, ConstObjectRef after, Word within = {}) {
    for (const FieldInfo& field : before.table().fields) {
      const bool holds_others = field.kind == FieldKind::object || field.kind == FieldKind::object_list;
      if (holds_others || is_of_the_document(field.key)) continue;
      if (field.text(before) == field.text(after)) continue;
      const Word label = Word::of_table(field.label);
      list.push_back({within == Word() ? SheetCell(label) : PatternCell{"{1}: {2}"_word, {within, label}},
                      field_cell(field, before), field_cell(field, after)});
    }
  }

  template <class Nested>
  void add_nested(Word label, const std::optional<Nested>& before, const std::optional<Nested>& after) {
    static const Nested none{};
    if (before || after) add(before ? *before : none, after ? *after : none, label);
  }

  std::vector<RevisionChange> list;
};

}  // namespace

const Schedule* earlier_revision(const Plan& plan, const Schedule& schedule) {
  const Schedule* best = nullptr;
  for (const Schedule& each : plan.schedules) {
    if (&each == &schedule || family_of(each) != family_of(schedule)) continue;
    if (each.revision >= schedule.revision) continue;
    if (best == nullptr || each.revision >= best->revision) best = &each;
  }
  return best;
}

std::vector<RevisionChange> revision_changes(const Schedule& before, const Schedule& after) {
  Changes changes;
  changes.add(before, after);
  changes.add_nested("pulse"_word, before.pulse, after.pulse);
  changes.add_nested("weave"_word, before.weave, after.weave);
  changes.add_nested("use"_word, before.use, after.use);
  changes.add_nested("limits"_word, before.limits, after.limits);
  return std::move(changes.list);
}

}  // namespace seamtakt
