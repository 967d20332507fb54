#include "records/judge/seam_union.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

std::vector<WeldedSpan> merged_spans(std::span<const PassCoverage* const> records) {
  std::vector<WeldedSpan> all, merged;
  for (const PassCoverage* record : records)
    all.insert(all.end(), record->spans.begin(), record->spans.end());
  std::sort(all.begin(), all.end(),
            [](const WeldedSpan& a, const WeldedSpan& b) { return a.from_mm < b.from_mm; });
  for (const WeldedSpan& span : all) {
    if (!merged.empty() && span.from_mm <= merged.back().to_mm)
      merged.back().to_mm = std::max(merged.back().to_mm, span.to_mm);
    else
      merged.push_back(span);
  }
  return merged;
}

double length_of(const std::vector<WeldedSpan>& spans) {
  double sum = 0;
  for (const WeldedSpan& span : spans) sum += span.to_mm - span.from_mm;
  return sum;
}

/// A run of weld as it was found: a restart within it leaves it one run.
struct FoundRun {
  WeldedSpan reach;
  double welded_mm = 0;
};

std::vector<FoundRun> found_runs(const std::vector<WeldedSpan>& spans, double gap_mm) {
  std::vector<FoundRun> runs;
  for (const WeldedSpan& span : spans) {
    if (runs.empty() || span.from_mm - runs.back().reach.to_mm > gap_mm / 2) runs.push_back({span, 0});
    runs.back().reach.to_mm = span.to_mm;
    runs.back().welded_mm += span.to_mm - span.from_mm;
  }
  return runs;
}

/// Where the runs are drawn.
double covered_as_drawn_mm(const PassCoverage& seam, const std::vector<WeldedSpan>& spans,
                           std::size_t count) {
  double sum = 0;
  const double pitch = seam.run_mm + seam.gap_mm;
  for (const WeldedSpan& span : spans) {
    const double first = std::max(0.0, std::floor(span.from_mm / pitch));
    for (auto i = static_cast<std::size_t>(first); i < count; ++i) {
      const double from = static_cast<double>(i) * pitch;
      if (from >= span.to_mm) break;
      sum += std::max(0.0, std::min(span.to_mm, from + seam.run_mm) - std::max(span.from_mm, from));
    }
  }
  return sum;
}

/// Wherever they are.
double covered_as_moved_mm(const PassCoverage& seam, const std::vector<FoundRun>& runs, std::size_t count) {
  std::vector<double> lengths;
  for (const FoundRun& run : runs) lengths.push_back(std::min(run.welded_mm, seam.run_mm));
  std::sort(lengths.rbegin(), lengths.rend());
  double sum = 0;
  for (std::size_t i = 0; i < std::min(count, lengths.size()); ++i) sum += lengths[i];
  return sum;
}

}  // namespace

PassCoverage coverage_needed(const Seam& seam) {
  PassCoverage needed;
  needed.path_mm = path_length_mm(seam);
  needed.needed_mm = welded_length_mm(seam);
  if (seam.intermittent) {
    needed.run_mm = seam.intermittent->length_mm;
    needed.gap_mm = seam.intermittent->gap_mm;
  }
  return needed;
}

bool same_seam(const PassCoverage& a, const PassCoverage& b) {
  constexpr double same_mm = 0.01;
  const auto same = [](double x, double y) { return std::fabs(x - y) <= same_mm; };
  return same(a.path_mm, b.path_mm) && same(a.needed_mm, b.needed_mm) && same(a.run_mm, b.run_mm) &&
         same(a.gap_mm, b.gap_mm);
}

const PassCoverage& least_certain(std::span<const PassCoverage* const> records) {
  return **std::max_element(records.begin(), records.end(), [](const auto* a, const auto* b) {
    return a->allowed_short_mm < b->allowed_short_mm;
  });
}

bool is_short(const PassCoverage& seam, const SeamUnion& found) {
  return found.covered_mm < seam.needed_mm - seam.allowed_short_mm - 1e-9 ||
         found.runs_counted < found.runs_needed;
}

SeamUnion union_of(std::span<const PassCoverage* const> records) {
  SeamUnion found;
  if (records.empty()) return found;
  const PassCoverage& seam = *records.front();
  const std::vector<WeldedSpan> spans = merged_spans(records);
  const double once = length_of(spans);
  double without_spans = 0, welded = 0;
  for (const PassCoverage* record : records)
    (record->spans.empty() ? without_spans : welded) += record->welded_mm;
  if (seam.run_mm <= 0) {
    const double overlap = std::clamp(welded - once, 0.0, std::max(0.0, seam.needed_mm - seam.path_mm));
    found.covered_mm = once + overlap;
    found.runs_found = spans.size();
  } else {
    const std::vector<FoundRun> runs = found_runs(spans, seam.gap_mm);
    const auto count = static_cast<std::size_t>(std::llround(seam.needed_mm / seam.run_mm));
    found.covered_mm =
        std::max(covered_as_drawn_mm(seam, spans, count), covered_as_moved_mm(seam, runs, count));
    found.runs_needed = count;
    found.runs_found = runs.size();
    found.runs_counted = without_spans > 0 ? count : 0;
    for (const FoundRun& run : runs) {
      const double length = run.reach.to_mm - run.reach.from_mm;
      found.longest_run_mm = std::max(found.longest_run_mm, length);
      found.runs_counted += std::max<std::size_t>(
          1, static_cast<std::size_t>(std::llround((length + seam.gap_mm) / (seam.run_mm + seam.gap_mm))));
    }
    for (std::size_t i = 1; i < runs.size(); ++i)
      found.longest_gap_mm = std::max(found.longest_gap_mm, runs[i].reach.from_mm - runs[i - 1].reach.to_mm);
  }
  found.covered_mm = std::min(found.covered_mm + without_spans, seam.needed_mm);
  return found;
}

}  // namespace seamtakt
