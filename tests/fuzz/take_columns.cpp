// The map of a log's columns, and a small log read by it.
#include <string>

#include "fuzz/fuzz_target.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::fuzz {

namespace {

constexpr const char* small_log =
    "ms;Date;Time;I;U;v;T;job;seam;time_s;current_A;voltage_V\n"
    "0;9/9/2022;04:41:14.028;200,5;250;48;212;1;S1;0;200;25\n"
    "500;9/9/2022;04:41:14.528;201;251;48;212;1;S1;0,5;201;25,1\n"
    "1000;9/9/2022;04:41:15.028;0;0;0;0;2;;1;0;0\n";

}  // namespace

bool take_columns(std::string_view input) {
  AuditOptions options;
  if (!is_taken([&] { options.columns = parse_log_columns(input, "columns.json"); })) return false;
  for (const auto& number : options.columns->numbers)
    promise(!number || number->scale != 0, "a scale isn't 0");
  options.max_rejected = 1'000;
  is_taken([&] {
    const AuditResult result = audit({{"log.csv", memory_bytes(small_log)}}, options, nullptr);
    promise(result.rows.add_up(), "each row is in a pass, without arc or rejected");
  });
  return true;
}

}  // namespace seamtakt::fuzz
