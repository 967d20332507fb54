#pragma once

#include <random>
#include <string>

namespace seamtakt::test {

/// Changes stores, bundles and anchors at random, as carelessness, damage and malice would: bytes, values of
/// every table, texts that are odd, views and triggers, lines. The same seed makes the same changes.
class Mutations {
 public:
  explicit Mutations(std::uint64_t seed) : random_(seed) {}

  /// Changes an SQLite file in place; says how. "bytes: ..." where the file was changed and not its tables.
  std::string change_store(const std::string& file);
  /// A bundle's text with some of its lines or bytes changed.
  std::string changed_bundle(std::string text);
  /// An anchor line as somebody may have typed or copied it: no more than eight of its characters are wrong.
  std::string changed_anchor(std::string line);

 private:
  std::size_t below(std::size_t end) { return random_() % end; }
  bool one_in(std::size_t count) { return below(count) == 0; }
  std::string odd_text();
  void flip_bit(std::string& bytes);
  std::string change_body(const std::string& file);
  std::string change_value(const std::string& file);
  std::string remove_row(const std::string& file);
  std::string add_row(const std::string& file);
  std::string change_schema(const std::string& file);
  std::string change_bytes(const std::string& file);

  std::mt19937_64 random_;
};

}  // namespace seamtakt::test
