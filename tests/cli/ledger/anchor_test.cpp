// The printed anchor can be typed in again.
#include "cli/ledger/ledger_fixture.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class AnchorOfAPage : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_LE(audit_demo().exit_code, 1);
    line_ = ledger({"anchor"}).output;
    ASSERT_GT(line_.size(), 300u);
  }
  ProgramRun verify_with(const std::string& anchor) {
    write_file(path("anchor.txt"), anchor);
    return ledger({"verify", "--anchor", path("anchor.txt")});
  }
  std::string line_;
};

/// Text of the element that has the anchor, line breaks as such.
std::string anchor_on(const std::string& page) {
  const auto begin = page.find("<div class=\"code\">") + 18, end = page.find("</div>", begin);
  std::string text = page.substr(begin, end - begin);
  for (std::size_t at; (at = text.find("<br>")) != std::string::npos;) text.replace(at, 4, "\n");
  return text;
}

}  // namespace

TEST_F(AnchorOfAPage, CopiedFromThePageInGroupsItVerifies) {
  ASSERT_EQ(run_program({"report", "--store", store_, "--unit", "AE-26-0101", "--output", path("u.html")})
                .exit_code,
            0);
  const std::string anchor = anchor_on(bytes_of(path("u.html")));
  EXPECT_EQ(anchor.find(line_.substr(0, 8)), std::string::npos) << "in groups of four";
  const ProgramRun run = verify_with("Anchor " + anchor + "\n");
  EXPECT_EQ(run.exit_code, 0) << run.output << run.errors << anchor;
  EXPECT_NE(run.output.find("anchored up to record"), std::string::npos) << run.output;
  std::string capitals = anchor;
  for (char& c : capitals) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  EXPECT_EQ(verify_with(capitals).exit_code, 0) << "typed in capitals";
}

TEST_F(AnchorOfAPage, AsOlderPagesWereSetItVerifies) {
  std::string set = line_;
  for (std::size_t at; (at = set.find("ff")) != std::string::npos;) set.replace(at, 2, "\xEF\xAC\x80");
  EXPECT_EQ(verify_with(set).exit_code, 0) << "two f set as one sign";
  std::string broken = line_;
  broken.insert(40, "\r\n  ");
  broken.insert(broken.size() - 60, "\n");
  EXPECT_EQ(verify_with(line_ + broken).exit_code, 0) << "two anchors, the second one over three lines";
}

TEST_F(AnchorOfAPage, WhatIsNoAnchorIsSaidToBeNoneAndNothingOfTrust) {
  std::string letter = line_, shorter = line_, no_time = line_;
  letter[5] = 'g';
  shorter.erase(50, 1);
  no_time.replace(no_time.find('T'), 1, "x");
  for (const std::string& text : {std::string("a letter"), letter, shorter, no_time, line_.substr(0, 200),
                                  line_.substr(0, 30), std::string("anchor"), line_ + " 12"}) {
    const ProgramRun run = verify_with(text);
    expect_refused(run, "found not an anchor: ");
    EXPECT_EQ(run.errors.find("TRUSTED"), std::string::npos) << run.errors;
  }
  expect_refused(verify_with("\n# nothing\n"), "found no anchor");
}

TEST_F(AnchorOfAPage, TheSecondVerifierReadsTheSameAnchors) {
  if (std::system("python3 -c pass >/dev/null 2>&1") != 0) GTEST_SKIP() << "no python3";
  const auto second = [&](const std::string& anchor) {
    write_file(path("anchor.txt"), anchor);
    const int status = std::system(("python3 " + source_path("/reference/verify_log.py ") + store_file() +
                                    " --anchor " + path("anchor.txt") + " >/dev/null 2>&1")
                                       .c_str());
    return WEXITSTATUS(status);
  };
  ASSERT_EQ(run_program({"report", "--store", store_, "--unit", "AE-26-0101", "--output", path("u.html")})
                .exit_code,
            0);
  EXPECT_EQ(second(line_), 0);
  EXPECT_EQ(second("Anchor " + anchor_on(bytes_of(path("u.html")))), 0);
  EXPECT_EQ(second(line_.substr(0, 200)), 2);
  std::string mistyped = line_, other = line_;
  mistyped[50] = mistyped[50] == '1' ? '2' : '1';
  EXPECT_EQ(second(mistyped), 2) << "a slip of the fingers, not another store";
  for (std::size_t i = 50, changed = 0; changed < 20; ++i)
    if (std::isxdigit(static_cast<unsigned char>(other[i]))) {
      other[i] = other[i] == '1' ? '2' : '1';
      ++changed;
    }
  EXPECT_EQ(second(other), 1) << "an anchor, but of something else";
}

TEST_F(AnchorOfAPage, TheFingerprintIsTakenInGroupsAndCapitals) {
  const JsonNode key = json({"key"});
  std::string id = key.find("key_id")->string, groups;
  for (std::size_t i = 0; i < id.size(); ++i)
    groups += (i > 0 && i % 4 == 0 ? " " : "") + std::string(1, id[i]);
  for (char& c : groups) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  const ProgramRun run = ledger({"verify", "--pub", groups});
  EXPECT_EQ(run.exit_code, 0) << run.output << run.errors;
  EXPECT_NE(run.output.find("signed by the key given"), std::string::npos) << run.output;
}
