#include <algorithm>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/refusal_sentence.hpp"
#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

namespace {

/// "3 records", or "records 5-7" where the first ones weren't looked at.
Sentence records_of(const VerifyReport& report) {
  if (report.looked_from <= 1) return Sentence("ledger.records.count"_key, {{"count", report.records}});
  if (report.looked_from == report.records)
    return Sentence("ledger.record"_key, {{"record", report.records}});
  return Sentence("ledger.records.span"_key, {{"first", report.looked_from}, {"last", report.records}});
}

/// What of the records before those; empty where there are none.
Sentence before_of(const VerifyReport& report) {
  if (report.looked_from <= 1) return Sentence::verbatim("");
  const std::string records = (report.looked_from > 2 ? "1-" : "") + std::to_string(report.looked_from - 1);
  return Sentence(report.hashed_before ? "verify.before.digests"_key : "verify.before.none"_key,
                  {{"records", records}});
}

VerifyReport::Span span_of(const LedgerProblem& problem) {
  return {problem.seq, std::max(problem.seq, problem.last_seq)};
}

}  // namespace

VerifyReport verify_ledger(const Ledger& ledger, const VerifyOptions& options) {
  return VerifyRun(ledger, options).run();
}

VerifyReport::Span VerifyReport::first_bad() const {
  // A wrong head adds no information where one of its records is already known to be bad.
  const auto is_explained = [&](const Span& span) {
    return std::any_of(problems.begin(), problems.end(), [&](const LedgerProblem& problem) {
      const Span one = span_of(problem);
      return one.from == one.to && span.from <= one.from && one.from <= span.to;
    });
  };
  Span first;
  for (const LedgerProblem& problem : problems) {
    const Span span = span_of(problem);
    if (span.from == 0 || (first.from != 0 && span.from >= first.from)) continue;
    if (span.from == span.to || !is_explained(span)) first = span;
  }
  return first;
}

Sentence VerifyReport::summary_sentence() const {
  if (!trusted) {
    const auto [from, to] = first_bad();
    if (from == 0) return "NOT TRUSTED"_word;
    if (from == to) return Sentence("verify.not-trusted.record"_key, {{"record", from}});
    return Sentence("verify.not-trusted.span"_key, {{"first", from}, {"last", to}});
  }
  std::vector<Argument> arguments = {{"records", records_of(*this)}, {"before", before_of(*this)}};
  if (anchored_to == 0)
    return Sentence(pinned ? "verify.ok.pinned"_key : "verify.ok.unanchored"_key, std::move(arguments));
  arguments.emplace_back("anchored", anchored_to);
  return Sentence(pinned ? "verify.ok.anchored.pinned"_key : "verify.ok.anchored"_key, std::move(arguments));
}

void VerifyRun::add_problem(std::uint64_t seq, std::uint64_t last_seq, Sentence sentence) {
  constexpr std::size_t most = 50;
  if (report_.problems.size() < most) report_.problems.push_back({seq, last_seq, std::move(sentence)});
}

/// Runs a part; whatever stops it is a problem, not the end: a damaged database mustn't pass for a short one.
void VerifyRun::guarded(Word what, const std::function<void()>& part) {
  const auto unreadable = [&](Sentence why) {
    add_problem(0, 0, Sentence("verify.part.unreadable"_key, {{"part", what}, {"why", std::move(why)}}));
  };
  try {
    part();
  } catch (const StoreDamaged& error) {
    unreadable(Sentence::verbatim(error.what()));
  } catch (const InputError& error) {
    unreadable(refusal_sentence(error));
  }
}

VerifyReport VerifyRun::run() {
  for (const Anchor& anchor : options_.anchors) anchors_.emplace(anchor.n, &anchor);
  guarded("the structure"_word, [&] {
    for (Sentence& problem : ledger_.backend().structure_problems()) add_problem(0, 0, std::move(problem));
  });
  guarded("the state"_word, [&] { snapshot_ = ledger_.backend().snapshot(); });
  if (options_.from > 1 && snapshot_.last_seq > 0 && options_.from > snapshot_.last_seq)
    throw InputError("--from", std::to_string(options_.from),
                     Sentence("verify.from"_key, {{"last", snapshot_.last_seq}}));
  report_.looked_from = options_.from;
  // An anchor vouches for bodies, not for the leaves that are stored beside them.
  report_.hashed_before = options_.from > 1 && !anchors_.empty();
  guarded("the records"_word, [&] { check_records(); });
  if (next_seq_ <= snapshot_.last_seq) add_problem(next_seq_, next_seq_, "can't be read"_word);
  if (snapshot_.last_seq == 0) add_problem(1, 1, "is missing: the store holds no record"_word);
  guarded("the heads"_word, [&] { check_end(); });
  guarded("the heads"_word, [&] { settle_doubted_anchors(); });
  guarded("the lookups"_word, [&] { check_lookups(); });
  guarded("the names"_word, [&] { check_persons(); });
  guarded("the raw logs"_word, [&] {
    check_raw_chunks();
    check_raw_files();
  });
  guarded("the warnings"_word, [&] {
    for (Sentence& warning : ledger_.backend().warnings()) report_.warnings.push_back(std::move(warning));
  });
  std::stable_sort(report_.problems.begin(), report_.problems.end(), [](const auto& a, const auto& b) {
    return (a.seq == 0 ? UINT64_MAX : a.seq) < (b.seq == 0 ? UINT64_MAX : b.seq);
  });
  report_.records = next_seq_ - 1;
  report_.newest_head = snapshot_.newest_head;
  if (report_.newest_head) report_.newest_head->store = store_id_;
  report_.trusted = report_.problems.empty();
  refuse_mistyped_anchors();
  return std::move(report_);
}

