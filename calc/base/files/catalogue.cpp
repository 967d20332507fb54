#include "base/files/catalogue.hpp"
#include "base/files/digest.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <optional>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t reference_limit = 16u << 20;

/// Empty where the tables are those that are compiled in.
std::string reference_folder() {
  const char* folder = std::getenv("SEAMTAKT_REFERENCE");
  return folder != nullptr ? folder : "";
}

/// Nothing where no folder is named, or it lacks the file.
std::optional<ReferenceFile> file_of_folder(std::string_view name) {
  const std::string folder = reference_folder();
  if (folder.empty()) return std::nullopt;
  std::error_code ignored;
  if (!std::filesystem::is_directory(folder, ignored))
    throw InputError("SEAMTAKT_REFERENCE",
                     Sentence("file.no-folder"_key, {{"folder", '"' + printable(folder) + '"'}}),
                     "a folder with tables of reference/"_word);
  const std::string path = folder + "/" + std::string(name);
  if (std::filesystem::symlink_status(path, ignored).type() == std::filesystem::file_type::not_found)
    return std::nullopt;
  return ReferenceFile{path, read_file(path, reference_limit)};
}

std::string catalogue_digest() {
  std::vector<std::string_view> names;
  // A translation is no table of figures: no result depends on it.
  for (const detail::EmbeddedFile& file : detail::embedded_files())
    if (!file.name.starts_with("languages/")) names.push_back(file.name);
  std::sort(names.begin(), names.end());
  std::string list;
  for (std::string_view name : names)
    list += sha256_hex(reference_file(name).text) + "  " + std::string(name) + "\n";
  return sha256_hex(list);
}

}  // namespace

bool has_reference_folder() {
  return !reference_folder().empty();
}

ReferenceFile reference_file(std::string_view name) {
  if (auto own = file_of_folder(name)) return *std::move(own);
  for (const detail::EmbeddedFile& file : detail::embedded_files()) {
    if (file.name == name) return {"reference/" + std::string(name), std::string(file.text)};
  }
  throw InputError("reference/" + std::string(name), "no such table in the program"_word,
                   "a table of reference/"_word);
}

const std::string& catalogue_sha256() {
  static const std::string digest = catalogue_digest();
  return digest;
}

}  // namespace seamtakt
