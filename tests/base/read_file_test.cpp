#include <gtest/gtest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <system_error>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"
#include "base/json/json_node.hpp"
#include "support/scratch_folder.hpp"

using namespace seamtakt;

namespace {

std::string read_refusal(const std::string& path, std::size_t limit = 100) {
  try {
    read_file(path, limit);
  } catch (const InputError& error) {
    return error.found().english();
  }
  return "read";
}

}  // namespace

TEST(ReadFileTest, reads_all_bytes_up_to_the_limit) {
  const ScratchFolder folder;
  std::ofstream(folder / "a", std::ios::binary) << std::string("x\0y\n", 4);
  EXPECT_EQ(read_file(folder / "a", 4), std::string("x\0y\n", 4));
  EXPECT_EQ(read_refusal(folder / "a", 3), "a file of more than 3 bytes");
  std::ofstream(folder / "empty");
  EXPECT_EQ(read_file(folder / "empty", 0), "");
}

TEST(ReadFileTest, what_is_absent_or_no_regular_file_is_bad_input) {
  const ScratchFolder folder;
  EXPECT_EQ(read_refusal(folder / "absent"), "no such file");
  EXPECT_EQ(read_refusal(folder / "absent/below"), "no such file");
  EXPECT_EQ(read_refusal(folder.path()), "a directory");
  EXPECT_EQ(read_refusal(folder / std::string(300, 'n')), "no such file");
  EXPECT_EQ(read_refusal(std::string("a\0b", 3)), "no such file");
  EXPECT_EQ(read_refusal("/dev/zero"), "no regular file");
  ASSERT_EQ(mkfifo((folder / "fifo").c_str(), 0600), 0);
  EXPECT_EQ(read_refusal(folder / "fifo"), "no regular file");  // and it doesn't wait for a writer
  std::filesystem::create_symlink("loop", folder / "loop");
  EXPECT_EQ(read_refusal(folder / "loop"), "no such file");
  std::filesystem::create_symlink("absent", folder / "dangling");
  EXPECT_EQ(read_refusal(folder / "dangling"), "no such file");
}

TEST(ReadFileTest, what_may_not_be_read_is_the_machines_failure) {
  const ScratchFolder folder;
  std::ofstream(folder / "secret") << "x";
  std::filesystem::permissions(folder / "secret", std::filesystem::perms::none);
  std::filesystem::permissions(folder.path(), std::filesystem::perms(0755));
  const pid_t child = fork();
  if (child == 0) {
    if (getuid() == 0 && setuid(65534) != 0) _exit(9);
    try {
      read_file(folder / "secret", 100);
      _exit(1);
    } catch (const std::system_error& error) {
      _exit(error.code() == std::errc::permission_denied ? 0 : 2);
    } catch (...) {
      _exit(3);
    }
  }
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), 0);
}

// FIPS 180-4 example messages, as NIST publishes them with the standard.
TEST(Sha256Test, gives_the_published_digests) {
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_hex(std::string(1000000, 'a')),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}
