#include <algorithm>
#include <system_error>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t page_rows = 5000;  // a long read would hold up writers

std::string span_text(std::uint64_t first, std::uint64_t last) {
  return first == last ? "record " + std::to_string(first)
                       : "records " + std::to_string(first) + "-" + std::to_string(last);
}

VerifyReport::Span span_of(const LedgerProblem& problem) {
  return {problem.seq, std::max(problem.seq, problem.last_seq)};
}

}  // namespace

VerifyReport verify_ledger(const Ledger& ledger, const VerifyOptions& options) {
  return VerifyRun(ledger, options).run();
}

VerifyReport::Span VerifyReport::first_bad() const {
  // A head that isn't right says no more than that one of its records is bad, where one of them is known to
  // be.
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

std::string VerifyReport::summary() const {
  const bool is_part = looked_from > 1;
  const std::string count = is_part ? span_text(looked_from, records)
                                    : std::to_string(records) + (records == 1 ? " record" : " records");
  if (!trusted) {
    const auto [from, to] = first_bad();
    if (from == 0) return "NOT TRUSTED";
    if (from == to) return "NOT TRUSTED: first bad record " + std::to_string(from);
    return "NOT TRUSTED: a record from " + std::to_string(from) + " to " + std::to_string(to) + " is bad";
  }
  const std::string before = is_part ? "; " + std::string(looked_from > 2 ? "1-" : "") +
                                           std::to_string(looked_from - 1) +
                                           (hashed_before ? " by their digests alone" : " not looked at")
                                     : "";
  if (anchored_to > 0)
    return "OK: " + count + before + ", anchored up to record " + std::to_string(anchored_to) +
           (pinned ? ", signed by the key given" : "");
  if (pinned)
    return "OK: " + count + before +
           ", signed by the key given (no anchor: an old copy or a tail cut off wouldn't show)";
  return "OK but unanchored: " + count + " agree with one another" + before +
         "; without an anchor or key from outside a forged store would too";
}

void VerifyRun::add_problem(std::uint64_t seq, std::uint64_t last_seq, std::string text) {
  constexpr std::size_t most = 50;
  if (report_.problems.size() < most) report_.problems.push_back({seq, last_seq, std::move(text)});
}

/// Runs a part; whatever stops it is a problem, not the end: a damaged database mustn't pass for a short one.
void VerifyRun::guarded(const char* what, const std::function<void()>& part) {
  try {
    part();
  } catch (const StoreDamaged& error) {
    add_problem(0, 0, std::string(what) + " can't be read: " + error.what());
  } catch (const InputError& error) {
    add_problem(0, 0, std::string(what) + " can't be read: " + error.what());
  }
}

VerifyReport VerifyRun::run() {
  for (const Anchor& anchor : options_.anchors) anchors_.emplace(anchor.n, &anchor);
  guarded("the structure", [&] {
    for (const std::string& problem : ledger_.backend().structure_problems()) add_problem(0, 0, problem);
  });
  guarded("the state", [&] { snapshot_ = ledger_.backend().snapshot(); });
  if (options_.from > 1 && snapshot_.last_seq > 0 && options_.from > snapshot_.last_seq)
    throw InputError("--from", std::to_string(options_.from),
                     "one of the store's records, 1 to " + std::to_string(snapshot_.last_seq));
  report_.looked_from = options_.from;
  // An anchor vouches for bodies, not for the leaves that are stored beside them.
  report_.hashed_before = options_.from > 1 && !anchors_.empty();
  guarded("the records", [&] { check_records(); });
  if (next_seq_ <= snapshot_.last_seq) add_problem(next_seq_, next_seq_, "can't be read");
  if (snapshot_.last_seq == 0) add_problem(1, 1, "is missing: the store holds no record");
  guarded("the heads", [&] { check_end(); });
  guarded("the lookups", [&] { check_lookups(); });
  guarded("the names", [&] { check_persons(); });
  guarded("the raw logs", [&] {
    check_raw_chunks();
    check_raw_files();
  });
  guarded("the warnings", [&] {
    for (const std::string& warning : ledger_.backend().warnings()) report_.warnings.push_back(warning);
  });
  std::stable_sort(report_.problems.begin(), report_.problems.end(), [](const auto& a, const auto& b) {
    return (a.seq == 0 ? UINT64_MAX : a.seq) < (b.seq == 0 ? UINT64_MAX : b.seq);
  });
  report_.records = next_seq_ - 1;
  report_.newest_head = snapshot_.newest_head;
  if (report_.newest_head) report_.newest_head->store = store_id_;
  report_.trusted = report_.problems.empty();
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
    add_problem(next_seq_, next_seq_, "is missing: the next one is record " + std::to_string(row.seq));
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
    if (!stored) add_problem(row.seq, row.seq, "its leaf isn't a SHA-256");
    if (report_.hashed_before)
      check_leaf(row, stored);
    else
      frontier_.append(stored.value_or(Digest{}));
    lookups_complete_ = false;
    return;
  }
  if (!row.well_typed) add_problem(row.seq, row.seq, "its values aren't of the kinds that were written");
  check_leaf(row, stored);
  check_body(row);
}

/// The tree goes on with what the body gives.
void VerifyRun::check_leaf(const LedgerRowView& row, const std::optional<Digest>& stored) {
  const Digest leaf = leaf_digest(row.body);
  if (!stored || *stored != leaf)
    add_problem(
        row.seq, row.seq,
        "its body gives leaf " + hex(leaf).substr(0, 16) + ", stored was " + hex(row.leaf).substr(0, 16));
  frontier_.append(leaf);
}

void VerifyRun::check_lookups() {
  if (!lookups_complete_) {
    if (options_.from <= 1) add_problem(0, 0, "what helps to find records can't be checked");
    return;
  }
  UnorderedSetHash stored(sum_key_);
  LookupRow last;
  for (std::size_t rows = page_rows; rows == page_rows;) {
    rows = 0;
    LookupRow next = last;
    ledger_.backend().each_lookup(last, page_rows,
                                  [&](std::string_view topic, std::string_view key, std::uint64_t seq) {
                                    if (seq <= snapshot_.last_seq) stored.add(topic, key, seq);
                                    if (++rows == page_rows)
                                      next = {std::string(topic), std::string(key), seq};
                                  });
    if (rows == page_rows && !(last < next)) {  // a damaged tree may lead in a circle
      add_problem(0, 0, "what helps to find records isn't in order (table lookup)");
      return;
    }
    last = next;
  }
  if (!(stored == expected_lookups_))
    add_problem(0, 0, "what helps to find records doesn't agree with the records (table lookup)");
}

void VerifyRun::check_persons() {
  Sha256 sha256;
  for (const PersonRow& person : ledger_.backend().persons()) {
    const auto salt = bytes_from_hex(person.salt);
    if (!salt || hex(sha256.add(*salt).add(person.name).take()) != person.sha256)
      add_problem(
          0, 0,
          "the name \"" + printable(person.name, 60) + "\" isn't the one that was written (table person)");
  }
}

}  // namespace seamtakt
