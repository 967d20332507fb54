#pragma once

#include <map>
#include <string>

#include "line/release.hpp"

namespace seamtakt {

/// How many of a weldment's robot seams nobody welds.
struct UnweldedSeams {
  int seams = 0, robot_seams = 0;
};
/// By weldment; those with all seams welded aren't in it.
using UnweldedWeldments = std::map<std::string, UnweldedSeams>;

/// The release without the units of unwelded weldments: they wait, like those whose cart isn't complete, for
/// seams that nobody welds. Replacements are determined again: a unit that isn't run replaces none.
Release without_unwelded(const Release& release, const UnweldedWeldments& unwelded);

/// line.weldment.unwelded (fail), one a weldment of which units wait for unwelded seams.
Findings unwelded_findings(const Release& release, const UnweldedWeldments& unwelded);

}  // namespace seamtakt
