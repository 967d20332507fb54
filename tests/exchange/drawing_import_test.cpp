// Seams of a plan out of what seamtakt-drawing found. Its results are committed files here, so that these
// tests need no OpenCASCADE: tests/drawing makes the assemblies of the same names.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "exchange/drawing/drawing_import.hpp"
#include "exchange/drawing/drawing_solids.hpp"
#include "formula/size/fillet_minimum.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

using CandidateState = DrawingCandidate::State;

std::string result_text(const std::string& name) {
  return read_file(source_path("/tests/data/drawing/" + name), 1u << 20);
}

DrawingResult result_of(const std::string& name) {
  return read_drawing_result(result_text(name), name);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

Plan plan_with_schedules() {
  return parse_plan(R"({"format": "weldplan", "version": 1,
    "base_metals": [{"id": "S355", "composition_pct": {"C": 0.17}}, {"id": "S235", "composition_pct": {"C": 0.16}}],
    "wires": [{"id": "W", "form": "solid", "material": "mild-steel", "diameter_mm": 1.2, "density_g_cm3": 7.85,
               "alpha_mm_s_A": 0.3, "beta_per_s_A2": 5e-5, "deposition_efficiency": 0.95}],
    "schedules": [
      {"id": "thin", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9, "arc_voltage_V": 28,
       "travel_speed_mm_s": 7, "contact_tip_distance_mm": 18, "use": {"positions": ["PB"], "thickness_mm": [3, 9]}},
      {"id": "flat", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9, "arc_voltage_V": 28,
       "travel_speed_mm_s": 7, "contact_tip_distance_mm": 18,
       "use": {"positions": ["PA", "PB"], "thickness_mm": [5, 20], "leg_mm": [5, 7.5]}},
      {"id": "upright", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9, "arc_voltage_V": 28,
       "travel_speed_mm_s": 7, "contact_tip_distance_mm": 18, "use": {"positions": ["PF"]}}]})",
                    "plan");
}

DrawingImportOptions all_options() {
  DrawingImportOptions options;
  options.metals = {"S355"};
  options.throat_rule = SizeRule{0.5};
  options.schedules_by_use = true;
  options.up = "+Z";
  return options;
}

std::string complaint_of(const std::string& json) {
  try {
    read_drawing_result(json, "result");
  } catch (const InputError& error) {
    return error.what();
  }
  return "taken";
}

TEST(DrawingImport, WhatIsCompleteBecomesSeams) {
  const DrawingResult drawing = result_of("stiffened.json");
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, all_options());
  EXPECT_EQ(import.weldment, "stiffened") << "the file's name, where the plan has no weldment";
  EXPECT_EQ(import.count(CandidateState::added), 7u);
  EXPECT_EQ(import.count(CandidateState::open), 0u);
  EXPECT_EQ(import.count(CandidateState::left_out), 4u) << "ends in line with another plate's";
  const Weldment& weldment = import.plan.weldments.at(0);
  ASSERT_EQ(weldment.seams.size(), 7u);
  const Seam& first = weldment.seams[0];
  EXPECT_EQ(first.id, "S01");
  EXPECT_EQ(first.joint, "tee");
  EXPECT_EQ(first.thickness_mm, (std::vector<double>{12, 8})) << "the through plate first";
  EXPECT_EQ(first.base_metals, (std::vector<std::string>{"S355", "S355"}));
  EXPECT_EQ(first.throat_mm, 4);
  EXPECT_EQ(first.position, "PB");
  EXPECT_EQ(first.schedules, (std::vector<std::string>{"flat"})) << "thin is for plates up to 9 mm";
  ASSERT_TRUE(first.drawing);
  EXPECT_EQ(first.drawing->parts, (std::vector<std::string>{"assembly/flange", "assembly/web"}));
  EXPECT_EQ(weldment.seams[6].position, "PF");
  EXPECT_EQ(weldment.seams[6].schedules, (std::vector<std::string>{"upright"}));
  ASSERT_TRUE(weldment.drawing_file);
  EXPECT_EQ(weldment.drawing_file->sha256, drawing.sha256);
  EXPECT_EQ(weldment.drawing_file->up, "+Z");
  EXPECT_EQ(weldment.drawing_file->gap_mm, 1);
  EXPECT_EQ(weldment.plates.size(), 3u);
  const Plan again = parse_plan(write_plan(import.plan), "again");
  EXPECT_EQ(again.weldments[0].seams[0].drawing->side, first.drawing->side);
  EXPECT_EQ(write_plan(again), write_plan(import.plan));
}

