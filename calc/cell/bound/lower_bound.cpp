#include "cell/bound/lower_bound.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <set>

#include "cell/bound/least_times.hpp"
#include "cell/bound/phase_bound.hpp"

namespace seamtakt {

namespace {

double load_bound_s(const CellModel& model, const LeastTimes& least, std::uint64_t robots) {
  double work = 0, arc = 0;
  for (std::size_t i = 0; i < model.seams.size(); ++i) {
    if (model.seams[i].robot_mask & ~robots) continue;
    work += least.work_s[i];
    arc += capped_arc_s(model, model.seams[i]);
  }
  if (work <= 0) return 0;
  const int count = std::popcount(robots);
  work += least_way_home_s(least, robots);
  return std::max(work / count + least.turns_s, (work + services_s(model, arc, count)) / count);
}

double chain_bound_s(const CellModel& model, const LeastTimes& least) {
  std::vector<double> end_s(model.seams.size(), 0);
  double bound = 0;
  for (const int i : model.precedence_order) {
    const CellSeam& seam = model.seams[i];
    for (int k = seam.first_after; k < seam.first_after + seam.after_count; ++k)
      end_s[i] = std::max(end_s[i], end_s[model.after[k]]);
    end_s[i] += least.work_s[i];
    for (int pass = seam.first_pass; pass < seam.first_pass + seam.pass_count; ++pass)
      end_s[i] += model.passes[pass].interpass_wait_s;
    bound = std::max(bound, end_s[i] + least_way_home_s(least, seam.robot_mask));
  }
  return bound;
}

double zone_bound_s(const CellModel& model, const LeastTimes& least) {
  std::vector<double> work_s(static_cast<std::size_t>(model.zone_count), 0);
  for (std::size_t i = 0; i < model.seams.size(); ++i) {
    const CellSeam& seam = model.seams[i];
    for (int k = seam.first_zone; k < seam.first_zone + seam.zone_count; ++k)
      work_s[model.zones_of[k]] += least.work_s[i];
  }
  double bound = 0;
  for (const double work : work_s)
    if (work > 0) bound = std::max(bound, work + least.turns_s + least_way_home_s(least, ~std::uint64_t{0}));
  return bound;
}

}  // namespace

double makespan_bound_s(const CellModel& model) {
  if (model.seams.empty()) return 0;
  const LeastTimes least = least_times(model);
  const int count = model.robot_count();
  std::set<std::uint64_t> sets{count == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << count) - 1};
  for (const CellSeam& seam : model.seams) sets.insert(seam.robot_mask);
  double bound = std::max(chain_bound_s(model, least), zone_bound_s(model, least));
  for (const std::uint64_t robots : sets) bound = std::max(bound, load_bound_s(model, least, robots));
  return std::max(bound, phase_bound_s(model, least));
}

double station_cycle_s(int stations, double weld_s, double load_s, double unload_s, double index_s) {
  if (stations < 2) return load_s + weld_s + unload_s;
  return std::max(weld_s + index_s, load_s + unload_s + index_s);
}

}  // namespace seamtakt
