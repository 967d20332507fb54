#include "drawing/dxf/dxf_file.hpp"

#include <dl_creationadapter.h>
#include <dl_dxf.h>

#include <cmath>
#include <fstream>
#include <numbers>
#include <optional>
#include <sstream>
#include <utility>

#include "base/files/digest.hpp"
#include "base/text/utf8.hpp"
#include "drawing/dxf/dxf_text.hpp"
#include "drawing/refusal.hpp"

namespace seamtakt::drawing {

namespace {

constexpr std::uintmax_t most_bytes = std::uintmax_t{64} << 20;

struct DrawnUnit {
  int code;  ///< of $INSUNITS
  const char* name;
  double mm;
};
constexpr DrawnUnit drawn_units[] = {
    {1, "in", 25.4}, {2, "ft", 304.8}, {4, "mm", 1}, {5, "cm", 10}, {6, "m", 1000}};

/// Turned by the angle (deg), scaled first.
FlatPlacing turned(double angle_deg, double sx, double sy, const FlatPoint& at) {
  const double angle = angle_deg * std::numbers::pi / 180, c = std::cos(angle), s = std::sin(angle);
  return {{c * sx, -s * sy, s * sx, c * sy}, at};
}

/// Takes what the library reads. Coordinates of an entity whose extrusion points down are mirrored at x = 0.
class Reader : public DL_CreationAdapter {
 public:
  FlatBlock model;
  std::map<std::string, FlatBlock> blocks;
  std::map<std::string, std::size_t> left_out;
  int unit = 0;
  std::string version;

  void setVariableInt(const std::string& key, int value, int) override {
    if (key == "$INSUNITS") unit = value;
  }
  void setVariableString(const std::string& key, const std::string& value, int) override {
    if (key == "$ACADVER") version = value;
  }
  void addBlock(const DL_BlockData& data) override {
    end_shape();
    // The model's and the sheets' own blocks hold nothing that isn't drawn already.
    block_ = &blocks[data.name];
    block_->base = {data.bpx, data.bpy};
  }
  void endBlock() override {
    end_shape();
    block_ = nullptr;
  }
  void endSection() override { end_shape(); }

  void addLine(const DL_LineData& data) override {
    end_shape();
    if (is_on_a_sheet()) return;
    // A line is in the drawing's own axes, whatever its extrusion.
    add({{{data.x1, data.y1}, 0}, {{data.x2, data.y2}, 0}}, false);
  }
  void addArc(const DL_ArcData& data) override {
    end_shape();
    if (!is_flat("ARC") || is_on_a_sheet()) return;
    double sweep = std::fmod(data.angle2 - data.angle1, 360);
    if (sweep <= 0) sweep += 360;
    // In halves: the bulge of a whole circle would be infinite.
    const double bulge = std::tan(sweep / 2 * std::numbers::pi / 180 / 4);
    const auto at = [&](double angle_deg) -> FlatPoint {
      const double angle = angle_deg * std::numbers::pi / 180;
      return {data.cx + data.radius * std::cos(angle), data.cy + data.radius * std::sin(angle)};
    };
    add(mirrored(
            {{at(data.angle1), bulge}, {at(data.angle1 + sweep / 2), bulge}, {at(data.angle1 + sweep), 0}}),
        false);
  }
  void addCircle(const DL_CircleData& data) override {
    end_shape();
    if (!is_flat("CIRCLE") || is_on_a_sheet()) return;
    add(mirrored({{{data.cx + data.radius, data.cy}, 1}, {{data.cx - data.radius, data.cy}, 1}}), true);
  }
  void addPolyline(const DL_PolylineData& data) override {
    end_shape();
    constexpr int closed = 1, curve = 2 | 4, solid_kinds = 8 | 16 | 64;
    if ((data.flags & (curve | solid_kinds)) != 0) {
      ++left_out["POLYLINE in space, or fitted"];
      return;
    }
    if (!is_flat("LWPOLYLINE") || is_on_a_sheet()) return;
    shape_.emplace();
    is_shape_closed_ = (data.flags & closed) != 0;
    is_shape_mirrored_ = is_mirrored();
    shape_place_ = {getAttributes().getLayer(), getAttributes().getHandle()};
  }
  void addVertex(const DL_VertexData& data) override {
    if (shape_) shape_->push_back({{data.x, data.y}, data.bulge});
  }
  void endEntity() override { end_shape(); }
  void addInsert(const DL_InsertData& data) override {
    end_shape();
    if (!is_flat("INSERT") || is_on_a_sheet()) return;
    constexpr int most = 10'000;
    if (data.cols > most || data.rows > most) {
      too_many_ = true;
      return;
    }
    FlatInsert insert;
    insert.layer = getAttributes().getLayer();
    insert.id = id_of(getAttributes().getHandle());
    insert.block = data.name;
    insert.place = turned(data.angle, data.sx, data.sy, {data.ipx, data.ipy});
    insert.columns = std::max(1, data.cols);
    insert.rows = std::max(1, data.rows);
    const FlatPlacing turn = turned(data.angle, 1, 1, {});
    insert.column_step = turn({data.colSp, 0});
    insert.row_step = turn({0, data.rowSp});
    if (is_mirrored()) {
      const FlatPlacing mirror{{-1, 0, 0, 1}, {}};
      insert.place = mirror.after(insert.place);
      insert.column_step = mirror(insert.column_step);
      insert.row_step = mirror(insert.row_step);
    }
    target().inserts.push_back(std::move(insert));
  }
  void addEllipse(const DL_EllipseData&) override { ++left_out["ELLIPSE"]; }
  void addSpline(const DL_SplineData&) override { ++left_out["SPLINE"]; }
  void add3dFace(const DL_3dFaceData&) override { ++left_out["3DFACE"]; }

