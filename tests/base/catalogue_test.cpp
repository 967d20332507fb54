#include "base/files/catalogue.hpp"
#include "base/files/digest.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
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
    EXPECT_TRUE(reference_file(file.name).text == file.text) << file.name;
  }
}

TEST(CatalogueTest, an_unknown_table_is_named) {
  try {
    reference_file("nonsense.csv");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "reference/nonsense.csv");
  }
}

TEST(CatalogueTest, the_environments_folder_takes_the_place_of_what_is_compiled_in) {
  const ScratchFolder folder;
  std::ofstream(folder / "processes.csv") << "other";
  const ReferenceFolder reference(folder.path());
  EXPECT_EQ(reference_file("processes.csv").text, "other");
  EXPECT_EQ(reference_file("processes.csv").path, folder.path() + "/processes.csv");
}

TEST(CatalogueTest, a_folder_that_lacks_a_file_leaves_the_one_that_is_compiled_in) {
  const ScratchFolder folder;
  const std::string compiled_in = reference_file("gases.csv").text;
  const ReferenceFolder reference(folder.path());
  EXPECT_EQ(reference_file("gases.csv").text, compiled_in);
  EXPECT_EQ(reference_file("gases.csv").path, "reference/gases.csv");
}

TEST(CatalogueTest, what_is_no_folder_or_no_file_is_refused) {
  const ScratchFolder folder;
  std::filesystem::create_directory(folder / "gases.csv");
  std::filesystem::create_symlink(folder / "nowhere", folder / "wires.csv");
  {
    const ReferenceFolder reference(folder.path());
    EXPECT_THROW(reference_file("gases.csv"), InputError);
    EXPECT_THROW(reference_file("wires.csv"), InputError) << "a link to nothing is no missing table";
  }
  const ReferenceFolder reference(folder.path() + "/absent");
  try {
    reference_file("gases.csv");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "SEAMTAKT_REFERENCE");
  }
}

TEST(CatalogueTest, digest_is_that_of_the_sorted_list_of_digests) {
  std::string list;
  std::set<std::string> names;
  for (const auto& file : detail::embedded_files())
    if (!file.name.starts_with("languages/")) names.insert(std::string(file.name));
  EXPECT_LT(names.size(), detail::embedded_files().size());
  for (const std::string& name : names) list += sha256_hex(reference_file(name).text) + "  " + name + "\n";
  EXPECT_EQ(catalogue_sha256(), sha256_hex(list));
  EXPECT_EQ(&catalogue_sha256(), &catalogue_sha256());
}
