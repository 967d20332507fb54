#include "cli/manual/store_views.hpp"

#include <span>
#include <vector>

#include "records/passes/pass_columns.hpp"

namespace seamtakt::cli {

namespace {

enum class SqlType { text, number, whole, truth, json };

struct ViewColumn {
  std::string name, path;  ///< in the body: "results.due"
  SqlType type = SqlType::text;
};

struct KindView {
  const char *view, *kind, *about;
  std::vector<ViewColumn> columns;
};

/// One row an element of a list in the bodies of some kinds.
struct ListView {
  const char *view, *kinds, *about, *path;
  std::vector<ViewColumn> columns;
};

template <class Row>
SqlType sql_type(const Column<Row>& column) {
  if (column.write || column.is_list) return SqlType::json;
  switch (column.type) {
    case ColumnType::number:
      return SqlType::number;
    case ColumnType::whole:
      return SqlType::whole;
    case ColumnType::truth:
      return SqlType::truth;
    case ColumnType::pair:
      return SqlType::json;
    case ColumnType::text:
    case ColumnType::open:
      break;
  }
  return SqlType::text;
}

template <class Row>
void append_columns(std::span<const Column<Row>> columns, const std::string& before_name,
                    const std::string& before_path, std::vector<ViewColumn>& to) {
  for (const auto& column : columns)
    to.push_back({before_name + column.key, before_path + column.key, sql_type(column)});
}

std::vector<ViewColumn> pass_view_columns() {
  std::vector<ViewColumn> columns = {{"ingest", "ingest", SqlType::whole}};
  append_columns(record_columns(), "", "results.", columns);
  append_columns(steady_columns(), "steady_", "results.steady.", columns);
  columns.push_back({"instruments", "instruments", SqlType::json});
  columns.push_back({"findings", "findings", SqlType::json});
  return columns;
}

std::vector<ViewColumn> manual_view_columns() {
  std::vector<ViewColumn> columns = {{"ingest", "ingest", SqlType::whole}};
  append_columns(manual_columns(), "", "results.", columns);
  columns.push_back({"findings", "findings", SqlType::json});
  return columns;
}

const std::vector<KindView>& kind_views() {
  constexpr SqlType whole = SqlType::whole, json = SqlType::json;
  static const std::vector<KindView> views = {
      {"passes", "pass", "a logged pass, as it was recorded; corrections stand beside it",
       pass_view_columns()},
      {"manual_seams", "manual", "a manual seam, as it was recorded", manual_view_columns()},
      {"ingests",
       "ingest",
       "one reading of logs",
       {{"passes", "results.passes", whole},
        {"manual_seams", "results.manual", whole},
        {"rows_read", "results.rows.read", whole},
        {"rows_in_passes", "results.rows.in_passes", whole},
        {"rows_arc_off", "results.rows.arc_off", whole},
        {"rows_rejected", "results.rows.rejected", whole},
        {"plan_file", "inputs.plan_file"},
        {"plan_sha256", "inputs.plan_sha256"},
        {"logs", "raw", json},
        {"units", "results.units", json}}},
      {"schedules",
       "schedule",
       "a revision of a schedule, in full",
       {{"schedule", "results.schedule.id"},
        {"revision", "results.schedule.revision", whole},
        {"status", "results.schedule.status"},
        {"process", "results.schedule.process"},
        {"schedule_sha256", "schedule"},
        {"content", "results", json}}},
      {"calibrations",
       "calibration",
       "an instrument's calibration",
       {{"instrument", "results.instrument"},
        {"certificate", "results.certificate"},
        {"certificate_sha256", "results.certificate_sha256"},
        {"calibrated_on", "results.date"},
        {"due", "results.due"},
        {"as_found", "results.as_found"}}},
      {"corrections",
       "correction",
       "what an old record should have said",
       {{"changes", "results.changes", json}}},
      {"voids", "void", "an old record doesn't count", {}},
      {"signoffs",
       "signoff",
       "a person's own signature under a record",
       {{"key_id", "results.key_id"}, {"leaf", "results.leaf"}, {"signature", "results.signature"}}},
      {"nonconformances",
       "nonconformance",
       "what failed and has to be decided on",
       {{"unit_serial", "results.unit_serial"}, {"place", "results.place"}, {"findings", "findings", json}}},
      {"dispositions",
       "disposition",
       "what becomes of a nonconformance",
       {{"decision", "results.decision"},
        {"unit_serial", "results.unit_serial"},
        {"schedule", "results.schedule"},
        {"retest", "results.retest", whole},
        {"cause", "results.cause"}}},
      {"judgements",
       "judgement",
       "a pass judged again by a later calibration",
       {{"unit_serial", "results.unit_serial"},
        {"cause", "results.cause"},
        {"calibration", "results.calibration", whole},
        {"verdict", "results.verdict"},
        {"undecided_by", "results.undecided_by", json}}},
      {"retentions",
       "retention",
       "until when records are kept, and legal holds",
       {{"action", "results.action"}, {"unit_serial", "results.unit_serial"}, {"until", "results.until"}}},
      {"notes", "note", "a note; its text is why", {}},
      {"anchors",
       "anchor",
       "an anchor was kept outside, or another store's anchors are kept here",
       {{"anchor", "results.anchor"},
        {"kept_in", "results.kept_in"},
        {"witnessed", "results.witnessed", json}}},
      {"timestamps",
       "timestamp",
       "an outside authority's time over a head",
       {{"head_n", "results.n", whole},
        {"head_sha256", "results.head_sha256"},
        {"stamped_at", "results.time"},
        {"authority", "results.authority"}}},
      {"person_keys", "person", "a person's own key belongs to a name", {{"key_id", "results.key_id"}}},
      {"store_keys", "key", "the store's next key", {{"key_id", "results.key_id"}, {"replaces", "replaces"}}},
      {"revoked_keys",
       "key_revoke",
       "a new key in place of a lost one",
       {{"key_id", "results.key_id"}, {"replaces", "replaces"}}},
      {"beginnings", "genesis", "the store begins", {{"key_id", "results.key_id"}}},
      {"migrations", "migrate", "the store continues another one", {{"content", "results", json}}}};
  return views;
}

const std::vector<ListView>& list_views() {
  constexpr SqlType number = SqlType::number;
  static const std::vector<ListView> views = {
      {"findings",
       "'pass', 'manual', 'nonconformance'",
       "a finding of a record",
       "findings",
       {{"rule", "rule"},
        {"severity", "severity"},
        {"place", "where"},
        {"value", "value", number},
        {"limit_value", "limit", number},
        {"unit", "unit"},
        {"text", "text"},
        {"source", "source"}}},
      {"changes",
       "'correction'",
       "a member that a correction changed",
       "results.changes",
       {{"member", "member"}, {"old_value", "old"}, {"new_value", "new"}}},
      {"interruptions",
       "'pass'",
       "the arc was off within a pass",
       "results.interruptions",
       {{"start_s", "start_s", number},
        {"duration_s", "duration_s", number},
        {"line", "line", SqlType::whole}}},
      {"excursions",
       "'pass'",
       "a stretch of a pass outside a limit",
       "results.excursions",
       {{"quantity", "quantity"},
        {"start_s", "start_s", number},
        {"end_s", "end_s", number},
        {"length_mm", "length_mm", number},
        {"value", "value", number},
        {"limit_value", "limit", number}}},
      {"instruments",
       "'pass'",
       "an instrument that a pass was measured with",
       "instruments",
       {{"instrument", "id"}, {"quantity", "quantity"}, {"certificate", "certificate"}, {"due", "due"}}}};
  return views;
}

/// An expression for the member of the JSON value `from` at a path.
class Expressions {
 public:
  explicit Expressions(SqlDialect dialect) : sqlite_(dialect == SqlDialect::sqlite) {}

