#include "base/sentences/language.hpp"

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <mutex>
#include <stdexcept>

#include "base/error.hpp"
#include "base/files/catalogue.hpp"
#include "base/json/json_document.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view folder = "languages/", ending = ".json";

SentenceForm::Part hole(std::string_view text, const std::string& where) {
  using Kind = SentenceForm::Part::Kind;
  const std::size_t bar = text.find('|');
  if (bar != std::string_view::npos) {
    const std::size_t second = text.find('|', bar + 1);
    if (second == std::string_view::npos)
      throw InputError(where, "\"{" + std::string(text) + "}\"", "a hole {count|one|many}");
    return {Kind::plural, std::string(text.substr(0, bar)),
            std::string(text.substr(bar + 1, second - bar - 1)), std::string(text.substr(second + 1))};
  }
  constexpr std::pair<std::string_view, Kind> endings[] = {
      {":number", Kind::number}, {":unit", Kind::unit}, {":list", Kind::list}, {":passage", Kind::passage}};
  for (const auto& [end, kind] : endings)
    if (text.ends_with(end)) return {kind, std::string(text.substr(0, text.size() - end.size())), "", ""};
  if (text.empty()) throw InputError(where, "\"{}\"", "a hole with a name");
  return {Kind::value, std::string(text), "", ""};
}

std::string text_of(const JsonValue& value, const std::string& where) {
  if (!value.is(JsonNode::Kind::string)) throw InputError(where, "no text", "a text");
  return value.string();
}

template <class Take>
void each_text(const JsonValue& root, const char* list, const std::string& file, const Take& take) {
  const auto texts = root.member(list);
  if (!texts || !texts->is(JsonNode::Kind::object))
    throw InputError(file, "nothing", "an object of texts", std::string("/") + list);
  texts->each_member([&](std::string_view key, const JsonValue& value) {
    const std::string where = file + ": " + std::string(key);
    take(std::string(key), text_of(value, where), where);
  });
}

std::string name_of_language(const std::string& code) {
  return std::string(folder) + code + std::string(ending);
}

std::string file_of_language(const std::string& code) {
  return "reference/" + name_of_language(code);
}

std::optional<std::string> built_in_text(const std::string& code) {
  const std::string name = name_of_language(code);
  for (const detail::EmbeddedFile& file : detail::embedded_files())
    if (file.name == name) return std::string(file.text);
  return std::nullopt;
}

std::optional<std::string> text_of_language(const std::string& code) {
  const std::string name = name_of_language(code);
  const char* own = std::getenv("SEAMTAKT_REFERENCE");
  std::error_code error;
  if (own && *own && std::filesystem::is_regular_file(std::string(own) + "/" + name, error))
    return reference_file(name).text;
  return built_in_text(code);
}

bool is_code(std::string_view text) {
  return text.size() == 2 &&
         std::all_of(text.begin(), text.end(), [](char c) { return 'a' <= c && c <= 'z'; });
}

void add_code(std::vector<std::string>& codes, std::string_view file) {
  if (!file.ends_with(ending)) return;
  file.remove_suffix(ending.size());
  if (is_code(file)) codes.emplace_back(file);
}

}  // namespace

SentenceForm SentenceForm::parsed(std::string_view text, const std::string& where) {
  SentenceForm form;
  while (!text.empty()) {
    const std::size_t open = std::min(text.find('{'), text.size());
    if (open > 0) form.parts.push_back({Part::Kind::text, std::string(text.substr(0, open)), "", ""});
    text.remove_prefix(open);
    if (text.empty()) break;
    const std::size_t close = text.find('}');
    if (close == std::string_view::npos)
      throw InputError(where, "\"" + printable(text) + "\"", "a hole that ends with }");
    form.parts.push_back(hole(text.substr(1, close - 1), where));
    text.remove_prefix(close + 1);
  }
  return form;
}

