#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// A pass as it was welded, or the part of it before or after the robot had welded something else: a record
/// is one pass by its identity, however often its arc burned.
struct WeldedArc {
  const PassRecord* record = nullptr;
  int part = 1;                           ///< counts from 1
  std::int64_t begin_ns = 0, end_ns = 0;  ///< from its first arc to the end of its last one
  double arc_off_s = 0;                   ///< of that, without arc, as far as the record lists it
  std::uint64_t arc_starts = 0;           ///< likewise
};

/// The arcs of one robot's records in the order of time. A record is cut where the robot welded another one
/// while its arc was off.
std::vector<WeldedArc> welded_arcs(const std::vector<const PassRecord*>& records);

/// Whether one of them begins before the one before it has ended: a robot has one arc.
bool any_overlap(const std::vector<WeldedArc>& arcs);

}  // namespace seamtakt
