#include "cli/cell/robot_out.hpp"

#include <set>

#include "cell/timeline/without_robot.hpp"

namespace seamtakt::cli {

namespace {

bool belongs_to(const Finding& finding, const std::string& weldment) {
  return weldment.empty() || finding.where == weldment || finding.where.starts_with(weldment + "/");
}

}  // namespace

Findings take_robot_out(LoadedPlan& loaded, const std::string& robot, const std::string& weldment) {
  if (robot.empty()) return {};
  PlanWithoutRobot without = without_robot(loaded.plan, robot);
  loaded.plan = std::move(without.plan);
  std::erase_if(without.findings, [&](const Finding& finding) { return !belongs_to(finding, weldment); });
  return std::move(without.findings);
}

void add_findings_without_robot(const Findings& found, Findings& findings) {
  std::set<std::string> said;
  for (const Finding& finding : findings)
    if (finding.rule == "cell.robot-out.unreached") said.insert(finding.where);
  for (const Finding& finding : found)
    if (finding.rule != "cycle.robot.none" || !said.contains(finding.where)) findings.push_back(finding);
}

}  // namespace seamtakt::cli
