#include "records/sqlite_store.hpp"

#include <sys/stat.h>

#include <map>
#include <stdexcept>

#include "base/atomic_save.hpp"
#include "base/error.hpp"
#include "records/record_body.hpp"
#include "records/sqlite.hpp"

namespace seamtakt {

namespace {

/// "SmTk": tells the file from other programs' databases.
constexpr std::int64_t application_id = 0x536d546b;
constexpr std::int64_t schema_version = 1;

/// `rec` holds the records. The other tables only help to find things and could be made anew from it.
constexpr const char* schema = R"(
CREATE TABLE rec(
  seq INTEGER PRIMARY KEY CHECK(seq > 0),
  kind TEXT NOT NULL,
  body BLOB NOT NULL,
  sha256 TEXT NOT NULL CHECK(length(sha256) = 64)) STRICT;
CREATE TABLE stored_log(sha256 TEXT NOT NULL PRIMARY KEY, seq INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE stored_pass(
  unit_serial TEXT NOT NULL, weldment TEXT NOT NULL, seam TEXT NOT NULL, pass INTEGER NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY(unit_serial, weldment, seam, pass, seq)) STRICT, WITHOUT ROWID;
CREATE TRIGGER rec_stays BEFORE UPDATE ON rec BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER rec_is_kept BEFORE DELETE ON rec BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER rec_in_order BEFORE INSERT ON rec
  WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM rec)
  BEGIN SELECT RAISE(ABORT, 'records are numbered without a gap'); END;
PRAGMA application_id = 1399673963;
PRAGMA user_version = 1;
)";
static_assert(application_id == 1399673963);

constexpr std::int64_t page_rows = 1000;  // a long read would hold up writers

void check_place(const std::string& path) {
  struct stat status {};
  if (path.empty()) throw InputError("--store", "no file name", "sqlite:FILE");
  if (path.find('\0') != std::string::npos)
    throw InputError("--store", "a NUL in the file name", "sqlite:FILE");
  if (::stat(path.c_str(), &status) != 0) {
    const auto slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
    if (::stat(folder.c_str(), &status) != 0 || !S_ISDIR(status.st_mode))
      throw InputError(printable(path), "no folder " + printable(folder), "a folder that is there");
    return;
  }
  if (!S_ISREG(status.st_mode))
    throw InputError(printable(path), S_ISDIR(status.st_mode) ? "a directory" : "no regular file",
                     "a store, or a name that isn't taken");
}

class SqliteStore : public RecordStore {
 public:
  explicit SqliteStore(const std::string& path) : database_(path) {
    database_.run("PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0;");
    if (is_empty()) create();
    check_identity();
    // Power may fail at any time: the directory is synced too once the journal is gone.
    database_.run("PRAGMA synchronous = EXTRA;");
  }

  IngestOutcome append(const AuditResult& result, const IngestNote& note) override;
  void list(std::uint64_t first, const std::function<bool(const StoredRecord&)>& each) const override;
  std::uint64_t count() const override {
    return static_cast<std::uint64_t>(database_.integer("SELECT count(*) FROM rec"));
  }

 private:
  bool is_empty() {
    return database_.integer("PRAGMA application_id") == 0 &&
           database_.integer("SELECT count(*) FROM sqlite_schema") == 0;
  }

  void create() {
    database_.run("PRAGMA journal_mode = DELETE; PRAGMA synchronous = EXTRA;");
    SqliteTransaction transaction(database_);
    if (!is_empty()) return;  // another program was quicker
    database_.run(schema);
    transaction.commit();
  }

  void check_identity() {
    const std::string& path = database_.path();
    if (database_.integer("PRAGMA application_id") != application_id)
      throw InputError(printable(path), "another program's database",
                       "a store of this program, or a name that isn't taken");
    const std::int64_t version = database_.integer("PRAGMA user_version");
    if (version != schema_version)
      throw InputError(printable(path), "a store of version " + std::to_string(version),
                       "version " + std::to_string(schema_version) + " (a newer program reads newer stores)");
  }

  std::uint64_t insert(const char* kind, const std::string& body);
  std::uint64_t stored_log(const std::string& sha256);
  void insert_pass(const PassRecord& record, const std::string& body, IngestOutcome& outcome);

