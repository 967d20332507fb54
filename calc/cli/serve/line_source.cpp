#include "cli/serve/line_source.hpp"

#include <cerrno>
#include <system_error>

namespace seamtakt::cli {

namespace {

constexpr std::size_t block_bytes = 64u << 10;

}  // namespace

bool LineSource::read_more() {
  held_.erase(0, begin_);
  begin_ = 0;
  const std::size_t before = held_.size();
  held_.resize(before + block_bytes);
  const ssize_t got = retried([&] { return ::read(from_.get(), held_.data() + before, block_bytes); });
  if (got < 0) throw std::system_error(errno, std::generic_category(), "standard input: can't be read");
  held_.resize(before + static_cast<std::size_t>(got));
  ended_ = got == 0;
  return !ended_;
}

std::optional<LineSource::Line> LineSource::next() {
  bool too_long = false;
  for (std::size_t looked_at = begin_;;) {
    const std::size_t end = held_.find('\n', looked_at);
    const std::size_t length = (end == std::string::npos ? held_.size() : end) - begin_;
    too_long = too_long || length > longest_;
    if (end != std::string::npos || ended_) {
      if (end == std::string::npos && length == 0 && !too_long) return std::nullopt;
      const std::string_view text(held_.data() + begin_, length);
      begin_ += length + (end == std::string::npos ? 0 : 1);
      return Line{too_long ? std::string_view() : text, too_long};
    }
    if (too_long) begin_ = held_.size();  // only its end is looked for
    looked_at = held_.size() - begin_;
    read_more();
  }
}

}  // namespace seamtakt::cli
