#include "records/log/block_chunks.hpp"

#include <algorithm>
#include <cstring>

namespace seamtakt {

namespace {

/// Bytes read after a block at a time, to complete its last line: most rows are shorter.
constexpr std::size_t tail_bytes = 512;

}  // namespace

BlockChunks::BlockChunks(ByteSource& bytes, std::string_view begin, std::size_t block_bytes,
                         std::size_t longest_row)
    : bytes_(bytes),
      begin_(begin),
      first_offset_(bytes.bytes_taken()),
      total_(std::max(bytes.bytes_total(), first_offset_)),
      block_bytes_(std::max<std::size_t>(block_bytes, 1)),
      longest_row_(longest_row),
      count_(std::max<std::uint64_t>(1, (total_ - first_offset_ + block_bytes_ - 1) / block_bytes_)) {}

std::size_t BlockChunks::read_on(LogChunk& chunk, std::uint64_t offset, std::size_t wanted) {
  chunk.reserve_text(chunk.size + wanted);
  std::size_t got = 0;
  while (got < wanted) {
    const std::size_t count = bytes_.read_at(offset + got, chunk.text() + chunk.size, wanted - got);
    if (count == 0) break;
    chunk.size += count;
    got += count;
  }
  return got;
}

void BlockChunks::fill(LogChunk& chunk, std::uint64_t index) {
  const bool is_first = index == 0;
  chunk.last = index + 1 == count_;
  const std::uint64_t block = first_offset_ + index * block_bytes_;
  chunk.bytes_taken = std::min(block + block_bytes_, total_);
  // With the byte before a block one sees whether its first line begins with it.
  std::uint64_t offset = is_first ? block : block - 1;
  if (is_first) {
    chunk.reserve_text(begin_.size() + block_bytes_ + tail_bytes);
    std::memcpy(chunk.text(), begin_.data(), begin_.size());
    chunk.size = begin_.size();
  }
  const std::size_t behind_block = chunk.size + static_cast<std::size_t>(block + block_bytes_ - offset);
  offset += read_on(chunk, offset, behind_block - chunk.size + tail_bytes);
  // The line in which a block ends is its last one; that of the last block ends with the file.
  const std::size_t block_end = behind_block - 1;
  std::size_t searched = block_end, begin = 0;
  if (!is_first) {
    const void* const before = std::memchr(chunk.text(), '\n', chunk.last ? chunk.size : block_end);
    if (before == nullptr) {
      chunk.size = 0;
      return;
    }
    begin = static_cast<std::size_t>(static_cast<const char*>(before) - chunk.text()) + 1;
  }
  while (!chunk.last && chunk.size - block_end <= longest_row_) {
    const void* const end = std::memchr(chunk.text() + searched, '\n', chunk.size - searched);
    if (end != nullptr) {
      chunk.size = static_cast<std::size_t>(static_cast<const char*>(end) - chunk.text()) + 1;
      break;
    }
    searched = chunk.size;
    const std::size_t count = read_on(chunk, offset, tail_bytes);
    if (count == 0) break;
    offset += count;
  }
  chunk.size -= begin;
  chunk.text_begin = begin;
  add_bytes(chunk.size - (is_first ? begin_.size() : 0));
}

}  // namespace seamtakt