TEST(DrawingImport, NothingIsMadeUpWhereTheDrawingOrThePersonSaysNothing) {
  const DrawingResult drawing = result_of("stiffened.json");
  DrawingImportOptions nothing;
  nothing.throat_rule.reset();
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, nothing);
  EXPECT_EQ(import.count(CandidateState::added), 0u);
  EXPECT_EQ(import.count(CandidateState::open), 7u);
  EXPECT_TRUE(import.plan.weldments.at(0).seams.empty());
  for (const DrawingCandidate& candidate : import.candidates) {
    if (candidate.state != CandidateState::open) continue;
    EXPECT_EQ(candidate.lacks, (std::vector<Word>{"metal"_word, "size"_word, "schedule"_word}));
  }
}

TEST(DrawingImport, AThicknessThatTheDrawingLacksIsAskedFor) {
  std::string text = result_text("stiffened.json");
  for (std::size_t at = text.find("\"thickness_mm\": [8, 10]"); at != std::string::npos;
       at = text.find("\"thickness_mm\": [8, 10]"))
    text.replace(at, 23, "\"thickness_mm\": [8, null]");
  const DrawingResult drawing = read_drawing_result(text, "result");
  const DrawingImport open = import_drawing(plan_with_schedules(), drawing, all_options());
  EXPECT_EQ(open.count(CandidateState::open), 2u);
  EXPECT_EQ(open.count(CandidateState::added), 5u);
  DrawingImportOptions options = all_options();
  options.thickness_mm = {{"rib", 10}};
  EXPECT_EQ(import_drawing(plan_with_schedules(), drawing, options).count(CandidateState::added), 7u);
  options.thickness_mm = {{"ribb", 10}};
  try {
    import_drawing(plan_with_schedules(), drawing, options);
    FAIL() << "a part that isn't there";
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what()).find("rib"), std::string::npos);
  }
}

TEST(DrawingImport, WithoutARuleAFilletHasAThroatOfHalfTheThinnerPlate) {
  DrawingImportOptions options = all_options();
  options.throat_rule = DrawingImportOptions().throat_rule;
  const DrawingResult drawing = result_of("stiffened.json");
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
  ASSERT_EQ(import.count(CandidateState::added), 7u);
  EXPECT_EQ(import.plan.weldments.at(0).seams.at(0).throat_mm, 4);
  for (const DrawingCandidate& candidate : import.candidates) {
    ASSERT_EQ(candidate.size.has_value(), candidate.state == CandidateState::added);
    if (candidate.size) {
      EXPECT_STREQ(candidate.size->key, "throat_mm");
    }
  }
}

TEST(DrawingImport, AButtIsFilledThroughTheThinnerPlateFromOneSide) {
  DrawingResult drawing = result_of("butt.json");
  for (DrawingSide& side : drawing.joints.at(0).sides) side.gap_mm = 0.8;
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, all_options());
  EXPECT_EQ(import.count(CandidateState::added), 1u);
  EXPECT_EQ(import.count(CandidateState::open), 0u);
  const Seam& seam = import.plan.weldments.at(0).seams.at(0);
  ASSERT_TRUE(seam.groove);
  EXPECT_EQ(seam.groove->type, "square");
  EXPECT_EQ(seam.groove->root_gap_mm, 0.8);
  EXPECT_EQ(seam.drawing->side, "2") << "the first of the two, where neither is known to lie flat";
  std::vector<std::vector<std::string>> flags;
  for (const DrawingCandidate& candidate : import.candidates) {
    flags.push_back(candidate.flags);
    if (candidate.size) {
      EXPECT_EQ(candidate.size->mm, 8);
    }
  }
  EXPECT_EQ(flags, (std::vector<std::vector<std::string>>{{"end"}, {}, {"end"}, {"back"}}));
}

