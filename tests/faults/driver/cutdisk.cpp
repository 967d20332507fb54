// cutdisk FOLDER IMAGE LOG: a disk that remembers in what order it was written to. Mounts on FOLDER a file
// system of two files: "disk", at first with the bytes of IMAGE (which stays as it is), and "acks". Every
// write and every flush of "disk" is appended to LOG, and so is every text written to "acks", in the order in
// which they came (cut_log.hpp reads it). One thread does all, so there is one order. Ends once FOLDER is
// unmounted; exit code 0 where LOG is whole.
#define FUSE_USE_VERSION 35
#include <fuse3/fuse.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <iterator>
#include <string>

#include "../cut_log.hpp"

namespace {

std::string disk;
std::FILE* cut_log = nullptr;

bool is_disk(const char* path) {
  return std::strcmp(path, "/disk") == 0;
}
bool is_acks(const char* path) {
  return std::strcmp(path, "/acks") == 0;
}

void log_event(char kind, off_t offset, const char* bytes, std::size_t size) {
  const seamtakt::CutEventHead head{kind, static_cast<std::uint64_t>(offset), size};
  std::fwrite(&head, sizeof head, 1, cut_log);
  std::fwrite(bytes, 1, size, cut_log);
}

int get_attributes(const char* path, struct stat* attributes, fuse_file_info*) {
  *attributes = {};
  const bool is_root = std::strcmp(path, "/") == 0;
  if (!is_root && !is_disk(path) && !is_acks(path)) return -ENOENT;
  attributes->st_mode = is_root ? S_IFDIR | 0700 : S_IFREG | 0600;
  attributes->st_nlink = is_root ? 2 : 1;
  if (is_disk(path)) attributes->st_size = static_cast<off_t>(disk.size());
  return 0;
}

int open_file(const char* path, fuse_file_info* file) {
  // An acknowledgement must have come here before the program that writes it continues.
  if (is_acks(path)) file->direct_io = 1;
  return 0;
}

int truncate_file(const char* path, off_t, fuse_file_info*) {
  return is_acks(path) ? 0 : -EPERM;
}

int read_file(const char* path, char* bytes, std::size_t size, off_t offset, fuse_file_info*) {
  const auto at = static_cast<std::size_t>(offset);
  if (!is_disk(path) || at >= disk.size()) return 0;
  return static_cast<int>(disk.copy(bytes, size, at));
}

int write_file(const char* path, const char* bytes, std::size_t size, off_t offset, fuse_file_info*) {
  if (is_acks(path)) {
    log_event('a', 0, bytes, size);
  } else {
    if (static_cast<std::size_t>(offset) + size > disk.size()) return -ENOSPC;
    disk.replace(static_cast<std::size_t>(offset), size, bytes, size);
    log_event('w', offset, bytes, size);
  }
  return static_cast<int>(size);
}

int flush_disk(const char* path, int, fuse_file_info*) {
  if (is_disk(path)) log_event('f', 0, "", 0);
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 4) return 64;
  std::ifstream image(arguments[2], std::ios::binary);
  disk.assign(std::istreambuf_iterator<char>(image), {});
  cut_log = std::fopen(arguments[3], "wb");
  if (disk.empty() || !cut_log) return 3;
  fuse_operations operations{};
  operations.getattr = get_attributes;
  operations.open = open_file;
  operations.truncate = truncate_file;
  operations.read = read_file;
  operations.write = write_file;
  operations.fsync = flush_disk;
  char foreground[] = "-f", one_thread[] = "-s";
  char* words[] = {arguments[0], foreground, one_thread, arguments[1], nullptr};
  const int code = fuse_main(4, words, &operations, nullptr);
  const bool whole = std::ferror(cut_log) == 0;
  return std::fclose(cut_log) == 0 && whole ? code : 3;
}
