#pragma once

#include <string>
#include <vector>

#include "drawing/part.hpp"

namespace seamtakt::drawing {

struct Assembly {
  std::string sha256, schema, unit;  ///< unit of lengths: mm, cm, m, in, ...; lengths here are in mm
  std::vector<Part> parts;
  std::size_t surfaces = 0;  ///< shapes without a solid, left out
};

/// The placed solids of a STEP file (AP203, AP214, AP242), each instance a part. Refusal where there is
/// nothing to find seams between: no solid, or one alone.
Assembly read_step(const std::string& path);

}  // namespace seamtakt::drawing
