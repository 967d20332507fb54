#include "records/keep/stored_sentence.hpp"

#include "base/error.hpp"
#include "base/json/json_document.hpp"
#include "base/sentences/sentence_json.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

namespace {

Sentence as_it_is(const std::string& text) {
  return text.empty() ? Sentence() : Sentence::verbatim(text);
}

}  // namespace

Sentence stored_sentence(const JsonNode& finding) {
  const std::string text = body_text(finding, "text");
  if (finding.find("sentence") == nullptr) return as_it_is(text);  // an older record
  const std::string json = canonical_json(finding);
  try {
    const JsonDocument document(json, "a stored finding");
    return sentence_of_members(document.root(), text);
  } catch (const InputError&) {  // nested deeper than any body
    return as_it_is(text);
  }
}

}  // namespace seamtakt
