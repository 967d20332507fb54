#include <zlib.h>

#include <limits>
#include <new>
#include <utility>
#include <vector>

#include "base/error.hpp"
#include "base/files/byte_source.hpp"

namespace seamtakt {

namespace {

constexpr int gzip_window_bits = 16 + MAX_WBITS;  // gzip only, with its checksum

class GzipBytes : public ByteSource {
 public:
  GzipBytes(std::unique_ptr<ByteSource> compressed, std::string name)
      : compressed_(std::move(compressed)), name_(std::move(name)), block_(1u << 16) {
    if (::inflateInit2(&stream_, gzip_window_bits) != Z_OK) throw std::bad_alloc();
  }
  ~GzipBytes() override { ::inflateEnd(&stream_); }
  GzipBytes(const GzipBytes&) = delete;
  GzipBytes& operator=(const GzipBytes&) = delete;

  std::size_t read(char* to, std::size_t capacity) override {
    if (capacity > std::numeric_limits<uInt>::max()) capacity = std::numeric_limits<uInt>::max();
    stream_.next_out = reinterpret_cast<Bytef*>(to);
    stream_.avail_out = static_cast<uInt>(capacity);
    while (stream_.avail_out == capacity && !at_end_) inflate_some();
    return capacity - stream_.avail_out;
  }
  std::uint64_t bytes_taken() const override { return compressed_->bytes_taken(); }
  std::uint64_t bytes_total() const override { return compressed_->bytes_total(); }

 private:
  void inflate_some() {
    if (stream_.avail_in == 0) take_block();
    if (stream_.avail_in == 0) {
      if (!between_members_) refuse("gzip data that ends too early"_word);
      at_end_ = true;
      return;
    }
    if (between_members_) next_member();
    const int outcome = ::inflate(&stream_, Z_NO_FLUSH);
    if (outcome == Z_STREAM_END) {
      between_members_ = true;
    } else if (outcome != Z_OK && outcome != Z_BUF_ERROR) {
      if (outcome == Z_MEM_ERROR) throw std::bad_alloc();
      refuse("damaged gzip data"_word);
    }
  }

  void take_block() {
    const std::size_t count = compressed_->read(block_.data(), block_.size());
    stream_.next_in = reinterpret_cast<Bytef*>(block_.data());
    stream_.avail_in = static_cast<uInt>(count);
  }

  void next_member() {
    between_members_ = false;
    if (first_member_) {
      first_member_ = false;
    } else if (::inflateReset(&stream_) != Z_OK) {
      refuse("damaged gzip data"_word);
    }
  }

  [[noreturn]] void refuse(Word found) const {
    throw InputError(printable(name_), found, "a whole gzip file"_word);
  }

  std::unique_ptr<ByteSource> compressed_;
  std::string name_;
  std::vector<char> block_;
  z_stream stream_{};
  bool between_members_ = true, first_member_ = true, at_end_ = false;
};

}  // namespace

std::unique_ptr<ByteSource> gzip_bytes(std::unique_ptr<ByteSource> compressed, std::string name) {
  return std::make_unique<GzipBytes>(std::move(compressed), std::move(name));
}

}  // namespace seamtakt
