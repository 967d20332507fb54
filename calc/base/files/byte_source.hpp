#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>

namespace seamtakt {

/// Bytes in order, read once.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  /// Reads up to `capacity` bytes; 0 only at the end. Throws std::system_error if reading fails, InputError
  /// if the data is corrupt (compressed data).
  virtual std::size_t read(char* to, std::size_t capacity) = 0;
  /// Bytes taken from the file or stream so far (compressed ones where it is compressed), for progress.
  virtual std::uint64_t bytes_taken() const = 0;
  /// Size of the file; 0 where it isn't known.
  virtual std::uint64_t bytes_total() const { return 0; }
  /// Whether read_at() works: the bytes are those of a file of known size.
  virtual bool can_read_at() const { return false; }
  /// Reads up to `capacity` bytes from `offset` on, like read(), but without moving its position; several
  /// threads may call it at once.
  virtual std::size_t read_at(std::uint64_t offset, char* to, std::size_t capacity);
};

/// A log by its path. "-": standard input, compressed (gzip) or not. A name that ends in ".gz": gzip.
/// InputError: absent, no regular file, gzip data under another name or none under ".gz", a file whose size
/// changed while it was read. std::system_error: unreadable.
std::unique_ptr<ByteSource> open_log_bytes(const std::string& path);

/// A file that is still being written, up to its last complete line. At its present end `wait` is called; it
/// returns true to try again, or false to stop waiting: the file then ends there, without an incomplete last
/// line. InputError: the file is absent, isn't a regular file, or becomes shorter.
std::unique_ptr<ByteSource> followed_bytes(const std::string& path, std::function<bool()> wait);

/// Bytes in memory, given out at most `chunk` at a time (0: all that fits, and at any place).
std::unique_ptr<ByteSource> memory_bytes(std::string bytes, std::size_t chunk = 0);

/// What gzip (RFC 1952) `compressed` holds, several members included. `name` is for messages.
std::unique_ptr<ByteSource> gzip_bytes(std::unique_ptr<ByteSource> compressed, std::string name);

}  // namespace seamtakt
