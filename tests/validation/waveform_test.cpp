// The product of the means against the mean of the product, over a record of dip transfer that is fast enough
// for the latter to be taken as measured.
#include <gtest/gtest.h>

#include "base/csv/csv.hpp"
#include "base/files/byte_source.hpp"
#include "base/json/json_node.hpp"
#include "formula/heat/waveform.hpp"
#include "validation/agreement.hpp"
#include "validation/open_data.hpp"

namespace seamtakt::validation {
namespace {

constexpr std::size_t stretches = 20;
constexpr std::size_t largest_record = 64u << 20;

struct Waveform {
  std::vector<double> time_s, voltage_V, current_A;
};

std::string unzipped(const std::filesystem::path& file) {
  const auto source = gzip_bytes(memory_bytes(read_file(file.string(), largest_record)), file.string());
  std::string all;
  char block[65536];
  while (const std::size_t count = source->read(block, sizeof block)) all.append(block, count);
  return all;
}

Waveform waveform_of(const std::filesystem::path& file) {
  const CsvTable table = parse_csv(unzipped(file), file.string());
  Waveform read;
  for (const CsvRow& row : table.rows) {
    double time = 0, voltage = 0, current = 0;
    if (!parse_number(row.fields[table.require("time")], time) ||
        !parse_number(row.fields[table.require("voltage")], voltage) ||
        !parse_number(row.fields[table.require("current")], current))
      ADD_FAILURE() << file << ":" << row.line;
    read.time_s.push_back(time);
    read.voltage_V.push_back(voltage);
    read.current_A.push_back(current);
  }
  return read;
}

class WaveformValidation : public ::testing::Test {
 protected:
  void SetUp() override {
    const std::filesystem::path file = open_data("waveforms/dip_50kHz.csv.gz");
    if (file.empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
    record_ = waveform_of(file);
  }

  WaveformSums sums(std::size_t first, std::size_t count) const {
    return waveform_sums(std::span(record_.time_s).subspan(first, count),
                         std::span(record_.voltage_V).subspan(first, count),
                         std::span(record_.current_A).subspan(first, count));
  }

  Waveform record_;
};

TEST_F(WaveformValidation, EnergyIsThatOfAnIndependentCalculation) {
  // By the record's source: 7029.23605 J by the trapezoid over the products; over 2 s, mean power 3514.653 W.
  const WaveformSums whole = sums(0, record_.time_s.size());
  EXPECT_NEAR(whole.mean_power_W(), 3514.653, 0.002);
  EXPECT_NEAR(whole.product_power_W(), 3606.901, 0.002);
}

TEST_F(WaveformValidation, TheProductOfTheMeansReadsHighOnDipTransfer) {
  Agreement agreement;
  const std::size_t count = record_.time_s.size() / stretches;
  ASSERT_GT(count, 1000u);
  for (std::size_t stretch = 0; stretch < stretches; ++stretch) {
    const WaveformSums part = sums(stretch * count, count);
    agreement.add(part.product_power_W(), part.mean_power_W());
  }
  expect_as_stated("waveform.product-power", agreement);
}

}  // namespace
}  // namespace seamtakt::validation
