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

/// Text of a file of reference/, e.g. "processes.csv": compiled in, or from the folder that the
/// environment's SEAMTAKT_REFERENCE names. InputError where that folder lacks it.
std::string reference_text(std::string_view name);

/// SHA-256 (hex) over the names and texts of all reference tables in use but the languages: provenance of a
/// result. Taken once. It is what `LC_ALL=C sha256sum * | sha256sum` gives in a folder that holds just these tables.
const std::string& catalogue_sha256();

}  // namespace seamtakt
