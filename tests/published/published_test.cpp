// Checks against the outside: each row of this folder's tables, as a source prints it.
#include "published/row_checks.hpp"

namespace seamtakt::published {
namespace {

class PublishedTable : public testing::TestWithParam<std::filesystem::path> {};

TEST_P(PublishedTable, IsReproduced) {
  expect_reproduced(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Tables, PublishedTable, testing::ValuesIn(files_in(outside_folder())), table_name);

TEST(PublishedRows, NameASourceOfTheList) {
  expect_listed_sources(rows_in(outside_folder()));
}

TEST(PublishedRows, GiveAReasonForATolerance) {
  expect_reasons_for_tolerances(rows_in(outside_folder()));
}

TEST(PublishedRows, AskForKeysThatTheQuantityHas) {
  expect_known_keys(rows_in(outside_folder()));
}

/// What the project has computed itself belongs to tests/second_route.
TEST(PublishedRows, HoldOnlyWhatAnOutsideSourcePrints) {
  for (const Row& row : rows_in(outside_folder())) {
    if (row.expected == no_value) continue;
    EXPECT_NE(row.source, "derived") << row.place;
    for (const char* own : {"computed", "script", "worked example"})
      EXPECT_EQ(row.clause.find(own), std::string::npos) << row.place << ": " << row.clause;
  }
}

}  // namespace
}  // namespace seamtakt::published
