#pragma once

#include <string>
#include <vector>

/// Small changes to the text of a plan, made at a JSON pointer without touching anything else, so that lines
/// and columns stay what a person counts in the file.
namespace plan_edit {

/// "set" puts `text` in place of the value at the pointer, "rename" gives its key the name `text`, "add" puts
/// the member `text` at the front of the object at the pointer.
std::string changed(const std::string& plan, const std::string& change, const std::string& pointer,
                    const std::string& text);

/// One row of tests/data/broken/plans.tsv: a change to base.weldplan.json and what the reader says of it.
struct BrokenPlan {
  std::string name, change, pointer, text;
  bool schema_refuses = false;
  std::string line, column, at, found, expected;
};

std::vector<BrokenPlan> broken_plans();

/// A file of tests/data.
std::string test_data(const std::string& name);

/// The fields of a line of a table whose fields are separated by tabs and never quoted.
std::vector<std::string> tab_fields(const std::string& line);

}  // namespace plan_edit
