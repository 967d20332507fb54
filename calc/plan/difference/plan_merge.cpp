#include <algorithm>

#include "plan/difference/plan_difference.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {

namespace {

using Kind = JsonNode::Kind;
using Maybe = std::optional<JsonNode>;

bool is_same(const JsonNode* a, const JsonNode* b) {
  return (!a && !b) || (a && b && same_json(*a, *b));
}

Maybe copy_of(const JsonNode* node) {
  return node ? Maybe(*node) : std::nullopt;
}

std::string line_of(const JsonNode* node) {
  return node ? json_line(*node) : std::string();
}

/// Joins values; an absent one is a nullptr.
class Merger {
 public:
  explicit Merger(MergeChoice choice) : choice_(choice) {}

  Maybe merge(const std::string& where, const JsonNode* base, const JsonNode* first, const JsonNode* second) {
    if (is_same(first, second) || is_same(base, second)) return copy_of(first);
    if (is_same(base, first)) return copy_of(second);
    if (first && second) {
      if (first->kind == Kind::object && second->kind == Kind::object)
        return merge_members(where, base, *first, *second);
      // An empty list has no ids, and takes those of the other.
      if (is_list_of_ids(*first) && is_list_of_ids(*second))
        return merge_by_ids(where, base, *first, *second);
      if (where == "accepted" && first->kind == Kind::array && second->kind == Kind::array)
        return merge_additions(base, *first, *second);
    }
    conflicts_.push_back({where, line_of(base), line_of(first), line_of(second)});
    return copy_of(choice_ == MergeChoice::first ? first : choice_ == MergeChoice::second ? second : base);
  }

  std::vector<MergeConflict> take_conflicts() { return std::move(conflicts_); }

 private:
  static std::string below(const std::string& where, const std::string& step) {
    return where.empty() ? step : where + "/" + step;
  }

  Maybe merge_members(const std::string& where, const JsonNode* base, const JsonNode& first,
                      const JsonNode& second) {
    JsonNode merged;
    merged.kind = Kind::object;
    const auto add = [&](const std::string& key) {
      const JsonNode* before = base && base->kind == Kind::object ? base->find(key) : nullptr;
      if (Maybe value = merge(below(where, key), before, first.find(key), second.find(key)))
        merged.members.push_back({key, std::move(*value)});
    };
    for (const JsonMember& member : first.members) add(member.key);
    for (const JsonMember& member : second.members)
      if (!first.find(member.key)) add(member.key);
    return merged;
  }

  /// In the first one's order; what only the second has follows the element that it follows there.
  Maybe merge_by_ids(const std::string& where, const JsonNode* base, const JsonNode& first,
                     const JsonNode& second) {
    const bool base_has_ids = base && is_list_of_ids(*base);
    JsonNode merged;
    merged.kind = Kind::array;
    const auto joined = [&](const std::string& id) {
      return merge(below(where, id), base_has_ids ? element_of_id(*base, id) : nullptr,
                   element_of_id(first, id), element_of_id(second, id));
    };
    for (const JsonNode& element : first.elements)
      if (Maybe value = joined(element.find("id")->string)) merged.elements.push_back(std::move(*value));
    std::string before;
    for (const JsonNode& element : second.elements) {
      const std::string& id = element.find("id")->string;
      if (!element_of_id(first, id))
        if (Maybe value = joined(id)) {
          const auto follows =
              std::find_if(merged.elements.begin(), merged.elements.end(),
                           [&](const JsonNode& each) { return each.find("id")->string == before; });
          const auto place = follows == merged.elements.end() ? follows : follows + 1;
          merged.elements.insert(before.empty() ? merged.elements.begin() : place, std::move(*value));
        }
      before = id;
    }
    return merged;
  }

  static bool holds(const JsonNode* list, const JsonNode& element) {
    return list && std::any_of(list->elements.begin(), list->elements.end(),
                               [&](const JsonNode& each) { return same_json(each, element); });
  }

  /// What both have, and what each added; what one took out is out.
  static Maybe merge_additions(const JsonNode* base, const JsonNode& first, const JsonNode& second) {
    JsonNode merged;
    merged.kind = Kind::array;
    for (const JsonNode& element : first.elements)
      if (!holds(base, element) || holds(&second, element)) merged.elements.push_back(element);
    for (const JsonNode& element : second.elements)
      if (!holds(base, element) && !holds(&first, element)) merged.elements.push_back(element);
    return merged;
  }

  MergeChoice choice_;
  std::vector<MergeConflict> conflicts_;
};

}  // namespace

MergedPlan merge_plans(const Plan& base, const Plan& first, const Plan& second, MergeChoice choice) {
  const JsonNode from = plan_json(base), one = plan_json(first), other = plan_json(second);
  Merger merger(choice);
  const Maybe merged = merger.merge("", &from, &one, &other);
  MergedPlan result;
  result.conflicts = merger.take_conflicts();
  const bool is_open = choice == MergeChoice::none && !result.conflicts.empty();
  result.plan = is_open ? base : parse_plan(json_line(*merged), "merged plan");
  return result;
}

}  // namespace seamtakt
