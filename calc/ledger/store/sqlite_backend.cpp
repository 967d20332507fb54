#include "ledger/store/sqlite_backend.hpp"

#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "base/error.hpp"
#include "ledger/store/sqlite.hpp"
#include "ledger/store/sqlite_place.hpp"
#include "ledger/store/sqlite_schema.hpp"

namespace seamtakt {

namespace {

/// Tables and triggers as the database keeps their texts, one below the other.
std::string schema_text(Sqlite& database) {
  std::string text;
  SqliteStatement statement(database,
                            "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '') "
                            "FROM sqlite_schema ORDER BY type, name");
  while (statement.step()) text += statement.bytes(0) + "\n";
  return text;
}

/// What schema_text gives of a store as this program makes it.
const std::string& own_schema_text() {
  static const std::string text = [] {
    Sqlite model(":memory:", Sqlite::Mode::create);
    model.run(sqlite_schema);
    return schema_text(model);
  }();
  return text;
}

std::int64_t signed_of(std::uint64_t number) {
  return static_cast<std::int64_t>(std::min<std::uint64_t>(number, INT64_MAX));
}

class SqliteBackend : public LedgerBackend {
 public:
  SqliteBackend(const std::string& path, const StoreOpening& opening, bool exists)
      : database_(path, opening.use == StoreOpening::For::reading ? Sqlite::Mode::read_only
                        : exists                                  ? Sqlite::Mode::read_write
                                                                  : Sqlite::Mode::create),
        made_here_(!exists) {
    database_.stop_when(opening.stopped);
    database_.allow_views_and_triggers(false);
    database_.run("PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0;");
    if (opening.create && is_empty()) create();
    check_identity();
    check_schema();
    database_.allow_views_and_triggers(true);  // the program's own
    const bool has_wal = database_.text("PRAGMA journal_mode") == "wal";
    // Power may fail at any time. EXTRA: the directory is synced too once the journal is gone.
    database_.run(has_wal ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = EXTRA");
  }
  ~SqliteBackend() override { remove_if_unused(); }

  std::string name() const override { return "sqlite:" + printable(database_.path()); }

  void begin() override {
    database_.run("BEGIN IMMEDIATE");
    if (!database_.has_moved()) return;
    rollback();
    throw std::system_error(ESTALE, std::generic_category(), name() + " was moved or deleted");
  }
  void commit() override { database_.run("COMMIT"); }
  void rollback() noexcept override {
    // Some failures have rolled back already; then this one has nothing to do.
    sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
  }

  void insert_records(std::span<const LedgerRow> rows) override {
    SqliteStatement statement(database_, "INSERT INTO rec(seq, kind, body, leaf) VALUES(?1, ?2, ?3, ?4)");
    for (const LedgerRow& row : rows)
      statement.bind(1, signed_of(row.seq))
          .bind_text(2, row.kind)
          .bind_blob(3, row.body)
          .bind_blob(4, row.leaf)
          .run();
  }
  void insert_lookups(std::span<const LookupRow> rows) override {
    SqliteStatement statement(database_, "INSERT INTO lookup(topic, key, seq) VALUES(?1, ?2, ?3)");
    for (const LookupRow& row : rows)
      statement.bind_text(1, row.topic).bind_text(2, row.key).bind(3, signed_of(row.seq)).run();
  }
  void insert_head(const SignedHead& head) override {
    SqliteStatement statement(
        database_,
        "INSERT INTO head(n, root, utc, previous, key_id, signature) VALUES(?1, ?2, ?3, ?4, ?5, ?6)");
    statement.bind(1, signed_of(head.n)).bind_blob(2, bytes_of(head.root)).bind_text(3, head.utc);
    statement.bind_text(4, head.previous).bind_text(5, head.key_id).bind_blob(6, head.signature).run();
  }
  void insert_person(const PersonRow& person) override {
    SqliteStatement statement(database_,
                              "INSERT OR IGNORE INTO person(sha256, salt, name) VALUES(?1, ?2, ?3)");
    statement.bind_text(1, person.sha256).bind_text(2, person.salt).bind_text(3, person.name).run();
  }
  void insert_raw_chunks(const RawChunksRow& chunks) override {
    SqliteStatement statement(database_, "INSERT OR IGNORE INTO raw_chunks(sha256, digests) VALUES(?1, ?2)");
    statement.bind_text(1, chunks.sha256).bind_blob(2, chunks.digests).run();
  }
  void set_state(const LedgerState& state) override {
    SqliteStatement statement(database_, "UPDATE state SET n = ?1, frontier = ?2 WHERE id = 1");
    statement.bind(1, signed_of(state.n)).bind_blob(2, state.frontier).run();
  }

  LedgerSnapshot snapshot() override {
    // Within a writer's transaction there is one already.
    const bool own = sqlite3_get_autocommit(database_.handle()) != 0;
    if (own) database_.run("BEGIN");
    LedgerSnapshot result;
    try {
      SqliteStatement state(database_, "SELECT n, frontier FROM state WHERE id = 1");
      if (state.step()) result.state = {static_cast<std::uint64_t>(state.integer(0)), state.bytes(1)};
      SqliteStatement newest(database_,
                             "SELECT n, root, utc, previous, key_id, signature FROM head "
                             "ORDER BY n DESC LIMIT 1");
      if (newest.step()) result.newest_head = head_of(newest);
      result.last_seq =
          static_cast<std::uint64_t>(database_.integer("SELECT coalesce(max(seq), 0) FROM rec"));
    } catch (...) {
      if (own) rollback();
      throw;
    }
    if (own) database_.run("COMMIT");
    return result;
  }

  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    SqliteStatement statement(database_,
                              "SELECT seq, kind, body, leaf FROM rec WHERE seq >= ?1 ORDER BY seq LIMIT ?2");
    statement.bind(1, signed_of(first)).bind(2, signed_of(limit));
    while (statement.step()) visit(record_of(statement));
  }
  std::vector<SignedHead> heads(std::uint64_t after, std::size_t limit) override {
    std::vector<SignedHead> heads;
    SqliteStatement statement(database_,
                              "SELECT n, root, utc, previous, key_id, signature FROM head WHERE n > ?1 "
                              "ORDER BY n LIMIT ?2");
    statement.bind(1, signed_of(after)).bind(2, signed_of(limit));
    while (statement.step()) heads.push_back(head_of(statement));
    return heads;
  }
  std::vector<std::uint64_t> find(std::string_view topic, std::string_view key) override {
    std::vector<std::uint64_t> found;
    SqliteStatement statement(database_, "SELECT seq FROM lookup WHERE topic = ?1 AND key = ?2 ORDER BY seq");
    statement.bind_text(1, topic).bind_text(2, key);
    while (statement.step()) found.push_back(static_cast<std::uint64_t>(statement.integer(0)));
    return found;
  }
  void each_record_of(std::span<const std::uint64_t> numbers, const RecordVisitor& visit) override {
    std::vector<std::uint64_t> ordered(numbers.begin(), numbers.end());
    std::sort(ordered.begin(), ordered.end());
    SqliteStatement statement(database_, "SELECT seq, kind, body, leaf FROM rec WHERE seq = ?1");
    for (const std::uint64_t number : ordered) {
      statement.bind(1, signed_of(number));
      if (statement.step()) visit(record_of(statement));
      statement.reset();
    }
  }
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references_to(
      std::span<const std::uint64_t> numbers) override {
    std::vector<std::pair<std::uint64_t, std::uint64_t>> pairs;
    SqliteStatement statement(database_, "SELECT seq FROM lookup WHERE topic = 'ref' AND key = ?1");
    for (const std::uint64_t number : numbers) {
      statement.bind_text(1, std::to_string(number));
      while (statement.step()) pairs.emplace_back(number, static_cast<std::uint64_t>(statement.integer(0)));
      statement.reset();
    }
    return pairs;
  }
  void each_lookup(const LookupRow& after, std::size_t limit, const LookupVisitor& visit) override {
    // In three steps, each a range of the table's own order: one comparison of three columns would be made
    // again for each row.
    std::size_t left = limit;
    const auto take = [&](SqliteStatement& statement) {
      statement.bind(4, signed_of(left));
      for (; statement.step(); --left)
        visit(statement.view(0), statement.view(1), static_cast<std::uint64_t>(statement.integer(2)));
    };
    if (after.topic.empty() && after.key.empty() && after.seq == 0) {
      // No row is before the beginning, not even one that only someone who changed the file can have put
      // there.
      SqliteStatement from_the_first(database_,
                                     "SELECT topic, key, seq FROM lookup ORDER BY topic, key, seq LIMIT ?4");
      return take(from_the_first);
    }
    SqliteStatement same_key(database_,
                             "SELECT topic, key, seq FROM lookup WHERE topic = ?1 AND key = ?2 AND seq > ?3 "
                             "ORDER BY topic, key, seq LIMIT ?4");
    same_key.bind_text(1, after.topic).bind_text(2, after.key).bind(3, signed_of(after.seq));
    take(same_key);
    SqliteStatement same_topic(database_,
                               "SELECT topic, key, seq FROM lookup WHERE topic = ?1 AND key > ?2 "
                               "ORDER BY topic, key, seq LIMIT ?4");
    same_topic.bind_text(1, after.topic).bind_text(2, after.key);
    take(same_topic);
    SqliteStatement others(database_,
                           "SELECT topic, key, seq FROM lookup WHERE topic > ?1 "
                           "ORDER BY topic, key, seq LIMIT ?4");
    others.bind_text(1, after.topic);
    take(others);
  }
  std::vector<PersonRow> persons() override {
    std::vector<PersonRow> rows;
    SqliteStatement statement(database_, "SELECT sha256, salt, name FROM person ORDER BY sha256");
    while (statement.step()) rows.push_back({statement.bytes(0), statement.bytes(1), statement.bytes(2)});
    return rows;
  }
  std::vector<RawChunksRow> raw_chunks(const std::string& after, std::size_t limit) override {
    std::vector<RawChunksRow> rows;
    SqliteStatement statement(
        database_, after.empty()
                       ? "SELECT sha256, digests FROM raw_chunks WHERE sha256 >= ?1 ORDER BY sha256 LIMIT ?2"
                       : "SELECT sha256, digests FROM raw_chunks WHERE sha256 > ?1 ORDER BY sha256 LIMIT ?2");
    statement.bind_text(1, after).bind(2, signed_of(limit));
    while (statement.step()) rows.push_back({statement.bytes(0), statement.bytes(1)});
    return rows;
  }

