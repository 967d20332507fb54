#include "plan/approval.hpp"

#include <algorithm>
#include <initializer_list>

#include "base/files/digest.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt {

namespace {

using Keys = std::initializer_list<std::string_view>;

void append_object(ConstObjectRef object, Keys left_out, std::string& text);

void append_field(ConstObjectRef object, const FieldInfo& field, std::string& text) {
  text += '"';
  text += field.key;
  text += "\":";
  if (field.objects == nullptr) return field.access->write(object.data(), field, text);
  const Elements elements = field.objects->elements(object.data(), field);
  for (std::size_t i = 0; i < elements.count; ++i)
    append_object(NestedAccess::element(elements, field, i), {}, text);
}

/// Fields whose value is that of an absent key are left out: keys that come later change no digest.
void append_object(ConstObjectRef object, Keys left_out, std::string& text) {
  text += '{';
  for (const FieldInfo& field : object.table().fields) {
    if (std::ranges::find(left_out, field.key) != left_out.end()) continue;
    if (!field.access->is_written(object.data(), field, false)) continue;
    append_field(object, field, text);
    text += ',';
  }
  text += '}';
}

template <class Item>
std::string text_without(const Item& item, Keys left_out) {
  std::string text;
  append_object(item, left_out, text);
  return text;
}

template <class List>
std::string named_text(const List& list, const std::string& id) {
  const auto* item = find_by_id(list, id);
  return item != nullptr ? locked_text(*item) : std::string();
}

}  // namespace

std::string locked_text(const Schedule& schedule) {
  return text_without(
      schedule, {"status", "approved_by", "approved_sha256", "effective_from", "U_waveform_factor_pct"});
}

std::string locked_text(const Wire& wire) {
  return text_without(wire, {"price_per_kg", "alpha_mm_s_A", "beta_per_s_A2", "U_melting_pct"});
}

std::string locked_text(const Gas& gas) {
  return text_without(gas, {"price_per_m3"});
}

std::string locked_text(const PowerSource& source) {
  return text_without(source, {"efficiency"});
}

std::string approval_sha256(const Plan& plan, const Schedule& schedule) {
  std::string text;
  for (const std::string& line : {locked_text(schedule), schedule.approved_by, schedule.effective_from,
                                  named_text(plan.wires, schedule.wire), named_text(plan.gases, schedule.gas),
                                  named_text(plan.power_sources, schedule.power_source)}) {
    text += line;
    text += '\n';
  }
  return sha256_hex(text);
}

void clear_approval(Schedule& schedule) {
  schedule.approved_by.clear();
  schedule.approved_sha256.clear();
  schedule.effective_from.clear();
  std::vector<std::string> keys = schedule.file_keys.order.keys();
  std::erase_if(keys, [](const std::string& key) {
    return key == "approved_by" || key == "approved_sha256" || key == "effective_from";
  });
  schedule.file_keys.order = KeyOrder(std::move(keys));
}

bool is_changed_since_approval(const Plan& plan, const Schedule& schedule) {
  return schedule.status == "approved" && !schedule.approved_sha256.empty() &&
         schedule.approved_sha256 != approval_sha256(plan, schedule);
}

const std::string& family_of(const Schedule& schedule) {
  return schedule.revision_of.empty() ? schedule.id : schedule.revision_of;
}

const Schedule* schedule_in_force(const Plan& plan, std::string_view id, std::string_view day) {
  const Schedule* named = find_by_id(plan.schedules, id);
  if (named == nullptr) return nullptr;
  const Schedule* best = nullptr;
  for (const Schedule& each : plan.schedules) {
    if (family_of(each) != family_of(*named) || each.status != "approved") continue;
    if (std::string_view(each.effective_from).substr(0, 10) > day) continue;
    if (best == nullptr || each.revision >= best->revision) best = &each;
  }
  return best;
}

}  // namespace seamtakt
