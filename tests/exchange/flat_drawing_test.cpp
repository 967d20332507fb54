// Lines of a drawing in two dimensions: which are seams, and which outlines of plates.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "exchange/drawing/flat_drawing.hpp"

namespace seamtakt {
namespace {

using FlatState = DrawingCandidate::State;

const char* const result_of_program = R"({"format": "seamtakt-drawing", "version": 1,
  "source": {"path": "frame.dxf", "sha256": "00", "schema": "DXF AC1015", "unit": "mm"}, "gap_mm": 0,
  "parts": [], "joints": [], "notes": [],
  "layers": [
    {"name": "seams", "paths": [
      {"id": "1A", "closed": false, "points_mm": [[0, 0], [300, 0], [300, 400]]},
      {"id": "1B", "closed": true, "points_mm": [[0, 0], [10, 0], [10, 10], [0, 10]]}]},
    {"name": "plates", "paths": [
      {"id": "2A", "closed": false, "points_mm": [[0, 0], [500, 0]]},
      {"id": "2B", "closed": false, "points_mm": [[500, 300.01], [500, 0]]},
      {"id": "2C", "closed": false, "points_mm": [[500, 300], [0, 300], [0, 0]]},
      {"id": "2D", "closed": true, "points_mm": [[100, 100], [200, 100], [200, 200], [100, 200]]},
      {"id": "2E", "closed": true, "points_mm": [[120, 120], [140, 120], [140, 140], [120, 140]]},
      {"id": "2F", "closed": false, "points_mm": [[900, 0], [950, 0]]}]}]})";

DrawingResult drawing() {
  return read_drawing_result(result_of_program, "result");
}

FlatMeaning all_meaning() {
  FlatMeaning meaning;
  meaning.seam_layers = {"seams"};
  meaning.plate_layers = {"plates"};
  meaning.joint = "tee";
  meaning.z_mm = 50;
  return meaning;
}

std::string meaning_complaint(const FlatMeaning& meaning, const DrawingImportOptions& options = {}) {
  DrawingResult result = drawing();
  try {
    give_meaning(meaning, options, result);
  } catch (const InputError& error) {
    return error.what();
  }
  return "taken";
}

Plan plan_of_one_schedule() {
  Plan plan;
  plan.base_metals.emplace_back().id = "S355";
  plan.base_metals.back().composition_pct = {{"C", 0.17}};
  return plan;
}

TEST(FlatDrawing, EachLineOfALayerOfSeamsIsASideOfItsOwn) {
  DrawingResult result = drawing();
  DrawingImportOptions options;
  options.thickness_mm = {{"", 8}};
  give_meaning(all_meaning(), options, result);
  ASSERT_EQ(result.joints.size(), 2u);
  const DrawingSide& side = result.joints[0].sides.at(0);
  EXPECT_EQ(side.id, "1A");
  EXPECT_EQ(side.path_mm, (std::vector<Point_mm>{{0, 0, 50}, {300, 0, 50}, {300, 400, 50}}));
  EXPECT_EQ(side.length_mm, 700);
  EXPECT_EQ(result.joints[0].type, "tee");
  EXPECT_EQ(result.joints[1].sides.at(0).path_mm.size(), 5u) << "a closed one comes back to its beginning";
  EXPECT_EQ(result.joints[1].sides.at(0).length_mm, 40);
}

TEST(FlatDrawing, OutlinesArePlatesThoseWithinThemHolesAndThoseWithinHolesPlates) {
  DrawingResult result = drawing();
  DrawingImportOptions options;
  options.thickness_mm = {{"", 8}, {"plates", 12}};
  give_meaning(all_meaning(), options, result);
  std::vector<const DrawingPart*> plates;
  for (const DrawingPart& part : result.parts)
    if (part.plate) plates.push_back(&part);
  ASSERT_EQ(plates.size(), 2u) << "the line alone, 2F, is none";
  EXPECT_EQ(plates[0]->path, "plates/2A") << "three lines whose ends meet within 0.05 mm";
  EXPECT_EQ(plates[0]->plate->outline_mm.size(), 4u);
  ASSERT_EQ(plates[0]->plate->holes.size(), 1u);
  EXPECT_EQ(plates[0]->plate->thickness_mm, 12) << "of its layer before that of all";
  EXPECT_EQ(plates[0]->plate->origin_mm, (Point_mm{0, 0, 50}));
  EXPECT_EQ(plates[1]->path, "plates/2E");
}

TEST(FlatDrawing, WhatTheDrawingDoesNotSayIsAskedFor) {
  DrawingImportOptions thick;
  thick.thickness_mm = {{"", 8}};
  EXPECT_EQ(meaning_complaint(all_meaning(), thick), "taken");
  EXPECT_NE(meaning_complaint(all_meaning()).find("--thickness"), std::string::npos);
  FlatMeaning meaning = all_meaning();
  meaning.z_mm.reset();
  EXPECT_NE(meaning_complaint(meaning, thick).find("--z"), std::string::npos);
  meaning = all_meaning();
  meaning.joint.clear();
  EXPECT_NE(meaning_complaint(meaning, thick).find("--joint"), std::string::npos);
  meaning = all_meaning();
  meaning.seam_layers = {"seem"};
  EXPECT_NE(meaning_complaint(meaning, thick).find("seams"), std::string::npos)
      << meaning_complaint(meaning, thick);
  meaning.seam_layers.clear();
  meaning.plate_layers.clear();
  EXPECT_NE(meaning_complaint(meaning, thick).find("seams, plates"), std::string::npos)
      << meaning_complaint(meaning, thick);
}

TEST(FlatDrawing, ItsSeamsLackWhatNobodySaidAndComeAgainAsTheSame) {
  DrawingResult result = drawing();
  DrawingImportOptions options;
  options.weldment = "W";
  FlatMeaning meaning = all_meaning();
  meaning.plate_layers.clear();
  give_meaning(meaning, options, result);
  DrawingImport open = import_drawing(plan_of_one_schedule(), result, options);
  ASSERT_EQ(open.count(FlatState::open), 2u);
  EXPECT_EQ(open.candidates[0].lacks,
            (std::vector<Word>{"thickness"_word, "metal"_word, "size"_word, "schedule"_word}));
  options.thickness_mm = {{"seams", 10}};
  options.metals = {"S355"};
  open = import_drawing(plan_of_one_schedule(), result, options);
  EXPECT_EQ(open.candidates[0].lacks, (std::vector<Word>{"schedule"_word}));
  ASSERT_TRUE(open.candidates[0].size);
  EXPECT_EQ(open.candidates[0].size->mm, 5);
}

TEST(FlatDrawing, ALayersLinesAreReadStrictly) {
  for (const auto& [from, to] :
       std::vector<std::pair<std::string, std::string>>{{"[[0, 0], [500, 0]]", "[[0, 0]]"},
                                                        {"[[0, 0], [500, 0]]", "[[0, 0], [500]]"},
                                                        {"[[0, 0], [500, 0]]", "[[0, 0], [1e9, 0]]"},
                                                        {"\"closed\": false", "\"closed\": 0"},
                                                        {"\"name\": \"seams\"", "\"name\": 1"}}) {
    std::string text = result_of_program;
    text.replace(text.find(from), from.size(), to);
    EXPECT_THROW(read_drawing_result(text, "result"), InputError) << to;
  }
}

}  // namespace
}  // namespace seamtakt
