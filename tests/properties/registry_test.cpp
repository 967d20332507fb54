// Walks the list of quantities: nothing in it may lack what makes a number trustworthy.
#include <gtest/gtest.h>

#include <map>

#include "properties/every_quantity.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

const std::filesystem::path root = source_path();

std::string text_of(const char* text) {
  return text ? text : "";
}

bool has_result(const Quantity& quantity, std::string_view key) {
  for (const auto& result : quantity.results)
    if (key == result.key) return true;
  return false;
}

TEST(Registry, ListsEveryQuantityOnceByName) {
  std::set<std::string> names;
  for (const Quantity* quantity : quantities()) {
    EXPECT_TRUE(names.insert(quantity->name).second) << quantity->name;
    EXPECT_EQ(find_quantity(quantity->name), quantity);
    EXPECT_FALSE(text_of(quantity->summary).empty()) << quantity->name;
  }
  const std::set<std::string> promised = {
      "heat-input",        "waveform",   "melting-rate", "deposition",   "fillet",
      "fillet-minimum",    "groove",     "penetration",  "transfer",     "cooling-time",
      "carbon-equivalent", "preheat",    "haz-hardness", "temperature",  "haz-width",
      "interpass",         "distortion", "tolerance",    "imperfection", "fillet-resistance",
      "qualification",     "guard-band", "duty-cycle",   "move-time",    "takt"};
  EXPECT_EQ(names, promised);
  EXPECT_EQ(find_quantity("heat"), nullptr);
}

TEST(Registry, DescribesOptionsAndResults) {
  for (const Quantity* quantity : quantities()) {
    SCOPED_TRACE(quantity->name);
    std::set<std::string> names;
    for (const auto& option : quantity->options) {
      EXPECT_TRUE(names.insert(option.name).second) << option.name;
      EXPECT_FALSE(text_of(option.help).empty()) << option.name;
      EXPECT_FALSE(option.name[0] == 'u' && option.name[1] == '-')
          << "reads as an uncertainty: " << option.name;
    }
    EXPECT_FALSE(quantity->results.empty());
    for (const auto& result : quantity->results) EXPECT_FALSE(text_of(result.label).empty()) << result.key;
  }
}

TEST(Registry, KnowsTheUnitOfEveryOption) {
  for (const Quantity* quantity : quantities())
    for (const auto& option : quantity->options)
      if (option.kind == OptionKind::number && *option.unit) {
        EXPECT_TRUE(find_unit(option.unit)) << quantity->name << " --" << option.name << ": " << option.unit;
      }
}

TEST(Registry, HasDefaultsThatItsOwnChecksAccept) {
  for (const Quantity* quantity : quantities())
    for (const auto& option : quantity->options) {
      if (!option.default_text) continue;
      if (option.kind == OptionKind::number) {
        EXPECT_NO_THROW(published::number_in(option.default_text, option))
            << quantity->name << " " << option.name;
      } else if (option.choices) {
        std::string choices = "|" + std::string(option.choices) + "|";
        EXPECT_NE(choices.find("|" + std::string(option.default_text) + "|"), std::string::npos)
            << option.name;
      }
    }
}

TEST(Registry, GivesEveryQuantityNotesThatNameTheirSource) {
  CsvTable sources = read_csv((root / "reference/sources.csv").string());
  std::set<std::string> keys, ids;
  for (const CsvRow& row : sources.rows) keys.insert(row.fields[sources.require("key")]);
  for (const Quantity* quantity : quantities()) {
    EXPECT_FALSE(quantity->notes.empty()) << quantity->name;
    for (const FormulaNote* note : quantity->notes) {
      SCOPED_TRACE(note->id);
      EXPECT_TRUE(has_result(*quantity, note->result)) << note->result;
      EXPECT_TRUE(keys.contains(note->source_key)) << note->source_key;
      EXPECT_FALSE(text_of(note->symbols).empty());
      EXPECT_FALSE(text_of(note->range).empty());
      EXPECT_FALSE(text_of(note->accuracy).empty());
      ids.insert(note->id);
    }
  }
  EXPECT_GT(ids.size(), quantities().size());
}

TEST(Registry, NoNoteClaimsToHaveReadWhatItsSourceSaysIsRecalled) {
  CsvTable sources = read_csv((root / "reference/sources.csv").string());
  std::map<std::string, std::string> basis_of;
  for (const CsvRow& row : sources.rows)
    basis_of[row.fields[sources.require("key")]] = row.fields[sources.require("basis")];
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes) {
      const std::string& source = basis_of[note->source_key];
      SCOPED_TRACE(std::string(note->id) + " from " + note->source_key + ", " + source);
      if (note->basis == SourceBasis::read) {
        EXPECT_TRUE(source == "read" || source == "part-read");
      } else if (note->basis == SourceBasis::part_read) {
        EXPECT_NE(source, "recalled");
      }
    }
}

