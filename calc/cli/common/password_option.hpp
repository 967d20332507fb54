#pragma once

#include "cli/common/command_line.hpp"

namespace seamtakt::cli {

/// Adds `--password-file FILE`: its first line is the password of a postgresql:// store, so that none is in
/// the list of processes. InputError: no such file, others may read it, nothing in it.
void add_password_option(const Command& program);

}  // namespace seamtakt::cli
