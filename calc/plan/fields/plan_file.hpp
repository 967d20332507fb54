#pragma once

#include <string>
#include <string_view>

#include "base/json/json_document.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Reads a plan from JSON text. Every key, type, range and reference of the plan file is checked; the first
/// problem is thrown as InputError at FILE:LINE:COLUMN with its JSON pointer. `file` names the source.
Plan parse_plan(std::string_view text, const std::string& file);
Plan parse_plan(const JsonDocument& json);

Plan load_plan(const std::string& path);

/// The plan as JSON text, newline at the end. Keys keep the order in which they were read; a value that was
/// absent and still has its default isn't written. parse(write(parse(t))) == parse(t), and write is a fixed
/// point.
std::string write_plan(const Plan& plan);

/// The JSON Schema (draft 2020-12) of the plan file, made from the same field tables as reader and writer.
std::string plan_schema();

/// References that can't be checked by one field alone: unique ids, references resolve, `after` isn't
/// circular, runs fit their seam, wire extension above 0. Throws InputError; parse_plan calls it.
/// A plan changed in memory (desk, fit) can be checked again with `file` = its name.
void check_plan(const Plan& plan, const std::string& file);

}  // namespace seamtakt