TEST(DrawingImport, AButtIsWeldedFromTheSideThatLiesFlatOrWasTakenBefore) {
  DrawingResult drawing = result_of("butt.json");
  drawing.joints.at(0).sides.at(3).position = "PA";
  const Plan once = import_drawing(plan_with_schedules(), drawing, all_options()).plan;
  EXPECT_EQ(once.weldments.at(0).seams.at(0).drawing->side, "4");
  drawing.joints.at(0).sides.at(3).position = "PE";
  drawing.joints.at(0).sides.at(1).position = "PA";
  const DrawingImport again = import_drawing(once, drawing, all_options());
  EXPECT_EQ(again.count(CandidateState::added), 0u) << "turned over";
  EXPECT_EQ(again.count(CandidateState::unchanged), 1u);
}

TEST(DrawingImport, AButtWithoutARuleOrWithBevelsIsListed) {
  DrawingResult drawing = result_of("butt.json");
  DrawingImportOptions options = all_options();
  options.butts_through = false;
  const auto sizeless = [&] {
    const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
    std::size_t count = 0;
    for (const DrawingCandidate& candidate : import.candidates)
      if (candidate.state == CandidateState::open && candidate.lacks.front() == "size"_word) ++count;
    return count;
  };
  EXPECT_EQ(sizeless(), 2u);
  options.butts_through = true;
  EXPECT_EQ(sizeless(), 0u);
  for (DrawingSide& side : drawing.joints.at(0).sides) side.dihedral_deg = {120, 120, 120};
  EXPECT_EQ(sizeless(), 1u) << "its preparation isn't known; one is the other's back";
}

TEST(DrawingImport, APersonsChoiceOfASideComesFirst) {
  const DrawingResult drawing = result_of("stiffened.json");
  DrawingImportOptions options = all_options();
  const DrawingImport before = import_drawing(plan_with_schedules(), drawing, options);
  std::size_t taken = 0, declined = 0;
  for (const DrawingCandidate& candidate : before.candidates) {
    const std::pair side(candidate.joint->id, candidate.side->id);
    if (candidate.state == CandidateState::left_out && taken++ == 0) options.choices[side] = true;
    if (candidate.state == CandidateState::added && declined++ == 0) options.choices[side] = false;
  }
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
  EXPECT_EQ(import.count(CandidateState::left_out), 4u) << "one more and one less";
  EXPECT_EQ(std::count_if(import.candidates.begin(), import.candidates.end(),
                          [](const DrawingCandidate& candidate) {
                            return candidate.flags == std::vector<std::string>{"declined"};
                          }),
            1);
}

TEST(DrawingImport, AMoveThatAPersonDeclinesLeavesTheSeam) {
  DrawingResult drawing = result_of("stiffened.json");
  const Plan once = import_drawing(plan_with_schedules(), drawing, all_options()).plan;
  DrawingSide& side = drawing.joints.at(0).sides.at(2);  // the first that isn't a plate's end
  side.path_mm.at(0)[0] += 10;
  DrawingImportOptions options = all_options();
  ASSERT_EQ(import_drawing(once, drawing, options).count(CandidateState::moved), 1u);
  options.choices[{drawing.joints.at(0).id, side.id}] = false;
  const DrawingImport import = import_drawing(once, drawing, options);
  EXPECT_EQ(import.count(CandidateState::moved), 0u);
  EXPECT_EQ(import.plan.weldments.at(0).seams.at(0).path_mm, once.weldments.at(0).seams.at(0).path_mm);
}

