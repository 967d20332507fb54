#pragma once

#include "line/line_model.hpp"
#include "line/line_run.hpp"

namespace seamtakt {

/// Runs the line event by event. The rules:
///  - all units are there at time 0, or when they become complete; the first stage takes the first complete
///    one in their order as soon as it can;
///  - a unit that is done goes to the next stage's free server, else into the buffer, else it stays and
///  blocks
///    its server (blocking after service); the unit that has waited longest moves first;
///  - a unit sent back waits beside the line, takes no place of a buffer, and has priority over new ones, so
///    that a line with rework can't lock itself up;
///  - among servers of a stage the first free one takes the unit; among equal times the later stage comes
///    first, so that space is freed before it is needed;
///  - where a stage needs people, the unit waits on its server until one is free: PeopleQueue has the rule;
///  - where assembly pulls, it takes a unit by LinePull from the last buffer, else from the server that
///  blocks.
/// Source: the rules of blocking after service are those of the flow-line literature, recalled. Memory and
/// time grow with the units' services. The model must have passed check_line_model.
LineRun run_calendar(const LineModel& model, std::uint64_t seed);

/// The same run, watched.
LineRun run_calendar(const LineModel& model, std::uint64_t seed, LineTrace& trace);

}  // namespace seamtakt
