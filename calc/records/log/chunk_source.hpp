#pragma once

#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

#include "base/files/byte_source.hpp"
#include "records/log/log_chunk.hpp"

namespace seamtakt {

/// Cuts a log's bytes into chunks of whole lines.
class ChunkSource {
 public:
  /// `begin`: bytes that were read before and belong to the first chunk. `longest_row`: a text of more bytes
  /// without a line's end is handed on as it is.
  ChunkSource(ByteSource& bytes, std::string_view begin, std::size_t block_bytes, std::size_t longest_row,
              std::function<void(std::string_view)> observe);

  /// Fills the chunk's text. What goes wrong is kept in the chunk, which is the last one then.
  void read(LogChunk& chunk);
  std::uint64_t bytes_read() const { return bytes_read_; }

 private:
  void fill(LogChunk& chunk);

  ByteSource& bytes_;
  std::vector<char> rest_;  ///< begins a line
  std::size_t block_bytes_, longest_row_;
  std::function<void(std::string_view)> observe_;
  std::uint64_t bytes_read_ = 0;
};

}  // namespace seamtakt
