#include "records/log/log_sweep.hpp"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <utility>

#include "base/error.hpp"
#include "base/parallel/thread_pool.hpp"
#include "base/text/comma_list.hpp"
#include "records/log/chunk_parser.hpp"
#include "records/log/chunk_source.hpp"
#include "records/log/log_opening.hpp"
#include "records/log/record_splitter.hpp"

namespace seamtakt {

namespace {

/// The kernel by its name; nullptr: none.
const RowKernel* kernel_named(const std::string& name) {
  if (name == "none") return nullptr;
  for (const RowKernel* kernel : row_kernels())
    if (name.empty() || name == kernel->name) return kernel;
  std::vector<std::string> known = {"none"};
  for (const RowKernel* kernel : row_kernels()) known.emplace_back(kernel->name);
  throw InputError("row kernel", '"' + printable(name, 40) + '"',
                   Sentence("refusal.one-of"_key, {{"names", comma_list(known)}}));
}

}  // namespace

struct LogSweep::Parts {
  Parts(ByteSource& log_bytes, std::string name, const LogColumns* log_columns, RejectedRows& rejected_rows,
        const LogReaderOptions& given)
      : bytes(log_bytes),
        options(given),
        file(std::move(name)),
        columns(log_columns),
        rejected(rejected_rows),
        splitter(log_bytes, file, given.block_bytes, given.limits, given.observe) {}

  void read_header(const std::vector<std::string>& carry);
  /// The rows of the next chunk in the order of the log, with its true line numbers.
  void hand_on(LogChunk& chunk, const Take& take);
  void number_lines(LogChunk& chunk);

  ByteSource& bytes;
  LogReaderOptions options;
  std::string file;
  const LogColumns* columns;
  RejectedRows& rejected;
  RecordSplitter splitter;  ///< reads the header
  LogShape shape;
  std::unique_ptr<ChunkSource> source;
  std::optional<ChunkParser> joining_parser;  ///< of texts that a row joins to the next chunk
  std::vector<char> unread;                   ///< begins with a row that continues in the next chunk
  LogChunk joined;
  std::uint64_t line = 1;  ///< on which the text not yet passed on begins
  std::uint64_t rows = 0;
  bool any_without_offset = false;
  double highest_A = 0;
};

void LogSweep::Parts::read_header(const std::vector<std::string>& carry) {
  LogHead head = read_log_head(splitter, file, columns, carry, options.limits);
  shape = std::move(head.shape);
  const RecordSplitter::Record& record = head.first_row;
  const bool named = !head.first_row_is_data;
  // A log without header: its first record is data.
  const char* const begin = named ? splitter.pending().data() : record.text.data();
  const char* const end = splitter.pending().data() + splitter.pending().size();
  line = named ? splitter.line() : record.line;
  const std::size_t longest_row = options.limits.record_bytes + 2;
  source = chunk_source(bytes, std::string_view(begin, static_cast<std::size_t>(end - begin)),
                        options.block_bytes, longest_row, options.observe);
}

void LogSweep::Parts::number_lines(LogChunk& chunk) {
  const std::size_t width = shape.carried.size();
  for (std::size_t i = 0; i < chunk.rows.size(); ++i) {
    LogRow& row = chunk.rows[i].row;
    row.line += line;
    row.carried = std::span<const std::string_view>(chunk.carried).subspan(i * width, width);
  }
  rejected.count += chunk.rejected.count;
  for (RejectedRow& row : chunk.rejected.listed) {
    if (rejected.listed.size() >= options.limits.listed_rejections) break;
    row.line += line;
    rejected.listed.push_back(std::move(row));
  }
  rows += chunk.rows_read;
  line += chunk.lines;
  any_without_offset = any_without_offset || chunk.any_without_offset;
  highest_A = std::max(highest_A, chunk.highest_A);
}

void LogSweep::Parts::hand_on(LogChunk& read, const Take& take) {
  LogChunk* chunk = &read;
  if (!unread.empty()) {
    // The chunk was parsed as if a row began with it, which isn't so.
    joined.reserve_text(unread.size() + read.size);
    std::copy(unread.begin(), unread.end(), joined.text());
    std::copy(read.text(), read.text() + read.size, joined.text() + unread.size());
    joined.size = unread.size() + read.size;
    joined.last = read.last && !read.read_error;
    joined.bytes_taken = read.bytes_taken;
    chunk = &joined;
    joining_parser->parse(joined);
  }
  number_lines(*chunk);
  take(*chunk);
  if (read.read_error) std::rethrow_exception(read.read_error);
  if (chunk->refused) joining_parser->refuse(*chunk, line);
  unread.assign(chunk->text() + chunk->unread_from, chunk->text() + chunk->size);
}

namespace {

/// Chunks in progress: read (in order, if the source can't be read otherwise) and parsed by any free thread,
/// passed on in order.
class Pipeline {
 public:
  Pipeline(std::size_t slots, ChunkSource& source, std::function<void(LogChunk&)> hand_on)
      : slots_(slots), source_(source), count_(source.count()), hand_on_(std::move(hand_on)) {}

