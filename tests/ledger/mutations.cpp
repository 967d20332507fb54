#include "mutations.hpp"

#include <array>
#include <fstream>
#include <vector>

#include "base/json/json_node.hpp"
#include "ledger/store/ledger_backend.hpp"
#include "ledger/tree/merkle_tree.hpp"
#include "tamper_cases.hpp"

namespace seamtakt::test {

namespace {

struct Table {
  const char* name;
  std::vector<const char*> columns;
};

const std::vector<Table>& tables() {
  static const std::vector<Table> all = {{"rec", {"seq", "kind", "body", "leaf"}},
                                         {"head", {"n", "root", "utc", "previous", "key_id", "signature"}},
                                         {"lookup", {"topic", "key", "seq"}},
                                         {"person", {"sha256", "salt", "name"}},
                                         {"raw_chunks", {"sha256", "digests"}},
                                         {"state", {"n", "frontier"}}};
  return all;
}

std::string blob(std::string_view bytes) {
  return "x'" + hex(bytes) + "'";
}

/// Runs SQL with the guards off. What the tables' own checks refuse isn't done, and said.
std::string unguarded_on(const std::string& file, const std::string& sql) {
  Sqlite store(file, Sqlite::Mode::read_write);
  try {
    unguarded(store, sql);
  } catch (const StoreDamaged&) {
    return "refused: " + sql.substr(0, 200);
  }
  return sql.substr(0, 200);
}

void write_bytes(const std::string& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

}  // namespace

std::string Mutations::odd_text() {
  static const std::vector<std::string> texts = {"",
                                                 std::string(1, '\0'),
                                                 "a\nb",
                                                 "\xE2\x80\xAE",
                                                 "e\xCC\x81",
                                                 "\xFF\xFE",
                                                 "\xED\xA0\x80",
                                                 "\xEF\xBB\xBF",
                                                 "1e999",
                                                 "-0",
                                                 "null",
                                                 "\"",
                                                 "\\",
                                                 "{",
                                                 "[]",
                                                 "<b>",
                                                 "=1+1",
                                                 "9999999999999999999999",
                                                 "0",
                                                 "pass",
                                                 "a:b",
                                                 std::string(64, '0'),
                                                 std::string(32, '\0'),
                                                 std::string(5000, 'x'),
                                                 std::string(100, '{')};
  return texts[below(texts.size())];
}

void Mutations::flip_bit(std::string& bytes) {
  if (bytes.empty()) return;
  char& byte = bytes[below(bytes.size())];
  byte = static_cast<char>(byte ^ (1 << below(8)));
}

std::string Mutations::change_store(const std::string& file) {
  const std::string before = read_file(file, 64u << 20);
  std::string how;
  switch (below(8)) {
    case 0:
    case 1:
      how = change_body(file);
      break;
    case 2:
    case 3:
      how = change_value(file);
      break;
    case 4:
      how = remove_row(file);
      break;
    case 5:
      how = add_row(file);
      break;
    case 6:
      how = change_schema(file);
      break;
    default:
      how = change_bytes(file);
  }
  if (how.starts_with("refused")) write_bytes(file, before);
  return how;
}

/// Mostly with the leaf that the new body has, as whoever knows the format would.
std::string Mutations::change_body(const std::string& file) {
  const std::string seq = std::to_string(1 + below(17));
  std::string body;
  {
    Sqlite store(file, Sqlite::Mode::read_only);
    body = store.text(("SELECT body FROM rec WHERE seq = " + seq).c_str());
  }
  const std::size_t at = below(body.size());
  switch (below(3)) {
    case 0:
      flip_bit(body);
      break;
    case 1:
      body.insert(at, odd_text());
      break;
    default:
      body.erase(at, 1 + below(5));
  }
  const std::string leaf = one_in(4) ? "" : ", leaf = " + blob(std::string(bytes_of(leaf_digest(body))));
  return unguarded_on(file, "UPDATE rec SET body = " + blob(body) + leaf + " WHERE seq = " + seq);
}

std::string Mutations::change_value(const std::string& file) {
  const Table& table = tables()[below(tables().size())];
  const std::string name = table.name, column = table.columns[below(table.columns.size())];
  std::string value;
  switch (below(5)) {
    case 0:
      value = "CAST(" + blob(odd_text()) + " AS TEXT)";
      break;
    case 1:
      value = blob(odd_text());
      break;
    case 2:
      value = std::to_string(static_cast<int>(below(40)) - 3);
      break;
    case 3:
      // The names' first bytes go to the salts, and the digests stay right; or a value is another row's.
      if (name == "person")
        return unguarded_on(file,
                            "UPDATE person SET salt = salt || lower(hex(substr(name, 1, 1))), name = "
                            "substr(name, 2)");
      value = "(SELECT " + column + " FROM " + name + " ORDER BY random() LIMIT 1)";
      break;
    default:
      value = "upper(" + column + ")";
  }
  const std::string which = "(SELECT max(" + std::string(table.columns[0]) + ") FROM " + name + ")";
  return unguarded_on(file, "UPDATE " + name + " SET " + column + " = " + value + " WHERE " +
                                table.columns[0] + " = " + which);
}

std::string Mutations::remove_row(const std::string& file) {
  const Table& table = tables()[below(tables().size())];
  const std::string key = table.columns[0], name = table.name;
  return unguarded_on(file, "DELETE FROM " + name + " WHERE " + key + " = (SELECT " + key + " FROM " + name +
                                " ORDER BY random() LIMIT 1)");
}

std::string Mutations::add_row(const std::string& file) {
  const auto text = [&] { return "CAST(" + blob(odd_text()) + " AS TEXT)"; };
  const std::string number = std::to_string(below(40));
  switch (below(6)) {
    case 0:
      return unguarded_on(file, "INSERT INTO lookup VALUES(" + text() + ", " + text() + ", " + number + ")");
    case 1:
      return unguarded_on(file, "INSERT INTO raw_chunks VALUES(" + text() + ", " + blob(odd_text()) + ")");
    case 2:
      return unguarded_on(file, "INSERT INTO person VALUES(" + text() + ", " + text() + ", " + text() + ")");
    case 3: {
      // A name that is one, of nobody.
      const std::string salt(16, static_cast<char>(below(256))), name = odd_text();
      return unguarded_on(file, "INSERT INTO person VALUES('" + hex(Sha256().add(salt).add(name).take()) +
                                    "', '" + hex(salt) + "', CAST(" + blob(name) + " AS TEXT))");
    }
    case 4:
      return unguarded_on(file, "INSERT INTO rec SELECT seq + " + number +
                                    ", kind, body, leaf FROM rec ORDER BY random() LIMIT 1");
    default:
      return unguarded_on(file, "INSERT INTO head SELECT n + " + number +
                                    ", root, utc, previous, key_id, signature FROM head ORDER BY random() "
                                    "LIMIT 1");
  }
}

std::string Mutations::change_schema(const std::string& file) {
  static const std::array statements = {
      "CREATE VIEW more AS SELECT 1",
      "ALTER TABLE person RENAME TO kept; CREATE VIEW person AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL "
      "SELECT i + 1 FROM n) SELECT i AS sha256, i AS salt, i AS name FROM n",
      "ALTER TABLE rec RENAME TO kept; CREATE VIEW rec AS SELECT * FROM kept",
      "CREATE TRIGGER more AFTER INSERT ON head BEGIN DELETE FROM person; END",
      "CREATE TRIGGER \"\xE2\x80\xAE\" BEFORE INSERT ON rec BEGIN SELECT 1; END",
      "CREATE INDEX more ON rec(kind)",
      "CREATE TABLE more(a)",
      "CREATE TABLE \"a\nb\"(a)",
      "DROP TRIGGER rec_stays",
      "DROP TABLE person",
      "DROP TABLE lookup",
      "ALTER TABLE raw_chunks RENAME TO more",
      "ALTER TABLE person ADD COLUMN more TEXT",
      "ANALYZE",
      "PRAGMA user_version = 3",
      "PRAGMA application_id = 7",
      "PRAGMA page_size = 8192; VACUUM",
      "VACUUM",
      "REINDEX"};
  const char* const sql = statements[below(statements.size())];
  Sqlite store(file, Sqlite::Mode::read_write);
  try {
    store.run(sql);
  } catch (const StoreDamaged&) {
    return std::string("refused: ") + sql;
  }
  return sql;
}

std::string Mutations::change_bytes(const std::string& file) {
  std::string bytes = read_file(file, 64u << 20);
  const std::size_t at = below(bytes.size());
  switch (below(4)) {
    case 0:
      flip_bit(bytes);
      break;
    case 1:
      bytes.resize(at);
      break;
    case 2:
      bytes += odd_text();
      break;
    default:
      bytes.replace(at, std::min<std::size_t>(below(64), bytes.size() - at), odd_text().substr(0, 64));
  }
  write_bytes(file, bytes);
  return "bytes: from " + std::to_string(at);
}

std::string Mutations::changed_bundle(std::string text) {
  if (one_in(4)) {
    flip_bit(text);
    return text;
  }
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at) + 1;
    lines.push_back(text.substr(at, end - at));
    at = end;
  }
  const std::size_t at = below(lines.size());
  std::string& line = lines[at];
  switch (below(7)) {
    case 0:
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
      break;
    case 1:
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(below(lines.size())), std::string(line));
      break;
    case 2:
      std::swap(line, lines[below(lines.size())]);
      break;
    case 3:
      lines.resize(at);
      break;
    case 4:
      line.insert(below(line.size()), odd_text());
      break;
    case 5:
      line.erase(below(line.size()), 1 + below(3));
      break;
    default:
      lines.push_back("{\"person\":{\"name\":\"x\",\"salt\":\"" + std::string(32, '0') + "\",\"sha256\":\"" +
                      hex(Sha256().add(std::string(16, '\0')).add("x").take()) + "\"}}\n");
  }
  text.clear();
  for (const std::string& each : lines) text += each;
  return text;
}

std::string Mutations::changed_anchor(std::string line) {
  static constexpr std::string_view digits = "0123456789abcdef";
  const std::size_t times = 1 + below(6);
  for (std::size_t i = 0; i < times; ++i) {
    const std::size_t at = below(line.size());
    switch (below(7)) {
      case 0:
      case 1:
        line[at] = digits[below(digits.size())];
        break;
      case 2:
        line.insert(at, 1, " \n\t"[below(3)]);
        break;
      case 3:
        line.erase(at, 1);
        break;
      case 4:
        line[at] = static_cast<char>(line[at] >= 'a' && line[at] <= 'f' ? line[at] - 'a' + 'A' : line[at]);
        break;
      case 5:
        line = (one_in(2) ? "Anchor: " : "\xEF\xBB\xBF# of line 3\n") + line;
        break;
      default:
        line.insert(at, odd_text() + "?");  // digits alone would move those that follow
    }
  }
  return line;
}

}  // namespace seamtakt::test
