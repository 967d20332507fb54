#include "records/keep/later_calibration.hpp"

#include <algorithm>
#include <set>
#include <span>

#include "base/json/json_writer.hpp"
#include "records/keep/stored_parts.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

constexpr const char *open_rules = "results.undecided_by", *verdict_path = "results.verdict";

bool has_rule(const std::vector<std::string>& rules) {
  return std::find(rules.begin(), rules.end(), instrument_overdue_rule) != rules.end();
}

/// What decides on a pass.
struct Undecided {
  JudgedAgain pass;  ///< as it is
  std::string day;
  std::set<std::string> overdue;  ///< ids of the instruments that were overdue on that day
};

void take_instrument(Undecided& undecided, const std::string& id, const std::string& due) {
  const std::string day = due.substr(0, 10);
  if (!day.empty() && day < undecided.day) undecided.overdue.insert(id);
}

/// Of each instrument the first calibration after the weld must have found it in tolerance.
std::optional<JudgedAgain> judged_again(Undecided undecided, LaterCalibrations& calibrations,
                                        bool by_the_new_one) {
  JudgedAgain& pass = undecided.pass;
  if (!has_rule(pass.undecided_by) || undecided.overdue.empty()) return std::nullopt;
  bool has_new_one = false;
  for (const std::string& instrument : undecided.overdue) {
    const auto* calibration = calibrations.first_after(instrument, undecided.day);
    if (calibration == nullptr || calibration->as_found != as_found_in_tolerance) return std::nullopt;
    if (calibration->seq == 0)
      has_new_one = true;
    else
      pass.calibrations.push_back(calibration->seq);
  }
  if (has_new_one != by_the_new_one) return std::nullopt;
  std::erase(pass.undecided_by, instrument_overdue_rule);
  if (pass.verdict == "undecided" && pass.undecided_by.empty()) pass.verdict = "pass";
  return std::move(pass);
}

Undecided undecided_of(const JsonNode& body, std::uint64_t seq) {
  Undecided undecided{{seq,
                       body_text(body, "results.unit_serial"),
                       body_text(body, verdict_path),
                       body_texts(body, open_rules),
                       {}},
                      body_text(body, "results.started").substr(0, 10),
                      {}};
  if (const JsonNode* list = body.find("instruments"))
    for (const JsonNode& each : list->elements)
      take_instrument(undecided, body_text(each, "id"), body_text(each, "due"));
  return undecided;
}

std::uint64_t whole(const JsonNode& value) {
  return value.is_integer && value.number > 0 ? static_cast<std::uint64_t>(value.number) : 0;
}

/// Numbers of the calibrations that a judgement rests on.
std::vector<std::uint64_t> calibrations_of(const JsonNode& judgement) {
  std::vector<std::uint64_t> numbers;
  if (const JsonNode* own = body_member(judgement, "results.calibration")) numbers.push_back(whole(*own));
  if (const JsonNode* others = body_member(judgement, "results.calibrations"))
    for (const JsonNode& each : others->elements) numbers.push_back(whole(each));
  return numbers;
}

bool holds(RecordHistory& history, std::uint64_t judgement) {
  if (history.is_void(judgement)) return false;
  const auto numbers = calibrations_of(body_of(history.record(judgement)));
  return !numbers.empty() && std::all_of(numbers.begin(), numbers.end(), [&](std::uint64_t seq) {
    return seq != 0 && history.record(seq).kind == record_kind::calibration && !history.is_void(seq);
  });
}

}  // namespace

void LaterCalibrations::expect(const std::string& instrument, const std::string& date) {
  of(instrument).push_back({0, date, as_found_in_tolerance});
}

const LaterCalibrations::Calibration* LaterCalibrations::first_after(const std::string& instrument,
                                                                     const std::string& day) {
  const Calibration* first = nullptr;
  for (const Calibration& each : of(instrument))
    if (each.date >= day && (first == nullptr || each.date < first->date)) first = &each;
  return first;
}

