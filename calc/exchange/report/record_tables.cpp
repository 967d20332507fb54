#include "exchange/report/record_tables.hpp"

#include "base/text/comma_list.hpp"
#include "exchange/report/caution.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt {

namespace {

/// A member of a record's body that is in a table.
struct Member {
  std::string path, key;
  Heading heading;
};
using Members = std::vector<Member>;

template <class Row>
void append_members(Members& members, const std::string& path,
                    const std::vector<const Column<Row>*>& columns) {
  for (const auto* column : columns)
    members.push_back({path + column->key, column->key, Heading{{column->label}, column->unit}});
}

/// The brief columns of a record, those that a reader looks for in the order of a weld: what it was, how long
/// it is, what went in and what came of it.
Members make_pass_members() {
  constexpr std::string_view first[] = {"seam",    "pass",       "robot",      "schedule",
                                        "started", "arc_time_s", "arc_starts", "length_mm"};
  constexpr std::string_view covered[] = {"covered_mm", "needed_mm"};
  constexpr std::string_view figures[] = {"mean_current_A",     "mean_voltage_V",   "travel_speed_mm_s",
                                          "energy_J",           "arc_energy_kJ_mm", "heat_input_kJ_mm",
                                          "U_heat_input_kJ_mm", "cooling_time_s",   "cooling_from_C",
                                          "interpass_C",        "verdict"};
  std::vector<std::string_view> all(std::begin(first), std::end(first));
  all.insert(all.end(), std::begin(figures), std::end(figures));
  auto columns = ordered_columns(record_columns(), all, Shown::brief);
  const auto length = columns.begin() + std::size(first);
  Members members;
  append_members<PassRecord>(members, "results.", {columns.begin(), length});
  append_members(members, "results.coverage.", ordered_columns(coverage_columns(), covered, Shown::brief));
  append_members<PassRecord>(members, "results.", {length, columns.end()});
  return members;
}

Members make_manual_members() {
  Members members;
  append_members(members, "results.", ordered_columns(manual_columns(), {}, Shown::brief));
  return members;
}

const Members& pass_members() {
  static const Members members = make_pass_members();
  return members;
}

const Members& manual_members() {
  static const Members members = make_manual_members();
  return members;
}

const Members schedule_members = {
    {"results.schedule.id", "schedule", {{"Schedule"}}},
    {"results.schedule.revision", "revision", {{"Revision"}}},
    {"results.schedule.status", "status", {{"Status"}}},
    {"results.schedule.approved_by", "approved_by", {{"Approved by"}}},
    {"results.schedule.effective_from", "effective_from", {{"In force from"}}},
    {"results.schedule.process", "process", {{"Process"}}},
    {"results.wire.classification", "wire", {{"Wire"}}},
    {"schedule", "sha256", {{"SHA-256 of the revision"}}},
};

SheetCell cell_of(const JsonNode* value) {
  if (value == nullptr) return {};
  switch (value->kind) {
    case JsonNode::Kind::number:
      return value->number;
    case JsonNode::Kind::string:
      return value->string;
    case JsonNode::Kind::boolean:
      return Words{value->boolean ? "yes" : "no"};
    default:
      return {};
  }
}

const Members unit_members = {
    {"results.unit_serial", "unit_serial", {{"Unit"}}},
    {"results.weldment", "weldment", {{"Weldment"}}},
};

Sheet empty_sheet(const char* name, const Members& members, bool names_units = false) {
  Sheet sheet{name, {{"record", "Record"}}, {}};
  if (names_units)
    for (const Member& member : unit_members) sheet.columns.push_back({member.key, member.heading});
  for (const Member& member : members) sheet.columns.push_back({member.key, member.heading});
  return sheet;
}

std::vector<SheetCell> cells_of(std::uint64_t seq, const JsonNode& body, const Members& members,
                                bool names_units = false) {
  std::vector<SheetCell> cells = {static_cast<double>(seq)};
  if (names_units)
    for (const Member& member : unit_members) cells.push_back(cell_of(body_member(body, member.path)));
  for (const Member& member : members) cells.push_back(cell_of(body_member(body, member.path)));
  return cells;
}

std::string joined_numbers(const std::vector<std::uint64_t>& numbers) {
  std::string text;
  for (const std::uint64_t number : numbers) text += (text.empty() ? "" : ", ") + std::to_string(number);
  return text;
}

/// What happened to a record since: "void by 70; corrected by 61"; an empty text where nothing did.
SheetCell since_of(const RecordChanges& changes) {
  SheetCell since = std::string();
  const auto add = [&](Words what, const std::vector<std::uint64_t>& numbers) {
    if (numbers.empty()) return;
    const PatternCell part{what, {joined_numbers(numbers)}};
    const bool is_first = std::holds_alternative<std::string>(since);
    since = is_first ? SheetCell(part) : SheetCell(PatternCell{{"{1}; {2}"}, {since, part}});
  };
  add({"void by {1}"}, changes.voids);
  add({"corrected by {1}"}, changes.corrections);
  add({"signed off by {1}"}, changes.signoffs);
  return since;
}

}  // namespace

