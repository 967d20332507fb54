// What a stored finding says, read back in the reader's language.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "base/finding_json.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/sentences/sentence_text.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_store.hpp"
#include "records/keep/stored_parts.hpp"
#include "records/keep/stored_sentence.hpp"
#include "store_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const TextView& german() {
  static const TextView view(*find_language("de"));
  return view;
}

std::string json_of(const Finding& finding) {
  JsonWriter json;
  write_json(finding, json);
  return json.take();
}

Finding failed(const char* rule, Sentence sentence) {
  return {rule, Severity::fail, "U1/BD/S1/pass 1", {}, {}, "", std::move(sentence), "plan limit"};
}

/// Sentences with all that a hole may hold: quantities, counts, words, names and other sentences.
Findings findings_of_all_sorts() {
  OpenPart part;
  part.place = "U1/BD/S1/pass 1";
  part.coverage.covered_mm = 40;
  part.coverage.needed_mm = 400;
  part.coverage.allowed_short_mm = 10;
  const std::vector<Sentence> not_logged = {Sentence("current"_word), Sentence("voltage"_word)};
  return {
      short_finding(part),
      failed("record.current.low",
             Sentence("limit.below"_key, {{"what", "Mean current of the steady part"_word},
                                          {"value", UnitValue{178.25, "A"}},
                                          {"limit", UnitValue{180, "A"}}})),
      failed("record.order.passes",
             Sentence("record.order.passes"_key, {{"before", place_sentence("U1/BD/S1/pass 2")}})),
      failed("record.limit.not-logged", Sentence("record.limit.not-logged"_key, {{"names", not_logged}})),
      failed("record.time.backwards",
             Sentence("record.time.backwards"_key,
                      {{"times", Sentence("record.times"_key, {{"count", 3}})}, {"line", 17}})),
      failed("record.pass.unknown",
             "The plan doesn't know this pass, so nothing says how it should be."_word),
      failed("record.required.missing",
             Sentence("record.required.missing"_key, {{"name", "{heat} <b>\"lot\"</b> %1"}})),
  };
}

class StoredSentences : public testing::Test {
 protected:
  StoredSentences() : ledger_(Ledger::open(uri_, {StoreOpening::For::writing, true, false})) {
    add(some_pass(1));
  }

  std::uint64_t add(const LedgerEntry& entry) {
    std::uint64_t seq = 0;
    ledger_.write(keys_.provider(), stamp(at_++), [&](LedgerBatch& batch) { seq = batch.add(entry); });
    return seq;
  }
  /// What a nonconformance says whose body holds these findings.
  Nonconformance kept(const std::string& findings) {
    const std::uint64_t seq =
        add({record_kind::nonconformance,
             2,
             {{"results", R"({"unit_serial":"U1","place":"U1/BD/S1/pass 1"})"}, {"findings", findings}},
             {{"nonconformance", ""}}});
    RecordHistory history(ledger_);
    return nonconformance_of(history, seq);
  }
  void TearDown() override {
    const VerifyReport report = verified(uri_);
    EXPECT_TRUE(report.trusted) << problems_text(report);
  }

  ScratchFolder folder_;
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_;
  KeyRing keys_;
  int at_ = 0;
};

}  // namespace

TEST_F(StoredSentences, say_the_same_in_english_and_in_german) {
  for (const Finding& finding : findings_of_all_sorts()) {
    const Nonconformance read = kept("[" + json_of(finding) + "]");
    EXPECT_EQ(read.text(), finding.text());
    EXPECT_EQ(sentence_text(read.sentence, german()), sentence_text(finding.sentence, german()));
    EXPECT_NE(sentence_text(read.sentence, german()), finding.text());
  }
  EXPECT_EQ(sentence_text(kept("[" + json_of(findings_of_all_sorts()[0]) + "]").sentence, german()),
            "Über 40\u202fmm geschweißt, wo die Naht 400\u202fmm braucht: 360\u202fmm zu kurz, erlaubt sind "
            "10\u202fmm.");
}

TEST_F(StoredSentences, of_an_undecided_pass_are_its_units_open_cause) {
  PassRecord pass;
  pass.unit_serial = "U2";
  pass.weldment = "BD";
  pass.seam = "S1";
  pass.pass = 1;
  pass.verdict = Verdict::undecided;
  pass.undecided_by = {"record.logger.frozen"};
  pass.source = pass.source_last = "a.csv";
  AuditResult result;
  result.findings.push_back(
      {"record.logger.frozen", Severity::warn, pass.place(), 2.5, 2.0, "s",
       Sentence("record.logger.frozen"_key, {{"time", UnitValue{2.5, "s"}}, {"line", 12}}), "none"});
  result.passes.push_back(pass);
  AuditedLog log;
  log.name = "a.csv";
  log.sha256 = std::string(64, 'a');
  result.logs.push_back(log);
  IngestNote note;
  note.stamp = stamp(at_++);
  append_audit(ledger_, keys_.provider(), result, note);
  const UnitStatus status = unit_status(ledger_, "U2");
  ASSERT_EQ(status.open_causes.size(), 1u);
  EXPECT_EQ(status.open_causes[0].text(), result.findings[0].text());
  EXPECT_NE(sentence_text(status.open_causes[0].sentence, german()).find("eingefrorene Aufzeichnung"),
            std::string::npos);
}

