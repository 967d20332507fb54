#pragma once

#include "records/log/chunk_source.hpp"

namespace seamtakt {

/// Chunks of a file that can be read anywhere: each thread reads its own, so that none waits for another. The
/// file is cut into blocks of one size; the lines that begin in a block are its chunk. A block in which none
/// begins gives an empty one.
class BlockChunks : public ChunkSource {
 public:
  BlockChunks(ByteSource& bytes, std::string_view begin, std::size_t block_bytes, std::size_t longest_row);

  std::optional<std::uint64_t> count() const override { return count_; }

 protected:
  void fill(LogChunk& chunk, std::uint64_t index) override;

 private:
  /// Reads bytes of the file from `offset` on, after the chunk's text; fewer than requested only at the
  /// file's end.
  std::size_t read_on(LogChunk& chunk, std::uint64_t offset, std::size_t wanted);

  ByteSource& bytes_;
  std::string_view begin_;
  std::uint64_t first_offset_, total_;  ///< bytes of the file: after `begin`, and all
  std::size_t block_bytes_, longest_row_;
  std::uint64_t count_;
};

}  // namespace seamtakt
