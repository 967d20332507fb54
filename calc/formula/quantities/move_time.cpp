#include "formula/move_time.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"distance", OptionKind::number, "mm", "distance from rest to rest", nullptr, nullptr},
    {"speed", OptionKind::number, "mm/s", "greatest speed", nullptr, nullptr},
    {"acceleration", OptionKind::number, "mm/s2", "acceleration", nullptr, nullptr},
    {"deceleration", OptionKind::number, "mm/s2", "deceleration; as the acceleration where not given",
     nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"time_s", "s", "time"},
    {"reached_speed_mm_s", "mm/s", "speed reached"},
};

constexpr const FormulaNote* notes[] = {&move_time_note, &move_time_short_note, &move_peak_note};

struct MoveTimeQuantity {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Real distance = not_negative(in, "distance"), speed = positive(in, "speed");
    Real acceleration = positive(in, "acceleration");
    Real deceleration = find_positive(in, "deceleration").value_or(acceleration);
    MoveTime<Real> move = move_time(distance, speed, acceleration, deceleration);
    out.set("time_s", move.time_s);
    out.set("reached_speed_mm_s", move.reached_speed_mm_s);
    std::initializer_list<Symbol<Real>> symbols = {{"d", "distance", distance, "mm"},
                                                   {"v", "greatest speed", speed, "mm/s"},
                                                   {"a1", "acceleration", acceleration, "mm/s2"},
                                                   {"a2", "deceleration", deceleration, "mm/s2"}};
    out.explain(move.reaches_speed ? move_time_note : move_time_short_note, move.time_s, "s", symbols);
    out.explain(move_peak_note, move.reached_speed_mm_s, "mm/s", symbols);
  }
};

}  // namespace

const Quantity move_time_quantity{"move-time",
                                  "time of a straight move from rest to rest",
                                  options,
                                  results,
                                  notes,
                                  &MoveTimeQuantity::compute<double>,
                                  &MoveTimeQuantity::compute<Dual>};

}  // namespace seamtakt
