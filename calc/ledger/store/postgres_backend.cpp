#include "ledger/store/postgres_backend.hpp"

#include <algorithm>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/postgres.hpp"
#include "ledger/store/postgres_schema.hpp"

namespace seamtakt {

namespace {

using Value = PostgresValue;

bool has_schema(Postgres& server) {
  return server.query("SELECT 1 FROM pg_namespace WHERE nspname = 'seamtakt'").rows() > 0;
}

class PostgresBackend : public LedgerBackend {
 public:
  PostgresBackend(const std::string& uri, const StoreOpening& opening) : server_(uri) {
    server_.run(
        "SET client_encoding = 'UTF8'; SET synchronous_commit = on; SET lock_timeout = '10s'; "
        "SET client_min_messages = warning");
    check_settings();
    if (!has_schema(server_)) {
      if (!opening.create) throw InputError(server_.name(), "no store in this database"_word, "a store"_word);
      create();
    }
    server_.run(opening.use == StoreOpening::For::reading
                    ? "SET ROLE seamtakt_reader; SET default_transaction_read_only = on"
                    : "SET ROLE seamtakt_writer");
    check_version();
  }

  std::string name() const override { return server_.name(); }

  void begin() override {
    server_.run("BEGIN ISOLATION LEVEL READ COMMITTED");
    server_.query("SELECT n FROM seamtakt.state WHERE id = 1 FOR UPDATE");
  }
  void commit() override {
    try {
      server_.run("COMMIT");
    } catch (const std::system_error& error) {
      throw std::system_error(
          error.code(), std::string(error.what()) +
                            "; whether it was stored isn't known: run it again, nothing is added twice");
    }
  }
  void rollback() noexcept override {
    try {
      if (server_.in_transaction()) server_.run("ROLLBACK");
    } catch (...) {  // the connection is gone, and the transaction with it
    }
  }

  void insert_records(std::span<const LedgerRow> rows) override {
    PostgresCopy copy;
    for (const LedgerRow& row : rows) {
      copy.begin_row(4);
      copy.bigint(row.seq);
      copy.value(row.kind);
      copy.value(row.body);
      copy.value(row.leaf);
    }
    if (!rows.empty())
      server_.copy("COPY seamtakt.rec(seq, kind, body, leaf) FROM STDIN (FORMAT binary)", copy);
  }
  void insert_lookups(std::span<const LookupRow> rows) override {
    PostgresCopy copy;
    for (const LookupRow& row : rows) {
      copy.begin_row(3);
      copy.value(row.topic);
      copy.value(row.key);
      copy.bigint(row.seq);
    }
    if (!rows.empty()) server_.copy("COPY seamtakt.lookup(topic, key, seq) FROM STDIN (FORMAT binary)", copy);
  }
  void insert_head(const SignedHead& head) override {
    server_.query(
        "INSERT INTO seamtakt.head(n, root, utc, previous, key_id, signature) VALUES($1, $2, $3, $4, $5, $6)",
        {Value::bigint(head.n), Value::bytea(bytes_of(head.root)), Value::text(head.utc),
         Value::text(head.previous), Value::text(head.key_id), Value::bytea(head.signature)});
  }
  void insert_person(const PersonRow& person) override {
    server_.query("INSERT INTO seamtakt.person(sha256, salt, name) VALUES($1, $2, $3) ON CONFLICT DO NOTHING",
                  {Value::text(person.sha256), Value::text(person.salt), Value::text(person.name)});
  }
  void insert_raw_chunks(const RawChunksRow& chunks) override {
    server_.query("INSERT INTO seamtakt.raw_chunks(sha256, digests) VALUES($1, $2) ON CONFLICT DO NOTHING",
                  {Value::text(chunks.sha256), Value::bytea(chunks.digests)});
  }
  void set_state(const LedgerState& state) override {
    server_.query("UPDATE seamtakt.state SET n = $1, frontier = $2 WHERE id = 1",
                  {Value::bigint(state.n), Value::bytea(state.frontier)});
  }

