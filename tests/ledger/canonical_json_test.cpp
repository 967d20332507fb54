#include "ledger/body/canonical_json.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <bit>
#include <cmath>
#include <random>

#include "base/error.hpp"
#include "support/sanitized.hpp"

using namespace seamtakt;

namespace {

std::string number(double value) {
  std::string text;
  append_canonical_number(text, value);
  return text;
}

std::string canonical(const std::string& text) {
  return canonical_json(parse_json(text, "text"));
}

bool scans(const std::string& text) {
  std::vector<CanonicalMember> members;
  return scan_canonical_object(text, members);
}

struct NumberRow {
  std::uint64_t bits;
  const char* text;
};

// rfc-8785, appendix B.
constexpr NumberRow published[] = {
    {0x0000000000000000, "0"},
    {0x8000000000000000, "0"},
    {0x0000000000000001, "5e-324"},
    {0x8000000000000001, "-5e-324"},
    {0x7fefffffffffffff, "1.7976931348623157e+308"},
    {0xffefffffffffffff, "-1.7976931348623157e+308"},
    {0x4340000000000000, "9007199254740992"},
    {0xc340000000000000, "-9007199254740992"},
    {0x4430000000000000, "295147905179352830000"},
    {0x44b52d02c7e14af5, "9.999999999999997e+22"},
    {0x44b52d02c7e14af6, "1e+23"},
    {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
    {0x444b1ae4d6e2ef4e, "999999999999999700000"},
    {0x444b1ae4d6e2ef4f, "999999999999999900000"},
    {0x444b1ae4d6e2ef50, "1e+21"},
    {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
    {0x3eb0c6f7a0b5ed8d, "0.000001"},
    {0x41b3de4355555553, "333333333.3333332"},
    {0x41b3de4355555554, "333333333.33333325"},
    {0x41b3de4355555555, "333333333.3333333"},
    {0x41b3de4355555556, "333333333.3333334"},
    {0x41b3de4355555557, "333333333.33333343"},
    {0xbecbf647612f3696, "-0.0000033333333333333333"},
    {0x43143ff3c1cb0959, "1424953923781206.2"},
};

/// A tree of every kind of value, with keys that sort differently by code point and by UTF-16 unit.
JsonNode random_value(std::mt19937_64& random, int depth) {
  static const std::vector<std::string> keys = {"a",
                                                "b",
                                                "A",
                                                "\xE2\x82\xAC",
                                                "\xF0\x9F\x98\x82",
                                                "\xEF\xAC\xB3",
                                                "\xC3\xB6",
                                                "1",
                                                "",
                                                "a b",
                                                "\"",
                                                "\\",
                                                "\n",
                                                "\r",
                                                "\x7f",
                                                "aa"};
  JsonNode node;
  node.kind = static_cast<JsonNode::Kind>(random() % (depth > 3 ? 4 : 6));
  if (depth == 0) node.kind = JsonNode::Kind::object;
  node.boolean = random() % 2;
  if (node.kind == JsonNode::Kind::number) {
    node.number =
        random() % 3 == 0 ? static_cast<double>(random() % 100000) / 100 : std::bit_cast<double>(random());
    if (!std::isfinite(node.number)) node.number = 1;
  }
  if (node.kind == JsonNode::Kind::string)
    for (auto i = random() % 6; i > 0; --i)
      node.string +=
          random() % 2 ? keys[random() % keys.size()] : std::string(1, static_cast<char>(1 + random() % 126));
  if (node.kind == JsonNode::Kind::array)
    for (auto i = random() % 5; i > 0; --i) node.elements.push_back(random_value(random, depth + 1));
  if (node.kind == JsonNode::Kind::object)
    for (const std::string& key : keys)
      if (random() % 4 == 0)
        node.members.insert(node.members.begin() + static_cast<long>(random() % (node.members.size() + 1)),
                            {key, random_value(random, depth + 1)});
  return node;
}

}  // namespace

TEST(CanonicalJsonTest, numbers_are_written_as_the_published_vectors_have_them) {
  for (const NumberRow& row : published) EXPECT_EQ(number(std::bit_cast<double>(row.bits)), row.text);
}

TEST(CanonicalJsonTest, a_number_that_is_not_finite_is_refused) {
  EXPECT_THROW(number(NAN), std::logic_error);
  EXPECT_THROW(number(INFINITY), std::logic_error);
}

TEST(CanonicalJsonTest, the_published_example_gives_the_published_text) {
  // rfc-8785, section 3.2.2 and 3.2.3 (recalled).
  EXPECT_EQ(canonical(R"({"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]})"),
            "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
            "\"string\":\"\xE2\x82\xAC$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
}

TEST(CanonicalJsonTest, keys_are_sorted_by_utf_16_unit) {
  // rfc-8785, section 3.2.3 (recalled): the smiling face (a surrogate pair) sorts before U+FB33.
  const std::string sorted =
      canonical(R"({"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter",
      "1":"One","\ud83d\ude00":"Emoji","\u0080":"Control","\u00f6":"Latin o"})");
  const char* order[] = {"Carriage", "One", "Control", "Latin", "Euro", "Emoji", "Hebrew"};
  std::size_t last = 0;
  for (const char* each : order) {
    ASSERT_NE(sorted.find(each), std::string::npos);
    EXPECT_GE(sorted.find(each), last) << each;
    last = sorted.find(each);
  }
  EXPECT_TRUE(scans(sorted));
}

