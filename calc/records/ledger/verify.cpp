#include <algorithm>
#include <system_error>

#include "base/error.hpp"
#include "base/joined.hpp"
#include "records/ledger/verify_run.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t page_rows = 5000;

}  // namespace

VerifyReport verify_ledger(const Ledger& ledger, const VerifyOptions& options) {
  return VerifyRun(ledger, options).run();
}

std::uint64_t VerifyReport::first_bad_seq() const {
  std::uint64_t first = 0;
  for (const LedgerProblem& problem : problems)
    if (problem.seq > 0 && (first == 0 || problem.seq < first)) first = problem.seq;
  return first;
}

std::string VerifyReport::summary() const {
  const std::string count = std::to_string(records) + (records == 1 ? " record" : " records");
  if (!trusted) {
    const std::uint64_t first = first_bad_seq();
    return "NOT TRUSTED" + (first > 0 ? ": first bad record " + std::to_string(first) : std::string());
  }
  if (anchored_to > 0)
    return "OK: " + count + ", anchored up to record " + std::to_string(anchored_to) +
           (pinned ? ", signed by the key given" : "");
  if (pinned)
    return "OK: " + count +
           ", signed by the key given (no anchor: an old copy or a tail cut off wouldn't show)";
  return "OK but unanchored: " + count +
         " agree with one another; without an anchor or key from outside a forged store would too";
}

void RowSum::add(std::string_view topic, std::string_view key, std::uint64_t seq) {
  const std::string number = std::to_string(seq);
  const Digest digest = sha256_.add(topic)
                            .add(std::string_view("\0", 1))
                            .add(key)
                            .add(std::string_view("\0", 1))
                            .add(number)
                            .take();
  for (std::size_t i = 0; i < words_.size(); ++i) {
    std::uint64_t word = 0;
    for (std::size_t k = 0; k < 8; ++k) word = word << 8 | digest[8 * i + k];
    words_[i] += word;
  }
}

void VerifyRun::add_problem(std::uint64_t seq, std::uint64_t last_seq, std::string text) {
  constexpr std::size_t most = 50;
  if (report_.problems.size() < most) report_.problems.push_back({seq, last_seq, std::move(text)});
}