  /// One thread's share, which ends with the log. Waits only for chunks that another thread is working on.
  void work(ChunkParser& parser) {
    std::unique_lock lock(mutex_);
    for (;;) {
      changed_.wait(lock, [&] { return over_ || (may_read() && next_read_ < next_taken_ + slots_.size()); });
      if (over_) break;
      const std::uint64_t index = next_read_++;
      Slot& slot = slots_[index % slots_.size()];
      over_ = next_read_ == count_;
      reading_ = true;
      without(lock, [&] { source_.read(slot.chunk, index); });
      reading_ = false;
      over_ = over_ || slot.chunk.last;
      changed_.notify_all();
      // A chunk after which reading failed consists of whole lines too.
      without(lock, [&] { parser.parse(slot.chunk); });
      slot.ready = true;
      hand_on_what_is_ready(lock);
    }
    changed_.notify_all();
  }

  void rethrow() const {
    if (error_) std::rethrow_exception(error_);
  }

 private:
  struct Slot {
    LogChunk chunk;
    bool ready = false;
  };

  bool may_read() const { return count_.has_value() || !reading_; }

  template <class Work>
  void without(std::unique_lock<std::mutex>& lock, const Work& work) {
    lock.unlock();
    try {
      work();
    } catch (...) {
      lock.lock();
      if (!error_) error_ = std::current_exception();
      over_ = true;
      return;
    }
    lock.lock();
  }

  void hand_on_what_is_ready(std::unique_lock<std::mutex>& lock) {
    if (handing_on_) return;
    handing_on_ = true;
    while (!error_ && slots_[next_taken_ % slots_.size()].ready) {
      Slot& slot = slots_[next_taken_ % slots_.size()];
      without(lock, [&] { hand_on_(slot.chunk); });
      slot.ready = false;
      ++next_taken_;
      changed_.notify_all();
    }
    handing_on_ = false;
  }

  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<Slot> slots_;
  ChunkSource& source_;
  std::optional<std::uint64_t> count_;  ///< of the chunks, where all threads read at once
  std::function<void(LogChunk&)> hand_on_;
  std::uint64_t next_read_ = 0, next_taken_ = 0;
  bool reading_ = false, handing_on_ = false, over_ = false;
  std::exception_ptr error_;
};

}  // namespace

LogSweep::LogSweep(ByteSource& bytes, std::string file, const LogColumns* columns,
                   const std::vector<std::string>& carry, RejectedRows& rejected,
                   const LogReaderOptions& options)
    : parts_(std::make_unique<Parts>(bytes, std::move(file), columns, rejected, options)) {
  parts_->read_header(carry);
}

LogSweep::~LogSweep() = default;

void LogSweep::run(double arc_current_A, std::int64_t longest_step_ns, const Take& take) {
  Parts& parts = *parts_;
  ChunkRules rules;
  rules.arc_current_A = arc_current_A;
  rules.longest_step_ns = longest_step_ns;
  rules.kernel = kernel_named(parts.options.kernel);
  rules.limits = parts.options.limits;
  const auto new_parser = [&] {
    return ChunkParser(parts.shape, parts.columns, parts.file, parts.bytes, rules);
  };
  parts.joining_parser.emplace(new_parser());
  unsigned threads = parts.options.threads;
  const std::uint64_t total = parts.bytes.bytes_total();
  if (threads == 0) threads = ThreadPool::shared().threads();
  // A short log is read before another thread has woken up and got its memory.
  if (total > 0 && total < 16 * parts.options.block_bytes && parts.options.threads == 0) threads = 1;
  Pipeline pipeline(threads == 1 ? 1 : 2 * std::size_t{threads} + 1, *parts.source,
                    [&](LogChunk& chunk) { parts.hand_on(chunk, take); });
  const auto share = [&](std::size_t, std::size_t) {
    ChunkParser parser = new_parser();
    pipeline.work(parser);
  };
  if (threads == 1) {
    share(0, 1);
  } else {
    ThreadPool::shared().parallel_for(threads, 1, share, threads);
  }
  pipeline.rethrow();
}

const LogShape& LogSweep::shape() const {
  return parts_->shape;
}
const std::string& LogSweep::file() const {
  return parts_->file;
}
std::uint64_t LogSweep::rows_read() const {
  return parts_->rows;
}
std::uint64_t LogSweep::bytes_read() const {
  return parts_->splitter.bytes_read() + parts_->source->bytes_read();
}
bool LogSweep::any_time_without_offset() const {
  return parts_->any_without_offset;
}
double LogSweep::highest_A() const {
  return parts_->highest_A;
}

}  // namespace seamtakt
