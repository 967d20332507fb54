#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/files/digest.hpp"

namespace seamtakt {

/// The Merkle tree of a log: leaf = SHA-256(0x00 || entry), node = SHA-256(0x01 || left || right), the left
/// subtree of n leaves the largest power of two below n. Source: rfc-9162, sections 2.1.1 to 2.1.4.
Digest leaf_digest(std::string_view entry);
Digest node_digest(const Digest& left, const Digest& right);

/// Root of all leaves; SHA-256 of nothing where there are none. The second, recursive route to the frontier's
/// root.
Digest merkle_root(std::span<const Digest> leaves);

/// What a log must remember to grow: the roots of its full subtrees, largest first (at most 64).
class MerkleFrontier {
 public:
  MerkleFrontier() = default;
  /// Empty where `bytes` aren't as many digests as `size` has bits set.
  static std::optional<MerkleFrontier> from_bytes(std::uint64_t size, std::string_view bytes);

  void append(const Digest& leaf);
  std::uint64_t size() const { return size_; }
  Digest root() const;
  std::string bytes() const;

 private:
  std::uint64_t size_ = 0;
  std::vector<Digest> subtrees_;
};

/// Digests that lead from leaf `index` to the root. index < leaves.size().
std::vector<Digest> inclusion_proof(std::span<const Digest> leaves, std::uint64_t index);
bool check_inclusion(const Digest& leaf, std::uint64_t index, std::uint64_t size,
                     std::span<const Digest> proof, const Digest& root);

/// Digests that show that the first `old_size` leaves are unchanged in the whole; 1 <= old_size <= leaves.
std::vector<Digest> consistency_proof(std::span<const Digest> leaves, std::uint64_t old_size);
bool check_consistency(std::uint64_t old_size, const Digest& old_root, std::uint64_t size, const Digest& root,
                       std::span<const Digest> proof);

}  // namespace seamtakt