/// Runs a part; whatever stops it is a problem, not the end: a damaged database mustn't pass for a short one.
void VerifyRun::guarded(const char* what, const std::function<void()>& part) {
  try {
    part();
  } catch (const std::system_error& error) {
    if (error.code() == std::errc::device_or_resource_busy) throw;
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
  while (next_seq_ <= snapshot_.last_seq) {
    std::vector<LedgerRow> page;
    try {
      page = ledger_.backend().records(next_seq_, page_rows);
    } catch (const std::system_error&) {
      // One by one, to say which one it is.
      page = ledger_.backend().records(next_seq_, 1);
    }
    if (page.empty()) {
      return;
    }
    for (const LedgerRow& row : page) {
      if (row.seq > snapshot_.last_seq) return;
      if (row.seq != next_seq_) {
        add_problem(next_seq_, next_seq_, "is missing: the next one is record " + std::to_string(row.seq));
        if (row.seq < next_seq_) return;
        // The tree can't agree any more; what follows is still looked at.
        root_failed_ = true;
        next_seq_ = row.seq;
      }
      check_row(row);
      ++next_seq_;
      check_heads_at(row.seq);
    }
    if (options_.progress) options_.progress(next_seq_ - 1, snapshot_.last_seq);
  }
}

void VerifyRun::check_row(const LedgerRow& row) {
  const auto stored = digest_from_bytes(row.leaf);
  const bool holds_key =
      row.kind == record_kind::genesis || row.kind == record_kind::key || row.kind == record_kind::key_revoke;
  if (row.seq < options_.from && !holds_key) {
    if (!stored) add_problem(row.seq, row.seq, "its leaf isn't a SHA-256");
    frontier_.append(stored.value_or(Digest{}));
    lookups_complete_ = false;
    return;
  }
  if (!row.well_typed) add_problem(row.seq, row.seq, "its values aren't of the kinds that were written");
  const Digest leaf = leaf_digest(row.body);
  if (!stored || *stored != leaf)
    add_problem(
        row.seq, row.seq,
        "its body gives leaf " + hex(leaf).substr(0, 16) + ", stored was " + hex(row.leaf).substr(0, 16));
  frontier_.append(leaf);
  check_body(row);
}

void VerifyRun::check_body(const LedgerRow& row) {
  const auto bad = [&](const std::string& text) { add_problem(row.seq, row.seq, text); };
  if (!scan_canonical_object(row.body, members_)) {
    lookups_complete_ = false;
    return bad("its body isn't in canonical form");
  }
  const std::string_view kind = member_text(members_, "kind"), store = member_text(members_, "store");
  if (member_text(members_, "v") != std::to_string(ledger_body_version))
    bad("its body is of a version that this program doesn't know");
  if (!is_record_kind(row.kind) || kind != "\"" + row.kind + "\"") bad("its kind isn't the one in its body");
  if (member_text(members_, "seq") != std::to_string(row.seq))
    bad("its body says record " + std::string(member_text(members_, "seq").substr(0, 20)));
  if (row.seq == 1) {
    if (store.size() == 34) store_id_ = store.substr(1, 32);
    if (row.kind != record_kind::genesis) bad("the first record isn't the store's genesis");
  } else if (row.kind == record_kind::genesis) {
    bad("a second genesis");
  }
  if (store.size() != 34 || store.substr(1, 32) != store_id_) bad("it is of another store");
  const std::string_view t = member_text(members_, "t");
  if (t.size() != 22 || !utc_seconds(t.substr(1, 20))) bad("it has no time");
  for (const char* required : {"who", "why", "app", lookups_member})
    if (member_text(members_, required).empty()) bad(std::string("it has no ") + required);
  if (const std::string_view ref = member_text(members_, "ref"); !ref.empty()) {
    const std::uint64_t number = std::strtoull(std::string(ref).c_str(), nullptr, 10);
    if (number == 0 || number >= row.seq)
      bad("it points at record " + std::string(ref.substr(0, 20)) + ", not at an earlier one");
    expected_lookups_.add("ref", ref, row.seq);
  }
  check_lookup_member(member_text(members_, lookups_member), row.seq);
  check_meaning(row, row.kind);
}

/// The member is `["topic:key",...]` in canonical form; a key with escapes takes the long way.
void VerifyRun::check_lookup_member(std::string_view text, std::uint64_t seq) {
  std::vector<std::string> plain;
  if (text.find('\\') != std::string_view::npos) {
    const JsonNode list = parse_json(text, "keys");
    for (const JsonNode& each : list.elements) plain.push_back(each.string);
  } else {
    for (std::size_t at = text.find('"'); at != std::string_view::npos;) {
      const std::size_t end = text.find('"', at + 1);
      plain.emplace_back(text.substr(at + 1, end - at - 1));
      at = text.find('"', end + 1);
    }
  }
  // A key that a body names twice stands once in the table.
  if (plain.size() > 1) {
    std::sort(plain.begin(), plain.end());
    plain.erase(std::unique(plain.begin(), plain.end()), plain.end());
  }
  for (const std::string& each : plain) {
    const auto colon = each.find(':');
    const std::string_view whole = each;
    if (colon == std::string::npos)
      add_problem(seq, seq, "its keys aren't topic:key");
    else
      expected_lookups_.add(whole.substr(0, colon), whole.substr(colon + 1), seq);
  }
}

void VerifyRun::check_lookups() {
  if (!lookups_complete_) {
    if (options_.from <= 1) add_problem(0, 0, "what helps to find records can't be checked");
    return;
  }
  RowSum stored;
  LookupRow last;
  for (;;) {
    const auto page = ledger_.backend().lookups(last, page_rows);
    for (const LookupRow& row : page)
      if (row.seq <= snapshot_.last_seq) stored.add(row.topic, row.key, row.seq);
    if (page.size() < page_rows) break;
    last = page.back();
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
