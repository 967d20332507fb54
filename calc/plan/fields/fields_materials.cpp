#include "plan/fields/field_builders.hpp"
#include "plan/fields/field_composition.hpp"

namespace seamtakt {

using namespace table;

template <>
const FieldTable& fields_of<BaseMetal>() {
  static const FieldTable table(
      struct_info<BaseMetal>("base_metal", "a base metal"),
      {
          id(&BaseMetal::id, "Name by which seams refer to this metal."),
          text("standard", "standard", &BaseMetal::standard,
               "Standard and grade, such as EN 10025-2 S355J2."),
          composition("composition_pct", "composition", &BaseMetal::composition_pct,
                      &BaseMetal::composition_keys,
                      "Mass percentages by element symbol; an element that is left out is not reported.")
              .require(),
          choice("composition_basis", "composition from", &BaseMetal::composition_basis,
                 {"certificate", "typical", "standard-maximum"}, "Where the composition comes from."),
          number("tensile_MPa", "tensile strength", &BaseMetal::tensile_MPa, above(0),
                 "Ultimate tensile strength."),
          number("yield_MPa", "yield strength", &BaseMetal::yield_MPa, above(0), "Yield strength."),
          number(
              "CEV", "carbon equivalent", &BaseMetal::CEV, from_to(0, 2),
              "Carbon equivalent by the IIW's formula, of the certificate; goes before the composition's."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Wire>() {
  static const FieldTable table(
      struct_info<Wire>("wire", "a wire"),
      {
          id(&Wire::id, "Name by which schedules and robots refer to this wire."),
          text("classification", "classification", &Wire::classification,
               "Designation by standard, such as ISO 14341-A G 42 4 M21 3Si1."),
          choice("form", "form", &Wire::form, {"solid", "metal-cored", "flux-cored"},
                 "How the wire is built."),
          text("material", "material", &Wire::material,
               "Material of the wire, such as mild-steel or stainless."),
          number("diameter_mm", "diameter", &Wire::diameter_mm, above(0), "Diameter of the wire.").require(),
          number("density_g_cm3", "density", &Wire::density_g_cm3, above(0),
                 "Density of the wire as fed: a cored wire's is lower than that of its metal.")
              .require(),
          number("alpha_mm_s_A", "alpha", &Wire::alpha_mm_s_A, above(0),
                 "Coefficient of the current in the melting law W = alpha*I + beta*l*I^2.")
              .require(),
          number("beta_per_s_A2", "beta", &Wire::beta_per_s_A2, at_least(0),
                 "Coefficient of resistance heating in the melting law W = alpha*I + beta*l*I^2.")
              .require(),
          number("U_melting_pct", "uncertainty of melting", &Wire::U_melting_pct, from_to(0, 100),
                 "Expanded uncertainty (k = 2) of a current from the melting law; left out: 15 %."),
          number("deposition_efficiency", "deposition efficiency", &Wire::deposition_efficiency,
                 above_to(0, 1), "Share of the melted wire's mass that stays in the weld.")
              .require(),
          number("hydrogen_ml_100g", "hydrogen", &Wire::hydrogen_ml_100g, at_least(0),
                 "Diffusible hydrogen of the deposited metal."),
          composition("weld_metal_composition_pct", "weld metal composition",
                      &Wire::weld_metal_composition_pct, &Wire::weld_metal_composition_keys,
                      "Mass percentages of the undiluted weld metal: preheat goes by it where it is richer "
                      "than the plates."),
          number("price_per_kg", "price per kg", &Wire::price_per_kg, at_least(0),
                 "Price of a kilogram, in the currency of the costs."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Gas>() {
  static const FieldTable table(struct_info<Gas>("gas", "a gas"),
                                {
                                    id(&Gas::id, "Name by which schedules and robots refer to this gas."),
                                    text("designation", "designation", &Gas::designation,
                                         "Designation by ISO 14175, such as ISO 14175 M21-ArC-18."),
                                    number("price_per_m3", "price per m3", &Gas::price_per_m3, at_least(0),
                                           "Price of a cubic metre, in the currency of the costs."),
                                });
  return table;
}

template <>
const FieldTable& fields_of<PowerSource>() {
  static const FieldTable table(
      struct_info<PowerSource>("power_source", "a power source"),
      {
          id(&PowerSource::id, "Name by which schedules and robots refer to this power source."),
          number("rated_current_A", "rated current", &PowerSource::rated_current_A, above(0),
                 "Current that the source can give at its rated duty cycle."),
          number("rated_duty_pct", "rated duty", &PowerSource::rated_duty_pct, above_to(0, 100),
                 "Duty cycle at the rated current, share of ten minutes."),
          number("max_current_A", "highest current", &PowerSource::max_current_A, above(0),
                 "Highest current that the rating plate states, whatever the duty."),
          number("efficiency", "efficiency", &PowerSource::efficiency, above_to(0, 1),
                 "Arc power over the power drawn from the mains."),
      });
  return table;
}

}  // namespace seamtakt
