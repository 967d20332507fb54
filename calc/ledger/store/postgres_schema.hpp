#pragma once

namespace seamtakt {

inline constexpr int postgres_schema_version = 1;

/// Roles are the server's, not a database's: made once, by whoever makes the first store. Nobody logs in as
/// one of them; people and importers are made members of seamtakt_writer or seamtakt_reader.
inline constexpr const char* postgres_roles = R"(
DO $$
DECLARE each text;
BEGIN
  FOREACH each IN ARRAY ARRAY['seamtakt_owner', 'seamtakt_writer', 'seamtakt_reader'] LOOP
    IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = each) THEN
      EXECUTE format('CREATE ROLE %I NOLOGIN', each);
    END IF;
    IF NOT pg_has_role(current_user, each, 'MEMBER') THEN
      EXECUTE format('GRANT %I TO %I', each, current_user);
    END IF;
  END LOOP;
END $$;
)";

/// The writer may add, never change: the owner is another role. `state` is where the next record goes on.
inline constexpr const char* postgres_schema = R"(
CREATE SCHEMA seamtakt AUTHORIZATION seamtakt_owner;
SET ROLE seamtakt_owner;
CREATE TABLE seamtakt.version(version integer NOT NULL);
CREATE TABLE seamtakt.rec(
  seq bigint PRIMARY KEY CHECK(seq > 0), kind text NOT NULL, body bytea NOT NULL,
  leaf bytea NOT NULL CHECK(octet_length(leaf) = 32));
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
INSERT INTO seamtakt.version VALUES(1);
INSERT INTO seamtakt.state VALUES(1, 0, '');
GRANT USAGE ON SCHEMA seamtakt TO seamtakt_writer, seamtakt_reader;
GRANT SELECT ON ALL TABLES IN SCHEMA seamtakt TO seamtakt_writer, seamtakt_reader;
GRANT INSERT ON seamtakt.rec, seamtakt.head, seamtakt.lookup, seamtakt.person, seamtakt.raw_chunks TO seamtakt_writer;
GRANT UPDATE(n, frontier) ON seamtakt.state TO seamtakt_writer;
RESET ROLE;
)";
static_assert(postgres_schema_version == 1);

/// What the schema holds, a line a thing, in words that don't depend on the server's version.
inline constexpr const char* postgres_schema_query = R"(
SELECT line FROM (
  SELECT 'column ' || c.relname || '.' || a.attname || ' ' || format_type(a.atttypid, a.atttypmod) AS line
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relnamespace = 'seamtakt'::regnamespace AND c.relkind NOT IN ('i', 'I') AND a.attnum > 0 AND NOT a.attisdropped
  UNION ALL
  SELECT 'trigger ' || c.relname || '.' || t.tgname || ' ' || t.tgtype::text || ' ' || t.tgenabled::text || ' ' || p.proname || ' ' ||
      md5(p.prosrc)
    FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_proc p ON p.oid = t.tgfoid
    WHERE c.relnamespace = 'seamtakt'::regnamespace AND NOT t.tgisinternal
  UNION ALL
  SELECT 'constraint ' || c.conname || ' ' || c.contype::text FROM pg_constraint c
    WHERE c.connamespace = 'seamtakt'::regnamespace
      AND c.contype <> 'n'
  UNION ALL
  SELECT 'relation ' || relname || ' ' || relkind::text FROM pg_class WHERE relnamespace = 'seamtakt'::regnamespace AND relkind <> 't'
  UNION ALL
  SELECT 'rule ' || r.rulename FROM pg_rewrite r JOIN pg_class c ON c.oid = r.ev_class
    WHERE c.relnamespace = 'seamtakt'::regnamespace
  UNION ALL
  SELECT 'writer may change ' || t FROM unnest(ARRAY['rec', 'head']) t
    WHERE has_table_privilege('seamtakt_writer', 'seamtakt.' || t, 'UPDATE, DELETE, TRUNCATE')
) all_lines ORDER BY line COLLATE "C")";

/// The answer to that query for the schema above; set down from a server of version 15.
extern const char* const postgres_schema_lines;

}  // namespace seamtakt
