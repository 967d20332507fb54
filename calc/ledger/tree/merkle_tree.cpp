#include "ledger/tree/merkle_tree.hpp"

#include <bit>

namespace seamtakt {

namespace {

Sha256& hasher() {
  thread_local Sha256 sha256;
  return sha256;
}

constexpr std::string_view leaf_prefix("\0", 1), node_prefix("\1", 1);

/// Leaves of the left subtree of n > 1.
std::uint64_t left_size(std::uint64_t n) {
  return std::bit_floor(n - 1);
}

/// SUBPROOF of rfc-9162, section 2.1.4.1.
void append_subproof(std::vector<Digest>& proof, std::span<const Digest> leaves, std::uint64_t old_size,
                     bool is_whole_old_tree) {
  if (old_size == leaves.size()) {
    if (!is_whole_old_tree) proof.push_back(merkle_root(leaves));
    return;
  }
  const std::uint64_t k = left_size(leaves.size());
  if (old_size <= k) {
    append_subproof(proof, leaves.first(k), old_size, is_whole_old_tree);
    proof.push_back(merkle_root(leaves.subspan(k)));
  } else {
    append_subproof(proof, leaves.subspan(k), old_size - k, false);
    proof.push_back(merkle_root(leaves.first(k)));
  }
}

}  // namespace

Digest leaf_digest(std::string_view entry) {
  return hasher().add(leaf_prefix).add(entry).take();
}

Digest node_digest(const Digest& left, const Digest& right) {
  return hasher().add(node_prefix).add(bytes_of(left)).add(bytes_of(right)).take();
}

Digest merkle_root(std::span<const Digest> leaves) {
  if (leaves.empty()) return hasher().take();
  if (leaves.size() == 1) return leaves[0];
  const std::uint64_t k = left_size(leaves.size());
  return node_digest(merkle_root(leaves.first(k)), merkle_root(leaves.subspan(k)));
}

std::optional<MerkleFrontier> MerkleFrontier::from_bytes(std::uint64_t size, std::string_view bytes) {
  constexpr std::size_t digest_bytes = sizeof(Digest);
  if (bytes.size() != digest_bytes * static_cast<std::size_t>(std::popcount(size))) return std::nullopt;
  MerkleFrontier frontier;
  frontier.size_ = size;
  for (std::size_t at = 0; at < bytes.size(); at += digest_bytes)
    frontier.subtrees_.push_back(*digest_from_bytes(bytes.substr(at, digest_bytes)));
  return frontier;
}

void MerkleFrontier::append(const Digest& leaf) {
  Digest node = leaf;
  // Each subtree as large as the new one joins it, as carries do when a binary number is counted up.
  for (std::uint64_t n = size_; n & 1; n >>= 1) {
    node = node_digest(subtrees_.back(), node);
    subtrees_.pop_back();
  }
  subtrees_.push_back(node);
  ++size_;
}

Digest MerkleFrontier::root() const {
  if (subtrees_.empty()) return merkle_root({});
  Digest node = subtrees_.back();
  for (std::size_t i = subtrees_.size() - 1; i-- > 0;) node = node_digest(subtrees_[i], node);
  return node;
}

std::string MerkleFrontier::bytes() const {
  std::string bytes;
  for (const Digest& subtree : subtrees_) bytes += bytes_of(subtree);
  return bytes;
}

std::vector<Digest> inclusion_proof(std::span<const Digest> leaves, std::uint64_t index) {
  if (leaves.size() <= 1) return {};
  const std::uint64_t k = left_size(leaves.size());
  const bool is_left = index < k;
  auto proof =
      is_left ? inclusion_proof(leaves.first(k), index) : inclusion_proof(leaves.subspan(k), index - k);
  proof.push_back(merkle_root(is_left ? leaves.subspan(k) : leaves.first(k)));
  return proof;
}

bool check_inclusion(const Digest& leaf, std::uint64_t index, std::uint64_t size,
                     std::span<const Digest> proof, const Digest& root) {
  if (index >= size) return false;
  std::uint64_t fn = index, sn = size - 1;
  Digest node = leaf;
  for (const Digest& each : proof) {
    if (sn == 0) return false;
    if ((fn & 1) != 0 || fn == sn) {
      node = node_digest(each, node);
      while ((fn & 1) == 0 && fn != 0) {
        fn >>= 1;
        sn >>= 1;
      }
    } else {
      node = node_digest(node, each);
    }
    fn >>= 1;
    sn >>= 1;
  }
  return sn == 0 && node == root;
}

std::vector<Digest> consistency_proof(std::span<const Digest> leaves, std::uint64_t old_size) {
  std::vector<Digest> proof;
  append_subproof(proof, leaves, old_size, true);
  return proof;
}

bool check_consistency(std::uint64_t old_size, const Digest& old_root, std::uint64_t size, const Digest& root,
                       std::span<const Digest> proof) {
  if (old_size == 0 || old_size > size) return false;
  if (old_size == size) return proof.empty() && old_root == root;
  std::vector<Digest> path(proof.begin(), proof.end());
  if (std::has_single_bit(old_size)) path.insert(path.begin(), old_root);
  if (path.empty()) return false;
  std::uint64_t fn = old_size - 1, sn = size - 1;
  while ((fn & 1) != 0) {
    fn >>= 1;
    sn >>= 1;
  }
  Digest old_node = path[0], node = path[0];
  for (std::size_t i = 1; i < path.size(); ++i) {
    if (sn == 0) return false;
    if ((fn & 1) != 0 || fn == sn) {
      old_node = node_digest(path[i], old_node);
      node = node_digest(path[i], node);
      while ((fn & 1) == 0 && fn != 0) {
        fn >>= 1;
        sn >>= 1;
      }
    } else {
      node = node_digest(node, path[i]);
    }
    fn >>= 1;
    sn >>= 1;
  }
  return old_node == old_root && node == root && sn == 0;
}

}  // namespace seamtakt
