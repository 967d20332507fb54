#include "base/results/column.hpp"

#include <gtest/gtest.h>

namespace seamtakt {
namespace {

using namespace results;

struct Inner {
  std::optional<double> speed_mm_s;
};

struct Outer {
  std::string name, remark;
  int count = 0;
  std::uint64_t rows = 0;
  bool done = false;
  std::vector<std::string> list;
  Inner inner;
  std::array<double, 2> span{1, 2.5};
};

void write_list(JsonWriter& json, const Outer& row) {
  json.begin_array(JsonWriter::Layout::compact);
  for (const std::string& each : row.list) json.value(each);
  json.end_array();
}

bool is_done(const Outer& row) {
  return row.done;
}

constexpr Column<Outer> table[] = {
    column<Outer, &Outer::name>("name", "Name", "", 0, brief),
    text_column<Outer, &Outer::remark>("remark", "Remark"),
    column<Outer, &Outer::count>("count", "Count", "", 9, brief, "", "n"),
    column<Outer, &Outer::rows>("rows", "Rows", "", 9),
    column_where<Outer, &Outer::done>(is_done, "done", "Done"),
    json_column<Outer>("list", write_list),
    column<Outer, &Outer::inner, &Inner::speed_mm_s>("speed_mm_s", "Speed", "mm/s", 3, brief),
    column<Outer, &Outer::span>("span", "Span"),
};
constexpr std::span<const Column<Outer>> columns = table;

std::string members_json(const Outer& row) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  write_members(json, columns, row);
  json.end_object();
  return json.take();
}

std::string keys_of(const std::vector<const Column<Outer>*>& found) {
  std::string keys;
  for (const auto* each : found) keys += std::string(keys.empty() ? "" : " ") + each->key;
  return keys;
}

TEST(ResultColumns, GiveTheMembersOfJsonInTheirOrder) {
  EXPECT_EQ(
      members_json({}),
      "{\"name\": null, \"remark\": \"\", \"count\": 0, \"rows\": 0, \"list\": [], \"speed_mm_s\": null, "
      "\"span\": [1, 2.5]}\n");
  Outer row;
  row.name = "a";
  row.rows = 18446744073709551615u;
  row.done = true;
  row.list = {"x", "y"};
  row.inner.speed_mm_s = 7.5;
  EXPECT_EQ(
      members_json(row),
      "{\"name\": \"a\", \"remark\": \"\", \"count\": 0, \"rows\": 18446744073709551615, \"done\": true, "
      "\"list\": [\"x\", \"y\"], \"speed_mm_s\": 7.5, \"span\": [1, 2.5]}\n");
}

TEST(ResultColumns, ATableHasTheNamedOnesFirstAndTheOthersAfterThem) {
  constexpr std::string_view first[] = {"speed_mm_s", "name"};
  EXPECT_EQ(keys_of(ordered_columns(columns, first, Shown::brief)), "speed_mm_s name count");
  EXPECT_EQ(keys_of(ordered_columns(columns, first, Shown::all)), "speed_mm_s name remark count rows span");
  EXPECT_STREQ(find_column(columns, "count")->heading(), "n");
  EXPECT_STREQ(find_column(columns, "rows")->heading(), "Rows");
  EXPECT_EQ(find_column(columns, "none"), nullptr);
}

TEST(ResultColumns, NumbersAreNumbersWhateverTheirType) {
  Outer row;
  row.count = 3;
  row.rows = 4;
  EXPECT_EQ(column_number(find_column(columns, "count")->value(row)), 3);
  EXPECT_EQ(column_number(find_column(columns, "rows")->value(row)), 4);
  EXPECT_EQ(column_number(find_column(columns, "speed_mm_s")->value(row)), std::nullopt);
  EXPECT_EQ(column_number(find_column(columns, "remark")->value(row)), std::nullopt);
}

}  // namespace
}  // namespace seamtakt
