#include "records/keep/stored_sentence.hpp"

#include "base/json/json_document.hpp"
#include "base/sentences/sentence_json.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

Sentence stored_sentence(const JsonNode& finding) {
  std::string text = body_text(finding, "text");
  if (finding.find("sentence") == nullptr)  // an older record
    return text.empty() ? Sentence() : Sentence::verbatim(std::move(text));
  const std::string json = canonical_json(finding);
  const JsonDocument document(json, "a stored finding");
  return sentence_of_members(document.root(), std::move(text));
}

}  // namespace seamtakt
