#pragma once

#include "cell/timeline/timeline.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// The kind of a move in the user's language.
QString move_word(MoveKind kind);

/// What a cycle is made of, largest first, beside another cycle where there is one. The change is from this
/// cycle to the other one, or from the other one to this where that was before: what is gained is negative.
std::vector<GridColumn> loss_columns();
std::vector<ValueModel::Row> loss_rows(const CycleResult& cycle, const CycleResult* other,
                                       bool other_is_before = false);
/// Columns of the other cycle, from this one on.
inline constexpr int loss_other_column = 2;

/// The robots' moves in words.
std::vector<GridColumn> move_columns();
std::vector<ValueModel::Row> move_rows(const Plan& plan, const CycleResult& cycle);
inline constexpr int move_seam_column = 4, move_pass_column = 5;

}  // namespace seamtakt::desk