RecordTables::RecordTables(RecordHistory& history, Of of)
    : history_(history),
      names_units_(of == Of::many_units),
      passes_(empty_sheet("passes", pass_members(), names_units_)),
      manual_(empty_sheet("manual", manual_members(), names_units_)),
      schedules_(empty_sheet("schedules", schedule_members)),
      instruments_{"instruments",
                   {{"instrument", "Instrument"},
                    {"quantity", "Quantity"},
                    {"certificate", "Certificate"},
                    {"due", "Due"}},
                   {}},
      changes_{"changes",
               {{"record", "Record"},
                {"kind", "Kind"},
                {"about", "About record"},
                {"member", "Member"},
                {"was", "Was"},
                {"is", "Is"},
                {"time", "Time (UTC)"},
                {"who", "Who"},
                {"why", "Why"}},
               {}} {
  for (Sheet* sheet : {&passes_, &manual_}) sheet->columns.push_back({"since", "Since"});
  manual_.columns.push_back({"welder", "Welder"});
}

void RecordTables::add(std::uint64_t seq) {
  const std::string& kind = history_.record(seq).kind;
  const bool is_pass = kind == record_kind::pass;
  if (!is_pass && kind != record_kind::manual) return;
  const JsonNode body = history_.corrected_body(seq);
  if (is_pass)
    add_pass(seq, body);
  else
    add_manual(seq, body);
  add_changes(seq);
}

void RecordTables::add_changes(std::uint64_t about) {
  const RecordChanges changes = history_.changes_of(about);
  for (const std::uint64_t number : changes.corrections) {
    for (const RecordHistory::Change& change : history_.changes_by(number, about))
      add_change(number, about, &change);
    add_changes(number);  // it may be void itself
  }
  for (const auto* later : {&changes.voids, &changes.signoffs})
    for (const std::uint64_t number : *later) add_change(number, about, nullptr);
}

void RecordTables::add_pass(std::uint64_t seq, const JsonNode& body) {
  auto cells = cells_of(seq, body, pass_members(), names_units_);
  cells.push_back(since_of(history_.changes_of(seq)));
  passes_.rows.push_back(std::move(cells));
  if (const JsonNode* kept = body_member(body, "schedule_record"); kept != nullptr && kept->is_integer)
    add_schedule(static_cast<std::uint64_t>(kept->number));
  if (const JsonNode* list = body_member(body, "instruments"))
    for (const JsonNode& instrument : list->elements) add_instrument(instrument);
}

void RecordTables::add_manual(std::uint64_t seq, const JsonNode& body) {
  auto cells = cells_of(seq, body, manual_members(), names_units_);
  cells.push_back(since_of(history_.changes_of(seq)));
  const std::string welder = body_text(body, "results.welder");
  cells.push_back(welder.empty() ? SheetCell() : SheetCell(history_.ledger().person_name(welder)));
  manual_.rows.push_back(std::move(cells));
}

void RecordTables::add_schedule(std::uint64_t seq) {
  if (schedules_seen_.insert(seq).second)
    schedules_.rows.push_back(cells_of(seq, body_of(history_.record(seq)), schedule_members));
}