TEST_F(StoredSentences, of_an_older_record_are_its_text_as_it_is) {
  const Nonconformance read = kept(R"([{"rule":"record.current.low","text":"Too low."}])");
  EXPECT_EQ(read.text(), "Too low.");
  EXPECT_EQ(sentence_text(read.sentence, german()), "Too low.");
  EXPECT_EQ(kept("[]").text(), stamp(0).why) << "what a person opened says why";
}

TEST_F(StoredSentences, of_a_stranger_are_shown_as_their_text) {
  constexpr const char* members[] = {
      R"("sentence":"no.such.sentence","arguments":{})",
      R"("sentence":"../../etc/passwd","arguments":{})",
      R"("sentence":"","arguments":{})",
      R"("sentence":"record.length.short")",
      R"("sentence":"record.length.short","arguments":null)",
      R"("sentence":"record.length.short","arguments":"welded")",
      R"("sentence":"record.length.short","arguments":[])",
      R"("sentence":"record.length.short","arguments":{})",
      R"("sentence":"record.length.short","arguments":{"welded":{"value":40,"unit":"mm","digits":4}})",
      R"("sentence":"record.times","arguments":{"count":true})",
      R"("sentence":"record.times","arguments":{"count":null})",
      R"("sentence":"record.times","arguments":{"count":1.5})",
      R"("sentence":"record.times","arguments":{"count":{}})",
      R"("sentence":"record.times","arguments":{"count":{"value":"1","unit":"mm"}})",
      R"("sentence":"record.times","arguments":{"count":{"value":1,"unit":7}})",
      R"("sentence":"record.times","arguments":{"count":{"word":3}})",
      R"("sentence":"record.times","arguments":{"count":[1,2]})",
      R"("sentence":"record.times","arguments":{"count":[{"sentence":"record.times","arguments":{}}]})",
      R"("sentence":5,"arguments":{})",
      R"("sentence":[],"arguments":{})",
      R"("sentence":{"key":"record.times"},"arguments":{"count":1})",
      R"("sentence":null)",
      R"("sentence":null,"arguments":{})",
      R"("sentence":null,"arguments":{"text":20})",
      R"("sentence":null,"arguments":{"text":[]})",
      R"("sentence":null,"arguments":{"text":{"value":1,"unit":"mm"}})",
  };
  for (const char* each : members) {
    const Nonconformance read = kept("[{\"rule\":\"x\"," + std::string(each) + ",\"text\":\"Its text.\"}]");
    EXPECT_EQ(read.text(), "Its text.") << each;
    EXPECT_EQ(sentence_text(read.sentence, german()), "Its text.") << each;
  }
}

TEST_F(StoredSentences, with_values_beyond_all_reason_are_no_fault) {
  for (const char* argument :
       {R"({"value":1e308,"unit":"mm","digits":1000000})",
        R"({"value":-1e-300,"unit":"furlong","digits":-5})", R"({"value":1,"unit":"mm","digits":"four"})",
        R"({"word":"<b>no word</b>"})", R"("\u202etxt")", "9007199254740991", "[]"}) {
    const Nonconformance read = kept(
        "[{\"rule\":\"x\",\"sentence\":\"record.times\",\"arguments\":{\"count\":" + std::string(argument) +
        ",\"other\":1},\"text\":\"Its text.\"}]");
    EXPECT_TRUE(read.text().ends_with(" times")) << read.text();
    EXPECT_TRUE(sentence_text(read.sentence, german()).ends_with("-mal")) << argument;
  }
}

TEST_F(StoredSentences, within_sentences_without_end_are_shown_as_their_text) {
  const auto nested = [](int depth) {
    std::string sentence = R"("sentence":"record.times","arguments":{"count":2})";
    for (int i = 0; i < depth; ++i)
      sentence = R"("sentence":"record.times","arguments":{"count":[{)" + sentence + "}]}";
    return "{\"rule\":\"x\",\"text\":\"Its text.\"," + sentence + "}";
  };
  EXPECT_EQ(kept("[" + nested(2) + "]").text(), "2 times times times");
  EXPECT_EQ(kept("[" + nested(18) + "]").text(), "Its text.") << "as deep as a body may be";
  // A body of this depth is refused as a whole; what is passed on of it isn't a fault either.
  JsonLimits limits;
  limits.depth = 1000;
  EXPECT_EQ(stored_sentence(parse_json(nested(100), "body", limits)).english(), "Its text.");
  EXPECT_THROW(kept("[" + nested(100) + "]"), InputError);
}
