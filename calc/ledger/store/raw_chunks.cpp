#include "ledger/store/raw_chunks.hpp"

#include <algorithm>
#include <filesystem>

#include "base/error.hpp"
#include "base/files/byte_source.hpp"
#include "ledger/store/refusal_sentence.hpp"

namespace seamtakt {

RawChunksRow raw_chunks_of(const std::string& path) {
  const auto bytes = open_log_bytes(path);
  RawChunksRow row;
  Sha256 whole;
  std::string piece(raw_chunk_bytes, '\0');
  for (;;) {
    std::size_t size = 0;
    while (size < piece.size()) {
      const std::size_t got = bytes->read(piece.data() + size, piece.size() - size);
      if (got == 0) break;
      size += got;
    }
    if (size == 0) break;
    const std::string_view taken(piece.data(), size);
    whole.add(taken);
    row.digests += bytes_of(leaf_digest(taken));
    if (size < piece.size()) break;
  }
  row.sha256 = hex(whole.take());
  return row;
}

std::string chunk_root(std::string_view digests) {
  MerkleFrontier tree;
  for (std::size_t at = 0; at + sizeof(Digest) <= digests.size(); at += sizeof(Digest))
    tree.append(*digest_from_bytes(digests.substr(at, sizeof(Digest))));
  return hex(tree.root());
}

RawLogCheck check_raw_log(const std::string& folder, const std::string& name, const std::string& sha256,
                          std::string_view digests) {
  const std::filesystem::path base = folder;
  std::filesystem::path file = base / sha256;
  // The name is data of the record: only its last part is used, so that it can't lead out of the folder.
  if (!std::filesystem::is_regular_file(file)) file = base / std::filesystem::path(name).filename();
  RawLogCheck check;
  check.found = std::filesystem::is_regular_file(file);
  if (!check.found) return check;
  RawChunksRow now;
  try {
    now = raw_chunks_of(file.string());
  } catch (const InputError& error) {
    check.problem = Sentence("verify.raw-log.unreadable"_key, {{"why", refusal_sentence(error)}});
    return check;
  }
  if (now.sha256 == sha256) return check;
  std::vector<Argument> arguments = {{"log", printable(file.string(), 80)}};
  if (digests.empty()) {
    check.problem = Sentence("verify.raw-log.other"_key, std::move(arguments));
    return check;
  }
  const std::size_t common = std::min(digests.size(), now.digests.size());
  std::size_t at = 0;
  while (at < common && digests.substr(at, 32) == std::string_view(now.digests).substr(at, 32)) at += 32;
  arguments.emplace_back("piece", at / 32 + 1);
  check.problem = Sentence("verify.raw-log.differs"_key, std::move(arguments));
  return check;
}

}  // namespace seamtakt
