#include "records/judge/length_judgement.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "formula/uncertainty/guard_band.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "records/judge/seam_union.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

/// Additional allowance for a length from the logged travel speed.
constexpr double by_speed_share = 0.02;

/// `in_runs`: with the runs of an intermittent seam, found and needed.
Sentence short_sentence(bool closed, bool in_runs, const PassCoverage& seam, const SeamUnion& found) {
  std::vector<Argument> arguments = {{"welded", mm(found.covered_mm)}, {"needed", mm(seam.needed_mm)}};
  if (in_runs) {
    arguments.emplace_back("runs_found", found.runs_found);
    arguments.emplace_back("runs_needed", found.runs_needed);
  }
  if (closed) {
    arguments.emplace_back("short", mm(seam.needed_mm - found.covered_mm));
    arguments.emplace_back("allowed", mm(seam.allowed_short_mm));
  }
  const SentenceKey key = closed    ? in_runs ? "record.length.short.runs"_key : "record.length.short"_key
                          : in_runs ? "record.length.part.runs"_key
                                    : "record.length.part"_key;
  return Sentence(key, std::move(arguments));
}

/// The unit that each robot began last, so that a finished unit is recognised.
class RobotsWay {
 public:
  void add(const PassRecord& record) {
    if (record.unit_serial.empty()) return;
    Begun& begun = begun_[way_of(record)];
    if (record.unit_serial == begun.unit) {
      begun.at_ns = std::max(begun.at_ns, record.first_arc_ns);
    } else if (begun.unit.empty() || record.first_arc_ns > begun.at_ns) {
      begun.before_ns = begun.at_ns;
      begun.has_before = !begun.unit.empty();
      begun.unit = record.unit_serial;
      begun.at_ns = record.first_arc_ns;
    } else if (!begun.has_before || record.first_arc_ns > begun.before_ns) {
      begun.has_before = true;
      begun.before_ns = record.first_arc_ns;
    }
  }

  /// Whether the robot began on another unit after this record's last arc.
  bool has_left(const PassRecord& record) const {
    const auto at = begun_.find(way_of(record));
    if (at == begun_.end()) return false;
    const Begun& begun = at->second;
    return begun.unit != record.unit_serial ? begun.at_ns > record.last_arc_ns
                                            : begun.has_before && begun.before_ns > record.last_arc_ns;
  }

 private:
  /// The unit begun last, and the latest begin on any other unit.
  struct Begun {
    std::string unit;
    std::int64_t at_ns = 0, before_ns = 0;
    bool has_before = false;
  };
  using Way = std::pair<std::string, std::string>;

  /// Times can be compared within a log, and between logs if they are calendar times and name the robot.
  static Way way_of(const PassRecord& record) {
    const bool across_logs = record.has_calendar_time && !record.robot.empty();
    return {record.robot, across_logs ? "" : record.source};
  }

  std::map<Way, Begun> begun_;
};

class LengthJudgement {
 public:
  LengthJudgement(const PlannedPasses& plan, const AuditOptions& options, Findings& findings)
      : plan_(plan), options_(options), findings_(findings) {}

  void add(PassRecord& record) {
    way_.add(record);
    const auto& open = record.undecided_by;
    const bool is_cut = std::find(open.begin(), open.end(), unit_border_rule) != open.end();
    if (!record.coverage || record.schedule.empty() || record.frozen_s > 0 || is_cut) return;
    // Without a serial number two records may be of two units.
    const std::size_t own = record.unit_serial.empty() || !record.pass ? passes_.size() + 1 : 0;
    Key key{record.unit_serial, record.weldment, record.seam, record.pass.value_or(0), own};
    const auto [at, added] = by_key_.try_emplace(std::move(key), passes_.size());
    if (added) passes_.emplace_back();
    passes_[at->second].push_back(&record);
  }

  void finish() {
    for (const auto& records : passes_) judge(records);
  }

 private:
  using Key = std::tuple<std::string, std::string, std::string, int, std::size_t>;
  using Records = std::vector<PassRecord*>;

  /// A length is the difference of two positions, whose uncertainties add as squares (JCGM 100:2008, 5.1.2).
  double allowed_short_mm(const PassRecord& record) const {
    const PassCoverage& coverage = *record.coverage;
    const bool by_positions = !coverage.spans.empty();
    const Seam* seam = plan_.seam(record.weldment, record.seam);
    const Robot* robot = seam != nullptr ? plan_.robot(*seam, record.robot) : nullptr;
    const auto u = relative_uncertainty(plan_.plan(), robot != nullptr ? robot->id : record.robot,
                                        by_positions ? "position" : "travel_speed", coverage.needed_mm);
    const double U_mm =
        coverage_factor * u.value_or(0) * coverage.needed_mm * (by_positions ? std::sqrt(2.0) : 1);
    return options_.length_short_mm + U_mm + (by_positions ? 0 : by_speed_share * coverage.needed_mm);
  }

