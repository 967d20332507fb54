#include "records/passes/arc_sums.hpp"

#include <cmath>

namespace seamtakt {

namespace {

void lower(std::optional<double>& least, double value) {
  if (!least || value < *least) least = value;
}
void raise(std::optional<double>& most, double value) {
  if (!most || value > *most) most = value;
}

std::optional<double> deviation(const HeldSum& held, Int128 squares) {
  const auto mean = held.mean();
  if (!mean) return std::nullopt;
  const double variance = quotient(squares, held.ns) / grid_of_one - *mean * *mean;
  // Beyond the doubles' resolution of the two squares there is nothing to be seen.
  return variance > 1e-15 * *mean * *mean ? std::sqrt(variance) : 0;
}

}  // namespace

void SteadyPiece::add(const SteadyPiece& other) {
  end_ns = other.end_ns;
  time_ns += other.time_ns;
  current.add(other.current);
  voltage.add(other.voltage);
  power.add(other.power);
  wire_feed.add(other.wire_feed);
  travel_speed.add(other.travel_speed);
  gas_flow.add(other.gas_flow);
  progress_mm += other.progress_mm;
}

void ArcPiece::merge(const ArcPiece& next) {
  if (next.steady.voltage.ns > 0) {
    const bool any = steady.voltage.ns > 0;
    min_voltage_V = any ? std::min(min_voltage_V, next.min_voltage_V) : next.min_voltage_V;
    max_voltage_V = any ? std::max(max_voltage_V, next.max_voltage_V) : next.max_voltage_V;
  }
  min_current_A = std::min(min_current_A, next.min_current_A);
  max_current_A = std::max(max_current_A, next.max_current_A);
  steady.add(next.steady);
  no_power_ns += next.no_power_ns;
  current_squared += next.current_squared;
  voltage_squared += next.voltage_squared;
  energy_twice += next.energy_twice;
  travelled_twice += next.travelled_twice;
  counted_J += next.counted_J;
  wire_used_mm += next.wire_used_mm;
  torch_fine_mm += next.torch_fine_mm;
  torch_coarse_mm += next.torch_coarse_mm;
  if (!next.located) return;
  along_low_mm = located ? std::min(along_low_mm, next.along_low_mm) : next.along_low_mm;
  along_high_mm = located ? std::max(along_high_mm, next.along_high_mm) : next.along_high_mm;
  located = true;
}

void SteadySums::add(const SteadyPiece& piece) {
  time_ns += piece.time_ns;
  current.add(piece.current);
  voltage.add(piece.voltage);
  power.add(piece.power);
  wire_feed.add(piece.wire_feed);
  travel_speed.add(piece.travel_speed);
  gas_flow.add(piece.gas_flow);
  if (piece.progress_mm != 0) progress_mm.add(piece.progress_mm);
}

void ArcSums::add(const ArcPiece& piece) {
  means.add(piece.steady);
  no_power_ns += piece.no_power_ns;
  current_squared += piece.current_squared;
  voltage_squared += piece.voltage_squared;
  energy_twice += piece.energy_twice;
  travelled_twice += piece.travelled_twice;
  if (piece.counted_J > 0) counted_J.add(piece.counted_J);
  if (piece.wire_used_mm > 0) wire_used_mm.add(piece.wire_used_mm);
  if (piece.torch_fine_mm > 0) torch_fine_mm.add(piece.torch_fine_mm);
  if (piece.torch_coarse_mm > 0) torch_coarse_mm.add(piece.torch_coarse_mm);
  lower(min_current_A, piece.min_current_A);
  raise(max_current_A, piece.max_current_A);
  if (piece.steady.voltage.ns == 0) return;
  lower(min_voltage_V, piece.min_voltage_V);
  raise(max_voltage_V, piece.max_voltage_V);
}

std::optional<double> ArcSums::mean_power_W() const {
  // A counter tells the power between its readings only.
  if (means.power.ns > 0 && counted_J.value() > 0) return counted_J.value() / seconds(means.power.ns);
  return means.power.mean();
}

double ArcSums::energy_J() const {
  return in_unit_seconds(energy_twice) / 2 + counted_J.value();
}

double ArcSums::travelled_mm() const {
  return in_unit_seconds(travelled_twice) / 2;
}

std::optional<double> ArcSums::rms_current_A() const {
  if (means.current.ns == 0) return std::nullopt;
  return std::sqrt(quotient(current_squared, means.current.ns) / grid_of_one);
}

std::optional<double> ArcSums::sd_current_A() const {
  return deviation(means.current, current_squared);
}

std::optional<double> ArcSums::sd_voltage_V() const {
  return deviation(means.voltage, voltage_squared);
}

}  // namespace seamtakt
