#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "formula/heat/handbook_steel.hpp"
#include "formula/heat/joint_field.hpp"

namespace seamtakt::test {

/// Explicit finite differences for the heat equation in any body of cubes, with loss to the air at its open
/// faces: a route to a joint's temperatures that shares nothing with images and Laplace's transform. Arcs put
/// their heat into the cells along the seam.
class HeatGrid {
 public:
  using Cell = std::array<int, 3>;

  HeatGrid(double cell_mm, double loss_W_m2K, const Cell& size)
      : cell_mm_(cell_mm), loss_(loss_W_m2K), size_(size), number_(count_of(size), -1) {}

  /// All cells from `low` to below `high`; cells that are there already stay.
  void add_block(const Cell& low, const Cell& high) {
    for (int i = low[0]; i < high[0]; ++i)
      for (int j = low[1]; j < high[1]; ++j)
        for (int k = low[2]; k < high[2]; ++k) {
          int& number = number_[place({i, j, k})];
          if (number >= 0) continue;
          number = static_cast<int>(cells_.size());
          cells_.push_back({i, j, k});
        }
  }

  /// Two cells that share the arc's heat, at the seam's beginning; the seam goes on along the first axis.
  void set_seam(const Cell& first, const Cell& second, double length_mm) {
    seam_ = {first, second};
    seam_cells_ = static_cast<int>(std::lround(length_mm / cell_mm_));
  }

  /// Rise (K) at places of the seam (mm) at times (s, ascending): the mean of the two cells there.
  std::vector<double> rises_K(std::span<const ArcHeat> arcs, const std::vector<double>& at_mm,
                              const std::vector<double>& at_s) {
    link();
    now_.assign(cells_.size(), 0);
    next_ = now_;
    std::vector<double> rises;
    double time_s = 0;
    const double longest_s = 0.95 * cell_mm_ * cell_mm_ / (6 * diffusivity);
    for (std::size_t i = 0; i < at_s.size(); ++i) {
      while (time_s < at_s[i] - 1e-9) {
        const double step_s = std::min(longest_s, at_s[i] - time_s);
        conduct(step_s);
        for (const ArcHeat& arc : arcs) heat(arc, time_s, time_s + step_s);
        time_s += step_s;
      }
      const int cell = std::clamp(static_cast<int>(at_mm[i] / cell_mm_), 0, seam_cells_ - 1);
      rises.push_back((now_[along(seam_[0], cell)] + now_[along(seam_[1], cell)]) / 2);
    }
    return rises;
  }

  /// Rise (K) of a cell when rises_K() has ended.
  double rise_at_K(const Cell& cell) const { return now_[static_cast<std::size_t>(number_at(cell))]; }
  /// Heat in the body (J).
  double heat_J() const {
    double sum = 0;
    for (const double rise : now_) sum += rise;
    return sum * handbook_heat_capacity_J_mm3K * std::pow(cell_mm_, 3);
  }
  std::size_t cell_count() const { return cells_.size(); }

 private:
  static constexpr double diffusivity = handbook_conductivity_W_mmK / handbook_heat_capacity_J_mm3K;

  static std::size_t count_of(const Cell& size) {
    return static_cast<std::size_t>(size[0]) * static_cast<std::size_t>(size[1]) *
           static_cast<std::size_t>(size[2]);
  }
  std::size_t place(const Cell& cell) const {
    return (static_cast<std::size_t>(cell[0]) * static_cast<std::size_t>(size_[1]) +
            static_cast<std::size_t>(cell[1])) *
               static_cast<std::size_t>(size_[2]) +
           static_cast<std::size_t>(cell[2]);
  }
  int number_at(const Cell& cell) const {
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (cell[axis] < 0 || cell[axis] >= size_[axis]) return -1;
    return number_[place(cell)];
  }
  std::size_t along(Cell cell, int steps) const {
    cell[0] += steps;
    return static_cast<std::size_t>(number_at(cell));
  }

  /// Each cell's six neighbours; itself where there is none, so that no heat passes.
  void link() {
    neighbours_.clear();
    open_faces_.clear();
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      std::array<int, 6> next{};
      int open = 0;
      for (std::size_t face = 0; face < 6; ++face) {
        Cell beside = cells_[i];
        beside[face / 2] += face % 2 == 0 ? 1 : -1;
        const int number = number_at(beside);
        if (number < 0) ++open;
        next[face] = number < 0 ? static_cast<int>(i) : number;
      }
      neighbours_.push_back(next);
      open_faces_.push_back(open);
    }
  }

  void conduct(double step_s) {
    const double flow = diffusivity * step_s / (cell_mm_ * cell_mm_);
    const double lost = loss_ * 1e-6 * step_s / (handbook_heat_capacity_J_mm3K * cell_mm_);
    for (std::size_t i = 0; i < cells_.size(); ++i) {
      double sum = 0;
      for (const int neighbour : neighbours_[i]) sum += now_[static_cast<std::size_t>(neighbour)];
      next_[i] = now_[i] + flow * (sum - 6 * now_[i]) - lost * open_faces_[i] * now_[i];
    }
    std::swap(now_, next_);
  }

  /// What the arc brings between two times, to the cells that it passes.
  void heat(const ArcHeat& arc, double from_s, double to_s) {
    const double begin_s = std::max(from_s, arc.begin_s), end_s = std::min(to_s, arc.end_s);
    if (!(end_s > begin_s)) return;
    const double speed = (arc.to_mm - arc.from_mm) / (arc.end_s - arc.begin_s);
    const double a = arc.from_mm + speed * (begin_s - arc.begin_s),
                 b = arc.from_mm + speed * (end_s - arc.begin_s);
    const double low = std::min(a, b), high = std::max(a, b);
    const double rise_per_mm =
        arc.heat_J_mm / 2 / (handbook_heat_capacity_J_mm3K * cell_mm_ * cell_mm_ * cell_mm_);
    for (int cell = 0; cell < seam_cells_; ++cell) {
      const double passed = std::min(high, (cell + 1) * cell_mm_) - std::max(low, cell * cell_mm_);
      if (passed <= 0) continue;
      for (const Cell& side : seam_) now_[along(side, cell)] += passed * rise_per_mm;
    }
  }

  double cell_mm_, loss_;
  Cell size_;
  std::vector<int> number_;
  std::vector<Cell> cells_;
  std::array<Cell, 2> seam_{};
  int seam_cells_ = 0;
  std::vector<std::array<int, 6>> neighbours_;
  std::vector<int> open_faces_;
  std::vector<double> now_, next_;
};

}  // namespace seamtakt::test
