// JSON: its two readers accept and refuse the same, and a value has one canonical text.
#include <optional>
#include <string>
#include <vector>

#include "base/json/json_document.hpp"
#include "fuzz/fuzz_target.hpp"
#include "ledger/body/canonical_json.hpp"

namespace seamtakt::fuzz {

namespace {

constexpr const char* file = "fuzzed.json";

/// What JsonDocument refuses the text for; empty: it accepts it.
std::string quick_refusal(std::string_view text, std::size_t two_threads_from) {
  try {
    const JsonDocument document(text, file, {}, two_threads_from);
    return {};
  } catch (const InputError& refusal) {
    return refusal.what();
  }
}

void expect_canonical(std::string_view input, const JsonNode& tree) {
  const std::string text = canonical_json(tree);
  promise(canonical_json(parse_json(text, file)) == text, "canonical text is canonical");
  const bool is_object = tree.kind == JsonNode::Kind::object;
  std::vector<CanonicalMember> members;
  promise(scan_canonical_object(input, members) == (is_object && text == input),
          "only canonical text is taken for it");
  members.clear();
  promise(scan_canonical_object(text, members) == is_object, "canonical text of an object is known as such");
  promise(!is_object || members.size() == tree.members.size(), "it has the object's members");
}

}  // namespace

bool take_json(std::string_view input) {
  std::optional<JsonNode> tree;
  std::string refusal;
  try {
    tree = parse_json(input, file);
  } catch (const InputError& error) {
    refusal = error.what();
  }
  promise(quick_refusal(input, std::size_t{1} << 20) == refusal, "both readers say the same");
  // To start a thread takes longer than all the rest.
  if (input.size() % 4 == 0) promise(quick_refusal(input, 16) == refusal, "two threads say the same");
  std::vector<CanonicalMember> members;
  if (tree)
    expect_canonical(input, *tree);
  else
    scan_canonical_object(input, members);
  return tree.has_value();
}

}  // namespace seamtakt::fuzz
