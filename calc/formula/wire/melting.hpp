#pragma once

#include <cmath>
#include <optional>
#include <string_view>

#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {

/// Wire feed speed and current of a consumable electrode.
///   W = alpha*I + beta*l*I^2     inverse  I = 2*W/(alpha + sqrt(alpha^2 + 4*beta*l*W))
/// l is the electrode extension, contact tip to arc root: contact tip distance less arc length.
/// Source: lesnewich-1958 (recalled). The inverse is written so that nothing cancels where beta*l is small.
/// With any waveform the mean feed is alpha*mean(I) + beta*l*Irms^2 (derived: the arc term is linear in I,
/// the resistance term quadratic). Accuracy: +-15 % with the coefficients below (common practice); calibrate
/// on the shop's own wire. alpha (mm/(A s), >= 0), beta (1/(A^2 s), >= 0), not both 0.

struct MeltingCoefficients {
  double alpha_mm_s_A, beta_per_s_A2;
};

/// Current (A, >= 0), extension (mm, > 0) -> mm/s.
template <class Real>
Real wire_feed_speed_mm_s(const Real& current_A, const Real& extension_mm, const Real& alpha_mm_s_A,
                          const Real& beta_per_s_A2) {
  return Real(alpha_mm_s_A * current_A + beta_per_s_A2 * extension_mm * current_A * current_A);
}

/// The same from mean and effective (rms) current, for any waveform; rms >= mean.
template <class Real>
Real wire_feed_speed_of_waveform_mm_s(const Real& mean_current_A, const Real& rms_current_A,
                                      const Real& extension_mm, const Real& alpha_mm_s_A,
                                      const Real& beta_per_s_A2) {
  return Real(alpha_mm_s_A * mean_current_A + beta_per_s_A2 * extension_mm * rms_current_A * rms_current_A);
}

/// Steady current (A) at a wire feed speed (mm/s, > 0).
template <class Real>
Real melting_current_A(const Real& feed_mm_s, const Real& extension_mm, const Real& alpha_mm_s_A,
                       const Real& beta_per_s_A2) {
  using std::sqrt;
  const Real root = sqrt(alpha_mm_s_A * alpha_mm_s_A + 4.0 * beta_per_s_A2 * extension_mm * feed_mm_s);
  return Real(2.0 * feed_mm_s / (alpha_mm_s_A + root));
}

/// Mean current (A) at a wire feed speed where the rms current is known: alpha > 0. Negative where the
/// resistance term alone would melt more than is fed.
template <class Real>
Real melting_mean_current_A(const Real& feed_mm_s, const Real& rms_current_A, const Real& extension_mm,
                            const Real& alpha_mm_s_A, const Real& beta_per_s_A2) {
  return Real((feed_mm_s - beta_per_s_A2 * extension_mm * rms_current_A * rms_current_A) / alpha_mm_s_A);
}

/// m/min <-> mm/s: files and results give wire feed in m/min, the law works in mm/s.
template <class Real>
Real feed_mm_s_from_m_min(const Real& feed_m_min) {
  return Real(feed_m_min * 1000.0 / 60.0);
}
template <class Real>
Real feed_m_min_from_mm_s(const Real& feed_mm_s) {
  return Real(feed_mm_s * 60.0 / 1000.0);
}

inline constexpr double melting_reference_diameter_mm = 1.2;

/// Coefficients of the 1.2 mm solid wire by material: reference/wires.csv, read once; empty for a material
/// without published ones. InputError: the table is damaged.
std::optional<MeltingCoefficients> reference_melting_coefficients(std::string_view material);

/// A coefficient of the 1.2 mm wire scaled to another diameter (mm, > 0): alpha as 1/d^2, beta as 1/d^4
/// (derived: voltage over enthalpy of the section; resistance over enthalpy and section squared).
template <class Real>
Real scaled_alpha_mm_s_A(double alpha_at_reference_mm_s_A, const Real& wire_diameter_mm) {
  const Real ratio = melting_reference_diameter_mm / wire_diameter_mm;
  return Real(alpha_at_reference_mm_s_A * ratio * ratio);
}
template <class Real>
Real scaled_beta_per_s_A2(double beta_at_reference_per_s_A2, const Real& wire_diameter_mm) {
  const Real ratio = melting_reference_diameter_mm / wire_diameter_mm;
  const Real square = ratio * ratio;
  return Real(beta_at_reference_per_s_A2 * square * square);
}

inline constexpr ValidRange melting_diameter_range{
    "melting.diameter.range", "The wire diameter"_word, 0.8, 1.6, "mm", "lesnewich-1958, as scaled here"};
inline constexpr ValidRange melting_extension_range{
    "melting.extension.range", "The electrode extension"_word, 5, 35, "mm", "common practice, no source"};
inline constexpr ValidRange melting_current_range{
    "melting.current.range", "The current"_word, 50, 500, "A", "common practice, no source"};

inline constexpr FormulaNote melting_rate_note{
    "melting.wire-feed",
    "wire_feed_speed_m_min",
    "W = 0.06*(alpha*I + beta*l*I^2)",
    "lesnewich-1958",
    "",
    "solid wire, electrode positive, steady current; wire 0.8 to 1.6 mm, extension 5 to 35 mm, 50 to 500 A",
    "+-15 % with tabulated coefficients (common practice); calibrate",
    SourceBasis::recalled};

inline constexpr FormulaNote melting_rate_rms_note{"melting.wire-feed-rms",
                                                   "wire_feed_speed_m_min",
                                                   "W = 0.06*(alpha*I + beta*l*Irms^2)",
                                                   "derived",
                                                   "mean of the melting law over the waveform",
                                                   "solid wire, any waveform whose rms current is known",
                                                   "as the melting law",
                                                   SourceBasis::derived};

inline constexpr FormulaNote melting_current_note{
    "melting.current",
    "current_A",
    "I = 2*w/(alpha + sqrt(alpha^2 + 4*beta*l*w))",
    "lesnewich-1958",
    "inverse of the melting law",
    "as the melting law, of which it is the inverse",
    "+-15 % with tabulated coefficients (common practice); calibrate",
    SourceBasis::recalled};

inline constexpr FormulaNote melting_mean_current_note{"melting.mean-current",
                                                       "current_A",
                                                       "I = (w - beta*l*Irms^2)/alpha",
                                                       "derived",
                                                       "inverse of the mean melting law",
                                                       "solid wire, any waveform whose rms current is known",
                                                       "as the melting law",
                                                       SourceBasis::derived};

inline constexpr FormulaNote melting_alpha_note{
    "melting.alpha",
    "alpha_mm_s_A",
    "alpha = alpha12*(1.2/d)^2",
    "derived",
    "scaled from the 1.2 mm wire",
    "solid wire 0.8 to 1.6 mm",
    "within +-15 % of a power-source maker's rules at 10 mm extension but for +18 % at 0.8 mm",
    SourceBasis::derived};

inline constexpr FormulaNote melting_beta_note{"melting.beta",
                                               "beta_per_s_A2",
                                               "beta = beta12*(1.2/d)^4",
                                               "derived",
                                               "scaled from the 1.2 mm wire",
                                               "solid wire 0.8 to 1.6 mm",
                                               "as alpha",
                                               SourceBasis::derived};

/// Of currents by the melting law in steady arcs: the largest error that was seen in published records of
/// pulsed arcs and of waveform-controlled dip transfer, in % (-37 and -29 %; wire or extension partly
/// unknown).
inline constexpr double melting_error_pulsed_pct = 37;
inline constexpr double melting_error_controlled_dip_pct = 29;

}  // namespace seamtakt
