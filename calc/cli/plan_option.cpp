#include "cli/plan_option.hpp"

#include "base/error.hpp"
#include "base/json_node.hpp"
#include "plan/plan_file.hpp"

namespace seamtakt::cli {

LoadedPlan load(const std::string& path) {
  const std::string text = read_file(path, JsonLimits{}.bytes);
  return {parse_plan(text, path), provenance_of(path, text)};
}

std::vector<const Weldment*> chosen_weldments(const Plan& plan, const std::string& id) {
  std::vector<const Weldment*> chosen;
  std::string known;
  for (const Weldment& weldment : plan.weldments) {
    if (id.empty() || weldment.id == id) chosen.push_back(&weldment);
    known += (known.empty() ? "" : ", ") + weldment.id;
  }
  if (chosen.empty() && !id.empty())
    throw InputError("--weldment", "\"" + printable(id) + "\"", known.empty() ? "a plan with weldments" : "one of " + known);
  return chosen;
}

}  // namespace seamtakt::cli
