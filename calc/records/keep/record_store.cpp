#include "records/keep/record_store.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>

#include "records/judge/length_judgement.hpp"
#include "records/judge/manual_judgement.hpp"
#include "records/keep/ingest_members.hpp"
#include "records/keep/later_calibration.hpp"
#include "records/keep/stored_parts.hpp"

namespace seamtakt {

namespace {

/// A part of a lookup key in which '/' can't be mistaken for the separator.
std::string key_part(const std::string& text) {
  std::string part;
  for (const char c : text) part += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return part;
}

/// One audit on its way into a batch.
class Ingest {
 public:
  Ingest(const Ledger& ledger, LedgerBatch& batch, const AuditResult& result, const IngestNote& note)
      : history_(ledger), batch_(batch), result_(result), note_(note) {
    for (const Finding& finding : result.findings) findings_.emplace(finding.where, &finding);
  }

  IngestOutcome run() {
    if (!find_new_logs()) {
      close_known_parts();
      return outcome();
    }
    std::vector<const PassRecord*> passes;
    for (const PassRecord& record : result_.passes)
      if (is_new_[record.source] || is_new_[record.source_last]) passes.push_back(&record);
    for (const PassRecord* record : passes) keep_schedule(record->schedule);
    for (const RawChunksRow& chunks : note_.chunks) batch_.keep_raw_chunks(chunks);
    outcome_.first_seq = ingest_seq_ = batch_.add(ingest_entry(result_, note_, passes.size()));
    for (const PassRecord* record : passes) add_pass(*record);
    for (const ManualSeam& seam : result_.manual) add_manual(seam);
    close_parts_left(passes);
    outcome_.last_seq = batch_.next_seq() - 1;
    outcome_.added = true;
    describe(passes.size());
    return outcome();
  }

 private:
  IngestOutcome outcome() {
    outcome_.sentence = Sentence("ingest.outcome"_key, {{"said", std::move(said_)}});
    return std::move(outcome_);
  }

  bool find_new_logs() {
    for (const AuditedLog& log : result_.logs) {
      if (log.sha256.empty()) throw std::invalid_argument("a log without its SHA-256 can't be stored");
      const auto before = batch_.find("log", log.sha256);
      is_new_[log.name] = before.empty();
      if (before.empty())
        ++new_logs_;
      else
        outcome_.first_seq = outcome_.last_seq = before.front();
    }
    if (new_logs_ > 0) return true;
    said_.push_back(Sentence("ingest.nothing-added"_key,
                             {{"logs", result_.logs.size()}, {"record", outcome_.first_seq}}));
    return false;
  }

  void keep_schedule(const std::string& id) {
    const Schedule* schedule = note_.plan != nullptr ? find_by_id(note_.plan->schedules, id) : nullptr;
    if (schedule == nullptr || !kept_.insert(id).second) return;
    const KeptSchedule kept = schedule_entry(*note_.plan, *schedule);
    const auto before = batch_.find("schedule_sha256", kept.sha256);
    schedule_seq_[id] = {before.empty() ? batch_.add(kept.entry) : before.front(), kept.sha256};
  }

  std::vector<const Finding*> findings_at(const std::string& place) const {
    std::vector<const Finding*> found;
    const auto range = findings_.equal_range(place);
    for (auto at = range.first; at != range.second; ++at) found.push_back(at->second);
    return found;
  }

  void add_pass(const PassRecord& record) {
    const auto findings = findings_at(record.place());
    LedgerEntry entry = pass_entry(record, findings, note_.plan, ingest_seq_);
    if (const auto kept = schedule_seq_.find(record.schedule); kept != schedule_seq_.end()) {
      entry.members.emplace_back("schedule_record", std::to_string(kept->second.first));
      entry.members.emplace_back("schedule", "\"" + kept->second.second + "\"");
    }
    for (const auto& [topic, key] : entry.lookups) {
      if (topic != "pass") continue;
      for (const std::uint64_t seq : records_of_pass(history_, key))
        if (seq < ingest_seq_) outcome_.already_stored.push_back(seq);
    }
    const std::uint64_t seq = batch_.add(entry);
    // A log may come after the calibration that decides on its instruments.
    if (const auto again = calibrations_.judge(record, seq)) batch_.add(judgement_entry(*again));
    if (record.verdict == Verdict::fail)
      open_nonconformance(seq, record.unit_serial, record.place(), findings);
  }

