#pragma once

#include <cmath>
#include <cstddef>
#include <span>

#include "formula/note.hpp"

namespace seamtakt {

/// Integrals of a recorded waveform whose voltage and current are linear between samples, exactly:
///   energy of a span = dt*(2*u0*i0 + 2*u1*i1 + u0*i1 + u1*i0)/6     int(I^2) = dt*(i0^2 + i0*i1 + i1^2)/3
/// Source: derived (product of two linear functions integrated); what the means are for: iso-tr-18491,
/// methods B and C. The product of the means (method A) misses the covariance of U and I: it reads low on
/// pulses and high on dip transfer. Sums are compensated (Neumaier), so that a record of 1e8 samples keeps
/// its digits. Accuracy: exact for piecewise linear signals.
class WaveformSums {
 public:
  /// One step between two samples; duration s, >= 0, voltages V, currents A.
  void add_span(double duration_s, double voltage_0_V, double current_0_A, double voltage_1_V,
                double current_1_A) {
    duration_.add(duration_s);
    voltage_.add(duration_s * (voltage_0_V + voltage_1_V) / 2);
    current_.add(duration_s * (current_0_A + current_1_A) / 2);
    current_square_.add(
        duration_s * (current_0_A * current_0_A + current_0_A * current_1_A + current_1_A * current_1_A) / 3);
    energy_.add(duration_s *
                (2 * voltage_0_V * current_0_A + 2 * voltage_1_V * current_1_A + voltage_0_V * current_1_A +
                 voltage_1_V * current_0_A) /
                6);
  }

  double duration_s() const { return duration_.total(); }
  double energy_J() const { return energy_.total(); }
  /// The means need a duration above 0.
  double mean_voltage_V() const { return voltage_.total() / duration_s(); }
  double mean_current_A() const { return current_.total() / duration_s(); }
  double rms_current_A() const { return std::sqrt(current_square_.total() / duration_s()); }
  double mean_power_W() const { return energy_J() / duration_s(); }
  double product_power_W() const { return mean_voltage_V() * mean_current_A(); }
  /// mean(U*I)/(mean U * mean I): what a schedule calls its waveform factor.
  double waveform_factor() const { return mean_power_W() / product_power_W(); }

 private:
  class Sum {
   public:
    void add(double x) {
      double sum = sum_ + x;
      lost_ += std::abs(sum_) >= std::abs(x) ? (sum_ - sum) + x : (x - sum) + sum_;
      sum_ = sum;
    }
    double total() const { return sum_ + lost_; }

   private:
    double sum_ = 0, lost_ = 0;
  };
  Sum duration_, voltage_, current_, current_square_, energy_;
};

/// Sums over a whole record; the three columns are of one length, times not falling.
inline WaveformSums waveform_sums(std::span<const double> time_s, std::span<const double> voltage_V,
                                  std::span<const double> current_A) {
  WaveformSums sums;
  for (std::size_t i = 1; i < time_s.size(); ++i)
    sums.add_span(time_s[i] - time_s[i - 1], voltage_V[i - 1], current_A[i - 1], voltage_V[i], current_A[i]);
  return sums;
}

inline constexpr FormulaNote waveform_energy_note{
    "waveform.energy",
    "energy_J",
    "W = sum(dt*(2*u0*i0 + 2*u1*i1 + u0*i1 + u1*i0)/6)",
    "derived",
    "integral of the product of two linear functions; for iso-tr-18491 method B",
    "samples closer than the signal's changes",
    "exact for piecewise linear signals",
    SourceBasis::derived};
inline constexpr FormulaNote waveform_mean_power_note{
    "waveform.mean-power", "mean_power_W",        "P = W/t", "iso-tr-18491", "method C", "any waveform",
    "that of the samples", SourceBasis::part_read};
inline constexpr FormulaNote waveform_product_note{
    "waveform.product-power",
    "product_power_W",
    "P = U*I",
    "iso-tr-18491",
    "method A",
    "only without waveform control: it misses the covariance of U and I",
    "that of the samples and of the covariance: high by 2.6 % on a measured dip transfer",
    SourceBasis::part_read};
inline constexpr FormulaNote waveform_rms_note{"waveform.rms",
                                               "rms_current_A",
                                               "Irms = sqrt(sum(dt*(i0^2 + i0*i1 + i1^2)/3)/t)",
                                               "derived",
                                               "integral of the square of a linear function",
                                               "any waveform",
                                               "exact for piecewise linear signals",
                                               SourceBasis::derived};

}  // namespace seamtakt
