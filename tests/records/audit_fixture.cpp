#include "audit_fixture.hpp"
#include "records/passes/audit_json.hpp"

#include <charconv>
#include <cmath>

namespace seamtakt::test {

AuditResult audit_text(const std::string& csv, const AuditOptions& options, const Plan* plan,
                       std::size_t chunk) {
  return audit({{"log.csv", memory_bytes(csv, chunk)}}, options, plan);
}

std::vector<LogSource> memory_logs(const std::vector<std::string>& texts) {
  std::vector<LogSource> logs;
  for (const auto& text : texts)
    logs.push_back({"log" + std::to_string(logs.size() + 1), memory_bytes(text)});
  return logs;
}

std::vector<Finding> findings_of(const AuditResult& result, const std::string& rule) {
  std::vector<Finding> found;
  for (const auto& finding : result.findings)
    if (finding.rule == rule) found.push_back(finding);
  return found;
}

bool has_finding(const AuditResult& result, const std::string& rule) {
  return !findings_of(result, rule).empty();
}

std::string fixed(double value, int decimals) {
  char text[64];
  const auto end = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, decimals);
  return {text, end.ptr};
}

std::string arc_rows(const std::string& identity, double from_s, double to_s, bool arc_on) {
  std::string text;
  const int first = static_cast<int>(std::lround(from_s * 10)),
            last = static_cast<int>(std::lround(to_s * 10));
  for (int i = first; i < last; ++i) {
    const double swing = i % 2 == 0 ? 1 : -1;
    text += fixed(i / 10.0, 1) + "," + identity + ",";
    text += arc_on ? fixed(200 + swing, 1) + "," + fixed(25 + 0.1 * swing, 2) : std::string("0.0,0.00");
    text += "\n";
  }
  return text;
}

namespace {

Schedule schedule_of(const char* id) {
  Schedule schedule;
  schedule.id = id;
  schedule.process = "135";
  schedule.wire = "wire";
  schedule.wire_feed_speed_m_min = 8;
  schedule.arc_voltage_V = 25;
  schedule.travel_speed_mm_s = 8;
  schedule.contact_tip_distance_mm = 18;
  return schedule;
}

Seam seam_of(const char* id, double length_mm, std::vector<std::string> schedules) {
  Seam seam;
  seam.id = id;
  seam.joint = "tee";
  seam.thickness_mm = {10, 8};
  seam.base_metals = {"steel", "steel"};
  seam.leg_mm = 5;
  seam.schedules = std::move(schedules);
  seam.path_mm = {{0, 0, 0}, {length_mm, 0, 0}};
  return seam;
}

}  // namespace

Plan small_plan() {
  Plan plan;
  Wire wire;
  wire.id = "wire";
  wire.diameter_mm = 1.2;
  plan.wires = {wire};
  BaseMetal steel;
  steel.id = "steel";
  plan.base_metals = {steel};
  plan.schedules = {schedule_of("F"), schedule_of("G")};
  Weldment weldment;
  weldment.id = "W";
  weldment.seams = {seam_of("S1", 400, {"F"}), seam_of("S2", 400, {"F"}), seam_of("S3", 300, {"F", "G"}),
                    seam_of("M1", 100, {"G"})};
  weldment.seams[1].intermittent = Intermittent{60, 90, {}};
  weldment.seams[3].by = "manual";
  plan.weldments = {weldment};
  return plan;
}

std::string audit_json(const AuditResult& result) {
  std::string text;
  write_audit_json(result, text);
  return text;
}

}  // namespace seamtakt::test
