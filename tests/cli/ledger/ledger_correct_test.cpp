// Corrections: only valid values of a member, derived members are recomputed, and old values stay visible.
#include <cmath>
#include <set>

#include "base/csv/csv.hpp"
#include "cli/ledger/ledger_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Correction : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_LE(audit_demo().exit_code, 1);
    const JsonNode list = json({"list", "--kind", "pass", "--verdict", "pass", "--limit", "1"});
    const JsonNode& record = list.find("records")->elements.at(0);
    seq_ = std::to_string(static_cast<int>(record.find("seq")->number));
    before_ = *record.find("results");
  }
  ProgramRun correct(const std::string& seq, std::vector<std::string> settings) {
    std::vector<std::string> words = {"correct", seq};
    for (const std::string& each : settings) words.insert(words.end(), {"--set", each});
    return write(words);
  }
  std::size_t count() { return json({"list"}).find("records")->elements.size(); }
  /// Results of the record by what holds now.
  JsonNode now(const std::string& seq) {
    const JsonNode list = json({"list"});
    for (const JsonNode& each : list.find("records")->elements)
      if (each.find("seq")->number == std::stod(seq)) return *each.find("results");
    ADD_FAILURE() << "no record " << seq;
    return {};
  }
  CsvTable table(const std::string& name, const std::string& unit) {
    const ProgramRun run = run_program(
        {"report", "--store", store_, "--unit", unit, "--table", name, "--output", path("table.csv")});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return read_csv(path("table.csv"));
  }
  double number(const JsonNode& results, const char* key) { return results.find(key)->number; }

  std::string seq_;
  JsonNode before_;
};

}  // namespace

TEST_F(Correction, TakesOnlyValuesOfTheMembersTypeUnitAndRange) {
  const std::size_t records = count();
  const std::pair<const char*, const char*> bad[] = {
      {"results.energy_J=-5", "a number (J) from 0 to"},
      {"results.energy_J=1e999", "a number (J) from 0 to"},
      {"results.length_mm=long", "a number (mm) from 0 to"},
      {"results.length_mm=\"455\"", "a number (mm) from 0 to"},
      {"results.length_mm=455 mm", "a number (mm) from 0 to"},
      {"results.interpass_C=5000", "a number (C) from -100 to 1500"},
      {"results.mean_current_A=true", "a number (A) from 0 to"},
      {"results.arc_time_s=null", "a number (s) from 0 to"},
      {"results.pass=1.5", "a whole number from 1 to"},
      {"results.pass=0", "a whole number from 1 to"},
      {"results.seam=", "results.seam: found nothing"},
      {"results.seam=  ", "a blank text"},
      {"results.unit_serial=\xff", "bytes that aren't UTF-8"},
      {"results.started=yesterday", "a UTC time such as"},
      {"results.energy_method=D", "one of A, B, C"},
      {"results.steady.current_A=-1", "a number (A) from 0 to"},
      {"results.nothing=1", "expected one of results.unit_serial"},
      {"results.samples=10", "expected one of results.unit_serial"},
      {"kind=note", "expected one of results.unit_serial"},
      {"results.verdict=banana", "which follows from others"},
      {"results.verdict=pass", "what was measured and the schedule's limits"},
      {"results.arc_energy_kJ_mm=1", "derived from: energy_J and length_mm"},
      {"results.heat_input_kJ_mm=1", "derived from: energy_J, length_mm and the schedule's process"},
      {"results.U_heat_input_kJ_mm=0", "derived from: heat_input_kJ_mm"},
      {"results.cooling_time_s=9", "derived from: heat_input_kJ_mm, the plate and the preheat"},
      {"results.travel_speed_mm_s=7", "derived from: length_mm and arc_time_s"},
      {"results.mean_power_W=7", "derived from: energy_J and arc_time_s"},
      {"results.product_power_W=7", "derived from: mean_current_A and mean_voltage_V"}};
  for (const auto& [setting, said] : bad) {
    SCOPED_TRACE(setting);
    expect_refused(correct(seq_, {setting}), said);
  }
  expect_refused(correct(seq_, {"results.length_mm=455", "results.energy_J=-5"}), "a number (J)");
  expect_refused(correct(seq_, {"results.length_mm=455", "results.length_mm=456"}), "twice");
  EXPECT_EQ(count(), records) << "nothing is stored of what was refused";
}

