#include <algorithm>
#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>

#include "base/error.hpp"
#include "base/json/json_fault.hpp"
#include "base/json/json_node.hpp"
#include "base/json/json_scalars.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

struct Place {
  std::uint32_t line = 1, column = 1;
  std::size_t byte = 0;
};

/// Finds lines and columns. Places are requested in rising order except for errors, so each byte is read
/// about once.
class PlaceFinder {
 public:
  explicit PlaceFinder(std::string_view text) : text_(text) {
    if (text.starts_with(byte_order_mark)) start_.byte = byte_order_mark.size();
    now_ = start_;
  }

  Place at(std::size_t byte) {
    if (byte < now_.byte) now_ = start_;
    for (; now_.byte < byte; ++now_.byte) {
      const char c = text_[now_.byte];
      if (c == '\n') {
        ++now_.line;
        now_.column = 1;
      } else {
        now_.column += begins_utf8_character(c);
      }
    }
    return now_;
  }

 private:
  std::string_view text_;
  Place start_, now_;
};

/// Hands the text's bytes to the parser and tells how many it has taken.
class CountedBytes {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountedBytes(const char* at, const char** taken) : at_(at), taken_(taken) {}
  reference operator*() const { return *at_; }
  CountedBytes& operator++() {
    *taken_ = ++at_;
    return *this;
  }
  CountedBytes operator++(int) {
    CountedBytes before = *this;
    ++*this;
    return before;
  }
  bool operator==(const CountedBytes& other) const { return at_ == other.at_; }
  bool operator!=(const CountedBytes& other) const { return at_ != other.at_; }

 private:
  const char* at_;
  const char** taken_;
};

/// Characters allowed between two values or keys.
bool is_between(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == ',' || c == ':' || c == ']' || c == '}';
}

std::string escaped_pointer_part(std::string_view key) {
  std::string part;
  for (char c : key) part += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return part;
}

/// Builds the tree from the parser's events and refuses what the limits and the format forbid.
class TreeBuilder {
 public:
  using Dom = nlohmann::json;

  TreeBuilder(std::string_view text, std::string file, const JsonLimits& limits)
      : text_(text), file_(std::move(file)), limits_(limits), places_(text), taken_(text.data()) {
    if (text.starts_with(byte_order_mark)) after_last_ = byte_order_mark.size();
  }

  CountedBytes begin() { return {text_.data(), &taken_}; }
  CountedBytes end() { return {text_.data() + text_.size(), &taken_}; }

  bool null() {
    add(JsonNode::Kind::null);
    return true;
  }
  bool boolean(bool value) {
    add(JsonNode::Kind::boolean)->boolean = value;
    return true;
  }
  bool number_integer(Dom::number_integer_t value) { return number(static_cast<double>(value), true); }
  bool number_unsigned(Dom::number_unsigned_t value) { return number(static_cast<double>(value), true); }
  bool number_float(Dom::number_float_t value, const std::string& text) {
    return number(value, text.find_first_of(".eE") == std::string::npos);
  }
  bool string(std::string& value) {
    JsonNode* node = add(JsonNode::Kind::string);
    check_string(value);
    node->string = std::move(value);
    return true;
  }
  bool binary(Dom::binary_t&) { return false; }
  bool start_object(std::size_t) { return open(JsonNode::Kind::object); }
  bool start_array(std::size_t) { return open(JsonNode::Kind::array); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& name) {
    find_token();
    check_string(name);
    Open& object = open_.back();
    if (!object.take(name))
      refuse(Sentence("json.key.twice"_key, {{"key", printable(name)}}), "each key once in an object"_word);
    if (object.node->members.size() >= limits_.members) refuse_count("json.members.too-many"_key);
    object.node->members.push_back({std::move(name), JsonNode()});
    return true;
  }
  /// The parser found text that isn't JSON.
  bool parse_error(std::size_t, const std::string& token, const Dom::exception& error);

  JsonNode& root() { return root_; }
  [[noreturn]] void refuse(Sentence found, Sentence expected) const {
    refuse_at(token_, std::move(found), std::move(expected));
  }

 private:
  /// An array or object that has begun and not yet ended. Its node stays where it is: its parent doesn't grow
  /// before it has ended.
  struct Open {
    JsonNode* node;
    std::set<std::string, std::less<>> keys;

    bool take(const std::string& name) {
      constexpr std::size_t few = 16;
      const auto& members = node->members;
      if (members.size() < few) return node->find(name) == nullptr;
      if (keys.empty()) {
        for (const auto& member : members) keys.insert(member.key);
      }
      return keys.insert(name).second;
    }
  };

