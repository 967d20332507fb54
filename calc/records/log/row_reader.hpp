#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "records/log/log_header.hpp"
#include "records/log/log_row.hpp"
#include "records/log/record_splitter.hpp"

namespace seamtakt {

/// Gives the fields of a record their meaning.
class RowReader {
 public:
  RowReader(const LogShape& shape, const LogColumns* columns);

  /// Fills `row` and `carried`. Empty where the record can be used, else the reason why it can't.
  Sentence read(const RecordSplitter& fields, const RecordSplitter::Record& record, LogRow& row,
                std::span<std::string_view> carried);

 private:
  Sentence read_time(const RecordSplitter& fields, std::size_t count, LogRow& row);
  Sentence read_texts(const RecordSplitter& fields, const RecordSplitter::Record& record, LogRow& row) const;
  bool parse_time(std::string_view text, LogTime& time) const;
  Sentence refusal(std::size_t column, std::string_view found, Sentence expected) const;

  const LogShape& shape_;
  const LogColumns* columns_;
  bool decimal_comma_ = false;
  bool accept_short_rows_ = false;
  struct TextColumn {
    std::size_t column;
    LogText what;
  };
  std::vector<TextColumn> texts_;
  std::string joined_time_;
};

}  // namespace seamtakt
