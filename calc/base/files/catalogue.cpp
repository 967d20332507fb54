#include "base/files/catalogue.hpp"
#include "base/files/digest.hpp"

#include <algorithm>
#include <cstdlib>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t reference_limit = 16u << 20;

std::string catalogue_digest() {
  std::vector<std::string_view> names;
  // A translation is no table of figures: no result depends on it.
  for (const detail::EmbeddedFile& file : detail::embedded_files())
    if (!file.name.starts_with("languages/")) names.push_back(file.name);
  std::sort(names.begin(), names.end());
  std::string list;
  for (std::string_view name : names)
    list += sha256_hex(reference_text(name)) + "  " + std::string(name) + "\n";
  return sha256_hex(list);
}

}  // namespace

std::string reference_text(std::string_view name) {
  const char* folder = std::getenv("SEAMTAKT_REFERENCE");
  if (folder && *folder) return read_file(std::string(folder) + "/" + std::string(name), reference_limit);
  for (const detail::EmbeddedFile& file : detail::embedded_files()) {
    if (file.name == name) return std::string(file.text);
  }
  throw InputError("reference/" + std::string(name), "no such table in the program"_word, "a table of reference/"_word);
}

const std::string& catalogue_sha256() {
  static const std::string digest = catalogue_digest();
  return digest;
}

}  // namespace seamtakt
