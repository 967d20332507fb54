#include "records/log/kernel/block_groups.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

/// Sums of a block that add up.
constexpr std::int64_t RowBlock::*sums[] = {
    &RowBlock::ticks,           &RowBlock::current,        &RowBlock::voltage,
    &RowBlock::wire_feed,       &RowBlock::travel_speed,   &RowBlock::gas_flow,
    &RowBlock::power,           &RowBlock::energy_twice,   &RowBlock::travelled_twice,
    &RowBlock::current_squared, &RowBlock::voltage_squared};

bool add(RowBlock& group, const RowBlock& block) {
  bool overflows = false;
  for (const auto sum : sums) overflows |= __builtin_add_overflow(group.*sum, block.*sum, &(group.*sum));
  group.rows += block.rows;
  group.least_step = std::min(group.least_step, block.least_step);
  group.min_current = std::min(group.min_current, block.min_current);
  group.max_current = std::max(group.max_current, block.max_current);
  group.min_voltage = std::min(group.min_voltage, block.min_voltage);
  group.max_voltage = std::max(group.max_voltage, block.max_voltage);
  return !overflows;
}

}  // namespace

RowBlock joined(std::span<const RowBlock> blocks) {
  RowBlock group = blocks.front();
  for (const RowBlock& block : blocks.subspan(1)) {
    if (block.kind != group.kind || !add(group, block)) {
      group.kind = RowBlock::Kind::one_by_one;
      break;
    }
  }
  return group;
}

}  // namespace seamtakt
