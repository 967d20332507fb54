#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

namespace detail {
struct EmbeddedFile {
  std::string_view name;
  std::string_view text;
};
const std::vector<EmbeddedFile>& embedded_files();
}  // namespace detail

/// A file of reference/ and where it was read: "FOLDER/processes.csv", or "reference/processes.csv" where it
/// is the one that is compiled in.
struct ReferenceFile {
  std::string path, text;
};

/// A file of reference/, e.g. "processes.csv": from the folder that the environment's SEAMTAKT_REFERENCE
/// names, or the compiled in one where that folder lacks it. InputError: no such folder, or no such table in
/// the program.
ReferenceFile reference_file(std::string_view name);

/// Whether the environment names a folder of tables.
bool has_reference_folder();

/// SHA-256 (hex) over the names and texts of all reference tables in use except the languages: provenance of
/// a result. Taken once. It is what `LC_ALL=C sha256sum * | sha256sum` gives in a folder that holds just
/// these tables.
const std::string& catalogue_sha256();

}  // namespace seamtakt
