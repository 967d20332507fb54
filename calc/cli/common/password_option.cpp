#include "cli/common/password_option.hpp"

#include <sys/stat.h>

#include <cerrno>
#include <cstdlib>
#include <system_error>

#include "base/error.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::size_t largest_password_file = 4096;

std::string first_line(const std::string& path) {
  const std::string text = read_file(path, largest_password_file);
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0)
    throw std::system_error(errno, std::generic_category(), printable(path));
  if ((status.st_mode & 0077) != 0)
    throw InputError(printable(path), "a password that others may read"_word,
                     "a file of mode 0600 (chmod 600)"_word);
  const std::string line = text.substr(0, text.find_first_of("\r\n"));
  if (line.empty() || line.find('\0') != std::string::npos)
    throw InputError(printable(path), "no password"_word, "a password in the first line"_word);
  return line;
}

}  // namespace

void add_password_option(const Command& program) {
  // PostgreSQL's library takes it from there; only what the program was started with can be seen by others.
  program
      .option(
          "--password-file",
          [](const std::string& path) { ::setenv("PGPASSWORD", first_line(path).c_str(), 1); },
          "file whose first line is the password of a postgresql:// store (PGPASSWORD and ~/.pgpass do as "
          "well)")
      .takes("FILE");
}

}  // namespace seamtakt::cli