  std::string member(const std::string& from, const std::string& path, SqlType type) const {
    if (sqlite_) return "json_extract(" + from + ", '$." + path + "')";
    std::string at;
    for (const char c : path) at += c == '.' ? ',' : c;
    if (type == SqlType::json) return from + " #> '{" + at + "}'";
    const std::string text = "(" + from + " #>> '{" + at + "}')";
    if (type == SqlType::number) return text + "::double precision";
    if (type == SqlType::whole) return text + "::bigint";
    return type == SqlType::truth ? text + "::boolean" : text;
  }
  std::string table(const std::string& name) const { return (sqlite_ ? "main." : "seamtakt.") + name; }
  /// The records of some kinds, `r`, each with its body as JSON, `body`.
  std::string records(const std::string& kinds) const {
    if (sqlite_)
      return "(SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN (" + kinds + ")) r";
    // The inner OFFSET keeps the body from being read anew for each column.
    return "seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) "
           "b";
  }
  std::string condition(const std::string& kinds) const {
    return sqlite_ ? "" : "\nWHERE r.kind IN (" + kinds + ")";
  }
  std::string body() const { return sqlite_ ? "r.body" : "b.body"; }
  std::string elements(const std::string& path) const {
    if (sqlite_) return ", json_each(r.body, '$." + path + "') e";
    return "\n  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(" +
           member(body(), path, SqlType::json) + ") WHEN 'array' THEN " +
           member(body(), path, SqlType::json) + " ELSE '[]' END) WITH ORDINALITY e(value, place)";
  }
  /// Counts from 0 within its list.
  std::string place() const { return sqlite_ ? "e.key" : "e.place - 1"; }
  std::string person(const std::string& path) const {
    return "(SELECT p.name FROM " + table("person") +
           " p WHERE p.sha256 = " + member(body(), path, SqlType::text) + ")";
  }
  /// How many records of a kind are about this one.
  std::string later(const std::string& kind) const {
    return "(SELECT count(*) FROM " + table("lookup") + " l JOIN " + table("rec") +
           " v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = '" + kind +
           "')";
  }
  bool is_sqlite() const { return sqlite_; }

