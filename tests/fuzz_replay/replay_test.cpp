// Inputs that fuzzing began with or found, given to their targets again: with any compiler, without
// libFuzzer.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "fuzz/fuzz_target.hpp"
#include "support/file_bytes.hpp"
#include "support/source_path.hpp"

namespace seamtakt::fuzz {
namespace {

namespace fs = std::filesystem;

const fs::path corpora = source_path("/tests/fuzz/corpus");

std::vector<fs::path> files_in(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file()) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

class Replay : public testing::TestWithParam<Target> {};

TEST_P(Replay, takes_or_refuses_each_input_of_its_corpus_and_keeps_its_promises) {
  std::size_t taken = 0, refused = 0;
  for (const fs::path& file : files_in(corpora / GetParam().name)) {
    SCOPED_TRACE(file.filename().string());
    EXPECT_NO_THROW((GetParam().take(bytes_of(file)) ? taken : refused) += 1);
  }
  EXPECT_GT(taken, 0u) << "the corpus has no good input to begin with";
  EXPECT_GT(refused, 0u) << "the corpus has no bad input";
}

INSTANTIATE_TEST_SUITE_P(Corpus, Replay, testing::ValuesIn(targets),
                         [](const auto& target) { return std::string(target.param.name); });

TEST(Corpora, belong_to_a_target_each_and_stay_small) {
  std::set<std::string> known, found;
  for (const Target& target : targets) known.insert(target.name);
  for (const auto& entry : fs::directory_iterator(corpora)) found.insert(entry.path().filename());
  EXPECT_EQ(found, known);
  std::uintmax_t bytes = 0;
  for (const fs::path& file : files_in(corpora)) {
    EXPECT_LT(fs::file_size(file), 8192u) << file;
    bytes += fs::file_size(file);
  }
  EXPECT_LT(bytes, 300'000u);
}

TEST(FuzzTarget, lets_through_whatever_is_no_refusal) {
  EXPECT_TRUE(is_taken([] {}));
  EXPECT_FALSE(is_taken([] { throw InputError("file", "one thing", "another"); }));
  EXPECT_FALSE(is_taken([] { throw std::system_error(std::make_error_code(std::errc::io_error)); }));
  EXPECT_THROW(is_taken([] { throw std::out_of_range("a defect"); }), std::out_of_range);
  EXPECT_THROW(is_taken([] { promise(false, "kept"); }), BrokenPromise);
}

}  // namespace
}  // namespace seamtakt::fuzz