  LedgerSnapshot snapshot() override {
    // One statement, so that all of it is of one moment.
    const auto result = server_.query(
        "SELECT s.n, s.frontier, h.n, h.root, h.utc, h.previous, h.key_id, h.signature, "
        "(SELECT coalesce(max(seq), 0) FROM seamtakt.rec) FROM seamtakt.state s "
        "LEFT JOIN (SELECT * FROM seamtakt.head ORDER BY n DESC LIMIT 1) h ON true WHERE s.id = 1");
    LedgerSnapshot snapshot;
    if (result.rows() == 0) return snapshot;
    snapshot.state = {number(result, 0, 0), result.bytes(0, 1)};
    if (!result.is_null(0, 2)) snapshot.newest_head = head_of(result, 0, 2);
    snapshot.last_seq = number(result, 0, 8);
    return snapshot;
  }
  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    const auto result =
        server_.query("SELECT seq, kind, body, leaf FROM seamtakt.rec WHERE seq >= $1 ORDER BY seq LIMIT $2",
                      {Value::bigint(first), Value::bigint(limit)});
    visit_records(result, visit);
  }
  std::vector<SignedHead> heads(std::uint64_t after, std::size_t limit) override {
    const auto result = server_.query(
        "SELECT n, root, utc, previous, key_id, signature FROM seamtakt.head WHERE n > $1 "
        "ORDER BY n LIMIT $2",
        {Value::bigint(after), Value::bigint(limit)});
    std::vector<SignedHead> heads;
    for (int i = 0; i < result.rows(); ++i) heads.push_back(head_of(result, i, 0));
    return heads;
  }
  std::vector<std::uint64_t> find(std::string_view topic, std::string_view key) override {
    const auto result =
        server_.query("SELECT seq FROM seamtakt.lookup WHERE topic = $1 AND key = $2 ORDER BY seq",
                      {Value::text(topic), Value::text(key)});
    std::vector<std::uint64_t> found;
    for (int i = 0; i < result.rows(); ++i) found.push_back(number(result, i, 0));
    return found;
  }
  void each_record_of(std::span<const std::uint64_t> wanted, const RecordVisitor& visit) override {
    std::vector<std::uint64_t> ordered(wanted.begin(), wanted.end());
    std::sort(ordered.begin(), ordered.end());
    std::span<const std::uint64_t> numbers = ordered;
    for (; !numbers.empty(); numbers = numbers.subspan(std::min(numbers.size(), numbers_a_query)))
      visit_records(server_.query("SELECT seq, kind, body, leaf FROM seamtakt.rec WHERE seq = "
                                  "ANY(string_to_array($1, ',')::bigint[]) ORDER BY seq",
                                  {Value::text(list_of(numbers))}),
                    visit);
  }
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references_to(
      std::span<const std::uint64_t> numbers) override {
    std::vector<std::pair<std::uint64_t, std::uint64_t>> pairs;
    for (; !numbers.empty(); numbers = numbers.subspan(std::min(numbers.size(), numbers_a_query))) {
      const auto result = server_.query(
          "SELECT key::bigint, seq FROM seamtakt.lookup WHERE topic = 'ref' AND key = "
          "ANY(string_to_array($1, ','))",
          {Value::text(list_of(numbers))});
      for (int i = 0; i < result.rows(); ++i) pairs.emplace_back(number(result, i, 0), number(result, i, 1));
    }
    return pairs;
  }
  void each_lookup(const LookupRow& after, std::size_t limit, const LookupVisitor& visit) override {
    const auto result = server_.query(
        "SELECT topic, key, seq FROM seamtakt.lookup WHERE (topic, key, seq) > ($1, $2, $3) "
        "ORDER BY topic, key, seq LIMIT $4",
        {Value::text(after.topic), Value::text(after.key), Value::bigint(after.seq), Value::bigint(limit)});
    for (int i = 0; i < result.rows(); ++i) visit(result.view(i, 0), result.view(i, 1), number(result, i, 2));
  }
  std::vector<PersonRow> persons() override {
    const auto result = server_.query("SELECT sha256, salt, name FROM seamtakt.person ORDER BY sha256");
    std::vector<PersonRow> rows;
    for (int i = 0; i < result.rows(); ++i)
      rows.push_back({result.bytes(i, 0), result.bytes(i, 1), result.bytes(i, 2)});
    return rows;
  }
  std::vector<RawChunksRow> raw_chunks(const std::string& after, std::size_t limit) override {
    const auto result = server_.query(
        "SELECT sha256, digests FROM seamtakt.raw_chunks WHERE sha256 > $1 OR $1 = '' ORDER BY sha256 "
        "LIMIT $2",
        {Value::text(after), Value::bigint(limit)});
    std::vector<RawChunksRow> rows;
    for (int i = 0; i < result.rows(); ++i) rows.push_back({result.bytes(i, 0), result.bytes(i, 1)});
    return rows;
  }

