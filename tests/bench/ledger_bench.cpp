// How many records a second are written and verified on one core: a JSON line.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "records/ledger/verify.hpp"

using namespace seamtakt;

namespace {

double seconds_of(const std::function<void()>& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
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
  verifying = seconds_of([&] { trusted = verify_ledger(Ledger::open("sqlite:" + file, {}), {}).trusted; });
  std::filesystem::remove(file);
  std::printf(
      "{\"records\": %d, \"file_MB\": %.1f, \"written_per_s\": %.0f, \"verified_per_s\": %.0f, \"trusted\": "
      "%s}\n",
      records, static_cast<double>(bytes) / 1e6, records / writing, records / verifying,
      trusted ? "true" : "false");
  return trusted ? 0 : 1;
}
