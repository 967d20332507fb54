#include "models/tables/finding_index.hpp"

#include <algorithm>

namespace seamtakt::desk {

Link link_of(const Finding& finding) {
  struct Owner {
    std::string_view beginning;
    Link link;
  };
  static constexpr Owner owners[] = {
      {"fillet.", Link::seams},
      {"groove.", Link::seams},
      {"tack.", Link::seams},
      {"seam.", Link::seams},
      {"tracking.", Link::seams},
      {"acceptance.", Link::seams},
      {"interpass.", Link::heat},
      {"limit.heat", Link::heat},
      {"limit.cooling", Link::heat},
      {"limit.hardness", Link::heat},
      {"limit.preheat", Link::heat},
      {"preheat", Link::heat},
      {"qualification.heat", Link::heat},
      {"qualification.preheat", Link::heat},
      {"composition", Link::heat},
      {"cycle.", Link::cell},
      {"cell.", Link::cell},
      {"power-source.duty", Link::cell},
      {"line", Link::line},
      {"kit.", Link::line},
      {"record", Link::records},
      {"unit.", Link::records},
      {"manual.", Link::records},
      {"statistics.", Link::records},
  };
  for (const Owner& owner : owners)
    if (finding.rule.starts_with(owner.beginning)) return owner.link;
  return Link::schedules;
}

void Tally::add(Severity severity) {
  if (severity == Severity::fail) ++fail;
  if (severity == Severity::warn) ++warn;
  if (severity == Severity::note) ++note;
}

std::optional<Severity> Tally::worst() const {
  if (fail) return Severity::fail;
  if (warn) return Severity::warn;
  if (note) return Severity::note;
  return std::nullopt;
}

/// An absent severity is the least of all.
void RowState::add(const RowState& other) {
  own = std::max(own, other.own);
  is_partly_judged = is_partly_judged || other.is_partly_judged;
  if (other.beyond > beyond) {
    beyond = other.beyond;
    beyond_link = other.beyond_link;
  }
  if (beyond <= own) beyond.reset();
}

const Acceptance* acceptance_of(const Plan& plan, const Finding& finding) {
  for (const Acceptance& accepted : plan.accepted)
    if (accepted.rule == finding.rule && accepted.where == finding.where) return &accepted;
  return nullptr;
}

FindingIndex::FindingIndex(const Findings& findings) {
  for (const Finding& finding : findings) {
    const auto link = static_cast<std::size_t>(link_of(finding));
    const auto add = [&](Places& places, const std::string& place) {
      std::optional<Severity>& worst = places[place][link];
      worst = std::max(worst, std::optional(finding.severity));
    };
    links_[link].add(finding.severity);
    all_.add(finding.severity);
    add(at_, finding.where);
    for (std::string place = finding.where; !place.empty();) {
      add(within_, place);
      const std::size_t slash = place.rfind('/');
      place.resize(slash == std::string::npos ? 0 : slash);
    }
  }
}

RowState FindingIndex::stateOf(Link link, const Places& places, const std::string& place) {
  RowState state;
  const auto found = places.find(place);
  if (found == places.end()) return state;
  const Worst& worst = found->second;
  state.own = worst[static_cast<std::size_t>(link)];
  for (std::size_t other = 0; other < worst.size(); ++other)
    if (worst[other] > state.own && worst[other] > state.beyond) {
      state.beyond = worst[other];
      state.beyond_link = static_cast<Link>(other);
    }
  return state;
}

RowState FindingIndex::stateWithin(Link link, const std::string& place) const {
  return stateOf(link, within_, place);
}

RowState FindingIndex::stateAt(Link link, const std::string& place) const {
  return stateOf(link, at_, place);
}

}  // namespace seamtakt::desk
