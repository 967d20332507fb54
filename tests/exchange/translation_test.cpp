// Every text of the program's tables has its German: labels, help texts and choices of fields, headings of
// results, notes of formulas.
#include <gtest/gtest.h>

#include <cctype>
#include <regex>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "base/sentences/sentence_text.hpp"
#include "cell/timeline/cycle_columns.hpp"
#include "formula/quantities/quantity.hpp"
#include "german_words.hpp"
#include "line/line_columns.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/fields/field.hpp"
#include "plan/fields/plan_file.hpp"
#include "records/actual/actual_rows.hpp"
#include "records/passes/pass_columns.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

std::string german_sentence(const Sentence& sentence, UnitSystem units = UnitSystem::si) {
  return sentence_text(sentence, TextView(german(), units));
}

void expect_german_word(std::string_view text, std::string_view where) {
  if (has_words(text)) {
    EXPECT_TRUE(german().known_word(text)) << where << ": add \"" << text << "\" to languages/de.json";
  }
}

/// visit(table) for this table and those of all objects within.
template <class Visit>
void each_table(const FieldTable& table, std::set<const FieldTable*>& seen, const Visit& visit) {
  if (!seen.insert(&table).second) return;
  visit(table);
  for (const FieldInfo& field : table.fields)
    if (field.nested != nullptr) each_table(field.nested(), seen, visit);
}

template <class Visit>
void each_plan_table(const Visit& visit) {
  std::set<const FieldTable*> seen;
  each_table(fields_of<Plan>(), seen, visit);
  ASSERT_GT(seen.size(), 25u);
}

template <class Row>
void expect_german_headings(std::span<const Column<Row>> columns) {
  ASSERT_FALSE(columns.empty());
  for (const Column<Row>& column : columns) {
    expect_german_word(column.label, column.key);
    expect_german_word(column.heading(), column.key);
    expect_german_word(column.help, column.key);
  }
}

TEST(Translation, fields_have_german_labels_help_texts_and_choices) {
  each_plan_table([](const FieldTable& table) {
    expect_german_word(table.title, table.name);
    for (const FieldInfo& field : table.fields) {
      expect_german_word(field.label, field.key);
      expect_german_word(field.help, field.key);
      // A single choice is a mark of the file, no choice of a person.
      if (field.choices.size() > 1)
        for (const std::string_view choice : field.choices) expect_german_word(choice, field.key);
    }
  });
}

TEST(Translation, what_fields_may_hold_has_no_english_word_left) {
  static const std::regex english_word(
      "\\b(a|an|each|the|of|or|and|least|above|below|whole|list|text|one)\\b");
  each_plan_table([](const FieldTable& table) {
    for (const FieldInfo& field : table.fields)
      for (const Sentence& sentence : {field.expectation(), field.element_expectation()}) {
        const std::string text = german_sentence(sentence);
        EXPECT_FALSE(std::regex_search(text, english_word)) << table.name << "." << field.key << ": " << text;
        if (sentence.english().find("[x, y, z]") != 0) {
          EXPECT_NE(text, sentence.english()) << table.name << "." << field.key;
        }
      }
  });
}

TEST(Translation, what_fields_may_hold_is_said_in_the_readers_language_and_units) {
  const FieldInfo& speed = *field_named<Schedule>("travel_speed_mm_s");
  EXPECT_EQ(speed.expectation().english(), "a number above 0 mm/s");
  EXPECT_EQ(german_sentence(speed.expectation()), "eine Zahl über 0\u202fmm/s");
  EXPECT_EQ(german_sentence(speed.expectation(), UnitSystem::us), "eine Zahl über 0\u202fin/min");
  const FieldInfo& thicknesses = *field_named<Seam>("thickness_mm");
  EXPECT_EQ(thicknesses.expectation().english(), "a list of 2, each a number above 0 mm");
  EXPECT_EQ(german_sentence(thicknesses.expectation()),
            "eine Liste mit 2 Einträgen, jeweils eine Zahl über 0\u202fmm");
  EXPECT_EQ(german_sentence(field_named<Seam>("path_mm")->element_expectation(), UnitSystem::us),
            "[x, y, z] in in");
}

