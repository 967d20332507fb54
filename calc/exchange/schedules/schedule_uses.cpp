#include "exchange/schedules/schedule_uses.hpp"

#include <algorithm>
#include <tuple>

namespace seamtakt {

namespace {

auto groove_key(const Seam& seam) {
  const Groove groove = seam.groove.value_or(Groove{});
  return std::tuple(groove.type, groove.angle_deg, groove.root_gap_mm, groove.root_face_mm,
                    groove.root_radius_mm, groove.cap_height_mm);
}

/// What makes seams alike on a sheet.
auto key_of(const SeamUse& use) {
  const Seam& seam = *use.seam;
  return std::tuple(seam.joint, seam.thickness_mm, seam.leg_mm, seam.throat_mm, groove_key(seam),
                    seam.dihedral_deg, seam.gap_mm, seam.gap_max_mm, seam.position, seam.schedules.size(),
                    use.runs);
}

}  // namespace

ScheduleUses::ScheduleUses(const Plan& plan) {
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      std::map<std::string_view, std::set<int>> runs;
      int number = 0;
      for (const std::string& schedule : seam.schedules) {
        ++number;
        runs[schedule].insert(number);
        if (!seam.manual_schedule.empty()) runs[seam.manual_schedule].insert(number);
      }
      for (auto& [schedule, numbers] : runs)
        uses_[std::string(schedule)].push_back({&weldment, &seam, std::move(numbers)});
    }
}

const std::vector<SeamUse>& ScheduleUses::of(std::string_view schedule) const {
  static const std::vector<SeamUse> none;
  const auto at = uses_.find(schedule);
  return at == uses_.end() ? none : at->second;
}

std::vector<LikeSeams> ScheduleUses::alike(std::string_view schedule) const {
  std::vector<LikeSeams> groups;
  std::map<decltype(key_of(std::declval<const SeamUse&>())), std::size_t> places;
  for (const SeamUse& use : of(schedule)) {
    const auto [at, is_new] = places.emplace(key_of(use), groups.size());
    if (is_new) groups.push_back({&use, {}});
    groups[at->second].all.push_back(&use);
  }
  std::stable_sort(groups.begin(), groups.end(),
                   [](const LikeSeams& a, const LikeSeams& b) { return a.all.size() > b.all.size(); });
  return groups;
}

}  // namespace seamtakt