Language::Language(std::string code, std::string_view json, const std::string& file)
    : code_(std::move(code)) {
  const JsonDocument document(json, file);
  const JsonValue root = document.root();
  const auto name = root.member("name");
  if (!name) throw InputError(file, "nothing", "the language's name", "/name");
  name_ = text_of(*name, file);
  each_text(root, "sentences", file, [&](std::string key, const std::string& text, const std::string& where) {
    sentences_.emplace(std::move(key), SentenceForm::parsed(text, where));
  });
  each_text(root, "words", file, [&](std::string english_text, std::string text, const std::string&) {
    words_.emplace(std::move(english_text), std::move(text));
  });
}

const SentenceForm* Language::sentence(std::string_view key) const {
  const auto found = sentences_.find(key);
  return found == sentences_.end() ? nullptr : &found->second;
}

std::string_view Language::word(std::string_view english_text) const {
  const auto found = words_.find(english_text);
  return found == words_.end() ? english_text : std::string_view(found->second);
}

std::optional<std::string_view> Language::known_word(std::string_view english_text) const {
  const auto found = words_.find(english_text);
  if (found == words_.end()) return std::nullopt;
  return found->first;
}

std::vector<std::string_view> Language::sentence_keys() const {
  std::vector<std::string_view> keys;
  for (const auto& [key, form] : sentences_) keys.push_back(key);
  std::sort(keys.begin(), keys.end());
  return keys;
}

std::vector<std::string_view> Language::english_words() const {
  std::vector<std::string_view> texts;
  for (const auto& [english_text, text] : words_) texts.push_back(english_text);
  return texts;
}

namespace {

/// True while this thread reads the table of English sentences. An error in it can't be reported by it.
thread_local bool reads_english = false;
/// It was refused once: later messages, above all that refusal, use the program's own English.
std::atomic<bool> is_refused = false;

std::unique_ptr<const Language> read_language(const std::string& code) {
  const auto text = text_of_language(code);
  if (!text) return nullptr;
  return std::make_unique<const Language>(code, *text, file_of_language(code));
}

const Language* find_english() {
  struct Reading {
    Reading() { reads_english = true; }
    ~Reading() { reads_english = false; }
  } reading;
  static const std::unique_ptr<const Language> language = [] {
    try {
      return read_language("en");
    } catch (...) {
      is_refused = true;
      throw;
    }
  }();
  return language.get();
}

}  // namespace

const Language* find_language(std::string_view code) {
  if (code == "en") return find_english();
  if (!is_code(code)) return nullptr;
  english();  // errors in another table are reported in English, which is read before the lock is held
  static std::mutex mutex;
  static std::map<std::string, std::unique_ptr<const Language>, std::less<>> languages;
  const std::lock_guard lock(mutex);
  const auto known = languages.find(code);
  if (known != languages.end()) return known->second.get();
  auto language = read_language(std::string(code));
  if (!language) return nullptr;
  return languages.emplace(code, std::move(language)).first->second.get();
}

const Language& built_in_english() {
  static const Language language = [] {
    const auto text = built_in_text("en");
    if (!text) throw std::logic_error("no English in the program");
    return Language("en", *text, file_of_language("en"));
  }();
  return language;
}

const Language& english() {
  const Language* found = reads_english || is_refused ? nullptr : find_english();
  return found ? *found : built_in_english();
}

std::vector<std::string> language_codes() {
  std::vector<std::string> codes;
  for (const detail::EmbeddedFile& file : detail::embedded_files())
    if (file.name.starts_with(folder)) add_code(codes, file.name.substr(folder.size()));
  const char* own = std::getenv("SEAMTAKT_REFERENCE");
  std::error_code error;
  if (own && *own)
    for (const auto& entry : std::filesystem::directory_iterator(std::string(own) + "/languages", error))
      add_code(codes, entry.path().filename().string());
  std::sort(codes.begin(), codes.end());
  codes.erase(std::unique(codes.begin(), codes.end()), codes.end());
  return codes;
}

}  // namespace seamtakt