 private:
  bool sqlite_;
};

void add_column(std::string& text, const std::string& expression, const std::string& name) {
  text += (text.empty() ? "  " : ",\n  ") + expression + " AS " + name;
}

std::string begin_of(const char* view, const char* about) {
  return std::string("\n-- ") + about + "\nCREATE TEMP VIEW " + view + " AS SELECT\n";
}

std::string text_of(const KindView& view, const Expressions& sql) {
  const std::string kinds = std::string("'") + view.kind + "'";
  std::string columns;
  add_column(columns, "r.seq", "seq");
  add_column(columns, sql.member(sql.body(), "t", SqlType::text), "recorded_at");
  add_column(columns, sql.person("who"), "who");
  add_column(columns, sql.member(sql.body(), "who", SqlType::text), "who_sha256");
  add_column(columns, sql.member(sql.body(), "why", SqlType::text), "why");
  add_column(columns, sql.member(sql.body(), "ref", SqlType::whole), "about");
  add_column(columns, sql.later("correction"), "corrections");
  add_column(columns, sql.later("void") + " > 0", "is_void");
  for (const ViewColumn& column : view.columns) {
    // A welder's name is kept beside the records, as every person's.
    if (column.name == "welder") add_column(columns, sql.person(column.path), "welder_name");
    add_column(columns, sql.member(sql.body(), column.path, column.type), column.name);
  }
  return begin_of(view.view, view.about) + columns + "\nFROM " + sql.records(kinds) + sql.condition(kinds) +
         ";\n";
}

std::string text_of(const ListView& view, const Expressions& sql) {
  std::string columns;
  add_column(columns, "r.seq", "seq");
  add_column(columns, "r.kind", "kind");
  add_column(columns, sql.place(), "place_in_list");
  for (const ViewColumn& column : view.columns)
    add_column(columns, sql.member("e.value", column.path, column.type), column.name);
  return begin_of(view.view, view.about) + columns + "\nFROM " + sql.records(view.kinds) +
         sql.elements(view.path) + sql.condition(view.kinds) + ";\n";
}

const char* const sqlite_head =
    "-- Views of a store of Seamtakt in SQLite, for the session that reads this file: the store isn't "
    "changed.\n"
    "--   sqlite3 -readonly records.sqlite -cmd \".read store-views.sqlite.sql\" \\\n"
    "--     \"SELECT unit_serial, seam, heat_input_kJ_mm FROM passes WHERE NOT is_void\"\n"
    "-- What a view shows was signed, but a view proves nothing: seamtakt ledger verify does.\n";

const char* const postgresql_head =
    "-- Views of a store of Seamtakt in PostgreSQL, for the session that reads this file: the store isn't "
    "changed.\n"
    "--   psql \"postgresql://reader@host/plant\" -f store-views.postgresql.sql \\\n"
    "--     -c \"SELECT unit_serial, seam, heat_input_kJ_mm FROM passes WHERE NOT is_void\"\n"
    "-- The reader needs USAGE on the schema seamtakt, SELECT on its tables, and TEMPORARY on the database.\n"
    "-- What a view shows was signed, but a view proves nothing: seamtakt ledger verify does.\n";

}  // namespace

std::string store_views(SqlDialect dialect) {
  const Expressions sql(dialect);
  std::string text = sql.is_sqlite() ? sqlite_head : postgresql_head;
  for (const KindView& view : kind_views()) text += text_of(view, sql);
  for (const ListView& view : list_views()) text += text_of(view, sql);
  // From here on the session can't write.
  text += sql.is_sqlite() ? "\nPRAGMA query_only = ON;\n" : "\nSET default_transaction_read_only = on;\n";
  return text;
}

}  // namespace seamtakt::cli
