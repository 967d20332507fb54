#include "models/finding_index.hpp"

namespace seamtakt::desk {

Link link_of_rule(std::string_view rule) {
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
      {"limit.heat", Link::heat},
      {"limit.cooling", Link::heat},
      {"limit.hardness", Link::heat},
      {"limit.preheat", Link::heat},
      {"preheat", Link::heat},
      {"qualification.heat", Link::heat},
      {"qualification.preheat", Link::heat},
      {"composition", Link::heat},
      {"cycle.", Link::cell},
      {"power-source.duty", Link::cell},
      {"line", Link::line},
      {"record", Link::records},
      {"unit.", Link::records},
      {"manual.", Link::records},
  };
  for (const Owner& owner : owners)
    if (rule.starts_with(owner.beginning)) return owner.link;
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

const Acceptance* acceptance_of(const Plan& plan, const Finding& finding) {
  for (const Acceptance& accepted : plan.accepted)
    if (accepted.rule == finding.rule && accepted.where == finding.where) return &accepted;
  return nullptr;
}

FindingIndex::FindingIndex(const Plan& plan, const Findings& findings) {
  for (const Finding& finding : findings) {
    const Severity severity = acceptance_of(plan, finding) ? Severity::note : finding.severity;
    links_[static_cast<std::size_t>(link_of_rule(finding.rule))].add(severity);
    all_.add(severity);
    for (std::string place = finding.where; !place.empty();) {
      const auto at = worst_.try_emplace(place, severity).first;
      if (severity > at->second) at->second = severity;
      const std::size_t slash = place.rfind('/');
      place.resize(slash == std::string::npos ? 0 : slash);
    }
  }
}

std::optional<Severity> FindingIndex::worstAt(const std::string& place) const {
  const auto at = worst_.find(place);
  return at == worst_.end() ? std::nullopt : std::optional(at->second);
}

std::optional<Severity> FindingIndex::worstOfSeam(const std::string& weldment,
                                                  const std::string& seam) const {
  return worstAt(weldment + "/" + seam);
}

}  // namespace seamtakt::desk
