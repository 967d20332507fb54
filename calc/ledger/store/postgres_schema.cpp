#include "ledger/store/postgres_schema.hpp"

namespace seamtakt {

namespace {

constexpr const char* records = R"(
CREATE SCHEMA seamtakt AUTHORIZATION seamtakt_owner;
SET ROLE seamtakt_owner;
CREATE TABLE seamtakt.version(version integer NOT NULL);
CREATE TABLE seamtakt.rec(
  seq bigint PRIMARY KEY CHECK(seq > 0), kind text NOT NULL, body bytea NOT NULL,
  leaf bytea NOT NULL CHECK(octet_length(leaf) = 32)))";

constexpr const char* other_tables = R"(;
CREATE TABLE seamtakt.head(
  n bigint PRIMARY KEY CHECK(n > 0), root bytea NOT NULL CHECK(octet_length(root) = 32), utc text NOT NULL,
  previous text NOT NULL CHECK(length(previous) = 64), key_id text NOT NULL CHECK(length(key_id) = 64),
  signature bytea NOT NULL CHECK(octet_length(signature) = 64));
CREATE TABLE seamtakt.state(id integer PRIMARY KEY CHECK(id = 1), n bigint NOT NULL, frontier bytea NOT NULL);
CREATE TABLE seamtakt.lookup(
  topic text COLLATE "C" NOT NULL, key text COLLATE "C" NOT NULL, seq bigint NOT NULL, PRIMARY KEY(topic, key, seq));
CREATE TABLE seamtakt.person(sha256 text COLLATE "C" PRIMARY KEY, salt text NOT NULL, name text NOT NULL);
CREATE TABLE seamtakt.raw_chunks(sha256 text COLLATE "C" PRIMARY KEY, digests bytea NOT NULL);
CREATE FUNCTION seamtakt.refuse() RETURNS trigger LANGUAGE plpgsql AS
  $f$BEGIN RAISE EXCEPTION 'records are never changed or deleted'; END$f$;
CREATE TRIGGER rec_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON seamtakt.rec
  FOR EACH STATEMENT EXECUTE FUNCTION seamtakt.refuse();
CREATE TRIGGER head_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON seamtakt.head
  FOR EACH STATEMENT EXECUTE FUNCTION seamtakt.refuse();
CREATE TRIGGER state_is_kept BEFORE DELETE OR TRUNCATE ON seamtakt.state
  FOR EACH STATEMENT EXECUTE FUNCTION seamtakt.refuse();
)";

constexpr const char* contents_and_rights = R"(INSERT INTO seamtakt.state VALUES(1, 0, '');
GRANT USAGE ON SCHEMA seamtakt TO seamtakt_writer, seamtakt_reader;
GRANT SELECT ON ALL TABLES IN SCHEMA seamtakt TO seamtakt_writer, seamtakt_reader;
GRANT INSERT ON seamtakt.rec, seamtakt.head, seamtakt.lookup, seamtakt.person, seamtakt.raw_chunks TO seamtakt_writer;
GRANT UPDATE(n, frontier) ON seamtakt.state TO seamtakt_writer;
RESET ROLE;
)";

/// A trigger of the whole doesn't see what is done to a piece by its own name.
std::string piece_text(const std::string& name, const std::string& bounds) {
  return "CREATE TABLE seamtakt." + name + " PARTITION OF seamtakt.rec " + bounds +
         ";\nCREATE TRIGGER rec_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON seamtakt." + name +
         "\n  FOR EACH STATEMENT EXECUTE FUNCTION seamtakt.refuse();\n";
}

}  // namespace

std::string postgres_schema(int version) {
  const bool in_pieces = version >= 2;
  std::string text = records;
  if (in_pieces) text += " PARTITION BY RANGE(seq)";
  text += other_tables;
  if (in_pieces)
    for (const PostgresPiece& piece : postgres_record_pieces()) text += piece_text(piece.name, piece.bounds);
  return text + "INSERT INTO seamtakt.version VALUES(" + std::to_string(version) + ");\n" +
         contents_and_rights;
}

}  // namespace seamtakt
