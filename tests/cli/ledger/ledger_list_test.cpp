// What `ledger list` shows and is asked by: the time that it shows, how long records are kept, legal holds.
#include <set>

#include "cli/ledger/ledger_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class LedgerList : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_LE(audit_demo().exit_code, 1);
  }
  std::vector<JsonNode> list(std::vector<std::string> words) {
    words.insert(words.begin(), "list");
    return json(words).find("records")->elements;
  }
  std::vector<std::uint64_t> numbers(const std::vector<std::string>& words) {
    std::vector<std::uint64_t> found;
    for (const JsonNode& each : list(words))
      found.push_back(static_cast<std::uint64_t>(each.find("seq")->number));
    return found;
  }
  static std::string text(const JsonNode& record, const char* path) {
    const JsonNode* member = record.find("results")->find(path);
    return member != nullptr ? member->string : "";
  }
  /// Number of the record that a writing command made.
  std::uint64_t written(std::vector<std::string> words) {
    words.push_back("--json");
    const ProgramRun run = write(words);
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return run.exit_code == 0
               ? static_cast<std::uint64_t>(parse_json(run.output, "output").find("seq")->number)
               : 0;
  }
};

using Numbers = std::vector<std::uint64_t>;

/// Sorts as the time does: "06:00:00Z" before "06:00:00.4Z".
std::string sortable(std::string time) {
  time.pop_back();
  return time.find('.') == std::string::npos ? time + "." : time;
}

}  // namespace

TEST_F(LedgerList, ShowsWhenAPassWasWeldedAndFiltersByThat) {
  const auto passes = list({"--kind", "pass"});
  ASSERT_GT(passes.size(), 20u);
  const std::string from = text(passes[passes.size() / 2], "started");
  Numbers later, earlier;
  for (const JsonNode& each : passes) {
    EXPECT_EQ(each.find("time")->string, text(each, "started"));
    EXPECT_EQ(each.find("time_of")->string, "welded");
    (sortable(text(each, "started")) >= sortable(from) ? later : earlier)
        .push_back(static_cast<std::uint64_t>(each.find("seq")->number));
  }
  EXPECT_EQ(numbers({"--kind", "pass", "--from", from}), later);
  EXPECT_EQ(numbers({"--kind", "pass", "--to", from}), earlier);
  EXPECT_EQ(numbers({"--kind", "pass", "--from-date", from.substr(0, 10)}).size(), passes.size());
  const std::string table = ledger({"list", "--kind", "pass", "--limit", "1"}).output;
  EXPECT_NE(table.find("Welded, else recorded (UTC)"), std::string::npos) << table;
  EXPECT_NE(table.find(text(passes[0], "started")), std::string::npos) << table;
  expect_refused(ledger({"list", "--from", "noon"}), "--from");
  expect_refused(ledger({"list", "--from", "2026-03-02", "--to", "2026-03-01"}), "a time after --from");
}

TEST_F(LedgerList, ShowsAndFiltersByTheTimeOfRecordingWhereItIsAskedFor) {
  const auto passes = list({"--kind", "pass", "--time", "recorded"});
  const std::string at = passes.at(0).find("t")->string;
  for (const JsonNode& each : passes) {
    EXPECT_EQ(each.find("time")->string, at);
    EXPECT_EQ(each.find("time_of")->string, "recorded");
  }
  EXPECT_EQ(numbers({"--kind", "pass", "--time", "recorded", "--from", at}).size(), passes.size());
  EXPECT_EQ(numbers({"--kind", "pass", "--time", "recorded", "--to", at}), Numbers{});
  const std::string table = ledger({"list", "--kind", "pass", "--time", "recorded", "--limit", "1"}).output;
  EXPECT_NE(table.find("Recorded (UTC)"), std::string::npos) << table;
  EXPECT_EQ(table.find("Welded"), std::string::npos) << table;
  EXPECT_NE(table.find(at), std::string::npos) << table;
  EXPECT_EQ(ledger({"list", "--time", "noon"}).exit_code, 2);
}

TEST_F(LedgerList, FiltersByTheCorrectedTime) {
  const auto passes = list({"--kind", "pass"});
  const std::uint64_t seq = static_cast<std::uint64_t>(passes[0].find("seq")->number);
  written({"correct", std::to_string(seq), "--set", "results.started=2025-01-02T03:04:05Z"});
  EXPECT_EQ(numbers({"--kind", "pass", "--to", "2025-01-02"}), Numbers{seq});
}