TEST(CanonicalJsonTest, the_scan_takes_what_the_writer_writes_and_nothing_near_it) {
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937_64 random(seed);
  int changed = 0, still_canonical = 0;
  for (int i = 0; i < test::rounds(3000, 375); ++i) {
    const std::string text = canonical_json(random_value(random, 0));
    ASSERT_TRUE(scans(text)) << text;
    ASSERT_EQ(canonical(text), text);
    for (int k = 0; k < 5; ++k) {
      std::string other = text;
      const std::size_t at = random() % other.size();
      static constexpr char near[] = "0123456789-+.eE\"\\ {}[]:,abu\n\x01\xff";
      const char c = near[random() % (sizeof near - 1)];
      switch (random() % 3) {
        case 0:
          other[at] = c;
          break;
        case 1:
          other.insert(at, 1, c);
          break;
        default:
          other.erase(at, 1);
      }
      bool expected = false;
      try {
        const JsonNode node = parse_json(other, "text");
        expected = node.kind == JsonNode::Kind::object && canonical_json(node) == other;
      } catch (const std::exception&) {
      }
      ASSERT_EQ(scans(other), expected) << other;
      ++(expected ? still_canonical : changed);
    }
  }
  EXPECT_GT(changed, test::rounds(5000, 625));
  EXPECT_GT(still_canonical, test::rounds(100, 12));
}

TEST(CanonicalJsonTest, the_scan_knows_every_byte_at_every_place_of_a_text) {
  for (std::size_t at = 0; at < 20; ++at)
    for (int byte = 1; byte < 256; ++byte) {
      std::string inside(20, 'x');
      inside[at] = static_cast<char>(byte);
      const bool plain = byte >= 0x20 && byte < 0x80 && byte != '"' && byte != '\\';
      ASSERT_EQ(scans("{\"" + inside + "\":1}"), plain) << byte << " at " << at;
      ASSERT_EQ(scans("{\"a\":\"" + inside + "\"}"), plain) << byte << " at " << at;
    }
}

TEST(CanonicalJsonTest, the_scan_takes_a_decimal_number_exactly_where_the_writer_writes_it_so) {
  std::mt19937_64 random(11);
  int canonical_ones = 0;
  for (int i = 0; i < test::rounds(40000, 5000); ++i) {
    std::string digits(1 + random() % 18, '0');
    for (char& digit : digits)
      if (random() % 3 != 0) digit = static_cast<char>('0' + random() % 10);
    if (const std::size_t point = random() % (digits.size() + 1); point < digits.size())
      digits.insert(point, ".");
    const std::string number_text = (random() % 4 == 0 ? "-" : "") + digits,
                      text = "{\"a\":" + number_text + "}";
    bool expected = false;
    try {
      expected = canonical(text) == text;
    } catch (const InputError&) {
    }
    ASSERT_EQ(scans(text), expected) << text;
    canonical_ones += expected;
  }
  EXPECT_GT(canonical_ones, test::rounds(8000, 1000));
  for (const char* text : {"0.000001", "-0.5", "0", "123456789012345", "0.00000123", "99999999999999.9"})
    EXPECT_TRUE(scans("{\"a\":" + std::string(text) + "}")) << text;
  for (const char* text :
       {"-0", "0.0000001", "1.", ".5", "00.5", "1.50", "-", "1e5", "0.00000012345678901234567"})
    EXPECT_FALSE(scans("{\"a\":" + std::string(text) + "}")) << text;
}

TEST(CanonicalJsonTest, the_scan_gives_the_outermost_members) {
  std::vector<CanonicalMember> members;
  ASSERT_TRUE(scan_canonical_object(R"({"a":[1,{"x":2}],"b":"t\"","c":{"a":1}})", members));
  EXPECT_EQ(member_text(members, "a"), R"([1,{"x":2}])");
  EXPECT_EQ(member_text(members, "b"), R"("t\"")");
  EXPECT_EQ(member_text(members, "c"), R"({"a":1})");
  EXPECT_EQ(member_text(members, "x"), "");
}

TEST(CanonicalJsonTest, deep_nesting_is_refused_and_not_followed) {
  EXPECT_FALSE(scans("{\"a\":" + std::string(200000, '[') + std::string(200000, ']') + "}"));
}

RC_GTEST_PROP(CanonicalJsonProperty, every_double_reads_back_the_same, (std::uint64_t bits)) {
  const double value = std::bit_cast<double>(bits);
  RC_PRE(std::isfinite(value));
  const JsonNode node = parse_json(number(value), "number");
  RC_ASSERT(node.number == value);
}
