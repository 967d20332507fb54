#pragma once

#include <span>

#include "base/results/column.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// The members of what an audit gives, in the order of its JSON and of the ledger's bodies.
std::span<const Column<PassRecord>> record_columns();
std::span<const Column<SteadyMeans>> steady_columns();
std::span<const Column<PassCoverage>> coverage_columns();
std::span<const Column<UnitRecord>> unit_record_columns();
std::span<const Column<ManualSeam>> manual_columns();

}  // namespace seamtakt
