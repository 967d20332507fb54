#include "cli/plan_option.hpp"

#include <optional>

#include "base/error.hpp"
#include "base/thread_pool.hpp"
#include "base/json_node.hpp"
#include "plan/plan_file.hpp"

namespace seamtakt::cli {

LoadedPlan load(const std::string& path) {
  const std::string text = read_file(path, JsonLimits{}.bytes);
  // Of a long file both take time, and neither needs the other.
  std::optional<JsonText> json;
  Provenance provenance;
  ThreadPool::shared().parallel_for(2, 1, [&](std::size_t begin, std::size_t) {
    if (begin == 0)
      json.emplace(text, path);
    else
      provenance = provenance_of(path, text);
  });
  return {parse_plan(*json), std::move(provenance)};
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
