#include "exchange/workbook/zip_archive.hpp"

#include <minizip/unzip.h>

#include <algorithm>
#include <cstring>
#include <memory>

#include "base/error.hpp"

namespace seamtakt {

/// What the library reads in place of a file.
struct ZipArchive::Memory {
  std::string_view bytes;
  std::size_t at = 0;

  static voidpf open(voidpf self, const void*, int) {
    static_cast<Memory*>(self)->at = 0;
    return self;
  }
  static uLong read(voidpf, voidpf stream, void* to, uLong size) {
    auto& memory = *static_cast<Memory*>(stream);
    const std::size_t count = std::min<std::size_t>(size, memory.bytes.size() - memory.at);
    std::memcpy(to, memory.bytes.data() + memory.at, count);
    memory.at += count;
    return static_cast<uLong>(count);
  }
  static uLong write(voidpf, voidpf, const void*, uLong) { return 0; }
  static ZPOS64_T tell(voidpf, voidpf stream) { return static_cast<Memory*>(stream)->at; }
  static long seek(voidpf, voidpf stream, ZPOS64_T offset, int origin) {
    auto& memory = *static_cast<Memory*>(stream);
    const std::size_t base = origin == ZLIB_FILEFUNC_SEEK_SET   ? 0
                             : origin == ZLIB_FILEFUNC_SEEK_CUR ? memory.at
                                                                : memory.bytes.size();
    if (offset > memory.bytes.size() - base) return -1;
    memory.at = base + static_cast<std::size_t>(offset);
    return 0;
  }
  static int close(voidpf, voidpf) { return 0; }
  static int error(voidpf, voidpf) { return 0; }
};

namespace {

constexpr std::size_t longest_name = 512;
constexpr unsigned long encrypted = 1;  // bit 0 of an entry's flags

/// A name that would be a place elsewhere if the part were unpacked.
bool leads_out(std::string_view name) {
  if (name.starts_with('/') || name.find('\\') != std::string_view::npos ||
      name.find(':') != std::string_view::npos)
    return true;
  for (std::size_t begin = 0; begin <= name.size();) {
    const std::size_t end = std::min(name.find('/', begin), name.size());
    if (name.substr(begin, end - begin) == "..") return true;
    begin = end + 1;
  }
  return false;
}

}  // namespace

ZipArchive::ZipArchive(std::string_view bytes, std::string file, const BookLimits& limits)
    : file_(std::move(file)), limits_(limits) {
  auto memory = std::make_unique<Memory>(Memory{bytes});
  zlib_filefunc64_def calls{};
  calls.zopen64_file = &Memory::open;
  calls.zread_file = &Memory::read;
  calls.zwrite_file = &Memory::write;
  calls.ztell64_file = &Memory::tell;
  calls.zseek64_file = &Memory::seek;
  calls.zclose_file = &Memory::close;
  calls.zerror_file = &Memory::error;
  calls.opaque = memory.get();
  zip_ = unzOpen2_64("", &calls);
  if (!zip_) refuse_damaged();
  memory_ = memory.release();
  try {
    list_parts();
  } catch (...) {
    unzClose(zip_);
    delete memory_;
    throw;
  }
}

ZipArchive::~ZipArchive() {
  unzClose(zip_);
  delete memory_;
}

void ZipArchive::refuse_damaged() const {
  throw InputError(printable(file_), "a zip archive that is damaged or cut off"_word,
                   "a whole workbook"_word);
}

void ZipArchive::take_part(std::string name, unsigned long flags, const Place& place) {
  if (flags & encrypted)
    throw InputError(printable(file_), "a workbook with a password"_word, "one without"_word);
  if (leads_out(name))
    throw InputError(printable(file_), Sentence("workbook.part.leads-out"_key, {{"name", printable(name)}}),
                     "names within the archive"_word);
  if (places_.size() >= limits_.parts)
    throw InputError(printable(file_), Sentence("workbook.parts"_key, {{"count", limits_.parts}}),
                     "fewer"_word);
  if (!places_.emplace(name, place).second)
    throw InputError(printable(file_), Sentence("workbook.part.twice"_key, {{"name", printable(name)}}),
                     "each part once"_word);
}

void ZipArchive::list_parts() {
  int state = unzGoToFirstFile(zip_);
  for (; state == UNZ_OK; state = unzGoToNextFile(zip_)) {
    unz_file_info64 info{};
    char name[longest_name + 1] = {};
    if (unzGetCurrentFileInfo64(zip_, &info, name, longest_name, nullptr, 0, nullptr, 0) != UNZ_OK)
      refuse_damaged();
    if (info.size_filename > longest_name)
      throw InputError(printable(file_), "a part with a very long name"_word, "a workbook"_word);
    unz64_file_pos at{};
    if (unzGetFilePos64(zip_, &at) != UNZ_OK) refuse_damaged();
    take_part(std::string(name, std::strlen(name)), info.flag,
              {at.pos_in_zip_directory, at.num_of_file, info.compressed_size, info.uncompressed_size});
  }
  if (state != UNZ_END_OF_LIST_OF_FILE) refuse_damaged();
}

std::string ZipArchive::part(const std::string& name) {
  const auto found = places_.find(name);
  if (found == places_.end())
    throw InputError(printable(file_), Sentence("workbook.part.absent"_key, {{"name", printable(name)}}),
                     "a whole workbook"_word);
  unz64_file_pos at{found->second.in_directory, found->second.number};
  if (unzGoToFilePos64(zip_, &at) != UNZ_OK || unzOpenCurrentFile(zip_) != UNZ_OK) refuse_damaged();
  const auto refuse_size = [&](Sentence limit) {
    unzCloseCurrentFile(zip_);
    throw InputError(printable(file_), Sentence("workbook.part.size"_key, {{"name", printable(name)}}),
                     std::move(limit));
  };
  constexpr std::size_t piece = 1u << 16, always_allowed = 1u << 20;
  std::string bytes;
  for (;;) {
    const std::size_t before = bytes.size();
    bytes.resize(before + piece);
    const int count = unzReadCurrentFile(zip_, bytes.data() + before, static_cast<unsigned>(piece));
    bytes.resize(before + static_cast<std::size_t>(std::max(count, 0)));
    if (count < 0) {
      unzCloseCurrentFile(zip_);
      refuse_damaged();
    }
    if (count == 0) break;
    taken_bytes_ += static_cast<std::size_t>(count);
    if (bytes.size() > limits_.part_bytes || taken_bytes_ > limits_.total_bytes)
      refuse_size(Sentence("workbook.part.at-most"_key,
                           {{"bytes", std::min(limits_.part_bytes, limits_.total_bytes)}}));
    if (bytes.size() > always_allowed && bytes.size() / limits_.ratio > found->second.packed_bytes)
      refuse_size(Sentence("workbook.part.ratio"_key, {{"ratio", limits_.ratio}}));
  }
  if (unzCloseCurrentFile(zip_) != UNZ_OK) refuse_damaged();  // its check sum
  if (bytes.size() != found->second.whole_bytes) refuse_damaged();
  return bytes;
}

}  // namespace seamtakt
