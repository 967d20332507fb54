#include "ledger/store/postgres_schema.hpp"

namespace seamtakt {

const char* const postgres_schema_lines =
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

}  // namespace seamtakt
