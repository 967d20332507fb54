#pragma once

#include <cstdint>

namespace seamtakt {

/// "SmTk": tells the file from other programs' databases.
inline constexpr std::int64_t sqlite_application_id = 0x536d546b;
inline constexpr std::int64_t sqlite_schema_version = 2;

/// `rec` and `head` are what is signed, `state` is where the next record continues; the others only help to
/// find and to name, and could be lost. Triggers deter; the tree and the anchors detect.
inline constexpr const char* sqlite_schema = R"(
CREATE TABLE rec(
  seq INTEGER PRIMARY KEY CHECK(seq > 0),
  kind TEXT NOT NULL,
  body BLOB NOT NULL,
  leaf BLOB NOT NULL CHECK(length(leaf) = 32)) STRICT;
CREATE TABLE head(
  n INTEGER PRIMARY KEY CHECK(n > 0),
  root BLOB NOT NULL CHECK(length(root) = 32),
  utc TEXT NOT NULL,
  previous TEXT NOT NULL CHECK(length(previous) = 64),
  key_id TEXT NOT NULL CHECK(length(key_id) = 64),
  signature BLOB NOT NULL CHECK(length(signature) = 64)) STRICT;
CREATE TABLE state(id INTEGER PRIMARY KEY CHECK(id = 1), n INTEGER NOT NULL, frontier BLOB NOT NULL) STRICT;
CREATE TABLE lookup(topic TEXT NOT NULL, key TEXT NOT NULL, seq INTEGER NOT NULL,
  PRIMARY KEY(topic, key, seq)) STRICT, WITHOUT ROWID;
CREATE TABLE person(sha256 TEXT NOT NULL PRIMARY KEY, salt TEXT NOT NULL, name TEXT NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE raw_chunks(sha256 TEXT NOT NULL PRIMARY KEY, digests BLOB NOT NULL) STRICT, WITHOUT ROWID;
CREATE TRIGGER rec_stays BEFORE UPDATE ON rec BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
CREATE TRIGGER rec_is_kept BEFORE DELETE ON rec BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
CREATE TRIGGER rec_in_order BEFORE INSERT ON rec
  WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM rec)
  BEGIN SELECT RAISE(ABORT, 'records are numbered without a gap'); END;
CREATE TRIGGER head_stays BEFORE UPDATE ON head BEGIN SELECT RAISE(ABORT, 'heads are never changed'); END;
CREATE TRIGGER head_is_kept BEFORE DELETE ON head BEGIN SELECT RAISE(ABORT, 'heads are never deleted'); END;
CREATE TRIGGER state_is_kept BEFORE DELETE ON state BEGIN SELECT RAISE(ABORT, 'the state is never deleted'); END;
INSERT INTO state(id, n, frontier) VALUES(1, 0, x'');
PRAGMA application_id = 1399673963;
PRAGMA user_version = 2;
)";
static_assert(sqlite_application_id == 1399673963 && sqlite_schema_version == 2);

/// Whether this release of SQLite may use a write-ahead log with two writers: some lose pages when both write
/// or checkpoint at once (sqlite.org, "WAL-reset bug", 3.7.0 to 3.51.2, fixed in 3.44.6 and 3.50.7 too; part
/// read). `release`: 3040001 is 3.40.1.
constexpr bool sqlite_wal_is_safe(int release) {
  return release >= 3051003 || (release >= 3050007 && release < 3051000) ||
         (release >= 3044006 && release < 3045000);
}

}  // namespace seamtakt
