#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/files/byte_source.hpp"
#include "base/sentences/sentence.hpp"
#include "records/log/log_limits.hpp"

namespace seamtakt {

/// Splits a CSV (RFC 4180) into records and fields, block by block. Memory: one block and one record. Fields
/// refer to the block: they are valid until the next refill().
class RecordSplitter {
 public:
  /// Called with each block of bytes as it was read; may be empty.
  using Observer = std::function<void(std::string_view)>;

  RecordSplitter(ByteSource& bytes, std::string file, std::size_t block_bytes, const LogLimits& limits,
                 Observer observe = {});

  struct Record {
    std::uint64_t line = 0;         ///< 1-based line on which it begins
    std::size_t count = 0;          ///< of fields
    const Word* problem = nullptr;  ///< why it can't be used, nullptr where it can
    bool has_high_bytes = false;    ///< some byte is above 0x7f
    bool has_quotes = false;        ///< some field is quoted: it may hold the line's end
    std::string_view text;          ///< unchanged from the file, without the line's end
  };
  enum class Step { record, need_bytes, end };

  /// The next complete record in the block. Blank lines are skipped. InputError for one that is
  /// beyond the limits or that a quote left open never ends.
  Step next(Record& record);
  std::string_view field(std::size_t index) const { return fields_[index]; }

  /// Moves the unread rest to the front and reads on.
  void refill();

  /// Continues in another buffer, from `at` to `end`: it is complete, and nothing follows it if `ended`. The
  /// byte at `end` must be a newline, which isn't part of the text.
  void borrow(const char* text, std::size_t at, std::size_t end, bool ended, std::uint64_t line);
  std::size_t position() const { return at_; }
  std::uint64_t line() const { return line_; }
  /// Fields in which "" meant a quote: the caller keeps those that its rows refer to.
  std::deque<std::string> take_unescaped() { return std::exchange(unescaped_, {}); }

  /// The bytes of the block, for looking at the log's beginning, and skipping of some of them (a byte order
  /// mark).
  std::string_view pending() const { return {data_ + at_, end_ - at_}; }
  void skip(std::size_t bytes) { at_ += bytes; }
  bool at_end_of_bytes() const { return source_ended_; }
  void set_delimiter(char delimiter);
  std::uint64_t bytes_read() const { return bytes_read_; }

 private:
  enum CharClass : std::uint8_t { plain, delimiter_char, newline, carriage_return, quote, control, high };

  Step scan(Record& record);
  /// A quoted field from its opening quote on; false where the block ends before its closing one.
  bool scan_quoted(Record& record, std::size_t& position, std::string_view& text);
  void check_lengths(Record& record) const;
  std::string_view view(std::size_t from, std::size_t to) const { return {data_ + from, to - from}; }
  bool more_may_come(std::size_t position) const { return position >= end_ && !source_ended_; }
  Step ask_for_bytes() const;
  [[noreturn]] void refuse_long_row(std::string_view text) const;
  [[noreturn]] void refuse_open_quote() const;

  ByteSource& source_;
  std::string file_;
  LogLimits limits_;
  Observer observe_;
  std::vector<char> block_;
  const char* data_ = nullptr;  ///< block_, or borrowed text
  std::size_t at_ = 0, end_ = 0;
  bool source_ended_ = false;
  std::uint64_t line_ = 1, bytes_read_ = 0;
  std::uint64_t lines_in_record_ = 0;
  std::array<CharClass, 256> class_{};
  std::vector<std::string_view> fields_;  ///< one more than allowed, which all that are too many share
  std::deque<std::string> unescaped_;     ///< fields in which "" meant a quote
};

}  // namespace seamtakt
