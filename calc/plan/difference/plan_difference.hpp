#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/json/json_node.hpp"
#include "plan/plan.hpp"

/// Two plans compared, and two that came of one joined, by the ids of what they hold: an engineer and a
/// programmer work on one plan. Values are compared as the plan file has them; what isn't written and its
/// default differ.
namespace seamtakt {

/// One value that two plans have differently.
struct PlanDifference {
  enum class Kind : char { added, removed, changed };
  Kind kind = Kind::changed;
  std::string where;          ///< keys and ids from the plan down: "weldments/BD/seams/S01/gap_mm"
  std::string before, after;  ///< as JSON on one line; empty where there is none
};

/// What differs, in the order of the first plan, then what only the second has. An object that is new or gone
/// is one difference. A list of objects with ids is compared by them, so that another order alone is none.
std::vector<PlanDifference> plan_differences(const Plan& before, const Plan& after);

/// A value that both changed, each in another way.
struct MergeConflict {
  std::string where;
  std::string base, first, second;  ///< as JSON on one line; empty: absent
};

/// Whose value is taken where both changed one.
enum class MergeChoice : char { none, first, second };

struct MergedPlan {
  Plan plan;  ///< the base where there is a conflict and no choice
  std::vector<MergeConflict> conflicts;
};

/// Joins the changes of two plans that came of `base`. Objects are told by id; new ones of both are kept. A
/// list without ids is one value, but for accepted findings, whose new ones are all kept.
/// Errors: InputError where the changes don't fit together, such as a seam that names a schedule that the
/// other removed.
MergedPlan merge_plans(const Plan& base, const Plan& first, const Plan& second,
                       MergeChoice choice = MergeChoice::none);

/// JSON text on one line.
std::string json_line(const JsonNode& node);

/// The same value, members in any order.
bool same_json(const JsonNode& a, const JsonNode& b);

/// Whether all elements of an array are objects with an id.
bool is_list_of_ids(const JsonNode& list);

/// The element with this id; nullptr where there is none.
const JsonNode* element_of_id(const JsonNode& list, const std::string& id);

/// A plan as its file has it.
JsonNode plan_json(const Plan& plan);

}  // namespace seamtakt
