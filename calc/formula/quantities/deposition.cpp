#include "formula/wire/deposition.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"wire-diameter", OptionKind::number, "mm", "wire diameter", nullptr, nullptr},
    {"wire-feed", OptionKind::number, "m/min", "wire feed speed", nullptr, nullptr},
    {"density", OptionKind::number, "g/cm3", "density of the wire as fed", nullptr, nullptr},
    {"efficiency", OptionKind::number, "", "deposition efficiency, 0 to 1", nullptr, nullptr},
    {"travel-speed", OptionKind::number, "mm/s", "travel speed", nullptr, nullptr},
    {"weld-metal-density", OptionKind::number, "g/cm3", "density of the weld metal", "7.85", nullptr},
};

constexpr ResultSpec results[] = {
    {"melting_rate_kg_h", "kg/h", "melting rate"},
    {"deposition_rate_kg_h", "kg/h", "deposition rate"},
    {"deposit_area_mm2", "mm2", "deposit area"},
};

constexpr const FormulaNote* notes[] = {&melting_mass_note, &deposition_rate_note, &deposit_area_note};

/// A light wire's deposit isn't steel.
constexpr double lightest_steel_wire_g_cm3 = 6;

template <class Real>
void remark_light_wire(const Real& density, const Real& weld_metal_density, Results<Real>& out) {
  bool light = value_of(density) < lightest_steel_wire_g_cm3;
  if (!light || value_of(weld_metal_density) < lightest_steel_wire_g_cm3) return;
  Finding finding = remark("deposition.weld-metal-density", "--weld-metal-density",
                           Sentence("deposition.weld-metal-density"_key), "derived, mass balance");
  finding.severity = Severity::warn;
  finding.value = value_of(weld_metal_density);
  finding.unit = "g/cm3";
  out.findings.push_back(std::move(finding));
}

struct Deposition {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    auto diameter = find_positive(in, "wire-diameter"), feed = find_not_negative(in, "wire-feed");
    auto density = find_positive(in, "density"), efficiency = find_within(in, "efficiency", 0, 1);
    auto speed = find_positive(in, "travel-speed");
    Real weld_metal_density = positive(in, "weld-metal-density");
    if (!diameter || !feed || !density) return;
    Real melted = melting_rate_kg_h(wire_area_mm2(*diameter), *feed, *density);
    out.set("melting_rate_kg_h", melted);
    out.explain(melting_mass_note, melted, "kg/h",
                {{"d", "wire diameter", *diameter, "mm"},
                 {"W", "wire feed speed", *feed, "m/min"},
                 {"rho", "density of the wire", *density, "g/cm3"}});
    if (!efficiency) return;
    Real deposited = deposition_rate_kg_h(melted, *efficiency);
    out.set("deposition_rate_kg_h", deposited);
    out.explain(deposition_rate_note, deposited, "kg/h",
                {{"eta", "deposition efficiency", *efficiency, ""}, {"m", "melting rate", melted, "kg/h"}});
    if (!speed) return;
    Real area = deposit_area_mm2(deposited, *speed, weld_metal_density);
    out.set("deposit_area_mm2", area);
    out.explain(deposit_area_note, area, "mm2",
                {{"D", "deposition rate", deposited, "kg/h"},
                 {"v", "travel speed", *speed, "mm/s"},
                 {"rhow", "density of the weld metal", weld_metal_density, "g/cm3"}});
    remark_light_wire(*density, weld_metal_density, out);
  }
};

}  // namespace

const Quantity deposition_quantity{"deposition",
                                   "mass melted and deposited, and area of the bead",
                                   options,
                                   results,
                                   notes,
                                   &Deposition::compute<double>,
                                   &Deposition::compute<Dual>};

}  // namespace seamtakt
