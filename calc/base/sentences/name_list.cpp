#include "base/sentences/name_list.hpp"

#include <string>

namespace seamtakt {

namespace {

Sentence name_list(SentenceKey key, std::span<const std::string_view> names) {
  if (names.empty()) return Sentence::verbatim("");
  if (names.size() == 1) return Sentence::verbatim(std::string(names.front()));
  std::string first(names.front());
  for (const std::string_view name : names.subspan(1, names.size() - 2)) first.append(", ").append(name);
  return Sentence(key, {{"first", std::move(first)}, {"last", names.back()}});
}

}  // namespace

Sentence all_of_names(std::span<const std::string_view> names) {
  return name_list("names.and"_key, names);
}

Sentence one_of_names(std::span<const std::string_view> names) {
  return name_list("names.or"_key, names);
}

}  // namespace seamtakt
