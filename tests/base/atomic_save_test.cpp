#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fstream>
#include <thread>
#include <vector>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "support/scratch_folder.hpp"

using namespace seamtakt;
using Names = std::set<std::string>;

namespace {

std::string content(const std::string& path) {
  return read_file(path, 1u << 28);
}

void write_plainly(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

mode_t mode_of(const std::string& path) {
  struct stat status {};
  EXPECT_EQ(stat(path.c_str(), &status), 0);
  return status.st_mode & 07777;
}

}  // namespace

TEST(SaveAtomicallyTest, writes_a_new_file_and_replaces_an_old_one) {
  const ScratchFolder folder;
  save_atomically(folder / "a.json", "first");
  EXPECT_EQ(content(folder / "a.json"), "first");
  save_atomically(folder / "a.json", "second, longer");
  EXPECT_EQ(content(folder / "a.json"), "second, longer");
  save_atomically(folder / "a.json", "");
  EXPECT_EQ(content(folder / "a.json"), "");
  EXPECT_EQ(folder.names(), Names{"a.json"});
}

TEST(SaveAtomicallyTest, writes_megabytes_with_every_byte_value) {
  const ScratchFolder folder;
  std::string bytes;
  for (int i = 0; i < 5'000'000; ++i) bytes += static_cast<char>(i * 31 + i / 256);
  save_atomically(folder / "big", bytes);
  EXPECT_TRUE(content(folder / "big") == bytes);
}

TEST(SaveAtomicallyTest, keeps_the_mode_of_the_old_file) {
  const ScratchFolder folder;
  write_plainly(folder / "a", "x");
  ASSERT_EQ(chmod((folder / "a").c_str(), 0640), 0);
  save_atomically(folder / "a", "y");
  EXPECT_EQ(mode_of(folder / "a"), 0640u);
  const mode_t umask_before = umask(027);
  save_atomically(folder / "new", "y");
  umask(umask_before);
  EXPECT_EQ(mode_of(folder / "new"), 0640u);
}

TEST(SaveAtomicallyTest, keeps_one_generation_where_asked) {
  const ScratchFolder folder;
  const SaveOptions keep{.expected_sha256 = {}, .keep_previous = true};
  save_atomically(folder / "a", "1", keep);
  EXPECT_EQ(folder.names(), Names{"a"});
  save_atomically(folder / "a", "2", keep);
  EXPECT_EQ(content(folder / "a~"), "1");
  save_atomically(folder / "a", "3", keep);
  EXPECT_EQ(content(folder / "a"), "3");
  EXPECT_EQ(content(folder / "a~"), "2");
  EXPECT_EQ(folder.names(), (Names{"a", "a~"}));
}

TEST(SaveAtomicallyTest, keeps_a_generation_when_both_names_lead_to_one_file) {
  const ScratchFolder folder;
  write_plainly(folder / "a", "1");
  ASSERT_EQ(link((folder / "a").c_str(), (folder / "a~").c_str()), 0);
  save_atomically(folder / "a", "2", {.expected_sha256 = {}, .keep_previous = true});
  EXPECT_EQ(content(folder / "a"), "2");
  EXPECT_EQ(content(folder / "a~"), "1");
  EXPECT_EQ(folder.names(), (Names{"a", "a~"}));
}

TEST(SaveAtomicallyTest, refuses_to_overwrite_what_someone_else_has_changed) {
  const ScratchFolder folder;
  write_plainly(folder / "a", "mine");
  const SaveOptions as_loaded{.expected_sha256 = sha256_hex("mine"), .keep_previous = false};
  save_atomically(folder / "a", "mine 2", as_loaded);
  EXPECT_THROW(save_atomically(folder / "a", "mine 3", as_loaded), ChangedOnDisk);
  EXPECT_EQ(content(folder / "a"), "mine 2");
  EXPECT_THROW(save_atomically(folder / "gone", "x", as_loaded), ChangedOnDisk);
  EXPECT_EQ(folder.names(), Names{"a"});
}

TEST(SaveAtomicallyTest, replaces_what_a_symbolic_link_leads_to) {
  const ScratchFolder folder;
  ASSERT_EQ(mkdir((folder / "deep").c_str(), 0755), 0);
  write_plainly(folder / "deep/real", "old");
  ASSERT_EQ(symlink("deep/real", (folder / "one").c_str()), 0);
  ASSERT_EQ(symlink((folder / "one").c_str(), (folder / "two").c_str()), 0);
  save_atomically(folder / "two", "new");
  EXPECT_EQ(content(folder / "deep/real"), "new");
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "one"));
  EXPECT_TRUE(std::filesystem::is_symlink(folder / "two"));
  ASSERT_EQ(symlink("deep/later", (folder / "dangling").c_str()), 0);
  save_atomically(folder / "dangling", "made");
  EXPECT_EQ(content(folder / "deep/later"), "made");
  ASSERT_EQ(symlink("loop", (folder / "loop").c_str()), 0);
  EXPECT_THROW(save_atomically(folder / "loop", "x"), std::system_error);
}

