#include "records/ledger/signed_head.hpp"

#include <charconv>

#include "base/error.hpp"

namespace seamtakt {

std::string SignedHead::text() const {
  return "seamtakt-log/1\n" + store + "\n" + std::to_string(n) + "\n" + hex(root) + "\n" + utc + "\n" +
         previous + "\n" + key_id + "\n";
}

std::string SignedHead::text_sha256() const {
  return hex(Sha256().add(text()).take());
}

std::string SignedHead::anchor_line() const {
  return store + " " + std::to_string(n) + " " + hex(root) + " " + utc + " " + key_id + " " + hex(signature);
}

void SignedHead::sign(const SigningKey& key) {
  key_id = key.public_key().id();
  signature = key.sign(text());
}

namespace {

std::vector<std::string> words_of(std::string_view line) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t begin = line.find_first_not_of(" \t\r", at);
    if (begin == std::string_view::npos) break;
    const std::size_t end = std::min(line.find_first_of(" \t\r", begin), line.size());
    words.emplace_back(line.substr(begin, end - begin));
    at = end;
  }
  return words;
}

Anchor parse_anchor(const std::vector<std::string>& words, std::string_view line, const std::string& where) {
  const auto refuse = [&] {
    throw InputError(where, "\"" + printable(line, 60) + "\"",
                     "an anchor: store n root utc key-id signature");
  };
  Anchor anchor;
  anchor.where = where;
  if (words.size() != 6) refuse();
  const auto root = digest_from_hex(words[2]);
  const auto signature = bytes_from_hex(words[5]);
  const char* end = words[1].data() + words[1].size();
  const auto read = std::from_chars(words[1].data(), end, anchor.n);
  if (words[0].size() != 32 || !bytes_from_hex(words[0]) || !root || read.ec != std::errc() ||
      read.ptr != end || anchor.n == 0 || !digest_from_hex(words[4]) || !signature || signature->size() != 64)
    refuse();
  anchor.store = words[0];
  anchor.root = *root;
  anchor.utc = words[3];
  anchor.key_id = words[4];
  anchor.signature = *signature;
  return anchor;
}

}  // namespace

std::vector<Anchor> parse_anchors(std::string_view text, const std::string& file) {
  std::vector<Anchor> anchors;
  std::size_t number = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string_view line = text.substr(at, end - at);
    at = end + 1;
    ++number;
    const auto words = words_of(line);
    if (words.empty() || words[0].starts_with('#')) continue;
    anchors.push_back(parse_anchor(words, line, printable(file) + ":" + std::to_string(number)));
  }
  if (anchors.empty())
    throw InputError(printable(file), "no anchor", "lines of store n root utc key-id signature");
  return anchors;
}

}  // namespace seamtakt
