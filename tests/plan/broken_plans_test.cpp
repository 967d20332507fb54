#include <gtest/gtest.h>

#include <chrono>
#include <random>
#include <sstream>

#include "base/error.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan_edit.hpp"
#include "support/sanitized.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace plan_edit;

namespace {

const std::string base = test_data("broken/base.weldplan.json");

std::string refusal(const std::string& text) {
  try {
    parse_plan(text, "p.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST(BrokenPlans, BaseOfTheTableIsAValidPlan) {
  EXPECT_EQ(refusal(base), "accepted");
}

TEST(BrokenPlans, EachIsRefusedAtItsLineAndPointerWithWhatWasFoundAndExpected) {
  const auto plans = broken_plans();
  EXPECT_GE(plans.size(), 130u);
  for (const BrokenPlan& plan : plans) {
    std::string expected =
        "p.json:" + plan.line + ":" + plan.column + ": found " + plan.found + ", expected " + plan.expected;
    if (!plan.at.empty()) expected += " (at " + plan.at + ")";
    EXPECT_EQ(refusal(changed(base, plan.change, plan.pointer, plan.text)), expected) << plan.name;
  }
}

TEST(BrokenPlans, FilesThatAreNoJsonAreRefusedWhereTheyBreak) {
  std::istringstream table(test_data("broken/files.tsv"));
  std::string line;
  std::getline(table, line);
  int count = 0;
  while (std::getline(table, line)) {
    const auto fields = tab_fields(line);
    ASSERT_EQ(fields.size(), 3u) << line;
    const std::string path = source_path("/tests/data/broken/") + fields[0];
    ++count;
    try {
      load_plan(path);
      ADD_FAILURE() << fields[0] << " was accepted";
    } catch (const InputError& error) {
      EXPECT_EQ(error.where(), path + fields[1]) << error.what();
      EXPECT_NE(std::string(error.what()).find(fields[2]), std::string::npos) << error.what();
    }
  }
  EXPECT_GE(count, 18);
}

TEST(BrokenPlans, DirectoryAndAbsentFileAreRefusedByName) {
  EXPECT_THROW(load_plan(source_path("/tests")), InputError);
  EXPECT_THROW(load_plan("/nowhere/at/all.weldplan.json"), InputError);
}

TEST(BrokenPlans, EveryCutOfAPlanIsRefused) {
  for (std::size_t size = 0; size + 2 < base.size(); size += 7)
    EXPECT_NE(refusal(base.substr(0, size)), "accepted") << size;
}

TEST(BrokenPlans, RandomBytesNeverDoMoreThanBeRefused) {
  std::mt19937 random(20260112);
  int refused = 0, accepted = 0;
  for (int i = 0; i < 3000; ++i) {
    std::string text = base;
    for (int changes = 1 + static_cast<int>(random() % 3); changes > 0; --changes) {
      const std::size_t at = random() % text.size();
      switch (random() % 3) {
        case 0:
          text[at] = static_cast<char>(random());
          break;
        case 1:
          text.erase(at, 1 + random() % 20);
          break;
        default:
          text.insert(at, text.substr(random() % text.size(), random() % 40));
      }
    }
    // Anything but InputError ends the test.
    ++(refusal(text) == "accepted" ? accepted : refused);
  }
  // Most hits are seen; those within a text or a number may leave another legal plan.
  EXPECT_GT(refused, 1500);
  EXPECT_GT(accepted, 0);
}

TEST(BrokenPlans, BombsAreRefusedQuickly) {
  const auto begin = std::chrono::steady_clock::now();
  EXPECT_NE(refusal(R"({"format": "weldplan", "version": 1, "x_a": )" + std::string(1000000, '[')),
            "accepted");
  std::string seams(R"({"format": "weldplan", "version": 1, "weldments": [{"id": "A", "seams": [{})");
  for (int i = 0; i < 1000000; ++i) seams += ",{}";
  EXPECT_NE(refusal(seams + "]}]}").find("1000000"), std::string::npos);
  EXPECT_NE(refusal("{\"format\": \"weldplan\", \"version\": 1, \"notes\": \"" + std::string(70000000, 'a') +
                    "\"}"),
            "accepted");
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(30));
}

TEST(BrokenPlans, AChainOfTwentyThousandSeamsIsNoCircleUntilItIsClosed) {
  std::string seams;
  const int count = test::rounds(20000, 3000);
  const auto seam = [](int i, int after) {
    const std::string prefix = i == 0 ? "{\"id\": \"S" : ", {\"id\": \"S";
    return prefix + std::to_string(i) +
           "\", \"joint\": \"tee\", \"thickness_mm\": [5, 5], \"base_metals\": [\"S355\", \"S355\"], " +
           "\"leg_mm\": 4, \"schedules\": [], \"path_mm\": [[0, 0, 0], [9, 0, 0]], \"after\": [\"S" +
           std::to_string(after) + "\"]}";
  };
  for (int i = 0; i < count - 1; ++i) seams += seam(i, i + 1);
  const std::string last = seam(count - 1, 0), open = last.substr(0, last.find(", \"after\"")) + "}";
  const std::string no_zones = changed(base, "set", "/cell/zones", "[]");
  EXPECT_EQ(refusal(changed(no_zones, "set", "/weldments/0/seams", "[" + seams + open + "]")), "accepted");
  const std::string circle =
      refusal(changed(no_zones, "set", "/weldments/0/seams", "[" + seams + last + "]"));
  EXPECT_NE(circle.find("S0 -> S1 -> S2"), std::string::npos) << circle;
  EXPECT_NE(circle.find("... -> S0"), std::string::npos) << circle;
}

TEST(CheckPlan, SaysOfAPlanInMemoryWhatTheReaderSaysOfAFile) {
  Plan plan = parse_plan(base, "base");
  plan.schedules[0].travel_speed_mm_s = 0;
  try {
    check_plan(plan, "desk");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "desk");
    EXPECT_EQ(error.pointer(), "/schedules/0/travel_speed_mm_s");
  }
  plan = parse_plan(base, "base");
  plan.weldments[0].seams[0].schedules.push_back("F66");
  EXPECT_THROW(check_plan(plan, "desk"), InputError);
  plan = parse_plan(base, "base");
  plan.weldments[0].seams[0].throat_mm = 4;
  EXPECT_THROW(check_plan(plan, "desk"), InputError);
  plan = parse_plan(base, "base");
  plan.base_metals[0].id.clear();
  EXPECT_THROW(check_plan(plan, "desk"), InputError);
  EXPECT_NO_THROW(check_plan(parse_plan(base, "base"), "desk"));
}
