#include "store_fixture.hpp"

#include <sys/wait.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>

#include "base/json/json_writer.hpp"
#include "base/time/log_time.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/body/signoff.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/store/raw_chunks.hpp"
#include "records/keep/record_changes.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {

std::string minute(int count) {
  std::string text = utc_text_of_ns((*utc_seconds("2026-03-02T06:00:00Z") + 60 * count) * 1'000'000'000);
  return text;
}

WriteStamp stamp(int at_minute, const std::string& who) {
  return {minute(at_minute), who, "a test", "seamtakt test"};
}

KeyProvider KeyRing::provider() {
  return [this](const std::string&, const std::string& key_id) {
    if (key_id.empty() && keys_.empty()) keys_.push_back(SigningKey::generate());
    for (const SigningKey& key : keys_)
      if (key_id.empty() || key.public_key().id() == key_id) return key;
    throw std::logic_error("the test has no such key");
  };
}

LedgerEntry some_pass(int number) {
  const std::string unit = "U" + std::to_string(number / 4), seam = "S" + std::to_string(number % 4 + 1);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("unit_serial", unit).member("weldment", "BD");
  json.member("seam", seam).member("pass", 1).member("heat_input_kJ_mm", 0.5 + number / 1000.0);
  json.member("verdict", number % 7 == 6 ? "fail" : "pass").end_object();
  return {record_kind::pass,
          {},
          {{"results", json.take()}},
          {{"pass", unit + "/BD/" + seam + "/1"}, {"unit", unit}}};
}

LedgerEntry correction_of(const Ledger& ledger, std::uint64_t seq, const std::string& member,
                          const std::string& value) {
  return correction_entry(ledger, ledger.record(seq), {{member, value}},
                          [](const std::string& name) { return name; });
}

SampleStore make_sample(const std::string& uri) {
  SampleStore sample;
  Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, true, false});
  int at = 0;
  const auto commit = [&](const std::function<void(LedgerBatch&)>& fill) {
    ledger.write(sample.keys.provider(), stamp(at, at % 2 ? "anna" : "J\xC3\xB6rg"), fill);
    ++at;
    SignedHead head = *ledger.backend().snapshot().newest_head;
    head.store = ledger.store_id();
    sample.anchors.push_back(head.anchor_line());
    sample.commit_ends.push_back(head.n);
  };
  sample.raw_name = "log.csv";
  for (int i = 0; sample.raw_bytes.size() < 3 * raw_chunk_bytes + 1000; ++i)
    sample.raw_bytes += std::to_string(i) + ",250,25\n";
  const ScratchFolder folder;
  std::ofstream(folder / "log.csv", std::ios::binary) << sample.raw_bytes;
  const RawChunksRow chunks = raw_chunks_of(folder / "log.csv");
  sample.raw_sha256 = chunks.sha256;

  commit([&](LedgerBatch& batch) {
    batch.keep_raw_chunks(chunks);
    batch.add({record_kind::ingest,
               {},
               {{"raw", "[{\"name\":\"log.csv\",\"sha256\":\"" + chunks.sha256 + "\",\"chunk_root\":\"" +
                            chunk_root(chunks.digests) + "\"}]"}},
               {{"log", chunks.sha256}}});
    for (int i = 0; i < 4; ++i) batch.add(some_pass(i));
  });
  for (int i = 4; i < 7; ++i) commit([&](LedgerBatch& batch) { batch.add(some_pass(i)); });
  commit([&](LedgerBatch& batch) { batch.add(correction_of(ledger, 4, "results.seam", "S9")); });
  const SigningKey next = SigningKey::generate();
  commit([&](LedgerBatch& batch) {
    batch.add({record_kind::key, {}, key_members(next, batch.store_id()), {{"signing_key", ""}}});
  });
  sample.keys.add(next);
  commit([&](LedgerBatch& batch) {
    const SigningKey person = SigningKey::generate();
    batch.add({record_kind::signoff,
               5,
               signoff_members(person, ledger.store_id(), 5, leaf_digest(ledger.record(5).body)),
               {}});
  });
  commit([&](LedgerBatch& batch) {
    for (int i = 7; i < 12; ++i) batch.add(some_pass(i));
  });
  return sample;
}

std::vector<ForgedCommit> take_apart(const std::string& uri, const SigningKey& first, const SigningKey& later,
                                     std::uint64_t later_from) {
  const Ledger ledger = Ledger::open(uri, {});
  std::vector<ForgedCommit> commits;
  std::uint64_t from = 1;
  for (const SignedHead& head : ledger.backend().heads(0, 10000)) {
    ForgedCommit commit{{}, head.utc, from >= later_from ? later : first, ""};
    for (const LedgerRow& row : ledger.backend().records(from, head.n - from + 1))
      commit.bodies.push_back(row.body);
    from = head.n + 1;
    commits.push_back(std::move(commit));
  }
  return commits;
}

