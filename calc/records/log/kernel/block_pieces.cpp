#include "records/log/kernel/block_pieces.hpp"

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
  Int128 sum(std::int64_t sum, unsigned decimals) const {
    return static_cast<Int128>(sum) * whole_power_of_ten(12u - decimals) * ns_per_tick_;
  }
  unsigned decimals(Q quantity) const { return scale_.decimals[index_of(quantity)]; }
  HeldSum held(Q quantity, std::int64_t held_sum, std::int64_t ticks) const {
    if ((scale_.present & bit_of(quantity)) == 0) return {};
    return {sum(held_sum, decimals(quantity)), ticks * ns_per_tick_};
  }

 private:
  const RunScale& scale_;
  std::int64_t ns_per_tick_;
};

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

}  // namespace seamtakt
