#include "records/actual/welded_arc.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace seamtakt {

namespace {

/// When an arc of a record began.
struct ArcBegin {
  std::int64_t ns;
  const PassRecord* record;
};

/// Without arc, within a record.
struct ArcPause {
  std::int64_t from_ns, to_ns;
};

std::vector<ArcPause> pauses_of(const PassRecord& record) {
  std::vector<ArcPause> pauses;
  for (const Interruption& each : record.interruptions) {
    const std::int64_t from_ns = record.first_ns + std::llround(each.start_s * 1e9);
    pauses.push_back({from_ns, from_ns + std::llround(each.duration_s * 1e9)});
  }
  return pauses;
}

std::vector<ArcBegin> begins_of(const std::vector<const PassRecord*>& records) {
  std::vector<ArcBegin> begins;
  for (const PassRecord* record : records) {
    begins.push_back({record->first_arc_ns, record});
    for (const ArcPause& pause : pauses_of(*record)) begins.push_back({pause.to_ns, record});
  }
  std::sort(begins.begin(), begins.end(), [](const ArcBegin& a, const ArcBegin& b) { return a.ns < b.ns; });
  return begins;
}

bool welds_another(const std::vector<ArcBegin>& begins, const PassRecord& record, const ArcPause& pause) {
  auto at = std::lower_bound(begins.begin(), begins.end(), pause.from_ns,
                             [](const ArcBegin& begin, std::int64_t ns) { return begin.ns < ns; });
  for (; at != begins.end() && at->ns < pause.to_ns; ++at)
    if (at->record != &record) return true;
  return false;
}

void add_arcs(const PassRecord& record, const std::vector<ArcBegin>& begins, std::vector<WeldedArc>& arcs) {
  WeldedArc arc{&record, 1, record.first_arc_ns, record.last_arc_ns, 0, 1};
  std::uint64_t starts_before = 0;
  for (const ArcPause& pause : pauses_of(record)) {
    if (!welds_another(begins, record, pause)) {
      arc.arc_off_s += static_cast<double>(pause.to_ns - pause.from_ns) / 1e9;
      ++arc.arc_starts;
      continue;
    }
    arc.end_ns = pause.from_ns;
    starts_before += arc.arc_starts;
    arcs.push_back(arc);
    arc = {&record, arc.part + 1, pause.to_ns, record.last_arc_ns, 0, 1};
  }
  // Of many interruptions a record lists the first ones; all are counted.
  if (record.arc_starts > starts_before) arc.arc_starts = record.arc_starts - starts_before;
  arcs.push_back(arc);
}

}  // namespace

std::vector<WeldedArc> welded_arcs(const std::vector<const PassRecord*>& records) {
  const std::vector<ArcBegin> begins = begins_of(records);
  std::vector<WeldedArc> arcs;
  for (const PassRecord* record : records) add_arcs(*record, begins, arcs);
  std::stable_sort(arcs.begin(), arcs.end(),
                   [](const WeldedArc& a, const WeldedArc& b) { return a.begin_ns < b.begin_ns; });
  return arcs;
}

bool any_overlap(const std::vector<WeldedArc>& arcs) {
  return std::adjacent_find(arcs.begin(), arcs.end(), [](const WeldedArc& a, const WeldedArc& b) {
           return b.begin_ns < a.end_ns;
         }) != arcs.end();
}

}  // namespace seamtakt
