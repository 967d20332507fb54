#include <gtest/gtest.h>

#include "base/finding_json.hpp"

namespace seamtakt {
namespace {

std::string finding_json(const Finding& finding) {
  JsonWriter json;
  write_json(finding, json);
  return json.take();
}

TEST(FindingJson, holds_the_contracts_keys_in_their_order) {
  EXPECT_EQ(
      finding_json({"fillet.leg", Severity::fail, "W/S1", 5.1, 6.0, "mm", Sentence::verbatim("Too small."),
                    "plan limit"}),
      "{\"rule\": \"fillet.leg\", \"severity\": \"fail\", \"where\": \"W/S1\", \"value\": 5.1, \"limit\": 6, "
      "\"unit\": \"mm\", \"text\": \"Too small.\", \"source\": \"plan limit\", "
      "\"sentence\": null, \"arguments\": {\"text\": \"Too small.\"}}\n");
}

TEST(FindingJson, is_null_where_there_is_no_value_limit_or_unit) {
  EXPECT_EQ(finding_json({"a.b", Severity::note, "", std::nullopt, std::nullopt, "",
                          Sentence::verbatim("Text."), "none"}),
            "{\"rule\": \"a.b\", \"severity\": \"note\", \"where\": \"\", \"value\": null, \"limit\": null, "
            "\"unit\": null, \"text\": \"Text.\", \"source\": \"none\", "
            "\"sentence\": null, \"arguments\": {\"text\": \"Text.\"}}\n");
}

TEST(FindingJson, a_sentence_of_the_table_is_given_with_its_key_and_its_arguments) {
  const Finding finding{
      "preheat.below-needed",
      Severity::warn,
      "W/S1/pass 1",
      20,
      80.5,
      "C",
      Sentence("preheat.below-needed"_key, {{"given", UnitValue{20, "C"}}, {"needed", UnitValue{80.5, "C"}}}),
      "none"};
  const std::string text = finding_json(finding);
  EXPECT_NE(text.find("\"text\": \"Preheat is 20 C, method B asks for 80.5 C.\""), std::string::npos) << text;
  EXPECT_NE(text.find("\"sentence\": \"preheat.below-needed\", \"arguments\": {\"given\": {\"value\": 20, "
                      "\"unit\": \"C\", \"digits\": 4}, \"needed\": {\"value\": 80.5, "),
            std::string::npos)
      << text;
}

TEST(FindingJson, writes_a_list_under_its_name) {
  JsonWriter json;
  json.begin_object();
  write_findings(json, {});
  json.end_object();
  EXPECT_EQ(json.take(), "{\n  \"findings\": []\n}\n");
}

TEST(FindingJson, a_list_that_is_handed_on_in_parts_has_the_same_bytes) {
  for (const std::size_t count : {0u, 1u, 256u, 257u, 1000u}) {
    Findings findings;
    for (std::size_t i = 0; i < count; ++i)
      findings.push_back({"a.b", Severity::warn, "W/S" + std::to_string(i), 1.5, 2.5, "mm",
                          Sentence::verbatim("Text."), "none"});
    JsonWriter whole, parted;
    whole.begin_object();
    write_findings(whole, findings);
    whole.member("more", 1).end_object();
    std::string text;
    const TextSink sink = [&](std::string_view part) { text += part; };
    ThreadPool pool(3);
    parted.begin_object();
    write_findings(parted, findings, sink, pool);
    parted.member("more", 1).end_object();
    sink(parted.take());
    EXPECT_EQ(text, whole.take()) << count;
  }
}

}  // namespace
}  // namespace seamtakt
