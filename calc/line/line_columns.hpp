#pragma once

#include <span>

#include "base/results/column.hpp"
#include "line/line_result.hpp"

namespace seamtakt {

/// The members of a line's result, in the order of their JSON.
std::span<const Column<LineResult>> line_columns();
std::span<const Column<StageResult>> stage_columns();
std::span<const Column<UnitResult>> unit_columns();
std::span<const Column<WaitingUnit>> waiting_columns();

/// Figures over runs. Without a takt nothing misses it: JSON has no such keys then.
std::span<const Column<LineFigures>> figures_columns(bool has_takt);
std::span<const Column<Improvement>> improvement_columns(bool has_takt);

}  // namespace seamtakt