void put_together(const std::string& uri, const std::vector<ForgedCommit>& commits) {
  const auto backend = open_ledger_backend(uri, {StoreOpening::For::writing, true, false});
  MerkleFrontier frontier;
  std::string previous(no_previous_head), store;
  backend->begin();
  for (const ForgedCommit& commit : commits) {
    std::vector<LedgerRow> rows;
    std::vector<LookupRow> lookups;
    for (const std::string& body : commit.bodies) {
      const JsonNode tree = parse_json(body, "forged");
      if (store.empty()) store = body_text(tree, "store");
      const Digest leaf = leaf_digest(body);
      frontier.append(leaf);
      rows.push_back({frontier.size(), body_text(tree, "kind"), body, std::string(bytes_of(leaf))});
      const auto of_body = lookups_in_body(body, frontier.size());
      lookups.insert(lookups.end(), of_body.begin(), of_body.end());
    }
    backend->insert_records(rows);
    backend->insert_lookups(lookups);
    SignedHead head;
    head.store = store;
    head.n = frontier.size();
    head.root = frontier.root();
    head.utc = commit.utc;
    head.previous = previous;
    head.sign(commit.key);
    if (!commit.key_id.empty()) {
      head.key_id = commit.key_id;
      head.signature = commit.key.sign(head.text());
    }
    backend->insert_head(head);
    previous = head.text_sha256();
  }
  backend->set_state({frontier.size(), frontier.bytes()});
  backend->commit();
}

VerifyReport verified(const std::string& uri, const std::vector<std::string>& anchors,
                      const std::string& pinned, const std::string& raw_folder) {
  VerifyOptions options;
  std::string text;
  for (const std::string& line : anchors) text += line + "\n";
  if (!anchors.empty()) options.anchors = parse_anchors(text, "anchors");
  options.pinned_key_id = pinned;
  options.raw_folder = raw_folder;
  return verify_ledger(Ledger::open(uri, {}), options);
}

std::string bundle_of(const std::string& uri) {
  std::string text;
  export_bundle(Ledger::open(uri, {}), {}, [&](std::string_view piece) { text += piece; });
  return text;
}

std::string problems_text(const VerifyReport& report) {
  std::string text;
  for (const LedgerProblem& each : report.problems)
    text += std::to_string(each.seq) + "-" + std::to_string(each.last_seq) + ": " + each.text() + "\n";
  return text;
}

namespace {

bool has_python() {
  static const bool has = std::system("python3 -c pass >/dev/null 2>&1") == 0;
  return has;
}

void write_lines(const std::string& path, const std::vector<std::string>& lines) {
  std::ofstream out(path);
  for (const std::string& line : lines) out << line << "\n";
}

}  // namespace

int second_verdict(const std::string& file, const std::vector<std::string>& anchors,
                   const ScratchFolder& folder, const std::string& pinned_pem) {
  static int calls = 0;
  if (!has_python() || (sanitized && calls++ % 8 != 0)) return -1;
  std::string command = "python3 " + source_path("/reference/verify_log.py ") + file;
  if (!anchors.empty()) {
    write_lines(folder / "anchors.txt", anchors);
    command += " --anchor " + (folder / "anchors.txt");
  }
  if (!pinned_pem.empty()) {
    std::ofstream(folder / "pin.pem") << pinned_pem;
    command += " --pub " + (folder / "pin.pem");
  }
  const int status = std::system((command + " >" + (folder / "second.txt") + " 2>&1").c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : 99;
}

std::vector<int> second_verdicts(const std::vector<std::string>& files,
                                 const std::vector<std::string>& anchors, const ScratchFolder& folder) {
  if (!has_python()) return {};
  write_lines(folder / "anchors.txt", anchors);
  write_lines(folder / "files.txt", files);
  const std::string command = "python3 " + source_path("/tests/ledger/verify_many.py --anchor ") +
                              (folder / "anchors.txt") + " <" + (folder / "files.txt") + " >" +
                              (folder / "verdicts.txt");
  std::vector<int> verdicts;
  if (std::system(command.c_str()) == 0) {
    std::ifstream in(folder / "verdicts.txt");
    for (int verdict = 0; in >> verdict;) verdicts.push_back(verdict);
  }
  verdicts.resize(files.size(), 99);
  return verdicts;
}

}  // namespace seamtakt::test
