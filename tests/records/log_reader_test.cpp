#include <gtest/gtest.h>

#include "audit_fixture.hpp"
#include "records/log_reader.hpp"

namespace seamtakt::test {
namespace {

TEST(LogReader, GivesTheRowsThatTheAuditCounts) {
  const std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n" +
                          arc_rows("U1,W,S1,1", 0, 30) + "30.0,U1,W,S1,1,x,25\n" +
                          arc_rows("U1,W,S2,1", 31, 40);
  const auto bytes = memory_bytes(log, 100);
  RejectedRows rejected;
  LogReaderOptions options;
  options.block_bytes = 500;
  LogReader reader(*bytes, "log.csv", nullptr, {}, rejected, options);
  std::uint64_t rows = 0, last_line = 0;
  for (auto batch = reader.next_rows(); !batch.empty(); batch = reader.next_rows())
    for (const LogRow& row : batch) {
      EXPECT_GT(row.line, last_line);
      last_line = row.line;
      ++rows;
    }
  AuditOptions audit_options;
  audit_options.max_rejected = 1;
  const auto audited = audit_text(log, audit_options);
  EXPECT_EQ(reader.rows_read(), audited.rows.read);
  EXPECT_EQ(rows, audited.rows.in_passes + audited.rows.arc_off);
  EXPECT_EQ(rejected.count, 1u);
  EXPECT_EQ(rejected.listed.at(0).line, 302u);
}

}  // namespace
}  // namespace seamtakt::test
