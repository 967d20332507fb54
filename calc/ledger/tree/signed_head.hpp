#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/files/digest.hpp"
#include "ledger/tree/signing_key.hpp"

namespace seamtakt {

/// What a store says of itself after a commit: so many records with this root, signed.
struct SignedHead {
  std::string store;  ///< 128-bit id, hex
  std::uint64_t n = 0;
  Digest root{};
  std::string utc;        ///< "2026-11-25T14:21:02Z"
  std::string previous;   ///< SHA-256 of the text of the head before, hex; 64 zeros for the first one
  std::string key_id;     ///< PublicKey::id
  std::string signature;  ///< 64 bytes

  /// The signed text: "seamtakt-log/1", store, n, root, utc, previous, key id, each on a line.
  std::string text() const;
  std::string text_sha256() const;
  /// "store n root utc key-id signature" on one line, hex: what is kept outside.
  std::string anchor_line() const;
  void sign(const SigningKey& key);
};

inline constexpr std::string_view no_previous_head =
    "0000000000000000000000000000000000000000000000000000000000000000";

/// An anchor that someone kept.
struct Anchor {
  std::string where;  ///< "FILE:LINE"
  std::string store;
  std::uint64_t n = 0;
  Digest root{};
  std::string utc, key_id, signature;
};

/// Anchors as the program prints them, one after another: store, n, root, utc, key-id, signature. Each may be
/// on one line or on several, its digits in groups, in capitals, after the word "Anchor": as it was copied
/// from a page. Blank lines and lines that begin with '#' are skipped. InputError at FILE:LINE: not an
/// anchor, or a part of one.
std::vector<Anchor> parse_anchors(std::string_view text, const std::string& file);

/// The same where there may be none.
std::vector<Anchor> parse_any_anchors(std::string_view text, const std::string& file);

/// An anchor line as it is printed for people: a part on each line (store and n on one), digits in groups of
/// four. parse_anchors reads it.
std::vector<std::string> anchor_groups(const std::string& anchor_line);

}  // namespace seamtakt
