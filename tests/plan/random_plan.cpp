#include "random_plan.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "base/units/units.hpp"
#include "plan/fields/field.hpp"

using namespace seamtakt;

namespace {

class RandomPlan {
 public:
  explicit RandomPlan(std::uint64_t seed) : random_(seed) {}

  std::string plan() {
    for (int& count : counts_) count = below(3);
    for (IdList list : {IdList::base_metals, IdList::wires, IdList::schedules, IdList::gases,
                        IdList::power_sources, IdList::qualifications, IdList::robots, IdList::orientations,
                        IdList::stages, IdList::weldments, IdList::parts})
      counts_[static_cast<std::size_t>(list)] = 1 + below(2);
    return object(fields_of<Plan>(), 0);
  }

 private:
  int below(int limit) { return static_cast<int>(random_() % static_cast<std::uint64_t>(limit)); }
  bool often() { return below(10) < 6; }

  /// Ids are the list's name and an index, so that references can be made before their objects.
  static std::string id(IdList list, int index) {
    return "\"i" + std::to_string(static_cast<int>(list)) + "/" + std::to_string(index) + " \\u00b5\"";
  }
  std::string reference(IdList list) {
    if (list == IdList::seam_places) return "\"w" + std::string("0/s0\"");
    return id(list, below(counts_[static_cast<std::size_t>(list)]));
  }

  double number(const Range& range) {
    const double low = std::max(range.lower, -1e6), high = std::min(range.upper, 1e6);
    const double share = std::ldexp(static_cast<double>(random_() >> 11), -53);
    double value = low + (high - low) * (below(2) ? share : share * 1e-4);
    if (below(4) == 0) value = std::round(value);
    return range.contains(value) && (value == 0 || std::abs(value) > 1e-12) ? value
                                                                            : low + (high - low) * 0.37;
  }

  std::string text() {
    static const char* pieces[] = {
        "a",       " ", "\\\"", "\\\\", "\\n", "\xC3\xA9", "\xE2\x89\xA4", "<b>", "=1+1", "\xF0\x9F\x94\xA5",
        "\\u0001", "/", "~",    ","};
    std::string json = "\"";
    for (int i = below(6); i > 0; --i) json += pieces[below(static_cast<int>(std::size(pieces)))];
    return json + "\"";
  }

  template <class Element>
  std::string list(const FieldInfo& field, Element element) {
    const std::size_t count = std::min(field.most, field.least + static_cast<std::size_t>(below(3)));
    std::string json = "[";
    for (std::size_t i = 0; i < count; ++i) json += (i ? ", " : "") + element();
    return json + "]";
  }
  std::string point() { return "[" + number_text(number({})) + ", " + number_text(number({})) + ", 7]"; }

  std::string value(const FieldTable& table, const FieldInfo& field, int index);
  std::string object(const FieldTable& table, int index);
  std::string objects(const FieldInfo& field);

