// Rows that the row kernel reads by their shape give the same as rows read by the careful reader, whatever
// digits and other bytes change from one row to the next.
#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>
#include <vector>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "records/log/kernel/row_kernel.hpp"
#include "records/passes/audit_json.hpp"
#include "support/sanitized.hpp"

namespace seamtakt::test {
namespace {

/// Rows of one form, with numbers that change their lengths and signs.
class ShapedLog {
 public:
  enum class Time { seconds, epoch_seconds, end_of_epoch_seconds, time_of_day };

  explicit ShapedLog(unsigned seed) : random_(seed) {
    time_ = static_cast<Time>(pick(4));
    delimiter_ = ",;\t"[pick(3)];
    decimal_comma_ = delimiter_ != ',' && pick(2) == 0;
    line_end_ = pick(2) == 0 ? "\n" : "\r\n";
    time_decimals_ = pick(7);
    decimals_ = pick(5);
    note_ = std::array<std::size_t, 4>{0, 0, 20, 90}[pick(4)];
    positions_ = pick(3) == 0;
    odd_ = pick(3) == 0;
  }

  std::string text(std::size_t rows) {
    const std::vector<std::string> names = {time_ == Time::time_of_day ? "timestamp" : "time_s",
                                            "unit_serial",
                                            "seam",
                                            "pass",
                                            "current_A",
                                            "voltage_V",
                                            "wire_feed_speed_m_min",
                                            "travel_speed_mm_s"};
    std::string log;
    for (const auto& name : names) log += name + delimiter_;
    if (positions_)
      log += std::string("x_mm") + delimiter_ + "y_mm" + delimiter_ + "z_mm" + delimiter_ + "gas_flow_l_min" +
             delimiter_;
    log += "note" + line_end_;
    for (std::size_t row = 0; row < rows; ++row) log += next_row(row);
    return log;
  }

 private:
  std::size_t pick(std::size_t below) {
    return std::uniform_int_distribution<std::size_t>(0, below - 1)(random_);
  }

  std::string time() {
    ticks_ += 1 + pick(40);
    const auto ms = ticks_ % 1000;
    const auto second = ticks_ / 1000;
    const std::string fraction = std::to_string(1000 + ms).substr(1) + "000";
    const std::string decimals =
        time_decimals_ == 0 ? "" : (decimal_comma_ ? "," : ".") + fraction.substr(0, time_decimals_);
    if (time_ != Time::time_of_day) {
      const std::size_t from = time_ == Time::seconds         ? 8
                               : time_ == Time::epoch_seconds ? 1'732'700'000
                                                              : 4'499'999'990;
      return std::to_string(from + second) + decimals;
    }
    const std::size_t minute = second / 60 % 60;
    return "2026-11-25T10:" + std::to_string(100 + minute).substr(1) + ":" +
           std::to_string(100 + (odd_ && pick(100) == 0 ? 55 + pick(45) : second % 60)).substr(1) + decimals +
           "Z";
  }

  std::string number(double lowest, double highest) {
    if (odd_ && pick(150) == 0)
      return std::array{"-0",  "-0.0",  "9999999", "5000.00001", "",         "+1",
                        "1e2", "007.5", ".5",      "5.",         "123456789"}[pick(11)];
    std::string text =
        fixed(std::uniform_real_distribution<double>(lowest, highest)(random_), static_cast<int>(decimals_));
    if (text.find_first_of("123456789") == std::string::npos && text[0] == '-') text.erase(0, 1);
    if (decimal_comma_)
      text.replace(std::min(text.find('.'), text.size()), text.find('.') < text.size() ? 1 : 0,
                   text.find('.') < text.size() ? "," : "");
    return text;
  }

  std::string next_row(std::size_t row) {
    const bool on = row % 300 > 20;
    std::vector<std::string> cells = {time(), "U7", "S01", "1"};
    cells.push_back(on ? number(80, 120) : number(-3, 4));
    // In odd logs some voltages are just beyond what a row may hold.
    cells.push_back(!on ? number(-1, 1) : odd_ ? number(480, 501) : number(8, 12));
    cells.push_back(number(on ? 9 : 0, 11));
    cells.push_back(number(on ? 5 : -2, 11));
    if (positions_)
      for (int i = 0; i < 4; ++i) cells.push_back(number(-12, 120));
    cells.push_back(std::string(note_, 'n') + (pick(50) == 0 ? "x" : "") + std::to_string(pick(20)));
    std::string line;
    for (const auto& cell : cells) line += (line.empty() ? "" : std::string(1, delimiter_)) + cell;
    if (odd_ && pick(100) == 0) line[pick(line.size())] = ":/-.,0 a"[pick(8)];
    return line + line_end_;
  }

  std::mt19937 random_;
  Time time_;
  char delimiter_;
  bool decimal_comma_, positions_, odd_;
  std::string line_end_;
  std::size_t time_decimals_, decimals_, note_;
  std::size_t ticks_ = 0;
};

std::string outcome_of_kernel(const std::string& log, const std::string& kernel, std::size_t block_bytes,
                              std::uint64_t* rejected = nullptr) {
  AuditOptions options;
  options.reader.kernel = kernel;
  options.reader.threads = 1;
  options.reader.block_bytes = block_bytes;
  options.weldment = "W";
  options.max_rejected = 1'000'000;
  try {
    const auto result = audit_text(log, options, nullptr, 0);
    EXPECT_TRUE(result.rows.add_up());
    if (rejected != nullptr) *rejected += result.rejected.count;
    std::string text;
    write_audit_json(result, text);
    return text;
  } catch (const InputError& error) {
    return error.what();
  }
}

TEST(RowShape, EveryKernelTakesRowsOfAnyShapeAsTheyAreReadWithCare) {
  std::uint64_t rejected = 0;
  for (unsigned seed = 0; seed < rounds(150u, 20u); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const std::string log = ShapedLog(seed).text(1200);
    const std::string first = outcome_of_kernel(log, "none", 1u << 17, &rejected);
    for (const RowKernel* kernel : row_kernels())
      for (const std::size_t block_bytes : {std::size_t{1} << 17, std::size_t{2000} + seed})
        ASSERT_EQ(outcome_of_kernel(log, kernel->name, block_bytes), first)
            << kernel->name << ' ' << block_bytes;
  }
  EXPECT_GT(rejected, rounds(300u, 30u)) << "the logs hold rows that nobody may take";
}

}  // namespace
}  // namespace seamtakt::test
