#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// What new stores are made in: records in pieces. Stores of version 1 have them in one table; they are read
/// and written for ever as they are.
inline constexpr int postgres_schema_version = 2, oldest_postgres_schema_version = 1;

/// Records of a piece: the first holds 1 to 1,000,000. What lies beyond the last goes to rec_rest.
inline constexpr int postgres_piece_records = 1'000'000, postgres_pieces = 16;

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

/// The writer may add, never change: the owner is another role. `state` is where the next record continues.
std::string postgres_schema(int version = postgres_schema_version);

/// A table of the records' pieces, and which numbers it holds as the server words it.
struct PostgresPiece {
  std::string name, bounds;
};
std::vector<PostgresPiece> postgres_record_pieces();

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
  SELECT 'piece ' || relname || ' ' || pg_get_expr(relpartbound, oid) FROM pg_class
    WHERE relnamespace = 'seamtakt'::regnamespace AND relispartition AND relkind = 'r'
  UNION ALL
  SELECT 'writer may change ' || relname FROM pg_class
    WHERE relnamespace = 'seamtakt'::regnamespace AND (relname IN ('rec', 'head') OR relispartition AND relkind = 'r')
      AND has_table_privilege('seamtakt_writer', oid, 'UPDATE, DELETE, TRUNCATE')
) all_lines ORDER BY line COLLATE "C")";

/// The answer to that query for a store of that version; set down from a server of version 15.
std::string postgres_schema_lines(int version);

}  // namespace seamtakt
