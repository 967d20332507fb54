// Runs of rows that belong to one pass: what a PassGrouper does with them at once.
#include "records/log/kernel/block_groups.hpp"
#include "records/log/kernel/block_pieces.hpp"
#include "records/passes/pass_grouper.hpp"
#include "records/passes/pass_grouper_parts.hpp"

namespace seamtakt {

void PassGrouper::add_run(const LogRow& head, const SampleRun& run) {
  LogRow row = head;
  const auto add_rows = [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) {
      run.fill(i, head.line, row);
      add(row);
    }
  };
  const bool in_order = options_.sort_window == 0;
  add_rows(0, in_order && !run.blocks.empty() ? 1 : run.rows);
  if (!in_order || run.blocks.empty()) return;
  std::size_t arc_until = 0;  ///< block after the last one that is known to have the arc on throughout
  const auto take = [&](const RowBlock& block) {
    if (block.kind == RowBlock::Kind::one_by_one) return false;
    run.fill(block.first + block.rows - 1, head.line, row);
    return block.kind == RowBlock::Kind::arc_on ? add_arc_block(row, run, block, run.blocks[arc_until - 1])
                                                : add_off_block(row, run, block);
  };
  for (std::size_t b = 0; b < run.blocks.size(); ++b) {
    if (arc_until < b) arc_until = b;
    while (arc_until < run.blocks.size() && run.blocks[arc_until].kind == RowBlock::Kind::arc_on) ++arc_until;
    if (b % group_blocks == 0 && take(run.groups[b / group_blocks])) {
      b += group_blocks - 1;
      continue;
    }
    const RowBlock& block = run.blocks[b];
    if (!take(block)) add_rows(block.first, block.first + block.rows);
  }
}

PassGrouper::Route* PassGrouper::route_of_block(const LogRow& last, const SampleRun& run,
                                                const RowBlock& block) {
  Route& route = route_of(last);
  return run.ns_at(block.first) >= route.from_ns ? &route : nullptr;
}

bool PassGrouper::add_arc_block(const LogRow& last, const SampleRun& run, const RowBlock& block,
                                const RowBlock& arc_end) {
  if (last.arc_on == 0) return false;
  Route* route = route_of_block(last, run, block);
  if (route == nullptr) return false;
  PassEntry* entry = route->stream != nullptr ? route->stream->open : route->entry;
  if (entry == nullptr) return false;
  ArcStretch stretch;
  stretch.piece = piece_of(run, block, energy_source_ == EnergySource::power);
  stretch.rows = block.rows;
  stretch.least_step_ns = run.scale.ns_of(block.least_step);
  stretch.arc_on_until_ns = run.ns_at(arc_end.first + arc_end.rows - 1);
  stretch.last = sample_of(last, options_.arc_current_A);
  const BlockRows each(run, block);
  stretch.each = &each;
  if (!entry->sums.add_stretch(stretch)) return false;
  touch(*entry);
  note_texts(*entry, last);
  return true;
}

bool PassGrouper::add_off_block(const LogRow& last, const SampleRun& run, const RowBlock& block) {
  if (last.arc_on == 1) return false;
  Route* route = route_of_block(last, run, block);
  if (route == nullptr) return false;
  if (route->stream != nullptr) {
    if (route->stream->open != nullptr) return false;
    arc_off_rows_ += block.rows;
    return true;
  }
  if (route->entry == nullptr) return false;
  if (!route->entry->sums.add_stretch(OffStretch{block.rows, sample_of(last, options_.arc_current_A)}))
    return false;
  touch(*route->entry);
  note_texts(*route->entry, last);
  return true;
}

}  // namespace seamtakt
