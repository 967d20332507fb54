#pragma once

#include <string>
#include <vector>

#include "base/json_writer.hpp"
#include "base/thread_pool.hpp"
#include "plan/evaluation.hpp"

namespace seamtakt {

/// Writes the members "passes", "seams" and "weldments" of the open object: an array each, one row a line,
/// the keys of evaluation_columns.hpp. A plan of a hundred thousand passes gives more than a hundred
/// megabytes: all threads write, and the text stays in parts (those of the return value, in order, stand
/// before what `json` then holds).
std::vector<std::string> write_evaluation(JsonWriter& json, const Evaluation& evaluation,
                                          ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
