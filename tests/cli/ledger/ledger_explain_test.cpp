// How a logged number of a stored pass comes about: k, formulas, rows, instruments in force, uncertainty.
#include <cmath>

#include "base/csv/csv.hpp"
#include "cli/ledger/ledger_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Explained : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_LE(audit_demo().exit_code, 1);
    const JsonNode list = json({"list", "--kind", "pass", "--verdict", "pass", "--limit", "1"});
    record_ = list.find("records")->elements.at(0);
    seq_ = std::to_string(static_cast<int>(record_.find("seq")->number));
  }
  JsonNode explained(const std::string& key) {
    return *json({"show", seq_, "--explain", key}).find("explanation");
  }
  double result(const char* key) const { return record_.find("results")->find(key)->number; }
  std::string text(const char* key) const { return record_.find("results")->find(key)->string; }
  static double symbol(const JsonNode& formula, const std::string& name) {
    for (const JsonNode& each : formula.find("symbols")->elements)
      if (each.find("symbol")->string == name) return each.find("value")->number;
    ADD_FAILURE() << "no symbol " << name;
    return 0;
  }

  JsonNode record_;
  std::string seq_;
};

}  // namespace

TEST_F(Explained, AHeatInputByItsEfficiencyFormulasRowsAndInstruments) {
  const JsonNode said = explained("heat_input_kJ_mm");
  EXPECT_EQ(said.find("value")->number, result("heat_input_kJ_mm"));
  EXPECT_EQ(said.find("unit")->string, "kJ/mm");
  const auto& formulas = said.find("formulas")->elements;
  ASSERT_EQ(formulas.size(), 3u);
  EXPECT_EQ(formulas[0].find("formula")->string, "Q = k*E");
  EXPECT_EQ(symbol(formulas[0], "k"), 0.8) << "EN 1011-1, Table 1, process 135";
  EXPECT_EQ(symbol(formulas[0], "E"), result("arc_energy_kJ_mm"));
  EXPECT_NEAR(symbol(formulas[0], "k") * symbol(formulas[0], "E"), result("heat_input_kJ_mm"), 1e-12);
  EXPECT_EQ(formulas[1].find("formula")->string, "E = W/(1000*L)");
  EXPECT_EQ(symbol(formulas[1], "W"), result("energy_J"));
  EXPECT_EQ(symbol(formulas[1], "L"), result("length_mm"));
  EXPECT_EQ(formulas[2].find("key")->string, "energy_J");
  EXPECT_EQ(said.find("thermal_efficiency")->number, 0.8);
  EXPECT_EQ(said.find("energy_method")->string, "B");
  EXPECT_EQ(said.find("power_method")->string, "mean product");
  EXPECT_EQ(said.find("schedule")->string, text("schedule"));
  const JsonNode& rows = *said.find("rows");
  EXPECT_EQ(rows.find("log")->string, text("source"));
  EXPECT_EQ(rows.find("first_line")->number, result("source_line_first"));
  EXPECT_EQ(rows.find("last_line")->number, result("source_line_last"));
  EXPECT_EQ(rows.find("samples")->number, result("samples"));
  const JsonNode ingest = json({"list", "--kind", "ingest"}).find("records")->elements.at(0);
  EXPECT_EQ(rows.find("sha256")->string, ingest.find("raw")->elements.at(0).find("sha256")->string);
  const auto &instruments = said.find("instruments")->elements, &kept = record_.find("instruments")->elements;
  ASSERT_EQ(instruments.size(), kept.size());
  ASSERT_GT(instruments.size(), 0u);
  for (std::size_t i = 0; i < kept.size(); ++i)
    for (const char* key : {"id", "quantity", "certificate", "due"})
      EXPECT_EQ(instruments[i].find(key)->string, kept[i].find(key)->string);
}

TEST_F(Explained, AnUncertaintyByTheBudgetOfItsInstruments) {
  const JsonNode said = explained("U_heat_input_kJ_mm");
  const auto& budget = said.find("uncertainty")->elements;
  ASSERT_EQ(budget.size(), 3u);
  double variance = 0, share = 0;
  for (const JsonNode& each : budget) {
    variance += std::pow(each.find("u_kJ_mm")->number, 2);
    share += each.find("share_pct")->number;
    EXPECT_GT(each.find("u_pct")->number, 0);
  }
  EXPECT_NEAR(2 * std::sqrt(variance), result("U_heat_input_kJ_mm"), 1e-9 * result("U_heat_input_kJ_mm"));
  EXPECT_NEAR(share, 100, 1e-9);
  EXPECT_EQ(said.find("formulas")->elements.at(0).find("key")->string, "U_heat_input_kJ_mm");
  const JsonNode* const of_inputs = said.find("formulas")->elements.at(0).find("budget");
  ASSERT_NE(of_inputs, nullptr);
  EXPECT_EQ(of_inputs->find("inputs")->elements.size(), 3u);
  EXPECT_NEAR(of_inputs->find("U")->number, result("U_heat_input_kJ_mm"),
              1e-9 * result("U_heat_input_kJ_mm"));
  EXPECT_EQ(explained("heat_input_kJ_mm").find("uncertainty")->elements.size(), 0u);
}

