#include <gtest/gtest.h>

#include "base/finding_json.hpp"

namespace seamtakt {
namespace {

std::string json_of(const Finding& finding) {
  JsonWriter json;
  write_json(finding, json);
  return json.take();
}

TEST(FindingJson, holds_the_contracts_keys_in_their_order) {
  EXPECT_EQ(
      json_of({"fillet.leg", Severity::fail, "W/S1", 5.1, 6.0, "mm", "Too small.", "plan limit"}),
      "{\"rule\": \"fillet.leg\", \"severity\": \"fail\", \"where\": \"W/S1\", \"value\": 5.1, \"limit\": 6, "
      "\"unit\": \"mm\", \"text\": \"Too small.\", \"source\": \"plan limit\"}\n");
}

TEST(FindingJson, is_null_where_there_is_no_value_limit_or_unit) {
  EXPECT_EQ(json_of({"a.b", Severity::note, "", std::nullopt, std::nullopt, "", "Text.", "none"}),
            "{\"rule\": \"a.b\", \"severity\": \"note\", \"where\": \"\", \"value\": null, \"limit\": null, "
            "\"unit\": null, \"text\": \"Text.\", \"source\": \"none\"}\n");
}

TEST(FindingJson, writes_a_list_under_its_name) {
  JsonWriter json;
  json.begin_object();
  write_findings(json, {});
  json.end_object();
  EXPECT_EQ(json.take(), "{\n  \"findings\": []\n}\n");
}

}  // namespace
}  // namespace seamtakt
