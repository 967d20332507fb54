#include "base/number_memory.hpp"

#include <bit>
#include <cstring>

#include "base/json_writer.hpp"

namespace seamtakt {

void NumberMemory::append(std::string& out, double number) {
  const auto bits = std::bit_cast<std::uint64_t>(number);
  Entry& entry = entries_[(bits * 0x9e3779b97f4a7c15u) >> (64 - index_bits)];
  if (entry.length > 0 && entry.bits == bits) {
    out.append(entry.text, entry.length);
    return;
  }
  const std::size_t before = out.size();
  append_json_value(out, number);
  const std::size_t length = out.size() - before;
  if (length > sizeof entry.text) return;
  entry.bits = bits;
  entry.length = static_cast<std::uint8_t>(length);
  std::memcpy(entry.text, out.data() + before, length);
}

}  // namespace seamtakt
