#include "records/log/sample_run.hpp"

#include "records/log/kernel/powers_of_ten.hpp"

namespace seamtakt {

std::int64_t RunScale::ns_of(std::int64_t ticks) const {
  return ticks * whole_power_of_ten(9u - time_decimals);
}

double RunScale::value_of(std::int32_t number, std::size_t quantity) const {
  // A whole number below 2^53 over an exact power of ten: rounded once, as the careful way rounds the text.
  return static_cast<double>(number) / static_cast<double>(whole_power_of_ten(decimals[quantity]));
}

void SampleRun::fill(std::size_t i, std::uint64_t head_line, LogRow& row) const {
  row.time.ns = ns_at(i);
  row.line = head_line + 1 + i;
  for (std::size_t q = 0; q < log_quantity_count; ++q)
    if ((scale.present >> q & 1) != 0) row.value[q] = scale.value_of(columns.value[q][i], q);
}

}  // namespace seamtakt
