#include "formula/heat/haz_width.hpp"

#include "formula/heat/temperature_field.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"heat-input", OptionKind::number, "kJ/mm", "net heat input, with thermal efficiency", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "plate thickness; the thick-plate formula where left out",
     nullptr, nullptr},
    {"preheat", OptionKind::number, "C", "preheat or interpass temperature", "20", nullptr},
    {"melting", OptionKind::number, "C", "melting temperature", "1510", nullptr},
    {"peak", OptionKind::number, "C", "peak temperature; 730 (Ac1) where neither it nor a distance is given",
     nullptr, nullptr},
    {"distance", OptionKind::number, "mm", "distance from the fusion line", nullptr, nullptr},
    {"heat-capacity", OptionKind::number, "J/(mm3 K)", "density times specific heat", "0.0044", nullptr},
};

constexpr ResultSpec results[] = {
    {"distance_mm", "mm", "distance from the fusion line"},
    {"peak_temperature_C", "C", "peak temperature"},
};

constexpr const FormulaNote* notes[] = {&thin_haz_distance_note, &thin_peak_note, &thick_haz_distance_note,
                                        &thick_peak_note};

template <class Real>
PeakTemperatureCase<Real> weld_of(const Inputs<Real>& in) {
  const PeakTemperatureCase<Real> weld{positive(in, "heat-input"), in.number("preheat"), in.number("melting"),
                                       positive(in, "heat-capacity")};
  require_within("preheat", value_of(weld.preheat_C), -273.15, 2000);
  if (!(value_of(weld.melting_C) > value_of(weld.preheat_C)))
    throw InputError(
        "--melting", number_text(value_of(weld.melting_C)),
        Sentence("haz-width.above-preheat"_key, {{"preheat", exact_value(value_of(weld.preheat_C), "C")}}));
  return weld;
}

template <class Real>
void require_peak(const PeakTemperatureCase<Real>& weld, const Real& peak) {
  if (value_of(peak) > value_of(weld.preheat_C) && value_of(peak) <= value_of(weld.melting_C)) return;
  throw InputError("--peak", number_text(value_of(peak)),
                   Sentence("haz-width.between-preheat-and-melting"_key,
                            {{"preheat", exact_value(value_of(weld.preheat_C), "C")},
                             {"melting", exact_value(value_of(weld.melting_C), "C")}}));
}

/// The formula of the thin plate is used for one that cools as a thick one, or the reverse can't be told.
template <class Real>
void note_plate(const PeakTemperatureCase<Real>& weld, const std::optional<Real>& thickness,
                Findings& findings) {
  if (!thickness) {
    findings.push_back(remark("haz-width.thick-plate", "--thickness", Sentence("haz-width.thick-plate"_key),
                              "rykalin-1957"));
    return;
  }
  if (value_of(weld.preheat_C) >= relative_thickness_at_C) return;
  const double relative =
      relative_thickness(value_of(*thickness), value_of(weld.heat_capacity_J_mm3K), relative_thickness_at_C,
                         value_of(weld.preheat_C), value_of(weld.heat_input_kJ_mm) * 1000);
  if (relative <= thin_to_relative_thickness) return;
  Finding finding =
      remark("haz-width.thin-plate", "--thickness",
             Sentence("haz-width.thin-plate"_key, {{"relative", UnitValue{relative, "", 3}},
                                                   {"thin_to", UnitValue{thin_to_relative_thickness, ""}}}),
             "adams");
  finding.severity = relative > thick_from_relative_thickness ? Severity::warn : Severity::note;
  finding.value = relative;
  finding.limit = thin_to_relative_thickness;
  findings.push_back(std::move(finding));
}

template <class Real>
void explain(const PeakTemperatureCase<Real>& weld, const std::optional<Real>& thickness,
             const Real& distance, const Real& peak, bool distance_given, Results<Real>& out) {
  const FormulaNote& note = thickness ? (distance_given ? thin_peak_note : thin_haz_distance_note)
                                      : (distance_given ? thick_peak_note : thick_haz_distance_note);
  out.explain(note, distance_given ? peak : distance, distance_given ? "C" : "mm",
              {{"Q", "net heat input", weld.heat_input_kJ_mm, "kJ/mm"},
               {"rho_c", "density times specific heat", weld.heat_capacity_J_mm3K, "J/(mm3 K)"},
               {"d", "plate thickness, 0: thick plate", thickness.value_or(Real(0.0)), "mm"},
               {"T0", "preheat", weld.preheat_C, "C"},
               {"Tm", "melting temperature", weld.melting_C, "C"},
               {"r_m", "half width of the molten zone on a thick plate",
                detail::thick_isotherm_radius_mm(weld, weld.melting_C), "mm"},
               {"Tp", "peak temperature", peak, "C"},
               {"Y", "distance from the fusion line", distance, "mm"}});
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  require_only_one(in, {"peak", "distance"});
  const PeakTemperatureCase<Real> weld = weld_of(in);
  const std::optional<Real> thickness = find_positive(in, "thickness");
  const std::optional<Real> given_distance = find_not_negative(in, "distance");
  Real peak, distance;
  if (given_distance) {
    distance = *given_distance;
    peak = thickness ? thin_plate_peak_temperature_C(weld, *thickness, distance)
                     : thick_plate_peak_temperature_C(weld, distance);
  } else {
    peak = in.find("peak").value_or(Real(ac1_C));
    require_peak(weld, peak);
    distance = thickness ? thin_plate_haz_distance_mm(weld, *thickness, peak)
                         : thick_plate_haz_distance_mm(weld, peak);
  }
  out.set("distance_mm", distance);
  out.set("peak_temperature_C", peak);
  explain(weld, thickness, distance, peak, given_distance.has_value(), out);
  note_plate(weld, thickness, out.findings);
}

}  // namespace

const Quantity haz_width_quantity{
    "haz-width",  "peak temperature beside the fusion line, and how far a temperature reaches",
    options,      results,
    notes,        compute<double>,
    compute<Dual>};

}  // namespace seamtakt
