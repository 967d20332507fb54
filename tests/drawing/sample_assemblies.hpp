#pragma once

#include "drawing/made_assembly.hpp"

namespace seamtakt::drawing::tests {

/// A web on a wider flange; `gap_mm` between them.
MadeAssembly tee_of(double gap_mm = 0);
MadeAssembly lap_joint();
MadeAssembly corner_joint();
MadeAssembly butt_joint();
/// Flange, web and a stiffener in their corner, which interrupts the long seam; with a snipe it doesn't.
MadeAssembly stiffened(double snipe_mm);
/// Two flanges, two webs set in by more than they are thick.
MadeAssembly box_girder();
/// Frame of four plates on a base, closed at its corners.
MadeAssembly plate_frame();
/// `rows` base plates with nine stiffeners each.
MadeAssembly many_plates(int rows);

}  // namespace seamtakt::drawing::tests
