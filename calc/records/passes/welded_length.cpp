#include <cmath>

#include "plan/seam_geometry.hpp"
#include "records/judge/seam_union.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

/// A torch further from the seam than this, on the mean, isn't on it: its positions are in another frame.
constexpr double off_seam_mm = 30;

bool on_seam(const PassReview& review) {
  const Schedule& schedule = *review.schedule();
  const double weave = schedule.weave ? schedule.weave->half_width_mm : 0;
  return review.totals.mean_off_mm <= off_seam_mm + weave;
}

void use(PassReview& review, double length_mm, const char* source) {
  review.record.length_mm = length_mm;
  review.record.length_source = source;
}

/// Forward progress along the plan's path, counted once. False where the positions can't tell.
bool by_positions_on_seam(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (!totals.has_positions || review.seam() == nullptr || review.record.arc_time_s <= 0) return false;
  if (!on_seam(review)) {
    auto& finding = review.add("record.position.off-seam", Severity::warn,
                               Sentence("record.position.off-seam"_key, {{"off", mm(totals.mean_off_mm)}}));
    finding.value = totals.mean_off_mm;
    finding.limit = off_seam_mm;
    finding.unit = "mm";
    return false;
  }
  if (totals.covered_mm <= 0) {
    review.add(
        "record.position.still", Severity::warn,
        "The logged positions don't move along the seam while the arc is on, so they aren't used."_word);
    return false;
  }
  use(review, totals.covered_mm, "positions");
  review.record.overlap_mm = totals.overlap_mm > 1e-6 ? totals.overlap_mm : 0;
  PassCoverage& coverage = review.record.coverage.emplace(coverage_needed(*review.seam()));
  coverage.spans = totals.spans;
  coverage.welded_mm = totals.covered_mm + *review.record.overlap_mm;
  const double steady_s = seconds(totals.steady.time_ns);
  if (steady_s > 0)
    review.record.steady.travel_speed_mm_s = std::fabs(totals.steady.progress_mm.value()) / steady_s;
  return true;
}

/// Without a plan: the torch's own path, unless it weaves. True where that settles the matter, length or
/// none.
bool by_torch_path(PassReview& review) {
  const PassTotals& totals = review.totals;
  if (!totals.has_positions || review.seam() != nullptr || review.record.arc_time_s <= 0) return false;
  const double fine = totals.whole.torch_fine_mm.value(), coarse = totals.whole.torch_coarse_mm.value();
  if (fine <= 0) return false;
  if (!TorchPath::weaves(fine, coarse)) {
    use(review, fine, "positions");
    return true;
  }
  review.undecide(
      "record.position.weave",
      Sentence("record.position.weave"_key,
               {{"fine", mm(fine)}, {"coarse", mm(coarse)}, {"step", mm(TorchPath::coarse_step_mm)}}));
  return true;
}

bool by_travel_speed(PassReview& review) {
  const ArcSums& whole = review.totals.whole;
  if (whole.means.travel_speed.ns == 0) return false;
  const double length = whole.travelled_mm();
  if (length <= 0) return false;
  if (whole.means.travel_speed.ns < whole.means.time_ns)
    review.undecide("record.travel-speed.gaps",
                    Sentence("record.travel-speed.gaps"_key,
                             {{"logged", UnitValue{seconds(whole.means.travel_speed.ns), "s"}},
                              {"arc_time", UnitValue{seconds(whole.means.time_ns), "s"}}}));
  use(review, length, "travel speed");
  if (review.seam() != nullptr && whole.means.travel_speed.ns == whole.means.time_ns)
    review.record.coverage.emplace(coverage_needed(*review.seam())).welded_mm = length;
  return true;
}

bool by_plan(PassReview& review) {
  if (review.seam() == nullptr || review.record.arc_time_s <= 0) return false;
  const double planned = welded_length_mm(*review.seam());
  const double by_time = review.record.arc_time_s * review.schedule()->travel_speed_mm_s;
  const double differs_pct = 100 * std::fabs(by_time - planned) / planned;
  // A hair's breadth for a difference that is the tolerance itself.
  if (planned > 0 && differs_pct <= review.options.length_tolerance_pct + 1e-9) {
    use(review, planned, "plan");
    return true;
  }
  auto& finding = review.undecide(
      "record.length.disagrees",
      Sentence("record.length.disagrees"_key, {{"by_time", mm(by_time)}, {"planned", mm(planned)}}));
  finding.value = by_time;
  finding.limit = planned;
  finding.unit = "mm";
  return true;
}

/// Whether it is too short is judged with all other records of the pass (length_judgement.hpp).
void compare_with_plan(PassReview& review) {
  if (!review.record.length_mm || review.seam() == nullptr || review.record.length_source == "plan") return;
  const double planned = welded_length_mm(*review.seam());
  const double welded = *review.record.length_mm + review.record.overlap_mm.value_or(0);
  const double tolerance = review.options.length_tolerance_pct / 100 * planned;
  if (welded <= planned + tolerance) return;
  auto& finding = review.add(
      "record.length.long", Severity::warn,
      Sentence("record.length.long"_key, {{"welded", mm(welded)}, {"planned", mm(planned)}}), plan_limit);
  finding.value = welded;
  finding.limit = planned;
  finding.unit = "mm";
}

}  // namespace

void fill_welded_length(PassReview& review) {
  const bool known =
      by_positions_on_seam(review) || by_torch_path(review) || by_travel_speed(review) || by_plan(review);
  PassRecord& record = review.record;
  if (!known && record.arc_time_s > 0)
    review.undecide("record.length.unknown",
                    "The log has neither positions nor travel speed, and no plan knows the seam: energy, but "
                    "no heat input."_word);
  if (record.length_mm && record.arc_time_s > 0)
    record.travel_speed_mm_s = *record.length_mm / record.arc_time_s;
  record.logged_travel_speed_mm_s = review.totals.whole.means.travel_speed.mean();
  if (!record.steady.travel_speed_mm_s)
    record.steady.travel_speed_mm_s =
        record.travel_speed_mm_s ? record.travel_speed_mm_s : record.logged_travel_speed_mm_s;
  compare_with_plan(review);
}

}  // namespace seamtakt
