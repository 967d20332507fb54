#include "records/ledger/postgres_schema.hpp"

namespace seamtakt {

const char* const postgres_schema_lines = "";

}  // namespace seamtakt