  void judge(const Records& records) {
    std::vector<const PassCoverage*> together;
    for (PassRecord* record : records) {
      record->coverage->allowed_short_mm = allowed_short_mm(*record);
      const PassCoverage* alone = &*record->coverage;
      record->coverage->is_part = is_short(*alone, union_of({&alone, 1}));
      together.push_back(alone);
    }
    const PassCoverage* seam = &least_certain(together);
    SeamUnion found = union_of(together);
    StoredWelds stored;
    if (is_short(*seam, found) && options_.stored) {
      stored = options_.stored(*records.front());
      std::vector<std::uint64_t> with;
      for (const StoredWelds::Part& part : stored.parts) {
        if (!same_seam(part.coverage, *seam)) continue;
        together.push_back(&part.coverage);
        with.push_back(part.seq);
      }
      seam = &least_certain(together);
      found = union_of(together);
      for (PassRecord* record : records) record->coverage->with_records = with;
    }
    for (PassRecord* record : records) record->coverage->covered_mm = found.covered_mm;
    if (stored.being_repaired) return;
    if (is_short(*seam, found))
      settle_short(records, *seam, found);
    else
      check_gaps(*records.front(), *seam, found);
  }

  bool is_closed(const Records& records) const {
    if (options_.close_units) return true;
    const PassRecord& last = **std::max_element(
        records.begin(), records.end(), [](auto* a, auto* b) { return a->last_arc_ns < b->last_arc_ns; });
    return !last.unit_serial.empty() && way_.has_left(last);
  }

  void settle_short(const Records& records, const PassCoverage& seam, const SeamUnion& found) {
    const bool closed = is_closed(records);
    const char* const rule = closed ? length_short_rule : length_part_rule;
    const bool in_runs = seam.run_mm > 0 && found.runs_found > 0;
    findings_.push_back({rule, closed ? Severity::fail : Severity::warn, records.front()->place(),
                         found.covered_mm, seam.needed_mm, "mm", short_sentence(closed, in_runs, seam, found),
                         no_source});
    for (PassRecord* record : records) {
      add_rule(closed ? record->failed_by : record->undecided_by, rule);
      if (closed)
        record->verdict = Verdict::fail;
      else if (record->verdict == Verdict::pass)
        record->verdict = Verdict::undecided;
    }
  }

  void check_gaps(const PassRecord& record, const PassCoverage& seam, const SeamUnion& found) {
    if (seam.run_mm <= 0) return;
    if (found.longest_gap_mm > seam.gap_mm + seam.allowed_short_mm)
      findings_.push_back({"record.length.gap", Severity::warn, record.place(), found.longest_gap_mm,
                           seam.gap_mm, "mm",
                           Sentence("record.length.gap"_key,
                                    {{"gap", mm(found.longest_gap_mm)}, {"planned", mm(seam.gap_mm)}}),
                           no_source});
    if (found.longest_run_mm > seam.run_mm + seam.allowed_short_mm)
      findings_.push_back({"record.length.run", Severity::warn, record.place(), found.longest_run_mm,
                           seam.run_mm, "mm",
                           Sentence("record.length.run"_key,
                                    {{"run", mm(found.longest_run_mm)}, {"planned", mm(seam.run_mm)}}),
                           no_source});
    if (found.runs_counted > found.runs_needed)
      findings_.push_back({"record.length.runs", Severity::warn, record.place(),
                           static_cast<double>(found.runs_counted), static_cast<double>(found.runs_needed),
                           "",
                           Sentence("record.length.runs"_key,
                                    {{"found", found.runs_counted}, {"planned", found.runs_needed}}),
                           no_source});
  }

  const PlannedPasses& plan_;
  const AuditOptions& options_;
  Findings& findings_;
  RobotsWay way_;
  std::map<Key, std::size_t> by_key_;
  std::vector<Records> passes_;  ///< in the order in which they begin
};

}  // namespace

void judge_lengths(std::vector<PassRecord>& records, const PlannedPasses& plan, const AuditOptions& options,
                   Findings& findings) {
  LengthJudgement judgement(plan, options, findings);
  for (PassRecord& record : records) judgement.add(record);
  judgement.finish();
}

}  // namespace seamtakt
