#include "records/passes/audit.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <set>
#include <stdexcept>

#include "base/error.hpp"
#include "base/files/digest.hpp"
#include "base/text/comma_list.hpp"
#include "formula/heat/heat_input.hpp"
#include "plan/seam_geometry.hpp"
#include "records/judge/completeness.hpp"
#include "records/judge/length_judgement.hpp"
#include "records/judge/manual_judgement.hpp"
#include "records/passes/pass_grouper.hpp"
#include "records/passes/pass_review.hpp"
#include "records/passes/plan_jobs.hpp"
#include "records/passes/planned_pass.hpp"
#include "records/passes/unit_order.hpp"

namespace seamtakt {

namespace {

/// Columns kept word for word: those asked for, then those that the plan requires and that aren't measured.
std::vector<std::string> carried_columns(const AuditOptions& options, const Plan* plan) {
  std::vector<std::string> carry;
  const auto add = [&](const std::string& name) {
    if (std::find(carry.begin(), carry.end(), name) == carry.end()) carry.push_back(name);
  };
  for (const auto& name : options.carry) add(name);
  if (plan != nullptr)
    for (const auto& name : plan->record_requires)
      if (name != four_eyes_requirement) add(name);
  return carry;
}

void check_process(const AuditOptions& options) {
  if (options.process.empty() || thermal_efficiency_of(options.process)) return;
  std::vector<std::string> known;
  for (const auto& each : process_efficiencies()) known.emplace_back(each.process);
  throw InputError("--process", Sentence::verbatim('"' + printable(options.process, 40) + '"'),
                   Sentence("audit.process.known"_key, {{"known", comma_list(known)}}));
}

/// One audit from the first log to the last finding.
class Audit {
 public:
  Audit(const AuditOptions& options, const Plan* plan)
      : options_(options), book_(options_, planned_of(plan), carried_columns(options, plan)) {}

  void read(const LogSource& source) {
    const std::shared_ptr<ByteSource> bytes = source.bytes ? source.bytes : open_log_bytes(source.path);
    const std::uint64_t rejected_before = result_.rejected.count;
    const std::string name = source.path == "-" && !source.bytes ? "standard input" : source.path;
    std::optional<Sha256> digest;
    LogReaderOptions reading = options_.reader;
    if (options_.digest) {
      digest.emplace();
      reading.observe = [&](std::string_view block) { digest->add(block); };
    }
    LogSweep reader(*bytes, name, options_.columns ? &*options_.columns : nullptr, book_.carry(),
                    result_.rejected, reading);
    book_.begin_log(name, reader.shape());
    reader.run(options_.arc_current_A, std::llround(options_.arc_off_s * 1e9), [&](LogChunk& chunk) {
      for (const ChunkRow& row : chunk.rows) {
        book_.add(row.row);
        if (row.run_rows > 0) book_.add_run(row.row, chunk.run_of(row));
      }
      if (options_.progress) options_.progress(chunk.bytes_taken, bytes->bytes_total());
    });
    book_.end_log();
    if (reader.rows_read() == 0)
      throw InputError(printable(name), "no data row"_word, "data rows below the header"_word);
    result_.rows.read += reader.rows_read();
    result_.logs.push_back(
        {name, reader.bytes_read(), reader.rows_read(), digest ? hex(digest->take()) : ""});
    note_log(reader, result_.rejected.count - rejected_before);
  }

  AuditResult finish() {
    std::vector<WeldedPass> welded;
    auto entries = book_.finish();
    // Completeness points at the records: they must not move.
    result_.passes.reserve(entries.size());
    for (auto& entry : entries) {
      welded.push_back(review(*entry));
      entry.reset();
    }
    result_.rows.arc_off = book_.arc_off_rows();
    result_.rows.rejected = result_.rejected.count;
    if (!result_.rows.add_up())
      throw std::logic_error("rows read aren't those in passes, arc-off and rejected");
    if (planned() != nullptr) judge_lengths(result_.passes, *planned(), options_, result_.findings);
    result_.manual = options_.manual;
    judge_manual(result_.manual, result_.passes, planned(), {options_.welders, options_.units},
                 result_.findings);
    take_stored();
    result_.units = check_completeness(welded, {result_.manual, options_.units, result_.stored}, planned(),
                                       result_.findings);
    if (planned() != nullptr) {
      check_unit_order(result_.passes, *planned(), result_.findings);
      check_contradictions(result_.passes, *planned(), result_.findings);
      result_.statistics = process_statistics(result_.passes, planned()->plan(), result_.findings);
    }
    result_.too_many_rejected = result_.rejected.count > options_.max_rejected;
    note_audit();
    return std::move(result_);
  }

