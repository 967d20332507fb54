#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>

#include "base/csv/csv.hpp"
#include "formula/quantities/quantity.hpp"
#include "formula/wire/transfer.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// "Suite.name" of every test in the folders with identities.
std::set<std::string> tests_of_formulas() {
  const std::regex head(R"(^(?:TEST|TEST_P|TEST_F|RC_GTEST_PROP)\(([A-Za-z]+),\s*([A-Za-z0-9_]+))");
  std::set<std::string> names;
  for (const char* room : {"formula", "properties"})
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(source_path("/tests/")) + room)) {
      if (entry.path().extension() != ".cpp") continue;
      std::ifstream file(entry.path());
      const std::string text((std::istreambuf_iterator<char>(file)), {});
      // A name may be on the line below its suite.
      for (const std::string begin : {"\nTEST", "\nRC_GTEST_PROP"})
        for (std::size_t at = text.find(begin); at != std::string::npos; at = text.find(begin, at + 1)) {
          const std::string declaration = text.substr(at + 1, 300);
          std::smatch found;
          if (std::regex_search(declaration, found, head))
            names.insert(found[1].str() + "." + found[2].str());
        }
    }
  return names;
}

TEST(Registry, HasAnIdentityForEveryFormula) {
  const CsvTable table = read_csv(source_path("/tests/properties/identities.csv"));
  const std::set<std::string> tests = tests_of_formulas();
  ASSERT_GT(tests.size(), 100u);
  std::set<std::string> known, with_identity;
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes) known.insert(note->id);
  for (const CsvRow& row : table.rows) {
    const std::string formula = row.fields[table.require("formula")],
                      test = row.fields[table.require("test")];
    EXPECT_TRUE(known.contains(formula)) << table.file << ":" << row.line << " names no formula: " << formula;
    EXPECT_TRUE(tests.contains(test)) << table.file << ":" << row.line << " names no test: " << test;
    with_identity.insert(formula);
  }
  for (const std::string& formula : known) EXPECT_TRUE(with_identity.contains(formula)) << formula;
}

RC_GTEST_PROP(TransitionCurrent, LiesBetweenTheTablesNeighboursAndRisesWithTheDiameter, ()) {
  const double diameter = 0.76 + 0.84 * *rc::gen::inRange(0, 10000) / 10000;
  const auto gas = shielding_gas_of("98Ar 2O2");
  const auto transition = transition_current<double>("mild-steel", diameter, *gas);
  RC_ASSERT(transition.status == TransitionStatus::published);
  RC_ASSERT(*transition.current_A >= 150);
  RC_ASSERT(*transition.current_A <= 275);
  const auto thicker = transition_current<double>("mild-steel", std::min(1.6, diameter + 0.05), *gas);
  RC_ASSERT(*thicker.current_A >= *transition.current_A);
}

}  // namespace
}  // namespace seamtakt
