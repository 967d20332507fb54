// Anchors as people keep them: typed, printed, copied from a page.
#include <algorithm>
#include <charconv>

#include "base/error.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/tree/signed_head.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t store_digits = 32, digest_digits = 64, signature_digits = 128, utc_characters = 20;
constexpr std::size_t group_digits = 4;
constexpr Word expected_anchor = "an anchor: store n root utc key-id signature"_word;

/// The parts of an anchor, in their order in the text.
struct Part {
  enum class Kind { hex, count, time } kind;
  std::size_t characters;
  Word name;
};
constexpr Part parts[] = {{Part::Kind::hex, store_digits, "the store's id"_word},
                          {Part::Kind::count, 0, "the count of records"_word},
                          {Part::Kind::hex, digest_digits, "the root"_word},
                          {Part::Kind::time, utc_characters, "the time"_word},
                          {Part::Kind::hex, digest_digits, "the key's id"_word},
                          {Part::Kind::hex, signature_digits, "the signature"_word}};

struct AnchorWord {
  std::string text;
  std::size_t line = 0;
};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// In small letters; a ligature of two f, as older pages were set, is two f; a blank that doesn't break is
/// one.
std::string plain(std::string_view line) {
  std::string text;
  for (std::size_t at = 0; at < line.size();) {
    const std::string_view rest = line.substr(at);
    if (rest.starts_with("\xEF\xAC\x80")) {
      text += "ff";
      at += 3;
    } else if (rest.starts_with("\xC2\xA0") || rest.starts_with("\xE2\x80\xAF")) {
      text += ' ';
      at += rest[0] == '\xC2' ? 2 : 3;
    } else {
      text += lower(line[at++]);
    }
  }
  return text;
}

std::vector<AnchorWord> words_of(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\f\v";
  std::vector<AnchorWord> words;
  std::size_t number = 0;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string line = plain(text.substr(at, end - at));
    at = end + 1;
    ++number;
    for (std::size_t from = line.find_first_not_of(blanks); from != std::string::npos;) {
      const std::size_t to = std::min(line.find_first_of(blanks, from), line.size());
      if (line[from] == '#' && from == line.find_first_not_of(blanks)) break;
      words.push_back({line.substr(from, to - from), number});
      from = line.find_first_not_of(blanks, to);
    }
  }
  return words;
}

class AnchorReader {
 public:
  AnchorReader(std::vector<AnchorWord> words, const std::string& file)
      : words_(std::move(words)), file_(file) {}

  std::vector<Anchor> read() {
    std::vector<Anchor> anchors;
    while (at_ < words_.size()) {
      if (words_[at_].text == "anchor" || words_[at_].text == "anchor:") {
        if (++at_ == words_.size()) refuse("it ends after that word"_word);
      }
      anchors.push_back(one());
    }
    return anchors;
  }

 private:
  Anchor one() {
    Anchor anchor;
    anchor.where = place();
    std::string texts[std::size(parts)];
    for (std::size_t i = 0; i < std::size(parts); ++i) texts[i] = part(parts[i]);
    anchor.store = texts[0];
    std::from_chars(texts[1].data(), texts[1].data() + texts[1].size(), anchor.n);
    anchor.root = *digest_from_hex(texts[2]);
    anchor.utc = texts[3];
    anchor.key_id = texts[4];
    anchor.signature = *bytes_from_hex(texts[5]);
    return anchor;
  }

  std::string part(const Part& part) {
    if (part.kind == Part::Kind::count) return count(part);
    std::string text;
    while (text.size() < part.characters) {
      const Sentence counted(part.kind == Part::Kind::hex ? "anchor.digits"_key : "anchor.characters"_key,
                             {{"read", text.size()}, {"all", part.characters}});
      if (at_ == words_.size())
        refuse(Sentence("anchor.ends-within"_key, {{"part", part.name}, {"after", counted}}));
      const std::string& word = words_[at_].text;
      const bool fits = text.size() + word.size() <= part.characters &&
                        (part.kind == Part::Kind::time || std::all_of(word.begin(), word.end(), [](char c) {
                           return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
                         }));
      if (!fits)
        refuse(Sentence("anchor.word-in"_key,
                        {{"word", printable(word, 40)}, {"part", part.name}, {"after", counted}}));
      text += word;
      ++at_;
    }
    if (part.kind == Part::Kind::hex) return text;
    for (char& c : text) c = c == 't' ? 'T' : c == 'z' ? 'Z' : c;
    if (!utc_seconds(text)) refuse_word(Sentence("anchor.no-time"_key, {{"word", printable(text, 40)}}));
    return text;
  }

  std::string count(const Part& part) {
    if (at_ == words_.size()) refuse(Sentence("anchor.ends-before"_key, {{"part", part.name}}));
    const std::string& word = words_[at_].text;
    std::uint64_t n = 0;
    const auto read = std::from_chars(word.data(), word.data() + word.size(), n);
    if (read.ec != std::errc() || read.ptr != word.data() + word.size() || n == 0)
      refuse(Sentence("anchor.word-for"_key, {{"word", printable(word, 40)}, {"part", part.name}}));
    ++at_;
    return word;
  }

  std::string place() const {
    const std::size_t line = words_[std::min(at_, words_.size() - 1)].line;
    return printable(file_) + ":" + std::to_string(line);
  }
  [[noreturn]] void refuse(Sentence why) const {
    throw InputError(place(), Sentence("anchor.not-one"_key, {{"why", std::move(why)}}), expected_anchor);
  }
  /// Of the word before.
  [[noreturn]] void refuse_word(Sentence why) {
    --at_;
    refuse(std::move(why));
  }

  std::vector<AnchorWord> words_;
  std::string file_;
  std::size_t at_ = 0;
};

bool is_hex_part(std::size_t index) {
  return parts[index].kind == Part::Kind::hex;
}

std::string in_groups(std::string_view digits) {
  std::string text;
  for (std::size_t at = 0; at < digits.size(); at += group_digits)
    text += (at > 0 ? " " : "") + std::string(digits.substr(at, group_digits));
  return text;
}

}  // namespace

std::vector<Anchor> parse_any_anchors(std::string_view text, const std::string& file) {
  return AnchorReader(words_of(text), file).read();
}

std::vector<Anchor> parse_anchors(std::string_view text, const std::string& file) {
  std::vector<Anchor> anchors = parse_any_anchors(text, file);
  if (anchors.empty()) throw InputError(printable(file), "no anchor"_word, expected_anchor);
  return anchors;
}

std::vector<std::string> anchor_groups(const std::string& anchor_line) {
  std::vector<std::string> lines;
  std::size_t index = 0;
  for (const AnchorWord& word : words_of(anchor_line)) {
    std::string text = word.text;
    for (char& c : text) c = !is_hex_part(index) ? (c == 't' ? 'T' : c == 'z' ? 'Z' : c) : c;
    if (is_hex_part(index)) text = in_groups(text);
    if (index == 1)
      lines.back() += "  " + text;
    else
      lines.push_back(text);
    ++index;
  }
  return lines;
}

}  // namespace seamtakt
