// The files as they come: units, schemas, names, places, and those that can't be used.
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <BRepAlgoAPI_Fuse.hxx>
#include <STEPControl_Writer.hxx>
#include <TopExp_Explorer.hxx>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "drawing/found_seams.hpp"
#include "drawing/refusal.hpp"
#include "drawing/sample_assemblies.hpp"

namespace seamtakt::drawing::tests {
namespace {

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

struct ProgramRun {
  int exit_code = -1;
  std::string output, complaint;
};

/// The program itself, its words given as a shell takes them.
ProgramRun run_program(const std::string& words) {
  static int count = 0;
  const auto base = scratch_folder() / ("run" + std::to_string(++count));
  const std::string command = std::string(SEAMTAKT_DRAWING_PROGRAM) + " " + words + " >" + base.string() +
                              ".out 2>" + base.string() + ".err";
  const int status = std::system(command.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, bytes_of(base.string() + ".out"),
          bytes_of(base.string() + ".err")};
}

bool is_one_line(const std::string& text) {
  return !text.empty() && text.find('\n') == text.size() - 1;
}

std::string refusal_of(const std::filesystem::path& file) {
  try {
    read_step(file.string());
  } catch (const Refusal& refusal) {
    return refusal.what();
  }
  return "taken";
}

class EachUnit : public ::testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(EachUnit, GivesTheSameSeams) {
  const auto& [writer_name, shown] = GetParam();
  const FoundSeams seams = find_in(stiffened(0).write("unit.step", {writer_name, "AP214IS"}));
  EXPECT_EQ(seams.assembly.unit, shown);
  EXPECT_TRUE(agree(stiffened(0).truth(), seams.offered()));
}
INSTANTIATE_TEST_SUITE_P(StepFiles, EachUnit,
                         ::testing::Values(std::pair("MM", "mm"), std::pair("CM", "cm"),
                                           std::pair("INCH", "in"), std::pair("M", "m")));

class EachSchema : public ::testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(EachSchema, IsRead) {
  const auto& [writer_name, shown] = GetParam();
  const FoundSeams seams = find_in(plate_frame().write("schema.step", {"MM", writer_name}));
  EXPECT_NE(seams.assembly.schema.find(shown), std::string::npos) << seams.assembly.schema;
  EXPECT_TRUE(agree(plate_frame().truth(), seams.offered()));
}
INSTANTIATE_TEST_SUITE_P(StepFiles, EachSchema,
                         ::testing::Values(std::pair("AP203", "CONFIG_CONTROL_DESIGN"),
                                           std::pair("AP214IS", "AUTOMOTIVE_DESIGN"),
                                           std::pair("AP242DIS", "AP242")));

TEST(StepFiles, AnAssemblyAnywhereAndTurnedHasTheSameSeams) {
  gp_Trsf turn, place;
  turn.SetRotation(gp_Ax1(gp_Pnt(3, 5, 7), gp_Dir(1, 2, 3)), 0.7);
  place.SetTranslation(gp_Vec(12345.6, -2345.7, 345.8));
  MadeAssembly made = stiffened(20);
  made.moved(place * turn);
  EXPECT_TRUE(agree(made.truth(), find_in(made.write("turned.step")).offered()));
}

TEST(StepFiles, PartsJustWithinTheGapAreJoinedAndJustBeyondAreNot) {
  const FoundSeams within = find_in(tee_of(0.98).write("within.step"));
  EXPECT_TRUE(agree(tee_of().truth(), within.offered()));
  for (const Joint& joint : within.found.joints)
    for (const SeamSide& side : joint.sides) EXPECT_NEAR(side.gap_largest_mm, 0.98, 1e-6);
  EXPECT_TRUE(find_in(tee_of(1.02).write("beyond.step")).all().empty());
  FindOptions wider;
  wider.gap_mm = 2;
  EXPECT_TRUE(agree(tee_of().truth(), find_in(tee_of(1.02).write("beyond.step"), wider).offered()));
}

TEST(StepFiles, PositionsFollowFromUp) {
  FindOptions options;
  const auto positions = [&](gp_Vec up) {
    options.up = up;
    std::multiset<std::string> found;
    for (const FoundSeam& seam : find_in(tee_of().write("position.step"), options).all())
      if (seam.flags.empty()) found.insert(seam.position);
    return found;
  };
  EXPECT_EQ(positions({0, 0, 1}), (std::multiset<std::string>{"PB", "PB"}));
  EXPECT_EQ(positions({0, 0, -1}), (std::multiset<std::string>{"PD", "PD"}));
  EXPECT_EQ(positions({1, 0, 0}), (std::multiset<std::string>{"PF", "PF"}));
  // The flange upright: one seam is on the web's upper side, the other below it.
  EXPECT_EQ(positions({0, 1, 0}), (std::multiset<std::string>{"PB", "PD"}));
  EXPECT_EQ(positions({0, 0.7071067811865476, 0.7071067811865476}), (std::multiset<std::string>{"PA", "PC"}));
}

TEST(StepFiles, WithoutUpNoPositionIsMadeUp) {
  for (const FoundSeam& seam : find_in(tee_of().write("no-up.step")).all()) EXPECT_EQ(seam.position, "");
}

TEST(StepFiles, NamesInOtherLettersAndTwiceTheSameStayApart) {
  MadeAssembly made;
  made.block("Träger 角", 0, 0, 0, 400, 100, 12);
  made.block("Rippe Ø", 50, 20, 12, 58, 80, 92);
  made.block("Rippe Ø", 150, 20, 12, 158, 80, 92);
  made.seams(4, {"Träger 角", "Rippe Ø", "tee", 60, 90, 12, 8});
  const FoundSeams seams = find_in(made.write("names.step"));
  EXPECT_TRUE(agree(made.truth(), seams.offered()));
  std::set<std::string> paths;
  for (const Part& part : seams.assembly.parts) paths.insert(part.path);
  EXPECT_EQ(paths, (std::set<std::string>{"assembly/Träger 角", "assembly/Rippe Ø", "assembly/Rippe Ø:2"}));
}

TEST(StepFiles, NamesOfAnOlderEncodingAreRead) {
  MadeAssembly made;
  made.block("XXTRAEGER", 0, 0, 0, 300, 100, 12);
  made.block("web", 20, 46, 12, 280, 54, 92);
  const auto file = made.write("latin.step");
  std::string text = bytes_of(file);
  for (std::size_t at = text.find("XXTRAEGER"); at != std::string::npos; at = text.find("XXTRAEGER", at))
    text.replace(at, 9, "Tr\xE4ger");
  std::ofstream(file, std::ios::binary) << text;
  EXPECT_EQ(find_in(file).assembly.parts[0].name, "Träger");
}

TEST(StepFiles, PlatesAndTubesAreKnown) {
  MadeAssembly made;
  made.add("plate", turned(cut_of(block_of(0, 0, 0, 200, 100, 12), block_of(50, 30, -1, 90, 60, 20)), 0, 0, 0,
                           1, 2, 3, 40));
  made.add("box", box_tube_of(0, 300, 400, 0, 80, 60, 4, 8));
  made.add("round", round_tube_of(0, 900, 0, 250, 60.3, 4));
  const FoundSeams seams = find_in(made.write("forms.step"));
  const auto& parts = seams.assembly.parts;
  ASSERT_TRUE(parts[0].plate);
  EXPECT_NEAR(parts[0].plate->thickness_mm, 12, 1e-6);
  EXPECT_EQ(parts[0].plate->outline_mm.size(), 4u);
  ASSERT_EQ(parts[0].plate->holes_mm.size(), 1u);
  EXPECT_EQ(parts[0].plate->holes_mm[0].size(), 4u);
  ASSERT_TRUE(parts[1].tube);
  EXPECT_NEAR(*parts[1].tube->b_mm + *parts[1].tube->h_mm, 140, 1e-6);
  EXPECT_NEAR(*parts[1].tube->r_mm, 8, 1e-6);
  EXPECT_NEAR(parts[1].tube->t_mm, 4, 1e-6);
  EXPECT_NEAR(parts[1].tube->begin.Distance(parts[1].tube->end), 300, 1e-6);
  ASSERT_TRUE(parts[2].tube);
  EXPECT_NEAR(*parts[2].tube->d_mm, 60.3, 1e-6);
  EXPECT_NEAR(parts[2].tube->begin.Distance(parts[2].tube->end), 250, 1e-6);
}

TEST(StepFiles, FusedBodiesAreNamedAsSuch) {
  const TopoDS_Shape fused =
      BRepAlgoAPI_Fuse(block_of(0, 0, 0, 300, 100, 12), block_of(20, 46, 12, 280, 54, 92)).Shape();
  MadeAssembly made;
  made.add("frame", fused);
  EXPECT_NE(refusal_of(made.write("fused.step")).find("found one body, its parts are fused"),
            std::string::npos);
}

TEST(StepFiles, SurfacesAloneAreNamedAsSuch) {
  MadeAssembly made;
  for (TopExp_Explorer at(block_of(0, 0, 0, 300, 100, 12), TopAbs_SHELL); at.More(); at.Next())
    made.add("skin", at.Current());
  EXPECT_NE(refusal_of(made.write("surfaces.step")).find("found only surfaces"), std::string::npos);
}

TEST(StepFiles, WhatIsNoStepFileEndsWithTwoAndOneLine) {
  const auto folder = scratch_folder();
  const std::string whole = bytes_of(tee_of().write("whole.step"));
  std::ofstream(folder / "empty.step").flush();
  std::ofstream(folder / "cut.step", std::ios::binary) << whole.substr(0, whole.size() / 2);
  std::ofstream(folder / "text.step") << "a letter\n";
  std::ofstream(folder / "hollow.step")
      << "ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n";
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"empty.step", "an empty file"}, {"cut.step", "cut off"},  {"text.step", "\"a letter\\n\""},
      {"absent.step", "no file"},      {".", "no regular file"}, {"hollow.step", "found"}};
  for (const auto& [name, words] : cases) {
    const ProgramRun run = run_program((folder / name).string() + " --json");
    EXPECT_EQ(run.exit_code, 2) << name;
    EXPECT_EQ(run.output, "") << name;
    EXPECT_TRUE(is_one_line(run.complaint)) << name << ": " << run.complaint;
    EXPECT_NE(run.complaint.find(words), std::string::npos) << name << ": " << run.complaint;
  }
}

