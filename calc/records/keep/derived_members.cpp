#include "records/keep/derived_members.hpp"

#include <algorithm>

#include "ledger/body/canonical_json.hpp"
#include "ledger/store/ledger.hpp"
#include "records/judge/length_judgement.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/heat_basis.hpp"

namespace seamtakt {

namespace {

using Number = std::optional<double>;

class Recomputation {
 public:
  Recomputation(JsonNode& body, const JsonNode& original, Number k_of_schedule)
      : body_(body), original_(original), k_of_schedule_(k_of_schedule) {}

  void run() {
    if (any({"mean_current_A", "mean_voltage_V"}))
      set("product_power_W",
          combined("mean_current_A", "mean_voltage_V", [](double a, double b) { return a * b; }));
    if (any({"energy_J", "arc_time_s"})) set("mean_power_W", mean_power_W());
    if (any({"length_mm", "arc_time_s"}))
      set("travel_speed_mm_s", combined("length_mm", "arc_time_s", ratio));
    if (any({"energy_J", "length_mm"}))
      set("arc_energy_kJ_mm", recorded_arc_energy_kJ_mm(now("energy_J"), now("length_mm")));
    recompute_heat();
    recompute_coverage();
    recompute_verdict();
  }

 private:
  static Number ratio(double a, double b) { return b > 0 ? Number(a / b) : std::nullopt; }

  static std::string path_of(std::string_view name) { return "results." + std::string(name); }
  bool any(std::initializer_list<std::string_view> names) const {
    return std::any_of(names.begin(), names.end(),
                       [&](std::string_view name) { return is_corrected(body_, original_, path_of(name)); });
  }
  static Number number(const JsonNode& body, std::string_view name) {
    return body_number(body, path_of(name));
  }
  Number now(std::string_view name) const { return number(body_, name); }
  template <class Combine>
  Number combined(const char* a, const char* b, const Combine& combine) const {
    const Number first = now(a), second = now(b);
    return first && second ? Number(combine(*first, *second)) : std::nullopt;
  }
  JsonNode* member(std::string_view name) { return const_cast<JsonNode*>(body_member(body_, path_of(name))); }
  /// A record that doesn't have the member doesn't get one.
  void set(std::string_view name, Number value) {
    JsonNode* node = member(name);
    if (node == nullptr) return;
    *node = JsonNode{};
    if (!value) return;
    node->kind = JsonNode::Kind::number;
    node->number = *value;
  }

  /// In proportion: the mean is over samples, the energy over the spans between them.
  Number mean_power_W() const {
    const Number power = number(original_, "mean_power_W"), energy = number(original_, "energy_J"),
                 time = number(original_, "arc_time_s");
    const Number now_per_s = combined("energy_J", "arc_time_s", ratio);
    if (!power || !energy || !time || *energy <= 0 || *time <= 0 || !now_per_s) return now_per_s;
    return *power * *now_per_s / (*energy / *time);
  }

  void recompute_heat() {
    if (!any({"energy_J", "length_mm", "schedule", "weldment", "seam", "pass", "robot", "interpass_C"}))
      return;
    HeatBasis basis = heat_basis_of(original_);
    // Where the plate's temperature before the pass was the one that was logged, it is corrected with it.
    const bool is_from_interpass = basis.from_C && basis.from_C == number(original_, "interpass_C");
    if (is_from_interpass) basis.from_C = now("interpass_C");
    const Number before = number(original_, "heat_input_kJ_mm"),
                 U_before = number(original_, "U_heat_input_kJ_mm");
    Number heat = before;
    if (any({"energy_J", "length_mm", "schedule"})) {
      if (any({"schedule"})) basis.efficiency = k_of_schedule_;
      if (any({"schedule"})) set("thermal_efficiency", basis.efficiency);
      heat = recorded_heat_input_kJ_mm(now("arc_energy_kJ_mm"), basis);
      set("heat_input_kJ_mm", heat);
    }
    // Its relative uncertainty is that of the instruments that logged it.
    const bool known = heat && before && *before > 0 && U_before && !any({"robot"});
    if (any({"energy_J", "length_mm", "schedule", "robot"}))
      set("U_heat_input_kJ_mm", known ? Number(*U_before / *before * *heat) : std::nullopt);
    if (any({"robot"}))
      for (const char* each :
           {"u_voltage_pct", "u_current_pct", "u_travel_speed_pct", "u_waveform_factor_pct"})
        set(each, std::nullopt);
    if (!any({"energy_J", "length_mm", "schedule", "weldment", "seam", "pass"}) &&
        !(is_from_interpass && any({"interpass_C"})))
      return;
    set("cooling_time_s",
        any({"schedule", "weldment", "seam", "pass"}) ? std::nullopt : recorded_cooling_time_s(heat, basis));
  }

  /// A corrected length doesn't tell its position; its part of the union changes by the same amount.
  void recompute_coverage() {
    JsonNode* coverage = member("coverage");
    if (coverage == nullptr || coverage->kind != JsonNode::Kind::object) return;
    if (any({"weldment", "seam"})) {
      *coverage = JsonNode{};
      open_rule(length_part_rule, false);
      return;
    }
    if (!any({"length_mm", "overlap_mm"})) return;
    const Number length = now("length_mm"), welded = number(original_, "coverage.welded_mm"),
                 covered = number(original_, "coverage.covered_mm"),
                 needed = number(original_, "coverage.needed_mm"),
                 allowed = number(original_, "coverage.allowed_short_mm");
    if (!length || !welded || !covered || !needed || !allowed) {
      *coverage = JsonNode{};
      return;
    }
    const double now_mm = *length + now("overlap_mm").value_or(0);
    const double covered_mm = std::clamp(*covered + now_mm - *welded, 0.0, *needed);
    set("coverage.welded_mm", now_mm);
    set("coverage.covered_mm", covered_mm);
    if (JsonNode* spans = member("coverage.spans_mm")) spans->elements.clear();
    if (JsonNode* is_part = member("coverage.is_part")) is_part->boolean = now_mm < *needed - *allowed;
    open_rule(length_part_rule, covered_mm < *needed - *allowed);
  }

  void open_rule(const char* rule, bool is_open) {
    JsonNode* rules = member("undecided_by");
    if (rules == nullptr) return;
    std::erase_if(rules->elements, [&](const JsonNode& each) { return each.string == rule; });
    if (!is_open) return;
    JsonNode& added = rules->elements.emplace_back();
    added.kind = JsonNode::Kind::string;
    added.string = rule;
  }

  void recompute_verdict() {
    JsonNode* verdict = member("verdict");
    const auto& members = correctable_members(record_kind::pass);
    const bool rests_on_it = std::any_of(members.begin(), members.end(), [&](const auto& each) {
      return each.judged && is_corrected(body_, original_, each.path);
    });
    if (verdict == nullptr || !rests_on_it || verdict->kind != JsonNode::Kind::string) return;
    if (verdict->string == "pass") verdict->string = "undecided";
    if (verdict->string == "undecided") open_rule(corrected_rule, true);
  }

  JsonNode& body_;
  const JsonNode& original_;
  Number k_of_schedule_;
};

}  // namespace

bool is_corrected(const JsonNode& body, const JsonNode& original, std::string_view path) {
  const JsonNode *now = body_member(body, path), *before = body_member(original, path);
  if (now == nullptr || before == nullptr) return now != before;
  return canonical_json(*now) != canonical_json(*before);
}

void recompute_derived(JsonNode& body, const JsonNode& original, std::optional<double> k_of_schedule) {
  Recomputation(body, original, k_of_schedule).run();
}

}  // namespace seamtakt
