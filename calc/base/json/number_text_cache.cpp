#include "base/json/number_text_cache.hpp"

#include <stdexcept>

#include "base/json/json_writer.hpp"

namespace seamtakt {

void NumberTextCache::fill(Entry& entry, double number) {
  std::string text;
  append_json_value(text, number);
  if (text.size() > most_bytes) throw std::logic_error("JSON: a number whose text is too long");
  entry.bits = std::bit_cast<std::uint64_t>(number);
  entry.length = static_cast<std::uint8_t>(text.size());
  std::memcpy(entry.text, text.data(), text.size());
}

}  // namespace seamtakt
