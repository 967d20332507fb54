#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string_view>

#include "base/files/byte_source.hpp"
#include "records/log/log_chunk.hpp"

namespace seamtakt {

/// Cuts a log's bytes into chunks of whole lines.
class ChunkSource {
 public:
  using Observer = std::function<void(std::string_view)>;

  virtual ~ChunkSource() = default;

  /// Fills the text of chunk `index`. An error is kept in the chunk, which then is the last one.
  void read(LogChunk& chunk, std::uint64_t index);
  /// How many chunks there are, where several threads may read them at once; else empty, and they are read
  /// one after the other.
  virtual std::optional<std::uint64_t> count() const { return {}; }
  /// In the chunks read so far; each byte of the log counts once.
  std::uint64_t bytes_read() const { return bytes_read_.load(std::memory_order_relaxed); }

 protected:
  virtual void fill(LogChunk& chunk, std::uint64_t index) = 0;
  void add_bytes(std::uint64_t count) { bytes_read_.fetch_add(count, std::memory_order_relaxed); }

 private:
  std::atomic<std::uint64_t> bytes_read_ = 0;
};

/// `begin`: bytes that were read before and belong to the first chunk; they must outlive the source.
/// `longest_row`: a text of more bytes without a line's end is passed on unchanged. An observer sees the
/// bytes in their order, so that the chunks are read one after the other.
std::unique_ptr<ChunkSource> chunk_source(ByteSource& bytes, std::string_view begin, std::size_t block_bytes,
                                          std::size_t longest_row, ChunkSource::Observer observe);

}  // namespace seamtakt