TEST(DrawingImport, OneThicknessMayBeOfEachPartThatHasNone) {
  EXPECT_EQ(parse_part_thickness("8mm"), (std::pair<std::string, double>("", 8)));
  EXPECT_EQ(parse_part_thickness("a=b=8mm"), (std::pair<std::string, double>("a=b", 8)));
  EXPECT_THROW(parse_part_thickness("=8mm"), InputError);
  DrawingResult drawing = result_of("butt.json");
  for (DrawingSide& side : drawing.joints.at(0).sides) side.thickness_mm[1].reset();
  DrawingImportOptions options = all_options();
  EXPECT_EQ(import_drawing(plan_with_schedules(), drawing, options).count(CandidateState::open), 2u);
  options.thickness_mm = {{"", 6}};
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
  EXPECT_EQ(import.plan.weldments.at(0).seams.at(0).thickness_mm, (std::vector<double>{8, 6}));
}

TEST(DrawingImport, AScheduleMayBeOfSeamsThatHaveNoneByUse) {
  const DrawingResult drawing = result_of("stiffened.json");
  DrawingImportOptions options = all_options();
  options.schedule = "thin";
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
  EXPECT_EQ(import.plan.weldments.at(0).seams.at(0).schedules, (std::vector<std::string>{"flat"}))
      << "by use";
  options.schedules_by_use = false;
  const DrawingImport other = import_drawing(plan_with_schedules(), drawing, options);
  EXPECT_EQ(other.plan.weldments.at(0).seams.at(0).schedules, (std::vector<std::string>{"thin"}));
  options.schedule = "thinn";
  EXPECT_THROW(import_drawing(plan_with_schedules(), drawing, options), InputError);
}

TEST(DrawingImport, TheDrawnWeldmentHasASeamForEachSide) {
  const DrawingResult drawing = result_of("stiffened.json");
  const Weldment drawn = drawn_weldment(drawing);
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, all_options());
  ASSERT_EQ(drawn.seams.size(), import.candidates.size());
  EXPECT_EQ(drawn.plates.size(), 3u);
  for (std::size_t i = 0; i < drawn.seams.size(); ++i)
    EXPECT_EQ(drawn.seams[i].path_mm, import.candidates[i].side->path_mm);
}

TEST(DrawingImport, ALegRuleIsForJointsWithTwoSides) {
  const DrawingResult drawing = result_of("stiffened.json");
  DrawingImportOptions options = all_options();
  options.leg_rule = SizeRule{0.7};
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, options);
  const Seam& seam = import.plan.weldments.at(0).seams.at(0);
  EXPECT_EQ(seam.leg_mm, 6) << "0.7 x 8 = 5.6, rounded up to half a millimetre";
  EXPECT_FALSE(seam.throat_mm);
}

TEST(DrawingImport, SizesAreRoundedUpAndAtLeastThreeMillimetres) {
  EXPECT_EQ(size_by_rule_mm({0.5}, 8, fillet_throat_min_mm), 4);
  EXPECT_EQ(size_by_rule_mm({0.5}, 8.1, fillet_throat_min_mm), 4.5);
  EXPECT_EQ(size_by_rule_mm({0.5}, 5, fillet_throat_min_mm), 3);
  EXPECT_EQ(size_by_rule_mm({0.7}, 10, 0.5), 7) << "0.7 x 10 isn't exact in binary";
  EXPECT_EQ(parse_size_rule("0.5t", "--throat-rule").share, 0.5);
  for (const char* text : {"", "t", "0.5", "0.5 t", "-0.5t", "0t", "3t", "0.5tt", "nant", "inft"})
    EXPECT_THROW(parse_size_rule(text, "--throat-rule"), InputError) << text;
}

TEST(DrawingImport, TheSameDrawingAgainChangesNothing) {
  const DrawingResult drawing = result_of("stiffened.json");
  const Plan once = import_drawing(plan_with_schedules(), drawing, all_options()).plan;
  const DrawingImport again = import_drawing(once, drawing, all_options());
  EXPECT_EQ(again.count(CandidateState::unchanged), 7u);
  EXPECT_EQ(again.count(CandidateState::added), 0u);
  EXPECT_EQ(write_plan(again.plan), write_plan(once));
}

