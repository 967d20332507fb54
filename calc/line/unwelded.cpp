#include "line/unwelded.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

/// For each waiting unit the next order after it that is released.
void tell_replacements(Release& release) {
  auto released = release.released.begin();
  for (WaitingUnit& unit : release.waiting) {
    while (released != release.released.end() && released->number < unit.order.number) ++released;
    unit.released_instead = released == release.released.end() ? std::string() : released->serial;
  }
}

}  // namespace

Release without_unwelded(const Release& release, const UnweldedWeldments& unwelded) {
  if (unwelded.empty()) return release;
  Release result;
  result.orders = release.orders;
  result.waiting = release.waiting;
  for (const CartNote& note : release.notes)
    if (!unwelded.contains(note.order.weldment)) result.notes.push_back(note);
  for (const Order& order : release.released) {
    const auto at = unwelded.find(order.weldment);
    if (at == unwelded.end()) {
      result.released.push_back(order);
      continue;
    }
    WaitingUnit unit;
    unit.order = order;
    unit.unwelded_seams = at->second.seams;
    unit.sentence =
        Sentence("line.unwelded"_key, {{"unwelded", at->second.seams}, {"seams", at->second.robot_seams}});
    result.waiting.push_back(std::move(unit));
  }
  std::stable_sort(
      result.waiting.begin(), result.waiting.end(),
      [](const WaitingUnit& a, const WaitingUnit& b) { return a.order.number < b.order.number; });
  tell_replacements(result);
  return result;
}

Findings unwelded_findings(const Release& release, const UnweldedWeldments& unwelded) {
  Findings findings;
  for (const auto& [weldment, seams] : unwelded) {
    // A name of its own: clang 14 doesn't let a lambda see a structured binding.
    const std::string& id = weldment;
    const auto units = std::count_if(
        release.waiting.begin(), release.waiting.end(),
        [&](const WaitingUnit& unit) { return unit.unwelded_seams > 0 && unit.order.weldment == id; });
    if (units == 0) continue;
    findings.push_back(
        {"line.weldment.unwelded", Severity::fail, weldment, static_cast<double>(seams.seams), 0, "",
         Sentence("line.weldment.unwelded"_key,
                  {{"unwelded", seams.seams}, {"seams", seams.robot_seams}, {"units", std::int64_t{units}}}),
         "plan"});
  }
  return findings;
}

}  // namespace seamtakt
