#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/files/descriptor.hpp"

namespace seamtakt::cli {

/// The lines of a stream, in bounded memory: of a line that is too long only that is told.
class LineSource {
 public:
  struct Line {
    std::string_view text;  ///< without its end; valid until the next line is read
    bool is_too_long = false;
  };

  LineSource(Descriptor from, std::size_t longest) : from_(std::move(from)), longest_(longest) {}

  /// The next line; the last may have no end. Nothing at the end of the stream. std::system_error where it
  /// can't be read.
  std::optional<Line> next();

 private:
  bool read_more();

  Descriptor from_;
  std::size_t longest_;
  std::string held_;  ///< read, and not taken yet from `begin_` on
  std::size_t begin_ = 0;
  bool ended_ = false;
};

}  // namespace seamtakt::cli
