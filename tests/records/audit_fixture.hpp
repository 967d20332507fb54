#pragma once

#include <string>
#include <vector>

#include "plan/plan.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::test {

/// Columns of the plainest log, and with the line's end.
inline constexpr const char* plain_columns = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V";
inline constexpr const char* plain_header = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n";

/// The audit as its JSON document.
std::string audit_json(const AuditResult& result);

/// Audits a log that is in memory.
AuditResult audit_text(const std::string& csv, const AuditOptions& options = {}, const Plan* plan = nullptr,
                       std::size_t chunk = 0);

/// Sources of logs in memory under the names log1, log2, ...
std::vector<LogSource> memory_logs(const std::vector<std::string>& texts);

/// The findings of one rule.
std::vector<Finding> findings_of(const AuditResult& result, const std::string& rule);
bool has_finding(const AuditResult& result, const std::string& rule);

/// A number as a logger writes it.
std::string fixed(double value, int decimals);

/// Text of a log, sample by sample. Values swing a little so that no logger seems frozen.
class LogText {
 public:
  explicit LogText(std::string header) : text_(std::move(header) + "\n") {}

  LogText& row(const std::string& line) {
    text_ += line + "\n";
    return *this;
  }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

/// Samples every 0.1 s, arc on from `from_s` to `to_s`: "t,U,W,seam,pass,I,V" with I about 200 A and V about
/// 25 V.
std::string arc_rows(const std::string& identity, double from_s, double to_s, bool arc_on = true);

/// A plan with weldment W: S1 a tee of 400 mm (schedule F), S2 intermittent 3 x 60 of 90, S3 two passes (F,
/// G) over 300 mm, M1 a manual seam. F: process 135, 200 A, 25 V, 8 mm/s.
Plan small_plan();

}  // namespace seamtakt::test
