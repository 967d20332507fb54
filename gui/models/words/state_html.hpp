#pragma once

#include <QString>

#include "jobs/evaluator.hpp"

namespace seamtakt::desk {

/// What makes up the state of a row, as rich text for the Explain drawer: each finding on the place
/// ("BD/S03", "BD/S03/pass 1", "schedule F5S": the schedule and the passes welded by it), by link, worst
/// first. All of the plan's own words are escaped.
QString state_html(const Results& results, const QString& place);

}  // namespace seamtakt::desk
