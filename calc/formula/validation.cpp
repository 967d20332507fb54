#include "formula/validation.hpp"

#include <functional>
#include <map>

#include "formula/note.hpp"
#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

using ValidationTable = std::map<std::string, FormulaValidation, std::less<>>;

FormulaValidation read_row(const ReferenceTable& table, std::size_t row) {
  FormulaValidation read;
  read.values = static_cast<std::size_t>(table.number_within(row, "values", 2, 1e6));
  read.bias_pct = table.number_within(row, "bias_pct", -100, 1000);
  read.scatter_pct = table.number_within(row, "scatter_pct", 0, 1000);
  read.within_pct = table.number_or_empty(row, "within_pct");
  if (read.within_pct) read.coverage_pct = table.number_within(row, "coverage_pct", 0, 100);
  read.source = table.text(row, "source");
  return read;
}

ValidationTable read_validations() {
  const ReferenceTable table("validation.csv");
  ValidationTable read;
  for (std::size_t row = 0; row < table.size(); ++row)
    read.emplace(table.text(row, "formula"), read_row(table, row));
  return read;
}

UnitValue in_pct(double value) {
  return {value, "%", 3};
}

}  // namespace

const FormulaValidation* validation_of(std::string_view formula_id) {
  static const ValidationTable validations = read_validations();
  const auto found = validations.find(formula_id);
  return found == validations.end() ? nullptr : &found->second;
}

Sentence validation_sentence(const FormulaNote& note) {
  const FormulaValidation* measured = validation_of(note.id);
  if (!measured)
    return Sentence(note.basis == SourceBasis::derived ? "validation.derived"_key : "validation.quoted"_key);
  std::vector<Argument> said = {{"count", measured->values},
                                {"source", measured->source},
                                {"bias", in_pct(measured->bias_pct)},
                                {"scatter", in_pct(measured->scatter_pct)}};
  if (!measured->coverage_pct) return Sentence("validation.measured"_key, std::move(said));
  said.push_back({"coverage", in_pct(*measured->coverage_pct)});
  said.push_back({"within", in_pct(*measured->within_pct)});
  return Sentence("validation.measured-with-coverage"_key, std::move(said));
}

}  // namespace seamtakt
