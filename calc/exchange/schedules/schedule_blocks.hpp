#pragma once

#include <vector>

#include "exchange/schedules/schedule_uses.hpp"
#include "exchange/sheets/report_model.hpp"

namespace seamtakt {

/// Parts of a schedule sheet.

/// Sketches of at most so many groups, each with the number of its seams.
DrawingsBlock sketches_of(const std::vector<LikeSeams>& groups, std::size_t most);
/// A row a group of like seams: joint, sizes, position, runs, which seams.
std::vector<Block> uses_table(const std::vector<LikeSeams>& groups);
/// The earlier revision beside this one, where the plan has one.
std::vector<Block> changes_table(const Plan& plan, const Schedule& schedule);

}  // namespace seamtakt