  bool hasTooMany() const { return too_many_; }

 private:
  FlatBlock& target() { return block_ ? *block_ : model; }
  bool is_on_a_sheet() { return getAttributes().isInPaperSpace(); }
  double upward() {
    double direction[3] = {0, 0, 1};
    if (DL_Extrusion* found = getExtrusion()) found->getDirection(direction);
    return direction[2] / std::max(1e-300, std::hypot(direction[0], direction[1], direction[2]));
  }
  bool is_mirrored() { return upward() < 0; }
  bool is_flat(const char* kind) {
    if (std::abs(upward()) > 1 - 1e-6) return true;
    ++left_out[std::string(kind) + " out of the plane"];
    return false;
  }
  std::vector<FlatCorner> mirrored(std::vector<FlatCorner> corners) {
    if (is_mirrored()) mirror(corners);
    return corners;
  }
  static void mirror(std::vector<FlatCorner>& corners) {
    for (FlatCorner& corner : corners) {
      corner.at[0] = -corner.at[0];
      corner.bulge = -corner.bulge;
    }
  }
  /// The file's handle, in its own hexadecimal form; a number where it has none.
  std::string id_of(int handle) {
    std::ostringstream text;
    if (handle > 0)
      text << std::hex << std::uppercase << handle;
    else
      text << "n" << ++unnamed_;
    return text.str();
  }
  void add(std::vector<FlatCorner> corners, bool is_closed) {
    add(std::move(corners), is_closed, getAttributes().getLayer(), getAttributes().getHandle());
  }
  void add(std::vector<FlatCorner> corners, bool is_closed, const std::string& layer, int handle) {
    if (corners.size() < 2) return;
    target().shapes.push_back({id_of(handle), layer, std::move(corners), is_closed});
  }
  /// A polyline is whole when the next entity begins.
  void end_shape() {
    if (!shape_) return;
    std::vector<FlatCorner> corners = std::move(*shape_);
    shape_.reset();
    if (is_shape_mirrored_) mirror(corners);
    add(std::move(corners), is_shape_closed_, shape_place_.first, shape_place_.second);
  }

  FlatBlock* block_ = nullptr;
  std::optional<std::vector<FlatCorner>> shape_;
  bool is_shape_closed_ = false, is_shape_mirrored_ = false, too_many_ = false;
  std::pair<std::string, int> shape_place_;
  std::size_t unnamed_ = 0;
};

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary | std::ios::ate);
  const auto size = file ? static_cast<std::streamoff>(file.tellg()) : std::streamoff{-1};
  if (size < 0) throw Refusal(path, "no file that can be read", "a DXF file");
  if (static_cast<std::uintmax_t>(size) > most_bytes)
    throw Refusal(path, std::to_string(size) + " bytes", "a DXF file of at most 64 MiB");
  std::string text(static_cast<std::size_t>(size), '\0');
  file.seekg(0);
  if (!file.read(text.data(), size)) throw Refusal(path, "no file that can be read", "a DXF file");
  return text;
}

/// Names of older files are in an encoding of one byte a letter: of those Latin-1 is taken.
std::string in_utf8(const std::string& text) {
  if (first_invalid_utf8(text) == std::string::npos) return text;
  std::string result;
  for (const char c : text) result += utf8_bytes(static_cast<unsigned char>(c));
  return result;
}

const DrawnUnit& unit_of(int code, const std::string& given, const std::string& path) {
  const DrawnUnit *of_file = nullptr, *of_person = nullptr;
  for (const DrawnUnit& unit : drawn_units) {
    if (unit.code == code) of_file = &unit;
    if (unit.name == given) of_person = &unit;
  }
  if (!given.empty() && !of_person) throw Refusal("--unit", "\"" + given + "\"", "mm, cm, m, in or ft");
  if (of_file && of_person && of_file != of_person)
    throw Refusal("--unit", "\"" + given + "\"",
                  std::string("no unit, or \"") + of_file->name + "\" as the file says");
  if (of_file) return *of_file;
  if (of_person) return *of_person;
  throw Refusal(path, "$INSUNITS " + std::to_string(code) + ", no unit that is known",
                "--unit mm, cm, m, in or ft");
}

}  // namespace

FlatDrawing read_dxf(const std::string& path, const std::string& unit) {
  const std::string text = text_of(path);
  check_dxf_text(text, path);
  Reader reader;
  std::istringstream stream(in_utf8(text));
  DL_Dxf dxf;
  if (!dxf.in(stream, &reader)) throw Refusal(path, "a form that can't be read", "a DXF file");
  reader.endSection();
  if (reader.hasTooMany()) throw Refusal(path, "an INSERT of more than 10000 rows or columns", "fewer");
  FlatDrawing drawing;
  drawing.path = path;
  drawing.sha256 = sha256_hex(text);
  drawing.version = reader.version;
  const DrawnUnit& drawn = unit_of(reader.unit, unit, path);
  drawing.unit = drawn.name;
  drawing.left_out = reader.left_out;
  lay_out(reader.model, reader.blocks, drawn.mm, drawing);
  if (drawing.layers.empty())
    throw Refusal(path, "no line", "LINE, ARC, CIRCLE or polylines, also in blocks");
  return drawing;
}

}  // namespace seamtakt::drawing
