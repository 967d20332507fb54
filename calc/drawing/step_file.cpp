#include "drawing/step_file.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <BRep_Tool.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_PrinterOStream.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <STEPControl_Controller.hxx>
#include <StepData_StepModel.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <map>

#include "drawing/refusal.hpp"
#include "drawing/step_text.hpp"

namespace seamtakt::drawing {

namespace {

/// An assembly of more is no weldment; it would take hours.
constexpr std::size_t most_parts = 20000;
constexpr int deepest_assembly = 64;

std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
  const TCollection_ExtendedString& text = name->Get();
  std::string bytes(static_cast<std::size_t>(text.LengthOfCString()) + 1, '\0');
  char* begin = bytes.data();
  bytes.resize(static_cast<std::size_t>(text.ToUTF8CString(begin)));
  return bytes;
}

/// Walks the assembly's tree and collects each instance's solids.
class Collector {
 public:
  explicit Collector(Assembly& assembly) : assembly_(assembly) {}

  void collect(const TDF_Label& label, const TopLoc_Location& above, const std::string& path, int depth) {
    if (depth > deepest_assembly)
      throw Refusal("the assembly", "parts nested deeper than 64", "a tree of parts");
    TDF_Label shape = label;
    if (XCAFDoc_ShapeTool::IsReference(label)) XCAFDoc_ShapeTool::GetReferredShape(label, shape);
    const TopLoc_Location place = above * XCAFDoc_ShapeTool::GetLocation(label);
    const std::string product = name_of(shape);
    std::string instance = name_of(label);
    if (instance.empty()) instance = product;
    const std::string here = path.empty() ? instance : path + "/" + instance;
    if (XCAFDoc_ShapeTool::IsAssembly(shape)) {
      TDF_LabelSequence components;
      XCAFDoc_ShapeTool::GetComponents(shape, components);
      for (int i = 1; i <= components.Length(); ++i) collect(components(i), place, here, depth + 1);
      return;
    }
    // The label's shape has its own place already, where it is no instance of another.
    const bool is_reference = !shape.IsEqual(label);
    const TopoDS_Shape form = XCAFDoc_ShapeTool::GetShape(shape);
    if (form.IsNull()) return;
    add_solids(is_reference ? form.Moved(place) : form.Moved(above), product.empty() ? instance : product,
               here);
  }

 private:
  void add_solids(const TopoDS_Shape& shape, const std::string& name, const std::string& path) {
    std::vector<TopoDS_Shape> solids;
    for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next()) solids.push_back(at.Current());
    for (TopExp_Explorer at(shape, TopAbs_FACE, TopAbs_SOLID); at.More(); at.Next()) {
      ++assembly_.surfaces;
      break;
    }
    for (std::size_t i = 0; i < solids.size(); ++i) {
      if (assembly_.parts.size() >= most_parts)
        throw Refusal("the assembly", "more than 20000 parts", "a weldment");
      Part& part = assembly_.parts.emplace_back();
      part.name = name;
      part.is_hardware = is_named_hardware(name);
      part.path = unique(solids.size() > 1 ? path + "/" + std::to_string(i + 1) : path);
      part.body = std::make_unique<Body>(solids[i]);
    }
  }

  /// Instances of one name count: "Rib", "Rib:2".
  std::string unique(const std::string& path) {
    std::string name = path.empty() ? "part" : path;
    for (std::size_t count = ++paths_[name]; count > 1; count = ++paths_[name]) {
      const std::string counted = name + ":" + std::to_string(count);
      if (paths_.emplace(counted, 1).second) return counted;
    }
    return name;
  }

  Assembly& assembly_;
  std::map<std::string, std::size_t> paths_;
};

/// The names that the reader gives to units of length.
std::string short_unit(const std::string& name) {
  static const std::map<std::string, std::string> names = {
      {"millimetre", "mm"}, {"MILLIMETRE", "mm"}, {"centimetre", "cm"}, {"CENTIMETRE", "cm"}, {"metre", "m"},
      {"METRE", "m"},       {"INCH", "in"},       {"inch", "in"},       {"FOOT", "ft"},       {"foot", "ft"}};
  const auto known = names.find(name);
  return known == names.end() ? name : known->second;
}

std::string unit_of(STEPCAFControl_Reader& reader) {
  TColStd_SequenceOfAsciiString lengths, angles, solid_angles;
  reader.ChangeReader().FileUnits(lengths, angles, solid_angles);
  return lengths.IsEmpty() ? std::string() : short_unit(lengths.First().ToCString());
}

std::string schema_of(STEPCAFControl_Reader& reader) {
  const Handle(StepData_StepModel) model = reader.ChangeReader().StepModel();
  if (model.IsNull()) return {};
  APIHeaderSection_MakeHeader header(model);
  if (!header.HasFs() || header.NbSchemaIdentifiers() < 1) return {};
  const Handle(TCollection_HAsciiString) schema = header.SchemaIdentifiersValue(1);
  return schema.IsNull() ? std::string() : schema->ToCString();
}

}  // namespace

Assembly read_step(const std::string& path) {
  Message::DefaultMessenger()->ChangePrinters().Clear();
  const StepText text = look_at_step(path);
  Assembly assembly;
  assembly.sha256 = text.sha256;
  Handle(TDocStd_Document) document;
  XCAFApp_Application::GetApplication()->NewDocument("BinXCAF", document);
  // The settings exist from here on, and a reader takes them when it is made.
  STEPControl_Controller::Init();
  Interface_Static::SetCVal("xstep.cascade.unit", "MM");
  Interface_Static::SetCVal("read.step.codepage", text.is_utf8 ? "UTF8" : "CP1252");
  STEPCAFControl_Reader reader;
  reader.SetColorMode(false);
  reader.SetLayerMode(false);
  reader.SetGDTMode(false);
  reader.SetMatMode(false);
  reader.SetViewMode(false);
  reader.SetPropsMode(false);
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone)
    throw Refusal(path, "text that isn't in the form of a STEP file", "a STEP file (ISO 10303-21)");
  assembly.schema = schema_of(reader);
  assembly.unit = unit_of(reader);
  if (!reader.Transfer(document)) throw Refusal(path, "no shape", "solid parts (AP203, AP214 or AP242)");
  const Handle(XCAFDoc_ShapeTool) shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  TDF_LabelSequence roots;
  shapes->GetFreeShapes(roots);
  Collector collector(assembly);
  for (int i = 1; i <= roots.Length(); ++i) collector.collect(roots(i), TopLoc_Location(), {}, 0);
  if (assembly.parts.empty())
    throw Refusal(path, assembly.surfaces > 0 ? "only surfaces" : "no body", "solid parts");
  if (assembly.parts.size() == 1)
    throw Refusal(path, "one body, its parts are fused or there is one part alone",
                  "each part as a body of its own");
  return assembly;
}

}  // namespace seamtakt::drawing