TEST_F(Correction, OfOtherKindsIsRefused) {
  for (const char* kind : {"ingest", "schedule", "nonconformance"}) {
    const std::string seq = std::to_string(first_of_kind(kind));
    expect_refused(correct(seq, {"results.place=here"}), "a pass, a manual seam or a calibration");
  }
  ASSERT_EQ(write({"calibrate", "--instrument", "R1-current", "--certificate", "C-1", "--date", "2026-01-01",
                   "--due", "2027-01-01"})
                .exit_code,
            0);
  const std::string calibration = std::to_string(first_of_kind("calibration"));
  expect_refused(correct(calibration, {"results.due=2025-12-31"}), "a date after it");
  expect_refused(correct(calibration, {"results.due=soon"}), "a date such as");
  EXPECT_EQ(correct(calibration, {"results.due=2026-12-31"}).exit_code, 0);
}

TEST_F(Correction, RecomputesWhatFollowsFromIt) {
  const double length = number(before_, "length_mm"), heat = number(before_, "heat_input_kJ_mm");
  ASSERT_EQ(correct(seq_, {"results.length_mm=" + std::to_string(length / 2)}).exit_code, 0);
  const JsonNode after = now(seq_);
  const double half = number(after, "length_mm");
  EXPECT_NEAR(half, length / 2, 1e-5);
  // E = W/L, Q = k E: half the length, twice the heat.
  EXPECT_NEAR(number(after, "arc_energy_kJ_mm"), number(before_, "energy_J") / 1000 / half, 1e-9);
  EXPECT_NEAR(number(after, "heat_input_kJ_mm") / heat, length / half, 1e-9);
  EXPECT_NEAR(number(after, "U_heat_input_kJ_mm") / number(after, "heat_input_kJ_mm"),
              number(before_, "U_heat_input_kJ_mm") / heat, 1e-9);
  EXPECT_NEAR(number(after, "travel_speed_mm_s"), half / number(after, "arc_time_s"), 1e-9);
  // t8/5 is proportional to Q in three-dimensional and to its square in two-dimensional heat flow.
  const double ratio = number(after, "cooling_time_s") / number(before_, "cooling_time_s"),
               twice = length / half;
  EXPECT_GE(ratio, twice * (1 - 1e-9));
  EXPECT_LE(ratio, twice * twice * (1 + 1e-9));
  EXPECT_EQ(after.find("verdict")->string, "undecided") << "a pass on another length is to be judged again";
  // A second one of the same member continues from the first one, and back again all is as it was.
  ASSERT_EQ(correct(seq_, {"results.length_mm=" + std::to_string(length)}).exit_code, 0);
  EXPECT_NEAR(number(now(seq_), "heat_input_kJ_mm"), heat, 1e-6 * heat);
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(Correction, NeverTurnsAFailIntoAPass) {
  const JsonNode list = json({"list", "--kind", "pass", "--verdict", "fail"});
  const JsonNode& record = list.find("records")->elements.at(0);
  const std::string seq = std::to_string(static_cast<int>(record.find("seq")->number));
  ASSERT_EQ(correct(seq, {"results.steady.current_A=280"}).exit_code, 0);
  EXPECT_EQ(now(seq).find("verdict")->string, "fail");
  EXPECT_EQ(json({"nonconformance", "--open"}).find("nonconformances")->elements.size(), 1u);
}

TEST_F(Correction, IsReportedWithOldAndNewValueWhoWhenAndWhy) {
  const std::string unit = before_.find("unit_serial")->string;
  ASSERT_EQ(correct(seq_, {"results.interpass_C=121"}).exit_code, 0);
  ASSERT_EQ(correct(seq_, {"results.energy_J=50000"}).exit_code, 0);
  const CsvTable changes = table("changes", unit);
  const auto value = [&](std::size_t row, const char* column) {
    return changes.rows.at(row).fields[changes.require(column)];
  };
  ASSERT_GE(changes.rows.size(), 4u);
  EXPECT_EQ(value(0, "member"), "interpass_C");
  EXPECT_EQ(std::stod(value(0, "was")), number(before_, "interpass_C"));
  EXPECT_EQ(value(0, "is"), "121");
  EXPECT_EQ(value(0, "who"), "bea");
  EXPECT_EQ(value(0, "why"), "a reason");
  EXPECT_EQ(value(0, "time").size(), 20u);
  bool recomputed = false;
  for (std::size_t row = 0; row < changes.rows.size(); ++row)
    if (value(row, "member") == "heat_input_kJ_mm (recomputed)") {
      recomputed = true;
      EXPECT_NEAR(std::stod(value(row, "was")), number(before_, "heat_input_kJ_mm"), 1e-12);
      EXPECT_NEAR(std::stod(value(row, "is")), number(now(seq_), "heat_input_kJ_mm"), 1e-12);
    }
  EXPECT_TRUE(recomputed);
  ASSERT_EQ(run_program({"report", "--store", store_, "--unit", unit, "--output", path("u.html")}).exit_code,
            0);
  const std::string page = bytes_of(path("u.html"));
  for (const char* part :
       {"<th class=\"w\">Was</th>", "interpass_C", "heat_input_kJ_mm (recomputed)", "bea", "a reason"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
  const std::string shown = ledger({"show", seq_}).output;
  EXPECT_NE(shown.find("results.energy_J: "), std::string::npos) << shown;
  EXPECT_NE(shown.find(" -> 50000"), std::string::npos) << shown;
  EXPECT_NE(shown.find("(recomputed, was "), std::string::npos) << shown;
}

TEST_F(Correction, OfTheUnitMovesThePassAndWhatDependsOnIt) {
  const JsonNode list = json({"list", "--kind", "pass", "--verdict", "fail"});
  const JsonNode& record = list.find("records")->elements.at(0);
  const std::string seq = std::to_string(static_cast<int>(record.find("seq")->number)),
                    from = record.find("results")->find("unit_serial")->string, to = "AE-26-0199";
  const auto passes = [&](const std::string& unit) {
    const CsvTable passes_table = table("passes", unit);
    std::set<std::string> numbers;
    for (const CsvRow& row : passes_table.rows) numbers.insert(row.fields[passes_table.require("record")]);
    return numbers;
  };
  const auto open = [&](const std::string& unit) {
    return json({"nonconformance", "--open", "--unit", unit}).find("nonconformances")->elements.size();
  };
  const std::size_t had = passes(from).size();
  EXPECT_EQ(open(from), 1u);
  ASSERT_EQ(correct(seq, {"results.unit_serial=" + to}).exit_code, 0);
  EXPECT_EQ(passes(from).size(), had - 1);
  EXPECT_FALSE(passes(from).contains(seq));
  EXPECT_EQ(passes(to), std::set<std::string>{seq});
  EXPECT_EQ(open(from), 0u);
  EXPECT_EQ(open(to), 1u);
  EXPECT_EQ(json({"list", "--kind", "pass", "--unit", to}).find("records")->elements.size(), 1u);
  const JsonNode unit = json({"show", "--unit", to});
  EXPECT_EQ(unit.find("unit")->find("passes")->elements.size(), 1u);
  const JsonNode left = json({"show", "--unit", from});
  const std::string name = record.find("results")->find("seam")->string + "/pass " +
                           std::to_string(static_cast<int>(record.find("results")->find("pass")->number));
  const auto& missing = left.find("unit")->find("missing")->elements;
  EXPECT_TRUE(
      std::any_of(missing.begin(), missing.end(), [&](const JsonNode& each) { return each.string == name; }))
      << "a pass that was another unit's is missing: " << name;
  // The correction made void moves it back.
  const std::string correction = std::to_string(first_of_kind("correction"));
  ASSERT_EQ(write({"void", correction}).exit_code, 0);
  EXPECT_TRUE(passes(from).contains(seq));
  EXPECT_EQ(open(from), 1u);
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(Correction, OfAWelderKeepsTheNameOutOfTheRecord) {
  const JsonNode list = json({"list", "--kind", "manual", "--limit", "1"});
  const std::string seq =
      std::to_string(static_cast<int>(list.find("records")->elements.at(0).find("seq")->number));
  expect_refused(correct(seq, {"results.welder=" + std::string(300, 'x')}), "at most 200 bytes");
  expect_refused(correct(seq, {"results.result=banana"}), "one of pass, fail");
  ASSERT_EQ(correct(seq, {"results.welder=Cora Example"}).exit_code, 0);
  const std::string unit = now(seq).find("unit_serial")->string;
  ASSERT_EQ(ledger({"export", "--without-names", "--output", path("b.jsonl")}).exit_code, 0);
  EXPECT_EQ(bytes_of(path("b.jsonl")).find("Cora Example"), std::string::npos);
  const CsvTable manual = table("manual", unit);
  bool named = false;
  for (const CsvRow& row : manual.rows)
    named = named || row.fields[manual.require("welder")] == "Cora Example";
  EXPECT_TRUE(named);
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}
