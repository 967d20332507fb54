#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// Whether SEAMTAKT_TEST_LENGTH asks for the long tests.
bool long_tests();

/// The fault of one run of a program under the fault library.
struct FaultPoint {
  std::string mode;  ///< a mode of iofault.c; empty: calls are only counted
  long call = 0;     ///< number of the call at which it happens
  bool sticky = false;
};

struct FaultOutcome {
  int exit_code = -1;                  ///< -1: ended by a signal
  std::vector<unsigned> acknowledged;  ///< versions that the save driver said are saved
  std::string output, error;           ///< what it printed on standard output and standard error
  std::vector<std::string> calls;      ///< "open /tmp/x/file", in order
};

/// Runs a program (its path, then its words) to its end; calls on files below `folder` are watched. With
/// `kill_after_us` it is killed after so long, unless it has ended before.
FaultOutcome run_with_fault(const std::vector<std::string>& words, const std::string& folder,
                            const FaultPoint& point, long kill_after_us = -1);

/// Saves versions `first` to `last` of `path` in the driver's way `how`; calls below the folder of `path` are
/// watched.
FaultOutcome run_save_driver(const std::string& how, const std::string& path, unsigned first, unsigned last,
                             const FaultPoint& point);

/// Length of a version's text in these runs.
inline constexpr std::size_t version_size = 40000;

/// Becomes the driver: for runs that the caller wants to kill itself. Returns only where that fails.
void exec_save_driver(const std::string& how, const std::string& path, unsigned first, unsigned last);

/// A line each.
std::string all_lines(const std::vector<std::string>& lines);

}  // namespace seamtakt
