#pragma once

namespace seamtakt {

/// Reads each table of reference/ that a result depends on, so that a damaged one is refused before any work.
/// InputError for the first that can't be used: "FILE:LINE: found ..., expected ...".
void check_reference_tables();

}  // namespace seamtakt
