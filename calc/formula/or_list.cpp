#include "formula/or_list.hpp"

#include "base/text/comma_list.hpp"

namespace seamtakt {

Sentence or_list(const std::vector<std::string>& names) {
  if (names.empty()) return {};
  if (names.size() == 1) return Sentence::verbatim(names.front());
  return Sentence("list.or"_key,
                  {{"names", comma_list({names.begin(), names.end() - 1})}, {"last", names.back()}});
}

}  // namespace seamtakt
