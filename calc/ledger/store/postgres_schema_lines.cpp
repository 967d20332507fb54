#include <algorithm>
#include <cstdint>
#include <sstream>

#include "ledger/store/postgres_schema.hpp"

namespace seamtakt {

namespace {

/// Of a store whose records are in one table.
constexpr const char* lines_of_one_table =
    R"(column head.key_id text
column head.n bigint
column head.previous text
column head.root bytea
column head.signature bytea
column head.utc text
column lookup.key text
column lookup.seq bigint
column lookup.topic text
column person.name text
column person.salt text
column person.sha256 text
column raw_chunks.digests bytea
column raw_chunks.sha256 text
column rec.body bytea
column rec.kind text
column rec.leaf bytea
column rec.seq bigint
column state.frontier bytea
column state.id integer
column state.n bigint
column version.version integer
constraint head_key_id_check c
constraint head_n_check c
constraint head_pkey p
constraint head_previous_check c
constraint head_root_check c
constraint head_signature_check c
constraint lookup_pkey p
constraint person_pkey p
constraint raw_chunks_pkey p
constraint rec_leaf_check c
constraint rec_pkey p
constraint rec_seq_check c
constraint state_id_check c
constraint state_pkey p
relation head r
relation head_pkey i
relation lookup r
relation lookup_pkey i
relation person r
relation person_pkey i
relation raw_chunks r
relation raw_chunks_pkey i
relation rec r
relation rec_pkey i
relation state r
relation state_pkey i
relation version r
trigger head.head_stays 58 O refuse 9a101dae4f3a7acd83c7dfe4773c2fea
trigger rec.rec_stays 58 O refuse 9a101dae4f3a7acd83c7dfe4773c2fea
trigger state.state_is_kept 42 O refuse 9a101dae4f3a7acd83c7dfe4773c2fea
)";

constexpr const char* rec_stays = "rec_stays 58 O refuse 9a101dae4f3a7acd83c7dfe4773c2fea";

/// A piece has the columns, the checks and the key of the whole, and a trigger of its own.
void append_piece(std::vector<std::string>& lines, const PostgresPiece& piece) {
  for (const char* column : {"body bytea", "kind text", "leaf bytea", "seq bigint"})
    lines.push_back("column " + piece.name + "." + column);
  lines.push_back("constraint " + piece.name + "_pkey p");
  lines.push_back("constraint rec_leaf_check c");
  lines.push_back("constraint rec_seq_check c");
  lines.push_back("piece " + piece.name + " " + piece.bounds);
  lines.push_back("relation " + piece.name + " r");
  lines.push_back("relation " + piece.name + "_pkey i");
  lines.push_back("trigger " + piece.name + "." + rec_stays);
}

}  // namespace

std::vector<PostgresPiece> postgres_record_pieces() {
  std::vector<PostgresPiece> pieces;
  for (int i = 0; i < postgres_pieces; ++i) {
    const auto bound = [](int piece) {
      return "('" + std::to_string(std::int64_t{piece} * postgres_piece_records + 1) + "')";
    };
    pieces.push_back({(i < 10 ? "rec_0" : "rec_") + std::to_string(i),
                      "FOR VALUES FROM " + bound(i) + " TO " + bound(i + 1)});
  }
  pieces.push_back({"rec_rest", "DEFAULT"});
  return pieces;
}

std::string postgres_schema_lines(int version) {
  if (version < 2) return lines_of_one_table;
  std::vector<std::string> lines;
  std::istringstream of_one_table(lines_of_one_table);
  for (std::string line; std::getline(of_one_table, line);)
    lines.push_back(line == "relation rec r"        ? "relation rec p"
                    : line == "relation rec_pkey i" ? "relation rec_pkey I"
                                                    : line);
  for (const PostgresPiece& piece : postgres_record_pieces()) append_piece(lines, piece);
  std::sort(lines.begin(), lines.end());  // by bytes, as the query does
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

}  // namespace seamtakt
