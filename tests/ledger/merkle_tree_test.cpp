#include "ledger/tree/merkle_tree.hpp"

#include <gtest/gtest.h>

using namespace seamtakt;

namespace {

/// Entries and roots of the test data that certificate transparency logs are checked with (recalled).
const std::vector<std::string> published_entries = {
    "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"};
const std::vector<std::string> published_roots = {
    "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
    "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
    "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
    "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
    "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
    "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328"};

std::vector<Digest> leaves_of(std::size_t count) {
  std::vector<Digest> leaves;
  for (std::size_t i = 0; i < count; ++i) leaves.push_back(leaf_digest("entry " + std::to_string(i)));
  return leaves;
}

Digest changed(Digest digest) {
  digest[7] ^= 1;
  return digest;
}

}  // namespace

TEST(MerkleTreeTest, roots_are_the_published_ones_by_both_routes) {
  EXPECT_EQ(hex(merkle_root({})), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  std::vector<Digest> leaves;
  MerkleFrontier frontier;
  EXPECT_EQ(frontier.root(), merkle_root({}));
  for (std::size_t i = 0; i < published_entries.size(); ++i) {
    leaves.push_back(leaf_digest(*bytes_from_hex(published_entries[i])));
    frontier.append(leaves.back());
    EXPECT_EQ(hex(merkle_root(leaves)), published_roots[i]);
    EXPECT_EQ(hex(frontier.root()), published_roots[i]);
  }
}

TEST(MerkleTreeTest, frontier_and_recursion_agree_and_the_frontier_survives_storage) {
  const auto leaves = leaves_of(257);
  MerkleFrontier frontier;
  for (std::size_t n = 1; n <= leaves.size(); ++n) {
    frontier.append(leaves[n - 1]);
    EXPECT_EQ(frontier.root(), merkle_root(std::span(leaves).first(n)));
    const auto stored = MerkleFrontier::from_bytes(n, frontier.bytes());
    ASSERT_TRUE(stored);
    EXPECT_EQ(stored->root(), frontier.root());
    EXPECT_FALSE(MerkleFrontier::from_bytes(n, frontier.bytes() + "x"));
    EXPECT_FALSE(MerkleFrontier::from_bytes(n ^ 512, frontier.bytes()));
  }
}

TEST(MerkleTreeTest, inclusion_proofs_hold_for_their_leaf_alone) {
  for (const std::size_t n : {1u, 2u, 3u, 7u, 8u, 9u, 31u, 33u, 64u, 100u}) {
    const auto leaves = leaves_of(n);
    const Digest root = merkle_root(leaves);
    for (std::size_t i = 0; i < n; ++i) {
      auto proof = inclusion_proof(leaves, i);
      EXPECT_LE(proof.size(), 7u);
      EXPECT_TRUE(check_inclusion(leaves[i], i, n, proof, root));
      EXPECT_FALSE(check_inclusion(changed(leaves[i]), i, n, proof, root));
      EXPECT_FALSE(check_inclusion(leaves[i], i, n, proof, changed(root)));
      EXPECT_FALSE(check_inclusion(leaves[i], n, n, proof, root));
      if (n > 1) {
        EXPECT_FALSE(check_inclusion(leaves[i], (i + 1) % n, n, proof, root));
        proof[proof.size() / 2] = changed(proof[proof.size() / 2]);
        EXPECT_FALSE(check_inclusion(leaves[i], i, n, proof, root));
        proof.pop_back();
      }
      proof.push_back(root);
      proof.push_back(root);
      EXPECT_FALSE(check_inclusion(leaves[i], i, n, proof, root));
    }
  }
}

TEST(MerkleTreeTest, consistency_proofs_hold_for_the_true_old_root_alone) {
  for (const std::size_t n : {1u, 2u, 3u, 5u, 8u, 13u, 32u, 65u, 99u}) {
    const auto leaves = leaves_of(n);
    const Digest root = merkle_root(leaves);
    for (std::size_t old = 1; old <= n; ++old) {
      const Digest old_root = merkle_root(std::span(leaves).first(old));
      auto proof = consistency_proof(leaves, old);
      EXPECT_LE(proof.size(), 8u);
      EXPECT_TRUE(check_consistency(old, old_root, n, root, proof));
      EXPECT_FALSE(check_consistency(old, changed(old_root), n, root, proof));
      EXPECT_FALSE(check_consistency(old, old_root, n, changed(root), proof));
      EXPECT_FALSE(check_consistency(0, old_root, n, root, proof));
      if (!proof.empty()) {
        proof[0] = changed(proof[0]);
        EXPECT_FALSE(check_consistency(old, old_root, n, root, proof));
      }
    }
  }
}
