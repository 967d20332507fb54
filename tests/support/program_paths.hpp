#pragma once

namespace seamtakt {

// Where programs of this build are. Like source_path(), known to one small file alone, so that the tests' own
// files need no definitions of their own and are compiled many in one.

const char* seamtakt_program();
/// Writes arc logs of known truth.
const char* demo_log_program();
/// Saves versions of a file; appends to a store (tests/faults/driver).
const char* save_driver();
const char* store_driver();
/// The library that fails chosen calls (tests/faults/shim).
const char* iofault_library();
/// The disk that remembers its writes; empty where it can't be built.
const char* cutdisk_program();

}  // namespace seamtakt
