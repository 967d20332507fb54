#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/parallel/thread_pool.hpp"
#include "formula/note.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Every derived value of every pass, seam and weldment of the plan, and the findings on them. Pure: the same
/// plan gives the same result. `date` (ISO 8601, "2026-11-25") is what qualification dates are judged on;
/// empty: they aren't. The plan's references must resolve (check_plan). The seams are shared out to the
/// pool's threads; the result is the same for any number of them.
Evaluation evaluate(const Plan& plan, std::string_view date = {}, ThreadPool& pool = ThreadPool::shared());

/// How one derived number is computed: the requested number first, then its inputs.
/// `place`: "WELDMENT/SEAM/pass 1" for a key of passes[], "WELDMENT/SEAM" for one of seams[] and, where the
/// seam has one pass, of that pass; the seam's id alone where one weldment has it; "WELDMENT" for its bow. A
/// value with an uncertainty has its budget; the key of the uncertainty gives that value. InputError where
/// the place or the key is unknown or the value is null.
std::vector<Explanation> explain(const Plan& plan, std::string_view place, std::string_view key);

}  // namespace seamtakt
