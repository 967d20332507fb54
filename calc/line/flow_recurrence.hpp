#pragma once

#include <span>

#include "line/line_model.hpp"
#include "line/line_run.hpp"

namespace seamtakt {

/// Whether the recurrence below covers the line: one server a stage, every unit right, no shared people, all
/// units there from the start.
bool recurrence_covers(const LineModel& model);

/// The run by the recurrence of the flow line with finite buffers and blocking after service,
///   start(n,j) = max(leave(n,j-1), leave(n-1,j)),
///   leave(n,j) = max(start(n,j) + service(n,j), start(n-b,j+1)), b = buffer behind j;
///                b = 0: leave(n-1,j+1) instead,
/// which is linear in (max,+). Source: the recurrence of the flow-line literature, recalled. The same result
/// as run_calendar to the last bit, about ten times as fast. Stops are in the service times, so breakdowns
/// are covered, and so is work that varies; an assembly line that pulls is one stage more, which has each
/// unit for a takt. Several servers, rework, people and units that come later aren't: std::invalid_argument.
LineRun run_recurrence(const LineModel& model, std::uint64_t seed);

/// The recurrence alone, for service times that are known: service_s[unit*stages + stage]. buffer_after has
/// one entry a stage, the last one isn't used. Writes each unit's start at the first stage and its leaving
/// into `units` and sums into `stages` (stop_s isn't touched; work_s counts the whole service).
void run_flow_line(std::span<const double> service_s, std::span<const int> buffer_after,
                   std::span<UnitTimes> units, std::span<StageTimes> stages);

/// The run by whichever of the two fits.
LineRun run_line(const LineModel& model, std::uint64_t seed);

}  // namespace seamtakt
