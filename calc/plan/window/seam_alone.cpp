#include "plan/window/seam_alone.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/text/spelling_suggestion.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

struct Found {
  const Weldment* weldment = nullptr;
  const Seam* seam = nullptr;
};

std::vector<Found> seams_named(const Plan& plan, std::string_view place) {
  std::vector<Found> found;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      if (seam_place(weldment.id, seam.id) == place) return {{&weldment, &seam}};
      if (seam.id == place) found.push_back({&weldment, &seam});
    }
  return found;
}

constexpr std::size_t most_named = 12;

/// Valid replacements for `given`: all of a short list, else the nearest or the first.
Sentence expected_one_of(std::string_view given, const std::vector<std::string>& known) {
  if (known.empty()) return "a plan with seams"_word;
  if (known.size() <= most_named) return Sentence("plan.one-of"_key, {{"names", comma_list(known)}});
  const std::vector<std::string_view> words(known.begin(), known.end());
  const std::string_view near = spelling_suggestion(given, words);
  return Sentence("plan.one-of-its-seams"_key,
                  {{"count", known.size()}, {"seam", near.empty() ? words.front() : near}});
}

}  // namespace

std::string SeamAlone::place() const {
  return seam_place(weldment().id, seam().id);
}

SeamAlone seam_alone(const Plan& plan, const Weldment& weldment, const Seam& seam) {
  SeamAlone alone;
  alone.plan.code = plan.code;
  alone.plan.severity = plan.severity;
  alone.plan.heat_loss_W_m2K = plan.heat_loss_W_m2K;
  alone.plan.base_metals = plan.base_metals;
  alone.plan.wires = plan.wires;
  alone.plan.gases = plan.gases;
  alone.plan.power_sources = plan.power_sources;
  alone.plan.schedules = plan.schedules;
  alone.plan.qualifications = plan.qualifications;
  alone.plan.cell = plan.cell;
  alone.plan.instruments = plan.instruments;
  alone.plan.costs = plan.costs;
  alone.plan.measuring = plan.measuring;
  const std::string place = seam_place(weldment.id, seam.id);
  for (const Acceptance& accepted : plan.accepted)
    if (accepted.where == place || accepted.where.rfind(place + "/", 0) == 0)
      alone.plan.accepted.push_back(accepted);
  Weldment one;
  one.id = weldment.id;
  one.seams.push_back(seam);
  alone.plan.weldments.push_back(std::move(one));
  return alone;
}

SeamAlone seam_alone(const Plan& plan, std::string_view place, const std::string& option) {
  const std::vector<Found> found = seams_named(plan, place);
  if (found.size() == 1) return seam_alone(plan, *found[0].weldment, *found[0].seam);
  const std::string given = printable(place);
  std::vector<std::string> places;
  if (found.size() > 1) {
    for (const Found& each : found) places.push_back(seam_place(each.weldment->id, each.seam->id));
    throw InputError(option, Sentence("plan.seam-of-several"_key, {{"seam", given}}),
                     Sentence("plan.one-of"_key, {{"names", comma_list(places)}}));
  }
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) places.push_back(seam_place(weldment.id, seam.id));
  throw InputError(option, "\"" + given + "\"", expected_one_of(place, places));
}

std::vector<std::string> judged_places(const SeamAlone& alone, const std::vector<int>& passes) {
  std::vector<std::string> places{alone.place()};
  for (int pass : passes) places.push_back(pass_place(alone.weldment().id, alone.seam().id, pass));
  return places;
}

std::vector<int> passes_with(const Seam& seam, std::string_view schedule) {
  std::vector<int> passes;
  for (std::size_t i = 0; i < seam.schedules.size(); ++i)
    if (seam.schedules[i] == schedule) passes.push_back(static_cast<int>(i) + 1);
  return passes;
}

}  // namespace seamtakt
