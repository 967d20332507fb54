#include "exchange/unit_record.hpp"

#include <set>

#include "base/error.hpp"
#include "base/version.hpp"
#include "exchange/caution.hpp"
#include "records/ledger/nonconformance.hpp"
#include "records/ledger/record_changes.hpp"

namespace seamtakt {

namespace {

/// A member of a record's results that stands in a table.
struct Member {
  const char* path;
  const char* key;
  const char* heading;
};

constexpr Member pass_members[] = {
    {"results.seam", "seam", "Seam"},
    {"results.pass", "pass", "Pass"},
    {"results.robot", "robot", "Robot"},
    {"results.schedule", "schedule", "Schedule"},
    {"results.started", "started", "Started"},
    {"results.arc_time_s", "arc_time_s", "Arc time, s"},
    {"results.arc_starts", "arc_starts", "Arc starts"},
    {"results.length_mm", "length_mm", "Length, mm"},
    {"results.mean_current_A", "mean_current_A", "Current, A"},
    {"results.mean_voltage_V", "mean_voltage_V", "Voltage, V"},
    {"results.travel_speed_mm_s", "travel_speed_mm_s", "Travel speed, mm/s"},
    {"results.energy_J", "energy_J", "Energy, J"},
    {"results.arc_energy_kJ_mm", "arc_energy_kJ_mm", "Arc energy, kJ/mm"},
    {"results.heat_input_kJ_mm", "heat_input_kJ_mm", "Heat input, kJ/mm"},
    {"results.U_heat_input_kJ_mm", "U_heat_input_kJ_mm", "U (k = 2), kJ/mm"},
    {"results.cooling_time_s", "cooling_time_s", "t8/5, s"},
    {"results.interpass_C", "interpass_C", "Interpass, C"},
    {"results.verdict", "verdict", "Verdict"},
};

constexpr Member manual_members[] = {
    {"results.seam", "seam", "Seam"},
    {"results.pass", "pass", "Pass"},
    {"results.schedule", "schedule", "Schedule"},
    {"results.date", "date", "Date"},
    {"results.result", "result", "Result"},
};

constexpr Member schedule_members[] = {
    {"results.schedule.id", "schedule", "Schedule"},
    {"results.schedule.revision", "revision", "Revision"},
    {"results.schedule.status", "status", "Status"},
    {"results.schedule.approved_by", "approved_by", "Approved by"},
    {"results.schedule.effective_from", "effective_from", "In force from"},
    {"results.schedule.process", "process", "Process"},
    {"results.wire.classification", "wire", "Wire"},
    {"schedule", "sha256", "SHA-256 of the revision"},
};

SheetCell cell_of(const JsonNode* value) {
  if (value == nullptr) return {};
  switch (value->kind) {
    case JsonNode::Kind::number:
      return value->number;
    case JsonNode::Kind::string:
      return value->string;
    case JsonNode::Kind::boolean:
      return std::string(value->boolean ? "yes" : "no");
    default:
      return {};
  }
}

template <std::size_t n>
Sheet empty_sheet(const char* name, const Member (&members)[n]) {
  Sheet sheet{name, {{"record", "Record"}}, {}};
  for (const Member& member : members) sheet.columns.push_back({member.key, member.heading});
  return sheet;
}

template <std::size_t n>
std::vector<SheetCell> cells_of(std::uint64_t seq, const JsonNode& body, const Member (&members)[n]) {
  std::vector<SheetCell> cells = {static_cast<double>(seq)};
  for (const Member& member : members) cells.push_back(cell_of(body_member(body, member.path)));
  return cells;
}

std::string joined_numbers(const std::vector<std::uint64_t>& numbers) {
  std::string text;
  for (const std::uint64_t number : numbers) text += (text.empty() ? "" : ", ") + std::to_string(number);
  return text;
}

/// What happened to a record since: "corrected by 61; void by 70".
std::string since_text(const RecordChanges& changes) {
  std::string text;
  const auto add = [&](const char* what, const std::vector<std::uint64_t>& numbers) {
    if (!numbers.empty())
      text += (text.empty() ? "" : "; ") + std::string(what) + " by " + joined_numbers(numbers);
  };
  add("void", changes.voids);
  add("corrected", changes.corrections);
  add("signed off", changes.signoffs);
  return text;
}

/// Goes through a unit's records once and fills the tables.
class Collector {
 public:
  Collector(const Ledger& ledger, const std::string& unit_serial) : ledger_(ledger), unit_(unit_serial) {
    for (Sheet* sheet : {&passes_, &manual_}) sheet->columns.push_back({"since", "Since"});
    manual_.columns.push_back({"welder", "Welder"});
  }

  std::vector<Sheet> sheets(const SheetOrigin& origin) {
    const auto numbers = ledger_.backend().find("unit", unit_);
    if (numbers.empty())
      throw InputError("--unit", "\"" + printable(unit_) + "\"",
                       "a serial number that a record of the store has");
    for (const std::uint64_t seq : numbers) take(ledger_.record(seq));
    std::vector<Sheet> result;
    result.push_back(status_sheet());
    for (Sheet* sheet : {&passes_, &manual_, &schedules_, &instruments_}) result.push_back(std::move(*sheet));
    result.push_back(open_items());
    result.push_back(std::move(changes_));
    result.push_back(about(origin));
    return result;
  }

 private:
  void take(const LedgerRow& row) {
    const bool is_pass = row.kind == record_kind::pass, is_manual = row.kind == record_kind::manual;
    if (!is_pass && !is_manual) return;
    const RecordChanges changes = changes_of(ledger_, row.seq);
    const JsonNode body = corrected_body(ledger_, row);
    if (is_pass)
      take_pass(row.seq, body, changes);
    else
      take_manual(row.seq, body, changes);
    for (const auto* later : {&changes.corrections, &changes.voids, &changes.signoffs})
      for (const std::uint64_t seq : *later) take_change(ledger_.record(seq), row.seq);
  }

