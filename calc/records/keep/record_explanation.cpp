#include "records/keep/record_explanation.hpp"

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/comma_list.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/heat/waveform.hpp"
#include "records/keep/heat_basis.hpp"
#include "records/keep/ingest_members.hpp"
#include "records/keep/record_notes.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view results = "results.", steady = "steady.";

/// Unit of a number of a record; nullptr where the key names none.
const char* unit_of(std::string_view key) {
  const auto unit_in = [&](const auto& columns, std::string_view name) -> const char* {
    const auto* column = find_column(columns, name);
    return column != nullptr && column->digits > 0 ? column->unit : nullptr;
  };
  return key.starts_with(steady) ? unit_in(steady_columns(), key.substr(steady.size()))
                                 : unit_in(record_columns(), key);
}

[[noreturn]] void refuse_key(std::string_view key) {
  std::vector<std::string> names;
  for (const auto& column : record_columns())
    if (column.digits > 0) names.emplace_back(column.key);
  for (const auto& column : steady_columns())
    if (column.digits > 0) names.push_back(std::string(steady) + column.key);
  throw InputError("--explain", "\"" + printable(key, 60) + "\"",
                   Sentence("refusal.one-of"_key, {{"names", comma_list(names)}}));
}

/// One number of one body.
class Explainer {
 public:
  Explainer(const JsonNode& body, std::string_view key) : body_(body), basis_(heat_basis_of(body)) {
    const char* unit = unit_of(key);
    if (unit == nullptr) refuse_key(key);
    said_.key = key;
    said_.unit = unit;
    said_.value = number(key);
  }

  RecordExplanation run() {
    add_formulas();
    add_origin();
    return std::move(said_);
  }

 private:
  std::optional<double> number(std::string_view name) const {
    return body_number(body_, std::string(results) + std::string(name));
  }
  std::string text(std::string_view name) const {
    return body_text(body_, std::string(results) + std::string(name));
  }
  std::uint64_t whole(std::string_view name) const {
    return static_cast<std::uint64_t>(number(name).value_or(0));
  }
  bool is(std::string_view key) const { return said_.key == key; }
  void add(const FormulaNote& note, std::string_view name, const char* unit,
           std::vector<SymbolValue> inputs) {
    if (const auto value = number(name)) said_.formulas.push_back({&note, std::move(inputs), *value, unit});
  }

  void add_formulas() {
    if (is("U_heat_input_kJ_mm")) add_uncertainty();
    if (is("cooling_time_s")) add_cooling();
    const bool rests_on_heat = is("heat_input_kJ_mm") || is("U_heat_input_kJ_mm") || is("cooling_time_s");
    if (rests_on_heat) add_heat();
    if (rests_on_heat || is("arc_energy_kJ_mm")) add_arc_energy();
    if (rests_on_heat || is("arc_energy_kJ_mm") || is("energy_J")) add_energy();
    const auto length = number("length_mm"), time = number("arc_time_s"), voltage = number("mean_voltage_V"),
               current = number("mean_current_A");
    if (is("travel_speed_mm_s") && length && time)
      add(recorded_speed_note, said_.key, "mm/s",
          {{"L", "welded length", *length, "mm"}, {"t", "arc time", *time, "s"}});
    if (is("product_power_W") && voltage && current)
      add(waveform_product_note, said_.key, "W",
          {{"U", "mean voltage", *voltage, "V"}, {"I", "mean current", *current, "A"}});
  }

  void add_heat() {
    said_.thermal_efficiency = basis_.efficiency;
    const auto energy = number("arc_energy_kJ_mm");
    if (basis_.efficiency && energy)
      add(heat_input_note, "heat_input_kJ_mm", "kJ/mm",
          {{"k", "thermal efficiency", *basis_.efficiency, ""}, {"E", "arc energy", *energy, "kJ/mm"}});
  }

  void add_arc_energy() {
    said_.length_source = text("length_source");
    const auto energy = number("energy_J"), length = number("length_mm");
    if (energy && length)
      add(arc_energy_of_weld_note, "arc_energy_kJ_mm", "kJ/mm",
          {{"W", "energy of the whole pass", *energy, "J"}, {"L", "welded length", *length, "mm"}});
  }

  void add_energy() {
    said_.energy_method = text("energy_method");
    said_.power_method = text("power_method");
    said_.waveform_factor = number("waveform_factor");
    said_.lead_resistance_mOhm = number("lead_resistance_mOhm");
    if (said_.power_method != "energy counter") add(recorded_energy_note, "energy_J", "J", {});
  }

