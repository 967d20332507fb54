#include "base/json/json_writer.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "base/json/json_node.hpp"

using namespace seamtakt;

TEST(JsonWriterTest, writes_members_in_order_with_two_blanks_a_level) {
  JsonWriter json;
  json.begin_object();
  json.member("b", 1).member("a", "x").member("flag", true);
  json.key("list").begin_array();
  json.begin_object().member("id", std::string("S01")).null_member("leg_mm").end_object();
  json.value(2.5).end_array();
  json.key("empty").begin_object().end_object();
  json.key("none").begin_array().end_array();
  json.end_object();
  EXPECT_EQ(json.take(),
            "{\n"
            "  \"b\": 1,\n"
            "  \"a\": \"x\",\n"
            "  \"flag\": true,\n"
            "  \"list\": [\n"
            "    {\n"
            "      \"id\": \"S01\",\n"
            "      \"leg_mm\": null\n"
            "    },\n"
            "    2.5\n"
            "  ],\n"
            "  \"empty\": {},\n"
            "  \"none\": []\n"
            "}\n");
}

TEST(JsonWriterTest, compact_arrays_stay_on_one_line_with_all_within) {
  JsonWriter json;
  json.begin_object();
  json.member("span_s", std::vector<double>{1, 2.5, -3e30});
  json.key("path_mm").begin_array(JsonWriter::Layout::compact);
  json.value(std::vector<double>{0, 0, 0})
      .value(std::vector<double>{})
      .begin_object()
      .member("x", 1)
      .member("y", 2)
      .end_object()
      .end_array();
  json.end_object();
  EXPECT_EQ(json.take(),
            "{\n  \"span_s\": [1, 2.5, -3e+30],\n  \"path_mm\": [[0, 0, 0], [], {\"x\": 1, \"y\": 2}]\n}\n");
}

TEST(JsonWriterTest, numbers_are_shortest_and_whole_ones_have_no_point) {
  const std::pair<double, const char*> cases[] = {{0.1, "0.1\n"},
                                                  {5, "5\n"},
                                                  {-0.0, "0\n"},
                                                  {1e6, "1000000\n"},
                                                  {1e15, "1000000000000000\n"},
                                                  {1e22, "1e+22\n"},
                                                  {9007199254740992.0, "9007199254740992\n"},
                                                  {1.0 / 3, "0.3333333333333333\n"}};
  for (const auto& [number, text] : cases) EXPECT_EQ(JsonWriter().value(number).take(), text);
  EXPECT_EQ(JsonWriter().value(std::numeric_limits<std::int64_t>::min()).take(), "-9223372036854775808\n");
  EXPECT_EQ(JsonWriter().value(std::uint64_t{18446744073709551615u}).take(), "18446744073709551615\n");
}

TEST(JsonWriterTest, a_missing_value_is_null) {
  EXPECT_EQ(JsonWriter().value(std::optional<double>()).take(), "null\n");
  EXPECT_EQ(JsonWriter().value(std::optional<double>(4.5)).take(), "4.5\n");
  EXPECT_EQ(JsonWriter().value(std::optional<std::string>("a")).take(), "\"a\"\n");
}

TEST(JsonWriterTest, escapes_what_json_does_not_allow_in_a_string) {
  EXPECT_EQ(json_string("a\"\\/\b\t\n\v\f\r\x01\x1f\x7f"), R"("a\"\\/\b\t\n\u000b\f\r\u0001\u001f\u007f")");
  EXPECT_EQ(json_string(std::string_view("\0", 1)), R"("\u0000")");
  EXPECT_EQ(json_string("Größe 😀"), "\"Größe 😀\"");
  EXPECT_EQ(json_string("a\xff\xc3z"), "\"a\ufffd\ufffdz\"");
}

TEST(JsonWriterTest, a_kept_piece_is_written_as_it_is) {
  JsonWriter json;
  json.begin_object().key("x_mine").raw("{\"a\":1}").member("b", 2).end_object();
  EXPECT_EQ(json.take(), "{\n  \"x_mine\": {\"a\":1},\n  \"b\": 2\n}\n");
}

TEST(JsonWriterTest, faults_of_the_program_are_found) {
  EXPECT_THROW(JsonWriter().value(std::nan("")), std::logic_error);
  EXPECT_THROW(JsonWriter().value(HUGE_VAL), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_object().value(1), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_array().key("a"), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_object().key("a").key("b"), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_object().key("a").end_object(), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_object().end_array(), std::logic_error);
  EXPECT_THROW(JsonWriter().begin_object().take(), std::logic_error);
  EXPECT_THROW(JsonWriter().take(), std::logic_error);
  EXPECT_THROW(JsonWriter().value(1).value(2), std::logic_error);
}

TEST(JsonWriterTest, a_hundred_thousand_passes_are_written_and_read_back) {
  constexpr int passes = 100000;
  JsonWriter json;
  const auto begin = std::chrono::steady_clock::now();
  json.begin_object().key("passes").begin_array();
  for (int i = 0; i < passes; ++i) {
    json.begin_object().member("weldment", "BD-2").member("seam", "S01").member("pass", i);
    for (const char* key : {"length_mm", "current_A", "voltage_V", "heat_input_kJ_mm"})
      json.member(key, std::sqrt(i + 2.0));
    json.null_member("penetration_mm").end_object();
  }
  json.end_array().end_object();
  const std::string text = json.take();
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  RecordProperty("megabytes_per_second", std::to_string(static_cast<double>(text.size()) / 1e6 / seconds));
  const JsonNode back = parse_json(text, "f");
  const auto& list = back.find("passes")->elements;
  ASSERT_EQ(list.size(), static_cast<std::size_t>(passes));
  EXPECT_EQ(list[777].find("pass")->number, 777);
  EXPECT_EQ(list[777].find("current_A")->number, std::sqrt(779.0));
}
