#include "records/log/run_pattern.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "records/log/kernel/powers_of_ten.hpp"
#include "records/passes/pass_accumulator.hpp"

namespace seamtakt {

namespace {

using Kind = RowStep::Kind;
using Q = LogQuantity;

constexpr std::int32_t widest = 2'147'483'647;

/// A cell unchanged from the log, with its quotes.
std::string_view raw_cell(std::string_view field) {
  if (field.data()[-1] != '"') return field;
  return {field.data() - 1, field.size() + 2};
}

/// Decimals of a number in digits; -1 for another form.
int decimals_of(std::string_view text, bool decimal_comma) {
  if (!text.empty() && text[0] == '-') text.remove_prefix(1);
  const auto digits = [&] {
    const auto end = std::find_if(text.begin(), text.end(), [](char c) { return c < '0' || c > '9'; });
    const auto count = static_cast<std::size_t>(end - text.begin());
    text.remove_prefix(count);
    return static_cast<int>(count);
  };
  digits();
  if (text.empty()) return 0;
  if (text[0] != '.' && !(decimal_comma && text[0] == ',')) return -1;
  text.remove_prefix(1);
  const int count = digits();
  return text.empty() ? count : -1;
}

std::int32_t clipped(double value) {
  return static_cast<std::int32_t>(
      std::clamp(value, -static_cast<double>(widest), static_cast<double>(widest)));
}

/// The greatest whole number that represents a value up to `most`.
std::int32_t greatest_up_to(double most, unsigned decimals) {
  const auto power = static_cast<double>(whole_power_of_ten(decimals));
  double number = std::floor(most * power);
  while ((number + 1) / power <= most) ++number;
  while (number / power > most) --number;
  return clipped(number);
}

}  // namespace

std::optional<RunPattern> RunPattern::of(const LogShape& shape) {
  const bool seconds = shape.time_kind == LogShape::TimeKind::seconds && shape.time_scale_s == 1;
  const bool iso = shape.time_kind == LogShape::TimeKind::iso8601;
  if (shape.time.size() != 1 || !(seconds || iso)) return std::nullopt;
  std::vector<RowStep> of_column(shape.columns, RowStep{Kind::ignored});
  for (const int column : shape.texts)
    if (column >= 0) of_column[static_cast<std::size_t>(column)].kind = Kind::texts;
  for (const std::size_t column : shape.carried) of_column[column].kind = Kind::texts;
  const auto claim = [&](std::size_t column, Kind kind, std::size_t quantity) {
    if (of_column[column].kind != Kind::ignored) return false;
    of_column[column].kind = kind;
    of_column[column].quantity = static_cast<std::uint8_t>(quantity);
    return true;
  };
  if (!claim(shape.time[0], seconds ? Kind::time_seconds : Kind::time_of_day, 0)) return std::nullopt;
  for (const auto& number : shape.numbers)
    if (number.scale != 1 || number.from != nullptr ||
        !claim(number.column, Kind::number, index_of(number.quantity)))
      return std::nullopt;
  RunPattern run(shape);
  run.pattern_.delimiter = shape.delimiter;
  run.pattern_.decimal_comma = shape.delimiter != ',';
  for (std::size_t i = 0; i < shape.columns; ++i) {
    auto& steps = run.pattern_.steps;
    if (of_column[i].kind == Kind::texts && !steps.empty() && steps.back().kind == Kind::texts) {
      ++steps.back().cells;
      ++run.cells_.back().count;
    } else {
      steps.push_back(of_column[i]);
      run.cells_.push_back({i, 1});
    }
  }
  run.pattern_.steps.back().last = true;
  return run;
}

void RunPattern::begin_chunk() {
  pattern_.decimals.fill(0);
  pattern_.time_decimals = 0;
}

bool RunPattern::fit(const RecordSplitter& fields, const RecordSplitter::Record& record, const LogRow& row) {
  if (record.count != shape_->columns) return false;
  // A field in which "" means a quote was copied.
  for (std::size_t i = 0; record.has_quotes && i < record.count; ++i) {
    const std::less_equal<const char*> at_most;
    const std::string_view field = fields.field(i);
    if (!at_most(record.text.data(), field.data()) ||
        !at_most(field.data() + field.size(), record.text.data() + record.text.size()))
      return false;
  }
  pattern_.texts.clear();
  pattern_.present = row.present;
  for (std::size_t i = 0; i < pattern_.steps.size(); ++i)
    if (!fit_step(pattern_.steps[i], cells_[i], fields, row)) return false;
  for (std::size_t q = 0; q < log_quantity_count; ++q) {
    const auto power = static_cast<double>(whole_power_of_ten(pattern_.decimals[q]));
    pattern_.lowest[q] = clipped(log_quantity_specs[q].lowest * power);
    pattern_.highest[q] = clipped(log_quantity_specs[q].highest * power);
  }
  return true;
}

bool RunPattern::fit_step(const RowStep& step, const Cells& cells, const RecordSplitter& fields,
                          const LogRow& row) {
  const std::string_view first = fields.field(cells.first);
  switch (step.kind) {
    case Kind::ignored:
      return true;
    case Kind::texts: {
      const char* const begin = raw_cell(first).data();
      const std::string_view last = raw_cell(fields.field(cells.first + cells.count - 1));
      pattern_.texts.push_back({begin, static_cast<std::size_t>(last.data() + last.size() - begin)});
      return true;
    }
    case Kind::time_of_day:
      return fit_time_of_day(first, row);
    case Kind::time_seconds: {
      const int decimals = decimals_of(first, pattern_.decimal_comma);
      if (decimals < 0 || decimals > kernel_time_decimals) return false;
      pattern_.time_decimals = std::max(pattern_.time_decimals, static_cast<std::uint8_t>(decimals));
      return true;
    }
    case Kind::number: {
      const int decimals = decimals_of(first, pattern_.decimal_comma);
      if (decimals < 0 || decimals > kernel_decimals) return false;
      auto& most = pattern_.decimals[step.quantity];
      most = std::max(most, static_cast<std::uint8_t>(decimals));
      return true;
    }
  }
  return false;
}

bool RunPattern::fit_time_of_day(std::string_view text, const LogRow& row) {
  constexpr std::size_t minute = 17;  // "2026-11-25T10:57:"
  const auto is_digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  if (text.size() < minute + 2 || text[4] != '-' || text[13] != ':' || text[16] != ':') return false;
  if (!is_digit(minute) || !is_digit(minute + 1)) return false;
  std::size_t at = minute + 2;
  unsigned decimals = 0;
  std::int64_t fraction = 0;
  if (at < text.size() && (text[at] == '.' || (pattern_.decimal_comma && text[at] == ',')) &&
      is_digit(at + 1))
    for (++at; is_digit(at); ++at, ++decimals) {
      if (decimals >= kernel_time_decimals) return false;
      fraction = fraction * 10 + (text[at] - '0');
    }
  const std::int64_t second = (text[minute] - '0') * 10 + (text[minute + 1] - '0');
  if (second > 59) return false;
  pattern_.time_decimals = std::max(pattern_.time_decimals, static_cast<std::uint8_t>(decimals));
  const std::int64_t within = second * 1'000'000'000 + fraction * whole_power_of_ten(9 - decimals);
  pattern_.minute_ticks = (row.time.ns - within) / whole_power_of_ten(9u - pattern_.time_decimals);
  const std::string_view raw = raw_cell(text);
  const auto before = static_cast<std::size_t>(text.data() + minute - raw.data());
  pattern_.texts.push_back({raw.data(), before});
  pattern_.texts.push_back(
      {text.data() + at, static_cast<std::size_t>(raw.data() + raw.size() - text.data()) - at});
  return true;
}

RunScale RunPattern::scale() const {
  RunScale scale;
  scale.decimals = pattern_.decimals;
  scale.time_decimals = pattern_.time_decimals;
  scale.present = pattern_.present;
  return scale;
}

BlockRules RunPattern::block_rules(double arc_current_A, std::int64_t longest_step_ns) const {
  BlockRules rules;
  rules.arc_current = greatest_up_to(arc_current_A, pattern_.decimals[index_of(Q::current_A)]);
  rules.standing = greatest_up_to(standing_mm_s, pattern_.decimals[index_of(Q::travel_speed_mm_s)]);
  rules.longest_step = longest_step_ns / whole_power_of_ten(9u - pattern_.time_decimals);
  rules.power_logged = shape_->has(Q::power_W);
  rules.present = pattern_.present;
  return rules;
}

bool RunPattern::adds_up() const {
  constexpr std::uint32_t one_by_one =
      bit_of(Q::energy_J) | bit_of(Q::x_mm) | bit_of(Q::y_mm) | bit_of(Q::z_mm) | bit_of(Q::wire_used_mm);
  const Q needed = shape_->has(Q::power_W) ? Q::power_W : Q::voltage_V;
  return (shape_->logged & one_by_one) == 0 && (pattern_.present & bit_of(needed)) != 0;
}

}  // namespace seamtakt
