#include "cell/travel/changeover.hpp"

namespace seamtakt {

double changeover_s(const Plan& plan, std::string_view from, std::string_view to) {
  if (!plan.cell) return 0;
  for (const Changeover& changeover : plan.cell->changeovers)
    if (changeover.from == from && changeover.to == to) return changeover.time_s;
  return from == to ? 0 : plan.cell->changeover_s;
}

}  // namespace seamtakt
