#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <sys/resource.h>
#include <zlib.h>

#include <cmath>
#include <cstring>

#include "audit_fixture.hpp"
#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"
#include "records/log/log_number.hpp"

namespace seamtakt::test {
namespace {

std::string gzip(const std::string& text) {
  z_stream stream{};
  EXPECT_EQ(deflateInit2(&stream, 6, Z_DEFLATED, 16 + MAX_WBITS, 8, Z_DEFAULT_STRATEGY), Z_OK);
  std::string out(text.size() + 1000, '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
  stream.avail_in = static_cast<uInt>(text.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  EXPECT_EQ(deflate(&stream, Z_FINISH), Z_STREAM_END);
  out.resize(out.size() - stream.avail_out);
  deflateEnd(&stream);
  return out;
}

std::string read_all(ByteSource& source) {
  std::string all;
  char block[777];
  while (const std::size_t count = source.read(block, sizeof block)) all.append(block, count);
  return all;
}

std::string gunzip(const std::string& compressed, std::size_t chunk) {
  return read_all(*gzip_bytes(memory_bytes(compressed, chunk), "log.gz"));
}

TEST(Gzip, GivesBackWhatWasCompressedInAnyChunks) {
  std::string text;
  for (int i = 0; i < 20'000; ++i) text += std::to_string(i * i) + ",200,25\n";
  const std::string compressed = gzip(text);
  for (const std::size_t chunk : {0, 1, 13, 4096})
    EXPECT_EQ(gunzip(compressed, static_cast<std::size_t>(chunk)), text) << chunk;
}

TEST(Gzip, TakesSeveralMembersAsOne) {
  EXPECT_EQ(gunzip(gzip("time_s,") + gzip("") + gzip("current_A\n"), 3), "time_s,current_A\n");
}

TEST(Gzip, RefusesWhatIsCutOrDamaged) {
  const std::string compressed = gzip(std::string(5000, 'x') + "end");
  EXPECT_THROW(gunzip(compressed.substr(0, compressed.size() / 2), 0), InputError);
  EXPECT_THROW(gunzip(compressed.substr(0, compressed.size() - 1), 0), InputError);
  std::string damaged = compressed;
  damaged[damaged.size() - 6] = static_cast<char>(damaged[damaged.size() - 6] ^ 1);  // in the checksum
  EXPECT_THROW(gunzip(damaged, 0), InputError);
  EXPECT_THROW(gunzip(compressed + "rubbish", 0), InputError);
}

TEST(Digest, OfPiecesIsThatOfTheWhole) {
  Sha256 digest;
  digest.add("arc ");
  digest.add("");
  digest.add("log");
  EXPECT_EQ(hex(digest.take()), sha256_hex("arc log"));
}

TEST(Digest, IsOfTheUncompressedBytes) {
  const std::string log = "time_s,current_A,voltage_V\n0,200,25\n1,201,25\n";
  AuditOptions options;
  options.digest = true;
  const auto plain = audit({{"a", memory_bytes(log)}}, options, nullptr);
  const auto compressed =
      audit({{"b", std::shared_ptr<ByteSource>(gzip_bytes(memory_bytes(gzip(log)), "b"))}}, options, nullptr);
  EXPECT_EQ(plain.logs[0].sha256, sha256_hex(log));
  EXPECT_EQ(compressed.logs[0].sha256, plain.logs[0].sha256);
  EXPECT_EQ(compressed.logs[0].bytes, log.size());
}

/// Rows without end, made as they are asked for.
class MadeRows : public ByteSource {
 public:
  explicit MadeRows(std::uint64_t rows) : rows_(rows) {}
  std::size_t read(char* to, std::size_t capacity) override {
    while (pending_.size() < capacity && row_ < rows_) {
      pending_ += std::to_string(row_ / 1000) + "." + std::to_string(1000 + row_ % 1000).substr(1) + ",U" +
                  std::to_string(row_ / 8000) + ",W,S1,1," + std::to_string(180 + row_ % 41) + ".5,25." +
                  std::to_string(row_ % 7) + "\n";
      ++row_;
    }
    const std::size_t count = std::min(capacity, pending_.size());
    std::memcpy(to, pending_.data(), count);
    pending_.erase(0, count);
    return count;
  }
  std::uint64_t bytes_taken() const override { return 0; }

 private:
  std::string pending_ = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n";
  std::uint64_t rows_, row_ = 0;
};

long resident_kib() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss;
}

TEST(LogMemory, DoesNotGrowWithTheLog) {
#ifdef SEAMTAKT_SANITIZED
  GTEST_SKIP() << "the sanitizers keep freed memory for a while";
#endif
  const Plan plan = small_plan();
  const auto audit_rows = [&](std::uint64_t rows) {
    return audit({{"made", std::make_shared<MadeRows>(rows)}}, {}, &plan);
  };
  EXPECT_EQ(audit_rows(80'000).rows.in_passes, 80'000u);
  const long before = resident_kib();
  EXPECT_EQ(audit_rows(2'000'000).rows.in_passes, 2'000'000u);  // about 70 MB of text
  EXPECT_LT(resident_kib() - before, 8 * 1024) << "KiB more for 25 times the rows";
}

TEST(LogProgress, IsReportedAndMayStopTheAudit) {
  AuditOptions options;
  std::uint64_t calls = 0, total = 1;
  options.progress = [&](std::uint64_t, std::uint64_t bytes) { ++calls, total = bytes; };
  std::string log = "time_s,current_A,voltage_V\n";
  for (int i = 0; i < 50000; ++i) log += std::to_string(i) + ",200,25\n";
  options.reader.block_bytes = 4096;
  audit_text(log, options);
  EXPECT_GT(calls, 10u) << "once for each block";
  EXPECT_EQ(total, log.size());
  struct Stop {};
  options.progress = [](std::uint64_t, std::uint64_t) { throw Stop(); };
  EXPECT_THROW(audit_text(log, options), Stop);
}

bool same_number(const std::string& text, bool decimal_comma) {
  double quick = -7, plain = -7;
  const bool quick_good = parse_log_number(text, decimal_comma, quick),
             plain_good = parse_number(text, plain, decimal_comma);
  return quick_good == plain_good && std::memcmp(&quick, &plain, sizeof quick) == 0;
}

RC_GTEST_PROP(LogNumber, IsThePlainParsersToTheLastBit, (double value, int decimals)) {
  for (const auto& text : {fixed(std::fmod(value, 1e6), std::abs(decimals) % 12),
                           fixed(std::fmod(value, 1e17), std::abs(decimals) % 3)})
    RC_ASSERT(same_number(text, false));
}

RC_GTEST_PROP(LogNumber, TakesWhatThePlainParserTakes, (bool decimal_comma)) {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("0123456789.,-+eE x")));
  RC_ASSERT(same_number(text, decimal_comma));
}

TEST(LogNumber, HoldsAtTheEdges) {
  for (const char* text : {"9007199254740992", "9007199254740993", "0.9007199254740993", "123456789012345678",
                           "1234567890123456789", "0.000000000000000001", "-0", "-0.0",
                           "000000000000000000000001", "5.", ".5", ".", "-", "", "1e5", "1e400", "4.9e-324"})
    EXPECT_TRUE(same_number(text, false)) << text;
}

}  // namespace
}  // namespace seamtakt::test
