#include "records/measure/measure.hpp"

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "formula/tolerance/general_tolerance.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

constexpr double expansion_per_K = 12e-6;
/// What a hint weighs against what: predictions hold to a factor of 1.5 to 2, lengths are measured to a tenth
/// of a millimetre (both common practice, no source).
constexpr double factor_scatter = 0.7, measured_to_mm = 0.1;
constexpr const char* tolerance_source = "iso-13920";

using Points = std::vector<MeasuredPoint>;

double length_at_reference(const MeasuredPoint& a, const MeasuredPoint& b) {
  const double part_C = (a.part_C + b.part_C) / 2;
  return distance_mm(a.at_mm, b.at_mm) / (1 + expansion_per_K * (part_C - measured_at_C));
}

double angle_deg(const Point_mm& a, const Point_mm& vertex, const Point_mm& b) {
  Eigen::Vector3d to_a, to_b;
  for (std::size_t i = 0; i < 3; ++i) {
    to_a[static_cast<Eigen::Index>(i)] = a[i] - vertex[i];
    to_b[static_cast<Eigen::Index>(i)] = b[i] - vertex[i];
  }
  // Well conditioned near 0 and 180 degrees too, where the cosine isn't.
  return std::atan2(to_a.cross(to_b).norm(), to_a.dot(to_b)) * 180 / std::numbers::pi;
}

/// Greatest distance of a point from the line between the first and the last.
double off_line_mm(const Points& points) {
  const auto vector = [](const Point_mm& p) { return Eigen::Vector3d(p[0], p[1], p[2]); };
  const Eigen::Vector3d begin = vector(points.front().at_mm), way = vector(points.back().at_mm) - begin;
  double most = 0;
  for (const MeasuredPoint& point : points) {
    const Eigen::Vector3d off = vector(point.at_mm) - begin;
    most = std::max(most, way.norm() > 0 ? off.cross(way).norm() / way.norm() : off.norm());
  }
  return most;
}

/// The letter of a class such as "BF" that has this kind of tolerance.
std::string class_of(const std::string& tolerance_class, bool straightness) {
  for (const char letter : tolerance_class)
    if ((letter >= 'E' && letter <= 'H') == straightness) return std::string(1, letter);
  return "";
}

/// Least squares by its normal equations with no factor below 0, since no weld makes a part grow: each factor
/// in turn is set to its optimum until none changes.
Eigen::VectorXd factors_from_nought(const Eigen::MatrixXd& normal, const Eigen::VectorXd& right) {
  Eigen::VectorXd factors = Eigen::VectorXd::Ones(right.size());
  for (int round = 0; round < 5000; ++round) {
    double moved = 0;
    for (Eigen::Index j = 0; j < right.size(); ++j) {
      const double best = std::max(0.0, factors[j] + (right[j] - normal.row(j).dot(factors)) / normal(j, j));
      moved = std::max(moved, std::fabs(best - factors[j]));
      factors[j] = best;
    }
    if (moved < 1e-9) break;
  }
  return factors;
}

Word kind_word(const Feature& feature) {
  return feature.kind == "length"  ? "length"_word
         : feature.kind == "angle" ? "angle"_word
                                   : "straightness"_word;
}

class FeatureCheck {
 public:
  FeatureCheck(const Weldment& weldment, const Evaluation& evaluation, const Points& points)
      : weldment_(weldment),
        evaluation_(evaluation),
        points_(points),
        aligned_(aligned_with_seams(points, weldment)) {}

  MeasureResult run() {
    for (const Feature& feature : weldment_.features) add(feature);
    add_hints();
    return std::move(result_);
  }

 private:
  std::optional<Points> points_of(const Feature& feature) {
    Points found;
    for (const std::string& id : feature.points) {
      const auto at =
          std::find_if(points_.begin(), points_.end(), [&](const MeasuredPoint& p) { return p.id == id; });
      if (at == points_.end()) {
        find("measure.point.missing", Severity::warn, feature,
             Sentence("measure.point.missing"_key, {{"point", printable(id, 40)}}), "plan limit");
        return std::nullopt;
      }
      found.push_back(*at);
    }
    return found;
  }

