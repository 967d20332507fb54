#include "records/keep/four_eyes.hpp"

#include "base/error.hpp"

namespace seamtakt {

namespace {

/// As a careless or hurried hand writes it: case and blanks don't make another person.
std::string plain_name(const std::string& name) {
  std::string plain;
  for (const char c : name)
    if (c != ' ' && c != '\t') plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return plain;
}

}  // namespace

bool needs_four_eyes(RecordHistory& history, std::uint64_t weld) {
  const JsonNode body = body_of(history.record(weld));
  const JsonNode* ingest = body.find("ingest");
  if (ingest == nullptr || !ingest->is_integer || ingest->number < 1) return false;
  const JsonNode of_ingest = body_of(history.record(static_cast<std::uint64_t>(ingest->number)));
  const JsonNode* asked = body_member(of_ingest, "inputs.four_eyes");
  return asked != nullptr && asked->kind == JsonNode::Kind::boolean && asked->boolean;
}

void check_four_eyes(RecordHistory& history, std::uint64_t weld, std::uint64_t opening,
                     const std::string& who) {
  if (weld == 0 || !needs_four_eyes(history, weld)) return;
  const std::string opened = history.ledger().person_name(body_text(body_of(history.record(opening)), "who"));
  if (plain_name(opened) != plain_name(who)) return;
  throw InputError("--who",
                   Sentence("ledger.four-eyes.found"_key, {{"who", printable(who, 60)}, {"record", opening}}),
                   "another person: the plan asks for four eyes"_word);
}

}  // namespace seamtakt
