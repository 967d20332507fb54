#include "formula/takt.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"available", OptionKind::number, "h", "time available", nullptr, nullptr},
    {"demand", OptionKind::number, "", "units wanted in that time", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"takt_s", "s", "takt"},
    {"units_per_h", "1/h", "units an hour"},
};

constexpr const FormulaNote* notes[] = {&takt_note, &takt_rate_note};

struct Takt {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Real available = positive(in, "available"), demand = positive(in, "demand");
    Real takt = takt_s(available, demand), rate = units_per_h(available, demand);
    out.set("takt_s", takt);
    out.set("units_per_h", rate);
    out.explain(takt_note, takt, "s",
                {{"h", "time available", available, "h"}, {"n", "units wanted", demand, ""}});
    out.explain(takt_rate_note, rate, "1/h",
                {{"n", "units wanted", demand, ""}, {"h", "time available", available, "h"}});
  }
};

}  // namespace

const Quantity takt_quantity{"takt",
                             "time between two finished units",
                             options,
                             results,
                             notes,
                             &Takt::compute<double>,
                             &Takt::compute<Dual>};

}  // namespace seamtakt
