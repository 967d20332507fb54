#pragma once

#include <array>
#include <cstdint>
#include <deque>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "records/log/log_header.hpp"
#include "records/log/sample_run.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/pass_entry.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

/// Sorts samples into passes. A pass is its identity (unit, weldment, seam, pass) wherever the log has it;
/// where neither seam nor pass is known, an arc-off gap begins a new pass, numbered in order.
class PassGrouper {
 public:
  /// plan: nullptr where none is given. Both must outlive the book.
  PassGrouper(const AuditOptions& options, const PlannedPasses* plan, std::vector<std::string> carry);
  ~PassGrouper();

  /// InputError where the units' times can't be compared with the log's.
  void begin_log(const std::string& name, const LogShape& shape);
  void add(const LogRow& row);
  /// The rows that follow `head`, which was added before, and have its texts.
  void add_run(const LogRow& head, const SampleRun& run);
  void end_log();

  /// The passes, in the order in which they begin; the sums of each are finished.
  std::vector<std::unique_ptr<PassEntry>> finish();

  /// Rows that belong to no pass because the arc was off; complete after finish().
  std::uint64_t arc_off_rows() const { return arc_off_rows_; }
  const std::vector<std::string>& carry() const { return carry_; }
  const std::set<std::string>& unknown_jobs() const { return unknown_jobs_; }
  /// Whether the plan's only weldment was taken where none was logged.
  bool weldment_inferred() const { return weldment_inferred_; }

 private:
  struct Stream;
  struct Route;

  Route& route_of(const LogRow& row);
  Route& new_route(const LogRow& row, std::string key);
  void note_border(const Route& before, Route& route, const LogRow& row);
  Stream& stream_of(const PassKey& key, std::string_view robot);
  PassKey identity_of(const LogRow& row, Route& route);
  const JobIdentity* job_of(const LogRow& row) const;
  void find_unit(std::int64_t ns, PassKey& key, Route& route) const;
  void add_identified(Route& route, const LogRow& row, const LogSample& sample);
  Route* route_of_block(const LogRow& last, const SampleRun& run, const RowBlock& block);
  bool add_arc_block(const LogRow& last, const SampleRun& run, const RowBlock& block,
                     const RowBlock& arc_end);
  bool add_off_block(const LogRow& last, const SampleRun& run, const RowBlock& block);
  void add_streamed(Stream& stream, const LogRow& row, const LogSample& sample);
  void take_streamed(Stream& stream, const LogSample& sample);
  void close_pass(Stream& stream);
  void begin_occurrence_if_due(Route& route, const LogRow& row, const LogSample& sample);
  PassEntry& identified_entry(const PassKey& key, const LogSample& sample, std::string_view robot);
  ExcursionRules excursion_rules(const PlannedPass& planned, std::string_view robot) const;
  PassEntry& new_entry(PassKey key, bool numbered, std::string_view robot);
  void touch(PassEntry& entry);
  void set_oldest_aside();
  bool in_use(const PassEntry& entry) const;
  void note_texts(PassEntry& entry, const LogRow& row);
  void note_carried(PassEntry& entry, const LogRow& row);

  const AuditOptions& options_;
  const PlannedPasses* plan_;
  std::vector<std::string> carry_;

  std::size_t log_ = 0;
  const LogShape* shape_ = nullptr;
  std::string log_name_;
  EnergySource energy_source_ = EnergySource::voltage_and_current;

  std::vector<std::unique_ptr<PassEntry>> entries_;
  std::map<PassKey, PassEntry*> by_key_;
  std::map<PassKey, int> last_number_;  ///< of passes numbered here, by unit, weldment and seam
  std::deque<Route> all_routes_;        ///< of this log
  std::unordered_map<std::string, Route*> routes_;
  std::array<Route*, 8> lately_{};  ///< routes of the last rows: looked at before the map
  std::size_t last_lately_ = 0, newest_recent_route_ = 0;
  std::map<std::pair<PassKey, std::string>, std::unique_ptr<Stream>> streams_;
  std::map<std::string, Route*, std::less<>> job_of_robot_;
  std::deque<PassEntry*> recent_;
  std::uint64_t arc_off_rows_ = 0;
  std::set<std::string> unknown_jobs_;
  bool weldment_inferred_ = false;
};

}  // namespace seamtakt
