#pragma once

#include <string>

namespace seamtakt::drawing {

/// A STEP file's bytes, looked at before OpenCASCADE reads them.
struct StepText {
  std::string sha256;
  bool is_utf8 = true;  ///< else its raw names are in an older encoding
};

/// Refusal where it is absent, empty, no STEP file or cut off; Failure where it can't be read.
StepText look_at_step(const std::string& path);

}  // namespace seamtakt::drawing
