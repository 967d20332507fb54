#pragma once

#include <set>
#include <string>

#include "exchange/drawing/drawing_result.hpp"

namespace seamtakt {

/// A name made from `wish` that isn't taken: "Rib", "Rib-2".
std::string free_id(const std::string& wish, std::set<std::string>& taken);

/// The last name of a part's path in the assembly.
std::string last_name(const std::string& path);

struct AddedSolids {
  std::size_t plates = 0, tubes = 0;
};
/// The drawing's plates and tubes, into a weldment that has none: where a person drew some, or an earlier
/// import did, they stay. Bolts and the like, and what the plan can't express, are left out.
AddedSolids add_solids(const DrawingResult& drawing, Weldment& weldment);

/// A weldment to be drawn, not to be planned: the solids, and each side as a seam that has a path alone, in
/// the drawing's order.
Weldment drawn_weldment(const DrawingResult& drawing);

}  // namespace seamtakt
