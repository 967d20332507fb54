#pragma once

#include <TopoDS_Shape.hxx>
#include <filesystem>
#include <gp_Trsf.hxx>
#include <optional>
#include <string>
#include <vector>

namespace seamtakt::drawing::tests {

/// A seam that an assembly is made to have: the through part first.
struct TrueSeam {
  std::string part_a, part_b, type;
  double length_mm = 0, dihedral_deg = 90;
  double thickness_a_mm = 0, thickness_b_mm = 0;
};

struct FileForm {
  std::string unit = "MM";         ///< as OpenCASCADE's writer names it: MM, CM, INCH, M
  std::string schema = "AP214IS";  ///< AP203, AP214IS, AP242DIS
};

/// An assembly in mm, with the seams that it has by its making.
class MadeAssembly {
 public:
  MadeAssembly& add(const std::string& name, const TopoDS_Shape& shape);
  /// A block from corner to corner.
  MadeAssembly& block(const std::string& name, double x0, double y0, double z0, double x1, double y1,
                      double z1);
  MadeAssembly& seam(TrueSeam truth);
  MadeAssembly& seams(int count, const TrueSeam& truth);
  /// All parts at another place, turned.
  MadeAssembly& moved(const gp_Trsf& move);

  const std::vector<TrueSeam>& truth() const { return truth_; }
  std::filesystem::path write(const std::string& name, const FileForm& form = {}) const;
  /// All parts as one shape.
  TopoDS_Shape compound() const;

 private:
  std::vector<std::pair<std::string, TopoDS_Shape>> parts_;
  std::vector<TrueSeam> truth_;
};

TopoDS_Shape block_of(double x0, double y0, double z0, double x1, double y1, double z1);
/// A round tube upright at (x, y), from z0 to z1.
TopoDS_Shape round_tube_of(double x, double y, double z0, double z1, double outer_d, double wall);
/// A box tube along x, its section centred at (y, z); outer corners of radius r where r > 0.
TopoDS_Shape box_tube_of(double x0, double x1, double y, double z, double b, double h, double wall, double r);
TopoDS_Shape cut_of(const TopoDS_Shape& from, const TopoDS_Shape& tool);
TopoDS_Shape turned(const TopoDS_Shape& shape, double x, double y, double z, double ax, double ay, double az,
                    double angle_deg);

/// A folder of the test's own, removed at its end.
std::filesystem::path scratch_folder();

}  // namespace seamtakt::drawing::tests