  void add_cooling() {
    const auto heat = number("heat_input_kJ_mm");
    if (!heat || !basis_.thickness_mm || !basis_.F2 || !basis_.F3 || !basis_.from_C) return;
    const bool two = cooling_time(*heat, *basis_.thickness_mm, *basis_.from_C, *basis_.F2, *basis_.F3).is_2d;
    std::vector<SymbolValue> inputs = {
        {"T0", "temperature of the plate before the pass", *basis_.from_C, "C"},
        {"Q", "heat input", *heat, "kJ/mm"}};
    if (two) inputs.emplace_back("d", "thinner plate", *basis_.thickness_mm, "mm");
    inputs.emplace_back(two ? "F2" : "F3", "shape factor", two ? *basis_.F2 : *basis_.F3, "");
    add(two ? cooling_time_2d_note : cooling_time_3d_note, said_.key, "s", std::move(inputs));
  }

  void add_uncertainty() {
    const auto heat = number("heat_input_kJ_mm"), voltage = number("u_voltage_pct"),
               current = number("u_current_pct"), speed = number("u_travel_speed_pct");
    if (!said_.value || !heat || !voltage || !current || !speed) return;
    const double factor = number("u_waveform_factor_pct").value_or(0);
    add(recorded_U_note, said_.key, "kJ/mm",
        {{"Q", "heat input", *heat, "kJ/mm"},
         {"uU", "standard uncertainty of the voltage", *voltage, "%"},
         {"uI", "standard uncertainty of the current", *current, "%"},
         {"uv", "standard uncertainty of the travel speed", *speed, "%"},
         {"uf", "standard uncertainty of the waveform factor", factor, "%"}});
    add_budget(*heat, *voltage, *current, *speed, factor);
    const double variance = *voltage * *voltage + *current * *current + *speed * *speed + factor * factor;
    std::vector<std::pair<const char*, double>> parts = {
        {"voltage", *voltage}, {"current", *current}, {"travel_speed", *speed}};
    if (factor > 0) parts.emplace_back("waveform_factor", factor);
    for (const auto& [quantity, u] : parts)
      said_.budget.push_back({quantity, u, *heat * u / 100, variance > 0 ? 100 * u * u / variance : 0});
  }

  /// The same as a budget of the heat input; u in % of the means, as the record has them.
  void add_budget(double heat, double u_voltage_pct, double u_current_pct, double u_speed_pct,
                  double u_factor_pct) {
    const auto voltage = number("mean_voltage_V"), current = number("mean_current_A"),
               speed = number("travel_speed_mm_s");
    if (said_.formulas.empty() || !voltage || !current || !speed || *voltage <= 0 || *current <= 0 ||
        *speed <= 0)
      return;
    const auto input = [&](Word meaning, double value, const char* unit, double u_pct, double sign) {
      return BudgetInput{meaning, value, unit, u_pct / 100 * value, sign * heat / value};
    };
    std::vector<BudgetInput> inputs = {input("arc voltage"_word, *voltage, "V", u_voltage_pct, 1),
                                       input("current"_word, *current, "A", u_current_pct, 1),
                                       input("travel speed"_word, *speed, "mm/s", u_speed_pct, -1)};
    if (const auto factor = number("waveform_factor"); factor && *factor > 0)
      inputs.push_back(input("waveform factor"_word, *factor, "", u_factor_pct, 1));
    said_.formulas.back().budget = budget_of(std::move(inputs));
  }

  /// The rows that were logged, the instruments, the schedule.
  void add_origin() {
    if (is("length_mm") || is("travel_speed_mm_s")) said_.length_source = text("length_source");
    said_.schedule = text("schedule");
    said_.log = text("source");
    said_.first_line = whole("source_line_first");
    said_.last_line = whole("source_line_last");
    said_.samples = whole("samples");
    if (const JsonNode* list = body_member(body_, "instruments"))
      for (const JsonNode& each : list->elements)
        said_.instruments.push_back({body_text(each, "id"), body_text(each, "quantity"),
                                     body_text(each, "certificate"), body_text(each, "due")});
  }

  const JsonNode& body_;
  const HeatBasis basis_;
  RecordExplanation said_;
};

