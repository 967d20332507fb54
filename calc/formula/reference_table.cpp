#include "formula/reference_table.hpp"

#include "base/error.hpp"
#include "base/files/catalogue.hpp"
#include "base/sentences/name_list.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

CsvTable read_table(std::string_view name) {
  const ReferenceFile file = reference_file(name);
  return parse_csv(file.text, file.path);
}

}  // namespace

ReferenceTable::ReferenceTable(std::string_view name) : table_(read_table(name)) {}

void ReferenceTable::refuse(std::size_t row, std::string_view column, Phrase expected) const {
  throw InputError(
      printable(table_.file) + ":" + std::to_string(table_.rows[row].line),
      Sentence("reference.text-in-column"_key, {{"text", printable(text(row, column))}, {"column", column}}),
      std::move(expected));
}

const std::string& ReferenceTable::text(std::size_t row, std::string_view column) const {
  return table_.rows[row].fields[table_.require(column)];
}

double ReferenceTable::number(std::size_t row, std::string_view column) const {
  double value = 0;
  if (!parse_number(text(row, column), value)) refuse(row, column, "a number"_word);
  return value;
}

double ReferenceTable::number_within(std::size_t row, std::string_view column, double least,
                                     double most) const {
  double value = 0;
  if (!parse_number(text(row, column), value) || value < least || value > most)
    refuse(row, column, "a number from " + number_text(least) + " to " + number_text(most));
  return value;
}

double ReferenceTable::positive(std::size_t row, std::string_view column) const {
  double value = 0;
  if (!parse_number(text(row, column), value) || !(value > 0)) refuse(row, column, "a number above 0");
  return value;
}

std::optional<double> ReferenceTable::number_or_empty(std::size_t row, std::string_view column) const {
  if (text(row, column).empty()) return std::nullopt;
  return number(row, column);
}

SourceBasis ReferenceTable::basis(std::size_t row) const {
  const std::string& word = text(row, "basis");
  if (word == "read") return SourceBasis::read;
  if (word == "part-read") return SourceBasis::part_read;
  if (word == "recalled") return SourceBasis::recalled;
  if (word == "derived") return SourceBasis::derived;
  if (word == "common-practice") return SourceBasis::common_practice;
  refuse(row, "basis", one_of_names({"read", "part-read", "recalled", "derived", "common-practice"}));
}

}  // namespace seamtakt
