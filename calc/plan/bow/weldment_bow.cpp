#include "plan/bow/weldment_bow.hpp"

#include <algorithm>
#include <cmath>

#include "formula/strength/distortion.hpp"
#include "formula/valid_range.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

constexpr FormulaNote bow_note{
    "plan.bow",
    "bow_mm",
    "D = sqrt(D1^2 + D2^2)",
    "blodgett",
    "distortion, longitudinal bending; summed over the seams",
    "steel; each seam 0.005*A*L^2*d/I with its own weld area, length along the axis "
    "and distance from the neutral axis",
    distortion_accuracy,
    SourceBasis::recalled};

/// The member's axis and its two cross axes, as indexes of a point.
struct MemberAxes {
  std::size_t along = 0;
  std::array<std::size_t, 2> across{1, 2};
};

MemberAxes axes_of(const Section& section) {
  if (section.axis == "y") return {1, {0, 2}};
  if (section.axis == "z") return {2, {0, 1}};
  return {};
}

/// Of bending along each of the two cross axes: the second moment about the other one.
std::optional<std::array<double, 2>> bending_moments_mm4(const Section& section) {
  if (section.second_moments_mm4.size() == 2)
    return std::array{section.second_moments_mm4[1], section.second_moments_mm4[0]};
  if (section.second_moment_mm4) return std::array{*section.second_moment_mm4, *section.second_moment_mm4};
  return std::nullopt;
}

/// A seam's extent along the axis and its mean distance from the neutral axis, weighed by how often the path
/// passes there.
struct SeamLever {
  double extent_mm = 0;
  std::array<double, 2> off_mm{};
};

SeamLever lever_of(const Seam& seam, const Section& section, const MemberAxes& axes) {
  double low = seam.path_mm[0][axes.along], high = low;
  for (const Point_mm& point : seam.path_mm) {
    low = std::min(low, point[axes.along]);
    high = std::max(high, point[axes.along]);
  }
  SeamLever lever{high - low, {}};
  if (lever.extent_mm <= 0) return lever;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
    const Point_mm &a = seam.path_mm[i - 1], &b = seam.path_mm[i];
    const double weight = std::abs(b[axes.along] - a[axes.along]) / lever.extent_mm;
    for (std::size_t k = 0; k < 2; ++k) {
      const double middle = (a[axes.across[k]] + b[axes.across[k]]) / 2;
      lever.off_mm[k] += weight * (middle - section.neutral_axis_mm[k]);
    }
  }
  return lever;
}

double welded_share(const Seam& seam) {
  const double length = path_length_mm(seam);
  return seam.intermittent && length > 0 ? welded_length_mm(seam) / length : 1;
}

}  // namespace

std::optional<WeldmentBow> weldment_bow(const Weldment& weldment, std::span<const PassEvaluation> passes,
                                        ExplanationSink* sink) {
  if (!weldment.section || weldment.section->neutral_axis_mm.size() != 2) return std::nullopt;
  const Section& section = *weldment.section;
  const auto moments_mm4 = bending_moments_mm4(section);
  if (!moments_mm4) return std::nullopt;
  const MemberAxes axes = axes_of(section);
  const bool with_plate = !section.axis.empty() || !section.second_moments_mm4.empty();
  WeldmentBow bow;
  double laid_mm2 = 0;
  std::size_t next = 0;
  for (const Seam& seam : weldment.seams) {
    double area = 0;
    for (std::size_t pass = 0; pass < seam.schedules.size(); ++pass) area += passes[next++].deposit_area_mm2;
    laid_mm2 += area;
    if (with_plate) area /= 1 - usual_dilution;
    area *= welded_share(seam);
    const SeamLever lever = lever_of(seam, section, axes);
    for (std::size_t k = 0; k < 2; ++k)
      bow.cross_mm[k] += longitudinal_bow_mm(area, lever.extent_mm, lever.off_mm[k], (*moments_mm4)[k]);
  }
  bow.bow_mm = std::hypot(bow.cross_mm[0], bow.cross_mm[1]);
  if (sink)
    sink->add(
        "bow_mm", bow_note, bow.bow_mm, "mm",
        {{"D1", "along the first cross axis, of all seams", bow.cross_mm[0], "mm"},
         {"D2", "along the second cross axis, of all seams", bow.cross_mm[1], "mm"},
         {"I1", "second moment of area against bending along the first cross axis", (*moments_mm4)[0], "mm4"},
         {"I2", "second moment of area against bending along the second cross axis", (*moments_mm4)[1],
          "mm4"},
         {"A", "metal laid by all seams, of their sections", laid_mm2, "mm2"},
         {"m", "melted plate as a share of the weld", with_plate ? usual_dilution : 0, ""}});
  return bow;
}

void judge_section_axis(const Plan& plan, Findings& findings) {
  for (const Weldment& weldment : plan.weldments) {
    if (!weldment.section || !weldment.section->axis.empty() ||
        weldment.section->neutral_axis_mm.size() != 2 || !bending_moments_mm4(*weldment.section))
      continue;
    Point_mm along{0, 0, 0};
    for (const Seam& seam : weldment.seams)
      for (std::size_t i = 1; i < seam.path_mm.size(); ++i)
        for (std::size_t k = 0; k < 3; ++k) along[k] += std::abs(seam.path_mm[i][k] - seam.path_mm[i - 1][k]);
    const std::size_t most = along[1] >= along[2] ? 1 : 2;
    if (along[most] <= along[0]) continue;
    Finding finding = remark("weldment.section.axis", weldment.id,
                             Sentence("weldment.section.axis"_key, {{"axis", most == 1 ? "y" : "z"},
                                                                    {"length", UnitValue{along[most], "mm"}},
                                                                    {"along", UnitValue{along[0], "mm"}}}),
                             "common practice, no source");
    finding.value = along[0];
    finding.limit = along[most];
    finding.unit = "mm";
    findings.push_back(std::move(finding));
  }
}

}  // namespace seamtakt