TEST(Translation, refusals_of_fields_are_said_in_german) {
  Schedule schedule;
  const auto refused = [&](const char* key, const char* text) -> std::string {
    try {
      field_named<Schedule>(key)->set_text(schedule, text);
    } catch (const InputError& error) {
      return german_sentence(error.found()) + " | " + german_sentence(error.expected());
    }
    return "accepted";
  };
  EXPECT_EQ(refused("travel_speed_mm_s", "fast"), "\"fast\" | eine Zahl über 0\u202fmm/s");
  EXPECT_EQ(refused("travel_speed_mm_s", "-3"), "-3 | eine Zahl über 0\u202fmm/s");
  EXPECT_EQ(refused("status", "aproved"),
            "\"aproved\" | eines von draft, reviewed und approved; am nächsten liegt approved");
  EXPECT_EQ(refused("effective_from", "soon"), "\"soon\" | ein Datum JJJJ-MM-TT");
}

TEST(Translation, results_have_german_headings) {
  expect_german_headings(pass_columns());
  expect_german_headings(seam_columns());
  expect_german_headings(weldment_columns());
  expect_german_headings(cycle_columns());
  expect_german_headings(move_columns());
  expect_german_headings(line_columns());
  expect_german_headings(stage_columns());
  expect_german_headings(unit_columns());
  expect_german_headings(waiting_columns());
  expect_german_headings(figures_columns(true));
  expect_german_headings(improvement_columns(true));
  expect_german_headings(record_columns());
  expect_german_headings(steady_columns());
  expect_german_headings(coverage_columns());
  expect_german_headings(unit_record_columns());
  expect_german_headings(manual_columns());
  expect_german_headings(actual_unit_columns());
  expect_german_headings(actual_step_columns());
}

TEST(Translation, formulas_have_german_notes_and_results) {
  std::set<std::string> notes;
  for (const Quantity* quantity : quantities()) {
    expect_german_word(quantity->summary, quantity->name);
    for (const ResultSpec& result : quantity->results) expect_german_word(result.label, result.key);
    for (const FormulaNote* note : quantity->notes) {
      notes.insert(note->id);
      for (const char* text : {note->clause, note->range, note->accuracy, to_string(note->basis)})
        expect_german_word(text, note->id);
    }
  }
  EXPECT_GT(notes.size(), 80u);
  for (const SourceBasis basis : {SourceBasis::read, SourceBasis::part_read, SourceBasis::recalled,
                                  SourceBasis::derived, SourceBasis::common_practice})
    expect_german_word(to_string(basis), "basis");
}

TEST(Translation, an_explanation_is_said_in_german_with_the_formulas_units) {
  const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const auto explanations = explain(plan, "BD/S02/pass 1", "heat_input_kJ_mm");
  ASSERT_FALSE(explanations.empty());
  const std::string plain = explanation_text(explanations[0]);
  EXPECT_EQ(plain, explanation_text(explanations[0], TextView::plain_english()));
  const std::string german_text = explanation_text(explanations[0], TextView(german(), UnitSystem::us));
  for (const char* part : {"  Formel      ", "  Genauigkeit  ", "kJ/mm", "gelesen"})
    EXPECT_NE(german_text.find(part), std::string::npos) << part << "\n" << german_text;
  for (const char* part : {"formula", "accuracy", "kJ/in"})
    EXPECT_EQ(german_text.find(part), std::string::npos) << part << "\n" << german_text;
}

TEST(Translation, findings_of_the_demo_are_said_in_german) {
  const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const Findings findings = evaluate(plan, "2026-11-25").findings;
  ASSERT_GT(findings.size(), 5u);
  for (const Finding& finding : findings) {
    EXPECT_FALSE(finding.sentence.key().text().empty()) << finding.rule << ": " << finding.text();
    EXPECT_NE(german_sentence(finding.sentence), finding.text()) << finding.rule;
  }
}

}  // namespace
}  // namespace seamtakt
