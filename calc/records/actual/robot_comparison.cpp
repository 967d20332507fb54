#include "records/actual/robot_comparison.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "records/actual/arc_match.hpp"

namespace seamtakt {

namespace {

using NamedPass = std::pair<std::string_view, int>;

double seconds_between(std::int64_t from_ns, std::int64_t to_ns) {
  return static_cast<double>(to_ns - from_ns) / 1e9;
}

/// A record in two logs that count seconds has no one clock.
bool has_one_clock(const PassRecord& record) {
  return record.has_calendar_time || record.source == record.source_last;
}

std::optional<double> sum_of(const std::optional<double>& a, const std::optional<double>& b) {
  return a && b ? std::optional(*a + *b) : std::nullopt;
}

std::size_t apart(std::size_t a, std::size_t b) {
  return a > b ? a - b : b - a;
}

}  // namespace

ArcName name_of_planned(const PlannedArc& arc) {
  return {arc.seam, arc.pass, arc.run, 1};
}

RobotComparison::RobotComparison(std::string robot, const PlannedTimeline& planned,
                                 const std::vector<const PassRecord*>& records)
    : robot_(std::move(robot)), planned_(planned), plan_arcs_(&planned.passes(robot_)) {
  std::set<std::string> clocks;
  for (const PassRecord* record : records)
    clocks.insert(record->has_calendar_time ? "" : record->source + '\n' + record->source_last);
  clocks_ = clocks.size();
  arcs_ = welded_arcs(records);
  overlaps_ = clocks_ <= 1 && any_overlap(arcs_);
  match();
}

void RobotComparison::match() {
  std::size_t nameless = 0;
  for (const WeldedArc& arc : arcs_) nameless += arc.record->seam.empty() ? 1 : 0;
  by_time_ = nameless > 0;
  const std::vector<PlannedArc>&passes = planned_.passes(robot_), &runs = planned_.runs(robot_);
  // Without names each run of an intermittent pass is an arc of its own, where the arc is off for long
  // enough.
  if (by_time_ && nameless == arcs_.size() && apart(nameless, runs.size()) < apart(nameless, passes.size()))
    plan_arcs_ = &runs;
  planned_of_.resize(arcs_.size());
  is_.assign(arcs_.size(), ArcIs::not_planned);
  parts_.assign(arcs_.size(), 1);
  numbers_.assign(arcs_.size(), 0);
  match_by_name();
  if (by_time_ && !is_impossible()) match_by_time();
  if (is_impossible()) return;
  row_ = rising_positions(planned_of_);
  for (std::size_t i = 0, next = 0; i < arcs_.size(); ++i) {
    if (next < row_.size() && row_[next] == i)
      ++next;
    else if (planned_of_[i])
      is_[i] = ArcIs::out_of_order;
  }
}

void RobotComparison::match_by_name() {
  std::map<NamedPass, std::size_t> position;
  if (plan_arcs_ == &planned_.passes(robot_))
    for (std::size_t i = 0; i < plan_arcs_->size(); ++i)
      position.emplace(NamedPass((*plan_arcs_)[i].seam, (*plan_arcs_)[i].pass), i);
  std::map<NamedPass, int> welded;                                        // how often
  std::map<std::string_view, std::vector<const PassRecord*>> unnumbered;  // by seam, in the order of time
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    const PassRecord& record = *arcs_[i].record;
    numbers_[i] = record.pass.value_or(0);
    if (record.seam.empty()) continue;
    if (!record.pass) {
      std::vector<const PassRecord*>& of_seam = unnumbered[record.seam];
      const auto at = std::find(of_seam.begin(), of_seam.end(), &record);
      numbers_[i] = static_cast<int>(at - of_seam.begin()) + 1;
      if (at == of_seam.end()) of_seam.push_back(&record);
    }
    const NamedPass key(record.seam, numbers_[i]);
    parts_[i] = ++welded[key];
    const auto found = position.find(key);
    if (parts_[i] > 1) {
      is_[i] = ArcIs::again;
    } else if (found != position.end()) {
      is_[i] = ArcIs::planned;
      planned_of_[i] = found->second;
    } else if (planned_.pass(record.seam, numbers_[i]) != nullptr) {
      is_[i] = ArcIs::other_robot;
    }
  }
}

