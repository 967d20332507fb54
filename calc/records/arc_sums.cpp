#include "records/arc_sums.hpp"

namespace seamtakt {

namespace {

void lower(std::optional<double>& least, double value) {
  if (!least || value < *least) least = value;
}
void raise(std::optional<double>& most, double value) {
  if (!most || value > *most) most = value;
}

}  // namespace

void ArcInterval::merge(const ArcInterval& next) {
  if (next.voltage.ns > 0) {
    min_voltage_V = voltage.ns > 0 ? std::min(min_voltage_V, next.min_voltage_V) : next.min_voltage_V;
    max_voltage_V = voltage.ns > 0 ? std::max(max_voltage_V, next.max_voltage_V) : next.max_voltage_V;
  }
  min_current_A = std::min(min_current_A, next.min_current_A);
  max_current_A = std::max(max_current_A, next.max_current_A);
  end_ns = next.end_ns;
  time_ns += next.time_ns;
  no_power_ns += next.no_power_ns;
  current.add(next.current);
  voltage.add(next.voltage);
  power.add(next.power);
  wire_feed.add(next.wire_feed);
  travel_speed.add(next.travel_speed);
  gas_flow.add(next.gas_flow);
  energy_J += next.energy_J;
  travelled_mm += next.travelled_mm;
  wire_used_mm += next.wire_used_mm;
  progress_mm += next.progress_mm;
  torch_fine_mm += next.torch_fine_mm;
  torch_coarse_mm += next.torch_coarse_mm;
  if (!next.located) return;
  along_low_mm = located ? std::min(along_low_mm, next.along_low_mm) : next.along_low_mm;
  along_high_mm = located ? std::max(along_high_mm, next.along_high_mm) : next.along_high_mm;
  located = true;
}

void ArcSums::add(const ArcInterval& interval) {
  time_ns += interval.time_ns;
  no_power_ns += interval.no_power_ns;
  current.add(interval.current);
  voltage.add(interval.voltage);
  power.add(interval.power);
  wire_feed.add(interval.wire_feed);
  travel_speed.add(interval.travel_speed);
  gas_flow.add(interval.gas_flow);
  energy_J.add(interval.energy_J);
  if (interval.travel_speed.ns > 0) travelled_mm.add(interval.travelled_mm);
  if (interval.wire_used_mm > 0) wire_used_mm.add(interval.wire_used_mm);
  if (interval.located) progress_mm.add(interval.progress_mm);
  if (interval.torch_fine_mm > 0) torch_fine_mm.add(interval.torch_fine_mm);
  if (interval.torch_coarse_mm > 0) torch_coarse_mm.add(interval.torch_coarse_mm);
  lower(min_current_A, interval.min_current_A);
  raise(max_current_A, interval.max_current_A);
  if (interval.voltage.ns == 0) return;
  lower(min_voltage_V, interval.min_voltage_V);
  raise(max_voltage_V, interval.max_voltage_V);
}

}  // namespace seamtakt
