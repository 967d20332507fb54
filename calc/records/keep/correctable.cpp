#include "records/keep/correctable.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/time/log_time.hpp"
#include "base/units/units.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/store/ledger.hpp"
#include "records/log/log_quantity.hpp"

namespace seamtakt {

namespace {

using Type = CorrectableMember::Type;

constexpr double longest_time_s = 1e8, most_passes = 10'000, most_starts = 1e9, longest_mm = 1e6;

constexpr double highest(LogQuantity quantity) {
  return log_quantity_specs[index_of(quantity)].highest;
}
constexpr double lowest(LogQuantity quantity) {
  return log_quantity_specs[index_of(quantity)].lowest;
}

/// A logged quantity: what a row of a log may hold at most (log_quantity_specs), and none below zero.
constexpr CorrectableMember mean_of(const char* path, const char* unit, LogQuantity quantity,
                                    bool judged = false) {
  return {path, Type::number, unit, 0, highest(quantity), true, judged};
}
/// The same where the sign tells the polarity.
constexpr CorrectableMember extreme_of(const char* path, const char* unit, LogQuantity quantity) {
  return {path, Type::number, unit, lowest(quantity), highest(quantity), true};
}
constexpr CorrectableMember time_of(const char* path, bool judged = false) {
  return {path, Type::number, "s", 0, longest_time_s, true, judged};
}

// Inputs of the judgement: the schedule, the steady means, the basis of the heat input, the state of the log.
constexpr CorrectableMember pass_members[] = {
    {"results.unit_serial", Type::text},
    {"results.weldment", Type::text, "", 0, 0, false, true},
    {"results.seam", Type::text, "", 0, 0, false, true},
    {"results.pass", Type::whole, "", 1, most_passes, false, true},
    {"results.schedule", Type::text, "", 0, 0, false, true},
    {"results.schedule_revision", Type::text, "", 0, 0, false, true},
    {"results.robot", Type::text, "", 0, 0, false, true},
    {"results.started", Type::moment},
    time_of("results.duration_s"),
    {"results.arc_time_s", Type::number, "s", 0, longest_time_s, false, true},
    {"results.arc_starts", Type::whole, "", 0, most_starts},
    {"results.length_mm", Type::number, "mm", 0, longest_mm, true, true},
    {"results.length_source", Type::choice, "", 0, 0, false, false, "positions|travel speed|plan"},
    {"results.overlap_mm", Type::number, "mm", 0, longest_mm, true, true},
    mean_of("results.mean_current_A", "A", LogQuantity::current_A),
    mean_of("results.mean_voltage_V", "V", LogQuantity::voltage_V),
    mean_of("results.energy_J", "J", LogQuantity::energy_J, true),
    mean_of("results.wire_feed_speed_m_min", "m/min", LogQuantity::wire_feed_speed_m_min),
    mean_of("results.wire_counter_m_min", "m/min", LogQuantity::wire_feed_speed_m_min),
    mean_of("results.gas_flow_l_min", "l/min", LogQuantity::gas_flow_l_min),
    {"results.interpass_C", Type::number, "C", lowest(LogQuantity::interpass_C),
     highest(LogQuantity::interpass_C), true, true},
    extreme_of("results.min_current_A", "A", LogQuantity::current_A),
    extreme_of("results.max_current_A", "A", LogQuantity::current_A),
    extreme_of("results.min_voltage_V", "V", LogQuantity::voltage_V),
    extreme_of("results.max_voltage_V", "V", LogQuantity::voltage_V),
    mean_of("results.rms_current_A", "A", LogQuantity::current_A),
    mean_of("results.sd_current_A", "A", LogQuantity::current_A),
    mean_of("results.sd_voltage_V", "V", LogQuantity::voltage_V),
    time_of("results.start_stand_s"),
    time_of("results.end_stand_s"),
    time_of("results.frozen_s", true),
    time_of("results.steady.time_s", true),
    mean_of("results.steady.current_A", "A", LogQuantity::current_A, true),
    mean_of("results.steady.voltage_V", "V", LogQuantity::voltage_V, true),
    mean_of("results.steady.power_W", "W", LogQuantity::power_W, true),
    mean_of("results.steady.wire_feed_speed_m_min", "m/min", LogQuantity::wire_feed_speed_m_min, true),
    mean_of("results.steady.travel_speed_mm_s", "mm/s", LogQuantity::travel_speed_mm_s, true),
    mean_of("results.steady.gas_flow_l_min", "l/min", LogQuantity::gas_flow_l_min, true),
    {"results.energy_method", Type::choice, "", 0, 0, false, false, "A|B|C"},
};

constexpr CorrectableMember manual_members[] = {
    {"results.unit_serial", Type::text},
    {"results.weldment", Type::text},
    {"results.seam", Type::text},
    {"results.pass", Type::whole, "", 1, most_passes, true},
    {"results.welder", Type::person},
    {"results.schedule", Type::text},
    {"results.date", Type::date},
    {"results.result", Type::choice, "", 0, 0, false, false, "pass|fail"},
};

constexpr CorrectableMember calibration_members[] = {
    {"results.certificate", Type::text},
    {"results.date", Type::date},
    {"results.due", Type::date},
};

constexpr DerivedMember derived[] = {
    {"results.product_power_W", "mean_current_A and mean_voltage_V"_word},
    {"results.mean_power_W", "energy_J and arc_time_s"_word},
    {"results.travel_speed_mm_s", "length_mm and arc_time_s"_word},
    {"results.arc_energy_kJ_mm", "energy_J and length_mm"_word},
    {"results.thermal_efficiency", "the schedule's process"_word},
    {"results.heat_input_kJ_mm", "energy_J, length_mm and the schedule's process"_word},
    {"results.u_voltage_pct", "the robot's instruments"_word},
    {"results.u_current_pct", "the robot's instruments"_word},
    {"results.u_travel_speed_pct", "the robot's instruments"_word},
    {"results.u_waveform_factor_pct", "the schedule"_word},
    {"results.U_heat_input_kJ_mm", "heat_input_kJ_mm and the instruments"_word},
    {"results.cooling_time_s", "heat_input_kJ_mm, the plate and the preheat"_word},
    {"results.verdict", "what was measured and the schedule's limits"_word},
    {"results.undecided_by", "what was measured and the schedule's limits"_word},
    {"results.coverage.covered_mm", "length_mm, weldment and seam"_word},
};

[[noreturn]] void refuse(const CorrectableMember& member, const std::string& text, Phrase expected) {
  throw InputError("--set", std::string(member.path) + "=" + printable(text, 60), std::move(expected));
}

/// In the member's unit, as its name has it.
Sentence number_expected(const CorrectableMember& member) {
  std::vector<Argument> arguments = {
      {"number", member.type == Type::whole ? "a whole number"_word : "a number"_word},
      {"lowest", number_text(member.lowest)},
      {"highest", number_text(member.highest)}};
  const bool has_unit = *member.unit != '\0';
  if (has_unit) arguments.emplace_back("unit", member.unit);
  Sentence sentence(has_unit ? "ledger.set.number-in-unit"_key : "ledger.set.number"_key,
                    std::move(arguments));
  return member.may_be_null ? Sentence("ledger.set.or-null"_key, {{"value", std::move(sentence)}}) : sentence;
}

std::optional<JsonNode> json_of(const std::string& text) {
  try {
    return parse_json(text, "--set");
  } catch (const InputError&) {
    return std::nullopt;
  }
}

std::string number_value(const CorrectableMember& member, const std::string& text) {
  const auto node = json_of(text);
  const bool fits = node && node->kind == JsonNode::Kind::number && node->number >= member.lowest &&
                    node->number <= member.highest &&
                    (member.type == Type::number || node->number == std::floor(node->number));
  if (!fits) refuse(member, text, number_expected(member));
  return canonical_json(*node);
}

std::vector<std::string> choices_of(const CorrectableMember& member) {
  std::vector<std::string> list(1);
  for (const char* at = member.choices; *at != '\0'; ++at)
    if (*at == '|')
      list.emplace_back();
    else
      list.back() += *at;
  return list;
}

/// Text in quotes is read as a JSON string; anything else is taken literally.
std::string plain_text(const std::string& text) {
  const auto node = text.starts_with('"') ? json_of(text) : std::nullopt;
  return node && node->kind == JsonNode::Kind::string ? node->string : text;
}

std::string text_value(const CorrectableMember& member, const std::string& given) {
  const std::string text = plain_text(given);
  switch (member.type) {
    case Type::date:
      if (text.size() != 10 || !utc_seconds(text + "T00:00:00Z"))
        refuse(member, given, "a date such as 2026-11-25"_word);
      break;
    case Type::moment:
      if (LogTime time; !text.ends_with('Z') || !parse_iso8601(text, time))
        refuse(member, given, "a UTC time such as 2026-11-25T14:21:02Z"_word);
      break;
    case Type::choice:
      if (const auto choices = choices_of(member);
          std::find(choices.begin(), choices.end(), text) == choices.end())
        refuse(member, given, Sentence("refusal.one-of"_key, {{"names", comma_list(choices)}}));
      break;
    default:
      check_record_text("--set " + std::string(member.path), text,
                        member.type == Type::person ? longest_who : longest_id);
  }
  std::string json;
  append_canonical_string(json, text);
  return json;
}

}  // namespace

std::span<const CorrectableMember> correctable_members(std::string_view kind) {
  if (kind == record_kind::pass) return pass_members;
  if (kind == record_kind::manual) return manual_members;
  if (kind == record_kind::calibration) return calibration_members;
  return {};
}

std::span<const DerivedMember> derived_members() {
  return derived;
}

bool is_derived_member(std::string_view path) {
  return std::any_of(std::begin(derived), std::end(derived), [&](const auto& each) {
    const std::string_view derived_path = each.path;
    return path == derived_path || (derived_path.starts_with(path) && derived_path[path.size()] == '.');
  });
}

std::string correctable_value(const CorrectableMember& member, const std::string& text) {
  if (member.may_be_null && text == "null") return text;
  const bool is_number = member.type == Type::number || member.type == Type::whole;
  return is_number ? number_value(member, text) : text_value(member, text);
}

void refuse_member(std::string_view kind, std::string_view path) {
  const std::string name = printable(path, 60);
  if (kind == record_kind::pass)
    for (const DerivedMember& each : derived)
      if (path == each.path)
        throw InputError("--set", Sentence("ledger.set.derived"_key, {{"member", name}}),
                         Sentence("ledger.set.derived-from"_key, {{"members", each.from}}));
  std::vector<std::string> names;
  for (const CorrectableMember& each : correctable_members(kind)) names.emplace_back(each.path);
  throw InputError("--set", "\"" + name + "\"",
                   Sentence("refusal.one-of"_key, {{"names", comma_list(names)}}));
}

}  // namespace seamtakt