  void add_manual(const ManualSeam& seam) {
    const std::string place = manual_place(seam);
    const auto findings = findings_at(place);
    const std::string welder = seam.welder.empty() ? "" : batch_.person(seam.welder);
    const std::uint64_t seq = batch_.add(manual_entry(seam, welder, findings, ingest_seq_));
    if (!seam.failed_by.empty()) open_nonconformance(seq, seam.unit_serial, place, findings);
  }

  void open_nonconformance(std::uint64_t seq, const std::string& unit, const std::string& place,
                           const std::vector<const Finding*>& findings) {
    batch_.add(nonconformance_entry(seq, unit, place, findings));
    ++outcome_.nonconformances;
  }

  /// The store's part, if it still is one and the pass isn't in this audit, which judged it with the part.
  void close_part(std::uint64_t seq, const PassRecord* later) {
    if (!closed_.insert(seq).second) return;
    const auto part = open_part(history_, seq);
    if (!part) return;
    if (later != nullptr) {
      if (part->unit_serial == later->unit_serial || later->started <= part->started) return;
      for (const PassRecord& record : result_.passes)
        if (record.place() == part->place) return;
    }
    const Finding finding = short_finding(*part);
    open_nonconformance(seq, part->unit_serial, part->place, {&finding});
  }

  /// Their robot has begun on another unit: no further log will continue with them.
  void close_parts_left(const std::vector<const PassRecord*>& passes) {
    std::map<std::string, const PassRecord*> latest;  // by robot
    for (const PassRecord* record : passes) {
      if (record->robot.empty() || record->unit_serial.empty() || record->started.empty()) continue;
      const PassRecord*& at = latest[record->robot];
      if (at == nullptr || record->started > at->started) at = record;
    }
    for (const auto& [robot, record] : latest)
      for (const std::uint64_t seq : batch_.find(part_topic, robot))
        if (seq < ingest_seq_) close_part(seq, record);
  }

  /// These logs are stored, and their units are now declared closed (AuditOptions::close_units).
  void close_known_parts() {
    for (const PassRecord& record : result_.passes) {
      const auto& failed = record.failed_by;
      if (record.unit_serial.empty()) continue;
      if (std::find(failed.begin(), failed.end(), length_short_rule) == failed.end()) continue;
      for (const std::uint64_t seq : records_of_pass(
               history_, pass_lookup_key(record.unit_serial, record.weldment, record.seam, record.pass)))
        close_part(seq, nullptr);
    }
    if (outcome_.nonconformances == 0) return;
    say("ingest.opened.too-short"_key, outcome_.nonconformances);
  }

  void describe(std::size_t passes) {
    said_.push_back(
        Sentence("ingest.stored"_key,
                 {{"passes", passes}, {"first", outcome_.first_seq}, {"last", outcome_.last_seq}}));
    if (outcome_.nonconformances > 0) say("ingest.opened.failed"_key, outcome_.nonconformances);
    if (new_logs_ < result_.logs.size()) say("ingest.logs-before"_key, result_.logs.size() - new_logs_);
    if (!outcome_.already_stored.empty()) say("ingest.records-before"_key, outcome_.already_stored.size());
  }

  void say(SentenceKey key, std::size_t count) { said_.push_back(Sentence(key, {{"count", count}})); }

  RecordHistory history_;
  LaterCalibrations calibrations_{history_};
  LedgerBatch& batch_;
  const AuditResult& result_;
  const IngestNote& note_;
  std::multimap<std::string, const Finding*> findings_;  ///< by place
  std::map<std::string, bool> is_new_;                   ///< by the log's name
  std::size_t new_logs_ = 0;
  std::set<std::string> kept_;
  std::set<std::uint64_t> closed_;  ///< parts that have been looked at
  std::map<std::string, std::pair<std::uint64_t, std::string>> schedule_seq_;  ///< by id: record, digest
  std::uint64_t ingest_seq_ = 0;
  IngestOutcome outcome_;
  std::vector<Sentence> said_;  ///< what happened, one sentence after the other
};

}  // namespace

std::string pass_lookup_key(const std::string& unit_serial, const std::string& weldment,
                            const std::string& seam, const std::optional<int>& pass) {
  return key_part(unit_serial) + "/" + key_part(weldment) + "/" + key_part(seam) + "/" +
         (pass ? std::to_string(*pass) : "-");
}

IngestOutcome append_audit(Ledger& ledger, const KeyProvider& key, const AuditResult& result,
                           const IngestNote& note) {
  if (result.too_many_rejected)
    throw std::invalid_argument("an audit with too many rejected rows isn't stored");
  IngestOutcome outcome;
  ledger.write(key, note.stamp,
               [&](LedgerBatch& batch) { outcome = Ingest(ledger, batch, result, note).run(); });
  return outcome;
}

}  // namespace seamtakt
