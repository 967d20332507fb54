#pragma once

#include "base/files/ordered_output.hpp"
#include "base/json/json_writer.hpp"
#include "base/parallel/thread_pool.hpp"
#include "plan/evaluate/evaluation.hpp"

namespace seamtakt {

/// Writes the members "passes", "seams" and "weldments" of the open object: an array each, one row a line,
/// the keys of evaluation_columns.hpp. A plan of a hundred thousand passes gives more than a hundred
/// megabytes: all threads write, and the text goes to `sink` in parts, preceded by the content of `json`.
void write_evaluation(JsonWriter& json, const Evaluation& evaluation, const TextSink& sink,
                      ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
