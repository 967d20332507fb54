#pragma once

#include "cli/common/command.hpp"
#include "cli/serve/request.hpp"

namespace seamtakt::cli {

/// What the command would print with --json, and its exit code. InputError, std::system_error and UsageError
/// as the command line has them.
Result run_served(const Request& request);

/// The same of `calc QUANTITY`, without an option table for each request: some 100 times as fast.
Result run_served_calc(const Request& request);

}  // namespace seamtakt::cli
