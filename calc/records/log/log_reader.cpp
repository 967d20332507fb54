#include "records/log/log_reader.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "records/log/log_opening.hpp"
#include "records/log/record_splitter.hpp"
#include "records/log/row_reader.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t batch_rows = 512;

}  // namespace

struct LogReader::Parts {
  Parts(ByteSource& bytes, std::string name, RejectedRows& rejected_rows, const LogReaderOptions& given)
      : options(given),
        file(std::move(name)),
        rejected(rejected_rows),
        splitter(bytes, file, given.block_bytes, given.limits, given.observe) {}

  void read_header(const LogColumns* columns, const std::vector<std::string>& carry);
  void convert(const RecordSplitter::Record& record);
  void reject(std::uint64_t line, Sentence reason);

  LogReaderOptions options;
  std::string file;
  RejectedRows& rejected;
  RecordSplitter splitter;
  LogShape shape;
  std::unique_ptr<RowReader> row_reader;
  std::vector<LogRow> batch = std::vector<LogRow>(batch_rows);
  std::size_t in_batch = 0;
  std::vector<std::string_view> carried;
  std::uint64_t rows = 0;
  bool any_without_offset = false;
  bool first_row_pending = false;  ///< a log without header: its first record is data
  RecordSplitter::Record first_row;
};

void LogReader::Parts::read_header(const LogColumns* columns, const std::vector<std::string>& carry) {
  LogHead head = read_log_head(splitter, file, columns, carry, options.limits);
  shape = std::move(head.shape);
  row_reader = std::make_unique<RowReader>(shape, columns);
  first_row = head.first_row;
  first_row_pending = head.first_row_is_data;
  carried.resize(batch_rows * shape.carried.size());
}

void LogReader::Parts::reject(std::uint64_t line, Sentence reason) {
  ++rejected.count;
  if (rejected.listed.size() < options.limits.listed_rejections)
    rejected.listed.push_back({file, line, std::move(reason)});
}

void LogReader::Parts::convert(const RecordSplitter::Record& record) {
  ++rows;
  LogRow& row = batch[in_batch];
  row.line = record.line;
  const std::size_t width = shape.carried.size();
  const std::span<std::string_view> kept(carried.data() + in_batch * width, width);
  Sentence reason = record.problem != nullptr ? Sentence("refusal.found"_key, {{"found", *record.problem}})
                                              : row_reader->read(splitter, record, row, kept);
  if (!reason.is_empty()) return reject(record.line, std::move(reason));
  row.carried = kept;
  if (!row.time.has_offset && !shape.counts_seconds()) any_without_offset = true;
  ++in_batch;
}

LogReader::LogReader(ByteSource& bytes, std::string file, const LogColumns* columns,
                     const std::vector<std::string>& carry, RejectedRows& rejected,
                     const LogReaderOptions& options)
    : parts_(std::make_unique<Parts>(bytes, std::move(file), rejected, options)) {
  parts_->read_header(columns, carry);
}

LogReader::~LogReader() = default;

std::span<const LogRow> LogReader::next_rows() {
  Parts& parts = *parts_;
  parts.in_batch = 0;
  if (parts.first_row_pending) {
    parts.first_row_pending = false;
    parts.convert(parts.first_row);
  }
  RecordSplitter::Record record;
  while (parts.in_batch < batch_rows) {
    const RecordSplitter::Step step = parts.splitter.next(record);
    if (step == RecordSplitter::Step::record) {
      parts.convert(record);
      continue;
    }
    // A refill would move the bytes that the present rows refer to.
    if (step == RecordSplitter::Step::end || parts.in_batch > 0) break;
    parts.splitter.refill();
  }
  return {parts.batch.data(), parts.in_batch};
}

const LogShape& LogReader::shape() const {
  return parts_->shape;
}
const std::string& LogReader::file() const {
  return parts_->file;
}
std::uint64_t LogReader::rows_read() const {
  return parts_->rows;
}
std::uint64_t LogReader::bytes_read() const {
  return parts_->splitter.bytes_read();
}
bool LogReader::any_time_without_offset() const {
  return parts_->any_without_offset;
}

}  // namespace seamtakt
