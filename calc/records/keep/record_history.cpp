#include "records/keep/record_history.hpp"

#include <algorithm>
#include <stdexcept>

#include "formula/heat/heat_input.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/derived_members.hpp"
#include "records/keep/later_calibration.hpp"

namespace seamtakt {

namespace {

std::vector<std::uint64_t>& list_of(RecordChanges& changes, std::string_view kind) {
  return kind == record_kind::correction       ? changes.corrections
         : kind == record_kind::void_record    ? changes.voids
         : kind == record_kind::signoff        ? changes.signoffs
         : kind == record_kind::nonconformance ? changes.nonconformances
         : kind == record_kind::disposition    ? changes.dispositions
         : kind == record_kind::judgement      ? changes.judgements
                                               : changes.others;
}

JsonNode* member_to_change(JsonNode& body, std::string_view path) {
  return const_cast<JsonNode*>(body_member(body, path));
}

}  // namespace

void RecordHistory::load(std::span<const std::uint64_t> numbers) {
  std::vector<std::uint64_t> wanted(numbers.begin(), numbers.end());
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references;
  // Later records about a record may be void or corrected themselves, so the records about those are loaded
  // too.
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
  ledger_.record(seq);  // reports that there is none of that number
  throw std::logic_error("a record that is there and isn't");
}

const LedgerRow& RecordHistory::record(std::uint64_t seq) {
  return known(seq).row;
}

const RecordChanges& RecordHistory::changes_of(std::uint64_t seq) {
  return known(seq).changes;
}

JsonNode RecordHistory::corrected_body(std::uint64_t seq) {
  return corrected_body_before(seq, UINT64_MAX);
}

JsonNode RecordHistory::corrected_body_before(std::uint64_t seq, std::uint64_t before) {
  JsonNode body = body_of(record(seq));
  const std::vector<std::uint64_t> corrections = changes_of(seq).corrections;
  if (!corrections.empty()) apply_corrections(seq, before, corrections, body);
  apply_judgements(*this, seq, before, body);
  return body;
}

void RecordHistory::apply_corrections(std::uint64_t seq, std::uint64_t before,
                                      const std::vector<std::uint64_t>& corrections, JsonNode& body) {
  const JsonNode original = body;
  for (const std::uint64_t number : corrections) {
    if (number >= before || is_void(number)) continue;
    const JsonNode correction = body_of(record(number));
    const JsonNode* list = body_member(correction, "results.changes");
    if (list == nullptr) continue;
    for (const JsonNode& change : list->elements) {
      JsonNode* member = member_to_change(body, body_text(change, "member"));
      const JsonNode* value = change.find("new");
      if (member != nullptr && value != nullptr) *member = *value;
    }
  }
  if (record(seq).kind == record_kind::pass) recompute_derived(body, original, efficiency_of(body, original));
}

std::optional<double> RecordHistory::efficiency_of(const JsonNode& body, const JsonNode& original) {
  constexpr const char* path = "results.schedule";
  if (!is_corrected(body, original, path)) return std::nullopt;
  const auto kept = ledger_.backend().find("schedule", body_text(body, path));
  if (kept.empty()) return std::nullopt;
  return thermal_efficiency_of(body_text(body_of(record(kept.back())), "results.schedule.process"));
}

std::vector<RecordHistory::Change> RecordHistory::changes_by(std::uint64_t correction, std::uint64_t about) {
  const JsonNode list = body_of(record(correction));
  const JsonNode before = corrected_body_before(about, correction),
                 after = corrected_body_before(about, correction + 1);
  std::vector<Change> changes;
  const auto text_at = [](const JsonNode& body, std::string_view path) {
    const JsonNode* value = body_member(body, path);
    return value == nullptr ? std::string("null") : canonical_json(*value);
  };
  if (const JsonNode* set = body_member(list, "results.changes"))
    for (const JsonNode& each : set->elements) {
      const JsonNode *old = each.find("old"), *value = each.find("new");
      changes.push_back({body_text(each, "member"), old != nullptr ? canonical_json(*old) : "null",
                         value != nullptr ? canonical_json(*value) : "null", false});
    }
  if (record(about).kind != record_kind::pass) return changes;
  for (const DerivedMember& each : derived_members()) {
    const bool was_set = std::any_of(changes.begin(), changes.end(),
                                     [&](const Change& change) { return change.member == each.path; });
    if (!was_set && is_corrected(after, before, each.path))
      changes.push_back({each.path, text_at(before, each.path), text_at(after, each.path), true});
  }
  return changes;
}

}  // namespace seamtakt
