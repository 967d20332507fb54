#include "records/log/row_reader.hpp"

#include <charconv>
#include <cmath>

#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/text/utf8.hpp"
#include "records/log/log_number.hpp"

namespace seamtakt {

namespace {

/// Numbers, times and texts alike: "200, 25" has a blank before the 25.
std::string_view trimmed_field(std::string_view text) {
  return trimmed(text, " \t");
}

/// "1" or "0" as loggers write it; -1: nothing, -2: something else.
int truth_of(std::string_view text) {
  if (text.empty()) return -1;
  if (text == "1" || text == "true" || text == "TRUE" || text == "True" || text == "on" || text == "ON")
    return 1;
  if (text == "0" || text == "false" || text == "FALSE" || text == "False" || text == "off" || text == "OFF")
    return 0;
  return -2;
}

bool parse_pass(std::string_view text, int& pass) {
  const auto end = std::from_chars(text.data(), text.data() + text.size(), pass);
  return end.ec == std::errc() && end.ptr == text.data() + text.size() && pass >= 1 && pass <= 1'000'000;
}

Sentence unusable(Word found, Word expected) {
  return Sentence("refusal"_key, {{"found", found}, {"expected", expected}});
}

double in_own_unit(double raw, const LogShape::Number& number) {
  const double value = raw * number.scale;
  return number.from == nullptr ? value : convert(value, *number.from, *number.to);
}

}  // namespace

RowReader::RowReader(const LogShape& shape, const LogColumns* columns)
    : shape_(shape),
      columns_(columns),
      decimal_comma_(shape.delimiter != ','),
      accept_short_rows_(columns != nullptr && columns->accept_short_rows) {
  for (std::size_t i = 0; i < log_text_count; ++i)
    if (shape.texts[i] >= 0)
      texts_.push_back({static_cast<std::size_t>(shape.texts[i]), static_cast<LogText>(i)});
}

Sentence RowReader::refusal(std::size_t column, std::string_view found, Sentence expected) const {
  Sentence name = column < shape_.names.size() ? Sentence::verbatim(printable(shape_.names[column], 60))
                                               : Sentence("log.column.number"_key, {{"number", column + 1}});
  Sentence what =
      found.empty() ? Sentence("nothing"_word) : Sentence::verbatim('"' + printable(found, 80) + '"');
  return Sentence(
      "log.row.field"_key,
      {{"column", std::move(name)}, {"found", std::move(what)}, {"expected", std::move(expected)}});
}

Sentence RowReader::read(const RecordSplitter& fields, const RecordSplitter::Record& record, LogRow& row,
                         std::span<std::string_view> carried) {
  const std::size_t count = record.count;
  if (count != shape_.columns && (count > shape_.columns || !accept_short_rows_))
    return Sentence("log.row.fields"_key, {{"found", count}, {"expected", shape_.columns}});
  if (record.has_high_bytes && first_invalid_utf8(record.text) != std::string_view::npos)
    return unusable("bytes that aren't UTF-8"_word, "UTF-8 text"_word);
  Sentence reason = read_time(fields, count, row);
  if (!reason.is_empty()) return reason;
  row.present = 0;
  for (const auto& number : shape_.numbers) {
    const std::string_view text =
        number.column < count ? trimmed_field(fields.field(number.column)) : std::string_view();
    if (text.empty()) continue;
    double raw = 0;
    if (!parse_log_number(text, decimal_comma_, raw)) return refusal(number.column, text, "a number"_word);
    const double value = in_own_unit(raw, number);
    const LogQuantitySpec& spec = log_quantity_specs[index_of(number.quantity)];
    if (!(value >= spec.lowest && value <= spec.highest))
      return refusal(number.column, text,
                     Sentence("log.row.span"_key, {{"lowest", number_text(spec.lowest)},
                                                   {"highest", number_text(spec.highest)},
                                                   {"key", spec.key}}));
    row.value[index_of(number.quantity)] = value;
    row.present |= bit_of(number.quantity);
  }
  if (!row.has(LogQuantity::current_A)) return unusable("no current"_word, "a number"_word);
  constexpr std::uint32_t power_bits =
      bit_of(LogQuantity::voltage_V) | bit_of(LogQuantity::power_W) | bit_of(LogQuantity::energy_J);
  if ((row.present & power_bits) == 0) return unusable("no voltage, power or energy"_word, "a number"_word);
  for (std::size_t i = 0; i < carried.size(); ++i)
    carried[i] = shape_.carried[i] < count ? fields.field(shape_.carried[i]) : std::string_view();
  reason = read_texts(fields, record, row);
  if (!reason.is_empty() || !record.has_high_bytes) return reason;
  for (std::size_t i = 0; i < carried.size(); ++i)
    if (printable(carried[i], 8192) != carried[i])
      return refusal(shape_.carried[i], carried[i], "text without hidden characters"_word);
  return reason;
}

bool RowReader::parse_time(std::string_view text, LogTime& time) const {
  switch (shape_.time_kind) {
    case LogShape::TimeKind::iso8601:
      return parse_iso8601(text, time);
    case LogShape::TimeKind::formats:
      for (const TimeFormat& format : columns_->time_formats)
        if (format.parse(text, time)) return true;
      return false;
    case LogShape::TimeKind::seconds:
      break;
  }
  time = LogTime{};
  if (shape_.time_scale_s == 1) return parse_seconds(text, decimal_comma_, time.ns);
  double raw = 0;
  if (!parse_log_number(text, decimal_comma_, raw)) return false;
  const double ns = raw * shape_.time_scale_s * 1e9;
  if (!(std::fabs(ns) < 4.6e18)) return false;
  time.ns = std::llround(ns);
  return true;
}

Sentence RowReader::read_time(const RecordSplitter& fields, std::size_t count, LogRow& row) {
  const auto field = [&](std::size_t column) {
    return column < count ? trimmed_field(fields.field(column)) : std::string_view();
  };
  std::string_view text = field(shape_.time[0]);
  if (shape_.time.size() > 1) {
    joined_time_.assign(text);
    for (std::size_t i = 1; i < shape_.time.size(); ++i) (joined_time_ += ' ') += field(shape_.time[i]);
    text = joined_time_;
  }
  if (parse_time(text, row.time)) return {};
  const Word expected = shape_.time_kind == LogShape::TimeKind::seconds ? "a number of seconds"_word
                        : shape_.time_kind == LogShape::TimeKind::iso8601
                            ? "an ISO 8601 time between 1970 and 2114"_word
                            : "a time as the columns file describes"_word;
  return refusal(shape_.time[0], text, expected);
}

Sentence RowReader::read_texts(const RecordSplitter& fields, const RecordSplitter::Record& record,
                               LogRow& row) const {
  row.arc_on = -1;
  row.pass = 0;
  for (const auto& [column, what] : texts_) {
    const std::string_view text =
        column < record.count ? trimmed_field(fields.field(column)) : std::string_view();
    row.text[index_of(what)] = text;
    if (text.empty()) continue;
    if (what == LogText::pass) {
      if (!parse_pass(text, row.pass)) return refusal(column, text, "a whole number from 1"_word);
    } else if (what == LogText::arc_on) {
      const int truth = truth_of(text);
      if (truth < -1) return refusal(column, text, "1 or 0"_word);
      row.arc_on = static_cast<std::int8_t>(truth);
    } else if (record.has_high_bytes || record.has_quotes) {
      // Names are compared and printed: one with hidden characters would look like another.
      if (printable(text, 8192) != text) return refusal(column, text, "text without hidden characters"_word);
    }
  }
  return {};
}

}  // namespace seamtakt
