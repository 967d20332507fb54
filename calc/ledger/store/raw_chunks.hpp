#pragma once

#include <string>

#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

inline constexpr std::size_t raw_chunk_bytes = 1u << 20;

/// Digests (tree leaves) of a log's pieces of 1 MiB, uncompressed, and of the whole. Errors as
/// open_log_bytes.
RawChunksRow raw_chunks_of(const std::string& path);

/// Root of the tree over the pieces, hex.
std::string chunk_root(std::string_view digests);

struct RawLogCheck {
  bool found = false;
  Sentence problem;  ///< empty: it is the log that was read
};

/// Checks the raw log in a folder, found by its SHA-256 or the last part of its name, against its stored
/// digests. `digests` may be empty: then a damaged piece isn't named.
RawLogCheck check_raw_log(const std::string& folder, const std::string& name, const std::string& sha256,
                          std::string_view digests);

}  // namespace seamtakt
