#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// When a robot is at a seam: from its first move for it to its last one.
struct SeamVisit {
  std::string seam;
  double start_s = 0, end_s = 0;
};

/// The seams that a robot welds, in the order in which it begins them. A seam whose passes are apart is one
/// visit.
std::vector<SeamVisit> visits_of(const CycleResult& cycle, std::string_view robot);

/// The seam before which a robot would weld something that is moved to a moment of its timeline: the first
/// one whose visit has its middle after it; empty: after all of them. `but` is left out.
std::string visit_after(const CycleResult& cycle, std::string_view robot, double at_s, std::string_view but);

/// The robot that welds a seam; empty where none does.
std::string robot_of(const CycleResult& cycle, std::string_view seam);

/// Stores a found cycle's order as the weldment's own: `cycle_given` then gives that cycle.
void take_order(Weldment& weldment, const CycleResult& cycle);

/// Moves all passes of a seam, in a row, ahead of another seam's first one (`before` empty: to the end) and
/// gives them to a robot. `now` is the weldment's present cycle, whose order is changed. InputError at the
/// seam: a seam that no robot welds, a robot that doesn't reach it, `before` names no seam of the order.
void place_seam(const Cell& cell, Weldment& weldment, const CycleResult& now, std::string_view seam,
                std::string_view robot, std::string_view before);

}  // namespace seamtakt
