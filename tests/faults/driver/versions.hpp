#pragma once

#include <cstdint>
#include <string>

namespace seamtakt {

/// Content number `version` of a file that is saved again and again: its length differs from its neighbours',
/// and any cut, mixture or foreign byte shows, since every byte follows from the number.
inline std::string version_text(unsigned version, std::size_t base_size) {
  std::string text = "version " + std::to_string(version) + "\n";
  std::uint32_t state = version * 2654435761u + 1;
  const std::size_t size = base_size + version % 7 * 1000;
  text.reserve(size + 64);
  while (text.size() < size) {
    state = state * 1664525u + 1013904223u;
    text += static_cast<char>('a' + (state >> 24) % 26);
  }
  return text.append("\nend ").append(std::to_string(version)).append("\n");
}

/// The version that `text` is whole; 0 where it is none.
inline unsigned whole_version(const std::string& text, std::size_t base_size) {
  unsigned version = 0;
  for (std::size_t at = 8; at < text.size() && text[at] >= '0' && text[at] <= '9' && version < 100000000;
       ++at) {
    version = version * 10 + static_cast<unsigned>(text[at] - '0');
  }
  return version > 0 && text == version_text(version, base_size) ? version : 0;
}

}  // namespace seamtakt
