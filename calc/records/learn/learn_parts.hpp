#pragma once

#include <functional>
#include <set>
#include <string_view>
#include <vector>

#include "records/actual/cycle_actual.hpp"
#include "records/learn/learn.hpp"
#include "records/learn/robust_fit.hpp"

namespace seamtakt {

inline constexpr std::size_t least_records = 6;
inline constexpr const char* learn_source = "common practice, no source";

/// A record with the values for which it is an example.
struct Example {
  const PassRecord* record;
  const Schedule* schedule;
};
using Examples = std::vector<Example>;

/// Residual of one example and its derivatives by the parameters.
using ExampleResidual = std::function<double(const Example& example, const Eigen::VectorXd& parameters,
                                             Eigen::Ref<Eigen::VectorXd> slopes)>;

/// A fit to all examples and its results when each in turn is left out (at most 200 of them, evenly
/// chosen).
struct CheckedFit {
  RobustFit fit;
  Eigen::VectorXd left_out_low, left_out_high;
  double prediction_sd = 0;  ///< of the residuals of those left out, without the outliers
};
std::optional<CheckedFit> checked_fit(const Examples& examples, const ExampleResidual& residual,
                                      const Eigen::VectorXd& start);

// The parts of learn(); each adds parameters, changes the proposal, and says what couldn't be learned.
void learn_melting(const Examples& examples, const Wire& wire, Learned& learned);
void learn_waveform_factor(const Examples& examples, const Schedule& schedule, Learned& learned);
void learn_crater_time(const Examples& examples, const Robot& robot, Learned& learned);
/// `all`: of every robot, because one may wait for another. `after_more`: the records before which the plan
/// has more than the robot's moves.
void learn_moves(const Examples& all, const Plan& plan, const Robot& robot,
                 const std::set<const PassRecord*>& after_more, Learned& learned);
/// Records before which the plan has a turn, a service, a change or a wait.
std::set<const PassRecord*> records_after_more(const std::vector<PassRecord>& records, const Plan& plan);

/// Times that fall into the gaps between passes: the positioner's turns, torch service, changes of wire, tip
/// and spool; the differences to the proposal's timeline, which has the robots' learned moves in it. Then, of
/// the gaps between units, indexing and loading.
void learn_gaps(const Examples& all, const std::vector<PassRecord>& records, Learned& learned);
/// The latter alone. `actual` is of the proposal.
void learn_stations(const CycleActual& actual, Learned& learned);
/// Of the examples in the order of time, the units in which two robots welded at the same time. Where they
/// never do, one may wait for the other.
std::set<std::string_view> parallel_units(const Examples& by_time);
/// A time of the plan as old value + change, from one parameter of a fit of changes.
LearnedParameter changed_time(const std::string& name, double old_s, const CheckedFit& checked,
                              Eigen::Index parameter);
/// The speed of an axis, from the change of the time for a quarter of a turn; endless where no speed takes so
/// little.
LearnedParameter changed_speed(const std::string& name, double old_deg_s, const CheckedFit& checked,
                               Eigen::Index parameter);

void learn_deposition(const Examples& all, const Plan& plan, const std::vector<Weighing>& weighings,
                      Learned& learned);

/// A figure of an example; empty where it hasn't got it.
using Figure = std::function<std::optional<double>(const Example&)>;

/// The robust level of a figure; empty where fewer than least_records have it.
std::optional<LearnedParameter> level_of(const Examples& examples, const Figure& figure, double old_value,
                                         const std::string& name, const char* unit, Learned& learned);

/// Whether the old value is outside the interval by more than a negligible margin.
bool lies_outside(const LearnedParameter& parameter, double margin);

void note_too_few(const std::string& name, std::size_t records, Learned& learned);

}  // namespace seamtakt
