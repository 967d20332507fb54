#include "records/log/record_splitter.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

#include "base/error.hpp"

namespace seamtakt {

namespace {

constexpr Word long_field = "a field longer than the limit"_word,
               carriage_return_inside = "a carriage return inside a row"_word,
               text_after_quote = "text after a closing quote"_word,
               quote_inside = "a quote inside a field that doesn't begin with one"_word,
               control_character = "a control character"_word;

}  // namespace

RecordSplitter::RecordSplitter(ByteSource& bytes, std::string file, std::size_t block_bytes,
                               const LogLimits& limits, Observer observe)
    : source_(bytes),
      file_(std::move(file)),
      limits_(limits),
      observe_(std::move(observe)),
      block_(std::max<std::size_t>(block_bytes, 1) + limits.record_bytes + 2),
      fields_(limits.columns + 1) {
  data_ = block_.data();
  for (int c = 0; c < 0x20; ++c) class_[static_cast<std::size_t>(c)] = control;
  class_[0x7f] = control;
  for (std::size_t c = 0x80; c < 256; ++c) class_[c] = high;
  class_['\t'] = plain;
  class_['\n'] = newline;
  class_['\r'] = carriage_return;
  class_['"'] = quote;
  set_delimiter(',');
}

void RecordSplitter::set_delimiter(char delimiter) {
  for (char old : {',', ';', '\t'}) class_[static_cast<unsigned char>(old)] = plain;
  class_[static_cast<unsigned char>(delimiter)] = delimiter_char;
}

void RecordSplitter::refill() {
  unescaped_.clear();
  std::memmove(block_.data(), block_.data() + at_, end_ - at_);
  end_ -= at_;
  at_ = 0;
  const std::size_t capacity = block_.size() - 1 - end_;  // one byte stays for the sentinel
  const std::size_t count = capacity > 0 ? source_.read(block_.data() + end_, capacity) : 0;
  if (count == 0) source_ended_ = true;
  if (observe_ && count > 0) observe_({block_.data() + end_, count});
  end_ += count;
  bytes_read_ += count;
  // Every scan stops here at the latest, so that it needn't check for the block's end at each byte.
  block_[end_] = '\n';
}

void RecordSplitter::borrow(const char* text, std::size_t at, std::size_t end, bool ended,
                            std::uint64_t line) {
  data_ = text;
  at_ = at;
  end_ = end;
  source_ended_ = ended;
  line_ = line;
}

RecordSplitter::Step RecordSplitter::next(Record& record) {
  for (;;) {
    if (at_ == end_) return source_ended_ ? Step::end : Step::need_bytes;
    record = Record{};
    record.line = line_;
    lines_in_record_ = 0;
    const Step step = scan(record);
    if (step != Step::record) return step;
    line_ += lines_in_record_ + 1;
    const bool blank = record.count == 1 && record.text.empty();
    if (!blank) return step;
  }
}

RecordSplitter::Step RecordSplitter::ask_for_bytes() const {
  // A row of the greatest length and its two line end characters must fit, wherever the block ends.
  if (end_ - at_ <= limits_.record_bytes + 1) return Step::need_bytes;
  refuse_long_row(pending());
}

void RecordSplitter::refuse_long_row(std::string_view text) const {
  text = text.substr(0, limits_.record_bytes);
  if (std::count(text.begin(), text.end(), '"') % 2 == 1) refuse_open_quote();
  throw InputError(printable(file_) + ":" + std::to_string(line_),
                   Sentence("csv.row.too-long"_key, {{"bytes", limits_.record_bytes}}), "a shorter row"_word);
}

void RecordSplitter::refuse_open_quote() const {
  throw InputError(printable(file_) + ":" + std::to_string(line_), "a quote that is never closed"_word,
                   Sentence("log.quote.closing"_key, {{"bytes", limits_.record_bytes}}));
}

void RecordSplitter::check_lengths(Record& record) const {
  // Refused here too, so that the treatment of such a row doesn't depend on how much of it was in the block.
  if (record.text.size() > limits_.record_bytes) refuse_long_row(record.text);
  if (record.text.size() <= limits_.field_bytes) return;
  for (std::size_t i = 0; i < std::min(record.count, fields_.size()); ++i)
    if (fields_[i].size() > limits_.field_bytes) record.problem = &long_field;
}

RecordSplitter::Step RecordSplitter::scan(Record& record) {
  const char* const data = data_;
  const CharClass* const class_of = class_.data();
  std::string_view* const fields = fields_.data();
  const std::size_t last_field = fields_.size() - 1;
  std::size_t p = at_, field_begin = at_, count = 0;
  std::string_view quoted;
  bool is_quoted = false;
  for (;;) {
    CharClass what;
    while ((what = class_of[static_cast<unsigned char>(data[p])]) == plain) ++p;
    if (what == delimiter_char) {
      fields[std::min(count++, last_field)] = is_quoted ? quoted : view(field_begin, p);
      is_quoted = false;
      field_begin = ++p;
    } else if (what == newline) {
      if (more_may_come(p)) return ask_for_bytes();
      break;
    } else if (what == carriage_return) {
      if (more_may_come(p + 1)) return ask_for_bytes();
      if (data[p + 1] == '\n') break;
      record.problem = &carriage_return_inside;
      ++p;
    } else if (what == quote && p == field_begin && !is_quoted) {
      if (!scan_quoted(record, p, quoted)) return ask_for_bytes();
      is_quoted = true;
      const CharClass after = class_of[static_cast<unsigned char>(data[p])];
      if (after == plain || after == quote || after == high) record.problem = &text_after_quote;
    } else {
      if (what == quote) record.problem = &quote_inside;
      if (what == control) record.problem = &control_character;
      if (what == high) record.has_high_bytes = true;
      ++p;
    }
  }
  fields[std::min(count++, last_field)] = is_quoted ? quoted : view(field_begin, p);
  record.count = count;
  record.text = view(at_, p);
  check_lengths(record);
  // The sentinel after the last byte isn't part of the file.
  at_ = std::min(p + (data[p] == '\r' ? 2 : 1), end_);
  return Step::record;
}

bool RecordSplitter::scan_quoted(Record& record, std::size_t& position, std::string_view& text) {
  const char* const data = data_;
  const std::size_t begin = position + 1;
  std::size_t p = begin;
  bool doubled = false;
  record.has_quotes = true;
  for (;; ++p) {
    if (p >= end_) {
      if (!source_ended_) return false;
      if (end_ - at_ > limits_.record_bytes + 1) refuse_long_row(pending());
      refuse_open_quote();
    }
    const CharClass what = class_[static_cast<unsigned char>(data[p])];
    if (what == newline) ++lines_in_record_;
    if (what == high) record.has_high_bytes = true;
    if (what == control) record.problem = &control_character;
    if (what != quote) continue;
    if (more_may_come(p + 1)) return false;
    if (p + 1 >= end_ || data[p + 1] != '"') break;
    doubled = true;
    ++p;
  }
  text = view(begin, p);
  position = p + 1;
  if (!doubled) return true;
  std::string& plain_text = unescaped_.emplace_back();
  for (std::size_t i = 0; i < text.size(); ++i) {
    plain_text += text[i];
    if (text[i] == '"') ++i;
  }
  text = plain_text;
  return true;
}

}  // namespace seamtakt
