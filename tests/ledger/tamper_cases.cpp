#include "tamper_cases.hpp"

#include <gtest/gtest.h>

#include <utility>

#include "ledger/body/canonical_json.hpp"
#include "store_fixture.hpp"

namespace seamtakt::test {

void unguarded(Sqlite& store, const std::string& sql) {
  std::vector<std::pair<std::string, std::string>> triggers;
  {
    SqliteStatement list(store, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
    while (list.step()) triggers.emplace_back(list.bytes(0), list.bytes(1));
  }
  for (const auto& [name, text] : triggers) store.run(("DROP TRIGGER " + name).c_str());
  store.run(sql.c_str());
  for (const auto& [name, text] : triggers) store.run(text.c_str());
}

namespace {

auto sql(std::string text) {
  return [text](Sqlite& store) { unguarded(store, text); };
}

std::string body_at(Sqlite& store, int seq) {
  SqliteStatement statement(store, "SELECT body FROM rec WHERE seq = ?1");
  statement.bind(1, seq);
  return statement.step() ? statement.bytes(0) : "";
}

/// A record's body changed; with `leaf`, its leaf too.
auto edit_body(int seq, std::string from, std::string to, bool leaf) {
  return [=](Sqlite& store) {
    std::string body = body_at(store, seq);
    const auto at = body.find(from);
    ASSERT_NE(at, std::string::npos);
    body.replace(at, from.size(), to);
    const std::string digest(bytes_of(leaf_digest(body)));
    unguarded(store, "UPDATE rec SET body = x'" + hex(body) + "'" +
                         (leaf ? ", leaf = x'" + hex(digest) + "'" : "") +
                         " WHERE seq = " + std::to_string(seq));
  };
}

// The sample: commit 1 is records 1-6, then 7, 8, 9 (a pass each), 10 (correction), 11 (key), 12 (sign-off),
// 13-17.
const std::vector<TamperCase> cases = {
    {"a digit of a body", 7, edit_body(7, "0.504", "0.404", false)},
    {"a body and its leaf", 8, edit_body(8, "0.505", "0.405", true)},
    {"a leaf", 9, sql("UPDATE rec SET leaf = zeroblob(32) WHERE seq = 9")},
    {"a body that isn't canonical, with leaf", 7, edit_body(7, "{", "{ ", true)},
    {"a body that isn't JSON, with leaf", 7, edit_body(7, "{", "", true)},
    {"a body with a key twice, with leaf", 7,
     edit_body(7, "\"verdict\":\"pass\"", "\"verdict\":\"fail\",\"verdict\":\"pass\"", true)},
    {"a body with bytes that aren't UTF-8", 7, edit_body(7, "a test", "a t\xffst", true)},
    {"the reason of a record", 9, edit_body(9, "a test", "a TEST", true)},
    {"the writer of a record", 9, edit_body(9, "\"who\":\"", "\"who\":\"0", true)},
    {"the time of a record", 9, edit_body(9, "2026-03-02T", "2026-03-01T", true)},
    {"the first record deleted", 1, sql("DELETE FROM rec WHERE seq = 1")},
    {"a middle record deleted", 8, sql("DELETE FROM rec WHERE seq = 8")},
    {"a middle record deleted, the rest renumbered", 8,
     sql("DELETE FROM rec WHERE seq = 8; UPDATE rec SET seq = seq - 1 WHERE seq > 8")},
    {"the last record deleted", 17, sql("DELETE FROM rec WHERE seq = 17")},
    {"the tail deleted with its head", 13,
     sql("DELETE FROM rec WHERE seq > 12; DELETE FROM head WHERE n > 12")},
    {"the tail deleted with its head, the count set", any_seq,
     sql("DELETE FROM rec WHERE seq > 12; DELETE FROM head WHERE n > 12; UPDATE state SET n = 12; DELETE "
         "FROM lookup WHERE seq > 12")},
    {"two records swapped", 7,
     sql("UPDATE rec SET seq = seq + 1000 WHERE seq IN (7, 8); UPDATE rec SET seq = 1015 - seq WHERE seq > "
         "1000")},
    {"a record twice", 18, sql("INSERT INTO rec SELECT 18, kind, body, leaf FROM rec WHERE seq = 17")},
    {"a record twice and counted", 18,
     sql("INSERT INTO rec SELECT 18, kind, body, leaf FROM rec WHERE seq = 17; UPDATE state SET n = 18")},
    {"a record in place of another", 8,
     sql("UPDATE rec SET body = (SELECT body FROM rec WHERE seq = 7), leaf = (SELECT leaf FROM rec WHERE seq "
         "= 7) WHERE seq = 8")},
    {"the kind of a record", 7, sql("UPDATE rec SET kind = 'note' WHERE seq = 7")},
    {"the count", 17, sql("UPDATE state SET n = 16")},
    {"the count too high", 18, sql("UPDATE state SET n = 18")},
    {"the frontier", any_seq, sql("UPDATE state SET frontier = zeroblob(length(frontier))")},
    {"the frontier cut", any_seq, sql("UPDATE state SET frontier = x''")},
    {"the state deleted", 1, sql("DELETE FROM state")},
    {"a head's root", 8, sql("UPDATE head SET root = zeroblob(32) WHERE n = 8")},
    {"a head's signature", 8, sql("UPDATE head SET signature = zeroblob(64) WHERE n = 8")},
    {"a head's time", 8, sql("UPDATE head SET utc = '2026-03-02T06:02:59Z' WHERE n = 8")},
    {"a head's time that is none", 8, sql("UPDATE head SET utc = 'today' WHERE n = 8")},
    {"a head's previous", 8,
     sql("UPDATE head SET previous = replace(previous, substr(previous, 1, 4), '0000') WHERE n = 8")},
    {"a head's key", 8,
     sql("UPDATE head SET key_id = replace(key_id, substr(key_id, 1, 4), '0000') WHERE n = 8")},
    {"a head's count", 13, sql("UPDATE head SET n = 16 WHERE n = 17")},
    {"a middle head missing", 8, sql("DELETE FROM head WHERE n = 8")},
    {"the first head missing", 1, sql("DELETE FROM head WHERE n = 6")},
    {"the last head missing", 13, sql("DELETE FROM head WHERE n = 17")},
    {"all heads missing", 1, sql("DELETE FROM head")},
    {"all records and heads deleted", 1,
     sql("DELETE FROM rec; DELETE FROM head; DELETE FROM lookup; UPDATE state SET n = 0, frontier = x''")},
    {"a trigger dropped", any_seq, [](Sqlite& store) { store.run("DROP TRIGGER rec_stays"); }},
    {"a trigger changed", any_seq,
     [](Sqlite& store) {
       store.run("DROP TRIGGER rec_stays; CREATE TRIGGER rec_stays BEFORE UPDATE ON rec BEGIN SELECT 1; END");
     }},
    {"a trigger added", any_seq,
     [](Sqlite& store) {
       store.run("CREATE TRIGGER more AFTER INSERT ON head BEGIN DELETE FROM person; END");
     }},
    {"a view added", any_seq, [](Sqlite& store) { store.run("CREATE VIEW rec_view AS SELECT * FROM rec"); }},
    {"an index added", any_seq, [](Sqlite& store) { store.run("CREATE INDEX more ON rec(kind)"); }},
    {"a table added", any_seq, [](Sqlite& store) { store.run("CREATE TABLE more(a)"); }},
    {"a check removed and a value of another kind", any_seq,
     [](Sqlite& store) {
       unguarded(
           store,
           "ALTER TABLE rec RENAME TO old; CREATE TABLE rec(seq INTEGER PRIMARY KEY, kind TEXT, body, leaf); "
           "INSERT INTO rec SELECT * FROM old; DROP TABLE old; UPDATE rec SET body = CAST(body AS TEXT) "
           "WHERE seq = 7");
     }},
    {"what finds records: a row deleted", any_seq, sql("DELETE FROM lookup WHERE topic = 'log'")},
    {"what finds records: a row added", any_seq, sql("INSERT INTO lookup VALUES('log', 'ff', 2)")},
    {"what finds records: a row changed", any_seq,
     sql("UPDATE lookup SET seq = 8 WHERE topic = 'pass' AND seq = 7")},
    {"what finds records: a row of a record that isn't there yet", any_seq,
     sql("INSERT INTO lookup VALUES('unit', 'U9', 18)")},
    {"what finds records: a row before all others", any_seq, sql("INSERT INTO lookup VALUES('', '', 0)")},
    {"a name's first letter moved to its salt", any_seq,
     sql("UPDATE person SET salt = salt || lower(hex(substr(name, 1, 1))), name = substr(name, 2) WHERE name "
         "= 'anna'")},
    {"a name", any_seq, sql("UPDATE person SET name = 'bob' WHERE name = 'anna'")},
    {"a name's salt", any_seq,
     sql("UPDATE person SET salt = replace(salt, substr(salt, 1, 2), '00') WHERE name = 'anna'")},
    {"a name's salt in capitals", any_seq, sql("UPDATE person SET salt = upper(salt)")},
    {"the tables' version", any_seq, [](Sqlite& store) { store.run("PRAGMA user_version = 3"); }},
    {"the mark of the program", any_seq, [](Sqlite& store) { store.run("PRAGMA application_id = 1"); }},
    {"pieces of a raw log without a digest", any_seq, sql("INSERT INTO raw_chunks VALUES('', zeroblob(32))")},
    {"a raw log's pieces", 2, sql("UPDATE raw_chunks SET digests = zeroblob(length(digests))")},
};

}  // namespace

const std::vector<TamperCase>& tamper_cases() {
  return cases;
}

}  // namespace seamtakt::test
