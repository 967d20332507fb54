// How many records a second of processor time are written and verified: a JSON line.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>

#include "ledger/verify/verify.hpp"

using namespace seamtakt;

namespace {

/// Of the processor, by one thread: the machine may have other things to do.
double seconds_of(const std::function<void()>& work) {
  const std::clock_t begin = std::clock();
  work();
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

/// About as long as a pass of few figures; commits of 1,000.
LedgerEntry small_record(int i) {
  const std::string number = std::to_string(i);
  return {record_kind::pass,
          {},
          {{"results", "{\"unit_serial\":\"U" + std::to_string(i / 30) + "\",\"seam\":\"S" +
                           std::to_string(i % 30) + "\",\"pass\":1,\"heat_input_kJ_mm\":0." + number +
                           ",\"mean_current_A\":251.25,\"verdict\":\"pass\"}"}},
          {{"unit", "U" + std::to_string(i / 30)}}};
}

}  // namespace

/// ledger_bench FOLDER [records]
int main(int argc, char** argv) {
  if (argc < 2) return std::fprintf(stderr, "ledger_bench FOLDER [records]\n"), 2;
  const int records = argc > 2 ? std::atoi(argv[2]) : 200000;
  const std::string file = std::string(argv[1]) + "/ledger_bench.sqlite";
  std::filesystem::remove(file);
  const SigningKey key = SigningKey::generate();
  double writing = 0, verifying = 0;
  bool trusted = false;
  {
    Ledger ledger = Ledger::open("sqlite:" + file, {StoreOpening::For::writing, true, false});
    writing = seconds_of([&] {
      for (int done = 0; done < records; done += 1000)
        ledger.write([&](const std::string&, const std::string&) { return key; },
                     {"2026-03-02T06:00:00Z", "bench", "bench", "bench"},
                     [&](LedgerBatch& batch) {
                       for (int i = done; i < done + 1000 && i < records; ++i) batch.add(small_record(i));
                     });
    });
  }
  const auto bytes = std::filesystem::file_size(file);
  // The fastest of three: other load on the machine can only make it slower.
  for (int i = 0; i < 3; ++i) {
    const double taken =
        seconds_of([&] { trusted = verify_ledger(Ledger::open("sqlite:" + file, {}), {}).trusted; });
    verifying = i == 0 ? taken : std::min(verifying, taken);
  }
  std::filesystem::remove(file);
  std::printf(
      "{\"records\": %d, \"file_MB\": %.1f, \"written_per_s\": %.0f, \"verified_per_s\": %.0f, \"trusted\": "
      "%s}\n",
      records, static_cast<double>(bytes) / 1e6, records / writing, records / verifying,
      trusted ? "true" : "false");
  return trusted ? 0 : 1;
}
