#pragma once

#include <algorithm>
#include <array>
#include <limits>
#include <span>
#include <vector>

#include "formula/note.hpp"

namespace seamtakt {

/// Temperature at a seam's line after earlier passes, in a joint of two plates of finite size: what a pass
/// finds where it begins.
///
/// Each piece of each earlier arc is an instantaneous source on the seam's line; their rises are added
/// (superposition), so constant properties are assumed. The response of the joint to one source is the
/// product of
///   - along the seam: the source and its images in the plates' ends, no heat lost there (Source: grong-1997,
///     chapter 1, the principle of images; komanduri-hou-2000 for short workpieces);
///   - across it: sheets of finite width that meet at the line, as many as there are ways from the line to an
///     edge, at one temperature there. In Laplace's domain the flows into them add up,
///     1/G = sum(d*sqrt(a*s)*tanh(b*sqrt(s/a))), and G is brought back by Stehfest's sum (Source:
///     stehfest-1970);
///   - through the thickness: the series of images of a plate of thickness d_e = pi*sum(d)/(2*beta), so that
///     the first moments are those of a line source in a wedge of metal of angle beta (derived);
///   - exp(-b*t), b = h*A/(rho_c*V) of both plates: the loss of a lumped body (common practice), so that a
///     wait ends.
/// Plates of unequal lengths have no closed product: their responses along the seam are averaged by the heat
/// that each holds, as flows (harmonic) when both are heated through, geometrically before (derived).
/// Accuracy: within 10 % of the rise from 5 s after the arc on, by finite differences (tests/formula/
/// joint_field_test.cpp); properties that vary with temperature are not in it. Closer to the arc it says
/// nothing.

/// A plate as the heat of its seam sees it. Lengths above 0.
struct JointPlate {
  double thickness_mm = 0;
  std::vector<double> reach_mm;  ///< from the seam's line across the plate to its edges: one or two ways
  double length_mm = 0;          ///< along the seam
  double before_mm = 0;          ///< how far before the seam's beginning the plate begins
};

struct JointShape {
  std::array<JointPlate, 2> plates;
  double wedge_rad = 0;  ///< of metal round the seam's line: pi of a butt, 3*pi/2 of a fillet
};

/// One arc along the seam, at constant speed. Where a pass goes back, to_mm is below from_mm.
struct ArcHeat {
  double from_mm = 0, to_mm = 0;  ///< along the seam
  double begin_s = 0, end_s = 0;  ///< end_s above begin_s
  double heat_J_mm = 0;           ///< heat input, with thermal efficiency
};

/// Response (1/mm) at a place of a rod [0, length] with closed ends to a source in it, age_s after: by images
/// in the ends, or by the equal cosine series where those are many. Lengths and age above 0.
double closed_rod_per_mm(double at_mm, double source_mm, double length_mm, double age_s);

/// The first time (s) from from_s on at which rise_K(time) is rise_limit_K or less, to 1 ms; infinity where
/// it isn't within within_s.
template <class Rise>
double first_time_cooled_s(const Rise& rise_K, double rise_limit_K, double from_s, double within_s) {
  const auto is_hot = [&](double at_s) { return rise_K(at_s) > rise_limit_K; };
  if (!is_hot(from_s)) return from_s;
  const double last_s = from_s + within_s;
  double hot_s = from_s, cold_s = std::min(from_s + 1, last_s);
  for (double step_s = 2; is_hot(cold_s); step_s *= 2) {
    if (cold_s >= last_s) return std::numeric_limits<double>::infinity();
    hot_s = cold_s;
    cold_s = std::min(hot_s + step_s, last_s);
  }
  constexpr double close_enough_s = 1e-3;
  while (cold_s - hot_s > close_enough_s) {
    const double middle_s = (hot_s + cold_s) / 2;
    (is_hot(middle_s) ? hot_s : cold_s) = middle_s;
  }
  return cold_s;
}

class JointField {
 public:
  /// loss_W_m2K: at all surfaces, >= 0. Properties are the handbook's of plain carbon steel.
  JointField(const JointShape& shape, double loss_W_m2K);

  /// K above the plates' own temperature, at a place of the seam and a time; arcs that begin later count
  /// nothing, one that burns counts up to then. Without limit near the arc itself.
  double rise_K(double at_mm, double at_s, std::span<const ArcHeat> arcs) const;

  /// first_time_cooled_s() of a place.
  double cooled_at_s(double at_mm, double rise_limit_K, double from_s, double within_s,
                     std::span<const ArcHeat> arcs) const {
    return first_time_cooled_s([&](double at_s) { return rise_K(at_mm, at_s, arcs); }, rise_limit_K, from_s,
                               within_s);
  }

  double volume_mm3() const { return volume_mm3_; }
  /// Share of the rise that is lost to the air (1/s).
  double loss_per_s() const { return loss_per_s_; }
  /// Share of an arc's heat that a plate (0, 1) holds age_s later, by the volumes that it has reached; above
  /// 0.
  double share_held(std::size_t plate, double age_s) const;

 private:
  static constexpr int ages_per_decade = 16, decades = 7;
  static constexpr std::size_t age_count = static_cast<std::size_t>(ages_per_decade * decades + 1);

  double rise_of(const ArcHeat& arc, double at_mm, double at_s) const;
  double response_per_mm3(double at_mm, double source_mm, double age_s) const;
  double along_per_mm(std::size_t plate, double at_mm, double source_mm, double age_s) const;
  double node_response_per_mm2(double age_s) const;
  double share_of_first(double age_s) const;
  double between_ages(const std::array<double, age_count>& table, double age_s) const;

  JointShape shape_;
  bool equal_lengths_ = true;
  double volume_mm3_ = 0, loss_per_s_ = 0;
  std::array<double, age_count> log_response_{};  ///< across and through the thickness, over the age's log
  std::array<double, age_count> share_{};         ///< of the heat that the first plate holds
};

inline constexpr FormulaNote interpass_plates_note{
    "interpass.plates",
    "wait_s",
    "t = time(T0 + dT = Ti)",
    "grong-1997",
    "chapter 1, images; loss of a lumped body",
    "from 5 s after the arc; dT: the rises of all passes before, added, in plates of the given sizes; "
    "constant properties of plain carbon steel",
    "within 10 % of the rise by finite differences; not validated by measurements here",
    SourceBasis::derived};

}  // namespace seamtakt
