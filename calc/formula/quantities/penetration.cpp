#include "formula/size/penetration.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"current", OptionKind::number, "A", "current", nullptr, nullptr},
    {"voltage", OptionKind::number, "V", "arc voltage", nullptr, nullptr},
    {"travel-speed", OptionKind::number, "mm/s", "travel speed", nullptr, nullptr},
    {"coefficient", OptionKind::number, "", "K of the inch form", "0.0012", nullptr},
};

constexpr ResultSpec results[] = {{"penetration_mm", "mm", "penetration"}};

constexpr const FormulaNote* notes[] = {&penetration_note};

constexpr ValidRange coefficient_range{
    "penetration.coefficient.range", "The coefficient"_word, 0.0010, 0.0019, "",
    "jackson-shrubsall (recalled)"};

struct Penetration {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Real current = not_negative(in, "current"), voltage = positive(in, "voltage");
    Real speed = positive(in, "travel-speed"), coefficient = positive(in, "coefficient");
    Real penetration = penetration_mm(current, voltage, speed, coefficient);
    out.set("penetration_mm", penetration);
    add_if_any(out.findings, outside_range(coefficient_range, value_of(coefficient), "--coefficient"));
    out.explain(penetration_note, penetration, "mm",
                {{"K", "coefficient of the inch form", coefficient, ""},
                 {"I", "current", current, "A"},
                 {"v", "travel speed", speed, "mm/s"},
                 {"U", "arc voltage", voltage, "V"}});
  }
};

}  // namespace

const Quantity penetration_quantity{"penetration",
                                    "penetration of a bead on plate, a rough estimate",
                                    options,
                                    results,
                                    notes,
                                    &Penetration::compute<double>,
                                    &Penetration::compute<Dual>};

}  // namespace seamtakt
