#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace seamtakt {

/// SHA-256 of bytes that come in pieces.
class ByteDigest {
 public:
  ByteDigest();
  ~ByteDigest();
  void add(std::string_view bytes);
  /// Lower-case hex; no bytes may follow.
  std::string hex();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace seamtakt
