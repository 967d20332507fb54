#include "line/work_variation.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "line/line_model.hpp"
#include "line/random_stream.hpp"

namespace seamtakt {

namespace {

/// Of StopTimes: 0 to 2.
constexpr std::uint64_t work_time_purpose = 3;

// Numerators and denominators of PPND16, highest power first.
constexpr std::array<double, 8> central_above{2509.0809287301227, 33430.57558358813, 67265.7709270087,
                                              45921.95393154987,  13731.69376550946, 1971.5909503065513,
                                              133.14166789178438, 3.3871328727963665};
constexpr std::array<double, 8> central_below{
    5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597,
    5394.196021424751, 687.1870074920579,  42.31333070160091, 1.0};
constexpr std::array<double, 8> middle_above{0.0007745450142783414, 0.022723844989269184, 0.2417807251774506,
                                             1.2704582524523684,    3.6478483247632045,   5.769497221460691,
                                             4.630337846156546,     1.4234371107496835};
constexpr std::array<double, 8> middle_below{
    1.0507500716444169e-09, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
    0.6897673349851,        1.6763848301838038,    2.053191626637759,    1.0};
constexpr std::array<double, 8> far_above{
    2.0103343992922881e-07, 2.7115555687434876e-05, 0.0012426609473880784, 0.026532189526576124,
    0.29656057182850487,    1.7848265399172913,     5.463784911164114,     6.657904643501103};
constexpr std::array<double, 8> far_below{
    2.0442631033899397e-15, 1.421511758316446e-07, 1.8463183175100548e-05, 0.0007868691311456133,
    0.014875361290850615,   0.1369298809227358,    0.599832206555888,      1.0};

double ratio(const std::array<double, 8>& above, const std::array<double, 8>& below, double x) {
  double over = above[0], under = below[0];
  for (std::size_t i = 1; i < 8; ++i) {
    over = over * x + above[i];
    under = under * x + below[i];
  }
  return over / under;
}

}  // namespace

double normal_quantile(double p) {
  const double q = std::min(p, 1 - 0x1p-53) - 0.5;
  if (std::abs(q) <= 0.425) return q * ratio(central_above, central_below, 0.180625 - q * q);
  const double tail = q < 0 ? p : std::max(1 - p, 0x1p-53);
  const double r = std::sqrt(-std::log(tail));
  const double z = r <= 5 ? ratio(middle_above, middle_below, r - 1.6) : ratio(far_above, far_below, r - 5);
  return q < 0 ? -z : z;
}

WorkVariation WorkVariation::log_normal(double cv) {
  WorkVariation variation;
  if (cv <= 0) return variation;
  variation.kind_ = Kind::log_normal;
  variation.sigma_ = std::sqrt(std::log1p(cv * cv));
  return variation;
}

WorkVariation WorkVariation::triangular(double least, double usual, double most) {
  WorkVariation variation;
  if (most <= least) return variation;
  const double mean = (least + usual + most) / 3;
  variation.kind_ = Kind::triangular;
  variation.least_ = least / mean;
  variation.usual_ = usual / mean;
  variation.most_ = most / mean;
  return variation;
}

double WorkVariation::factor(double u) const {
  if (kind_ == Kind::constant) return 1;
  if (kind_ == Kind::log_normal) return std::exp(sigma_ * (normal_quantile(u) - sigma_ / 2));
  const double wide = most_ - least_, rising = usual_ - least_;
  if (u * wide <= rising) return least_ + std::sqrt(u * wide * rising);
  return most_ - std::sqrt((1 - u) * wide * (most_ - usual_));
}

bool work_varies(const LineModel& model) {
  return std::ranges::any_of(model.stages,
                             [](const LineStage& stage) { return !stage.variation.is_constant(); });
}

std::vector<double> drawn_work_s(const LineModel& model, std::uint64_t seed) {
  std::vector<double> drawn_s = model.work_s;
  const std::size_t stages = model.stage_count();
  for (std::size_t stage = 0; stage < stages; ++stage) {
    const WorkVariation& variation = model.stages[stage].variation;
    if (variation.is_constant()) continue;
    const RandomStream draws(seed, stage, work_time_purpose);
    for (std::size_t unit = 0, at = stage; unit < model.unit_count(); ++unit, at += stages)
      drawn_s[at] *= variation.factor(draws.uniform(model.random_stream_id[unit]));
  }
  return drawn_s;
}

}  // namespace seamtakt
