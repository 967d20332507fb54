#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

#include "formula/metal/composition.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {

/// Highest hardness of the heat-affected zone (HV) from composition and cooling time t8/5.
/// Both methods are recalled; compare them with their papers. Scatter: a published comparison of twelve
/// methods over more than 300 welds found none best everywhere, the best with a standard deviation of 28 HV
/// (nicholas-abson-2008): take +-56 HV.

/// Mass percentages (%); an element that isn't reported counts as 0.
struct HardeningElements {
  double C = 0, Si = 0, Mn = 0, Cu = 0, Ni = 0, Cr = 0, Mo = 0, V = 0, Nb = 0, B = 0, N = 0;
};

/// The part of a steel's composition that the hardness formulas use; its derivatives, if any, are dropped.
template <class Real>
HardeningElements hardening_elements(const Composition<Real>& c) {
  return {.C = value_of(c.C),
          .Si = value_of(c.Si),
          .Mn = value_of(c.Mn),
          .Cu = value_of(c.Cu),
          .Ni = value_of(c.Ni),
          .Cr = value_of(c.Cr),
          .Mo = value_of(c.Mo),
          .V = value_of(c.V),
          .Nb = value_of(c.Nb),
          .B = value_of(c.B),
          .N = value_of(c.N)};
}

inline constexpr double haz_hardness_scatter_HV = 56;  ///< two standard deviations

/// What a composition gives before the cooling time is known.
struct HardnessLimits {
  double martensite_HV = 0;  ///< cooled so fast that all is martensite
  double bainite_HV = 0;     ///< cooled so slowly that no martensite forms
};

// Yurioka, Okumura, Kasuya, Cotton: Metal Construction 19 (1987) 217R. Domain: C up to 0.8 %, N up to 0.01 %.

inline constexpr ValidRange yurioka_carbon_range{
    "haz-hardness.C.range", "The carbon content"_word, 0, 0.8, "%", "Yurioka et al. 1987, stated domain"};
inline constexpr ValidRange yurioka_nitrogen_range{
    "haz-hardness.N.range", "The nitrogen content"_word, 0, 0.01, "%", "Yurioka et al. 1987, stated domain"};

inline bool inside_yurioka_domain(const HardeningElements& e) {
  return is_inside(yurioka_carbon_range, e.C) && is_inside(yurioka_nitrogen_range, e.N);
}

/// Hardenability that boron adds: 0, 0.03, 0.06, 0.09 times (0.02 - N)/0.02 at up to 1, at 2, 3, and from 4
/// ppm; linear between. Never negative: with more than 0.02 % N no boron remains to act.
inline double boron_hardenability(double B_pct, double N_pct) {
  const double boron_ppm = B_pct * 1e4;
  const double free_boron = std::max(0.0, (0.02 - N_pct) / 0.02);
  return 0.03 * std::clamp(boron_ppm - 1, 0.0, 3.0) * free_boron;
}

/// Carbon that counts for hardenability: above 0.3 % the rest stays in carbides.
inline double effective_carbon(double C_pct) {
  return C_pct <= 0.3 ? C_pct : C_pct / 6 + 0.25;
}

/// Cooling times (s): up to `martensite_s` all is martensite, from `bainite_s` none is.
struct TransformationTimes {
  double martensite_s = 0, bainite_s = 0;
};

inline TransformationTimes yurioka_times(const HardeningElements& e) {
  const double carbon = effective_carbon(e.C);
  const double ce_i = carbon + e.Si / 24 + e.Mn / 6 + e.Cu / 15 + e.Ni / 12 +
                      e.Cr * (1 - 0.16 * std::sqrt(e.Cr)) / 8 + e.Mo / 4 + boron_hardenability(e.B, e.N);
  const double ce_iii = carbon + e.Mn / 3.6 + e.Cu / 20 + e.Ni / 9 + e.Cr / 5 + e.Mo / 4;
  return {std::exp(10.6 * ce_i - 4.8), std::exp(6.2 * ce_iii + 0.74)};
}

/// Carbon equivalent (%) that determines the hardness of bainite.
inline double yurioka_bainite_equivalent_pct(const HardeningElements& e) {
  return e.C + e.Si / 24 + e.Mn / 5 + e.Cu / 10 + e.Ni / 18 + e.Cr / 5 + e.Mo / 2.5 + e.V / 5 + e.Nb / 3;
}

inline HardnessLimits yurioka_limits(const HardeningElements& e) {
  return {884 * e.C * (1 - 0.3 * e.C * e.C) + 294,
          145 + 130 * std::tanh(2.65 * yurioka_bainite_equivalent_pct(e) - 0.69)};
}

