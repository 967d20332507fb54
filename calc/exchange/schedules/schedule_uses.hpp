#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A seam of the plan that a schedule welds.
struct SeamUse {
  const Weldment* weldment;
  const Seam* seam;
  std::set<int> runs;  ///< that the schedule welds, from 1; all of them where it is the one by hand
};

/// Seams that are alike: the same joint, sizes, position and runs.
struct LikeSeams {
  const SeamUse* first;  ///< in the plan's order
  std::vector<const SeamUse*> all;
};

/// Where each schedule of a plan is used. Borrows the plan.
class ScheduleUses {
 public:
  explicit ScheduleUses(const Plan& plan);

  /// In the plan's order.
  const std::vector<SeamUse>& of(std::string_view schedule) const;
  /// Those most seams are like come first.
  std::vector<LikeSeams> alike(std::string_view schedule) const;

 private:
  std::map<std::string, std::vector<SeamUse>, std::less<>> uses_;
};

}  // namespace seamtakt
