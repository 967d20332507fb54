// How a large store grows: pass records as from years of a shop, in commits of 1,000. At a quarter, a half
// and all of them: records written a second, the time to find a unit by its serial, a day, a seam over a
// year, and to verify; in the end the power of the number of records by which each grows (1: linearly, 0: not
// at all). A JSON line each.
//
//   ledger_load sqlite:FILE [records]                                  default: 1,000,000
//   ledger_load postgresql://postgres@127.0.0.1:54990/load 10000000    after packaging/postgres-demo and
//   createdb
//
// The store must be empty; a record takes about 1 kB, with its lookups.
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <functional>
#include <map>
#include <string>

#include "base/json/json_writer.hpp"
#include "base/time/log_time.hpp"
#include "exchange/report/seam_statistics.hpp"
#include "ledger/verify/verify.hpp"
#include "records/keep/record_search.hpp"

using namespace seamtakt;

namespace {

constexpr std::int64_t first_second = 1'767'225'600;  // 2026-01-01T00:00:00Z
constexpr std::uint64_t passes_a_unit = 30, passes_a_day = 6'000, commit_records = 1'000;

std::string utc(std::int64_t second) {
  return utc_text_of_ns((first_second + second) * 1'000'000'000);
}

std::string serial_of(std::uint64_t pass) {
  return "U" + std::to_string(pass / passes_a_unit);
}

/// About the members that a report asks for.
LedgerEntry pass_entry(std::uint64_t i) {
  const std::string unit = serial_of(i), seam = "S" + std::to_string(i % passes_a_unit + 1);
  const auto swing = static_cast<double>(i * 2654435761u % 1000) / 1000;
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("unit_serial", unit).member("weldment", "BD");
  json.member("seam", seam).member("pass", 1).member("robot", "R1").member("schedule", "F5S");
  json.member("started", utc(static_cast<std::int64_t>(i * 86'400 / passes_a_day)));
  json.member("arc_time_s", 44.5).member("length_mm", 440.0).member("energy_J", 381963.5 + 1000 * swing);
  json.member("mean_current_A", 290 + 10 * swing).member("mean_voltage_V", 29 + swing);
  json.member("travel_speed_mm_s", 9.5 + swing).member("heat_input_kJ_mm", 0.65 + swing / 10);
  json.member("verdict", "pass").end_object();
  return {record_kind::pass,
          {},
          {{"results", json.take()}},
          {{"pass", unit + "/BD/" + seam + "/1"}, {"unit", unit}}};
}

/// By the clock: a server works in processes of its own.
double seconds_of(const std::function<void()>& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

long peak_MB() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024;
}

/// A store that grows, and what was measured at each size.
class Load {
 public:
  explicit Load(std::string uri) : uri_(std::move(uri)) {}

  /// Throws where the store isn't what it must be.
  void grow_to(std::uint64_t records) {
    const std::uint64_t before = written_;
    std::map<std::string, double> seconds;
    seconds["insert"] = seconds_of([&] { write_up_to(records); }) / static_cast<double>(records - before);
    const Ledger ledger = Ledger::open(uri_, {});
    seconds["serial"] = seconds_of([&] { find_serials(ledger); }) / serials_looked_up;
    const std::string day = utc(static_cast<std::int64_t>(records / passes_a_day / 2) * 86'400).substr(0, 10);
    seconds["day"] = seconds_of([&] { find_range(ledger, day, day, ""); });
    seconds["seam_year"] = seconds_of([&] { find_range(ledger, "2026-01-01", "2026-12-31", "BD/S7"); });
    seconds["verify"] = seconds_of([&] {
      if (!verify_ledger(ledger, {}).trusted) throw std::runtime_error("the store isn't trusted");
    });
    std::printf(
        "{\"records\": %llu, \"written_per_s\": %.0f, \"serial_s\": %.5f, \"day_s\": %.3f, "
        "\"seam_year_s\": %.3f, \"verify_s\": %.2f, \"verified_per_s\": %.0f, \"peak_MB\": %ld}\n",
        static_cast<unsigned long long>(records), 1 / seconds["insert"], seconds["serial"], seconds["day"],
        seconds["seam_year"], seconds["verify"], static_cast<double>(records) / seconds["verify"], peak_MB());
    std::fflush(stdout);
    if (first_.empty()) first_ = seconds, first_records_ = records;
    last_ = seconds;
  }

  /// `insert` is the time of one record, the others that of the whole.
  void print_growth() const {
    std::printf("{\"growth\": {");
    const char* comma = "";
    for (const auto& [what, seconds] : last_) {
      const double power = std::log(seconds / first_.at(what)) /
                           std::log(static_cast<double>(written_) / static_cast<double>(first_records_));
      std::printf("%s\"%s\": %.2f", comma, what.c_str(), power);
      comma = ", ";
    }
    std::printf("}}\n");
  }

 private:
  static constexpr int serials_looked_up = 200;

  void write_up_to(std::uint64_t records) {
    Ledger ledger = Ledger::open(uri_, {StoreOpening::For::writing, true, false});
    if (written_ == 0 && ledger.count() > 0) throw std::runtime_error("the store isn't empty");
    while (written_ < records)
      ledger.write([&](const std::string&, const std::string&) { return key_; },
                   {"2026-03-02T06:00:00Z", "bench", "bench", "bench"},
                   [&](LedgerBatch& batch) {
                     const std::uint64_t end = std::min(written_ + commit_records, records);
                     for (; written_ < end; ++written_) batch.add(pass_entry(written_));
                   });
  }

  void find_serials(const Ledger& ledger) const {
    for (std::uint64_t i = 0; i < serials_looked_up; ++i) {
      std::size_t seen = 0;
      const auto numbers = ledger.backend().find("unit", serial_of(i * 7919 * passes_a_unit % written_));
      ledger.backend().each_record_of(numbers, [&](const LedgerRowView&) { ++seen; });
      if (seen == 0) throw std::runtime_error("a unit isn't found");
    }
  }

  static void find_range(const Ledger& ledger, const std::string& from, const std::string& to,
                         const std::string& seam) {
    RecordRange range;
    range.set_times(from, to);
    if (!seam.empty()) range.set_seam(seam);
    RecordHistory history(ledger);
    const auto found = find_records(history, range);
    if (found.empty()) throw std::runtime_error("no record is found");
    if (!seam.empty() && seam_series(history, found).empty())
      throw std::runtime_error("a seam has no values");
  }

  const std::string uri_;
  const SigningKey key_ = SigningKey::generate();
  std::uint64_t written_ = 0, first_records_ = 0;
  std::map<std::string, double> first_, last_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) return std::fprintf(stderr, "ledger_load STORE [records]\n"), 2;
  const std::uint64_t records = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1'000'000;
  if (records < 4 * passes_a_day) return std::fprintf(stderr, "ledger_load: at least 24000 records\n"), 2;
  try {
    Load load(argv[1]);
    for (const std::uint64_t size : {records / 4, records / 2, records}) load.grow_to(size);
    load.print_growth();
    return 0;
  } catch (const std::exception& error) {
    return std::fprintf(stderr, "ledger_load: %s\n", error.what()), 1;
  }
}