std::string sha256_of_log(RecordHistory& history, const JsonNode& body, const std::string& name) {
  const auto ingest = body_number(body, "ingest"), seq = body_number(body, "seq");
  if (!ingest || !seq || *ingest < 1 || *ingest >= *seq) return {};
  const JsonNode of_logs = body_of(history.record(static_cast<std::uint64_t>(*ingest)));
  const JsonNode* logs = of_logs.find("raw");
  if (logs == nullptr) return {};
  for (const JsonNode& log : logs->elements)
    if (body_text(log, "name") == name) return body_text(log, "sha256");
  return {};
}

/// A text of a record that is a word of the program where it is one of these, else a text as it stands.
template <std::size_t Count>
Argument word_argument(const char* name, const std::string& text, const Word (&words)[Count]) {
  for (const Word word : words)
    if (word.english() == text) return {name, word};
  return {name, printable(text, 60)};
}

constexpr Word power_words[] = {"mean product"_word, "product of means"_word, "logged power"_word,
                                "energy counter"_word};
constexpr Word length_words[] = {"positions"_word, "travel speed"_word, "plan"_word};
constexpr Word quantity_words[] = {"voltage"_word, "current"_word, "travel_speed"_word,
                                   "wire_feed_speed"_word, "waveform_factor"_word};

}  // namespace

std::vector<Sentence> RecordExplanation::basis() const {
  constexpr std::size_t longest = 200;
  std::vector<Sentence> said;
  if (!log.empty())
    said.push_back(Sentence("explain.rows"_key, {{"log", printable(log, longest)},
                                                 {"first", first_line},
                                                 {"last", last_line},
                                                 {"samples", samples}}));
  if (!log_sha256.empty())
    said.push_back(Sentence("explain.log"_key, {{"sha256", printable(log_sha256, 64)}}));
  if (!energy_method.empty())
    said.push_back(Sentence("explain.method"_key, {{"method", printable(energy_method, 10)},
                                                   word_argument("power", power_method, power_words)}));
  if (waveform_factor)
    said.push_back(Sentence("explain.waveform"_key, {{"factor", UnitValue{*waveform_factor, ""}}}));
  if (lead_resistance_mOhm)
    said.push_back(Sentence("explain.lead"_key, {{"resistance", UnitValue{*lead_resistance_mOhm, "mOhm"}}}));
  if (thermal_efficiency)
    said.push_back(Sentence("explain.k"_key, {{"k", UnitValue{*thermal_efficiency, ""}},
                                              {"schedule", printable(schedule, longest)}}));
  if (!length_source.empty())
    said.push_back(Sentence("explain.length"_key, {word_argument("source", length_source, length_words)}));
  for (const UsedInstrument& each : instruments)
    said.push_back(
        Sentence("explain.instrument"_key, {word_argument("quantity", each.quantity, quantity_words),
                                            {"instrument", printable(each.id, longest)},
                                            {"certificate", printable(each.certificate, longest)},
                                            {"due", printable(each.due, 40)}}));
  for (const Share& each : budget)
    said.push_back(Sentence("explain.share"_key, {word_argument("quantity", each.quantity, quantity_words),
                                                  {"u", UnitValue{each.u_pct, "%"}},
                                                  {"part", UnitValue{each.u_kJ_mm, "kJ/mm"}},
                                                  {"share", UnitValue{each.share_pct, "%"}}}));
  for (const std::uint64_t seq : corrections)
    said.push_back(Sentence("explain.corrected"_key, {{"record", seq}}));
  return said;
}

RecordExplanation explain_record(RecordHistory& history, std::uint64_t seq, std::string_view key) {
  if (history.record(seq).kind != record_kind::pass)
    throw InputError("record " + std::to_string(seq), kind_sentence(history.record(seq)), "a pass"_word);
  const JsonNode body = history.corrected_body(seq);
  RecordExplanation said = Explainer(body, key).run();
  said.log_sha256 = sha256_of_log(history, body, said.log);
  const std::vector<std::uint64_t> corrections = history.changes_of(seq).corrections;
  for (const std::uint64_t number : corrections)
    if (!history.is_void(number)) said.corrections.push_back(number);
  return said;
}

RecordExplanation explain_pass(const PassRecord& record, const Plan* plan, std::string_view key) {
  JsonWriter json;
  json.begin_object();
  const LedgerEntry entry = pass_entry(record, {}, plan, 0);
  for (const auto& [name, text] : entry.members) json.key(name).raw(text);
  json.end_object();
  return Explainer(parse_json(json.take(), "record"), key).run();
}

}  // namespace seamtakt
