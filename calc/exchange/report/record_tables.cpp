#include "exchange/report/record_tables.hpp"

#include "base/sentences/place_sentence.hpp"
#include "exchange/report/caution.hpp"
#include "exchange/report/column_sheet.hpp"
#include "records/keep/stored_sentence.hpp"
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
    members.push_back(
        {path + column->key, column->key, Heading{Word::of_table(column->label), column->unit}});
}

/// The brief columns of a record, those that a reader looks for in the order of a weld: its identity, length,
/// inputs and results.
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

/// What the heat input of a pass rests on.
const Members& method_members() {
  static const Members members = [] {
    constexpr std::string_view keys[] = {"seam",
                                         "pass",
                                         "length_source",
                                         "energy_method",
                                         "power_method",
                                         "waveform_factor",
                                         "thermal_efficiency",
                                         "u_voltage_pct",
                                         "u_current_pct",
                                         "u_travel_speed_pct",
                                         "u_waveform_factor_pct"};
    Members made;
    for (const std::string_view key : keys)
      append_members<PassRecord>(made, "results.", {find_column(record_columns(), key)});
    return made;
  }();
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
    {"results.schedule.id", "schedule", {"Schedule"_word}},
    {"results.schedule.revision", "revision", {"Revision"_word}},
    {"results.schedule.status", "status", {"Status"_word}},
    {"results.schedule.approved_by", "approved_by", {"Approved by"_word}},
    {"results.schedule.effective_from", "effective_from", {"In force from"_word}},
    {"results.schedule.process", "process", {"Process"_word}},
    {"results.wire.classification", "wire", {"Wire"_word}},
    {"results.schedule.qualification", "qualification", {"Qualification"_word}},
    {"schedule", "sha256", {"SHA-256 of the revision"_word}},
};

SheetCell cell_of(const JsonNode* value) {
  if (value == nullptr) return {};
  switch (value->kind) {
    case JsonNode::Kind::number:
      return value->number;
    case JsonNode::Kind::string:
      return value->string;
    case JsonNode::Kind::boolean:
      return value->boolean ? "yes"_word : "no"_word;
    default:
      return {};
  }
}

const Members unit_members = {
    {"results.unit_serial", "unit_serial", {"Unit"_word}},
    {"results.weldment", "weldment", {"Weldment"_word}},
};

Sheet empty_sheet(const char* name, const Members& members, bool names_units = false) {
  Sheet sheet{name, {{"record", {"Record"_word}}}, {}};
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
  for (const Member& member : members)
    cells.push_back(word_or_text(member.key, cell_of(body_member(body, member.path))));
  return cells;
}

/// A corrected member: its key, or the heading that the records' table gives it.
SheetCell member_cell(const std::string& member) {
  const auto* column = find_column(record_columns(), member);
  if (column == nullptr || *column->label == '\0') return member;
  return KeyCell{member, {Word::of_table(column->label), column->unit}};
}

SheetCell severity_cell(const std::string& stored) {
  for (const Severity severity : {Severity::note, Severity::warn, Severity::fail})
    if (stored == to_string(severity)) return SeverityCell{severity};
  return stored;
}

/// What happened to a record since: "void by 70; corrected by 61"; an empty text where nothing did.
SheetCell since_of(const RecordChanges& changes) {
  SheetCell since = std::string();
  const auto add = [&](Word what, const std::vector<std::uint64_t>& numbers) {
    if (numbers.empty()) return;
    const PatternCell part{what, {joined_numbers(numbers)}};
    const bool is_first = std::holds_alternative<std::string>(since);
    since = is_first ? SheetCell(part) : SheetCell(PatternCell{"{1}; {2}"_word, {since, part}});
  };
  add("void by {1}"_word, changes.voids);
  add("corrected by {1}"_word, changes.corrections);
  add("judged again by {1}"_word, changes.judgements);
  add("decided by {1}"_word, changes.dispositions);
  add("signed off by {1}"_word, changes.signoffs);
  return since;
}

}  // namespace

