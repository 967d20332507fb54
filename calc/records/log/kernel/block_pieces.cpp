#include "records/log/kernel/block_pieces.hpp"

#include <algorithm>

#include "records/log/kernel/powers_of_ten.hpp"

namespace seamtakt {

namespace {

using Q = LogQuantity;

/// Brings sums of one run onto the grid.
class Grid {
 public:
  explicit Grid(const RunScale& scale)
      : scale_(scale), ns_per_tick_(whole_power_of_ten(9u - scale.time_decimals)) {}

  /// A sum of values with so many decimals times ticks.
  Int128 sum(Int128 sum, unsigned decimals) const {
    return sum * whole_power_of_ten(12u - decimals) * ns_per_tick_;
  }
  unsigned decimals(Q quantity) const { return scale_.decimals[index_of(quantity)]; }
  HeldSum held(Q quantity, Int128 held_sum, std::int64_t ticks) const {
    if ((scale_.present & bit_of(quantity)) == 0) return {};
    return {sum(held_sum, decimals(quantity)), ticks * ns_per_tick_};
  }

 private:
  const RunScale& scale_;
  std::int64_t ns_per_tick_;
};

/// A quantity that bins are judged on, in a block and in a piece.
struct BinnedColumn {
  Q quantity;
  std::int64_t RowBlock::*in_block;
  HeldSum SteadyPiece::*in_piece;
};
constexpr BinnedColumn binned_columns[] = {
    {Q::current_A, &RowBlock::current, &SteadyPiece::current},
    {Q::voltage_V, &RowBlock::voltage, &SteadyPiece::voltage},
    {Q::wire_feed_speed_m_min, &RowBlock::wire_feed, &SteadyPiece::wire_feed},
    {Q::travel_speed_mm_s, &RowBlock::travel_speed, &SteadyPiece::travel_speed},
    {Q::gas_flow_l_min, &RowBlock::gas_flow, &SteadyPiece::gas_flow}};

/// Sum over the intervals that end at rows first .. last.
Int128 held_sum(const std::int64_t* ticks, const std::int32_t* values, std::size_t first, std::size_t last) {
  Int128 sum = 0;
  for (std::size_t i = first; i <= last; ++i)
    sum += static_cast<Int128>(ticks[i] - ticks[i - 1]) * values[i - 1];
  return sum;
}

}  // namespace

ArcPiece piece_of(const SampleRun& run, const RowBlock& block, bool power_logged) {
  const Grid grid(run.scale);
  ArcPiece piece;
  piece.begin_ns = run.ns_at(block.first - 1);
  SteadyPiece& steady = piece.steady;
  steady.end_ns = run.ns_at(block.first + block.rows - 1);
  steady.time_ns = steady.end_ns - piece.begin_ns;
  steady.current = grid.held(Q::current_A, block.current, block.ticks);
  steady.voltage = grid.held(Q::voltage_V, block.voltage, block.ticks);
  steady.wire_feed = grid.held(Q::wire_feed_speed_m_min, block.wire_feed, block.ticks);
  steady.travel_speed = grid.held(Q::travel_speed_mm_s, block.travel_speed, block.ticks);
  steady.gas_flow = grid.held(Q::gas_flow_l_min, block.gas_flow, block.ticks);
  const unsigned current = grid.decimals(Q::current_A), voltage = grid.decimals(Q::voltage_V);
  const unsigned power = power_logged ? grid.decimals(Q::power_W) : current + voltage;
  steady.power = {grid.sum(block.power, power), steady.time_ns};
  piece.energy_twice = grid.sum(block.energy_twice, power);
  piece.current_squared = grid.sum(block.current_squared, 2 * current);
  piece.voltage_squared = grid.sum(block.voltage_squared, 2 * voltage);
  piece.travelled_twice = grid.sum(block.travelled_twice, grid.decimals(Q::travel_speed_mm_s));
  piece.min_current_A = run.scale.value_of(block.min_current, index_of(Q::current_A));
  piece.max_current_A = run.scale.value_of(block.max_current, index_of(Q::current_A));
  piece.min_voltage_V = run.scale.value_of(block.min_voltage, index_of(Q::voltage_V));
  piece.max_voltage_V = run.scale.value_of(block.max_voltage, index_of(Q::voltage_V));
  return piece;
}

SteadyPiece BlockRows::first(std::int64_t least_ns) const {
  const Grid grid(run_.scale);
  const std::int64_t* const ticks = run_.columns.ticks;
  const std::size_t before = block_.first - 1, last = before + block_.rows;
  const std::int64_t per_tick = run_.scale.ns_of(1);
  const std::int64_t* const end_tick = std::lower_bound(ticks + before + 1, ticks + last,
                                                        ticks[before] + (least_ns + per_tick - 1) / per_tick);
  const auto end = static_cast<std::size_t>(end_tick - ticks);
  // Whole blocks first; those of a run follow on one another from its row 1 on.
  const std::size_t first_block = before / block_rows;
  std::size_t blocks = first_block, row = block_.first;
  for (; blocks < run_.blocks.size() && row + run_.blocks[blocks].rows - 1 <= end; ++blocks)
    row += run_.blocks[blocks].rows;
  SteadyPiece piece;
  piece.end_ns = run_.ns_at(end);
  piece.time_ns = piece.end_ns - run_.ns_at(before);
  for (const BinnedColumn& each : binned_columns) {
    if ((run_.scale.present & bit_of(each.quantity)) == 0) continue;
    Int128 sum = 0;
    for (std::size_t b = first_block; b < blocks; ++b) sum += run_.blocks[b].*each.in_block;
    if (row <= end) sum += held_sum(ticks, run_.columns.value[index_of(each.quantity)], row, end);
    piece.*each.in_piece = grid.held(each.quantity, sum, *end_tick - ticks[before]);
  }
  return piece;
}

}  // namespace seamtakt
