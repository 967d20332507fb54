#include "cli/common/explanation_json.hpp"

#include <cmath>

#include "formula/validation.hpp"

namespace seamtakt::cli {

namespace {

void write_degrees_of_freedom(JsonWriter& json, const std::optional<double>& degrees_of_freedom) {
  json.key("degrees_of_freedom");
  if (degrees_of_freedom && std::isinf(*degrees_of_freedom)) {
    json.value("infinite");
  } else {
    json.value(degrees_of_freedom);
  }
}

void write_budget(JsonWriter& json, const UncertaintyBudget& budget) {
  json.key("budget").begin_object();
  json.member("U", budget.U).member("u", budget.u).member("k", 2).member("first_order", !budget.is_numerical);
  write_degrees_of_freedom(json, budget.degrees_of_freedom);
  json.key("inputs").begin_array();
  for (const BudgetInput& input : budget.inputs) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("input", input.meaning.english()).member("value", input.value).member("unit", input.unit);
    json.member("u", input.u);
    json.member("distribution", word_of(input.distribution).english());
    json.member("sensitivity", input.sensitivity).member("contribution", input.contribution);
    json.member("share_pct", input.share_pct);
    write_degrees_of_freedom(json, input.degrees_of_freedom);
    json.end_object();
  }
  json.end_array().end_object();
}

void write_validation(JsonWriter& json, const FormulaNote& note) {
  json.member("validation", validation_sentence(note).english());
  const FormulaValidation* measured = validation_of(note.id);
  json.key("measured");
  if (!measured) {
    json.null();
    return;
  }
  json.begin_object(JsonWriter::Layout::compact);
  json.member("values", measured->values).member("bias_pct", measured->bias_pct);
  json.member("scatter_pct", measured->scatter_pct).member("within_pct", measured->within_pct);
  json.member("coverage_pct", measured->coverage_pct).member("source", measured->source);
  json.end_object();
}

}  // namespace

void write_explanation(JsonWriter& json, const Explanation& explanation) {
  const FormulaNote& note = *explanation.note;
  json.begin_object(explanation.budget ? JsonWriter::Layout::lines : JsonWriter::Layout::compact);
  json.member("key", note.result).member("value", explanation.result).member("unit", explanation.unit);
  json.member("formula", note.symbols).member("numbers", with_numbers(explanation));
  json.key("symbols").begin_array(JsonWriter::Layout::compact);
  for (const SymbolValue& input : explanation.inputs) {
    json.begin_object();
    json.member("symbol", input.symbol).member("meaning", input.meaning.english());
    json.member("value", input.value).member("unit", input.unit).end_object();
  }
  json.end_array();
  json.member("source", note.source_key).member("clause", note.clause).member("range", note.range);
  json.member("accuracy", note.accuracy).member("basis", to_string(note.basis));
  write_validation(json, note);
  if (explanation.budget) write_budget(json, *explanation.budget);
  json.end_object();
}

}  // namespace seamtakt::cli