TEST_F(LedgerList, FindsAPassByItsCorrectedSeamAlone) {
  const JsonNode pass = list({"--kind", "pass"}).at(0);
  const std::uint64_t seq = static_cast<std::uint64_t>(pass.find("seq")->number);
  const std::string unit = text(pass, "unit_serial"), seam = text(pass, "seam");
  const auto of_seam = [&](const std::string& name) {
    return numbers({"--kind", "pass", "--unit", unit, "--seam", name});
  };
  ASSERT_EQ(of_seam(seam), Numbers{seq});
  written({"correct", std::to_string(seq), "--set", "results.seam=S99"});
  EXPECT_EQ(of_seam("S99"), Numbers{seq});
  EXPECT_EQ(of_seam(seam), Numbers{});
  const JsonNode left = json({"show", "--unit", unit});
  const auto& missing = left.find("unit")->find("missing")->elements;
  EXPECT_TRUE(std::any_of(missing.begin(), missing.end(),
                          [&](const JsonNode& each) { return each.string == seam + "/pass 1"; }));
}

TEST_F(LedgerList, KnowsUntilWhenARecordIsKept) {
  const std::uint64_t seq = numbers({"--kind", "pass"}).at(0);
  const std::string record = std::to_string(seq);
  EXPECT_EQ(list({"--kind", "pass"}).at(0).find("retain_until")->kind, JsonNode::Kind::null);
  written({"retain", record, "--until", "2036-03-31"});
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-to", "2036-03-31"}), Numbers{seq});
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-from", "2036-03-31"}), Numbers{seq});
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-to", "2036-03-30"}), Numbers{});
  EXPECT_EQ(list({"--kind", "pass"}).at(0).find("retain_until")->string, "2036-03-31");
  EXPECT_NE(ledger({"list", "--kind", "pass", "--limit", "1"}).output.find("kept until 2036-03-31"),
            std::string::npos);
  // What was written about a record is kept with it.
  const std::uint64_t correction = written({"correct", record, "--set", "results.interpass_C=121"});
  EXPECT_EQ(numbers({"--kind", "correction", "--retain-from", "2036-01-01"}), Numbers{correction});
  // The newest statement counts, and a void one doesn't.
  const std::uint64_t second = written({"retain", record, "--until", "2031-12-31"});
  EXPECT_EQ(list({"--kind", "pass"}).at(0).find("retain_until")->string, "2031-12-31");
  written({"void", std::to_string(second)});
  EXPECT_EQ(list({"--kind", "pass"}).at(0).find("retain_until")->string, "2036-03-31");
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(LedgerList, KeepsAllOfAUnitAsLongAsTheUnitOrTheRecordAsksFor) {
  const auto passes = list({"--kind", "pass"});
  const std::string unit = text(passes[0], "unit_serial"),
                    record = std::to_string(numbers({"--kind", "pass"}).at(0));
  const std::size_t of_unit = numbers({"--kind", "pass", "--unit", unit}).size();
  written({"retain", "--unit", unit, "--until", "2030-12-31"});
  written({"retain", record, "--until", "2040-12-31"});
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-to", "2030-12-31"}).size(), of_unit - 1);
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-from", "2040-12-31"}), Numbers{std::stoull(record)});
  // A pass that was another unit's isn't kept for this one.
  const std::uint64_t moved = numbers({"--kind", "pass", "--unit", unit}).at(1);
  written({"correct", std::to_string(moved), "--set", "results.unit_serial=AE-26-0199"});
  EXPECT_EQ(numbers({"--kind", "pass", "--retain-to", "2030-12-31"}).size(), of_unit - 2);
}

TEST_F(LedgerList, HoldsRecordsUntilEachHoldIsLifted) {
  const std::string unit = text(list({"--kind", "pass"}).at(0), "unit_serial");
  const Numbers of_unit = numbers({"--kind", "pass", "--unit", unit});
  EXPECT_EQ(numbers({"--held"}), Numbers{});
  const std::uint64_t first = written({"hold", "--unit", unit}),
                      second = written({"hold", std::to_string(of_unit[0])});
  EXPECT_EQ(numbers({"--kind", "pass", "--held"}), of_unit);
  const JsonNode held = list({"--kind", "pass", "--held"}).at(0);
  ASSERT_EQ(held.find("holds")->elements.size(), 2u);
  EXPECT_EQ(held.find("holds")->elements[0].number, static_cast<double>(second));
  EXPECT_EQ(held.find("holds")->elements[1].number, static_cast<double>(first));
  EXPECT_NE(ledger({"list", "--kind", "pass", "--held"}).output.find("legal hold"), std::string::npos);
  const JsonNode shown = json({"show", std::to_string(of_unit[0])});
  EXPECT_EQ(shown.find("record")->find("holds")->elements.size(), 2u);
  EXPECT_NE(
      ledger({"show", std::to_string(of_unit[1])}).output.find("legal hold: record " + std::to_string(first)),
      std::string::npos);
  written({"unhold", std::to_string(first)});
  EXPECT_EQ(numbers({"--kind", "pass", "--held"}), Numbers{of_unit[0]});
  expect_refused(write({"unhold", std::to_string(first)}), "a hold that record");
  expect_refused(write({"unhold", std::to_string(of_unit[0])}), "a legal hold (ledger hold)");
  written({"void", std::to_string(second)});
  EXPECT_EQ(numbers({"--kind", "pass", "--held"}), Numbers{});
  expect_refused(write({"unhold", std::to_string(second)}), "a void record");
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
  const std::string command =
      "python3 " + source_path("/reference/verify_log.py ") + store_file() + " > " + path("said");
  EXPECT_EQ(std::system(command.c_str()), 0) << bytes_of(path("said"));
}

TEST_F(LedgerList, RefusesWhatCanNotBeKeptOrHeld) {
  const std::size_t records = numbers({}).size();
  expect_refused(write({"retain", "2", "--until", "next year"}), "--until");
  expect_refused(write({"retain", "--until", "2036-01-01"}), "neither a record nor --unit");
  expect_refused(write({"retain", "2", "--unit", "AE-26-0101", "--until", "2036-01-01"}),
                 "a record and --unit");
  expect_refused(write({"retain", "--unit", "nobody's", "--until", "2036-01-01"}),
                 "a unit that the store has records of");
  expect_refused(write({"retain", "999999", "--until", "2036-01-01"}), "none of that number");
  expect_refused(write({"hold"}), "neither a record nor --unit");
  expect_refused(ledger({"hold", "2"}), "--who");
  expect_refused(ledger({"list", "--retain-to", "soon"}), "--retain-to");
  EXPECT_EQ(numbers({}).size(), records);
}

TEST_F(LedgerList, RecordAndCertificateOfAUnitSayHowLongItIsKeptAndWhatHoldsIt) {
  const std::string unit = text(list({"--kind", "pass"}).at(0), "unit_serial");
  const auto says = [&](const std::string& until, const std::string& holds) {
    for (const char* certificate : {"", "--certificate"}) {
      std::vector<std::string> words = {"report", "--store",  store_,        "--unit",
                                        unit,     "--output", path("u.html")};
      if (*certificate != '\0') words.push_back(certificate);
      const ProgramRun run = run_program(words);
      ASSERT_LE(run.exit_code, 1) << run.errors;
      const std::string page = bytes_of(path("u.html"));
      for (const auto& [item, value] : {std::pair("Kept until", until), {"Legal holds (records)", holds}}) {
        const std::size_t at = page.find(item);
        ASSERT_NE(at, std::string::npos) << item << certificate;
        EXPECT_NE(page.substr(at, 120).find(value), std::string::npos) << page.substr(at, 120);
      }
    }
  };
  says("no date is set", "none");
  written({"retain", "--unit", unit, "--until", "2031-05-04"});
  const std::uint64_t hold = written({"hold", "--unit", unit});
  says("2031-05-04", std::to_string(hold));
  written({"unhold", std::to_string(hold)});
  says("2031-05-04", "none");
}

TEST_F(LedgerList, ADaysRecordsAreThoseOfAllThatHaveItsTime) {
  written({"calibrate", "--instrument", "I-R1", "--certificate", "C-1", "--date", "2024-05-06", "--due",
           "2027-05-06"});
  for (const char* which : {"welded", "recorded"}) {
    std::set<std::string> days;
    for (const JsonNode& each : list({"--time", which})) days.insert(each.find("time")->string.substr(0, 10));
    EXPECT_GE(days.size(), which == std::string("welded") ? 3u : 1u);
    for (const std::string& day : days) {
      Numbers expected;
      for (const JsonNode& each : list({"--time", which}))
        if (each.find("time")->string.starts_with(day))
          expected.push_back(static_cast<std::uint64_t>(each.find("seq")->number));
      EXPECT_EQ(numbers({"--time", which, "--from", day, "--to", day}), expected) << which << " " << day;
    }
  }
}