  void take_pass(std::uint64_t seq, const JsonNode& body, const RecordChanges& changes) {
    auto cells = cells_of(seq, body, pass_members);
    cells.push_back(since_text(changes));
    passes_.rows.push_back(std::move(cells));
    if (const JsonNode* kept = body_member(body, "schedule_record"); kept != nullptr && kept->is_integer)
      take_schedule(static_cast<std::uint64_t>(kept->number));
    if (const JsonNode* list = body_member(body, "instruments"))
      for (const JsonNode& instrument : list->elements) take_instrument(instrument);
  }

  void take_manual(std::uint64_t seq, const JsonNode& body, const RecordChanges& changes) {
    auto cells = cells_of(seq, body, manual_members);
    cells.push_back(since_text(changes));
    const std::string welder = body_text(body, "results.welder");
    cells.push_back(welder.empty() ? SheetCell() : SheetCell(ledger_.person_name(welder)));
    manual_.rows.push_back(std::move(cells));
  }

  void take_schedule(std::uint64_t seq) {
    if (!schedules_seen_.insert(seq).second) return;
    schedules_.rows.push_back(cells_of(seq, body_of(ledger_.record(seq)), schedule_members));
  }

  void take_instrument(const JsonNode& instrument) {
    std::vector<SheetCell> cells;
    std::string identity;
    for (const char* key : {"id", "quantity", "certificate", "due"}) {
      cells.push_back(cell_of(instrument.find(key)));
      identity += body_text(instrument, key) + "\n";
    }
    if (instruments_seen_.insert(identity).second) instruments_.rows.push_back(std::move(cells));
  }

  void take_change(const LedgerRow& row, std::uint64_t about) {
    const JsonNode body = body_of(row);
    changes_.rows.push_back({static_cast<double>(row.seq), row.kind, static_cast<double>(about),
                             body_text(body, "t"), ledger_.person_name(body_text(body, "who")),
                             body_text(body, "why")});
  }

  Sheet status_sheet() {
    const UnitStatus status = unit_status(ledger_, unit_);
    std::string missing;
    for (const std::string& each : status.missing) missing += (missing.empty() ? "" : ", ") + each;
    std::size_t open = 0;
    for (const Nonconformance& each : status.nonconformances) open += each.open ? 1 : 0;
    Sheet sheet{"unit", {{"item", "Item"}, {"value", "Value"}}, {}};
    sheet.rows = {{"Unit", unit_},
                  {"Weldment", status.weldment},
                  {"Complete", status.complete ? (*status.complete ? "yes" : "no")
                                               : "not known: no plan said what it needs"},
                  {"Missing", missing.empty() ? "nothing known" : missing},
                  {"Open items", static_cast<double>(open)},
                  {"Scrapped", status.scrapped ? "yes" : "no"},
                  {"Robot passes that count", static_cast<double>(status.passes.size())},
                  {"Manual seams that count", static_cast<double>(status.manual.size())}};
    return sheet;
  }

  Sheet open_items() const {
    Sheet sheet{"open-items",
                {{"record", "Record"},
                 {"about", "About record"},
                 {"place", "Where"},
                 {"text", "What failed"},
                 {"opened", "Opened"},
                 {"decision", "Decision"},
                 {"retest", "Re-test, record"},
                 {"state", "State"}},
                {}};
    for (const Nonconformance& each : nonconformances(ledger_, unit_))
      sheet.rows.push_back({static_cast<double>(each.seq), static_cast<double>(each.about), each.place,
                            each.text, each.opened,
                            each.decision ? SheetCell(std::string(to_string(*each.decision))) : SheetCell(),
                            each.retest > 0 ? SheetCell(static_cast<double>(each.retest)) : SheetCell(),
                            std::string(each.open ? "open" : "closed")});
    return sheet;
  }

  static Sheet about(const SheetOrigin& origin) {
    Sheet sheet{"about", {{"item", "Item"}, {"value", "Value"}}, {}};
    sheet.rows.push_back({"Caution", caution_text()});
    for (const auto& [key, value] : origin) sheet.rows.push_back({key, value});
    return sheet;
  }

  const Ledger& ledger_;
  const std::string& unit_;
  Sheet passes_ = empty_sheet("passes", pass_members), manual_ = empty_sheet("manual", manual_members),
        schedules_ = empty_sheet("schedules", schedule_members);
  Sheet instruments_{"instruments",
                     {{"instrument", "Instrument"},
                      {"quantity", "Quantity"},
                      {"certificate", "Certificate"},
                      {"due", "Due"}},
                     {}};
  Sheet changes_{"changes",
                 {{"record", "Record"},
                  {"kind", "Kind"},
                  {"about", "About record"},
                  {"time", "Time (UTC)"},
                  {"who", "Who"},
                  {"why", "Why"}},
                 {}};
  std::set<std::uint64_t> schedules_seen_;
  std::set<std::string> instruments_seen_;
};

}  // namespace

std::vector<Sheet> unit_sheets(const Ledger& ledger, const std::string& unit_serial,
                               const SheetOrigin& origin) {
  return Collector(ledger, unit_serial).sheets(origin);
}

SheetOrigin origin_of(const Ledger& ledger, const VerifyReport& verified, const std::string& made_at_utc) {
  return {{"program", std::string("seamtakt ") + program_version},
          {"store", ledger.backend().name()},
          {"store_id", ledger.store_id()},
          {"verified", verified.summary()},
          {"head", verified.newest_head ? verified.newest_head->anchor_line() : ""},
          {"made_at_utc", made_at_utc}};
}

}  // namespace seamtakt
