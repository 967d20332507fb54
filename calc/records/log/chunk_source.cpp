#include "records/log/chunk_source.hpp"

#include <algorithm>
#include <cstring>
#include <exception>
#include <utility>
#include <vector>

#include "records/log/block_chunks.hpp"

namespace seamtakt {

void ChunkSource::read(LogChunk& chunk, std::uint64_t index) {
  chunk.text_begin = 0;
  chunk.size = 0;
  chunk.last = false;
  chunk.read_error = nullptr;
  try {
    fill(chunk, index);
  } catch (...) {
    chunk.last = true;
    chunk.size = 0;
    chunk.read_error = std::current_exception();
  }
}

namespace {

/// Of bytes that come one after the other.
class SerialChunks : public ChunkSource {
 public:
  SerialChunks(ByteSource& bytes, std::string_view begin, std::size_t block_bytes, std::size_t longest_row,
               Observer observe)
      : bytes_(bytes),
        rest_(begin.begin(), begin.end()),
        block_bytes_(std::max<std::size_t>(block_bytes, 1)),
        longest_row_(longest_row),
        observe_(std::move(observe)) {}

 protected:
  void fill(LogChunk& chunk, std::uint64_t) override {
    std::size_t wanted = std::max(block_bytes_, rest_.size() + 1);
    chunk.reserve_text(wanted);
    if (!rest_.empty()) std::memcpy(chunk.text(), rest_.data(), rest_.size());
    std::size_t size = rest_.size(), behind_line = 0;
    rest_.clear();
    const auto find_line_end = [&](std::size_t from) {
      const void* const at = ::memrchr(chunk.text() + from, '\n', size - from);
      if (at != nullptr)
        behind_line = static_cast<std::size_t>(static_cast<const char*>(at) - chunk.text()) + 1;
    };
    find_line_end(0);
    while (!chunk.last && (size < wanted || (behind_line == 0 && size <= longest_row_))) {
      if (size >= wanted) chunk.reserve_text(wanted = size + std::max<std::size_t>(block_bytes_, 4096));
      const std::size_t count = bytes_.read(chunk.text() + size, wanted - size);
      if (count == 0) chunk.last = true;
      if (observe_ && count > 0) observe_({chunk.text() + size, count});
      add_bytes(count);
      size += count;
      find_line_end(size - count);
    }
    chunk.size = chunk.last || behind_line == 0 ? size : behind_line;
    rest_.assign(chunk.text() + chunk.size, chunk.text() + size);
    chunk.bytes_taken = bytes_.bytes_taken();
  }

 private:
  ByteSource& bytes_;
  std::vector<char> rest_;  ///< begins a line
  std::size_t block_bytes_, longest_row_;
  Observer observe_;
};

}  // namespace

std::unique_ptr<ChunkSource> chunk_source(ByteSource& bytes, std::string_view begin, std::size_t block_bytes,
                                          std::size_t longest_row, ChunkSource::Observer observe) {
  if (bytes.can_read_at() && !observe)
    return std::make_unique<BlockChunks>(bytes, begin, block_bytes, longest_row);
  return std::make_unique<SerialChunks>(bytes, begin, block_bytes, longest_row, std::move(observe));
}

}  // namespace seamtakt
