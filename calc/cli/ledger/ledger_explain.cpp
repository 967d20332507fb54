#include "base/json/json_writer.hpp"
#include "base/units/units.hpp"
#include "cli/common/explanation_json.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/record_out.hpp"
#include "records/keep/record_explanation.hpp"

namespace seamtakt::cli {

namespace {

void text_or_null(JsonWriter& json, const char* key, const std::string& text) {
  json.key(key);
  text.empty() ? json.null() : json.value(text);
}

void write_basis(const RecordExplanation& said, JsonWriter& json) {
  json.member("thermal_efficiency", said.thermal_efficiency);
  text_or_null(json, "energy_method", said.energy_method);
  text_or_null(json, "power_method", said.power_method);
  json.member("waveform_factor", said.waveform_factor);
  json.member("lead_resistance_mOhm", said.lead_resistance_mOhm);
  text_or_null(json, "schedule", said.schedule);
  text_or_null(json, "length_source", said.length_source);
  json.key("rows").begin_object(JsonWriter::Layout::compact);
  text_or_null(json, "log", said.log);
  text_or_null(json, "sha256", said.log_sha256);
  json.member("first_line", said.first_line)
      .member("last_line", said.last_line)
      .member("samples", said.samples);
  json.end_object();
  json.key("instruments").begin_array();
  for (const UsedInstrument& each : said.instruments) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("id", each.id).member("quantity", each.quantity);
    json.member("certificate", each.certificate).member("due", each.due).end_object();
  }
  json.end_array();
  json.key("uncertainty").begin_array();
  for (const RecordExplanation::Share& each : said.budget) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("quantity", each.quantity).member("u_pct", each.u_pct).member("u_kJ_mm", each.u_kJ_mm);
    json.member("share_pct", each.share_pct).end_object();
  }
  json.end_array();
  write_numbers(json, "corrected_by", said.corrections);
}

std::string explanation_json(std::uint64_t seq, const RecordExplanation& said) {
  JsonWriter json;
  json.begin_object().key("explanation").begin_object();
  json.member("record", seq).member("key", said.key).member("value", said.value).member("unit", said.unit);
  json.key("formulas").begin_array();
  for (const Explanation& formula : said.formulas) write_explanation(json, formula);
  json.end_array();
  write_basis(said, json);
  json.end_object().end_object();
  return json.take();
}

/// The number alone, where it was measured and no formula stands behind it.
std::string measured_text(const RecordExplanation& said) {
  const std::string value = said.value ? number_text(*said.value) : shown_word("not known"_word);
  const std::string unit = said.unit.empty() ? "" : " " + output_view().in_si().unit(said.unit.c_str());
  return said.key + ": " + value + (said.value ? unit : "") + "\n";
}

}  // namespace

void explain_number(const Ledger& ledger, const LedgerOptions& given, Result& result) {
  RecordHistory history(ledger);
  const RecordExplanation said = explain_record(history, given.seq, given.explain);
  if (given.json) {
    result.output = explanation_json(given.seq, said);
    return;
  }
  const bool has_own_formula = !said.formulas.empty() && said.formulas[0].note->result == said.key;
  std::string text = has_own_formula ? "" : measured_text(said);
  for (const Explanation& formula : said.formulas)
    text += (text.empty() ? "" : "\n") + explanation_text(formula, output_view());
  text += "\n";
  for (const Sentence& sentence : said.basis()) text += shown_text(sentence) + "\n";
  result.output = std::move(text);
}

}  // namespace seamtakt::cli
