// A mean inside its limits may hide a half that is too hot and one that is too cold. So the steady part is
// judged bin by bin (excursion_bins.hpp), by how much of the weld lies outside.
#include <algorithm>
#include <cmath>

#include "plan/limited_quantities.hpp"
#include "records/passes/pass_review.hpp"
#include "records/passes/recorded_value.hpp"

namespace seamtakt {

namespace {

constexpr const char* short_imperfection =
    "iso-5817 (borrowed figure: a short imperfection is at most 25 mm in any 100 mm); common practice, no "
    "source";
/// A margin for rounding, for a length equal to the allowed one.
constexpr double hair_mm = 1e-6;

struct BinnedLimit {
  Binned what;
  std::optional<Interval> ScheduleLimits::*limit;
};
constexpr BinnedLimit binned_limits[] = {
    {Binned::current, &ScheduleLimits::current_A},
    {Binned::voltage, &ScheduleLimits::voltage_V},
    {Binned::wire_feed, &ScheduleLimits::wire_feed_speed_m_min},
    {Binned::travel_by_signal, &ScheduleLimits::travel_speed_mm_s},
    {Binned::travel_by_positions, &ScheduleLimits::travel_speed_mm_s},
    {Binned::gas_flow, &ScheduleLimits::gas_flow_l_min},
};

/// How the record tells lengths along the seam: by what its own length comes from.
class LengthMeasure {
 public:
  explicit LengthMeasure(const PassReview& review)
      : source_(review.record.length_source),
        // Without a length of its own the pass is open anyway: the planned speed tells enough.
        speed_mm_s_(review.record.travel_speed_mm_s.value_or(review.schedule()->travel_speed_mm_s)),
        sign_(review.totals.excursions.whole.progress_mm < 0 ? -1 : 1) {}

  bool by_positions() const { return source_ == "positions"; }
  double mm(const SteadyWay& way) const {
    if (by_positions()) return sign_ * way.progress_mm;
    return source_ == "travel speed" ? way.travelled_mm : speed_mm_s_ * seconds(way.time_ns);
  }

 private:
  std::string source_;
  double speed_mm_s_, sign_;
};

/// Along the steady part, rising and apart from one another.
using Stretches = std::vector<WeldedSpan>;

/// The greatest length in a window of this width that begins with a stretch.
double most_from_beginnings(const Stretches& stretches, double window_mm) {
  double most = 0, inside = 0;  // inside: of the stretches that lie in the window as a whole
  std::size_t next = 0;
  for (const WeldedSpan& first : stretches) {
    const double end = first.from_mm + window_mm;
    for (; next < stretches.size() && stretches[next].to_mm <= end; ++next)
      inside += stretches[next].to_mm - stretches[next].from_mm;
    const double cut = next < stretches.size() ? std::max(end - stretches[next].from_mm, 0.0) : 0;
    most = std::max(most, inside + cut);
    if (&first < stretches.data() + next)
      inside -= first.to_mm - first.from_mm;
    else
      ++next;  // longer than the window: it is behind us
  }
  return most;
}

double densest_mm(Stretches stretches, double window_mm) {
  const double most = most_from_beginnings(stretches, window_mm);
  std::reverse(stretches.begin(), stretches.end());
  for (WeldedSpan& each : stretches) each = {-each.to_mm, -each.from_mm};
  return std::max(most, most_from_beginnings(stretches, window_mm));
}

/// One quantity's stretches outside its limit, in figures.
struct Outside {
  double total_mm = 0;    ///< of all
  double densest_mm = 0;  ///< in any window
  WeldedSpan longest;     ///< low and high that follow on one another are one
  const OutsideSpan* worst = nullptr;
  const OutsideSpan* longest_begin = nullptr;
  const OutsideSpan* longest_end = nullptr;

  double longest_mm() const { return longest.to_mm - longest.from_mm; }
};

/// How far a span is beyond its bound.
double beyond(const OutsideSpan& span) {
  return std::fabs(span.worst - span.limit);
}

Outside outside_of(const std::vector<const OutsideSpan*>& spans, const LengthMeasure& measure,
                   double window_mm) {
  Outside outside;
  Stretches stretches;
  const OutsideSpan* begin = nullptr;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const OutsideSpan& span = *spans[i];
    if (outside.worst == nullptr || beyond(span) > beyond(*outside.worst)) outside.worst = &span;
    const bool goes_on = i > 0 && spans[i - 1]->to.time_ns == span.from.time_ns;
    if (!goes_on) {
      begin = &span;
      stretches.push_back({measure.mm(span.from), measure.mm(span.from)});
    }
    WeldedSpan& stretch = stretches.back();
    stretch.to_mm = std::max(stretch.to_mm, measure.mm(span.to));
    if (outside.longest_end != nullptr && stretch.to_mm - stretch.from_mm <= outside.longest_mm()) continue;
    outside.longest = stretch;
    outside.longest_begin = begin;
    outside.longest_end = &span;
  }
  outside.densest_mm = densest_mm(std::move(stretches), window_mm);
  return outside;
}

class ExcursionJudgement {
 public:
  explicit ExcursionJudgement(PassReview& review)
      : review_(review),
        found_(review.totals.excursions),
        options_(review.options.excursions),
        measure_(review),
        steady_mm_(std::max(measure_.mm(found_.whole), 0.0)) {}