TEST(Registry, CoversEveryResultWithANote) {
  // Returned as given, counted, or taken from another result; they have no formula.
  const std::set<std::string> without_formula = {"heat-input.thermal_efficiency",
                                                 "waveform.samples",
                                                 "waveform.duration_s",
                                                 "waveform.mean_current_A",
                                                 "waveform.mean_voltage_V",
                                                 "fillet.leg_2_mm",
                                                 "groove.area_mm2",
                                                 "transfer.transfer_mode",
                                                 "transfer.interpolated",
                                                 "cooling-time.regime",
                                                 "cooling-time.cooling_time_span_s",
                                                 "preheat.in_range",
                                                 "preheat.hydrogen_scale",
                                                 "guard-band.verdict"};
  for (const Quantity* quantity : quantities())
    for (const auto& result : quantity->results) {
      if (without_formula.contains(std::string(quantity->name) + "." + result.key)) continue;
      bool noted = std::any_of(quantity->notes.begin(), quantity->notes.end(), [&](const FormulaNote* note) {
        return std::string_view(note->result) == result.key;
      });
      EXPECT_TRUE(noted) << quantity->name << "." << result.key;
    }
}

TEST(Registry, HasAPublishedRowForEveryQuantity) {
  std::set<std::string> checked;
  for (const auto& row : published::rows_in(published::outside_folder())) checked.insert(row.quantity);
  for (const Quantity* quantity : quantities())
    EXPECT_TRUE(checked.contains(quantity->name)) << quantity->name;
}

/// Notes whose result a row of the folder gives a value of, by way of that note's formula.
std::set<std::string> notes_checked_in(const std::filesystem::path& folder) {
  std::set<std::string> checked;
  for (const auto& row : published::rows_in(folder)) {
    if (row.expected == published::no_value || row.expected == "null") continue;
    const Quantity& quantity = *find_quantity(row.quantity);
    auto answered = answer(quantity, published::request_of(quantity, row.inputs));
    for (const auto& explanation : answered.results.explanations)
      if (published::result_key(row) == explanation.note->result) checked.insert(explanation.note->id);
  }
  return checked;
}

TEST(Registry, ChecksEveryFormulaByAnOutsideValueOrSaysThatThereIsNone) {
  std::set<std::string> checked = notes_checked_in(published::outside_folder());
  // A row that says "no check value" is about all formulas of that result that no source prints a value of.
  std::set<std::string> said_so;
  for (const auto& row : published::rows_in(published::outside_folder()))
    if (row.expected == published::no_value) said_so.insert(row.quantity + "." + row.key);
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes)
      EXPECT_TRUE(checked.contains(note->id) ||
                  said_so.contains(std::string(quantity->name) + "." + note->result))
          << quantity->name << ": " << note->id;
}

TEST(Registry, RecalculatesEveryFormulaThatNoOutsideValueChecks) {
  std::set<std::string> checked = notes_checked_in(published::outside_folder());
  checked.merge(notes_checked_in(published::second_route_folder()));
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes)
      EXPECT_TRUE(checked.contains(note->id)) << quantity->name << ": " << note->id;
}

struct BadInput {
  std::string place, quantity, inputs, where;
};

std::vector<BadInput> bad_inputs() {
  CsvTable table = read_csv((root / "tests/properties/bad_input.csv").string());
  std::vector<BadInput> rows;
  for (const CsvRow& row : table.rows)
    rows.push_back({table.file + ":" + std::to_string(row.line), row.fields[table.require("quantity")],
                    row.fields[table.require("inputs")], row.fields[table.require("where")]});
  return rows;
}

TEST(Registry, RefusesBadInputAndNamesTheOption) {
  std::set<std::string> refused;
  for (const BadInput& bad : bad_inputs()) {
    SCOPED_TRACE(bad.place + " " + bad.quantity + " " + bad.inputs);
    const Quantity* quantity = find_quantity(bad.quantity);
    ASSERT_TRUE(quantity);
    refused.insert(bad.quantity);
    try {
      answer(*quantity, published::request_of(*quantity, bad.inputs));
      ADD_FAILURE() << "taken as good";
    } catch (const InputError& error) {
      EXPECT_EQ(error.where(), bad.where) << error.what();
      EXPECT_FALSE(error.found().english().empty());
      EXPECT_FALSE(error.expected().english().empty());
    }
  }
  for (const Quantity* quantity : quantities())
    EXPECT_TRUE(refused.contains(quantity->name)) << quantity->name;
}

}  // namespace
}  // namespace seamtakt
