#include "drawing/made_assembly.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepFilletAPI_MakeFillet.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRep_Builder.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPControl_Controller.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Compound.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <cmath>
#include <stdexcept>

namespace seamtakt::drawing::tests {

TopoDS_Shape block_of(double x0, double y0, double z0, double x1, double y1, double z1) {
  return BRepPrimAPI_MakeBox(gp_Pnt(x0, y0, z0), gp_Pnt(x1, y1, z1)).Shape();
}

TopoDS_Shape cut_of(const TopoDS_Shape& from, const TopoDS_Shape& tool) {
  const TopoDS_Shape result = BRepAlgoAPI_Cut(from, tool).Shape();
  for (TopExp_Explorer at(result, TopAbs_SOLID); at.More(); at.Next()) return at.Current();
  throw std::logic_error("nothing is left of the cut body");
}

TopoDS_Shape round_tube_of(double x, double y, double z0, double z1, double outer_d, double wall) {
  const gp_Ax2 axis(gp_Pnt(x, y, z0), gp_Dir(0, 0, 1));
  const gp_Ax2 below(gp_Pnt(x, y, z0 - 1), gp_Dir(0, 0, 1));
  return cut_of(BRepPrimAPI_MakeCylinder(axis, outer_d / 2, z1 - z0).Shape(),
                BRepPrimAPI_MakeCylinder(below, outer_d / 2 - wall, z1 - z0 + 2).Shape());
}

namespace {

TopoDS_Shape rounded_bar(double x0, double x1, double y, double z, double b, double h, double r) {
  const TopoDS_Shape bar = block_of(x0, y - b / 2, z - h / 2, x1, y + b / 2, z + h / 2);
  if (r <= 0) return bar;
  BRepFilletAPI_MakeFillet rounding(bar);
  for (TopExp_Explorer at(bar, TopAbs_EDGE); at.More(); at.Next()) {
    const TopoDS_Edge edge = TopoDS::Edge(at.Current());
    const TopoDS_Vertex first = TopExp::FirstVertex(edge), last = TopExp::LastVertex(edge);
    if (std::abs(BRep_Tool::Pnt(first).X() - BRep_Tool::Pnt(last).X()) > 1e-6) rounding.Add(r, edge);
  }
  return rounding.Shape();
}

}  // namespace

TopoDS_Shape box_tube_of(double x0, double x1, double y, double z, double b, double h, double wall,
                         double r) {
  return cut_of(rounded_bar(x0, x1, y, z, b, h, r),
                rounded_bar(x0 - 1, x1 + 1, y, z, b - 2 * wall, h - 2 * wall, r > wall ? r - wall : 0));
}

TopoDS_Shape turned(const TopoDS_Shape& shape, double x, double y, double z, double ax, double ay, double az,
                    double angle_deg) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(x, y, z), gp_Dir(ax, ay, az)), angle_deg * M_PI / 180);
  return BRepBuilderAPI_Transform(shape, turn, true).Shape();
}

MadeAssembly& MadeAssembly::add(const std::string& name, const TopoDS_Shape& shape) {
  parts_.emplace_back(name, shape);
  return *this;
}

MadeAssembly& MadeAssembly::block(const std::string& name, double x0, double y0, double z0, double x1,
                                  double y1, double z1) {
  return add(name, block_of(x0, y0, z0, x1, y1, z1));
}

MadeAssembly& MadeAssembly::seam(TrueSeam truth) {
  truth_.push_back(std::move(truth));
  return *this;
}

MadeAssembly& MadeAssembly::seams(int count, const TrueSeam& truth) {
  for (int i = 0; i < count; ++i) truth_.push_back(truth);
  return *this;
}

MadeAssembly& MadeAssembly::moved(const gp_Trsf& move) {
  for (auto& [name, shape] : parts_) shape = BRepBuilderAPI_Transform(shape, move, true).Shape();
  return *this;
}

TopoDS_Shape MadeAssembly::compound() const {
  TopoDS_Compound all;
  BRep_Builder builder;
  builder.MakeCompound(all);
  for (const auto& [name, shape] : parts_) builder.Add(all, shape);
  return all;
}

std::filesystem::path MadeAssembly::write(const std::string& name, const FileForm& form) const {
  Message::DefaultMessenger()->ChangePrinters().Clear();
  Handle(TDocStd_Document) document;
  XCAFApp_Application::GetApplication()->NewDocument("BinXCAF", document);
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  const TDF_Label assembly = shapes->NewShape();
  TDataStd_Name::Set(assembly, "assembly");
  for (const auto& [part, shape] : parts_) {
    const TDF_Label label = shapes->AddShape(shape, false);
    const TCollection_ExtendedString text(part.c_str(), true);
    TDataStd_Name::Set(label, text);
    TDataStd_Name::Set(shapes->AddComponent(assembly, label, TopLoc_Location()), text);
  }
  shapes->UpdateAssemblies();
  // The settings exist from here on, and a writer takes them when it is made.
  STEPControl_Controller::Init();
  Interface_Static::SetCVal("xstep.cascade.unit", "MM");
  Interface_Static::SetCVal("write.step.unit", form.unit.c_str());
  Interface_Static::SetCVal("write.step.schema", form.schema.c_str());
  STEPCAFControl_Writer writer;
  const std::filesystem::path path = scratch_folder() / name;
  if (!writer.Transfer(document) || writer.Write(path.c_str()) != IFSelect_RetDone)
    throw std::runtime_error("the STEP file can't be written: " + path.string());
  return path;
}

std::filesystem::path scratch_folder() {
  static const struct Folder {
    std::filesystem::path path;
    Folder() {
      std::string name = (std::filesystem::temp_directory_path() / "seamtakt-drawing-XXXXXX").string();
      if (!mkdtemp(name.data())) throw std::runtime_error("no scratch folder");
      path = name;
    }
    ~Folder() {
      std::error_code ignored;
      std::filesystem::remove_all(path, ignored);
    }
  } folder;
  return folder.path;
}

}  // namespace seamtakt::drawing::tests
