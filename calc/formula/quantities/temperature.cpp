#include <limits>

#include "formula/heat/double_ellipsoid.hpp"
#include "formula/heat/temperature_field.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"net-power", OptionKind::number, "W", "arc power times thermal efficiency", nullptr, nullptr},
    {"travel-speed", OptionKind::number, "mm/s", "travel speed", nullptr, nullptr},
    {"x", OptionKind::number, "mm", "along travel from the arc, ahead positive", "0", nullptr},
    {"y", OptionKind::number, "mm", "across the seam", "0", nullptr},
    {"z", OptionKind::number, "mm", "below the surface", "0", nullptr},
    {"thickness", OptionKind::number, "mm", "plate thickness (models thin and plate)", nullptr, nullptr},
    {"preheat", OptionKind::number, "C", "preheat or interpass temperature", "20", nullptr},
    {"model", OptionKind::text, "",
     "thick: half space; thin: sheet; plate: finite thickness; ellipsoid: double ellipsoid since --time",
     nullptr, "thick|thin|plate|ellipsoid"},
    {"conductivity", OptionKind::number, "W/(mm K)", "thermal conductivity", "0.028", nullptr},
    {"heat-capacity", OptionKind::number, "J/(mm3 K)", "density times specific heat", "0.0044", nullptr},
    {"a", OptionKind::number, "mm", "ellipsoid: half width", nullptr, nullptr},
    {"b", OptionKind::number, "mm", "ellipsoid: depth", nullptr, nullptr},
    {"c-front", OptionKind::number, "mm", "ellipsoid: length ahead", nullptr, nullptr},
    {"c-rear", OptionKind::number, "mm", "ellipsoid: length behind", nullptr, nullptr},
    {"f-front", OptionKind::number, "", "ellipsoid: front fraction, the rear has 2 less it", "0.6", nullptr},
    {"time", OptionKind::number, "s", "ellipsoid: since the arc was struck", nullptr, nullptr},
};

constexpr ResultSpec results[] = {{"temperature_C", "C", "temperature"}};

constexpr const FormulaNote* notes[] = {&thick_plate_note, &thin_plate_note, &plate_note,
                                        &double_ellipsoid_note};

template <class Real>
struct Asked {
  MovingSource<Real> source;
  FieldPoint<Real> point;
  std::optional<Real> thickness_mm;
  std::string model;
};

template <class Real>
Asked<Real> asked(const Inputs<Real>& in) {
  Asked<Real> what;
  what.source = {positive(in, "net-power"), positive(in, "travel-speed"), positive(in, "conductivity"),
                 positive(in, "heat-capacity"), in.number("preheat")};
  what.point = {in.number("x"), in.number("y"), not_negative(in, "z")};
  what.thickness_mm = find_positive(in, "thickness");
  what.model = in.text("model");
  if (what.model.empty()) what.model = what.thickness_mm ? "plate" : "thick";
  require_within("preheat", value_of(what.source.preheat_C), -273.15, steel_melting_C);
  const bool needs_thickness = what.model == "thin" || what.model == "plate";
  if (needs_thickness && !what.thickness_mm)
    throw InputError("--thickness", "nothing"_word,
                     Sentence("temperature.thickness-for-model"_key, {{"model", what.model}}));
  if (needs_thickness && value_of(what.point.depth_mm) > value_of(*what.thickness_mm))
    throw InputError("--z", number_text(value_of(what.point.depth_mm)),
                     Sentence("temperature.depth-within"_key,
                              {{"thickness", exact_value(value_of(*what.thickness_mm), "mm")}}));
  return what;
}

/// Distance that the model of a point or line source is singular in.
template <class Real>
double singular_distance_mm(const Asked<Real>& what) {
  const double depth = what.model == "thin" ? 0 : value_of(what.point.depth_mm);
  return std::hypot(value_of(what.point.ahead_mm), value_of(what.point.aside_mm), depth);
}

// Closer to a point source than this its field has no meaning, and its numbers leave the range of a double.
constexpr double nearest_mm = 1e-6;

Finding in_pool(std::optional<double> temperature_C, Severity severity, Sentence sentence,
                const char* source) {
  Finding finding = remark("temperature.weld-pool", "temperature_C", std::move(sentence), source);
  finding.severity = severity;
  finding.value = temperature_C;
  finding.limit = steel_melting_C;
  finding.unit = "C";
  return finding;
}

