#pragma once

#include <functional>
#include <string>

namespace seamtakt {

struct DrawingProgramOptions {
  std::string file;
  double gap_mm = 1;
  std::string up;                         ///< empty: not said
  std::string unit;                       ///< of a DXF file that says none; empty: not given
  double seconds = 300;                   ///< after which the program is killed
  std::function<bool()> is_stopped = {};  ///< asked now and then: true kills the program
};

/// Where seamtakt-drawing is: named by SEAMTAKT_DRAWING_PROGRAM, beside this program, or in PATH; empty where
/// it isn't.
std::string find_drawing_program();

/// Runs it and returns what it printed. It reads a stranger's file: it has a limit of time and of output, and
/// is killed at either. InputError with its own words where it refuses the file; std::system_error where it
/// is absent (the line says what to install), fails, crashes, takes too long or is stopped (ECANCELED).
std::string run_drawing_program(const DrawingProgramOptions& options);

}  // namespace seamtakt
