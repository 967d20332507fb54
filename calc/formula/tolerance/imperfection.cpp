#include "formula/tolerance/imperfection.hpp"

#include "base/error.hpp"
#include "base/sentences/name_list.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

ImperfectionSize size_of_word(const ReferenceTable& table, std::size_t row) {
  const std::string& word = table.text(row, "factor_of");
  if (word == "throat") return ImperfectionSize::throat;
  if (word == "thickness") return ImperfectionSize::thickness;
  if (word == "face_width") return ImperfectionSize::face_width;
  table.refuse(row, "factor_of", one_of_names({"throat", "thickness", "face_width"}));
}

ImperfectionRule read_rule(const ReferenceTable& table, std::size_t row) {
  ImperfectionRule rule;
  rule.imperfection = table.text(row, "imperfection");
  rule.number = table.text(row, "number");
  rule.level = table.text(row, "level");
  rule.limited = !table.text(row, "constant_mm").empty();
  if (rule.limited) {
    rule.constant_mm = table.number(row, "constant_mm");
    rule.factor = table.number(row, "factor");
    rule.factor_of = size_of_word(table, row);
    rule.cap_mm = table.number_or_empty(row, "cap_mm");
  }
  rule.short_only = table.text(row, "short_only") == "yes";
  rule.thickness_above_mm = table.number_or_empty(row, "thickness_above_mm");
  rule.thickness_up_to_mm = table.number_or_empty(row, "thickness_up_to_mm");
  rule.basis = table.basis(row);
  return rule;
}

std::vector<ImperfectionRule> read_rules() {
  const ReferenceTable table("iso5817.csv");
  std::vector<ImperfectionRule> rules;
  for (std::size_t row = 0; row < table.size(); ++row) rules.push_back(read_rule(table, row));
  return rules;
}

const std::vector<ImperfectionRule>& rules() {
  static const std::vector<ImperfectionRule> all = read_rules();
  return all;
}

// The scope of ISO 5817 begins here, this thickness included.
constexpr double thinnest_mm = 0.5;
constexpr double unknown_thickness_stands_for_mm = 10;

bool covers(const ImperfectionRule& rule, double thickness_mm) {
  const double thickness = thickness_mm > 0 ? thickness_mm : unknown_thickness_stands_for_mm;
  const bool at_scope_begin = rule.thickness_above_mm == thinnest_mm && thickness == thinnest_mm;
  return (!rule.thickness_above_mm || thickness > *rule.thickness_above_mm || at_scope_begin) &&
         (!rule.thickness_up_to_mm || thickness <= *rule.thickness_up_to_mm);
}

}  // namespace

ImperfectionJudgement judge_imperfection(std::string_view imperfection, const ImperfectionCase& weld) {
  bool another_level_has_a_row = false, only_if_short = false;
  for (const ImperfectionRule& rule : rules()) {
    if (rule.imperfection != imperfection || !covers(rule, weld.thickness_mm)) continue;
    another_level_has_a_row = true;
    if (rule.level != weld.level) continue;
    if (!rule.limited) return {Permission::unlimited, &rule};
    if (!rule.short_only || weld.short_imperfection) return {Permission::limited, &rule};
    only_if_short = true;
  }
  if (only_if_short) return {Permission::only_if_short, nullptr};
  return {another_level_has_a_row ? Permission::not_permitted : Permission::no_row, nullptr};
}

}  // namespace seamtakt