/// Thick or thin chosen for a plate that cools as the other.
template <class Real>
void note_model(const Asked<Real>& what, Findings& findings) {
  if (!what.thickness_mm || (what.model != "thick" && what.model != "thin")) return;
  const MovingSource<Real>& source = what.source;
  if (value_of(source.preheat_C) >= relative_thickness_at_C) return;
  const double relative = relative_thickness(
      value_of(*what.thickness_mm), value_of(source.heat_capacity_J_mm3K), relative_thickness_at_C,
      value_of(source.preheat_C), value_of(source.net_power_W) / value_of(source.travel_speed_mm_s));
  const bool thick = what.model == "thick";
  const double limit = thick ? thick_from_relative_thickness : thin_to_relative_thickness;
  if (thick ? relative >= limit : relative <= limit) return;
  Finding finding = remark(
      "temperature.model-thickness", "--model",
      Sentence(thick ? "temperature.model-thickness.thick"_key : "temperature.model-thickness.thin"_key,
               {{"relative", UnitValue{relative, "", 3}}, {"limit", UnitValue{limit, ""}}}),
      "adams");
  finding.severity = Severity::warn;
  finding.value = relative;
  finding.limit = limit;
  findings.push_back(std::move(finding));
}

template <class Real>
void explain_point_source(const Asked<Real>& what, const Real& temperature, Results<Real>& out) {
  const MovingSource<Real>& s = what.source;
  const FieldPoint<Real>& p = what.point;
  const Real a = s.conductivity_W_mmK / s.heat_capacity_J_mm3K;
  const bool thin = what.model == "thin";
  const Real r(singular_distance_mm(what));
  const Real d(what.thickness_mm ? value_of(*what.thickness_mm) : 0);
  const FormulaNote& note = thin ? thin_plate_note : what.model == "plate" ? plate_note : thick_plate_note;
  out.explain(note, temperature, "C",
              {{"T0", "preheat", s.preheat_C, "C"},
               {"q", "net power", s.net_power_W, "W"},
               {"lambda", "conductivity", s.conductivity_W_mmK, "W/(mm K)"},
               {"v", "travel speed", s.travel_speed_mm_s, "mm/s"},
               {"a", "diffusivity", a, "mm2/s"},
               {"x", "ahead of the arc", p.ahead_mm, "mm"},
               {"y", "across the seam", p.aside_mm, "mm"},
               {"z", "depth", p.depth_mm, "mm"},
               {thin ? "r" : "R", "distance from the source", r, "mm"},
               {"d", "plate thickness, 0 where none is given", d, "mm"}});
}

template <class Real>
void compute_point_source(const Asked<Real>& what, Results<Real>& out) {
  note_model(what, out.findings);
  if (singular_distance_mm(what) < nearest_mm) {
    out.findings.push_back(in_pool(std::nullopt, Severity::warn,
                                   Sentence("temperature.weld-pool.at-source"_key), "rosenthal-1946"));
    return;
  }
  Real temperature;
  if (what.model == "thin")
    temperature = thin_plate_temperature_C(what.source, what.point, *what.thickness_mm);
  else if (what.model == "plate")
    temperature = plate_temperature_C(what.source, what.point, *what.thickness_mm);
  else
    temperature = thick_plate_temperature_C(what.source, what.point);
  if (!(value_of(temperature) <= steel_melting_C)) {
    const double finite_C = std::min(value_of(temperature), std::numeric_limits<double>::max());
    out.findings.push_back(in_pool(
        finite_C, Severity::warn,
        Sentence("temperature.weld-pool.point-source"_key, {{"temperature_C", UnitValue{finite_C, ""}}}),
        "rosenthal-1946"));
    return;
  }
  out.set("temperature_C", temperature);
  explain_point_source(what, temperature, out);
}

template <class Real>
void compute_ellipsoid(const Inputs<Real>& in, const Asked<Real>& what, Results<Real>& out) {
  const DoubleEllipsoid<Real> shape{positive(in, "a"), positive(in, "b"), positive(in, "c-front"),
                                    positive(in, "c-rear"), within(in, "f-front", 0, 2)};
  const Real time = not_negative(in, "time");
  const Real temperature = double_ellipsoid_temperature_C(what.source, shape, what.point, time);
  out.set("temperature_C", temperature);
  out.explain(double_ellipsoid_note, temperature, "C",
              {{"T0", "preheat", what.source.preheat_C, "C"},
               {"q", "net power", what.source.net_power_W, "W"},
               {"rho_c", "density times specific heat", what.source.heat_capacity_J_mm3K, "J/(mm3 K)"},
               {"t", "since the arc was struck", time, "s"}});
  if (what.thickness_mm)
    out.findings.push_back(remark("temperature.thickness-unused", "--thickness",
                                  Sentence("temperature.thickness-unused"_key), "fachinotti-2011"));
  if (value_of(temperature) > steel_melting_C)
    out.findings.push_back(in_pool(value_of(temperature), Severity::warn,
                                   Sentence("temperature.weld-pool.ellipsoid"_key), "fachinotti-2011"));
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const Asked<Real> what = asked(in);
  if (what.model == "ellipsoid")
    compute_ellipsoid(in, what, out);
  else
    compute_point_source(what, out);
}

}  // namespace

const Quantity temperature_quantity{
    "temperature", "temperature around the moving arc: Rosenthal, Rykalin, images, double ellipsoid",
    options,       results,
    notes,         compute<double>,
    compute<Dual>};

}  // namespace seamtakt
