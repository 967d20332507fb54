#include "base/files/catalogue.hpp"
#include "base/files/digest.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"
#include "support/scratch_folder.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace {

/// SEAMTAKT_REFERENCE set for the life of an object.
class ReferenceFolder {
 public:
  explicit ReferenceFolder(const std::string& folder) { setenv("SEAMTAKT_REFERENCE", folder.c_str(), 1); }
  ~ReferenceFolder() { unsetenv("SEAMTAKT_REFERENCE"); }
};

}  // namespace

TEST(CatalogueTest, compiled_in_files_are_byte_for_byte_those_of_the_source) {
  const auto& files = detail::embedded_files();
  ASSERT_FALSE(files.empty());
  for (const auto& file : files) {
    const std::string path = std::string(source_path("/reference/")).append(file.name);
    EXPECT_TRUE(file.text == read_file(path, 1u << 24))
        << file.name << " has changed since the program was built";
    EXPECT_TRUE(reference_text(file.name) == file.text) << file.name;
  }
}

TEST(CatalogueTest, an_unknown_table_is_named) {
  try {
    reference_text("nonsense.csv");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "reference/nonsense.csv");
  }
}

TEST(CatalogueTest, the_environments_folder_takes_the_place_of_what_is_compiled_in) {
  const ScratchFolder folder;
  std::ofstream(folder / "processes.csv") << "other";
  const ReferenceFolder reference(folder.path());
  EXPECT_EQ(reference_text("processes.csv"), "other");
  EXPECT_THROW(reference_text("gases.csv"), InputError);
}

TEST(CatalogueTest, digest_is_that_of_the_sorted_list_of_digests) {
  std::string list;
  std::set<std::string> names;
  for (const auto& file : detail::embedded_files()) names.insert(std::string(file.name));
  for (const std::string& name : names) list += sha256_hex(reference_text(name)) + "  " + name + "\n";
  EXPECT_EQ(catalogue_sha256(), sha256_hex(list));
  EXPECT_EQ(&catalogue_sha256(), &catalogue_sha256());
}