void VerifyRun::check_records() {
  bool goes_on = true;
  const RecordVisitor visit = [&](const LedgerRowView& row) { goes_on = goes_on && take_row(row); };
  while (goes_on && next_seq_ <= snapshot_.last_seq) {
    const std::uint64_t first = next_seq_;
    try {
      ledger_.backend().each_record(first, page_rows, visit);
    } catch (const StoreDamaged&) {
      // One by one, to say which one it is.
      ledger_.backend().each_record(next_seq_, 1, visit);
    }
    if (next_seq_ == first) return;
    if (options_.progress) options_.progress(next_seq_ - 1, snapshot_.last_seq);
  }
}

/// False where the rows that follow can't be looked at.
bool VerifyRun::take_row(const LedgerRowView& row) {
  if (row.seq > snapshot_.last_seq) return false;
  if (row.seq != next_seq_) {
    add_problem(next_seq_, next_seq_, Sentence("verify.record.missing"_key, {{"next", row.seq}}));
    if (row.seq < next_seq_) return false;
    // The tree can't agree any more; what follows is still looked at.
    root_failed_ = true;
    next_seq_ = row.seq;
  }
  check_row(row);
  ++next_seq_;
  check_heads_at(row.seq);
  return true;
}

void VerifyRun::check_row(const LedgerRowView& row) {
  const auto stored = digest_from_bytes(row.leaf);
  const auto holds_key = [&] {
    return row.kind == record_kind::genesis || row.kind == record_kind::key ||
           row.kind == record_kind::key_revoke;
  };
  if (row.seq < options_.from && !holds_key()) {
    if (!stored) add_problem(row.seq, row.seq, "its leaf isn't a SHA-256"_word);
    if (report_.hashed_before)
      check_leaf(row, stored);
    else
      frontier_.append(stored.value_or(Digest{}));
    lookups_complete_ = false;
    return;
  }
  if (!row.well_typed) add_problem(row.seq, row.seq, "its values aren't of the kinds that were written"_word);
  check_leaf(row, stored);
  check_body(row);
}

/// The tree continues with what the body gives.
void VerifyRun::check_leaf(const LedgerRowView& row, const std::optional<Digest>& stored) {
  const Digest leaf = leaf_digest(row.body);
  if (!stored || *stored != leaf)
    add_problem(row.seq, row.seq,
                Sentence("verify.leaf.other"_key,
                         {{"given", hex(leaf).substr(0, 16)}, {"stored", hex(row.leaf).substr(0, 16)}}));
  frontier_.append(leaf);
}

void VerifyRun::check_lookups() {
  if (!lookups_complete_) {
    if (options_.from <= 1) add_problem(0, 0, "what helps to find records can't be checked"_word);
    return;
  }
  UnorderedSetHash stored(sum_key_);
  LookupRow last;
  std::uint64_t newest = 0;
  for (std::size_t rows = page_rows; rows == page_rows;) {
    rows = 0;
    LookupRow next = last;
    ledger_.backend().each_lookup(last, page_rows,
                                  [&](std::string_view topic, std::string_view key, std::uint64_t seq) {
                                    if (seq <= snapshot_.last_seq) stored.add(topic, key, seq);
                                    newest = std::max(newest, seq);
                                    if (++rows == page_rows)
                                      next = {std::string(topic), std::string(key), seq};
                                  });
    if (rows == page_rows && !(last < next)) {  // a damaged tree may lead in a circle
      add_problem(0, 0, "what helps to find records isn't in order (table lookup)"_word);
      return;
    }
    last = next;
  }
  // A commit that came meanwhile has brought records too.
  const bool is_ahead = newest > snapshot_.last_seq && newest > ledger_.backend().snapshot().last_seq;
  if (is_ahead || !(stored == expected_lookups_))
    add_problem(0, 0, "what helps to find records doesn't agree with the records (table lookup)"_word);
}

void VerifyRun::check_persons() {
  Sha256 sha256;
  for (const PersonRow& person : ledger_.backend().persons()) {
    const auto salt = bytes_from_hex(person.salt);
    // The digest alone would let bytes move from the salt to the name.
    const bool is_whole = salt && salt->size() == salt_bytes;
    if (!is_whole || hex(sha256.add(*salt).add(person.name).take()) != person.sha256)
      add_problem(0, 0, Sentence("verify.name.other"_key, {{"name", printable(person.name, 60)}}));
  }
}

}  // namespace seamtakt
