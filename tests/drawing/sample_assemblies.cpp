#include "drawing/sample_assemblies.hpp"

namespace seamtakt::drawing::tests {

MadeAssembly tee_of(double gap_mm) {
  MadeAssembly made;
  made.block("flange", 0, 0, 0, 300, 100, 12);
  made.block("web", 20, 46, 12 + gap_mm, 280, 54, 92);
  return made.seams(2, {"flange", "web", "tee", 260, 90, 12, 8});
}

MadeAssembly lap_joint() {
  MadeAssembly made;
  made.block("upper", 150, 20, 10, 350, 80, 16);
  made.block("lower", 0, 0, 0, 200, 100, 10);
  // The thicker part counts as the one that goes on.
  made.seams(2, {"lower", "upper", "lap", 60, 90, 10, 6});
  return made.seams(2, {"lower", "upper", "lap", 50, 90, 10, 6});
}

MadeAssembly corner_joint() {
  MadeAssembly made;
  made.block("side", 0, 0, 10, 10, 100, 60);
  made.block("base", 0, 0, 0, 200, 100, 12 - 2);
  return made.seam({"base", "side", "corner", 100, 90, 10, 10});
}

MadeAssembly butt_joint() {
  MadeAssembly made;
  made.block("left", 0, 0, 0, 200, 100, 8);
  made.block("right", 200, 0, 0, 400, 100, 8);
  return made.seams(2, {"left", "right", "butt", 100, 180, 8, 8});
}

MadeAssembly stiffened(double snipe_mm) {
  MadeAssembly made;
  made.block("flange", 0, 0, 0, 400, 120, 12);
  made.block("web", 0, 56, 12, 400, 64, 132);
  TopoDS_Shape rib = block_of(195, 64, 12, 205, 120, 132);
  if (snipe_mm > 0) {
    const double side = snipe_mm * 1.4142135623730951;  // of a square that stands on its corner
    rib = cut_of(rib, turned(block_of(190, 64 - side / 2, 12 - side / 2, 210, 64 + side / 2, 12 + side / 2),
                             0, 64, 12, 1, 0, 0, 45));
  }
  made.add("rib", rib);
  made.seam({"flange", "web", "tee", 400, 90, 12, 8});
  if (snipe_mm > 0)
    made.seam({"flange", "web", "tee", 400, 90, 12, 8});
  else
    made.seams(2, {"flange", "web", "tee", 195, 90, 12, 8});
  made.seams(2, {"flange", "rib", "tee", 56 - snipe_mm, 90, 12, 10});
  return made.seams(2, {"web", "rib", "tee", 120 - snipe_mm, 90, 8, 10});
}

MadeAssembly box_girder() {
  MadeAssembly made;
  made.block("bottom", 0, 0, 0, 300, 120, 12);
  made.block("top", 0, 0, 92, 300, 120, 104);
  made.block("left", 0, 12, 12, 300, 20, 92);
  made.block("right", 0, 100, 12, 300, 108, 92);
  for (const char* flange : {"bottom", "top"})
    for (const char* web : {"left", "right"}) made.seams(2, {flange, web, "tee", 300, 90, 12, 8});
  return made;
}

MadeAssembly plate_frame() {
  MadeAssembly made;
  made.block("base", -50, -50, 0, 350, 250, 15);
  made.block("front", 0, 0, 15, 300, 10, 95);
  made.block("back", 0, 190, 15, 300, 200, 95);
  made.block("left", 0, 10, 15, 10, 190, 95);
  made.block("right", 290, 10, 15, 300, 190, 95);
  for (const char* wall : {"front", "back"}) {
    made.seam({"base", wall, "tee", 300, 90, 15, 10});
    made.seam({"base", wall, "tee", 280, 90, 15, 10});  // between the other two
  }
  for (const char* wall : {"left", "right"}) made.seams(2, {"base", wall, "tee", 180, 90, 15, 10});
  for (const char* wall : {"front", "back"})
    for (const char* side : {"left", "right"}) made.seam({wall, side, "corner", 80, 90, 10, 10});
  return made;
}

MadeAssembly many_plates(int rows) {
  MadeAssembly made;
  for (int row = 0; row < rows; ++row) {
    const double y = 300.0 * row;
    const std::string base = "base " + std::to_string(row);
    made.block(base, 0, y, 0, 1000, y + 200, 12);
    for (int i = 0; i < 9; ++i) {
      const double x = 100.0 * (i + 1);
      const std::string rib = "rib " + std::to_string(row) + "." + std::to_string(i);
      made.block(rib, x, y + 20, 12, x + 8, y + 180, 112);
      made.seams(2, {base, rib, "tee", 160, 90, 12, 8});
    }
  }
  return made;
}

}  // namespace seamtakt::drawing::tests
