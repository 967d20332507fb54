#include <algorithm>
#include <unordered_map>

#include "base/error.hpp"
#include "base/parallel/thread_pool.hpp"
#include "base/units/units.hpp"
#include "formula/size/fillet.hpp"
#include "plan/fields/calendar_relations.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/fields/plate_relations.hpp"
#include "plan/fields/reference_check.hpp"
#include "plan/seam_geometry.hpp"
#include "plan/wire_extension.hpp"

namespace seamtakt {

namespace {

/// Runs of one seam: more are a slip of the pen, and each one takes memory.
constexpr int most_runs = 10000;

UnitValue all_digits_mm(double length_mm) {
  return {length_mm, "mm", UnitValue::all_digits};
}

/// The value of a key, which is in millimetres whatever the view.
UnitValue as_in_file(double length_mm) {
  return {length_mm, "", UnitValue::all_digits};
}

void check_extension(const Schedule& schedule, FieldPath& place) {
  const double extension_mm = wire_extension_mm(schedule);
  if (extension_mm > 0) return;
  FieldPath::Step step(place, "contact_tip_distance_mm");
  place.refuse(Sentence("relation.extension"_key, {{"extension", all_digits_mm(extension_mm)},
                                                   {"distance", as_in_file(schedule.contact_tip_distance_mm)},
                                                   {"arc", as_in_file(schedule.arc_length_mm)}}),
               Sentence("relation.extension.above"_key, {{"least", UnitValue{0, "mm"}}}));
}

/// A peak is no longer than the period of its pulse.
void check_pulse(const Schedule& schedule, FieldPath& place) {
  if (!schedule.pulse) return;
  const double period_ms = 1000 / schedule.pulse->frequency_Hz;
  // A peak as long as the period is a steady current, also where the two are off by their rounding.
  if (schedule.pulse->peak_ms <= period_ms * (1 + 1e-9)) return;
  FieldPath::Step pulse(place, "pulse");
  FieldPath::Step key(place, "peak_ms");
  place.refuse(
      Sentence("relation.pulse"_key,
               {{"peak", UnitValue{schedule.pulse->peak_ms, "ms", UnitValue::all_digits}},
                {"frequency", UnitValue{schedule.pulse->frequency_Hz, "Hz", UnitValue::all_digits}}}),
      Sentence("relation.pulse.at-most"_key, {{"period", UnitValue{period_ms, "ms", 6}}}));
}

void check_length(const Seam& seam, FieldPath& place) {
  const double length_mm = path_length_mm(seam);
  if (length_mm <= 0) {
    FieldPath::Step step(place, "path_mm");
    place.refuse(Sentence("relation.path.length"_key, {{"length", UnitValue{0, "mm"}}}),
                 "points that lie apart"_word);
  }
  if (!seam.intermittent) return;
  const Intermittent& runs = *seam.intermittent;
  const double count = (length_mm + runs.gap_mm) / (runs.length_mm + runs.gap_mm);
  FieldPath::Step step(place, "intermittent");
  FieldPath::Step run(place, "length_mm");
  // A run as long as the seam is one run, also where the path's length is off by its rounding.
  if (count + 1e-9 < 1)
    place.refuse(Sentence("relation.run"_key, {{"run", all_digits_mm(runs.length_mm)}}),
                 Sentence("relation.run.at-most"_key, {{"length", UnitValue{length_mm, "mm", 6}}}));
  if (count > most_runs)
    place.refuse(Sentence("relation.run.on-seam"_key, {{"run", all_digits_mm(runs.length_mm)},
                                                       {"length", UnitValue{length_mm, "mm", 6}}}),
                 Sentence("relation.run.count"_key, {{"most", most_runs}}));
}

/// The largest fillet of a seam is no smaller than the one that is drawn; a groove has none.
void check_largest_fillet(const Seam& seam, FieldPath& place) {
  if (!seam.leg_max_mm && !seam.throat_max_mm) return;
  const auto refuse = [&](const char* key, Phrase found, Phrase expected) {
    FieldPath::Step step(place, key);
    place.refuse(std::move(found), std::move(expected));
  };
  if (seam.groove)
    refuse(seam.leg_max_mm ? "leg_max_mm" : "throat_max_mm", "a largest fillet on a groove"_word,
           "a seam with leg_mm or throat_mm"_word);
  const double leg = seam.leg_mm ? *seam.leg_mm : fillet_leg_of_throat_mm(*seam.throat_mm, seam.dihedral_deg);
  const double throat =
      seam.throat_mm ? *seam.throat_mm : fillet_throat_of_leg_mm(*seam.leg_mm, seam.dihedral_deg);
  const auto check = [&](const char* key, const std::optional<double>& most, double drawn) {
    // A drawn size that came over from the other kind is off by its rounding.
    if (most && *most < drawn * (1 - 1e-9))
      refuse(key, Sentence("field.found.quantity"_key, {{"quantity", all_digits_mm(*most)}}),
             Sentence("relation.size.at-least"_key, {{"size", UnitValue{drawn, "mm"}}}));
  };
  check("leg_max_mm", seam.leg_max_mm, leg);
  check("throat_max_mm", seam.throat_max_mm, throat);
}

/// Looks for a circle in one weldment's `after`, depth first and without recursion: a chain may be as long as
/// the weldment has seams.
class AfterWalk {
 public:
  AfterWalk(const std::vector<Seam>& seams, FieldPath& place)
      : seams_(seams), place_(place), states_(seams.size(), State::unseen) {
    for (std::size_t i = 0; i < seams.size(); ++i) index_.emplace(seams[i].id, i);
  }

