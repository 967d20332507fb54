#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_node.hpp"
#include "ledger/tree/signing_key.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t largest_key_file = 64u << 10;

void make_folders(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) return;
  std::error_code error;
  // Others have no business in a folder of keys.
  const mode_t mask = umask(0077);
  std::filesystem::create_directories(folder, error);
  umask(mask);
  if (error) throw std::system_error(error, "can't make the folder " + printable(folder.string()));
}

}  // namespace

SigningKey load_signing_key(const std::string& path, const std::string& passphrase) {
  const std::string pem = read_file(path, largest_key_file);
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0)
    throw std::system_error(errno, std::generic_category(), printable(path));
  if ((status.st_mode & 0077) != 0)
    throw InputError(printable(path), "a key that others may read"_word,
                     "a file of mode 0600 (chmod 600)"_word);
  return SigningKey::from_pem(pem, passphrase, printable(path));
}

void save_signing_key(const std::string& path, const SigningKey& key, const std::string& passphrase,
                      bool replace) {
  if (const FileKind there = kind_of_file(path);
      replace && there != FileKind::absent && there != FileKind::empty && there != FileKind::private_key)
    throw InputError(printable(path), "a file that is no private key"_word,
                     "the store's key, or a new name"_word);
  make_folders(path);
  // The name is taken with its mode first; save_atomically keeps the mode.
  const int file =
      ::open(path.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC | O_NOFOLLOW | (replace ? 0 : O_EXCL), 0600);
  if (file < 0) {
    if (errno == EEXIST)
      throw InputError(printable(path), "a file of that name"_word, "a name that isn't taken"_word);
    throw std::system_error(errno, std::generic_category(), "can't make the key " + printable(path));
  }
  ::close(file);
  save_atomically(path, key.pem(passphrase));
}

}  // namespace seamtakt
