// From the gaps between passes: what falls into them beside the robots' own moves.
#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <unordered_map>

#include "records/learn/gap_part.hpp"
#include "records/learn/learn_parts.hpp"

namespace seamtakt {

namespace {

/// A robot's gaps are used where its plain ones, of air moves, starts and ends, come so near to the plan at
/// the median, of at least so many.
constexpr double nearly_planned_s = 0.5;
constexpr std::size_t least_plain = 3;

constexpr Word not_next = "another pass than the next planned one"_word;
constexpr Word planned_wait = "a planned wait"_word;
constexpr Word robots_in_turn = "another robot that welded in between"_word;
constexpr Word not_its_ways = "times that don't follow the robot's ways"_word;
constexpr Word not_told_apart = "times that can't be told apart"_word;

struct HeldGap {
  const CycleStep* step;
  std::map<std::size_t, double> counts;  ///< how often a part is in it, of an axis how many quarters
  Word left_out;                         ///< why it isn't used; empty: it is
};

double median_size(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

class GapFit {
 public:
  GapFit(const Examples& all, const CycleActual& actual, Learned& learned)
      : all_(all), actual_(actual), learned_(learned) {
    std::sort(all_.begin(), all_.end(), [](const Example& a, const Example& b) {
      return a.record->first_arc_ns < b.record->first_arc_ns;
    });
    parallel_ = parallel_units(all_);
    constexpr std::string_view start = "/arc_start_s";
    for (const LearnedParameter& parameter : learned.parameters)
      if (parameter.name.ends_with(start))
        moves_known_.insert(parameter.name.substr(0, parameter.name.size() - start.size()));
    for (const Finding& finding : learned.findings)
      if (finding.rule == "learn.moves.unclear") unclear_.insert(finding.where);
  }

  void run() {
    for (const UnitActual& unit : actual_.units)
      for (const RobotActual& robot : unit.robots)
        for (const CycleStep& step : robot.steps)
          if (step.kind == CycleStep::Kind::gap && step.before != nullptr && step.difference_s)
            add(unit, step);
    leave_out_robots();
    add_offsets();
    leave_out_undetermined();
    fit();
    count_use();
  }

 private:
  void add(const UnitActual& unit, const CycleStep& step) {
    HeldGap gap{&step, {}, {}};
    const PlannedTimeline& planned = *actual_.planned.at(unit.weldment);
    const GapParts found =
        gap_parts(learned_.proposal, planned, step, !moves_known_.contains(place_of(step)));
    for (const GapPart& part : found.parts) gap.counts[index_of_part(part)] += part.share();
    for (const Undetermined& each : found.unknowable) note_undetermined(each.name, each.why);
    if (!step.skipped.empty() || !step.extra.empty())
      gap.left_out = not_next;
    else if (found.waits)
      gap.left_out = planned_wait;
    else if (!found.unknowable.empty())
      gap.left_out = not_told_apart;
    else if (!parallel_.contains(unit.unit_serial) && another_welds_in(step))
      gap.left_out = robots_in_turn;
    gaps_.push_back(std::move(gap));
  }

  static std::string place_of(const CycleStep& step) { return "cell/robots/" + step.robot; }

  /// Where a robot's start wasn't learned, its gaps may all be longer by the same: a time of its own, which
  /// is fitted and isn't told.
  void add_offsets() {
    for (HeldGap& gap : gaps_)
      if (gap.left_out == Word() && !moves_known_.contains(place_of(*gap.step)))
        gap.counts[index_of_part({place_of(*gap.step), {}})] += 1;
  }

  std::size_t index_of_part(const GapPart& part) {
    const auto at = std::find_if(parts_.begin(), parts_.end(),
                                 [&](const GapPart& known) { return known.name == part.name; });
    if (at != parts_.end()) return static_cast<std::size_t>(at - parts_.begin());
    parts_.push_back(part);
    return parts_.size() - 1;
  }

  bool another_welds_in(const CycleStep& step) const {
    auto at = std::upper_bound(
        all_.begin(), all_.end(), step.before->first_arc_ns,
        [](std::int64_t ns, const Example& example) { return ns < example.record->first_arc_ns; });
    for (; at != all_.end() && at->record->first_arc_ns < step.after->first_arc_ns; ++at)
      if (at->record->robot != step.after->robot && at->record->unit_serial == step.after->unit_serial)
        return true;
    return false;
  }

  void leave_out_robots() {
    std::map<std::string_view, std::vector<double>> plain;
    for (const HeldGap& gap : gaps_)
      if (gap.left_out == Word() && gap.counts.empty())
        plain[gap.step->robot].push_back(std::fabs(*gap.step->difference_s));
    for (HeldGap& gap : gaps_) {
      const std::vector<double>& differences = plain[gap.step->robot];
      const bool follows = !unclear_.contains(place_of(*gap.step)) && differences.size() >= least_plain &&
                           median_size(differences) <= nearly_planned_s;
      if (gap.left_out == Word() && !follows) gap.left_out = not_its_ways;
    }
  }

  /// Parts in too few gaps, then those that the gaps hold only together with others.
  void leave_out_undetermined() {
    for (bool changed = true; changed;) {
      std::vector<std::size_t> gaps_with(parts_.size(), 0);
      for (const HeldGap& gap : gaps_)
        if (gap.left_out == Word())
          for (const auto& [part, count] : gap.counts) ++gaps_with[part];
      changed = false;
      for (std::size_t part = 0; part < parts_.size(); ++part)
        if (gaps_with[part] > 0 && gaps_with[part] < least_records) {
          leave_out(part, "Too few gaps hold it."_word);
          changed = true;
        }
      if (changed) continue;
      for (const std::size_t part : not_separable()) {
        leave_out(part, "The gaps hold it only together with other times."_word);
        changed = true;
      }
    }
    for (std::size_t part = 0; part < parts_.size(); ++part)
      if (column_of(part) < 0) note_undetermined(parts_[part], "No gap that can be used holds it."_word);
  }

  void leave_out(std::size_t part, Word why) {
    note_undetermined(parts_[part], why);
    for (HeldGap& gap : gaps_)
      if (gap.counts.contains(part) && gap.left_out == Word()) gap.left_out = not_told_apart;
  }

  void note_undetermined(const GapPart& part, Word why) {
    if (part.value) note_undetermined(part.name, why);
  }
  void note_undetermined(const std::string& name, Word why) {
    const auto at = std::find_if(learned_.undetermined.begin(), learned_.undetermined.end(),
                                 [&](const Undetermined& known) { return known.name == name; });
    if (at == learned_.undetermined.end()) learned_.undetermined.push_back({name, why});
  }

  /// The parts that are in a gap that is used, in the order of the fit's parameters.
  std::vector<std::size_t> fitted() const {
    std::set<std::size_t> parts;
    for (const HeldGap& gap : gaps_)
      if (gap.left_out == Word())
        for (const auto& [part, count] : gap.counts) parts.insert(part);
    return {parts.begin(), parts.end()};
  }

  std::ptrdiff_t column_of(std::size_t part) const {
    const std::vector<std::size_t> columns = fitted();
    const auto at = std::find(columns.begin(), columns.end(), part);
    return at == columns.end() ? -1 : at - columns.begin();
  }

  /// Parts whose sums the gaps tell and not each alone: those in the kernel of the counts.
  std::vector<std::size_t> not_separable() const {
    const std::vector<std::size_t> columns = fitted();
    if (columns.empty()) return {};
    Eigen::MatrixXd products = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(columns.size()),
                                                     static_cast<Eigen::Index>(columns.size()));
    const auto index = [&](std::size_t part) {
      return static_cast<Eigen::Index>(std::lower_bound(columns.begin(), columns.end(), part) -
                                       columns.begin());
    };
    for (const HeldGap& gap : gaps_) {
      if (gap.left_out != Word()) continue;
      for (const auto& [a, count_a] : gap.counts)
        for (const auto& [b, count_b] : gap.counts) products(index(a), index(b)) += count_a * count_b;
    }
    Eigen::FullPivLU<Eigen::MatrixXd> decomposed(products);
    decomposed.setThreshold(1e-9);
    std::vector<std::size_t> parts;
    if (decomposed.rank() == products.cols()) return parts;
    const Eigen::MatrixXd kernel = decomposed.kernel();
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (kernel.row(static_cast<Eigen::Index>(i)).cwiseAbs().maxCoeff() > 1e-9) parts.push_back(columns[i]);
    return parts;
  }

  void fit() {
    const std::vector<std::size_t> columns = fitted();
    if (columns.empty()) return;
    std::unordered_map<const PassRecord*, const HeldGap*> by_record;
    Examples rows;
    for (const HeldGap& gap : gaps_) {
      if (gap.left_out != Word() || gap.counts.empty()) continue;
      by_record[gap.step->after] = &gap;
      rows.push_back({gap.step->after, nullptr});
    }
    const ExampleResidual residual = [&](const Example& example, const Eigen::VectorXd& changes,
                                         Eigen::Ref<Eigen::VectorXd> slopes) {
      const HeldGap& gap = *by_record.at(example.record);
      double off = *gap.step->difference_s;
      for (std::size_t i = 0; i < columns.size(); ++i) {
        const auto at = gap.counts.find(columns[i]);
        const auto column = static_cast<Eigen::Index>(i);
        slopes[column] = at == gap.counts.end() ? 0 : -at->second;
        off += slopes[column] * changes[column];
      }
      return off;
    };
    const auto checked =
        checked_fit(rows, residual, Eigen::VectorXd::Zero(static_cast<Eigen::Index>(columns.size())));
    for (std::size_t i = 0; i < columns.size(); ++i)
      take(parts_[columns[i]], checked, static_cast<Eigen::Index>(i), columns[i]);
  }

  void take(const GapPart& part, const std::optional<CheckedFit>& checked, Eigen::Index column,
            std::size_t index) {
    if (!part.value) return;
    if (!checked || 2 * checked->fit.rejected >= checked->fit.rows)
      return note_undetermined(part, "The gaps that hold it don't agree."_word);
    double& value = *part.value(learned_.proposal);
    LearnedParameter parameter = part.quarters ? changed_speed(part.name, value, *checked, column)
                                               : changed_time(part.name, value, *checked, column);
    if (!std::isfinite(parameter.high_95))
      return note_undetermined(part, "The gaps that hold it don't agree."_word);
    parameter.records =
        static_cast<std::size_t>(std::count_if(gaps_.begin(), gaps_.end(), [&](const HeldGap& gap) {
          return gap.left_out == Word() && gap.counts.contains(index);
        }));
    if (parameter.proposed) value = parameter.new_value;
    learned_.parameters.push_back(std::move(parameter));
  }

  void count_use() {
    for (const Robot& robot : learned_.proposal.cell->robots) {
      GapUse use{robot.id, 0, 0, {}};
      for (const Word reason : {not_next, planned_wait, robots_in_turn, not_its_ways, not_told_apart}) {
        const auto count = std::count_if(gaps_.begin(), gaps_.end(), [&](const HeldGap& gap) {
          return gap.step->robot == robot.id && gap.left_out == reason;
        });
        if (count > 0) use.left_out.emplace_back(reason, static_cast<std::size_t>(count));
      }
      for (const HeldGap& gap : gaps_) {
        if (gap.step->robot != robot.id) continue;
        ++use.gaps;
        use.used += gap.left_out == Word() ? 1 : 0;
      }
      if (use.gaps > 0) learned_.gaps.push_back(std::move(use));
    }
  }

  Examples all_;
  const CycleActual& actual_;
  Learned& learned_;
  std::set<std::string_view> parallel_;
  std::set<std::string> moves_known_, unclear_;  ///< places of robots
  std::vector<GapPart> parts_;
  std::vector<HeldGap> gaps_;
};

}  // namespace

std::set<const PassRecord*> records_after_more(const std::vector<PassRecord>& records, const Plan& plan) {
  std::set<const PassRecord*> found;
  const CycleActual actual = cycle_actual(records, plan);
  for (const UnitActual& unit : actual.units)
    for (const RobotActual& robot : unit.robots)
      for (const CycleStep& step : robot.steps) {
        if (step.kind != CycleStep::Kind::gap || !step.planned_s) continue;
        const GapParts held = gap_parts(plan, *actual.planned.at(unit.weldment), step, false);
        if (held.waits || !held.parts.empty() || !held.unknowable.empty()) found.insert(step.after);
      }
  return found;
}

LearnedParameter changed_time(const std::string& name, double old_s, const CheckedFit& checked,
                              Eigen::Index parameter) {
  LearnedParameter time;
  time.name = name;
  time.unit = "s";
  time.old_value = old_s;
  time.new_value = old_s + checked.fit.parameters[parameter];
  time.low_95 = old_s + checked.fit.low_95[parameter];
  time.high_95 = old_s + checked.fit.high_95[parameter];
  time.leave_one_out_low = old_s + checked.left_out_low[parameter];
  time.leave_one_out_high = old_s + checked.left_out_high[parameter];
  time.records = checked.fit.rows;
  time.outliers = checked.fit.rejected;
  if (time.new_value > 0) time.prediction_sd_pct = 100 * checked.prediction_sd / time.new_value;
  // A hundredth of a second is below what a cycle shows.
  time.proposed = time.new_value >= 0 && lies_outside(time, 0.01);
  return time;
}

/// The time of a quarter of a turn is longer by the fit's parameter.
LearnedParameter changed_speed(const std::string& name, double old_deg_s, const CheckedFit& checked,
                               Eigen::Index parameter) {
  const auto speed_deg_s = [&](double change_s) {
    const double quarter_s = 90 / old_deg_s + change_s;
    return quarter_s > 0 ? 90 / quarter_s : std::numeric_limits<double>::infinity();
  };
  const RobustFit& fit = checked.fit;
  LearnedParameter speed;
  speed.name = name;
  speed.unit = "deg/s";
  speed.old_value = old_deg_s;
  speed.new_value = speed_deg_s(fit.parameters[parameter]);
  speed.low_95 = speed_deg_s(fit.high_95[parameter]);
  speed.high_95 = speed_deg_s(fit.low_95[parameter]);
  speed.leave_one_out_low = speed_deg_s(checked.left_out_high[parameter]);
  speed.leave_one_out_high = speed_deg_s(checked.left_out_low[parameter]);
  speed.records = fit.rows;
  speed.outliers = fit.rejected;
  speed.prediction_sd_pct = 100 * checked.prediction_sd * speed.new_value / 90;
  // A hundredth of a second in half a turn is below what a cycle shows.
  speed.proposed = lies_outside(speed, old_deg_s * old_deg_s * 0.01 / 180);
  return speed;
}

void learn_gaps(const Examples& all, const std::vector<PassRecord>& records, Learned& learned) {
  if (!learned.proposal.cell || all.empty()) return;
  const CycleActual actual = cycle_actual(records, learned.proposal);
  GapFit(all, actual, learned).run();
  learn_stations(cycle_actual(records, learned.proposal), learned);
}

}  // namespace seamtakt
