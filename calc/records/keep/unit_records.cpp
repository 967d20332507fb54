#include "records/keep/unit_records.hpp"

#include <algorithm>
#include <set>

namespace seamtakt {

namespace {

constexpr const char* serial_path = "results.unit_serial";

bool is_weld(const std::string& kind) {
  return kind == record_kind::pass || kind == record_kind::manual;
}

/// Number of the record that this one is about; 0 where it is about none.
std::uint64_t about_of(const JsonNode& body) {
  const JsonNode* ref = body.find("ref");
  return ref != nullptr && ref->is_integer && ref->number > 0 ? static_cast<std::uint64_t>(ref->number) : 0;
}

bool follows_its_weld(const std::string& kind) {
  return kind == record_kind::correction || kind == record_kind::nonconformance;
}

}  // namespace

std::string unit_of_record(RecordHistory& history, std::uint64_t seq) {
  const std::string kind = history.record(seq).kind;
  if (is_weld(kind)) return body_text(history.corrected_body(seq), serial_path);
  const JsonNode body = body_of(history.record(seq));
  if (const std::uint64_t about = about_of(body); kind == record_kind::nonconformance && about != 0)
    if (is_weld(history.record(about).kind)) return unit_of_record(history, about);
  return body_text(body, serial_path);
}

std::vector<std::uint64_t> records_of_unit(RecordHistory& history, const std::string& unit_serial) {
  const auto numbers = history.ledger().backend().find("unit", unit_serial);
  history.load(numbers);
  std::vector<std::uint64_t> abouts;
  for (const std::uint64_t seq : numbers)
    if (follows_its_weld(history.record(seq).kind))
      if (const std::uint64_t about = about_of(body_of(history.record(seq))); about != 0)
        abouts.push_back(about);
  history.load(abouts);

  std::set<std::uint64_t> found;
  const auto add_weld = [&](std::uint64_t seq) {
    if (unit_of_record(history, seq) != unit_serial) return;
    found.insert(seq);
    const auto& nonconformances = history.changes_of(seq).nonconformances;
    found.insert(nonconformances.begin(), nonconformances.end());
  };
  for (const std::uint64_t seq : numbers) {
    const std::string& kind = history.record(seq).kind;
    if (is_weld(kind))
      add_weld(seq);
    else if (kind != record_kind::nonconformance || unit_of_record(history, seq) == unit_serial)
      found.insert(seq);
  }
  for (const std::uint64_t about : abouts)
    if (is_weld(history.record(about).kind)) add_weld(about);
  return {found.begin(), found.end()};
}

}  // namespace seamtakt