/// HV; the arc tangent overshoots a little at both ends, so the value is held between bainite and martensite.
/// cooling_time_s: t8/5 (s, > 0). Empty where the composition leaves no transition (bainite_s <=
/// martensite_s).
template <class Real>
std::optional<Real> yurioka_hardness_HV(const HardeningElements& elements, const Real& cooling_time_s) {
  using std::log;
  const TransformationTimes times = yurioka_times(elements);
  if (!(times.bainite_s > times.martensite_s)) return std::nullopt;
  const HardnessLimits limits = yurioka_limits(elements);
  const Real x =
      4.0 * log(Real(cooling_time_s / times.martensite_s)) / std::log(times.bainite_s / times.martensite_s) -
      2.0;
  const Real hardness = (limits.martensite_HV + limits.bainite_HV) / 2 -
                        (limits.martensite_HV - limits.bainite_HV) / 2.2 * arc_tangent(x);
  return larger<Real>(smaller<Real>(hardness, Real(limits.martensite_HV)), Real(limits.bainite_HV));
}

// Dueren and Lorenz. Roughly for 2 to 20 s.

inline constexpr double dueren_fastest_s = 2, dueren_slowest_s = 20;

/// Alloy content (%) that the bainite and mixed formulas weigh beside carbon.
inline double dueren_alloy(const HardeningElements& e) {
  return e.Si / 11 + e.Mn / 8 + e.Cu / 9 + e.Cr / 5 + e.Ni / 17 + e.Mo / 6 + e.V / 3;
}

inline HardnessLimits dueren_limits(const HardeningElements& e) {
  return {802 * e.C + 305, 350 * (e.C + dueren_alloy(e)) + 101};
}

/// HV of the mixed structure, never above martensite nor below bainite (martensite wins where bainite's
/// formula is above it, which happens for rich alloys with little carbon).
template <class Real>
Real dueren_hardness_HV(const HardeningElements& elements, const Real& cooling_time_s) {
  using std::log;
  const HardnessLimits limits = dueren_limits(elements);
  const Real decades = log(cooling_time_s) / std::log(10.0);
  const Real mixed = 2019.0 * (elements.C * (1.0 - 0.5 * decades) + 0.3 * dueren_alloy(elements)) +
                     66.0 * (1.0 - 0.8 * decades);
  return smaller<Real>(larger<Real>(mixed, Real(limits.bainite_HV)), Real(limits.martensite_HV));
}

inline constexpr const char* haz_hardness_accuracy =
    "+-56 HV (two standard deviations of the best of twelve methods over 300 welds)";

inline constexpr FormulaNote yurioka_hardness_note{
    "haz-hardness.yurioka",
    "hardness_HV",
    "HV = (HM + HB)/2 - (HM - HB)/2.2*atan(4*ln(t/tM)/ln(tB/tM) - 2)",
    "yurioka-1987",
    "page 217R",
    "C up to 0.8 %, N up to 0.01 %; held between HB and HM",
    haz_hardness_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote yurioka_martensite_note{"haz-hardness.yurioka-martensite",
                                                     "martensite_hardness_HV",
                                                     "HM = 884*C*(1 - 0.3*C^2) + 294",
                                                     "yurioka-1987",
                                                     "page 217R",
                                                     "C up to 0.8 %",
                                                     haz_hardness_accuracy,
                                                     SourceBasis::recalled};

inline constexpr FormulaNote yurioka_bainite_note{
    "haz-hardness.yurioka-bainite",
    "bainite_hardness_HV",
    "HB = 145 + 130*tanh(2.65*CE_II - 0.69)",
    "yurioka-1987",
    "page 217R",
    "CE_II = C + Si/24 + Mn/5 + Cu/10 + Ni/18 + Cr/5 + Mo/2.5 + V/5 + Nb/3",
    haz_hardness_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote dueren_hardness_note{"haz-hardness.dueren",
                                                  "hardness_HV",
                                                  "HV = 2019*(C*(1 - 0.5*L) + 0.3*A) + 66*(1 - 0.8*L)",
                                                  "dueren",
                                                  "",
                                                  "t8/5 2 to 20 s; L = log10(t8/5), A = Si/11 + Mn/8 + Cu/9 "
                                                  "+ Cr/5 + Ni/17 + Mo/6 + V/3; held between HB and HM",
                                                  haz_hardness_accuracy,
                                                  SourceBasis::recalled};

inline constexpr FormulaNote dueren_martensite_note{"haz-hardness.dueren-martensite",
                                                    "martensite_hardness_HV",
                                                    "HM = 802*C + 305",
                                                    "dueren",
                                                    "",
                                                    "all martensite",
                                                    haz_hardness_accuracy,
                                                    SourceBasis::recalled};

inline constexpr FormulaNote dueren_bainite_note{"haz-hardness.dueren-bainite",
                                                 "bainite_hardness_HV",
                                                 "HB = 350*(C + A) + 101",
                                                 "dueren",
                                                 "",
                                                 "all bainite",
                                                 haz_hardness_accuracy,
                                                 SourceBasis::recalled};

}  // namespace seamtakt
