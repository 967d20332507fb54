#include "records/keep/stored_parts.hpp"

#include <algorithm>
#include <set>

#include "records/judge/length_judgement.hpp"
#include "records/judge/seam_union.hpp"
#include "records/keep/cause_disposition.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_store.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

double number_at(const JsonNode& object, const char* key) {
  return body_number(object, key).value_or(0);
}

/// The same weld, read again.
bool is_same_weld(const JsonNode& body, const PassRecord& record) {
  const JsonNode* results = body.find("results");
  return results != nullptr && body_text(*results, "started") == record.started &&
         number_at(*results, "source_line_first") == static_cast<double>(record.source_line_first) &&
         number_at(*results, "samples") == static_cast<double>(record.samples) &&
         number_at(*results, "arc_time_s") == record.arc_time_s;
}

}  // namespace

std::string lookup_key_of(const JsonNode& body) {
  const JsonNode* pass = body_member(body, "results.pass");
  return pass_lookup_key(body_text(body, "results.unit_serial"), body_text(body, "results.weldment"),
                         body_text(body, "results.seam"),
                         pass != nullptr && pass->is_integer
                             ? std::optional<int>(static_cast<int>(pass->number))
                             : std::nullopt);
}

std::vector<std::uint64_t> records_of_pass(RecordHistory& history, const std::string& lookup_key) {
  const auto found = history.ledger().backend().find("pass", lookup_key);
  history.load(found);
  std::set<std::uint64_t> numbers;
  for (const std::uint64_t seq : found) {
    const LedgerRow& row = history.record(seq);
    if (row.kind == record_kind::pass || row.kind == record_kind::manual) numbers.insert(seq);
    if (row.kind != record_kind::correction) continue;
    if (const auto about = body_number(body_of(row), "ref"))
      numbers.insert(static_cast<std::uint64_t>(*about));
  }
  std::erase_if(numbers,
                [&](std::uint64_t seq) { return lookup_key_of(history.corrected_body(seq)) != lookup_key; });
  return {numbers.begin(), numbers.end()};
}

std::vector<std::string> body_texts(const JsonNode& body, std::string_view path) {
  std::vector<std::string> texts;
  if (const JsonNode* list = body_member(body, path); list != nullptr)
    for (const JsonNode& element : list->elements)
      if (element.kind == JsonNode::Kind::string) texts.push_back(element.string);
  return texts;
}

std::optional<PassCoverage> coverage_of(const JsonNode& body) {
  const JsonNode* kept = body_member(body, "results.coverage");
  if (kept == nullptr || kept->kind != JsonNode::Kind::object) return std::nullopt;
  PassCoverage coverage;
  if (const JsonNode* spans = kept->find("spans_mm"))
    for (const JsonNode& span : spans->elements)
      if (span.elements.size() == 2)
        coverage.spans.push_back({span.elements[0].number, span.elements[1].number});
  coverage.welded_mm = number_at(*kept, "welded_mm");
  coverage.path_mm = number_at(*kept, "path_mm");
  coverage.needed_mm = number_at(*kept, "needed_mm");
  coverage.run_mm = number_at(*kept, "run_mm");
  coverage.gap_mm = number_at(*kept, "gap_mm");
  coverage.covered_mm = number_at(*kept, "covered_mm");
  coverage.allowed_short_mm = number_at(*kept, "allowed_short_mm");
  const JsonNode* is_part = kept->find("is_part");
  coverage.is_part = is_part != nullptr && is_part->kind == JsonNode::Kind::boolean && is_part->boolean;
  return coverage;
}

StoredWelds stored_welds(const Ledger& ledger, const PassRecord& record) {
  StoredWelds welds;
  if (record.unit_serial.empty()) return welds;
  RecordHistory history(ledger);
  const auto numbers = records_of_pass(
      history, pass_lookup_key(record.unit_serial, record.weldment, record.seam, record.pass));
  for (const std::uint64_t seq : numbers) {
    if (history.record(seq).kind != record_kind::pass || history.is_void(seq)) continue;
    for (const std::uint64_t number : history.changes_of(seq).nonconformances) {
      const Nonconformance about = nonconformance_of(history, number);
      welds.being_repaired = welds.being_repaired || (about.open && about.decision == Decision::repair);
    }
    const JsonNode body = history.corrected_body(seq);
    if (is_same_weld(body, record)) continue;
    if (auto coverage = coverage_of(body)) welds.parts.push_back({seq, std::move(*coverage)});
  }
  return welds;
}

bool has_nonconformance(RecordHistory& history, std::uint64_t seq) {
  const auto& about = history.changes_of(seq).nonconformances;
  return std::any_of(about.begin(), about.end(),
                     [&](std::uint64_t number) { return !history.is_void(number); });
}

std::optional<OpenPart> open_part(RecordHistory& history, std::uint64_t seq) {
  const auto counts = [&](std::uint64_t number) {
    return history.record(number).kind == record_kind::pass && !history.is_void(number);
  };
  if (!counts(seq) || has_nonconformance(history, seq) ||
      cause_disposition_of(history, seq, length_part_rule))
    return std::nullopt;
  const JsonNode body = history.corrected_body(seq);
  const auto open = body_texts(body, "results.undecided_by");
  const auto own = coverage_of(body);
  if (!own || std::find(open.begin(), open.end(), length_part_rule) == open.end()) return std::nullopt;
  std::vector<PassCoverage> all;
  for (const std::uint64_t number : records_of_pass(history, lookup_key_of(body)))
    if (counts(number))
      if (auto coverage = coverage_of(history.corrected_body(number)); coverage && same_seam(*coverage, *own))
        all.push_back(std::move(*coverage));
  std::vector<const PassCoverage*> together;
  for (const PassCoverage& each : all) together.push_back(&each);
  OpenPart part{seq, body_text(body, "results.unit_serial"), "", body_text(body, "results.started"), *own};
  part.coverage.covered_mm = union_of(together).covered_mm;
  if (!is_short(least_certain(together), union_of(together))) return std::nullopt;
  const JsonNode* pass = body_member(body, "results.pass");
  part.place = part.unit_serial + "/" + body_text(body, "results.weldment") + "/" +
               body_text(body, "results.seam") + "/pass " +
               (pass != nullptr && pass->is_integer ? std::to_string(static_cast<int>(pass->number)) : "-");
  return part;
}

Finding short_finding(const OpenPart& part) {
  const auto mm = [](double value) { return UnitValue{value, "mm"}; };
  const PassCoverage& seam = part.coverage;
  return {length_short_rule,
          Severity::fail,
          part.place,
          seam.covered_mm,
          seam.needed_mm,
          "mm",
          Sentence("record.length.short"_key, {{"welded", mm(seam.covered_mm)},
                                               {"needed", mm(seam.needed_mm)},
                                               {"short", mm(seam.needed_mm - seam.covered_mm)},
                                               {"allowed", mm(seam.allowed_short_mm)}}),
          no_source};
}

}  // namespace seamtakt
