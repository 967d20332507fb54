#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace seamtakt {

/// SHA-256 (32 bytes).
using Digest = std::array<unsigned char, 32>;

std::string hex(std::string_view bytes);
std::string hex(const Digest& digest);
/// Lower-case hex only; empty where `text` isn't.
std::optional<std::string> bytes_from_hex(std::string_view text);
std::optional<Digest> digest_from_hex(std::string_view text);
std::string_view bytes_of(const Digest& digest);
/// Empty where `bytes` aren't 32.
std::optional<Digest> digest_from_bytes(std::string_view bytes);

/// Repeated SHA-256 of pieces that sets the library up only once.
class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;

  Sha256& add(std::string_view bytes);
  /// Digest of what was added; then starts over.
  Digest take();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

/// SHA-256 of bytes, lower-case hex.
std::string sha256_hex(std::string_view bytes);

}  // namespace seamtakt
