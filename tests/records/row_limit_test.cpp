#include <gtest/gtest.h>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "records/log/log_limits.hpp"

namespace seamtakt::test {
namespace {

const std::size_t limit = LogLimits{}.record_bytes;

/// What an audit of the log says: rows and rejections, or the refusal.
std::string outcome_in_blocks(const std::string& log, std::size_t block_bytes, std::size_t chunk) {
  AuditOptions options;
  options.reader.block_bytes = block_bytes;
  try {
    const auto result = audit_text(log, options, nullptr, chunk);
    std::string text = std::to_string(result.rows.read) + " rows";
    for (const auto& row : result.rejected.listed)
      text += ", " + std::to_string(row.line) + ": " + row.reason.english();
    return text;
  } catch (const InputError& error) {
    return error.what();
  }
}

void expect_one_outcome(const std::string& log, const std::string& holds) {
  const std::string whole = outcome_in_blocks(log, 1u << 20, 0);
  EXPECT_NE(whole.find(holds), std::string::npos) << whole;
  for (const std::size_t block : {1u, 100u, 65535u, 65536u, 65540u, 200000u})
    for (const std::size_t chunk : {0u, 4093u})
      EXPECT_EQ(outcome_in_blocks(log, block, chunk), whole) << block << ' ' << chunk;
}

/// A log whose row on line 3 is `bytes` long without its line end.
std::string with_row_of(std::size_t bytes, const std::string& line_end) {
  std::string wide = "1,201,25";
  std::string log = "time_s,current_A,voltage_V,a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r";
  for (int i = 0; i < 17; ++i) wide += ",";
  log += line_end + "0,200,25" + std::string(18, ',') + line_end;
  return log + wide + "," + std::string(bytes - wide.size() - 1, 'x') + line_end + "2,200,25" +
         std::string(18, ',') + line_end;
}

TEST(RowLimit, TheOutcomeDoesNotDependOnBlockBorders) {
  for (const std::string line_end : {"\n", "\r\n"}) {
    for (const std::size_t bytes : {limit - 2, limit - 1, limit})
      expect_one_outcome(with_row_of(bytes, line_end), "3: found a field longer than the limit");
    for (const std::size_t bytes : {limit + 1, limit + 2, limit + 3, 2 * limit})
      expect_one_outcome(with_row_of(bytes, line_end), "a row of more than 65536 bytes");
  }
}

TEST(RowLimit, AnOpenQuoteIsRefusedAlikeWhereverBlocksEnd) {
  const std::string head = "time_s,current_A,voltage_V\n0,200,25\n1,\"2";
  for (const std::size_t bytes : {std::size_t{10}, limit - 10, limit - 3, limit, limit + 5, 3 * limit})
    expect_one_outcome(head + std::string(bytes, '0'), "never closed");
  expect_one_outcome(head + std::string(limit, '0') + "\",\"" + std::string(limit, '0'), "log.csv:3");
}

}  // namespace
}  // namespace seamtakt::test
