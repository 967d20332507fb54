// Anchors as people keep them.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "ledger/tree/signed_head.hpp"

using namespace seamtakt;

namespace {

const std::string store = "00112233445566778899aabbccddeeff", root = "ff" + std::string(60, 'f') + "fe",
                  key = std::string(62, '1') + "ff", signature = "ffff" + std::string(120, '2') + "ff00",
                  utc = "2026-03-02T06:00:00Z";
const std::string line = store + " 193 " + root + " " + utc + " " + key + " " + signature;

void expect_the_anchor(const std::string& text) {
  const auto anchors = parse_anchors(text, "anchors.txt");
  ASSERT_EQ(anchors.size(), 1u) << text;
  EXPECT_EQ(anchors[0].store, store);
  EXPECT_EQ(anchors[0].n, 193u);
  EXPECT_EQ(hex(anchors[0].root), root);
  EXPECT_EQ(anchors[0].utc, utc);
  EXPECT_EQ(anchors[0].key_id, key);
  EXPECT_EQ(hex(anchors[0].signature), signature);
}

std::string replaced_all(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
  return text;
}

std::string refusal(const std::string& text) {
  try {
    parse_anchors(text, "anchors.txt");
  } catch (const InputError& error) {
    return error.what();
  }
  return "none";
}

}  // namespace

TEST(AnchorText, is_read_as_the_program_writes_it_and_as_it_prints_it) {
  expect_the_anchor(line);
  std::string printed = "Anchor ";
  for (const std::string& each : anchor_groups(line)) printed += each + "\n   ";
  expect_the_anchor(printed);
  EXPECT_EQ(anchor_groups(line)[0], "0011 2233 4455 6677 8899 aabb ccdd eeff  193");
  EXPECT_EQ(anchor_groups(line).size(), 5u);
}

TEST(AnchorText, is_read_as_people_copy_and_type_it) {
  expect_the_anchor(replaced_all(line, "ff", "\xEF\xAC\x80"));
  expect_the_anchor(replaced_all(line, " ", "\xC2\xA0"));
  std::string capitals = line;
  for (char& c : capitals) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  expect_the_anchor("# kept on paper\n\n" + capitals + "\f\n");
  std::string broken = line;
  for (std::size_t at = 10; at < broken.size(); at += 31) broken.insert(at, "\r\n  ");
  expect_the_anchor("ANCHOR:\n" + broken);
  EXPECT_EQ(parse_anchors(line + "\n" + broken + "\n# and\n" + line, "f").size(), 3u);
}

TEST(AnchorText, that_is_none_is_said_to_be_none_with_its_place) {
  EXPECT_NE(refusal("\nabc").find("anchors.txt:2: found not an anchor: it ends within the store's id"),
            std::string::npos)
      << refusal("\nabc");
  EXPECT_NE(refusal(line + "\nmine").find("anchors.txt:2: found not an anchor: \"mine\" in the store's id"),
            std::string::npos);
  EXPECT_NE(refusal(replaced_all(line, " 193 ", " 0 ")).find("not an anchor: \"0\" for the count"),
            std::string::npos);
  EXPECT_NE(refusal(replaced_all(line, "02T06", "42T06")).find("is no time"), std::string::npos);
  EXPECT_NE(refusal(replaced_all(line, "fe ", "e ")).find("not an anchor: \"2026"), std::string::npos)
      << "a digit of the root is missing: " << refusal(replaced_all(line, "fe ", "e "));
  EXPECT_NE(refusal(line.substr(0, line.size() - 1)).find("the signature, after 127 of 128 digits"),
            std::string::npos);
  EXPECT_NE(refusal("# none\n").find("found no anchor"), std::string::npos);
  EXPECT_NE(refusal("anchor").find("not an anchor"), std::string::npos);
}