  std::vector<Sentence> structure_problems() override {
    std::vector<Sentence> problems;
    if (schema_text(database_) != own_schema_text())
      problems.emplace_back("its tables or triggers aren't those that this program makes"_word);
    SqliteStatement check(database_, "PRAGMA integrity_check(5)");
    while (check.step())
      if (const std::string line = check.bytes(0); line != "ok")
        problems.push_back(Sentence("store.file-damaged"_key, {{"what", line}}));
    return problems;
  }

 private:
  static LedgerRowView record_of(const SqliteStatement& statement) {
    using Class = SqliteStatement::Class;
    LedgerRowView row;
    row.seq = static_cast<std::uint64_t>(statement.integer(0));
    const auto kind = statement.typed_view(1), body = statement.typed_view(2), leaf = statement.typed_view(3);
    row.well_typed = kind.storage_class == Class::text && body.storage_class == Class::blob &&
                     leaf.storage_class == Class::blob;
    row.kind = kind.bytes;
    row.body = body.bytes;
    row.leaf = leaf.bytes;
    return row;
  }
  static SignedHead head_of(const SqliteStatement& row) {
    SignedHead head;
    head.n = static_cast<std::uint64_t>(row.integer(0));
    // Only a changed file can contain a root of another length: no leaf has this one.
    head.root = digest_from_bytes(row.bytes(1)).value_or(Digest{});
    head.utc = row.bytes(2);
    head.previous = row.bytes(3);
    head.key_id = row.bytes(4);
    head.signature = row.bytes(5);
    return head;
  }

