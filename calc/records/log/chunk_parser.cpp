#include "records/log/chunk_parser.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "records/log/kernel/block_groups.hpp"

namespace seamtakt {

namespace {

/// After so many rows without a fitting next row, the kernel is skipped for a while.
constexpr int tries = 16, rest = 200;

template <class Value>
void make_room(std::vector<Value>& values, std::size_t count) {
  if (values.size() < count) values.resize(count);
}

}  // namespace

SampleRun LogChunk::run_of(const ChunkRow& row) {
  SampleRun run;
  run.rows = row.run_rows;
  run.scale = row.scale;
  run.blocks = {blocks.data() + row.first_block, row.blocks};
  run.groups = {groups.data() + row.first_group, row.groups};
  run.columns.ticks = ticks.data() + row.run_first;
  for (std::size_t q = 0; q < log_quantity_count; ++q)
    if (!values[q].empty()) run.columns.value[q] = values[q].data() + row.run_first;
  return run;
}

ChunkParser::ChunkParser(const LogShape& shape, const LogColumns* columns, const std::string& file,
                         ByteSource& bytes, const ChunkRules& rules)
    : shape_(shape),
      file_(file),
      rules_(rules),
      splitter_(bytes, file, 1, rules.limits),
      reader_(shape, columns) {
  splitter_.set_delimiter(shape.delimiter);
  if (rules.kernel != nullptr) pattern_ = RunPattern::of(shape);
}

void ChunkParser::parse(LogChunk& chunk) {
  chunk.rows.clear();
  chunk.carried.clear();
  chunk.blocks.clear();
  chunk.groups.clear();
  chunk.rejected = {};
  chunk.rows_read = chunk.lines = 0;
  chunk.refused = false;
  chunk.highest_A = 0;
  chunk.any_without_offset = false;
  chunk.text()[chunk.size] = '\n';
  tries_in_vain_ = 0;
  if (pattern_) {
    pattern_->begin_chunk();
    // No row is shorter than its delimiters and its line's end.
    const std::size_t most = chunk.size / std::max<std::size_t>(shape_.columns, 1) + 1;
    make_room(chunk.ticks, most);
    for (const auto& number : shape_.numbers) make_room(chunk.values[index_of(number.quantity)], most);
  }
  std::size_t at = 0;
  RecordSplitter::Record record;
  for (;;) {
    splitter_.borrow(chunk.text(), at, chunk.size, chunk.last, chunk.lines);
    RecordSplitter::Step step = RecordSplitter::Step::end;
    try {
      step = splitter_.next(record);
    } catch (const InputError&) {
      chunk.refused = true;
    }
    chunk.lines = splitter_.line();
    at = splitter_.position();
    if (chunk.refused || step != RecordSplitter::Step::record) break;
    read_row(chunk, record);
    if (pattern_ && !chunk.rows.empty() && chunk.rows.back().row.line == record.line)
      take_run(chunk, record, at);
  }
  chunk.unread_from = at;
  chunk.unescaped = splitter_.take_unescaped();
}

void ChunkParser::refuse(LogChunk& chunk, std::uint64_t line) {
  splitter_.borrow(chunk.text(), chunk.unread_from, chunk.size, chunk.last, line);
  RecordSplitter::Record record;
  splitter_.next(record);
  throw std::logic_error("a row of " + file_ + " was refused and then read");
}

void ChunkParser::read_row(LogChunk& chunk, const RecordSplitter::Record& record) {
  ++chunk.rows_read;
  ChunkRow& read = chunk.rows.emplace_back();
  read.row.line = record.line;
  const std::size_t width = shape_.carried.size(), before = chunk.carried.size();
  chunk.carried.resize(before + width);
  Sentence reason = record.problem != nullptr ? Sentence("refusal.found"_key, {{"found", *record.problem}})
                                              : reader_.read(splitter_, record, read.row,
                                                             std::span(chunk.carried).subspan(before, width));
  if (!reason.is_empty()) {
    ++chunk.rejected.count;
    if (chunk.rejected.listed.size() < rules_.limits.listed_rejections)
      chunk.rejected.listed.push_back({file_, record.line, std::move(reason)});
    chunk.rows.pop_back();
    chunk.carried.resize(before);
    return;
  }
  if (!read.row.time.has_offset && !shape_.counts_seconds()) chunk.any_without_offset = true;
  chunk.highest_A = std::max(chunk.highest_A, read.row[LogQuantity::current_A]);
  const ChunkRow* const previous = chunk.rows.size() > 1 ? &chunk.rows[chunk.rows.size() - 2] : nullptr;
  read.run_first = previous != nullptr ? previous->run_first + previous->run_rows : 0;
  read.first_block = chunk.blocks.size();
  read.first_group = chunk.groups.size();
}

void ChunkParser::take_run(LogChunk& chunk, const RecordSplitter::Record& record, std::size_t& at) {
  if (tries_in_vain_ < 0) {
    ++tries_in_vain_;
    return;
  }
  const bool one_line = splitter_.line() == record.line + 1;
  ChunkRow& row = chunk.rows.back();
  if (!one_line || !pattern_->fit(splitter_, record, row.row)) return;
  row.scale = pattern_->scale();
  const SampleRun run = chunk.run_of(row);
  const char* const text = chunk.text();
  const RowsTaken taken = rules_.kernel->take_rows(pattern_->pattern(), text + at, text + chunk.size,
                                                   run.columns, chunk.ticks.size() - row.run_first);
  row.run_rows = taken.rows;
  chunk.rows_read += taken.rows;
  chunk.lines += taken.rows;
  at = static_cast<std::size_t>(taken.next - text);
  tries_in_vain_ = taken.rows > 0 ? 0 : tries_in_vain_ + 1;
  if (tries_in_vain_ >= tries) tries_in_vain_ = -rest;
  if (taken.rows > 0) add_up(chunk, row);
}

void ChunkParser::add_up(LogChunk& chunk, ChunkRow& row) {
  const SampleRun run = chunk.run_of(row);
  constexpr std::size_t current = index_of(LogQuantity::current_A);
  const std::int32_t* const currents = run.columns.value[current];
  const std::int32_t highest = *std::max_element(currents, currents + run.rows);
  chunk.highest_A = std::max(chunk.highest_A, run.scale.value_of(highest, current));
  if (!pattern_->adds_up()) return;
  const BlockRules rules = pattern_->block_rules(rules_.arc_current_A, rules_.longest_step_ns);
  for (std::size_t first = 1; first < run.rows; first += block_rows)
    chunk.blocks.push_back(
        rules_.kernel->sum_rows(run.columns, first, std::min(block_rows, run.rows - first), rules));
  row.blocks = chunk.blocks.size() - row.first_block;
  const std::span<const RowBlock> blocks(chunk.blocks.data() + row.first_block, row.blocks);
  for (std::size_t first = 0; first < blocks.size(); first += group_blocks)
    chunk.groups.push_back(joined(blocks.subspan(first, std::min(group_blocks, blocks.size() - first))));
  row.groups = chunk.groups.size() - row.first_group;
}

}  // namespace seamtakt
