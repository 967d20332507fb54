#pragma once

#include <string>
#include <string_view>

#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

/// What a result was made with and from.
struct Provenance {
  std::string program_version;
  std::string catalogue_sha256;
  std::string plan_file;    ///< as the person named it; empty where no plan was read
  std::string plan_sha256;  ///< of the file's bytes
  std::string
      made_at_utc;  ///< ISO 8601 with Z; empty where a date would make the output differ from run to run
};

Provenance provenance_of(const std::string& plan_path, std::string_view plan_bytes);
Provenance provenance_without_plan();

/// The same beside each row of a table.
SheetOrigin origin_of(const Provenance& provenance);

}  // namespace seamtakt
