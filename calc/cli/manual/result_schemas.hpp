#pragma once

#include <string>

#include "cli/common/command_info.hpp"

namespace seamtakt::cli {

/// JSON Schema of what each command prints with --json: under "$defs" by the command's words, such as
/// calc-fillet and ledger-list. Made from the tables of columns and quantities where a result has one.
std::string result_schema();

/// JSON Schema of the lines that `serve` reads and writes.
std::string serve_schema(const CommandInfo& program);

}  // namespace seamtakt::cli
