#include "base/json/json_document.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <random>

#include "base/error.hpp"
#include "base/json/json_scanner.hpp"
#include "support/sanitized.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using Kind = JsonNode::Kind;

namespace {

/// Where the two readers differ on a value; empty where they agree.
std::string difference(const JsonNode& node, const JsonValue& value, const std::string& at = "") {
  if (node.kind != value.kind()) return at + ": kind";
  const auto [line, column] = value.place();
  if (line != node.line || column != node.column) return at + ": place";
  switch (node.kind) {
    case Kind::null:
      return "";
    case Kind::boolean:
      return node.boolean == value.boolean() ? "" : at + ": truth";
    case Kind::number:
      if (std::bit_cast<std::uint64_t>(node.number) != std::bit_cast<std::uint64_t>(value.number()))
        return at + ": number";
      return node.is_integer == value.is_integer() ? "" : at + ": whole or not";
    case Kind::string:
      if (node.string.empty() != value.is_empty_string()) return at + ": empty or not";
      return node.string == value.string() ? "" : at + ": string";
    case Kind::array:
    case Kind::object:
      break;
  }
  std::string found;
  if (JsonDocument(value.source(), "f").root().count() != value.count()) return at + ": bytes";
  if (value.count() != node.elements.size() + node.members.size()) return at + ": count";
  if (node.kind == Kind::array)
    value.each_element([&](std::size_t i, const JsonValue& element) {
      if (found.empty()) found = difference(node.elements[i], element, at + "/" + std::to_string(i));
    });
  std::size_t i = 0;
  if (node.kind == Kind::object)
    value.each_member([&](std::string_view key, const JsonValue& member) {
      const JsonMember& wanted = node.members[i++];
      if (found.empty() && key != wanted.key) found = at + ": key " + wanted.key;
      if (found.empty()) found = difference(wanted.value, member, at + "/" + wanted.key);
    });
  return found;
}

/// Difference of both readers' results for a text: "" where they agree. From `two_threads_from` bytes on, two
/// threads scan it.
std::string disagreement_with(std::string_view text, const JsonLimits& limits, std::size_t two_threads_from) {
  std::optional<JsonNode> tree;
  std::string refused, refused_too;
  try {
    tree = parse_json(text, "f.json", limits);
  } catch (const InputError& error) {
    refused = error.what();
  }
  try {
    const JsonDocument quick(text, "f.json", limits, two_threads_from);
    return tree ? difference(*tree, quick.root()) : "only the careful reader refuses: " + refused;
  } catch (const std::exception& error) {
    refused_too = error.what();
  }
  return refused == refused_too ? "" : "careful: " + refused + "; quick: " + refused_too;
}

std::string disagreement(std::string_view text, const JsonLimits& limits = {}) {
  const std::string found = disagreement_with(text, limits, std::string_view::npos);
  return found.empty() ? disagreement_with(text, limits, 0) : found;
}

/// Lists of objects in lists of objects, with what looks like one within a text.
constexpr std::string_view nested_lists =
    R"({"w": [{"s": [{"a": [1, 2]}, {"b": {}}], "t": 1}, {"s": [{"c": "},{"}, {"d": [[4], []]}, {"e": 5}], "u": 2},)"
    R"({"s": [{"f": "},{"}, {"g": "},{"}]}, {"s": []}, {"v": null, "w": [{"x": 1}, {"y": 2}]}, {}], "z": [{}, {}]})";

const std::string_view json_samples[] = {"",
                                         " ",
                                         "null",
                                         "true",
                                         "false",
                                         "tru",
                                         "truex",
                                         "nul",
                                         "[",
                                         "]",
                                         "{",
                                         "}",
                                         "[]",
                                         "{}",
                                         "[1,]",
                                         "[,1]",
                                         "[1 2]",
                                         "{\"a\"}",
                                         "{\"a\":}",
                                         "{\"a\":1,}",
                                         "{a:1}",
                                         "{\"a\":1,\"a\":2}",
                                         "{\"a\":1,\"\\u0061\":2}",
                                         "{\"\\u0061\":1,\"a\":2}",
                                         "{\"\\u0061\":1,\"b\":2,\"c\":{\"a\":1}}",
                                         "{\"\":1,\"\":2}",
                                         "{\"\":1}",
                                         "0",
                                         "-0",
                                         "-0.0",
                                         "0.0",
                                         "-",
                                         "+1",
                                         "01",
                                         "1.",
                                         ".5",
                                         "1e5",
                                         "1E+5",
                                         "1e-5",
                                         "1e",
                                         "1e+",
                                         "1e999",
                                         "-1e999",
                                         "1e-999",
                                         "123456789012345678901234567890",
                                         "9007199254740992",
                                         "9007199254740993",
                                         "-9007199254740993",
                                         "18446744073709551615",
                                         "18446744073709551616",
                                         "0.1",
                                         "123456789012345",
                                         "1234567890123456",
                                         "0.000000000000001",
                                         "1.7976931348623157e308",
                                         "1.7976931348623159e308",
                                         "4.9e-324",
                                         "2.4e-324",
                                         "99999999999999.9",
                                         "-12345678901234.5",
                                         "\"\\n\\t\\b\\f\\r\\/\\\\\\\"\"",
                                         "\"\\x\"",
                                         "\"\\u12\"",
                                         "\"\\u0000\"",
                                         "\"\\ud800\"",
                                         "\"\\ud83d\\ude00\"",
                                         "\"\\ud83d\\u0041\"",
                                         "\"\\ude00\"",
                                         "\"\\ud83dx\"",
                                         "\"\\uD83D\\uDE00\\u00e4\\u20AC\"",
                                         "\"abc",
                                         "\"a\nb\"",
                                         "\"\x7f\"",
                                         "\"\xc3\xa4\"",
                                         "\"\xc3\"",
                                         "\"\xff\"",
                                         "\"\xed\xa0\x80\"",
                                         "\xef\xbb\xbf[1]",
                                         "\xef\xbb\xbf",
                                         "\xef\xbb[1]",
                                         "[1] x",
                                         "[1][2]",
                                         "1 1",
                                         " [ 1 , { \"k\" : [ ] } ]\r\n\t",
                                         "nan",
                                         "Infinity",
                                         "'a'",
                                         "// x\n1",
                                         "[\"\\\"]",
                                         "{\"a\":1 \"b\":2}",
                                         "{\"a\" 1}",
                                         "{1:2}",
                                         "\xc3\xa4",
                                         "[1,\n\n x]"};

TEST(JsonDocument, agrees_with_the_careful_reader_on_short_texts) {
  for (const std::string_view text : json_samples) EXPECT_EQ(disagreement(text), "") << text;
  EXPECT_EQ(disagreement(std::string_view("[1\0]", 4)), "");
  EXPECT_EQ(disagreement(std::string_view("\"a\0b\"", 5)), "");
}

TEST(JsonDocument, agrees_on_every_file_of_the_tests_and_the_demo) {
  std::size_t files = 0;
  for (const char* folder : {"/tests/data", "/reference"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator(source_path() + folder)) {
      if (entry.path().extension() != ".json" || entry.file_size() > 4u << 20) continue;
      EXPECT_EQ(disagreement(read_file(entry.path(), 8u << 20)), "") << entry.path();
      ++files;
    }
  EXPECT_GT(files, 30u);
}

/// Bytes removed, inserted, doubled and swapped in a text that has all kinds of values.
TEST(JsonDocument, agrees_on_text_that_is_changed_at_random) {
  const std::string base =
      R"({"a": [1, -2.5e1, true, null, "x\nä\ud83d\ude00"], "b\u0061": {"k": "", "l": [[], {}]}, "c": 0.125, "d": 12})";
  constexpr std::string_view bytes = "\"\\{}[]:,0123456789.eE+-untrfals \n\xc3\xa4\xff";
  std::mt19937 random(20261125);
  const std::string bases[] = {base, std::string(nested_lists)};
  const auto below = [&](std::size_t n) { return random() % n; };
  std::size_t refused = 0;
  for (int run = 0; run < test::rounds(30000, 3000); ++run) {
    std::string text = bases[run % 2];
    for (std::size_t changes = 1 + below(4); changes > 0 && !text.empty(); --changes) {
      const std::size_t at = below(text.size());
      const char byte = bytes[below(bytes.size())];
      if (const auto kind = below(4); kind == 0)
        text.erase(at, 1);
      else if (kind == 1)
        text.insert(at, 1, byte);
      else if (kind == 2)
        text[at] = byte;
      else
        text.insert(at, text.substr(below(text.size()), below(8)));
    }
    const std::string found = disagreement(text);
    ASSERT_EQ(found, "") << text;
    try {
      JsonDocument(text, "f");
    } catch (const InputError&) {
      ++refused;
    }
  }
  EXPECT_GT(refused, test::rounds(10000u, 1000u));
  EXPECT_LT(refused, test::rounds(30000u, 3000u));
}

/// Two threads meet at every place where an element begins.
TEST(JsonDocument, agrees_wherever_a_second_thread_begins) {
  for (std::size_t blanks = 0; blanks < nested_lists.size(); ++blanks) {
    EXPECT_EQ(disagreement(std::string(blanks, ' ') + std::string(nested_lists)), "") << blanks;
    EXPECT_EQ(disagreement(std::string(nested_lists) + std::string(blanks, ' ')), "") << blanks;
  }
}

TEST(JsonDocument, a_second_thread_keeps_to_the_limits_of_the_whole) {
  const std::string text = R"([[{"a": 1}, {"a": 2}, {"a": 3}, {"a": 4}, {"a": [5]}]])";
  for (std::size_t limit = 1; limit < 20; ++limit) {
    EXPECT_EQ(disagreement(text, {.depth = limit}), "") << limit;
    EXPECT_EQ(disagreement(text, {.members = limit}), "") << limit;
    EXPECT_EQ(disagreement(text, {.values = limit}), "") << limit;
  }
}

TEST(JsonDocument, numbers_have_the_bits_of_the_careful_reader) {
  std::mt19937_64 random(7);
  for (int run = 0; run < test::rounds(50000, 5000); ++run) {
    std::string text = random() % 2 == 0 ? "-" : "";
    const std::size_t digits = 1 + random() % 19;
    for (std::size_t i = 0; i < digits; ++i)
      text += static_cast<char>((i == 0 && digits > 1 ? '1' : '0') + random() % 9);
    if (random() % 2 == 0) {
      text += '.';
      for (std::size_t i = 1 + random() % 17; i > 0; --i) text += static_cast<char>('0' + random() % 10);
    }
    if (random() % 4 == 0) text += "e" + std::to_string(static_cast<int>(random() % 660) - 330);
    ASSERT_EQ(disagreement(text), "") << text;
  }
}

TEST(JsonDocument, keeps_to_the_same_limits) {
  const JsonLimits limits{.bytes = 400, .depth = 3, .string_bytes = 5, .members = 4, .values = 9};
  for (const char* text :
       {"[[[1]]]", "[[[[1]]]]", "[{\"a\":[1]}]", "[{\"a\":[[1]]}]", "\"abcde\"", "\"abcdef\"",
        "\"\\u0061bcde\"", "\"\\u0061bcdef\"", "{\"abcdef\":1}", "[1,2,3,4]", "[1,2,3,4,5]",
        "{\"a\":1,\"b\":2,\"c\":3,\"d\":4}", "{\"a\":1,\"b\":2,\"c\":3,\"d\":4,\"e\":5}", "[[1,2,3],[1,2,3]]",
        "[[1,2,3,4],[1,2,3]]"})
    EXPECT_EQ(disagreement(text, limits), "") << text;
  EXPECT_EQ(disagreement("[" + std::string(400, ' ') + "]", limits), "");
}

TEST(JsonDocument, finds_a_key_twice_however_many_there_are) {
  for (const std::size_t count : {2u, 15u, 63u, 64u, 65u, 66u, 200u, 3000u})
    for (const bool twice : {false, true}) {
      std::string text = "{";
      for (std::size_t i = 0; i < count; ++i)
        text += "\"key" + std::to_string(i) + "\": " + std::to_string(i) + ", ";
      text += twice ? "\"key" + std::to_string(count / 2) + "\": 0}" : "\"other\": 0}";
      EXPECT_EQ(disagreement(text), "") << count;
    }
}

// github.com/nst/JSONTestSuite.
TEST(JsonDocument, agrees_on_the_suite_of_json_files) {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  if (!folder) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA isn't set: the files of JSONTestSuite are not at hand";
  std::size_t tried = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(folder) + "/parsers/json")) {
    if (entry.path().extension() != ".json") continue;
    EXPECT_EQ(disagreement(read_file(entry.path(), 1u << 24)), "") << entry.path();
    ++tried;
  }
  EXPECT_GT(tried, 90u);
}

TEST(JsonDocument, gives_the_bytes_of_a_value_as_they_stand) {
  const std::string text = R"({"a": [1,  2], "b": "x\ty", "c": -1.50})";
  const JsonDocument json(text, "f");
  std::vector<std::string> sources;
  json.root().each_member(
      [&](std::string_view, const JsonValue& value) { sources.emplace_back(value.source()); });
  EXPECT_EQ(sources, (std::vector<std::string>{"[1,  2]", "\"x\\ty\"", "-1.50"}));
}

}  // namespace
