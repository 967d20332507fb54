// Parameters that are the level of one figure: the waveform factor and the crater time.
#include <algorithm>
#include <cmath>

#include "records/learn/learn_parts.hpp"
#include "records/statistics/process_chart.hpp"

namespace seamtakt {

std::optional<LearnedParameter> level_of(const Examples& examples, const Figure& figure, double old_value,
                                         const std::string& name, const char* unit, Learned& learned) {
  Examples rows;
  for (const Example& example : examples)
    if (figure(example)) rows.push_back(example);
  if (rows.empty()) return std::nullopt;
  if (rows.size() < least_records) {
    note_too_few(name, rows.size(), learned);
    return std::nullopt;
  }
  const ExampleResidual residual = [&figure](const Example& example, const Eigen::VectorXd& level,
                                             Eigen::Ref<Eigen::VectorXd> slopes) {
    slopes[0] = -1;
    return *figure(example) - level[0];
  };
  const auto checked = checked_fit(rows, residual, Eigen::VectorXd::Constant(1, *figure(rows.front())));
  if (!checked) return std::nullopt;
  LearnedParameter parameter;
  parameter.name = name;
  parameter.unit = unit;
  parameter.old_value = old_value;
  parameter.new_value = checked->fit.parameters[0];
  parameter.low_95 = checked->fit.low_95[0];
  parameter.high_95 = checked->fit.high_95[0];
  parameter.leave_one_out_low = checked->left_out_low[0];
  parameter.leave_one_out_high = checked->left_out_high[0];
  parameter.records = checked->fit.rows;
  parameter.outliers = checked->fit.rejected;
  if (parameter.new_value != 0)
    parameter.prediction_sd_pct = 100 * checked->prediction_sd / std::fabs(parameter.new_value);
  return parameter;
}

bool lies_outside(const LearnedParameter& parameter, double margin) {
  return parameter.old_value < parameter.low_95 - margin || parameter.old_value > parameter.high_95 + margin;
}

void learn_waveform_factor(const Examples& examples, const Schedule& schedule, Learned& learned) {
  const Figure factor = [](const Example& example) -> std::optional<double> {
    const PassRecord& record = *example.record;
    const SteadyMeans& steady = record.steady;
    // Averaged signals (method A) don't know it; a logged power (C) is filtered in ways of its own.
    if (record.energy_method != "B" || !steady.power_W || !steady.current_A || !steady.voltage_V)
      return std::nullopt;
    const double product = *steady.current_A * *steady.voltage_V;
    return product > 0 ? std::optional<double>(*steady.power_W / product) : std::nullopt;
  };
  auto parameter = level_of(examples, factor, schedule.waveform_factor,
                            "schedules/" + schedule.id + "/waveform_factor", "", learned);
  if (!parameter) return;
  // A part in a thousand is below what any arc voltage is measured to.
  parameter->proposed = lies_outside(*parameter, 1e-3);
  if (parameter->proposed) {
    Schedule& proposal = *find_by_id(learned.proposal.schedules, schedule.id);
    proposal.waveform_factor = parameter->new_value;
    // What the records say of a single pass, not of their mean.
    const std::size_t rows = parameter->records - parameter->outliers;
    proposal.U_waveform_factor_pct =
        std::min(100.0, student_t_95(std::max<std::size_t>(rows, 2) - 1) * parameter->prediction_sd_pct);
  }
  learned.parameters.push_back(*parameter);
}

void learn_crater_time(const Examples& examples, const Robot& robot, Learned& learned) {
  const Figure stood = [](const Example& example) -> std::optional<double> {
    // A schedule that has a crater time of its own says nothing of the robot's.
    return example.schedule->crater_fill_s ? std::nullopt : example.record->end_stand_s;
  };
  auto parameter = level_of(examples, stood, robot.crater_fill_s,
                            "cell/robots/" + robot.id + "/crater_fill_s", "s", learned);
  if (!parameter) return;
  // The samples' spacing isn't known here: a hundredth of a second is below what a cycle shows.
  parameter->proposed = lies_outside(*parameter, 0.01);
  if (parameter->proposed)
    find_by_id(learned.proposal.cell->robots, robot.id)->crater_fill_s = parameter->new_value;
  learned.parameters.push_back(*parameter);
}

}  // namespace seamtakt