 private:
  const PlannedPasses* planned_of(const Plan* plan) {
    if (plan != nullptr) planned_.emplace(*plan);
    return planned();
  }
  const PlannedPasses* planned() const { return planned_ ? &*planned_ : nullptr; }

  /// What the store has of the units in these logs: a repair's log has one pass of many.
  void take_stored() {
    if (!options_.stored_unit || planned() == nullptr) return;
    std::set<std::string> units;
    for (const PassRecord& pass : result_.passes) units.insert(pass.unit_serial);
    for (const ManualSeam& seam : result_.manual) units.insert(seam.unit_serial);
    for (const UnitTime& unit : options_.units) units.insert(unit.unit_serial);
    units.erase("");
    for (const std::string& unit : units)
      for (StoredPass& pass : options_.stored_unit(unit)) result_.stored.push_back(std::move(pass));
  }

  WeldedPass review(const PassEntry& entry) {
    PassRecord& record = result_.passes.emplace_back();
    record.source = result_.logs[entry.first_log].name;
    record.source_last = result_.logs[entry.last_log].name;
    const std::size_t first_finding = result_.findings.size();
    const Robot* robot = entry.planned ? planned_->robot(*entry.planned->seam, entry.robot) : nullptr;
    PassReview review{entry, entry.sums.totals(), options_, planned(), robot, record, result_.findings, ""};
    fill_figures(review);
    review.place = record.place();
    fill_welded_length(review);
    fill_heat_input(review);
    check_log(review);
    check_record(review);
    judge_limits(review);
    judge_excursions(review);
    decide_verdict(review, first_finding);
    result_.rows.in_passes += record.samples;
    const bool known = entry.planned.has_value();
    return {&record, known, entry.repeated, known ? welded_length_mm(*entry.planned->seam) : 0};
  }

  void note(const char* rule, Severity severity, std::string where, Sentence sentence) {
    result_.findings.push_back(
        {rule, severity, std::move(where), std::nullopt, std::nullopt, "", std::move(sentence), no_source});
  }

  void note_log(const LogSweep& reader, std::uint64_t rejected) {
    const double highest_A = reader.highest_A();
    const std::string where = printable(reader.file());
    if (highest_A <= options_.arc_current_A && reader.rows_read() > rejected)
      note("record.arc.never", Severity::warn, where,
           Sentence("record.arc.never"_key, {{"highest", UnitValue{highest_A, "A"}}}));
    if (const std::vector<std::string>& ignored = reader.shape().ignored; !ignored.empty())
      note("record.columns.ignored", Severity::note, where,
           Sentence("record.columns.ignored"_key, {{"columns", printable(comma_list(ignored), 400)}}));
    if (reader.any_time_without_offset())
      note("record.time.no-offset", Severity::note, where,
           "Times have no UTC offset: they are taken as UTC."_word);
  }

  void note_audit() {
    if (result_.rejected.count > 0)
      note("record.rows.rejected", Severity::warn, printable(result_.rejected.listed[0].file),
           Sentence("record.rows.rejected"_key,
                    {{"rejected", result_.rejected.count}, {"rows", result_.rows.read}}));
    if (book_.weldment_inferred())
      note("record.weldment.inferred", Severity::note, "",
           "The log names no weldment: the plan's only one is taken."_word);
    const std::vector<std::string> jobs(book_.unknown_jobs().begin(), book_.unknown_jobs().end());
    if (!jobs.empty())
      note("record.job.unknown", Severity::warn, "",
           Sentence("record.job.unknown"_key, {{"jobs", comma_list(jobs)}}));
  }

  const AuditOptions& options_;
  std::optional<PlannedPasses> planned_;
  PassGrouper book_;
  AuditResult result_;
};

}  // namespace

AuditResult audit(const std::vector<LogSource>& logs, const AuditOptions& options, const Plan* plan) {
  check_process(options);
  AuditOptions with_jobs = options;
  with_jobs.columns = with_plan_jobs(options.columns, plan);
  Audit run(with_jobs, plan);
  for (const LogSource& log : logs) run.read(log);
  return run.finish();
}

}  // namespace seamtakt