  std::mt19937_64 random_;
  int counts_[static_cast<std::size_t>(IdList::parts) + 1] = {};
};

IdList list_of(std::string_view table) {
  using enum IdList;
  for (const auto& [name, list] : {std::pair<const char*, IdList>{"base_metal", base_metals},
                                   {"wire", wires},
                                   {"gas", gases},
                                   {"power_source", power_sources},
                                   {"schedule", schedules},
                                   {"qualification", qualifications},
                                   {"seam", seams},
                                   {"robot", robots},
                                   {"orientation", orientations},
                                   {"stage", stages},
                                   {"weldment", weldments},
                                   {"part", parts}})
    if (table == name) return list;
  return none;
}

std::string RandomPlan::value(const FieldTable& table, const FieldInfo& field, int index) {
  const std::string_view key = field.key;
  if (key == "id") return id(list_of(table.name), index);
  if (key == "format") return "\"weldplan\"";
  if (key == "contact_tip_distance_mm") return number_text(2000001 + below(9));  // above any arc length
  if (key == "leg_max_mm" || key == "throat_max_mm") return "1e15";              // no fillet is drawn larger
  if (key == "length_mm" && std::string_view(table.name) == "intermittent")
    return "1000";  // at most 10,000 runs on any path here
  if (key == "gap_mm" && std::string_view(table.name) == "intermittent")
    return "1000000000";                 // one run on any path
  if (key == "operators") return "[]";   // a stage is in one group
  if (key == "pull") return "\"free\"";  // takt needs one
  if (key == "time_range_s") return "[10, 20.5, 40]";
  if (key == "u") return "[1, 0, 0]";
  if (key == "v") return "[0, 0, 1]";
  if (key == "outline_mm") return "[[0, 0], [250.5, 0], [250.5, 80], [0, 60]]";
  if (std::string_view(table.name) == "drawing_file" && key == "path") return "\"x" + text().substr(1);
  if (key == "box_mm" || key == "axis_mm") return "[" + point() + ", " + point() + "]";
  if (key == "peak_ms") return number_text(number({1, 10}));
  if (key == "frequency_Hz" && std::string_view(table.name) == "pulse") return number_text(number({1, 100}));
  if (std::string_view(table.name) == "shift" && (key == "from" || key == "to"))
    return key == "from" ? "\"06:00\"" : "\"14:30\"";
  switch (field.kind) {
    case FieldKind::text:
      if (key == "start") return "\"2026-03-0" + std::to_string(1 + below(9)) + "T06:00\"";
      return text();
    case FieldKind::choice:
      return "\"" +
             std::string(
                 field.choices[static_cast<std::size_t>(below(static_cast<int>(field.choices.size())))]) +
             "\"";
    case FieldKind::reference:
      return reference(field.refers_to);
    case FieldKind::date:
      return "\"20" + std::to_string(10 + below(90)) + "-0" + std::to_string(1 + below(9)) + "-1" +
             std::to_string(below(10)) + "\"";
    case FieldKind::number:
      return field.nullable && below(4) == 0 ? "null" : number_text(number(field.range));
    case FieldKind::integer:
      return std::to_string(
          static_cast<int>(std::clamp(static_cast<double>(below(9)), field.range.lower, field.range.upper)));
    case FieldKind::boolean:
      return below(2) ? "true" : "false";
    case FieldKind::interval: {
      const double a = number({}), b = number({});
      return "[" + (below(4) ? number_text(std::min(a, b)) : "null") + ", " +
             (below(4) ? number_text(std::max(a, b)) : "null") + "]";
    }
    case FieldKind::choice_or_number:
      return below(2) ? "\"cell\"" : number_text(number(field.range));
    case FieldKind::text_list:
      if (key == "days") return index == 0 ? R"(["mon", "tue"])" : R"(["sun"])";  // shifts don't overlap
      return list(field, [this] { return "\"x" + text().substr(1); });
    case FieldKind::reference_list:
      if (field.refers_to == IdList::seams || field.refers_to == IdList::seam_places) return "[]";
      return list(field, [&] { return reference(field.refers_to); });
    case FieldKind::number_list:
      return list(field, [&] { return number_text(number(field.range)); });
    case FieldKind::number_pairs:
      return list(field, [&] {
        return "[" + number_text(number(field.range)) + ", " + number_text(number(field.range)) + "]";
      });
    case FieldKind::text_pairs:
      return below(2) ? R"([["09:00", "09:15"]])" : R"([["08:00", "08:10"], ["12:00", "12:30"]])";
    case FieldKind::point:
      return point();
    case FieldKind::path:
      return "[[-1e6, 0, 0], " + list(field, [this] { return point(); }).substr(1);
    case FieldKind::composition:
      return "{\"C\": " + number_text(number({0, 40})) +
             ", \"x_lot\": 1.50, \"Mn\": " + number_text(number({0, 60})) + "}";
    case FieldKind::object:
      return object(field.nested(), 0);
    case FieldKind::object_list:
      return key == "order" ? "[]" : objects(field);  // it names seams, as "after" does
  }
  return "null";
}

std::string RandomPlan::objects(const FieldInfo& field) {
  const FieldTable& table = field.nested();
  const IdList list = list_of(table.name);
  const int count =
      list == IdList::none || list == IdList::seams ? below(3) : counts_[static_cast<std::size_t>(list)];
  // A calendar has a shift.
  const int least = std::string_view(table.name) == "shift" ? 1 : 0;
  std::string json = "[";
  for (int i = 0; i < std::max(count, least); ++i) json += (i ? ", " : "") + object(table, i);
  return json + "]";
}

std::string RandomPlan::object(const FieldTable& table, int index) {
  std::set<std::string_view> left_out;
  for (const KeyGroup& group : table.groups) {
    const std::size_t chosen = random_() % group.keys.size();
    for (std::size_t i = 0; i < group.keys.size(); ++i)
      if (i != chosen) left_out.insert(group.keys[i]);
  }
  // A groove has no largest fillet.
  if (left_out.contains("leg_mm") && left_out.contains("throat_mm"))
    left_out.insert({"leg_max_mm", "throat_max_mm"});
  std::vector<std::string> members;
  for (const FieldInfo& field : table.fields) {
    if (field.key == "cv") continue;    // not beside time_range_s
    if (field.key == "with") continue;  // it names seams, as "after" does
    bool in_group = false;
    for (const KeyGroup& group : table.groups)
      for (std::string_view key : group.keys) in_group = in_group || key == field.key;
    const bool is_list = field.kind == FieldKind::object_list || field.key == "cell" || field.key == "line";
    if (left_out.contains(field.key) || !(field.required || in_group || is_list || often())) continue;
    members.push_back("\"" + std::string(field.key) + "\": " + value(table, field, index));
  }
  for (int i = below(3); i > 0; --i)
    members.push_back("\"x_" + std::to_string(i) + "\": [" + text() + ", 1.0, {}]");
  std::ranges::shuffle(members, random_);
  std::string json = "{";
  for (std::size_t i = 0; i < members.size(); ++i) json += (i ? ", " : "") + members[i];
  return json + "}";
}

}  // namespace

std::string random_plan(std::uint64_t seed) {
  return RandomPlan(seed).plan();
}