  bool is_empty() {
    return database_.integer("PRAGMA application_id") == 0 &&
           database_.integer("SELECT count(*) FROM sqlite_schema") == 0;
  }

  void create() {
    // Only here: a switch of the mode finds the database locked when others have it open.
    database_.run(sqlite_wal_is_safe(sqlite3_libversion_number()) ? "PRAGMA journal_mode = WAL"
                                                                  : "PRAGMA journal_mode = DELETE");
    database_.run("PRAGMA synchronous = EXTRA");
    begin();
    try {
      if (is_empty()) database_.run(sqlite_schema);  // else another program was quicker
      commit();
    } catch (...) {
      rollback();
      throw;
    }
  }

  /// Before a row is read: a table may be a view that never ends, a trigger may do anything.
  void check_schema() {
    if (schema_text(database_) != own_schema_text())
      throw InputError(printable(database_.path()),
                       "tables or triggers that aren't those that this program makes"_word,
                       "a store as this program makes it"_word);
  }

  /// A store that was made here and never got a record goes: whatever failed leaves nothing behind. Others
  /// may have opened it meanwhile; they see that it has moved before they write.
  void remove_if_unused() noexcept {
    if (!made_here_) return;
    try {
      rollback();
      database_.run("BEGIN EXCLUSIVE");
      if (database_.integer("SELECT count(*) FROM rec") == 0 && !database_.has_moved())
        ::unlink(database_.path().c_str());
      rollback();
    } catch (...) {  // it stays
    }
  }

  void check_identity() {
    const std::string path = printable(database_.path());
    if (database_.integer("PRAGMA application_id") != sqlite_application_id)
      throw InputError(path, is_empty() ? "an empty file"_word : "another program's database"_word,
                       "a store of this program"_word);
    const std::int64_t version = database_.integer("PRAGMA user_version");
    if (version != sqlite_schema_version) refuse_version(path, version, sqlite_schema_version);
  }

  Sqlite database_;
  bool made_here_;
};

/// A writer that was killed leaves a journal that only a writer can roll back.
void roll_back_journal(const std::string& path) {
  Sqlite database(path, Sqlite::Mode::read_write);
  database.integer("SELECT count(*) FROM sqlite_schema");
}

/// Remains of a store that couldn't be created.
void remove_if_empty(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) == 0 && status.st_size == 0) ::unlink(path.c_str());
}

}  // namespace

std::unique_ptr<LedgerBackend> open_sqlite_backend(const std::string& path, const StoreOpening& opening) {
  const bool exists = check_sqlite_place(path, opening.force);
  if (!exists && !opening.create) throw InputError(printable(path), "no such file"_word, "a store"_word);
  try {
    return std::make_unique<SqliteBackend>(path, opening, exists);
  } catch (const std::system_error&) {
    if (!exists) remove_if_empty(path);
    if (!exists || opening.use != StoreOpening::For::reading) throw;
    roll_back_journal(path);
    return std::make_unique<SqliteBackend>(path, opening, exists);
  }
}

}  // namespace seamtakt