  Point_mm in_drawing(const MeasuredPoint& point) const {
    return std::find_if(aligned_.begin(), aligned_.end(),
                        [&](const MeasuredPoint& p) { return p.id == point.id; })
        ->at_mm;
  }

  Finding& find(const char* rule, Severity severity, const Feature& feature, Sentence sentence,
                const char* source) {
    return result_.findings.emplace_back(Finding{rule, severity, weldment_.id + "/" + feature.id,
                                                 std::nullopt, std::nullopt, "", std::move(sentence),
                                                 source});
  }

  void add(const Feature& feature) {
    const std::size_t needed = feature.kind == "length" ? 2 : 3;
    const auto found = points_of(feature);
    if (!found) return;
    if (found->size() < needed || (feature.kind != "straightness" && found->size() != needed)) {
      find("measure.feature.points", Severity::warn, feature,
           Sentence("measure.feature.points"_key,
                    {{"kind", kind_word(feature)}, {"points", found->size()}, {"needed", needed}}),
           "plan limit");
      return;
    }
    MeasuredFeature measured;
    measured.id = feature.id;
    measured.kind = feature.kind;
    if (feature.kind == "length") {
      add_length(feature, *found, measured);
    } else if (feature.kind == "angle") {
      add_angle(feature, *found, measured);
    } else {
      add_straightness(*found, measured);
    }
    judge(feature, measured);
    result_.features.push_back(std::move(measured));
  }

  void add_length(const Feature& feature, const Points& found, MeasuredFeature& measured) {
    measured.unit = "mm";
    measured.nominal = feature.nominal_mm;
    measured.measured = length_at_reference(found[0], found[1]);
    measured.tolerance = tolerance_mm(ToleranceKind::linear, feature.nominal_mm.value_or(measured.measured));
    if (measured.nominal) measured.deviation = measured.measured - *measured.nominal;
    const auto by_seam =
        predicted_shortening_mm(weldment_, evaluation_, in_drawing(found[0]), in_drawing(found[1]));
    double sum = 0;
    for (const auto& [seam, change] : by_seam) sum += change;
    if (!by_seam.empty()) measured.predicted = sum;
    responses_[measured.id] = by_seam;
  }

  void add_angle(const Feature& feature, const Points& found, MeasuredFeature& measured) {
    measured.unit = "deg";
    measured.nominal = feature.nominal_deg;
    measured.measured = angle_deg(found[0].at_mm, found[1].at_mm, found[2].at_mm);
    const double shorter =
        std::min(distance_mm(found[0].at_mm, found[1].at_mm), distance_mm(found[2].at_mm, found[1].at_mm));
    const std::string letter = class_of(weldment_.tolerance_class, false);
    if (!letter.empty() && shorter > 0)
      if (const auto tolerance = general_tolerance(ToleranceKind::angular, letter, shorter))
        measured.tolerance = tolerance->tolerance_deg;
    if (measured.nominal) measured.deviation = measured.measured - *measured.nominal;
  }

  void add_straightness(const Points& found, MeasuredFeature& measured) {
    measured.unit = "mm";
    measured.nominal = 0;
    measured.measured = off_line_mm(found);
    measured.deviation = measured.measured;
    measured.tolerance =
        tolerance_mm(ToleranceKind::straightness, distance_mm(found.front().at_mm, found.back().at_mm));
  }

  std::optional<double> tolerance_mm(ToleranceKind kind, double length_mm) const {
    const std::string letter = class_of(weldment_.tolerance_class, kind == ToleranceKind::straightness);
    if (letter.empty() || !(length_mm > 0)) return std::nullopt;
    const auto tolerance = general_tolerance(kind, letter, length_mm);
    return tolerance ? tolerance->tolerance_mm : std::nullopt;
  }