void RobotComparison::match_by_time() {
  std::set<std::size_t> taken;
  for (const auto& planned : planned_of_)
    if (planned) taken.insert(*planned);
  std::vector<std::size_t> arcs, plan;
  std::vector<double> times_s, planned_s;
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    if (!arcs_[i].record->seam.empty()) continue;
    arcs.push_back(i);
    times_s.push_back(seconds_between(arcs_[i].begin_ns, arcs_[i].end_ns));
  }
  for (std::size_t i = 0; i < plan_arcs_->size(); ++i) {
    if (taken.contains(i)) continue;
    plan.push_back(i);
    planned_s.push_back((*plan_arcs_)[i].end_s - (*plan_arcs_)[i].start_s);
  }
  const auto found = aligned_by_time(times_s, planned_s);
  too_many_ = found.empty() && !arcs.empty();
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (!found[i]) continue;
    planned_of_[arcs[i]] = plan[*found[i]];
    is_[arcs[i]] = ArcIs::planned;
  }
}

std::pair<const WeldedArc*, const PlannedArc*> RobotComparison::first_planned() const {
  if (row_.empty()) return {nullptr, nullptr};
  return {&arcs_[row_[0]], &(*plan_arcs_)[*planned_of_[row_[0]]]};
}

ArcName RobotComparison::name_of(std::size_t arc) const {
  if (arcs_[arc].record->seam.empty() && planned_of_[arc])
    return name_of_planned((*plan_arcs_)[*planned_of_[arc]]);
  return {arcs_[arc].record->seam, numbers_[arc], 0, parts_[arc]};
}

CycleStep RobotComparison::arc_step(std::size_t i, const std::optional<ComparisonZero>& zero) const {
  const WeldedArc& arc = arcs_[i];
  const PassRecord& record = *arc.record;
  CycleStep step;
  step.kind = CycleStep::Kind::arc;
  step.robot = robot_;
  step.to = name_of(i);
  step.is = is_[i];
  step.after = &record;
  if (has_one_clock(record)) step.time_s = seconds_between(arc.begin_ns, arc.end_ns);
  const bool is_whole = arc.begin_ns == record.first_arc_ns && arc.end_ns == record.last_arc_ns;
  step.arc_on_s = is_whole ? record.arc_time_s : step.time_s.value_or(0) - arc.arc_off_s;
  step.arc_starts = arc.arc_starts;
  step.rest_s = sum_of(record.start_stand_s, record.end_stand_s);
  if (zero) step.start_s = seconds_between(zero->ns, arc.begin_ns);
  if (!planned_of_[i]) return step;
  const PlannedArc& planned = (*plan_arcs_)[*planned_of_[i]];
  if (zero) step.planned_start_s = planned.start_s - zero->planned_s;
  step.planned_arc_starts = planned.arc_starts;
  step.planned_s = planned.end_s - planned.start_s;
  step.planned_from_s = planned.start_s;
  step.planned_to_s = planned.end_s;
  if (step.time_s) step.difference_s = *step.time_s - step.rest_s.value_or(0) - *step.planned_s;
  return step;
}

