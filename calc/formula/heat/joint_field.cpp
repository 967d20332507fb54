#include "formula/heat/joint_field.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "formula/heat/handbook_steel.hpp"

namespace seamtakt {

namespace {

constexpr double diffusivity_mm2_s = handbook_conductivity_W_mmK / handbook_heat_capacity_J_mm3K;
constexpr double pi = std::numbers::pi;

/// Ages of the table: from the first in steps of a decade's part. Heat younger than least_age_s is in the
/// pool, where no temperature is reported.
constexpr double first_age_s = 0.05, least_age_s = 0.1;

/// 1 + 2 sum exp(-(m pi)^2 tau), m = 1, 2, ...: a source at one face of a wall with two closed faces, seen at
/// that face, over its mean. tau = a t/d^2. By images where those are few.
double closed_wall(double tau) {
  if (tau < 0.3) {
    const double images = std::exp(-1 / tau) + std::exp(-4 / tau) + std::exp(-9 / tau);
    return (1 + 2 * images) / std::sqrt(pi * tau);
  }
  const double first = std::exp(-pi * pi * tau);
  return 1 + 2 * (first + std::pow(first, 4) + std::pow(first, 9));
}

constexpr int stehfest_terms = 12;

/// Weights of the sum over F(i ln2/t). Source: stehfest-1970.
std::array<double, stehfest_terms> stehfest_weights() {
  const auto factorial = [](int n) { return std::tgamma(n + 1.0); };
  constexpr int half = stehfest_terms / 2;
  std::array<double, stehfest_terms> weights{};
  for (int i = 1; i <= stehfest_terms; ++i) {
    double sum = 0;
    for (int k = (i + 1) / 2; k <= std::min(i, half); ++k)
      sum +=
          std::pow(k, half) * factorial(2 * k) /
          (factorial(half - k) * factorial(k) * factorial(k - 1) * factorial(i - k) * factorial(2 * k - i));
    weights[static_cast<std::size_t>(i - 1)] = (i + half) % 2 == 0 ? sum : -sum;
  }
  return weights;
}

/// Gauss and Legendre's eight points on [-1, 1]. Source: abramowitz-stegun, Table 25.4.
constexpr std::array<double, 4> gauss_point{0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                            0.9602898564975363};
constexpr std::array<double, 4> gauss_weight{0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                             0.1012285362903763};

template <class Function>
double integral(double from, double to, const Function& function) {
  const double middle = (from + to) / 2, half = (to - from) / 2;
  double sum = 0;
  for (std::size_t i = 0; i < gauss_point.size(); ++i)
    sum += gauss_weight[i] *
           (function(middle - half * gauss_point[i]) + function(middle + half * gauss_point[i]));
  return sum * half;
}

double sum_of(const std::vector<double>& numbers) {
  double sum = 0;
  for (const double number : numbers) sum += number;
  return sum;
}

/// Surface (mm2) of the two plates. Where one is set on the other, or edge is at edge, no air cools.
double open_surface_mm2(const JointShape& shape) {
  double surface = 0;
  for (const JointPlate& plate : shape.plates) {
    const double width = sum_of(plate.reach_mm);
    surface += 2 * (width * plate.length_mm + plate.thickness_mm * (width + plate.length_mm));
  }
  const auto& [first, second] = shape.plates;
  const bool is_butt = first.reach_mm.size() == 1 && second.reach_mm.size() == 1;
  const double touching = is_butt ? std::min(first.thickness_mm, second.thickness_mm) : second.thickness_mm;
  return surface - 2 * touching * std::min(first.length_mm, second.length_mm);
}

}  // namespace

double closed_rod_per_mm(double at_mm, double source_mm, double length_mm, double age_s) {
  const double tau = diffusivity_mm2_s * age_s / (length_mm * length_mm);
  if (tau >= 0.2) {
    double sum = 1;
    for (int m = 1; m <= 4; ++m) {
      const double wave = m * pi / length_mm;
      sum += 2 * std::cos(wave * at_mm) * std::cos(wave * source_mm) * std::exp(-(m * pi) * (m * pi) * tau);
    }
    return sum / length_mm;
  }
  const double spread_mm2 = 4 * diffusivity_mm2_s * age_s;
  const int images = tau < 0.02 ? 1 : 2;
  double sum = 0;
  for (int m = -images; m <= images; ++m) {
    const double shift_mm = 2 * m * length_mm, direct = at_mm - source_mm - shift_mm,
                 mirrored = at_mm + source_mm - shift_mm;
    sum += std::exp(-direct * direct / spread_mm2) + std::exp(-mirrored * mirrored / spread_mm2);
  }
  return sum / std::sqrt(pi * spread_mm2);
}

JointField::JointField(const JointShape& shape, double loss_W_m2K) : shape_(shape) {
  double thickness_sum = 0;
  for (const JointPlate& plate : shape_.plates) {
    thickness_sum += plate.thickness_mm * static_cast<double>(plate.reach_mm.size());
    volume_mm3_ += plate.thickness_mm * sum_of(plate.reach_mm) * plate.length_mm;
  }
  constexpr double per_mm2 = 1e-6;
  loss_per_s_ =
      loss_W_m2K * per_mm2 * open_surface_mm2(shape_) / (handbook_heat_capacity_J_mm3K * volume_mm3_);
  equal_lengths_ = shape_.plates[0].length_mm == shape_.plates[1].length_mm &&
                   shape_.plates[0].before_mm == shape_.plates[1].before_mm;
  const double effective_mm = pi * thickness_sum / (2 * shape_.wedge_rad);
  for (std::size_t i = 0; i < age_count; ++i) {
    const double age_s = first_age_s * std::pow(10, static_cast<double>(i) / ages_per_decade);
    const double through = closed_wall(diffusivity_mm2_s * age_s / (effective_mm * effective_mm));
    log_response_[i] = std::log(node_response_per_mm2(age_s) * through);
    share_[i] = share_of_first(age_s);
  }
}

/// Of all sheets together, to heat on the line, over the plate's heat capacity.
double JointField::node_response_per_mm2(double age_s) const {
  static const std::array<double, stehfest_terms> weights = stehfest_weights();
  double sum = 0;
  for (int i = 1; i <= stehfest_terms; ++i) {
    const double wave_per_mm = std::sqrt(i * std::numbers::ln2 / (age_s * diffusivity_mm2_s));
    double flow = 0;
    for (const JointPlate& plate : shape_.plates)
      for (const double reach_mm : plate.reach_mm)
        flow += plate.thickness_mm * std::tanh(wave_per_mm * reach_mm);
    sum += weights[static_cast<std::size_t>(i - 1)] / (diffusivity_mm2_s * wave_per_mm * flow);
  }
  return sum * std::numbers::ln2 / age_s;
}

/// By the cross-sections that heat has reached in each.
double JointField::share_of_first(double age_s) const {
  std::array<double, 2> reached_mm2{};
  for (std::size_t i = 0; i < 2; ++i)
    for (const double reach_mm : shape_.plates[i].reach_mm)
      reached_mm2[i] += shape_.plates[i].thickness_mm * reach_mm /
                        closed_wall(diffusivity_mm2_s * age_s / (reach_mm * reach_mm));
  return reached_mm2[0] / (reached_mm2[0] + reached_mm2[1]);
}

double JointField::along_per_mm(std::size_t plate, double at_mm, double source_mm, double age_s) const {
  const JointPlate& along = shape_.plates[plate];
  const auto within = [&](double place_mm) {
    return std::clamp(place_mm + along.before_mm, 0.0, along.length_mm);
  };
  return closed_rod_per_mm(within(at_mm), within(source_mm), along.length_mm, age_s);
}

double JointField::between_ages(const std::array<double, age_count>& table, double age_s) const {
  const double last = static_cast<double>(age_count - 1);
  const double place = std::clamp(std::log10(age_s / first_age_s) * ages_per_decade, 0.0, last);
  const std::size_t below = std::min(static_cast<std::size_t>(place), age_count - 2);
  return table[below] + (place - static_cast<double>(below)) * (table[below + 1] - table[below]);
}

double JointField::share_held(std::size_t plate, double age_s) const {
  const double first = between_ages(share_, age_s);
  if (equal_lengths_) return plate == 0 ? first : 1 - first;
  std::array<double, 2> held{first, 1 - first};
  for (std::size_t i = 0; i < 2; ++i) {
    const double middle_mm = shape_.plates[i].length_mm / 2;
    held[i] /= closed_rod_per_mm(middle_mm, middle_mm, shape_.plates[i].length_mm, age_s);
  }
  return held[plate] / (held[0] + held[1]);
}

double JointField::response_per_mm3(double at_mm, double source_mm, double age_s) const {
  const double across = std::exp(between_ages(log_response_, age_s) - loss_per_s_ * age_s);
  const double first = along_per_mm(0, at_mm, source_mm, age_s);
  if (equal_lengths_) return across * first;

  const double second = along_per_mm(1, at_mm, source_mm, age_s);
  if (!(first > 0 && second > 0)) return 0;
  const double share = between_ages(share_, age_s);
  const double as_flows = 1 / (share / first + (1 - share) / second);
  const double geometric = std::exp(share * std::log(first) + (1 - share) * std::log(second));
  const double heated_through = std::min(1.0, 1 / (shape_.plates[0].length_mm * first)) *
                                std::min(1.0, 1 / (shape_.plates[1].length_mm * second));
  return across * (heated_through * as_flows + (1 - heated_through) * geometric);
}

/// In pieces short enough for the points of integration: the age at most doubles, and the arc goes on by no
/// more than heat spreads.
double JointField::rise_of(const ArcHeat& arc, double at_mm, double at_s) const {
  const double oldest_s = at_s - arc.begin_s, youngest_s = std::max(at_s - arc.end_s, least_age_s);
  const double duration_s = arc.end_s - arc.begin_s, way_mm = arc.to_mm - arc.from_mm;
  if (!(duration_s > 0) || way_mm == 0 || !(oldest_s > youngest_s)) return 0;
  const double speed_mm_s = way_mm / duration_s;
  if (!std::isfinite(speed_mm_s)) return 0;
  const auto place_mm = [&](double age_s) { return arc.from_mm + speed_mm_s * (oldest_s - age_s); };
  constexpr double negligible_exponent = 30, most_pieces = 4096;
  const double shortest_s = (oldest_s - youngest_s) / most_pieces;
  double sum = 0;
  for (double age_s = youngest_s; age_s < oldest_s;) {
    const double spread_mm = std::sqrt(4 * diffusivity_mm2_s * age_s);
    const double piece_s = std::max(std::min(age_s, 2 * spread_mm / std::abs(speed_mm_s)), shortest_s);
    const double next_s = std::min(age_s + piece_s, oldest_s);
    if (!(next_s > age_s)) break;  // an arc shorter than its age can tell apart
    const double left = place_mm(age_s) - at_mm, right = place_mm(next_s) - at_mm;
    const double nearest_mm = left * right <= 0 ? 0 : std::min(std::abs(left), std::abs(right));
    if (nearest_mm * nearest_mm < negligible_exponent * 4 * diffusivity_mm2_s * next_s)
      sum += integral(age_s, next_s, [&](double age) { return response_per_mm3(at_mm, place_mm(age), age); });
    age_s = next_s;
  }
  return sum * arc.heat_J_mm * std::abs(speed_mm_s) / handbook_heat_capacity_J_mm3K;
}

double JointField::rise_K(double at_mm, double at_s, std::span<const ArcHeat> arcs) const {
  double sum = 0;
  for (const ArcHeat& arc : arcs) sum += rise_of(arc, at_mm, at_s);
  return sum;
}

}  // namespace seamtakt
