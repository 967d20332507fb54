#include <gtest/gtest.h>

#include "audit_fixture.hpp"
#include "records/log/log_reader.hpp"

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

// Public logs write "0.1, 200, 25": a blank after the delimiter.
TEST(LogReader, BlanksAroundNumbersAndTimesAreNoPartOfThem) {
  const std::string plain = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n" +
                            arc_rows("U1,W,S1,1", 0, 30) + "30.0,U1,W,S1,1,0,0\n";
  std::string blanks;
  for (const char c : plain) blanks += c == ',' ? ", " : c == '\n' ? " \n" : std::string(1, c);
  const auto want = audit_text(plain), got = audit_text(blanks);
  EXPECT_EQ(got.rows.rejected, 0u);
  ASSERT_EQ(got.passes.size(), 1u);
  EXPECT_EQ(got.passes[0].energy_J, want.passes[0].energy_J);
  EXPECT_EQ(got.passes[0].place(), "U1/W/S1/pass 1");
  const auto dates = audit_text(
      "timestamp,current_A,voltage_V\n 2026-03-02T06:00:00Z ,200,25\n 2026-03-02T06:00:01Z,0,25\n");
  EXPECT_EQ(dates.rows.rejected, 0u);
  // A blank alone is nothing, as an empty cell is.
  EXPECT_EQ(audit_text("time_s,current_A,voltage_V\n0,200,25\n1,  ,25\n").rows.rejected, 1u);
}

}  // namespace
}  // namespace seamtakt::test
