// Uses one formula, and a plan's figures.
#include <cstdio>

#include "base/version.hpp"
#include "formula/heat/heat_input.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"

int main(int, char** arguments) {
  const double energy_kJ_mm = seamtakt::arc_energy_kJ_mm(seamtakt::arc_power_W(24.8, 205.0), 5.0);
  std::printf("%s %.5f\n", seamtakt::program_version, seamtakt::heat_input_kJ_mm(energy_kJ_mm, 0.8));
  const seamtakt::Plan plan = seamtakt::load_plan(arguments[1]);
  const seamtakt::Evaluation evaluation = seamtakt::evaluate(plan);
  std::printf("%zu passes\n", evaluation.passes.size());
  return evaluation.passes.empty() ? 1 : 0;
}