TEST(SaveAtomicallyTest, refuses_what_is_no_regular_file) {
  const ScratchFolder folder;
  ASSERT_EQ(mkdir((folder / "dir").c_str(), 0755), 0);
  ASSERT_EQ(mkfifo((folder / "fifo").c_str(), 0600), 0);
  EXPECT_THROW(save_atomically(folder / "dir", "x"), InputError);
  EXPECT_THROW(save_atomically(folder / "fifo", "x"), InputError);
  EXPECT_THROW(save_atomically(folder / "nofolder/a", "x"), InputError);
  EXPECT_THROW(save_atomically(folder / "dir/", "x"), InputError);
  EXPECT_THROW(save_atomically("", "x"), InputError);
  EXPECT_THROW(save_atomically("/dev/null", "x"), InputError);
  EXPECT_EQ(folder.names(), (Names{"dir", "fifo"}));
}

TEST(SaveAtomicallyTest, names_of_any_length_that_the_disk_takes_can_be_saved) {
  const ScratchFolder folder;
  const std::string longest(255, 'n');
  save_atomically(folder / longest, "1");
  save_atomically(folder / longest, "2");
  EXPECT_EQ(content(folder / longest), "2");
  EXPECT_THROW(save_atomically(folder / (longest + "n"), "x"), InputError);
  EXPECT_EQ(folder.names(), Names{longest});
}

TEST(SaveAtomicallyTest, removes_its_own_stale_temporaries_and_nothing_else) {
  const ScratchFolder folder;
  const Names others = {".a.json.0123456789abcde.tmp", ".a.json.0123456789abcdeF.tmp",
                        ".b.json.0123456789abcdef.tmp", ".a.json.0123456789abcdef.tm",
                        "a.json.0123456789abcdef.tmp"};
  for (const std::string& name : others) write_plainly(folder / name, "x");
  write_plainly(folder / ".a.json.0123456789abcdef.tmp", "left by a killed program");
  write_plainly(folder / ".a.json.00000000000000aa.tmp", "held by a living one");
  const int held = open((folder / ".a.json.00000000000000aa.tmp").c_str(), O_RDONLY);
  ASSERT_EQ(flock(held, LOCK_EX), 0);
  save_atomically(folder / "a.json", "new");
  Names expected = others;
  expected.insert({"a.json", ".a.json.00000000000000aa.tmp"});
  EXPECT_EQ(folder.names(), expected);
  close(held);
  save_atomically(folder / "a.json", "new");
  expected.erase(".a.json.00000000000000aa.tmp");
  EXPECT_EQ(folder.names(), expected);
}

TEST(SaveAtomicallyTest, writers_at_the_same_time_never_mix_their_files) {
  const ScratchFolder folder;
  std::vector<std::jthread> writers;
  for (char name : {'a', 'b', 'c', 'd'}) {
    writers.emplace_back([&, name] {
      for (int i = 0; i < 50; ++i) save_atomically(folder / "f", std::string(20000, name));
    });
  }
  for (int i = 0; i < 200; ++i) {
    if (!std::filesystem::exists(folder / "f")) continue;
    const std::string now = content(folder / "f");
    ASSERT_EQ(now, std::string(20000, now.at(0)));
  }
  writers.clear();
  EXPECT_EQ(folder.names(), Names{"f"});
}
