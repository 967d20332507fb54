#pragma once

#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// How a timeline shows a kind of move, on the desk as in a report.
struct MoveLook {
  MoveKind kind;
  const char* legend;  ///< kinds with the same look share it
  const char* colour;  ///< "#rrggbb" of the Okabe-Ito palette, or a grey; "none": an empty bar
  double share;        ///< of the bar's full height, so that kinds differ without colour too
};

/// Every kind, in the order of a legend.
inline constexpr MoveLook move_looks[] = {{MoveKind::arc, "arc", "#d55e00", 1.0},
                                          {MoveKind::start, "start, end", "#e69f00", 0.8},
                                          {MoveKind::end, "start, end", "#e69f00", 0.8},
                                          {MoveKind::orientation, "positioner turns", "#0072b2", 0.7},
                                          {MoveKind::service, "torch service", "#cc79a7", 0.7},
                                          {MoveKind::wire_change, "wire change", "#f0e442", 0.6},
                                          {MoveKind::tip_change, "tip, spool change", "#000000", 0.6},
                                          {MoveKind::spool_change, "tip, spool change", "#000000", 0.6},
                                          {MoveKind::sense, "sensing", "#009e73", 0.55},
                                          {MoveKind::load, "load, index", "#7a7a7a", 0.45},
                                          {MoveKind::index, "load, index", "#7a7a7a", 0.45},
                                          {MoveKind::air, "air move", "#56b4e9", 0.3},
                                          {MoveKind::wait, "wait", "none", 0.2}};

const MoveLook& look_of(MoveKind kind);

}  // namespace seamtakt
