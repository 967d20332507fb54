#pragma once

#include <string>
#include <vector>

#include "exchange/drawing/drawing_import.hpp"
#include "exchange/drawing/drawing_result.hpp"

namespace seamtakt {

/// What a drawing in two dimensions doesn't say of its lines.
struct FlatMeaning {
  std::vector<std::string> seam_layers, plate_layers;
  std::string joint;           ///< of all seams: tee, corner, lap, butt
  std::optional<double> z_mm;  ///< where the drawing lies; plates rise from it
};

/// Gives lines by layer their meaning: each path of a layer of seams is the side of a joint of its own,
/// closed outlines of a layer of plates are plates, those within another its holes. The angle is the joint's
/// usual one: 180 deg of a butt, else 90. Thicknesses are those of `options`, by layer or for all. InputError
/// where a layer isn't there, or something isn't said.
void give_meaning(const FlatMeaning& meaning, const DrawingImportOptions& options, DrawingResult& drawing);

/// Open paths whose ends meet become one; what closes is closed. Ends that are 0.05 mm apart meet.
std::vector<FlatLine> chained(std::vector<FlatLine> lines);

}  // namespace seamtakt