  std::vector<Sentence> structure_problems() override {
    std::string lines;
    const auto result = server_.query(postgres_schema_query);
    for (int i = 0; i < result.rows(); ++i) lines += result.bytes(i, 0) + "\n";
    if (lines == postgres_schema_lines(version_)) return {};
    return {"its tables, triggers or rights aren't those that this program makes"_word};
  }
  std::vector<Sentence> warnings() override {
    if (setting("data_checksums") == "on") return {};
    return {"the server keeps no checksums of its pages (initdb --data-checksums)"_word};
  }

 private:
  static constexpr std::size_t numbers_a_query = 5000;

  /// The first numbers_a_query of them, as "1,2,3".
  static std::string list_of(std::span<const std::uint64_t> numbers) {
    std::string list;
    for (const std::uint64_t each : numbers.first(std::min(numbers.size(), numbers_a_query)))
      list += (list.empty() ? "" : ",") + std::to_string(each);
    return list;
  }
  static void visit_records(const PostgresResult& result, const RecordVisitor& visit) {
    LedgerRowView row;
    for (int i = 0; i < result.rows(); ++i) {
      row.seq = number(result, i, 0);
      row.kind = result.view(i, 1);
      row.body = result.view(i, 2);
      row.leaf = result.view(i, 3);
      visit(row);
    }
  }
  static std::uint64_t number(const PostgresResult& result, int row, int column) {
    return static_cast<std::uint64_t>(result.integer(row, column));
  }
  static SignedHead head_of(const PostgresResult& result, int row, int column) {
    SignedHead head;
    head.n = number(result, row, column);
    head.root = digest_from_bytes(result.bytes(row, column + 1)).value_or(Digest{});
    head.utc = result.bytes(row, column + 2);
    head.previous = result.bytes(row, column + 3);
    head.key_id = result.bytes(row, column + 4);
    head.signature = result.bytes(row, column + 5);
    return head;
  }

  std::string setting(const char* name) {
    return server_.query("SELECT current_setting($1, true)", {Value::text(name)}).bytes(0, 0);
  }
  void check_settings() {
    for (const char* name : {"fsync", "full_page_writes", "synchronous_commit"})
      if (const std::string value = setting(name); value != "on")
        throw InputError(
            server_.name(),
            Sentence("store.server-setting"_key, {{"name", name}, {"value", printable(value, 20)}}),
            Sentence("store.server-setting.on"_key, {{"name", name}}));
  }

  void create() {
    server_.run("BEGIN");
    try {
      server_.run("SELECT pg_advisory_xact_lock(1399673963)");
      if (!has_schema(server_)) {  // else another program was quicker
        server_.run(postgres_roles);
        server_.run(postgres_schema().c_str());
      }
      server_.run("COMMIT");
    } catch (...) {
      rollback();
      throw;
    }
  }

  void check_version() {
    const auto result = server_.query("SELECT version FROM seamtakt.version");
    const std::int64_t version = result.rows() == 1 ? result.integer(0, 0) : 0;
    if (version < oldest_postgres_schema_version || version > postgres_schema_version)
      refuse_version(server_.name(), version, postgres_schema_version);
    version_ = static_cast<int>(version);
  }

  Postgres server_;
  int version_ = 0;
};

}  // namespace

std::unique_ptr<LedgerBackend> open_postgres_backend(const std::string& uri, const StoreOpening& opening) {
  return std::make_unique<PostgresBackend>(uri, opening);
}

bool postgres_store_exists(const std::string& uri) {
  Postgres server(uri);
  return has_schema(server);
}

}  // namespace seamtakt