TEST_F(Explained, ACoolingTimeByItsPlateAndASpeedByItsLength) {
  const JsonNode cooling = explained("cooling_time_s");
  EXPECT_EQ(cooling.find("formulas")->elements.at(0).find("value")->number, result("cooling_time_s"));
  EXPECT_EQ(symbol(cooling.find("formulas")->elements.at(0), "Q"), result("heat_input_kJ_mm"));
  const JsonNode speed = explained("travel_speed_mm_s");
  EXPECT_NEAR(symbol(speed.find("formulas")->elements.at(0), "L") /
                  symbol(speed.find("formulas")->elements.at(0), "t"),
              result("travel_speed_mm_s"), 1e-9);
  EXPECT_EQ(speed.find("length_source")->string, text("length_source"));
  const JsonNode current = explained("steady.current_A");
  EXPECT_EQ(current.find("value")->number,
            record_.find("results")->find("steady")->find("current_A")->number);
  EXPECT_EQ(current.find("formulas")->elements.size(), 0u);
}

TEST_F(Explained, ForPeopleInSentences) {
  const std::string said = ledger({"show", seq_, "--explain", "heat_input_kJ_mm"}).output;
  for (const std::string& part :
       {std::string("heat_input_kJ_mm: "), std::string("Q = k*E"), std::string("E = W/(1000*L)"),
        std::string("k = 0.8 of EN 1011-1"), std::string("power by: mean product"),
        "of " + text("source") + ", ", std::string("SHA-256 of the log: "), std::string("certificate ")})
    EXPECT_NE(said.find(part), std::string::npos) << part << "\n" << said;
  const std::string german =
      ledger({"show", seq_, "--explain", "heat_input_kJ_mm", "--language", "de"}).output;
  EXPECT_NE(german.find("Mittel der Produkte"), std::string::npos) << german;
  EXPECT_NE(ledger({"show", seq_, "--explain", "mean_current_A"}).output.find("mean_current_A: "),
            std::string::npos);
}

TEST_F(Explained, ByWhatHoldsAfterACorrection) {
  const double length = result("length_mm");
  ASSERT_EQ(write({"correct", seq_, "--set", "results.length_mm=" + std::to_string(length / 2)}).exit_code,
            0);
  const JsonNode said = explained("heat_input_kJ_mm");
  EXPECT_NEAR(said.find("value")->number, 2 * result("heat_input_kJ_mm"), 1e-5);
  EXPECT_NEAR(symbol(said.find("formulas")->elements.at(1), "L"), length / 2, 1e-5);
  ASSERT_EQ(said.find("corrected_by")->elements.size(), 1u);
  EXPECT_EQ(said.find("corrected_by")->elements[0].number, static_cast<double>(first_of_kind("correction")));
  expect_refused(write({"correct", seq_, "--set", "results.thermal_efficiency=1"}),
                 "which follows from others");
  expect_refused(write({"correct", seq_, "--set", "results.u_current_pct=1"}), "which follows from others");
}

TEST_F(Explained, RefusesWhatIsNoNumberOfAPass) {
  for (const char* key : {"banana", "seam", "steady.banana", "verdict"})
    expect_refused(ledger({"show", seq_, "--explain", key}), "expected one of ");
  expect_refused(ledger({"show", std::to_string(first_of_kind("ingest")), "--explain", "energy_J"}),
                 "expected a pass");
}

TEST_F(Explained, TheRecordAndItsReportHoldEfficiencyAndMethod) {
  EXPECT_EQ(result("thermal_efficiency"), 0.8);
  EXPECT_EQ(text("power_method"), "mean product");
  const std::string unit = text("unit_serial");
  ASSERT_EQ(run_program({"report", "--store", store_, "--unit", unit, "--table", "methods", "--output",
                         path("methods.csv")})
                .exit_code,
            0);
  const CsvTable methods = read_csv(path("methods.csv"));
  const std::size_t passes =
      json({"list", "--kind", "pass", "--unit", unit}).find("records")->elements.size();
  ASSERT_EQ(methods.rows.size(), passes);
  for (const CsvRow& row : methods.rows) {
    EXPECT_EQ(row.fields[methods.require("thermal_efficiency")], "0.8");
    EXPECT_EQ(row.fields[methods.require("energy_method")], "B");
    EXPECT_EQ(row.fields[methods.require("power_method")], "mean product");
  }
  ASSERT_EQ(
      run_program({"report", "--store", store_, "--unit", unit, "--output", path("unit.html")}).exit_code, 0);
  const std::string page = bytes_of(path("unit.html"));
  for (const char* part : {"How the heat input came about", "Thermal efficiency", "mean product"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
}