  JsonNode* add(JsonNode::Kind kind);
  /// The parser reports only that it has consumed a value or key, and it may have consumed the byte after a
  /// number too. The value begins at the first byte after the previous one that isn't a separator.
  void find_token() {
    std::size_t byte = after_last_;
    while (byte < text_.size() && is_between(text_[byte])) ++byte;
    token_ = places_.at(byte);
    after_last_ = taken();
  }
  std::size_t taken() const { return static_cast<std::size_t>(taken_ - text_.data()); }
  bool number(double value, bool written_as_integer) {
    JsonNode* node = add(JsonNode::Kind::number);
    node->number = value;
    node->is_integer = written_as_integer && std::abs(value) <= largest_exact_integer;
    return true;
  }
  bool open(JsonNode::Kind kind) {
    JsonNode* node = add(kind);
    if (open_.size() >= limits_.depth) {
      refuse(Sentence("json.nesting.too-deep"_key, {{"depth", limits_.depth}}),
             "fewer arrays and objects in one another"_word);
    }
    open_.push_back({node, {}});
    return true;
  }
  bool close() {
    open_.pop_back();
    return true;
  }
  void check_string(const std::string& text) const {
    if (text.size() > limits_.string_bytes) {
      refuse(Sentence("json.string.size"_key, {{"bytes", text.size()}}),
             Sentence("refusal.at-most"_key, {{"count", limits_.string_bytes}}));
    }
    if (text.find('\0') != std::string::npos)
      refuse("the character NUL in a string"_word, "text without NUL"_word);
  }
  [[noreturn]] void refuse_count(SentenceKey key) const {
    refuse(Sentence(key, {{"count", limits_.members}}), "fewer"_word);
  }
  [[noreturn]] void refuse_at(Place place, Sentence found, Sentence expected) const {
    throw InputError(printable(file_) + ":" + std::to_string(place.line) + ":" + std::to_string(place.column),
                     std::move(found), std::move(expected), pointer());
  }
  std::string pointer() const {
    std::string text;
    for (const Open& level : open_) {
      const JsonNode& node = *level.node;
      if (node.kind == JsonNode::Kind::object && !node.members.empty()) {
        text += "/" + printable(escaped_pointer_part(node.members.back().key));
      } else if (node.kind == JsonNode::Kind::array && !node.elements.empty()) {
        text += "/" + std::to_string(node.elements.size() - 1);
      }
    }
    return text;
  }

  std::string_view text_;
  std::string file_;
  const JsonLimits& limits_;
  PlaceFinder places_;
  const char* taken_;           ///< the parser has read up to here
  std::size_t after_last_ = 0;  ///< and had read up to here at the value before
  Place token_;                 ///< begin of the present value or key
  JsonNode root_;
  std::vector<Open> open_;
  std::size_t values_ = 0;
};

JsonNode* TreeBuilder::add(JsonNode::Kind kind) {
  find_token();
  if (++values_ > limits_.values)
    refuse(Sentence("json.values.too-many"_key, {{"count", limits_.values}}), "fewer"_word);
  JsonNode* node = &root_;
  if (!open_.empty()) {
    JsonNode& parent = *open_.back().node;
    if (parent.kind == JsonNode::Kind::object) {
      node = &parent.members.back().value;
    } else {
      if (parent.elements.size() >= limits_.members) refuse_count("json.elements.too-many"_key);
      node = &parent.elements.emplace_back();
    }
  }
  node->kind = kind;
  node->line = token_.line;
  node->column = token_.column;
  return node;
}

bool TreeBuilder::parse_error(std::size_t, const std::string&, const Dom::exception& error) {
  constexpr int number_out_of_range = 406;
  if (error.id == number_out_of_range) {
    find_token();
    refuse(Sentence("json.number"_key, {{"number", json_piece(text_, token_.byte)}}), "a finite number"_word);
  }
  JsonFault fault = find_json_fault(text_);
  refuse_at(places_.at(fault.byte), std::move(fault.found), std::move(fault.expected));
}

void check_bytes(std::string_view text, const std::string& file, const JsonLimits& limits) {
  const std::string name = printable(file);
  if (text.size() > limits.bytes) {
    throw InputError(name, Sentence("json.bytes.too-many"_key, {{"bytes", limits.bytes}}),
                     "a smaller file"_word);
  }
  const std::size_t nul = text.find('\0');
  if (nul == std::string_view::npos) return;
  // The parser takes NUL for the end of the text, so it is looked for here.
  const Place place = PlaceFinder(text).at(nul);
  throw InputError(name + ":" + std::to_string(place.line) + ":" + std::to_string(place.column),
                   "the byte NUL"_word, "JSON text in UTF-8"_word);
}

}  // namespace

JsonNode parse_json(std::string_view text, const std::string& file, const JsonLimits& limits) {
  check_bytes(text, file, limits);
  TreeBuilder builder(text, file, limits);
  if (!nlohmann::json::sax_parse(builder.begin(), builder.end(), &builder)) {
    builder.refuse("text that isn't JSON"_word, "JSON"_word);
  }
  return std::move(builder.root());
}

}  // namespace seamtakt