std::optional<JudgedAgain> LaterCalibrations::judge(const PassRecord& record, std::uint64_t seq) {
  Undecided undecided{
      {seq, record.unit_serial, record.verdict ? to_string(*record.verdict) : "", record.undecided_by, {}},
      record.started.substr(0, 10),
      {}};
  if (!has_rule(record.undecided_by)) return std::nullopt;
  for (const UsedInstrument& each : record.instruments) take_instrument(undecided, each.id, each.due);
  return judged_again(std::move(undecided), *this, false);
}

std::vector<LaterCalibrations::Calibration>& LaterCalibrations::of(const std::string& instrument) {
  const auto [at, added] = known_.try_emplace(instrument);
  if (!added) return at->second;
  for (const std::uint64_t seq : history_.ledger().backend().find("instrument", instrument)) {
    if (history_.is_void(seq)) continue;
    const JsonNode body = history_.corrected_body(seq);
    at->second.push_back({seq, body_text(body, "results.date"), body_text(body, "results.as_found")});
  }
  return at->second;
}

std::vector<JudgedAgain> passes_judged_again(const Ledger& ledger, const std::string& instrument,
                                             const std::string& date) {
  std::vector<std::uint64_t> candidates;
  ledger.each_record(1, [&](const LedgerRow& row) {
    // Most bodies needn't be made trees of.
    if (row.kind == record_kind::pass && row.body.find(instrument_overdue_rule) != std::string::npos)
      candidates.push_back(row.seq);
    return true;
  });
  std::vector<JudgedAgain> found;
  // A history keeps what it has loaded: a store of a year is gone through in parts.
  constexpr std::size_t passes_at_once = 1000;
  for (std::size_t at = 0; at < candidates.size(); at += passes_at_once) {
    const auto part = std::span(candidates).subspan(at, std::min(passes_at_once, candidates.size() - at));
    RecordHistory history(ledger);
    history.load(part);
    LaterCalibrations calibrations(history);
    calibrations.expect(instrument, date);
    for (const std::uint64_t seq : part) {
      if (history.is_void(seq)) continue;
      auto again = judged_again(undecided_of(history.corrected_body(seq), seq), calibrations, true);
      if (again) found.push_back(std::move(*again));
    }
  }
  return found;
}

LedgerEntry judgement_entry(const JudgedAgain& pass, std::uint64_t calibration) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("unit_serial", pass.unit_serial);
  json.member("cause", instrument_overdue_rule).member("calibration", calibration);
  json.key("calibrations").begin_array();
  for (const std::uint64_t seq : pass.calibrations) json.value(seq);
  json.end_array().key("undecided_by").begin_array();
  for (const std::string& rule : pass.undecided_by) json.value(rule);
  json.end_array().member("verdict", pass.verdict).end_object();
  LedgerEntry entry{record_kind::judgement, pass.seq, {{"results", json.take()}}, {}};
  if (!pass.unit_serial.empty()) entry.lookups.emplace_back("unit", pass.unit_serial);
  return entry;
}

LedgerEntry judgement_entry(const JudgedAgain& pass) {
  JudgedAgain others = pass;
  const std::uint64_t newest = others.calibrations.back();
  others.calibrations.pop_back();
  return judgement_entry(others, newest);
}

void apply_judgements(RecordHistory& history, std::uint64_t seq, std::uint64_t before, JsonNode& body) {
  // What came after is looked at by number: loading more may move the list.
  const std::vector<std::uint64_t> judgements = history.changes_of(seq).judgements;
  for (const std::uint64_t number : judgements) {
    if (number >= before || !holds(history, number)) continue;
    auto* rules = const_cast<JsonNode*>(body_member(body, open_rules));
    auto* verdict = const_cast<JsonNode*>(body_member(body, verdict_path));
    if (rules == nullptr || verdict == nullptr) return;
    const std::string cause = body_text(body_of(history.record(number)), "results.cause");
    std::erase_if(rules->elements, [&](const JsonNode& rule) { return rule.string == cause; });
    if (verdict->string == "undecided" && rules->elements.empty()) verdict->string = "pass";
  }
}

}  // namespace seamtakt
