#include <gtest/gtest.h>

#include <cstdlib>

#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace {

const std::string root = source_path();
const std::string schema_file = root + "/reference/weldplan.schema.json";

/// What an independent validator (Debian's python3-jsonschema) says of a plan: 0 valid, 1 not.
int validate(const std::string& plan) {
  const std::string program =
      "import json,sys,jsonschema\n"
      "schema=json.load(open(sys.argv[1]))\n"
      "jsonschema.Draft202012Validator.check_schema(schema)\n"
      "sys.exit(0 if jsonschema.Draft202012Validator(schema).is_valid(json.load(open(sys.argv[2]))) else "
      "1)\n";
  const int status =
      std::system(("/usr/bin/python3 -c '" + program + "' '" + schema_file + "' '" + plan + "'").c_str());
  return WEXITSTATUS(status);
}

std::string saved(const std::string& name, const std::string& text) {
  const std::string path = testing::TempDir() + name;
  save_atomically(path, text);
  return path;
}

std::string sample_with(const std::string& from, const std::string& to) {
  std::string text = read_file(root + "/tests/data/two-schedules.weldplan.json", 1u << 20);
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST(PlanSchema, CommittedFileIsWhatTheFieldTablesGive) {
  if (std::getenv("SEAMTAKT_UPDATE_SCHEMA")) save_atomically(schema_file, plan_schema());
  EXPECT_EQ(read_file(schema_file, 1u << 22), plan_schema())
      << "run this test with SEAMTAKT_UPDATE_SCHEMA=1 to write reference/weldplan.schema.json anew";
}

TEST(PlanSchema, PlansThatTheReaderTakesAreValid) {
  EXPECT_EQ(validate(root + "/reference/demo/ground-equipment.weldplan.json"), 0);
  EXPECT_EQ(validate(root + "/tests/data/two-schedules.weldplan.json"), 0);
}

TEST(PlanSchema, KindsOfErrorThatASchemaCanStateAreRefusedByBoth) {
  const std::pair<const char*, const char*> changes[] = {
      {"\"leg_mm\": 6", "\"lge_mm\": 6"},
      {"\"leg_mm\": 6", "\"leg_mm\": \"6\""},
      {"\"joint\": \"tee\"", "\"joint\": \"elbow\""},
      {"\"travel_speed_mm_s\": 7.5", "\"travel_speed_mm_s\": 0"},
      {"\"process\": \"135\", ", ""},
      {"[10, 8]", "[10]"}};
  for (const auto& [from, to] : changes) {
    const std::string text = sample_with(from, to);
    EXPECT_ANY_THROW(parse_plan(text, "changed")) << to;
    EXPECT_EQ(validate(saved("changed.weldplan.json", text)), 1) << to;
  }
}

TEST(PlanFile, SavingGivesBackTheSameBytesFromTheSecondTimeOn) {
  for (const std::string& file : {root + "/reference/demo/ground-equipment.weldplan.json",
                                  root + "/tests/data/two-schedules.weldplan.json"}) {
    const std::string once = write_plan(load_plan(file));
    EXPECT_EQ(write_plan(parse_plan(once, "once")), once) << file;
  }
}

TEST(PlanFile, FreeKeysNotesAndKeyOrderAreKept) {
  const std::string text = sample_with(
      "\"title\"", "\"x_bench\": [1, {\"a\": 2}], \"notes\": \"as typed: 5 \\u2264 6\", \"title\"");
  const std::string written = write_plan(parse_plan(text, "sample"));
  EXPECT_NE(written.find("\"x_bench\""), std::string::npos);
  EXPECT_LT(written.find("\"x_bench\""), written.find("\"notes\""));
  EXPECT_LT(written.find("\"notes\""), written.find("\"title\""));
  EXPECT_EQ(parse_plan(written, "written").notes, "as typed: 5 \xE2\x89\xA4 6");
}

TEST(PlanFile, NumbersComeBackToTheLastBit) {
  for (const char* typed : {"7.1", "0.1", "3.3333333333333335", "1e-3", "12345.678901234567"}) {
    const Plan plan = parse_plan(
        sample_with("\"travel_speed_mm_s\": 7.5", "\"travel_speed_mm_s\": " + std::string(typed)), "sample");
    EXPECT_EQ(plan.schedules[0].travel_speed_mm_s, std::strtod(typed, nullptr));
    EXPECT_EQ(parse_plan(write_plan(plan), "again").schedules[0].travel_speed_mm_s,
              plan.schedules[0].travel_speed_mm_s);
  }
}
