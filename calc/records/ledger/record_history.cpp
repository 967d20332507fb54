#include "records/ledger/record_history.hpp"

#include <algorithm>
#include <stdexcept>

namespace seamtakt {

namespace {

std::vector<std::uint64_t>& list_of(RecordChanges& changes, std::string_view kind) {
  return kind == record_kind::correction       ? changes.corrections
         : kind == record_kind::void_record    ? changes.voids
         : kind == record_kind::signoff        ? changes.signoffs
         : kind == record_kind::nonconformance ? changes.nonconformances
         : kind == record_kind::disposition    ? changes.dispositions
                                               : changes.others;
}

JsonNode* member_to_change(JsonNode& body, std::string_view path) {
  return const_cast<JsonNode*>(body_member(body, path));
}

}  // namespace

void RecordHistory::load(std::span<const std::uint64_t> numbers) {
  std::vector<std::uint64_t> wanted(numbers.begin(), numbers.end());
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references;
  // What came after a record may be void or corrected itself, so what came after that is loaded too.
  while (!wanted.empty()) {
    std::sort(wanted.begin(), wanted.end());
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
    std::erase_if(wanted, [&](std::uint64_t seq) { return known_.contains(seq); });
    ledger_.backend().each_record_of(wanted, [&](const LedgerRowView& row) {
      known_[row.seq].row = {row.seq, std::string(row.kind), std::string(row.body), std::string(row.leaf),
                             row.well_typed};
    });
    const auto found = ledger_.backend().references_to(wanted);
    references.insert(references.end(), found.begin(), found.end());
    wanted.clear();
    for (const auto& [about, later] : found) wanted.push_back(later);
  }
  std::sort(references.begin(), references.end());
  for (const auto& [about, later] : references) {
    const auto at = known_.find(about), other = known_.find(later);
    if (at != known_.end() && other != known_.end())
      list_of(at->second.changes, other->second.row.kind).push_back(later);
  }
}

RecordHistory::Known& RecordHistory::known(std::uint64_t seq) {
  auto at = known_.find(seq);
  if (at == known_.end()) {
    load(std::span(&seq, 1));
    at = known_.find(seq);
  }
  if (at != known_.end()) return at->second;
  ledger_.record(seq);  // says that there is none of that number
  throw std::logic_error("a record that is there and isn't");
}

const LedgerRow& RecordHistory::record(std::uint64_t seq) {
  return known(seq).row;
}

const RecordChanges& RecordHistory::changes_of(std::uint64_t seq) {
  return known(seq).changes;
}

JsonNode RecordHistory::corrected_body(std::uint64_t seq) {
  JsonNode body = body_of(record(seq));
  for (const std::uint64_t number : changes_of(seq).corrections) {
    if (is_void(number)) continue;
    const JsonNode correction = body_of(record(number));
    const JsonNode* list = body_member(correction, "results.changes");
    if (list == nullptr) continue;
    for (const JsonNode& change : list->elements) {
      JsonNode* member = member_to_change(body, body_text(change, "member"));
      const JsonNode* value = change.find("new");
      if (member != nullptr && value != nullptr) *member = *value;
    }
  }
  return body;
}

}  // namespace seamtakt