RecordTables::RecordTables(RecordHistory& history, Of of)
    : history_(history),
      names_units_(of == Of::many_units),
      passes_(empty_sheet("passes", pass_members(), names_units_)),
      methods_(empty_sheet("methods", method_members(), names_units_)),
      manual_(empty_sheet("manual", manual_members(), names_units_)),
      schedules_(empty_sheet("schedules", schedule_members)),
      instruments_{"instruments",
                   {{"instrument", {"Instrument"_word}},
                    {"quantity", {"Quantity"_word}},
                    {"certificate", {"Certificate"_word}},
                    {"due", {"Due"_word}}},
                   {}},
      findings_{"findings",
                {{"record", {"Record"_word}},
                 {"where", {"Where"_word}},
                 {"severity", {"Severity"_word}},
                 {"rule", {"Rule"_word}},
                 {"text", {"Finding"_word}}},
                {}},
      logs_{"logs",
            {{"ingest", {"Ingest record"_word}},
             {"name", {"Raw log"_word}},
             {"sha256", {"SHA-256"_word}},
             {"bytes", {"Size"_word, "byte"}},
             {"rows", {"Rows"_word}}},
            {}},
      changes_{"changes",
               {{"record", {"Record"_word}},
                {"kind", {"Kind"_word}},
                {"about", {"About record"_word}},
                {"member", {"Member"_word}},
                {"was", {"Was"_word}},
                {"is", {"Is"_word}},
                {"time", {"Time (UTC)"_word}},
                {"who", {"Who"_word}},
                {"why", {"Why"_word}}},
               {}} {
  for (Sheet* sheet : {&passes_, &manual_}) sheet->columns.push_back({"since", {"Since"_word}});
  manual_.columns.push_back({"welder", {"Welder"_word}});
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
  for (const std::uint64_t number : changes.judgements) {
    const auto verdict = [&](std::uint64_t before) {
      return json_string(body_text(history_.corrected_body_before(about, before), "results.verdict"));
    };
    const RecordHistory::Change change{"results.verdict", verdict(number), verdict(number + 1), true};
    add_change(number, about, &change);
    add_changes(number);
  }
  for (const auto* later : {&changes.voids, &changes.dispositions, &changes.signoffs})
    for (const std::uint64_t number : *later) add_change(number, about, nullptr);
}

void RecordTables::add_pass(std::uint64_t seq, const JsonNode& body) {
  auto cells = cells_of(seq, body, pass_members(), names_units_);
  cells.push_back(since_of(history_.changes_of(seq)));
  passes_.rows.push_back(std::move(cells));
  methods_.rows.push_back(cells_of(seq, body, method_members(), names_units_));
  if (const JsonNode* kept = body_member(body, "schedule_record"); kept != nullptr && kept->is_integer)
    add_schedule(static_cast<std::uint64_t>(kept->number));
  if (const JsonNode* list = body_member(body, "instruments"))
    for (const JsonNode& instrument : list->elements) add_instrument(instrument);
  add_findings(seq, body);
  add_logs(body);
}

void RecordTables::add_findings(std::uint64_t seq, const JsonNode& body) {
  const JsonNode* list = body_member(body, "findings");
  if (list == nullptr) return;
  for (const JsonNode& finding : list->elements)
    findings_.rows.push_back({static_cast<double>(seq),
                              SentenceCell{place_sentence(body_text(finding, "where"))},
                              severity_cell(body_text(finding, "severity")), body_text(finding, "rule"),
                              SentenceCell{stored_sentence(finding)}});
}

void RecordTables::add_logs(const JsonNode& body) {
  const JsonNode* ingest = body_member(body, "ingest");
  if (ingest == nullptr || !ingest->is_integer) return;
  const auto seq = static_cast<std::uint64_t>(ingest->number);
  if (!ingests_seen_.insert(seq).second) return;
  const JsonNode of_ingest = body_of(history_.record(seq));
  const JsonNode* raw = body_member(of_ingest, "raw");
  if (raw == nullptr) return;
  for (const JsonNode& log : raw->elements) {
    const auto count = [&](const char* key) {
      const auto number = body_number(log, key);
      return number ? SheetCell(Count{static_cast<std::uint64_t>(*number)}) : SheetCell();
    };
    logs_.rows.push_back({static_cast<double>(seq), body_text(log, "name"), body_text(log, "sha256"),
                          count("bytes"), count("rows")});
  }
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
    cells.push_back(word_or_text(key, cell_of(instrument.find(key))));
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
    const SheetCell named = member_cell(member);
    cells.push_back(change->is_derived ? SheetCell(PatternCell{"{1} (recomputed)"_word, {named}}) : named);
    cells.push_back(value_cell(member, change->was));
    cells.push_back(value_cell(member, change->is));
  } else {
    cells.insert(cells.end(), 3, SheetCell());
  }
  for (const std::string& text :
       {body_text(body, "t"), history_.ledger().person_name(body_text(body, "who")), body_text(body, "why")})
    cells.emplace_back(text);
  changes_.rows.push_back(std::move(cells));
}

/// A value of a correction; "null" says that nothing was known. A person is given by name.
SheetCell RecordTables::value_cell(const std::string& member, const std::string& json) const {
  const JsonNode node = parse_json(json, "a correction");
  if (member == "welder") return history_.ledger().person_name(node.string);
  const SheetCell cell = cell_of(&node);
  if (std::holds_alternative<std::monostate>(cell)) return json;
  const auto* column = find_column(record_columns(), member);
  if (const double* number = std::get_if<double>(&cell); number && column)
    return Figure{*number, column->unit};
  return word_or_text(member, cell);
}

std::vector<Sheet> RecordTables::take_records() {
  std::vector<Sheet> sheets;
  for (Sheet* sheet : {&passes_, &methods_, &manual_, &schedules_, &instruments_, &findings_, &logs_})
    sheets.push_back(std::move(*sheet));
  return sheets;
}

Sheet about_sheet(const SheetOrigin& origin) {
  Sheet sheet{"about", {{"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  sheet.rows.push_back({"Caution"_word, Word::of_table(caution_text())});
  for (const OriginItem& item : origin) sheet.rows.push_back({origin_label(item), item.value});
  return sheet;
}

}  // namespace seamtakt
