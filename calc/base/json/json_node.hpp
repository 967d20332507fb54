#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

struct JsonMember;

/// A JSON value as read from a file, with its position in the file. Object members keep the
/// file's order; keys are unique (the reader refuses duplicates).
struct JsonNode {
  enum class Kind { null, boolean, number, string, array, object };
  Kind kind = Kind::null;
  bool boolean = false;
  bool is_integer = false;  ///< written without fraction or exponent, and within +-2^53
  double number = 0;        ///< finite
  std::string string;
  std::vector<JsonNode> elements;
  std::vector<JsonMember> members;
  /// 1-based place where the value begins; the column counts characters, not bytes.
  std::uint32_t line = 0, column = 0;

  const JsonNode* find(std::string_view key) const;
  const char* kind_name() const;  ///< "a number", "an object", ... for messages
};

/// A key of an object with its value.
struct JsonMember {
  std::string key;
  JsonNode value;
};

/// Limits on JSON input (reliability: hostile files).
struct JsonLimits {
  std::size_t bytes = 64u << 20;
  std::size_t depth = 64;
  std::size_t string_bytes = 64u << 10;
  std::size_t members = 1'000'000;  ///< in one array or object
  std::size_t values = 8'000'000;   ///< in the whole text: a value takes about 100 bytes of memory
};

/// Parses UTF-8 JSON text (RFC 8259). Refuses, with InputError at FILE:LINE:COLUMN: duplicate keys,
/// NUL (an escaped one too: no name or file may carry it), nesting deeper than the limit, numbers that aren't
/// finite, lone surrogates, invalid UTF-8, trailing text. A leading UTF-8 byte order mark is accepted. `file`
/// names the source in messages.
JsonNode parse_json(std::string_view text, const std::string& file, const JsonLimits& limits = {});

/// Reads a whole regular file; InputError when absent or not a regular file or above `limit` bytes,
/// std::system_error when unreadable.
std::string read_file(const std::string& path, std::size_t limit);

}  // namespace seamtakt