CycleStep RobotComparison::gap_step(std::optional<std::size_t> from, std::size_t to,
                                    const std::optional<ComparisonZero>& zero) const {
  const WeldedArc& next = arcs_[to];
  CycleStep step;
  step.kind = CycleStep::Kind::gap;
  step.robot = robot_;
  step.to = name_of(to);
  step.after = next.record;
  const std::int64_t from_ns = from ? arcs_[*from].end_ns : zero->ns;
  step.time_s = seconds_between(from_ns, next.begin_ns);
  if (zero) step.start_s = seconds_between(zero->ns, from_ns);
  if (from) {
    step.from = name_of(*from);
    step.before = arcs_[*from].record;
    step.rest_s = sum_of(step.before->end_stand_s, next.record->start_stand_s);
  } else {
    step.from = zero->arc;
  }
  for (std::size_t i = from ? *from + 1 : 0; i < to; ++i) {
    if (arcs_[i].begin_ns < from_ns) continue;
    step.extra.push_back(name_of(i));
    step.extra_s += seconds_between(arcs_[i].begin_ns, arcs_[i].end_ns);
  }
  const std::size_t planned_to = *planned_of_[to];
  for (std::size_t i = from ? *planned_of_[*from] + 1 : 0; i < planned_to; ++i)
    step.skipped.push_back(name_of_planned((*plan_arcs_)[i]));
  step.planned_from_s = from ? (*plan_arcs_)[*planned_of_[*from]].end_s : zero->planned_s;
  step.planned_to_s = (*plan_arcs_)[planned_to].start_s;
  if (zero) step.planned_start_s = step.planned_from_s - zero->planned_s;
  // Of the unit's robots this one should have begun first.
  if (step.planned_to_s < step.planned_from_s) return step;
  step.planned_s = step.planned_to_s - step.planned_from_s;
  step.difference_s = *step.time_s + step.rest_s.value_or(0) - *step.planned_s;
  step.parts = planned_.parts(robot_, step.planned_from_s, step.planned_to_s);
  return step;
}

bool RobotComparison::leads(const std::optional<ComparisonZero>& zero) const {
  return zero && zero->robot != robot_ && !row_.empty() && arcs_[row_[0]].begin_ns >= zero->ns;
}

void RobotComparison::list_unmatched(RobotActual& actual) const {
  std::set<std::size_t> welded;
  for (const auto& planned : planned_of_)
    if (planned) welded.insert(*planned);
  for (std::size_t i = 0; i < plan_arcs_->size(); ++i)
    if (!welded.contains(i)) actual.skipped.push_back(name_of_planned((*plan_arcs_)[i]));
  for (std::size_t i = 0; i < arcs_.size(); ++i)
    if (is_[i] != ArcIs::planned) actual.extra.push_back({name_of(i), is_[i]});
}

void RobotComparison::note_basis(RobotActual& actual) const {
  if (arcs_.empty()) actual.notes.push_back(Sentence("actual.robot.nothing"_key));
  if (clocks_ > 1) actual.notes.push_back(Sentence("actual.robot.clocks"_key, {{"clocks", clocks_}}));
  if (overlaps_) actual.notes.push_back(Sentence("actual.robot.overlaps"_key));
  if (too_many_) actual.notes.push_back(Sentence("actual.robot.too-many"_key));
  if (by_time_ && !too_many_ && !is_impossible())
    actual.notes.push_back(Sentence("actual.robot.by-time"_key));
  const bool rests = std::all_of(arcs_.begin(), arcs_.end(), [](const WeldedArc& arc) {
    return arc.record->start_stand_s && arc.record->end_stand_s;
  });
  if (!rests) actual.notes.push_back(Sentence("actual.robot.no-rest"_key));
}

RobotActual RobotComparison::compare(const std::optional<ComparisonZero>& zero) const {
  RobotActual actual;
  actual.robot = robot_;
  list_unmatched(actual);
  note_basis(actual);
  double difference_s = 0;
  std::optional<std::size_t> last;
  std::size_t next = 0;
  for (std::size_t i = 0; i < arcs_.size(); ++i) {
    // A gap is before what was welded in it.
    const bool after_last = last ? i == *last + 1 : i == 0 && leads(zero);
    if (after_last && next < row_.size()) {
      actual.steps.push_back(gap_step(last, row_[next], zero));
      if (last) difference_s += actual.steps.back().difference_s.value_or(0);
    }
    actual.steps.push_back(arc_step(i, zero));
    if (next == row_.size() || row_[next] != i) continue;
    difference_s += actual.steps.back().difference_s.value_or(0);
    last = i;
    ++next;
  }
  if (row_.empty()) return actual;
  const std::size_t first = row_.front(), end = row_.back();
  actual.time_s = seconds_between(arcs_[first].begin_ns, arcs_[end].end_ns);
  actual.planned_s = (*plan_arcs_)[*planned_of_[end]].end_s - (*plan_arcs_)[*planned_of_[first]].start_s;
  actual.difference_s = difference_s;
  return actual;
}

}  // namespace seamtakt
