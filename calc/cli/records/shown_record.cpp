#include "cli/records/shown_record.hpp"

#include "base/units/unit_system.hpp"
#include "cli/common/output_view.hpp"

namespace seamtakt::cli {

std::string shown_verdict(std::string_view verdict) {
  for (const Word word : {"pass"_word, "fail"_word, "undecided"_word})
    if (verdict == word.english()) return shown_word(word);
  return std::string(verdict);
}

RowUnit::RowUnit(std::string_view name) : name_(name), unit_(find_unit(name)) {}

std::string RowUnit::name() const {
  return output_view().unit(name_.c_str());
}

double RowUnit::shown(double value) const {
  return unit_ != nullptr ? convert(value, *unit_, shown_unit(*unit_, output_view().units())) : value;
}

std::optional<double> RowUnit::shown(std::optional<double> value) const {
  return value ? std::optional(shown(*value)) : std::nullopt;
}

}  // namespace seamtakt::cli