  mutable Sqlite database_;
};

std::uint64_t SqliteStore::insert(const char* kind, const std::string& body) {
  // Read inside the transaction: two writers that looked before it would take the same number.
  const std::int64_t seq = database_.integer("SELECT coalesce(max(seq), 0) + 1 FROM rec");
  SqliteStatement statement(database_, "INSERT INTO rec(seq, kind, body, sha256) VALUES(?1, ?2, ?3, ?4)");
  statement.bind(1, seq).bind_text(2, kind).bind_blob(3, body).bind_text(4, sha256_hex(body)).run();
  return static_cast<std::uint64_t>(seq);
}

/// Number of the ingest that holds this log; 0 where none does.
std::uint64_t SqliteStore::stored_log(const std::string& sha256) {
  SqliteStatement statement(database_, "SELECT seq FROM stored_log WHERE sha256 = ?1");
  statement.bind_text(1, sha256);
  return statement.step() ? static_cast<std::uint64_t>(statement.integer(0)) : 0;
}

void SqliteStore::insert_pass(const PassRecord& record, const std::string& body, IngestOutcome& outcome) {
  const auto bind_identity = [&](SqliteStatement& statement) {
    statement.bind_text(1, record.unit_serial)
        .bind_text(2, record.weldment)
        .bind_text(3, record.seam)
        .bind(4, record.pass.value_or(0));
  };
  if (!record.unit_serial.empty()) {
    SqliteStatement before(database_,
                           "SELECT seq FROM stored_pass WHERE unit_serial = ?1 AND weldment = ?2 AND seam = "
                           "?3 AND pass = ?4 AND seq < ?5");
    bind_identity(before);
    before.bind(5, static_cast<std::int64_t>(outcome.first_seq));
    while (before.step()) outcome.already_stored.push_back(static_cast<std::uint64_t>(before.integer(0)));
  }
  outcome.last_seq = insert("pass", body);
  SqliteStatement index(database_, "INSERT INTO stored_pass VALUES(?1, ?2, ?3, ?4, ?5)");
  bind_identity(index);
  index.bind(5, static_cast<std::int64_t>(outcome.last_seq)).run();
}

IngestOutcome SqliteStore::append(const AuditResult& result, const IngestNote& note) {
  if (result.too_many_rejected)
    throw std::invalid_argument("an audit with too many rejected rows isn't stored");
  SqliteTransaction transaction(database_);
  IngestOutcome outcome;
  std::map<std::string, bool> is_new;  // by the log's name
  std::size_t new_logs = 0;
  for (const auto& log : result.logs) {
    if (log.sha256.empty()) throw std::invalid_argument("a log without its SHA-256 can't be stored");
    const std::uint64_t before = stored_log(log.sha256);
    is_new[log.name] = before == 0;
    if (before == 0) {
      ++new_logs;
    } else {
      outcome.first_seq = outcome.last_seq = before;
    }
  }
  if (new_logs == 0) {
    outcome.text =
        "Nothing added: " + std::string(result.logs.size() == 1 ? "this log is" : "these logs are") +
        " stored already, as record " + std::to_string(outcome.first_seq) + ".";
    return outcome;
  }
  std::multimap<std::string, const Finding*> findings;
  for (const auto& finding : result.findings) findings.emplace(finding.where, &finding);
  std::vector<const PassRecord*> added;
  for (const auto& record : result.passes)
    if (is_new[record.source] || is_new[record.source_last]) added.push_back(&record);

  outcome.first_seq = outcome.last_seq =
      insert("ingest", ingest_body(result, note, added.size(), result.manual.size()));
  for (const PassRecord* record : added) {
    std::vector<const Finding*> of_pass;
    const auto range = findings.equal_range(record->place());
    for (auto at = range.first; at != range.second; ++at) of_pass.push_back(at->second);
    insert_pass(*record, pass_body(*record, of_pass, outcome.first_seq), outcome);
  }
  for (const auto& seam : result.manual)
    outcome.last_seq = insert("manual", manual_body(seam, outcome.first_seq));
  for (const auto& log : result.logs) {
    if (stored_log(log.sha256) != 0) continue;
    SqliteStatement statement(database_, "INSERT INTO stored_log VALUES(?1, ?2)");
    statement.bind_text(1, log.sha256).bind(2, static_cast<std::int64_t>(outcome.first_seq)).run();
  }
  transaction.commit();
  outcome.added = true;
  outcome.text = "Stored " + std::to_string(added.size()) + (added.size() == 1 ? " pass" : " passes") +
                 " as records " + std::to_string(outcome.first_seq) + " to " +
                 std::to_string(outcome.last_seq) + ".";
  if (new_logs < result.logs.size())
    outcome.text += " " + std::to_string(result.logs.size() - new_logs) + " of the logs were stored already.";
  return outcome;
}

void SqliteStore::list(std::uint64_t first, const std::function<bool(const StoredRecord&)>& each) const {
  for (auto next = static_cast<std::int64_t>(first);;) {
    std::vector<StoredRecord> page;
    {
      SqliteStatement statement(
          database_, "SELECT seq, kind, body, sha256 FROM rec WHERE seq >= ?1 ORDER BY seq LIMIT ?2");
      statement.bind(1, next).bind(2, page_rows);
      while (statement.step())
        page.push_back({static_cast<std::uint64_t>(statement.integer(0)), statement.bytes(1),
                        statement.bytes(2), statement.bytes(3)});
    }
    for (const auto& record : page) {
      if (sha256_hex(record.body) != record.sha256)
        throw InputError(printable(database_.path()),
                         "record " + std::to_string(record.seq) + " altered since it was stored",
                         "a body with SHA-256 " + record.sha256);
      if (!each(record)) return;
    }
    if (page.size() < static_cast<std::size_t>(page_rows)) return;
    next = static_cast<std::int64_t>(page.back().seq) + 1;
  }
}

}  // namespace

std::unique_ptr<RecordStore> open_sqlite_store(const std::string& path) {
  check_place(path);
  return std::make_unique<SqliteStore>(path);
}

std::unique_ptr<RecordStore> open_record_store(const std::string& uri) {
  const auto colon = uri.find(':');
  const std::string scheme = uri.substr(0, colon);
  if (colon != std::string::npos && scheme == "sqlite") return open_sqlite_store(uri.substr(colon + 1));
  if (scheme == "postgresql" || scheme == "postgres")
    throw InputError("--store", "a postgresql:// store",
                     "sqlite:FILE (this build keeps records in sqlite: files for now)");
  throw InputError("--store", '"' + printable(uri) + '"', "sqlite:FILE");
}

}  // namespace seamtakt
