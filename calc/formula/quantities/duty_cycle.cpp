#include "formula/wire/duty_cycle.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"rated-current", OptionKind::number, "A", "rated current", nullptr, nullptr},
    {"rated-duty", OptionKind::number, "%", "duty cycle at the rated current", nullptr, nullptr},
    {"current", OptionKind::number, "A", "current used; or --duty", nullptr, nullptr},
    {"duty", OptionKind::number, "%", "duty cycle wanted; or --current", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"current_A", "A", "current"},
    {"duty_pct", "%", "duty cycle"},
};

constexpr const FormulaNote* notes[] = {&duty_current_note, &duty_pct_note};

template <class Real>
Real duty(const Inputs<Real>& in, const char* name) {
  Real given = positive(in, name);
  require_within(name, value_of(given), 0, 100);
  return given;
}

void remark_capped(double duty_pct, Findings& findings) {
  Finding finding = remark("duty-cycle.continuous", "duty_pct",
                           Sentence("duty-cycle.continuous"_key, {{"most", UnitValue{100, "%"}}}),
                           "power-source-manuals, duty-cycle page");
  finding.value = duty_pct;
  finding.limit = 100;
  finding.unit = "%";
  findings.push_back(std::move(finding));
}

struct DutyCycle {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    require_only_one(in, {"current", "duty"});
    Real rated_current = positive(in, "rated-current"), rated_duty = duty(in, "rated-duty");
    if (in.has("duty")) {
      Real wanted = duty(in, "duty");
      Real current = current_at_duty_A(rated_current, rated_duty, wanted);
      out.set("current_A", current);
      out.set("duty_pct", wanted);
      out.explain(duty_current_note, current, "A",
                  {{"I1", "rated current", rated_current, "A"},
                   {"D1", "rated duty", rated_duty, "%"},
                   {"D2", "duty wanted", wanted, "%"}});
      return;
    }
    Real current = positive(in, "current");
    Real by_rule = duty_at_current_pct(rated_current, rated_duty, current);
    if (value_of(by_rule) > 100) remark_capped(value_of(by_rule), out.findings);
    Real capped = smaller<Real>(by_rule, Real(100.0));
    out.set("current_A", current);
    out.set("duty_pct", capped);
    out.explain(duty_pct_note, capped, "%",
                {{"I1", "rated current", rated_current, "A"},
                 {"D1", "rated duty", rated_duty, "%"},
                 {"I2", "current", current, "A"}});
  }
};

}  // namespace

const Quantity duty_cycle_quantity{"duty-cycle",
                                   "duty cycle of a power source at another current, or the reverse",
                                   options,
                                   results,
                                   notes,
                                   &DutyCycle::compute<double>,
                                   &DutyCycle::compute<Dual>};

}  // namespace seamtakt