  void run() {
    for (const BinnedLimit& each : binned_limits) {
      const Binned not_this =
          measure_.by_positions() ? Binned::travel_by_signal : Binned::travel_by_positions;
      if (each.what != not_this) look_at(each);
    }
  }

 private:
  void look_at(const BinnedLimit& each) {
    std::vector<const OutsideSpan*> spans;
    for (const OutsideSpan& span : found_.spans)
      if (span.what == each.what) spans.push_back(&span);
    if (spans.empty()) return;
    const LimitedQuantity& quantity = limited_quantity(each.limit);
    list(spans, quantity);
    const double window_mm = std::min(options_.within_mm, steady_mm_);
    Outside outside = outside_of(spans, measure_, window_mm);
    outside.total_mm = std::fabs(measure_.mm(found_.outside[static_cast<std::size_t>(each.what)]));
    if (!mean_is_outside(quantity)) judge(quantity, outside, window_mm);
  }

  /// Then it fails anyway, and where is in the record.
  bool mean_is_outside(const LimitedQuantity& quantity) const {
    const auto mean = recorded_value(review_.record, quantity);
    const auto& limit = (*review_.schedule()->limits).*quantity.limit;
    return mean && ((limit->lower && *mean < *limit->lower) || (limit->upper && *mean > *limit->upper));
  }

  void list(const std::vector<const OutsideSpan*>& spans, const LimitedQuantity& quantity) {
    PassRecord& record = review_.record;
    record.excursion_count += found_.count[static_cast<std::size_t>(spans.front()->what)];
    for (const OutsideSpan* span : spans) {
      if (record.excursions.size() >= review_.options.reader.limits.listed_interruptions) return;
      record.excursions.push_back({quantity.key, after_begin_s(span->begin_ns), after_begin_s(span->end_ns),
                                   std::fabs(measure_.mm(span->to) - measure_.mm(span->from)), span->worst,
                                   span->limit});
    }
  }

  void judge(const LimitedQuantity& quantity, const Outside& outside, double window_mm) {
    const double dense_mm = options_.within_mm > 0 ? options_.fail_mm * window_mm / options_.within_mm : 0;
    const double share_mm = options_.share_pct / 100 * steady_mm_;
    if (outside.densest_mm > dense_mm + hair_mm)
      add(quantity, outside, Severity::fail, "record.excursion.dense"_key,
          {{"dense", mm(outside.densest_mm)}, {"allowed", mm(dense_mm)}, {"within", mm(window_mm)}});
    else if (outside.longest_mm() > options_.note_mm + hair_mm)
      add(quantity, outside, Severity::warn, "record.excursion.long"_key,
          {{"allowed", mm(options_.note_mm)}});
    else if (outside.total_mm > share_mm + hair_mm)
      add(quantity, outside, Severity::warn, "record.excursion.share"_key,
          {{"allowed", UnitValue{options_.share_pct, "%"}}, {"steady", mm(steady_mm_)}});
    else
      add(quantity, outside, Severity::note, "record.excursion.short"_key, {});
  }

  void add(const LimitedQuantity& quantity, const Outside& outside, Severity severity, SentenceKey key,
           std::vector<Argument> more) {
    const OutsideSpan& worst = *outside.worst;
    std::vector<Argument> arguments = {{"what", quantity.label},
                                       {"value", UnitValue{worst.worst, quantity.unit}},
                                       {"limit", UnitValue{worst.limit, quantity.unit}},
                                       {"total", mm(outside.total_mm)},
                                       {"longest", mm(outside.longest_mm())},
                                       {"start", time_of(outside.longest_begin->begin_ns)},
                                       {"end", time_of(outside.longest_end->end_ns)},
                                       {"from", mm(outside.longest.from_mm)}};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const std::string rule = std::string(quantity.record_rule) + ".excursion";
    review_.findings.push_back({rule, severity, review_.place, worst.worst, worst.limit, quantity.unit,
                                Sentence(key, std::move(arguments)),
                                severity == Severity::fail ? short_imperfection : no_source});
    if (severity == Severity::warn) add_rule(review_.record.undecided_by, rule);
  }

  double after_begin_s(std::int64_t ns) const { return seconds(ns - review_.totals.first_ns); }
  UnitValue time_of(std::int64_t ns) const { return {after_begin_s(ns), "s", 5}; }

  PassReview& review_;
  const ExcursionTotals& found_;
  const ExcursionOptions& options_;
  LengthMeasure measure_;
  double steady_mm_;
};

}  // namespace

void judge_excursions(PassReview& review) {
  if (review.schedule() != nullptr) ExcursionJudgement(review).run();
}

}  // namespace seamtakt
