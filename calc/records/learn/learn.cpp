#include "records/learn/learn.hpp"

#include <algorithm>
#include <cmath>

#include "records/learn/learn_parts.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t most_left_out = 200;

FitModel model_of(const Examples& examples, const ExampleResidual& residual) {
  return [&examples, &residual](const Eigen::VectorXd& parameters, Eigen::VectorXd& residuals,
                                Eigen::MatrixXd& jacobian) {
    const auto n = static_cast<Eigen::Index>(examples.size());
    residuals.resize(n);
    jacobian.resize(n, parameters.size());
    Eigen::VectorXd slopes(parameters.size());
    for (Eigen::Index i = 0; i < n; ++i) {
      residuals[i] = residual(examples[static_cast<std::size_t>(i)], parameters, slopes);
      jacobian.row(i) = slopes.transpose();
    }
  };
}

Examples without(const Examples& examples, std::size_t left_out) {
  Examples others = examples;
  others.erase(others.begin() + static_cast<std::ptrdiff_t>(left_out));
  return others;
}

}  // namespace

std::optional<CheckedFit> checked_fit(const Examples& examples, const ExampleResidual& residual,
                                      const Eigen::VectorXd& start) {
  const auto fit = robust_fit(model_of(examples, residual), start);
  if (!fit) return std::nullopt;
  CheckedFit checked{*fit, fit->parameters, fit->parameters, 0};
  const std::size_t stride = (examples.size() + most_left_out - 1) / most_left_out;
  double squares = 0;
  std::size_t predicted = 0;
  Eigen::VectorXd slopes(start.size());
  for (std::size_t i = 0; i < examples.size(); i += stride) {
    const Examples others = without(examples, i);
    const auto again = robust_fit(model_of(others, residual), fit->parameters);
    if (!again) continue;
    checked.left_out_low = checked.left_out_low.cwiseMin(again->parameters);
    checked.left_out_high = checked.left_out_high.cwiseMax(again->parameters);
    const double off = residual(examples[i], again->parameters, slopes);
    if (std::fabs(off) > 4.685 * std::max(fit->scale, 1e-12)) continue;
    squares += off * off;
    ++predicted;
  }
  if (predicted > 0) checked.prediction_sd = std::sqrt(squares / static_cast<double>(predicted));
  return checked;
}

void note_too_few(const std::string& name, std::size_t records, Learned& learned) {
  learned.findings.push_back(
      {"learn.records.few", Severity::note, name, static_cast<double>(records),
       static_cast<double>(least_records), "",
       Sentence("learn.records.few"_key, {{"records", records}, {"needed", least_records}}), learn_source});
}

Learned learn(const std::vector<PassRecord>& records, const Plan& plan,
              const std::vector<Weighing>& weighings) {
  Learned learned;
  learned.proposal = plan;
  Examples all;
  for (const PassRecord& record : records)
    if (const Schedule* schedule = find_by_id(plan.schedules, record.schedule);
        schedule != nullptr && record.steady.time_s > 0)
      all.push_back({&record, schedule});
  const auto chosen = [&](const auto& belongs) {
    Examples examples;
    std::copy_if(all.begin(), all.end(), std::back_inserter(examples), belongs);
    return examples;
  };
  for (const Wire& wire : plan.wires)
    learn_melting(chosen([&](const Example& e) { return e.schedule->wire == wire.id; }), wire, learned);
  for (const Schedule& schedule : plan.schedules)
    learn_waveform_factor(chosen([&](const Example& e) { return e.schedule == &schedule; }), schedule,
                          learned);
  const std::set<const PassRecord*> after_more = records_after_more(records, plan);
  if (plan.cell)
    for (const Robot& robot : plan.cell->robots) {
      learn_crater_time(chosen([&](const Example& e) { return e.record->robot == robot.id; }), robot,
                        learned);
      learn_moves(all, plan, robot, after_more, learned);
    }
  learn_gaps(all, records, learned);
  if (!all.empty()) learn_deposition(all, plan, weighings, learned);
  return learned;
}

}  // namespace seamtakt
