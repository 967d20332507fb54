#include "cli/plan/plan_option.hpp"

#include <filesystem>
#include <future>
#include <optional>

#include "base/error.hpp"
#include "base/files/large_pages.hpp"
#include "base/json/json_node.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::cli {

LoadedPlan load(const std::string& path) {
  const std::string text = read_file(path, JsonLimits{}.bytes);
  // A plan and what follows from it take some ten times its text.
  constexpr std::size_t long_text = std::size_t{4} << 20;
  if (text.size() >= long_text) prefer_large_heap(10 * text.size());
  // Of a long file both take time, and neither needs the other. The digest stays on this thread: OpenSSL's
  // memory of a thread that outlives it is never freed.
  std::optional<JsonDocument> json;
  std::future<void> reading = std::async(std::launch::async, [&] { json.emplace(text, path); });
  Provenance provenance = provenance_of(path, text);
  reading.get();
  return {parse_plan(*json), std::move(provenance)};
}

void refuse_plan_that_is_read(const std::string& plan, const std::string& output, const char* option) {
  std::error_code ignored;
  if (std::filesystem::equivalent(plan, output, ignored))
    throw InputError(option, Sentence("cli.refusal.plan-that-is-read"_key, {{"file", printable(output)}}),
                     "another file"_word);
}

std::vector<const Weldment*> chosen_weldments(const Plan& plan, const std::string& id) {
  std::vector<const Weldment*> chosen;
  std::string known;
  for (const Weldment& weldment : plan.weldments) {
    if (id.empty() || weldment.id == id) chosen.push_back(&weldment);
    known += (known.empty() ? "" : ", ") + weldment.id;
  }
  if (chosen.empty() && !id.empty())
    throw InputError("--weldment", "\"" + printable(id) + "\"",
                     known.empty() ? Sentence("a plan with weldments"_word)
                                   : Sentence("cli.one-of"_key, {{"choices", known}}));
  return chosen;
}

}  // namespace seamtakt::cli
