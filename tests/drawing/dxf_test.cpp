// DXF files written here line by line, with lines that are known.
#ifdef SEAMTAKT_DXF
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numbers>

#include "drawing/dxf/dxf_file.hpp"
#include "drawing/refusal.hpp"

namespace seamtakt::drawing {
namespace {

namespace fs = std::filesystem;

/// "0 LINE 8 seams ...": words by turns code and value, each on its own line.
std::string groups(const std::string& words) {
  std::string text = words;
  for (char& c : text)
    if (c == ' ') c = '\n';
  return text + "\n";
}

std::string line(const std::string& layer, double x1, double y1, double x2, double y2,
                 const std::string& handle = "1F") {
  return groups("0 LINE 5 " + handle + " 8 " + layer + " 10 " + std::to_string(x1) + " 20 " +
                std::to_string(y1) + " 11 " + std::to_string(x2) + " 21 " + std::to_string(y2));
}

std::string file_of(const std::string& entities, const std::string& blocks = "", int unit = 4) {
  return groups("0 SECTION 2 HEADER 9 $ACADVER 1 AC1015 9 $INSUNITS 70 " + std::to_string(unit) +
                " 0 ENDSEC") +
         groups("0 SECTION 2 BLOCKS") + blocks + groups("0 ENDSEC") + groups("0 SECTION 2 ENTITIES") +
         entities + groups("0 ENDSEC") + groups("0 EOF");
}

std::string block(const std::string& name, const std::string& entities, double x = 0, double y = 0) {
  return groups("0 BLOCK 8 0 2 " + name + " 70 0 10 " + std::to_string(x) + " 20 " + std::to_string(y) +
                " 3 " + name) +
         entities + groups("0 ENDBLK 8 0");
}

class DxfFile : public ::testing::Test {
 protected:
  DxfFile() {
    std::string name = (fs::temp_directory_path() / "seamtakt-dxf-XXXXXX").string();
    folder_ = mkdtemp(name.data());
  }
  ~DxfFile() override { fs::remove_all(folder_); }

  std::string written(const std::string& text) {
    const std::string path = (folder_ / "drawing.dxf").string();
    std::ofstream(path, std::ios::binary) << text;
    return path;
  }
  FlatDrawing read(const std::string& text, const std::string& unit = "") {
    return read_dxf(written(text), unit);
  }
  std::string refusal(const std::string& text, const std::string& unit = "") {
    try {
      read(text, unit);
    } catch (const Refusal& refused) {
      return refused.what();
    }
    return "taken";
  }
  /// The program's code at the end, and the lines that it complains in.
  std::pair<int, int> run(const std::string& text, const std::string& more = "") {
    const std::string complaint = (folder_ / "complaint").string();
    const std::string command = std::string("'") + SEAMTAKT_DRAWING_PROGRAM + "' '" + written(text) +
                                "' --json " + more + " >/dev/null 2>'" + complaint + "'";
    const int status = std::system(command.c_str());
    std::ifstream lines(complaint);
    int count = 0;
    for (std::string each; std::getline(lines, each);) ++count;
    return {WEXITSTATUS(status), count};
  }

