#include "models/tables/finding_target.hpp"

#include "document/plan_address.hpp"
#include "models/tables/finding_index.hpp"

namespace seamtakt::desk {

namespace {

/// The field of a seam or schedule that a rule is about, if the rule's name tells; empty: the object as a
/// whole.
const char* field_of_rule(std::string_view rule) {
  struct Target {
    std::string_view part;
    const char* key;
  };
  static constexpr Target targets[] = {
      {"line.manual", "manual_s"},
      {"interpass.plates", "plate_mm"},
      {"cycle.interpass", "schedules"},
      {"interpass.never", "schedules"},
      {"leg", "leg_mm"},
      {"throat", "throat_mm"},
      {"gap", "gap_mm"},
      {"thickness", "thickness_mm"},
      {"position", "position"},
      {"tack", "tacks"},
      {"tracking", "tracking"},
      {"run", "intermittent"},
      {"direction", "direction"},
      {"limit", "schedules"},
      {"preheat", "schedules"},
      {"qualification", "schedules"},
      {"schedule", "schedules"},
      {"power-source", "schedules"},
      {"composition", "base_metals"},
      {"cycle", "robots"},
  };
  for (const Target& target : targets)
    if (rule.find(target.part) != std::string_view::npos) return target.key;
  return "";
}

/// Rules about the timeline of a weldment or of one of its robots, not about a seam.
bool is_of_cycle(const Finding& finding) {
  for (const char* rule : {"cycle.takt", "cycle.duty", "cycle.wire-change"})
    if (finding.rule.starts_with(rule)) return true;
  return false;
}

}  // namespace

FindingTarget target_of(const Plan& plan, const Finding& finding) {
  const std::string weldment = weldment_address_of(plan, finding.where);
  if (!weldment.empty() && is_of_cycle(finding)) return {QString::fromStdString(weldment), cycle_key};
  const std::string address = address_of_finding(plan, finding.where);
  if (!address.empty()) return {QString::fromStdString(address), field_of_rule(finding.rule)};
  if (weldment.empty()) return {};
  return {QString::fromStdString(weldment),
          link_of(finding) == Link::cell ? cycle_key : field_of_rule(finding.rule)};
}

}  // namespace seamtakt::desk