  void run() {
    for (std::size_t i = 0; i < seams_.size(); ++i)
      if (states_[i] == State::unseen) walk_from(i);
  }

 private:
  enum class State : char { unseen, on_path, done };
  struct Stop {
    std::size_t seam, next_after;
  };

  void walk_from(std::size_t first) {
    enter(first);
    while (!path_.empty()) {
      Stop& stop = path_.back();
      const auto& after = seams_[stop.seam].after;
      if (stop.next_after == after.size()) {
        states_[stop.seam] = State::done;
        path_.pop_back();
        continue;
      }
      const std::size_t next = index_.at(after[stop.next_after++]);
      if (states_[next] == State::on_path) refuse_circle(next);
      if (states_[next] == State::unseen) enter(next);
    }
  }

  void enter(std::size_t seam) {
    states_[seam] = State::on_path;
    path_.push_back({seam, 0});
  }

  [[noreturn]] void refuse_circle(std::size_t begin) const {
    constexpr std::size_t shown = 12;
    const auto at = std::ranges::find(path_, begin, &Stop::seam);
    std::string text;
    std::size_t count = 0;
    for (auto stop = at; stop != path_.end() && count < shown; ++stop, ++count)
      text += printable(seams_[stop->seam].id) + " -> ";
    if (static_cast<std::size_t>(path_.end() - at) > shown) text += "... -> ";
    text += printable(seams_[begin].id);
    FieldPath::Step seam(place_, path_.back().seam);
    FieldPath::Step key(place_, "after");
    FieldPath::Step element(place_, path_.back().next_after - 1);
    place_.refuse(Sentence("relation.circle"_key, {{"seams", text}}),
                  "seams of which each comes after others without coming after itself"_word);
  }

  const std::vector<Seam>& seams_;
  FieldPath& place_;
  std::unordered_map<std::string_view, std::size_t> index_;
  std::vector<State> states_;
  std::vector<Stop> path_;
};

void check_weldment(const Weldment& weldment, FieldPath& place) {
  check_plate_relations(weldment, place);
  FieldPath::Step key(place, "seams");
  for (std::size_t i = 0; i < weldment.seams.size(); ++i) {
    FieldPath::Step step(place, i);
    check_alone(weldment.seams[i], place);
  }
  const auto comes_first = [](const Seam& seam) { return seam.after.empty(); };
  if (!std::ranges::all_of(weldment.seams, comes_first)) AfterWalk(weldment.seams, place).run();
}

}  // namespace

void check_alone(const Seam& seam, FieldPath& place) {
  check_length(seam, place);
  check_largest_fillet(seam, place);
}

void check_alone(const Schedule& schedule, FieldPath& place) {
  check_extension(schedule, place);
  check_pulse(schedule, place);
}

void check_relations(const Plan& plan, FieldPath& place) {
  for (std::size_t i = 0; i < plan.schedules.size(); ++i) {
    FieldPath::Step key(place, "schedules");
    FieldPath::Step step(place, i);
    check_alone(plan.schedules[i], place);
  }
  if (plan.line) {
    FieldPath::Step key(place, "line");
    check_line_relations(*plan.line, place);
  }
  constexpr std::size_t weldments_a_piece = 32;
  ThreadPool::shared().parallel_for(plan.weldments.size(), weldments_a_piece,
                                    [&](std::size_t begin, std::size_t end) {
                                      FieldPath own(place);
                                      FieldPath::Step key(own, "weldments");
                                      for (std::size_t i = begin; i < end; ++i) {
                                        FieldPath::Step step(own, i);
                                        check_weldment(plan.weldments[i], own);
                                      }
                                    });
}

void check_plan(const Plan& plan, const std::string& file) {
  ReferenceCheck check(plan, file);
  check_object(plan, check);
  check_relations(plan, check);
}

}  // namespace seamtakt
