#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <set>

#include "plan/fields/plan_file.hpp"
#include "plan_edit.hpp"
#include "random_plan.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace plan_edit;

namespace {

/// Asks an independent validator (Debian's python3-jsonschema) about all files of a folder at once.
constexpr const char* validator =
    "import json, os, sys, jsonschema\n"
    "schema = json.load(open(sys.argv[1]))\n"
    "jsonschema.Draft202012Validator.check_schema(schema)\n"
    "check = jsonschema.Draft202012Validator(schema)\n"
    "for name in sorted(os.listdir(sys.argv[2])):\n"
    "    plan = json.load(open(os.path.join(sys.argv[2], name), encoding=\"utf-8\"))\n"
    "    print(name, \"valid\" if check.is_valid(plan) else \"refused\")\n";

class SchemaAndReader : public testing::Test {
 protected:
  void SetUp() override { std::filesystem::create_directories(folder_); }
  void TearDown() override { std::filesystem::remove_all(folder_); }

  void put(const std::string& name, const std::string& text) const { std::ofstream(folder_ / name) << text; }

  /// Names of the files that the schema refuses, "count valid" beside.
  std::pair<std::set<std::string>, int> ask() const {
    const std::string schema = source_path("/reference/weldplan.schema.json");
    const std::string command =
        "/usr/bin/python3 -c '" + std::string(validator) + "' '" + schema + "' '" + folder_.string() + "'";
    std::set<std::string> refused;
    int valid = 0;
    FILE* pipe = popen(command.c_str(), "r");
    std::array<char, 300> line;
    while (std::fgets(line.data(), line.size(), pipe)) {
      const std::string text(line.data());
      const std::size_t blank = text.rfind(' ');
      if (text.substr(blank + 1) == "refused\n") refused.insert(text.substr(0, blank));
      if (text.substr(blank + 1) == "valid\n") ++valid;
    }
    EXPECT_EQ(pclose(pipe), 0) << "python3-jsonschema is needed";
    return {refused, valid};
  }

 private:
  const std::filesystem::path folder_ =
      std::filesystem::path(testing::TempDir()) / ("seamtakt-schema-" + std::to_string(getpid()));
};

}  // namespace

TEST_F(SchemaAndReader, EveryPlanThatTheReaderTakesIsValid) {
  int count = 0;
  for (const char* name :
       {"plan-v1-every-key.weldplan.json", "plan-v1-smallest.weldplan.json",
        "plan-v1-free-keys.weldplan.json", "plan-v1-free-keys.saved.json", "broken/base.weldplan.json"})
    put(std::to_string(count++), test_data(name));
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const std::string plan = random_plan(seed);
    ASSERT_NO_THROW(parse_plan(plan, "random"));
    put("random-" + std::to_string(seed), plan);
    ++count;
  }
  const auto [refused, valid] = ask();
  EXPECT_EQ(refused, std::set<std::string>());
  EXPECT_EQ(valid, count);
}

TEST_F(SchemaAndReader, WhatASchemaCanStateIsRefusedByBothAndTheRestByTheReaderAlone) {
  const std::string base = test_data("broken/base.weldplan.json");
  std::set<std::string> expected;
  for (const BrokenPlan& plan : broken_plans()) {
    std::string file = plan.name;
    for (char& c : file)
      if (c == '/') c = '-';
    put(file, changed(base, plan.change, plan.pointer, plan.text));
    if (plan.schema_refuses) expected.insert(file);
  }
  EXPECT_GT(expected.size(), 90u);
  EXPECT_EQ(ask().first, expected);
}
