#pragma once

#include "exchange/schedules/schedule_uses.hpp"
#include "exchange/sheets/report_model.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// The data items of a welding procedure specification that ISO 15609-1:2019, clause 4, lists (recalled). An
/// item that the plan leaves open reads "not stated".

/// Who made the document, and its state.
ItemsBlock document_items(const Plan& plan, const Schedule& schedule);
/// Metals, joint, technique and heat treatment.
ItemsBlock joint_items(const PlanIndex& index, const Schedule& schedule, const std::vector<SeamUse>& uses);
/// Process, consumables and electrical values, with their limits.
ItemsBlock arc_items(const PlanIndex& index, const Schedule& schedule);

}  // namespace seamtakt
