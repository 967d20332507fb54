#pragma once

#include <array>
#include <optional>
#include <span>

#include "base/finding.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Share of a weld that is melted plate: common practice, no source (gas-shielded metal arc welds have 20 to
/// 40 %).
inline constexpr double usual_dilution = 0.3;

/// How far a weldment's seams bend it along its two cross axes (mm, either sign), by Blodgett's estimate of
/// each seam: D = 0.005*A*L^2*d/I (formula/strength/distortion.hpp), with the weld area A, the seam's extent
/// L along the member's axis and its distance d from the neutral axis. An intermittent seam counts with the
/// share of its length that is welded. A part of a path across the axis bends nothing; one that goes there
/// and back counts both ways. The area is the metal laid; where the section names its axis or both second
/// moments, it is that with the plate melted in, as the formula asks (deposit/(1 - usual_dilution)).
/// Accuracy: a factor of 1.5 to 2 either way (common practice, no source).
struct WeldmentBow {
  std::array<double, 2> cross_mm{};  ///< in the order of the cross axes' letters
  double bow_mm = 0;                 ///< of both together
};

/// Empty where the section isn't stated or lacks a second moment or the neutral axis. `passes`: the
/// weldment's, in file order. `sink`: collects how, where it isn't nullptr.
std::optional<WeldmentBow> weldment_bow(const Weldment& weldment, std::span<const PassEvaluation> passes,
                                        ExplanationSink* sink = nullptr);

/// Says where a section names no axis, so that x is taken, and most of the weldment's seams lie along another
/// one: they bend a member along x little or not at all.
void judge_section_axis(const Plan& plan, Findings& findings);

}  // namespace seamtakt
