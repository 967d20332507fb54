#include "widgets/plan_data_tree.hpp"

#include <algorithm>

#include "models/tables/grid_model.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt::desk {

namespace {

/// Lists that have pages of their own.
constexpr std::string_view elsewhere[] = {"accepted", "order"};
/// The program writes them itself.
constexpr std::string_view kept_keys[] = {"format", "version", "approved_sha256"};

template <class Keys>
bool is_among(const Keys& keys, std::string_view key) {
  return std::ranges::find(keys, key) != std::end(keys);
}

void add_below(PlanNode& node, ConstObjectRef object);

PlanNode list_node(const FieldInfo& field, const Elements& elements, const std::string& pointer) {
  PlanNode list{PlanNode::Kind::list, pointer, core_label(field.label), {}, false};
  for (std::size_t i = 0; i < elements.count; ++i) {
    const ConstObjectRef item = NestedAccess::element(elements, field, i);
    const FieldInfo* id = item.table().id_field;
    PlanNode node{PlanNode::Kind::object,
                  pointer + "/" + std::to_string(i),
                  id ? QString::fromStdString(id->text(item)) : QString::number(i + 1),
                  {},
                  true};
    add_below(node, item);
    list.below.push_back(std::move(node));
  }
  return list;
}

/// Small objects of an item are in its form; those of the plan, and those that hold others, have nodes.
void add_below(PlanNode& node, ConstObjectRef object) {
  for (const FieldInfo& field : object.table().fields) {
    if (!field.objects || is_among(elsewhere, field.key)) continue;
    const Elements elements = field.objects->elements(object.data(), field);
    const std::string pointer = node.pointer + "/" + std::string(field.key);
    if (field.kind == FieldKind::object_list) {
      node.below.push_back(list_node(field, elements, pointer));
      continue;
    }
    if (!node.pointer.empty() && !is_compound(field.nested())) continue;
    PlanNode nested{elements.count > 0 ? PlanNode::Kind::object : PlanNode::Kind::absent,
                    pointer,
                    core_label(field.label),
                    {},
                    false};
    if (elements.count > 0) add_below(nested, NestedAccess::element(elements, field, 0));
    node.below.push_back(std::move(nested));
  }
}

}  // namespace

bool is_compound(const FieldTable& table) {
  return std::ranges::any_of(table.fields, [](const FieldInfo& field) { return field.objects != nullptr; });
}

std::vector<std::string> shown_keys(const FieldTable& table) {
  std::vector<std::string> keys;
  for (const FieldInfo& field : table.fields)
    if (!field.objects && !is_among(kept_keys, field.key)) keys.emplace_back(field.key);
  return keys;
}

PlanNode plan_tree(const Plan& plan) {
  PlanNode root{PlanNode::Kind::object, {}, {}, {}, false};
  add_below(root, plan);
  return root;
}

}  // namespace seamtakt::desk