void RecordTables::add_instrument(const JsonNode& instrument) {
  std::vector<SheetCell> cells;
  std::string identity;
  for (const char* key : {"id", "quantity", "certificate", "due"}) {
    cells.push_back(cell_of(instrument.find(key)));
    identity += body_text(instrument, key) + "\n";
  }
  if (instruments_seen_.insert(identity).second) instruments_.rows.push_back(std::move(cells));
}

void RecordTables::add_change(std::uint64_t seq, std::uint64_t about, const RecordHistory::Change* change) {
  const LedgerRow& row = history_.record(seq);
  const JsonNode body = body_of(row);
  std::vector<SheetCell> cells = {static_cast<double>(row.seq), row.kind, static_cast<double>(about)};
  if (change != nullptr) {
    constexpr std::string_view results = "results.";
    const std::string_view path = change->member;
    const std::string member(path.starts_with(results) ? path.substr(results.size()) : path);
    cells.push_back(change->is_derived ? SheetCell(PatternCell{{"{1} (recomputed)"}, {member}})
                                       : SheetCell(member));
    const bool is_person = path == "results.welder";
    cells.push_back(value_cell(change->was, is_person));
    cells.push_back(value_cell(change->is, is_person));
  } else {
    cells.insert(cells.end(), 3, SheetCell());
  }
  for (const std::string& text :
       {body_text(body, "t"), history_.ledger().person_name(body_text(body, "who")), body_text(body, "why")})
    cells.emplace_back(text);
  changes_.rows.push_back(std::move(cells));
}

/// A value of a correction; "null" says that nothing was known. A person stands by name.
SheetCell RecordTables::value_cell(const std::string& json, bool is_person) const {
  const JsonNode node = parse_json(json, "a correction");
  if (is_person) return history_.ledger().person_name(node.string);
  const SheetCell cell = cell_of(&node);
  return std::holds_alternative<std::monostate>(cell) ? SheetCell(json) : cell;
}

std::vector<Sheet> RecordTables::take_records() {
  std::vector<Sheet> sheets;
  for (Sheet* sheet : {&passes_, &manual_, &schedules_, &instruments_}) sheets.push_back(std::move(*sheet));
  return sheets;
}

Sheet open_items_sheet(const std::vector<Nonconformance>& list, const std::vector<OpenCause>& causes) {
  Sheet sheet{"open-items",
              {{"record", "Record"},
               {"about", "About record"},
               {"place", "Where"},
               {"text", "What failed or was left open"},
               {"opened", "Opened"},
               {"decision", "Decision"},
               {"retest", "Re-test, record"},
               {"state", "State"}},
              {}};
  for (const Nonconformance& each : list)
    sheet.rows.push_back({static_cast<double>(each.seq), static_cast<double>(each.about), each.place,
                          SentenceCell{each.sentence}, each.opened,
                          each.decision ? SheetCell(Words{to_string(*each.decision)}) : SheetCell(),
                          each.retest > 0 ? SheetCell(static_cast<double>(each.retest)) : SheetCell(),
                          Words{each.open ? "open" : "closed"}});
  for (const OpenCause& cause : causes) {
    const PatternCell passes{
        {cause.passes.size() == 1 ? "{1} undecided pass: {2}" : "{1} undecided passes: {2}"},
        {static_cast<double>(cause.passes.size()), comma_list(cause.passes)}};
    const SheetCell about = cause.records.size() == 1 ? SheetCell(static_cast<double>(cause.records.front()))
                                                      : SheetCell(joined_numbers(cause.records));
    sheet.rows.push_back(
        {SheetCell(), about, passes,
         cause.sentence.is_empty()
             ? SheetCell(cause.cause)
             : SheetCell(PatternCell{{"{1} ({2})"}, {SentenceCell{cause.sentence}, cause.cause}}),
         SheetCell(), SheetCell(), SheetCell(), Words{"open"}});
  }
  return sheet;
}

Sheet about_sheet(const SheetOrigin& origin) {
  Sheet sheet{"about", {{"item", "Item"}, {"value", "Value"}}, {}};
  sheet.rows.push_back({Words{"Caution"}, Words{caution_text()}});
  for (const auto& [key, value] : origin) sheet.rows.push_back({key, value});
  return sheet;
}

}  // namespace seamtakt
