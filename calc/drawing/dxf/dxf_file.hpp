#pragma once

#include <string>

#include "drawing/dxf/dxf_shapes.hpp"

namespace seamtakt::drawing {

/// The lines of a DXF file by their layer, in mm. `unit`: mm, cm, m, in or ft, for a file that says none
/// ($INSUNITS); empty: not given. Refusal where neither says it, or both differ.
FlatDrawing read_dxf(const std::string& path, const std::string& unit);

/// The result as the program prints it: version 1 of the form "seamtakt-drawing", with layers.
std::string result_json(const FlatDrawing& drawing);
std::string result_text(const FlatDrawing& drawing);

}  // namespace seamtakt::drawing