TEST(DrawingImport, AChangedDrawingMovesSeamsAndNamesLostOnes) {
  Plan once = import_drawing(plan_with_schedules(), result_of("stiffened.json"), all_options()).plan;
  once.weldments[0].seams[0].throat_mm = 5;
  DrawingResult changed = result_of("stiffened.json");
  changed.joints.pop_back();  // the rib isn't on the web any more
  const std::string longer = once.weldments[0].seams[0].id;
  for (DrawingSide& side : changed.joints[0].sides)
    if (side.length_mm == 400)
      for (Point_mm& point : side.path_mm) point[0] *= 1.1;
  const DrawingImport import = import_drawing(once, changed, all_options());
  EXPECT_EQ(import.count(CandidateState::moved), 1u);
  EXPECT_EQ(import.count(CandidateState::unchanged), 4u);
  EXPECT_EQ(import.lost, (std::vector<std::string>{"S06", "S07"}));
  const Seam& moved = *find_by_id(import.plan.weldments[0].seams, longer);
  EXPECT_EQ(moved.throat_mm, 5) << "what a person decided stays";
  EXPECT_NEAR(std::max(moved.path_mm[0][0], moved.path_mm[1][0]), 440, 1e-9);
  EXPECT_EQ(import.plan.weldments[0].seams.size(), 7u) << "a lost seam is named, not taken out";
}

TEST(DrawingImport, BoltsAndTheLikeAreLeftOutAndCanBeTaken) {
  const std::string text =
      replaced(result_text("stiffened.json"), "\"is_hardware\": false", "\"is_hardware\": true");
  const DrawingResult drawing = read_drawing_result(text, "result");
  const DrawingImport import = import_drawing(plan_with_schedules(), drawing, all_options());
  EXPECT_EQ(import.count(CandidateState::added), 2u) << "rib and web alone are left";
  DrawingImportOptions options = all_options();
  options.take_hardware = true;
  EXPECT_EQ(import_drawing(plan_with_schedules(), drawing, options).count(CandidateState::added), 7u);
}

TEST(DrawingImport, ADrawingsResultIsReadStrictly) {
  const std::string good = result_text("stiffened.json");
  EXPECT_EQ(complaint_of(good), "taken");
  for (const auto& [from, to] :
       std::vector<std::pair<std::string, std::string>>{{"\"seamtakt-drawing\"", "\"other\""},
                                                        {"\"version\": 1", "\"version\": 2"},
                                                        {"\"gap_mm\": 1,", "\"gap_mm\": 1e999,"},
                                                        {"\"gap_mm\": 1,", "\"gap_mm\": -1,"},
                                                        {"\"length_mm\": 400", "\"length_mm\": 1e12"},
                                                        {"\"length_mm\": 400", "\"length_mm\": 0"},
                                                        {"\"length_mm\": 400", "\"length_mm\": \"400\""},
                                                        {"\"part_a\": 0", "\"part_a\": 3"},
                                                        {"\"part_a\": 0", "\"part_a\": 0.5"},
                                                        {"\"part_a\": 0", "\"part_a\": -1"},
                                                        {"\"type\": \"tee\"", "\"type\": \"spot\""},
                                                        {"\"closed\": false", "\"closed\": 0"},
                                                        {"\"u\": [1, 0, 0]", "\"u\": [1, 0]"},
                                                        {"\"parts\": [", "\"parts\": {\"a\": ["}}) {
    const std::string complaint = complaint_of(replaced(good, from, to));
    EXPECT_NE(complaint, "taken") << to;
    EXPECT_EQ(complaint.find("result:"), 0u) << complaint;
  }
  std::string truncated = good;
  truncated.resize(good.size() / 2);
  EXPECT_NE(complaint_of(truncated), "taken");
}

}  // namespace
}  // namespace seamtakt