  fs::path folder_;
};

double length(const FlatPath& path) {
  double sum = 0;
  for (std::size_t i = 1; i < path.points_mm.size() + (path.is_closed ? 1 : 0); ++i) {
    const FlatPoint &a = path.points_mm[i - 1], &b = path.points_mm[i % path.points_mm.size()];
    sum += std::hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

void expect_at(const FlatPoint& point, double x, double y) {
  EXPECT_NEAR(point[0], x, 1e-9);
  EXPECT_NEAR(point[1], y, 1e-9);
}

TEST_F(DxfFile, LinesAreByLayerWithTheirHandles) {
  const FlatDrawing drawing = read(file_of(line("seams", 0, 0, 100, 50) + line("plates", 1, 2, 3, 4, "2A")));
  EXPECT_EQ(drawing.unit, "mm");
  EXPECT_EQ(drawing.version, "AC1015");
  ASSERT_EQ(drawing.layers.size(), 2u);
  const FlatPath& seam = drawing.layers.at("seams").at(0);
  EXPECT_EQ(seam.id, "1F");
  EXPECT_EQ(drawing.layers.at("plates").at(0).id, "2A");
  EXPECT_FALSE(seam.is_closed);
  expect_at(seam.points_mm.at(1), 100, 50);
}

TEST_F(DxfFile, ArcsAndCirclesAreChordsWithinAFixedDeviation) {
  const FlatDrawing drawing = read(file_of(groups("0 CIRCLE 5 A 8 0 10 10 20 20 40 100") +
                                           groups("0 ARC 5 B 8 0 10 0 20 0 40 50 50 270 51 90")));
  const auto& paths = drawing.layers.at("0");
  ASSERT_EQ(paths.size(), 2u);
  EXPECT_TRUE(paths[0].is_closed);
  for (const FlatPoint& point : paths[0].points_mm)
    EXPECT_NEAR(std::hypot(point[0] - 10, point[1] - 20), 100, 1e-9);
  for (std::size_t i = 0; i < paths[0].points_mm.size(); ++i) {
    const FlatPoint &a = paths[0].points_mm[i], &b = paths[0].points_mm[(i + 1) % paths[0].points_mm.size()];
    EXPECT_LE(100 - std::hypot((a[0] + b[0]) / 2 - 10, (a[1] + b[1]) / 2 - 20), 0.05 + 1e-9);
  }
  EXPECT_NEAR(length(paths[0]), 2 * std::numbers::pi * 100, 0.3);
  EXPECT_FALSE(paths[1].is_closed);
  expect_at(paths[1].points_mm.front(), 0, -50);
  expect_at(paths[1].points_mm.back(), 0, 50);
  EXPECT_NEAR(length(paths[1]), std::numbers::pi * 50, 0.2) << "counterclockwise, over 0 deg";
  EXPECT_GT(paths[1].points_mm[paths[1].points_mm.size() / 2][0], 49);
}

TEST_F(DxfFile, ABulgeIsAnArcToItsOwnSide) {
  // A slot: two straight sides, half circles of 10 mm at both ends.
  const FlatDrawing drawing = read(file_of(
      groups("0 LWPOLYLINE 5 A 8 slot 90 4 70 1 10 0 20 0 10 100 20 0 42 1 10 100 20 20 10 0 20 20 42 1")));
  const FlatPath& slot = drawing.layers.at("slot").at(0);
  EXPECT_TRUE(slot.is_closed);
  EXPECT_NEAR(length(slot), 200 + 20 * std::numbers::pi, 0.2);
  double right = 0, left = 0;
  for (const FlatPoint& point : slot.points_mm) {
    right = std::max(right, point[0]);
    left = std::min(left, point[0]);
  }
  EXPECT_NEAR(right, 110, 0.05);
  EXPECT_NEAR(left, -10, 0.05);
}

TEST_F(DxfFile, ANegativeBulgeGoesTheOtherWay) {
  const FlatDrawing drawing =
      read(file_of(groups("0 LWPOLYLINE 5 A 8 0 90 2 70 0 10 0 20 0 42 -0.41421356237309503 10 10 20 10")));
  const FlatPath& quarter = drawing.layers.at("0").at(0);
  EXPECT_NEAR(length(quarter), 10 * std::numbers::pi / 2, 0.05);
  for (const FlatPoint& point : quarter.points_mm)
    EXPECT_NEAR(std::hypot(point[0] - 10, point[1]), 10, 1e-9) << "clockwise about (10, 0)";
}

TEST_F(DxfFile, InsertsAreNestedScaledTurnedAndRepeated) {
  const std::string blocks = block("inner", line("0", 1, 0, 11, 0, "11"), 1, 0) +
                             block("outer", groups("0 INSERT 5 21 8 0 2 inner 10 5 20 0 41 2 42 2 50 90"));
  const FlatDrawing drawing =
      read(file_of(groups("0 INSERT 5 31 8 seams 2 outer 10 100 20 200 50 90") +
                       groups("0 INSERT 5 32 8 rows 2 inner 10 0 20 0 70 3 71 2 44 50 45 30"),
                   blocks));
  const auto& seams = drawing.layers.at("seams");
  ASSERT_EQ(seams.size(), 1u) << "layer 0 of a block is that of its INSERT";
  EXPECT_EQ(seams[0].id, "31/21/11");
  // 10 long from the base, twice as long and turned by 90 deg at (5, 0); then again by 90 deg at (100, 200).
  expect_at(seams[0].points_mm[0], 100, 205);
  expect_at(seams[0].points_mm[1], 80, 205);
  const auto& rows = drawing.layers.at("rows");
  ASSERT_EQ(rows.size(), 6u);
  expect_at(rows[5].points_mm[0], 100, 30);
}

TEST_F(DxfFile, AMirroredEntityIsMirrored) {
  const FlatDrawing drawing =
      read(file_of(groups("0 ARC 5 B 8 0 10 0 20 0 40 50 50 0 51 90 210 0 220 0 230 -1") +
                   groups("0 CIRCLE 5 C 8 0 10 0 20 0 40 50 210 1 220 0 230 0")));
  ASSERT_EQ(drawing.layers.at("0").size(), 1u);
  expect_at(drawing.layers.at("0").at(0).points_mm.front(), -50, 0);
  expect_at(drawing.layers.at("0").at(0).points_mm.back(), 0, 50);
  EXPECT_EQ(drawing.left_out.at("CIRCLE out of the plane"), 1u);
}

TEST_F(DxfFile, TheFilesUnitIsObeyedAndAMissingOneIsAskedFor) {
  const std::string entity = line("0", 0, 0, 2, 0);
  for (const auto& [code, mm] : {std::pair(4, 2.0), {1, 50.8}, {2, 609.6}, {5, 20.0}, {6, 2000.0}})
    expect_at(read(file_of(entity, "", code)).layers.at("0").at(0).points_mm.at(1), mm, 0);
  EXPECT_NE(refusal(file_of(entity, "", 0)).find("--unit"), std::string::npos);
  expect_at(read(file_of(entity, "", 0), "in").layers.at("0").at(0).points_mm.at(1), 50.8, 0);
  EXPECT_EQ(refusal(file_of(entity, "", 4), "mm"), "taken");
  EXPECT_NE(refusal(file_of(entity, "", 4), "in").find("as the file says"), std::string::npos);
  EXPECT_NE(refusal(file_of(entity, "", 0), "yd").find("yd"), std::string::npos);
}

TEST_F(DxfFile, WhatIsNotReadIsCounted) {
  const FlatDrawing drawing = read(
      file_of(line("0", 0, 0, 1, 0) + groups("0 ELLIPSE 5 C 8 0 10 0 20 0 11 10 21 0 40 0.5 41 0 42 6.28")));
  EXPECT_EQ(drawing.left_out.at("ELLIPSE"), 1u);
  EXPECT_NE(result_json(drawing).find("Left out: 1 ELLIPSE."), std::string::npos);
}

TEST_F(DxfFile, ALayersNameInAnOlderEncodingIsReadable) {
  const FlatDrawing drawing = read(file_of(line("N\xE4hte", 0, 0, 1, 0)));
  EXPECT_TRUE(drawing.layers.contains("N\xC3\xA4hte"));
}

TEST_F(DxfFile, HostileFilesAreRefusedInOneLine) {
  const std::string good = file_of(line("0", 0, 0, 1, 0));
  ASSERT_EQ(run(good), std::pair(0, 0));
  const auto self = block("a", groups("0 INSERT 5 1 8 0 2 a 10 0 20 0"));
  std::string bomb;
  for (int i = 0; i < 12; ++i)
    bomb += block("b" + std::to_string(i), groups("0 INSERT 5 1 8 0 2 b" + std::to_string(i + 1) +
                                                  " 10 0 20 0 70 100 71 100 44 1 45 1"));
  bomb += block("b12", line("0", 0, 0, 1, 0));
  std::string nan = good, truncated = good, binary = good;
  nan.replace(nan.find("\n10\n") + 4, 8, "nan");
  truncated.resize(good.size() / 2);
  binary[10] = '\0';
  const std::pair<const char*, std::string> files[] = {
      {"empty", ""},
      {"text", "hello\nworld\n"},
      {"truncated", truncated},
      {"no end", good.substr(0, good.size() - 6)},
      {"binary", binary},
      {"nan", nan},
      {"infinite", file_of(groups("0 CIRCLE 5 A 8 0 10 0 20 0 40 1e999"))},
      {"too large", file_of(groups("0 CIRCLE 5 A 8 0 10 0 20 0 40 9e8"))},
      {"holds itself", file_of(groups("0 INSERT 5 2 8 0 2 a 10 0 20 0"), self)},
      {"bomb", file_of(groups("0 INSERT 5 2 8 0 2 b0 10 0 20 0"), bomb)},
      {"no such block", file_of(groups("0 INSERT 5 2 8 0 2 nothing 10 0 20 0"))},
      {"rows", file_of(groups("0 INSERT 5 2 8 0 2 a 10 0 20 0 70 2000000000 71 1"),
                       block("a", line("0", 0, 0, 1, 0)))},
      {"count", file_of(groups("0 LWPOLYLINE 5 A 8 0 90 2000000000 70 0 10 0 20 0"))},
      {"negative count", file_of(groups("0 LWPOLYLINE 5 A 8 0 90 -5 70 0 10 0 20 0"))},
      {"knots", file_of(groups("0 SPLINE 5 A 8 0 70 0 71 3 72 100000000 73 4 40 0 10 0 20 0"))},
      {"nothing in it", file_of("")},
  };
  for (const auto& [name, text] : files) EXPECT_EQ(run(text), std::pair(2, 1)) << name;
  EXPECT_EQ(run(good, "--unit yd"), std::pair(2, 1));
  EXPECT_EQ(run(file_of(line("0", 0, 0, 1, 0), "", 0)), std::pair(2, 1));
}

TEST_F(DxfFile, MoreVerticesThanAreSaidDoNoHarm) {
  std::string vertices;
  for (int i = 0; i < 100; ++i) vertices += groups("10 " + std::to_string(i) + " 20 0");
  const auto [code, lines] = run(file_of(groups("0 LWPOLYLINE 5 A 8 0 90 2 70 0") + vertices));
  EXPECT_EQ(code, 0);
  EXPECT_EQ(lines, 0);
}

TEST_F(DxfFile, TheSameFileGivesTheSameBytes) {
  const std::string text = file_of(groups("0 CIRCLE 5 A 8 0 10 10 20 20 40 100"));
  EXPECT_EQ(result_json(read(text)), result_json(read(text)));
}

}  // namespace
}  // namespace seamtakt::drawing
#endif