  void judge(const Feature& feature, MeasuredFeature& measured) {
    if (!measured.deviation || !measured.tolerance) return;
    // A margin for rounding, so that a value equal to the tolerance passes.
    measured.within = std::fabs(*measured.deviation) <= *measured.tolerance * (1 + 1e-12);
    if (*measured.within) return;
    const char* const unit = find_unit(measured.unit)->name;
    Finding& finding =
        find("measure.tolerance", Severity::fail, feature,
             Sentence("measure.tolerance"_key, {{"measured", UnitValue{measured.measured, unit, 6}},
                                                {"off", UnitValue{*measured.deviation, unit, 3}},
                                                {"class", weldment_.tolerance_class},
                                                {"allowed", UnitValue{*measured.tolerance, unit, 3}}}),
             tolerance_source);
    finding.value = std::fabs(*measured.deviation);
    finding.limit = measured.tolerance;
    finding.unit = measured.unit;
  }

  /// Factors of the seams' predicted shrinkage that come nearest to the deviations, held near 1 where nothing
  /// speaks against it.
  void add_hints() {
    std::vector<MeasuredFeature*> lengths;
    std::vector<std::string> seams;
    for (MeasuredFeature& feature : result_.features) {
      if (!feature.deviation || responses_[feature.id].empty()) continue;
      lengths.push_back(&feature);
      for (const auto& [seam, change] : responses_[feature.id])
        if (std::find(seams.begin(), seams.end(), seam) == seams.end()) seams.push_back(seam);
    }
    if (lengths.empty()) return;
    const auto rows = static_cast<Eigen::Index>(lengths.size()),
               columns = static_cast<Eigen::Index>(seams.size());
    Eigen::MatrixXd response = Eigen::MatrixXd::Zero(rows, columns);
    Eigen::VectorXd deviation(rows);
    for (Eigen::Index i = 0; i < rows; ++i) {
      const MeasuredFeature& feature = *lengths[static_cast<std::size_t>(i)];
      deviation[i] = *feature.deviation;
      for (Eigen::Index j = 0; j < columns; ++j) {
        const auto& by_seam = responses_[feature.id];
        const auto at = by_seam.find(seams[static_cast<std::size_t>(j)]);
        if (at != by_seam.end()) response(i, j) = at->second;
      }
    }
    const Eigen::VectorXd ones = Eigen::VectorXd::Ones(columns);
    const double damping = measured_to_mm * measured_to_mm / (factor_scatter * factor_scatter);
    const Eigen::MatrixXd normal =
        response.transpose() * response + damping * Eigen::MatrixXd::Identity(columns, columns);
    const Eigen::VectorXd factors =
        factors_from_nought(normal, response.transpose() * deviation + damping * ones);
    const Eigen::VectorXd left = deviation - response * factors;
    for (Eigen::Index i = 0; i < rows; ++i) {
      MeasuredFeature& feature = *lengths[static_cast<std::size_t>(i)];
      for (Eigen::Index j = 0; j < columns; ++j)
        if (response(i, j) != 0)
          feature.hints.push_back(
              {seams[static_cast<std::size_t>(j)], factors[j], response(i, j) * factors[j]});
      std::stable_sort(
          feature.hints.begin(), feature.hints.end(),
          [](const SeamShare& a, const SeamShare& b) { return std::fabs(a.share) > std::fabs(b.share); });
      if (feature.hints.size() > 3) feature.hints.resize(3);
      feature.unexplained = left[i];
    }
  }

  const Weldment& weldment_;
  const Evaluation& evaluation_;
  const Points& points_;
  const Points aligned_;
  std::map<std::string, std::map<std::string, double>> responses_;
  MeasureResult result_;
};

}  // namespace

MeasureResult measure(const Weldment& weldment, const Evaluation& evaluation,
                      const std::vector<MeasuredPoint>& points) {
  return FeatureCheck(weldment, evaluation, points).run();
}

}  // namespace seamtakt