TEST(StepFiles, EachCutOfAFileIsRefusedInOneLine) {
  const std::string whole = bytes_of(tee_of().write("whole.step"));
  const auto file = scratch_folder() / "cut-anywhere.step";
  for (int tenth = 0; tenth < 10; ++tenth) {
    std::ofstream(file, std::ios::binary)
        << whole.substr(0, whole.size() * static_cast<std::size_t>(tenth) / 10);
    const ProgramRun run = run_program(file.string());
    EXPECT_EQ(run.exit_code, 2) << tenth;
    EXPECT_TRUE(is_one_line(run.complaint)) << run.complaint;
  }
}

TEST(StepFiles, WrongOptionsEndWithTwo) {
  const std::string file = tee_of().write("whole.step").string();
  for (const char* words : {"--gap -1", "--gap nan", "--gap 11mm", "--up Z", "--up +W", "--seconds 0",
                            "--gap", "--no", "second.step"}) {
    const ProgramRun run = run_program(file + " " + words);
    EXPECT_EQ(run.exit_code, 2) << words;
    EXPECT_EQ(run.output, "") << words;
    EXPECT_TRUE(is_one_line(run.complaint)) << run.complaint;
  }
  EXPECT_EQ(run_program("").exit_code, 2);
  EXPECT_EQ(run_program("--help").exit_code, 0);
}

TEST(StepFiles, TheSameFileGivesTheSameBytes) {
  const std::string file = plate_frame().write("frame.step").string();
  const ProgramRun first = run_program(file + " --json --up +Z"),
                   second = run_program(file + " --json --up +Z");
  EXPECT_EQ(first.exit_code, 0) << first.complaint;
  EXPECT_GT(first.output.size(), 1000u);
  EXPECT_EQ(first.output, second.output);
}

}  // namespace
}  // namespace seamtakt::drawing::tests
