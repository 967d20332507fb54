#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace seamtakt {

/// The header in cutdisk's log before the bytes of each event.
struct CutEventHead {
  char kind = 0;  ///< 'w': bytes were written, 'f': the disk was flushed, 'a': a text was acknowledged
  std::uint64_t offset = 0, size = 0;
};

struct CutEvent {
  char kind = 0;
  std::uint64_t offset = 0;
  std::string bytes;
};

/// The events of a log, in order. std::runtime_error where it is cut short.
std::vector<CutEvent> read_cut_log(const std::string& path);

/// A disk as a power cut may leave it.
struct CutState {
  std::string image;
  std::string acknowledged;  ///< all that had been acknowledged when the power went
  std::string what;          ///< "after event 17 of 90, a torn half of 5 unflushed writes"
};

/// Calls `visit` with `count` states that a disk, at first `image`, may be in after its power went at a
/// random event: all writes before the last flush, and none, all, a random half, or a half torn into sectors
/// of 512 bytes, of those after it. Block 0, the superblock's, isn't torn: ext4 counts on that. Same seed,
/// same states.
void each_cut_state(std::string image, const std::vector<CutEvent>& events, int count, unsigned seed,
                    const std::function<void(const CutState&)>& visit);

}  // namespace seamtakt
