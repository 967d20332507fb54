#include "base/json/json_scanner.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstring>

#include "base/files/large_pages.hpp"
#include "base/json/json_scalars.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

enum class Byte : unsigned char { plain, quote, backslash, control, beyond_ascii };

constexpr std::array<Byte, 256> kinds_of_bytes() {
  std::array<Byte, 256> kinds{};
  for (std::size_t i = 0; i < kinds.size(); ++i)
    kinds[i] = i < 0x20 ? Byte::control : i < 0x80 ? Byte::plain : Byte::beyond_ascii;
  kinds['"'] = Byte::quote;
  kinds['\\'] = Byte::backslash;
  return kinds;
}
constexpr std::array<Byte, 256> byte_kinds = kinds_of_bytes();

Byte kind_of(char c) {
  return byte_kinds[static_cast<unsigned char>(c)];
}

}  // namespace

std::size_t JsonScanner::most_entries(std::size_t bytes, const JsonLimits& limits) {
  return bytes / 2 + std::min(limits.depth, bytes) + 8;
}

bool JsonScanner::run(std::future<JsonRun>* ahead, std::size_t ahead_begin) {
  ahead_ = ahead;
  if (ahead) watched_ = ahead_begin;
  if (source_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
  skip_blanks();
  if (!value()) return false;
  skip_blanks();
  return at_ == source_.size();
}

void JsonScanner::skip_blanks() {
  while (at_ < source_.size() &&
         (source_[at_] == ' ' || source_[at_] == '\n' || source_[at_] == '\t' || source_[at_] == '\r'))
    ++at_;
}

bool JsonScanner::take(char c) {
  if (at_ == source_.size() || source_[at_] != c) return false;
  ++at_;
  return true;
}

std::uint32_t JsonScanner::open() {
  text_.entries_[next_entry_].begin = static_cast<std::uint32_t>(at_);
  return next_entry_++;
}

void JsonScanner::close(std::uint32_t index, std::uint32_t flag) {
  text_.entries_[index].link = static_cast<std::uint32_t>(at_) | flag;
}

bool JsonScanner::value() {
  if (at_ == source_.size() || ++values_ > limits_.values) return false;
  switch (source_[at_]) {
    case '{':
      return object();
    case '[':
      return array();
    case '"':
      return string();
    case 't':
      return word("true");
    case 'f':
      return word("false");
    case 'n':
      return word("null");
    default:
      return number();
  }
}

bool JsonScanner::word(std::string_view expected) {
  const std::uint32_t index = open();
  if (source_.substr(at_, expected.size()) != expected) return false;
  at_ += expected.size();
  close(index);
  return true;
}

bool JsonScanner::go_down() {
  if (depth_++ >= limits_.depth) return false;
  deepest_ = std::max(deepest_, depth_);
  return true;
}

bool JsonScanner::array() {
  if (!go_down()) return false;
  const std::uint32_t index = open();
  std::size_t count = 0;
  ++at_;
  skip_blanks();
  if (!take(']') && !(elements(count) && take(']'))) return false;
  text_.entries_[index].link = next_entry_;
  --depth_;
  return true;
}

/// At least one element; stops before anything but a comma.
bool JsonScanner::elements(std::size_t& count) {
  for (;;) {
    if (at_ >= watched_ && take_run(count)) return true;
    if (++count > limits_.members || !value()) return false;
    skip_blanks();
    if (!take(',')) return true;
    skip_blanks();
  }
}

/// Adopts the run that was scanned ahead and continues after it, if it begins exactly here and fits.
bool JsonScanner::take_run(std::size_t& count) {
  if (ahead_->valid()) {
    run_ = ahead_->get();
    watched_ = run_.elements > 0 ? run_.begin : std::string_view::npos;
  }
  if (at_ < watched_) return false;
  watched_ = std::string_view::npos;
  if (at_ != run_.begin || count + run_.elements > limits_.members ||
      values_ + run_.values > limits_.values || depth_ + run_.depth > limits_.depth)
    return false;
  text_.entries_[next_entry_] = {JsonDocument::elsewhere, run_.first};
  next_entry_ = run_.after;
  count += run_.elements;
  values_ += run_.values;
  at_ = run_.end;
  return true;
}

JsonRun JsonScanner::run_from(std::size_t begin) {
  JsonRun longest;
  at_ = begin;
  for (bool around = true; around;) {
    JsonRun run;
    run.begin = at_;
    run.first = next_entry_ = static_cast<std::uint32_t>(most_entries(at_, limits_));
    values_ = depth_ = deepest_ = 0;
    if (!elements(run.elements) || at_ == source_.size() || source_[at_] != ']') break;
    run.end = at_;
    run.after = next_entry_;
    run.values = values_;
    run.depth = deepest_;
    if (run.end - run.begin > longest.end - longest.begin) longest = run;
    around = leave_array();
  }
  return longest;
}

/// From an array's end to the next element of the array around the object that has it; false where there is
/// none.
bool JsonScanner::leave_array() {
  ++at_;
  for (skip_blanks(); take(','); skip_blanks()) {
    skip_blanks();
    if (!key()) return false;
    if (!value()) return false;
  }
  if (!take('}')) return false;
  skip_blanks();
  if (!take(',')) return false;
  skip_blanks();
  return true;
}

/// A key and its colon.
bool JsonScanner::key() {
  if (at_ == source_.size() || source_[at_] != '"' || !string()) return false;
  skip_blanks();
  if (!take(':')) return false;
  skip_blanks();
  return true;
}

bool JsonScanner::object() {
  if (!go_down()) return false;
  const std::uint32_t index = open();
  Keys keys;
  ++at_;
  skip_blanks();
  if (!take('}'))
    for (;;) {
      const std::uint32_t at = next_entry_;
      if (!key() || ++keys.count > limits_.members || !key_is_new(index, at, keys)) return false;
      if (!value()) return false;
      skip_blanks();
      if (take('}')) break;
      if (!take(',')) return false;
      skip_blanks();
    }
  text_.entries_[index].link = next_entry_;
  --depth_;
  return true;
}

std::string_view JsonScanner::raw_key(std::uint32_t index) const {
  const auto [begin, link] = text_.entries_[index];
  return source_.substr(begin, (link & ~JsonDocument::escapes) - begin);
}

template <class Visit>
void JsonScanner::each_earlier_key(std::uint32_t object_index, std::uint32_t key_index,
                                   const Visit& visit) const {
  for (std::uint32_t i = object_index + 1; i < key_index;) {
    visit(i);
    const auto [begin, link] = text_.entries_[i + 1];
    i = source_[begin] == '{' || source_[begin] == '[' ? link : i + 2;
  }
}

/// Where a key's bit isn't set, there is no need to compare.
bool JsonScanner::key_is_new(std::uint32_t object_index, std::uint32_t key_index, Keys& keys) const {
  constexpr std::size_t many = 64;
  const std::string_view key = raw_key(key_index);
  if (!keys.all && keys.count > many) {
    keys.all.emplace();
    each_earlier_key(object_index, key_index,
                     [&](std::uint32_t earlier) { keys.all->insert(unescaped_json(raw_key(earlier))); });
  }
  if (keys.all) return keys.all->insert(unescaped_json(key)).second;
  std::size_t hash = key.size() * 7;
  for (const std::size_t place : {key.size() / 4, key.size() / 2, key.size() - 2})
    hash = hash * 5 + static_cast<unsigned char>(key[place]);
  std::uint64_t& seen = keys.seen[hash / 64 % keys.seen.size()];
  const std::uint64_t bit = std::uint64_t{1} << (hash % 64);
  // An escaped key may be any other in disguise, and any later one may be it.
  const auto is_escaped = [&](std::uint32_t i) {
    return (text_.entries_[i].link & JsonDocument::escapes) != 0;
  };
  const bool escaped = is_escaped(key_index), compare = escaped || keys.any_escaped || (seen & bit) != 0;
  keys.any_escaped |= escaped;
  seen |= bit;
  if (!compare) return true;
  bool is_new = true;
  each_earlier_key(object_index, key_index, [&](std::uint32_t i) {
    const std::string_view earlier = raw_key(i);
    if (earlier == key || ((escaped || is_escaped(i)) && unescaped_json(earlier) == unescaped_json(key)))
      is_new = false;
  });
  return is_new;
}

void JsonScanner::skip_plain() {
  if constexpr (std::endian::native == std::endian::little) {
    constexpr std::uint64_t each = 0x0101010101010101;
    for (std::uint64_t bytes; source_.size() - at_ >= sizeof bytes; at_ += sizeof bytes) {
      std::memcpy(&bytes, source_.data() + at_, sizeof bytes);
      // The highest bit of the first byte that isn't plain is set, and of none before it.
      const std::uint64_t others =
          ((bytes - each * 0x20) | ((bytes ^ each * '"') - each) | ((bytes ^ each * '\\') - each) | bytes) &
          each * 0x80;
      if (others == 0) continue;
      at_ += static_cast<std::size_t>(std::countr_zero(others)) / 8;
      return;
    }
  }
  while (at_ < source_.size() && kind_of(source_[at_]) == Byte::plain) ++at_;
}

bool JsonScanner::string() {
  const std::uint32_t index = open();
  bool escaped = false;
  for (++at_;;) {
    skip_plain();
    if (at_ == source_.size()) return false;
    const Byte kind = kind_of(source_[at_]);
    if (kind == Byte::quote) break;
    if (kind == Byte::control) return false;
    if (kind == Byte::backslash) {
      escaped = true;
      if (!escape()) return false;
      continue;
    }
    const std::size_t bytes = utf8_character(source_, at_).bytes;
    if (bytes == 0) return false;
    at_ += bytes;
  }
  ++at_;
  close(index, escaped ? JsonDocument::escapes : 0);
  const std::size_t begin = text_.entries_[index].begin;
  if (at_ - begin - 2 <= limits_.string_bytes) return true;
  return escaped && unescaped_json(source_.substr(begin, at_ - begin)).size() <= limits_.string_bytes;
}

bool JsonScanner::code_unit(unsigned& unit) {
  unit = 0;
  for (std::size_t i = 0; i < 4; ++i, ++at_) {
    const unsigned digit = at_ < source_.size() ? json_hex_digit(source_[at_]) : 16;
    if (digit > 15) return false;
    unit = unit * 16 + digit;
  }
  return true;
}

bool JsonScanner::escape() {
  ++at_;
  if (at_ == source_.size()) return false;
  const char c = source_[at_++];
  if (c != 'u') return std::string_view("\"\\/bfnrt").find(c) != std::string_view::npos;
  unsigned unit = 0, low = 0;
  if (!code_unit(unit) || unit == 0 || is_low_surrogate(unit)) return false;
  return !is_high_surrogate(unit) || (take('\\') && take('u') && code_unit(low) && is_low_surrogate(low));
}

bool JsonScanner::digits() {
  const std::size_t begin = at_;
  while (at_ < source_.size() && is_digit(source_[at_])) ++at_;
  return at_ > begin;
}

bool JsonScanner::number() {
  const std::uint32_t index = open();
  const std::size_t begin = at_;
  take('-');
  if (!take('0') && !digits()) return false;
  if (take('.') && !digits()) return false;
  bool may_overflow = at_ - begin > 300;
  if (take('e') || take('E')) {
    may_overflow = true;
    if (!take('+')) take('-');
    if (!digits()) return false;
  }
  close(index);
  return !may_overflow || std::isfinite(json_number(source_.substr(begin, at_ - begin)));
}

namespace {

/// A place in the second half of a text where an object seems to follow another in an array; npos where
/// there is no such place. It may be within a string, too.
std::size_t likely_element(std::string_view text) {
  constexpr std::string_view blanks = " \n\t\r";
  for (std::size_t at = text.find('{', text.size() / 2); at != std::string_view::npos;
       at = text.find('{', at + 1)) {
    const std::size_t comma = text.find_last_not_of(blanks, at - 1);
    if (at == 0 || comma == std::string_view::npos || comma == 0 || text[comma] != ',') continue;
    const std::size_t before = text.find_last_not_of(blanks, comma - 1);
    if (before != std::string_view::npos && text[before] == '}') return at;
  }
  return std::string_view::npos;
}

}  // namespace

bool JsonDocument::look_through(const JsonLimits& limits, std::size_t two_threads_from) {
  if (text_.size() > limits.bytes || text_.size() >= escapes) return false;
  const std::size_t room = 2 * JsonScanner::most_entries(text_.size(), limits) - text_.size() / 2;
  entries_ = std::make_unique_for_overwrite<Entry[]>(room);
  prefer_large_pages(entries_.get(), room * sizeof(Entry));
  const std::size_t likely = text_.size() < two_threads_from ? std::string_view::npos : likely_element(text_);
  if (likely == std::string_view::npos) return JsonScanner(*this, limits).run(nullptr, 0);
  std::future<JsonRun> ahead =
      std::async(std::launch::async, [&] { return JsonScanner(*this, limits).run_from(likely); });
  return JsonScanner(*this, limits).run(&ahead, likely);
}

}  // namespace seamtakt
