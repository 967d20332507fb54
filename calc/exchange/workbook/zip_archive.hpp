#pragma once

#include <map>
#include <string>
#include <string_view>

#include "exchange/workbook/book.hpp"

namespace seamtakt {

/// The parts of a zip archive in memory, of which nothing is ever written to a disk. Limits are checked on
/// the bytes that really come out, whatever the archive says of itself.
class ZipArchive {
 public:
  /// Borrows the bytes. InputError at `file` where they are no archive, or one with too many parts, a part
  /// twice, a password, or a name that leads out of the archive.
  ZipArchive(std::string_view bytes, std::string file, const BookLimits& limits);
  ~ZipArchive();
  ZipArchive(const ZipArchive&) = delete;
  ZipArchive& operator=(const ZipArchive&) = delete;

  bool has(const std::string& name) const { return places_.contains(name); }
  /// The bytes of a part. InputError where it is absent, damaged or beyond a limit.
  std::string part(const std::string& name);
  const std::string& file() const { return file_; }
  const BookLimits& limits() const { return limits_; }

 private:
  struct Memory;
  struct Place {
    unsigned long long in_directory = 0, number = 0;
    unsigned long long packed_bytes = 0, whole_bytes = 0;  ///< as the directory states them
  };
  void list_parts();
  void take_part(std::string name, unsigned long flags, const Place& place);
  [[noreturn]] void refuse_damaged() const;

  std::string file_;
  BookLimits limits_;
  Memory* memory_;
  void* zip_;
  std::map<std::string, Place> places_;
  std::size_t taken_bytes_ = 0;
};

}  // namespace seamtakt
