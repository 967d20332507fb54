#pragma once

#include "base/files/ordered_output.hpp"
#include "base/finding.hpp"
#include "base/json/json_writer.hpp"
#include "base/parallel/thread_pool.hpp"

namespace seamtakt {

/// A finding as every JSON result holds it: rule, severity, where, value, limit, unit, text, source on one
/// line. null where there is no value, no limit or no unit (a dimensionless value).
void write_json(const Finding& finding, JsonWriter& json);

/// The member "findings" with all of them, in their order.
void write_findings(JsonWriter& json, const Findings& findings);

/// The same bytes for a document that is passed on in parts: what `json` has so far and the findings go to
/// `sink`.
void write_findings(JsonWriter& json, const Findings& findings, const TextSink& sink,
                    ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
