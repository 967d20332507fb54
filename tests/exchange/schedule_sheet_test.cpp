// A schedule's sheet: its items, seams, findings, revision difference and places to sign.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "exchange/schedules/revision_changes.hpp"
#include "exchange/schedules/schedule_sheet.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// Schedules F (S1, a tee with leg 6, and S2, with leg 5) and C (S3, a V butt in four passes).
struct TwoSchedules {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  Evaluation evaluation;
  std::vector<CycleResult> cycles;
  Provenance provenance = provenance_without_plan();

  Schedule& schedule(std::size_t at) { return plan.schedules[at]; }

  std::string page(const std::vector<std::string>& ids, const TextView& view) {
    evaluation = evaluate(plan, "2026-11-25");
    const PlanReport report{plan, evaluation, cycles, provenance};
    return report_page(schedule_report(report, schedules_named(plan, ids, "--schedule")), view);
  }
};

/// "<dt>Label</dt><dd>Value</dd>": what the page has beside a label; "?" where it hasn't got it.
std::string item_of(const std::string& page, const std::string& label) {
  const std::string begin = "<dt>" + label + "</dt><dd>";
  const std::size_t at = page.find(begin);
  if (at == std::string::npos) return "?";
  const std::size_t from = at + begin.size();
  return page.substr(from, page.find("</dd>", from) - from);
}

std::size_t count_of(const std::string& page, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = page.find(part); at != std::string::npos; at = page.find(part, at + 1)) ++count;
  return count;
}

TEST(ScheduleSheet, has_each_item_of_a_welding_procedure_specification) {
  TwoSchedules given;
  const std::string page = given.page({"F"}, TextView::plain_english());
  for (const char* label : {"Qualification record",
                            "Parent metals",
                            "Material group (ISO/TR 15608)",
                            "Plate thickness",
                            "Outside diameter",
                            "Positions (ISO 6947)",
                            "Leg",
                            "Root gap",
                            "Joint preparation and cleaning",
                            "Length of tacks",
                            "Backing",
                            "Back gouging",
                            "Technique",
                            "Torch work angle, travel angle",
                            "Preheat",
                            "Interpass temperature",
                            "Temperature kept in breaks",
                            "Post-heating for hydrogen release",
                            "Post-weld heat treatment",
                            "Welding process (ISO 4063)",
                            "Metal transfer",
                            "Current type and polarity",
                            "Filler",
                            "Filler make and handling",
                            "Wires, additional filler",
                            "Shielding gas (ISO 14175), flow",
                            "Backing gas",
                            "Nozzle",
                            "Contact tip to work",
                            "Pulse",
                            "Wire feed speed",
                            "Current",
                            "Arc voltage",
                            "Travel speed",
                            "Heat input",
                            "Cooling time t8/5"})
    EXPECT_NE(item_of(page, label), "?") << label;
  EXPECT_EQ(item_of(page, "Backing gas"), "not stated");
  EXPECT_EQ(item_of(page, "Travel speed"), "7.5 mm/s");
  EXPECT_EQ(item_of(page, "Parent metals"), "A, B");
  for (const char* part :
       {"<th class=\"w\">Manufacturer</th>", "<div>Drafted: name, date, signature</div>",
        "<div>Reviewed: name, date, signature</div>", "<div>Approved: name, date, signature</div>"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
}

TEST(ScheduleSheet, writes_limits_as_ranges_and_the_pulse) {
  TwoSchedules given;
  given.schedule(0).limits = ScheduleLimits{};
  given.schedule(0).limits->current_A = Interval{253.0, 309.0};
  given.schedule(0).limits->voltage_V = Interval{27.5, 30.5};
  given.schedule(0).limits->interpass_C = Interval{{}, 250.0};
  given.schedule(0).pulse = Pulse{};
  given.schedule(0).pulse->peak_A = 450;
  given.schedule(0).pulse->background_A = 60;
  given.schedule(0).pulse->peak_ms = 2;
  given.schedule(0).pulse->frequency_Hz = 150;
  const std::string page = given.page({"F"}, TextView::plain_english());
  EXPECT_EQ(item_of(page, "Current"), "253 to 309 A");
  EXPECT_EQ(item_of(page, "Arc voltage"), "29 V (27.5 to 30.5 V)");
  EXPECT_EQ(item_of(page, "Interpass temperature"), "up to 250 C");
  EXPECT_EQ(item_of(page, "Pulse"), "450 A for 2 ms at 150 Hz, background 60 A");
}

TEST(ScheduleSheet, speaks_german_with_a_decimal_comma_and_us_units) {
  TwoSchedules given;
  const std::string german = given.page({"F"}, TextView(*find_language("de")).on_paper());
  EXPECT_EQ(item_of(german, "Wurzelschutzgas"), "nicht angegeben");
  EXPECT_EQ(item_of(german, "Schweißgeschwindigkeit"), "7,5\u202fmm/s");
  EXPECT_NE(german.find("<html lang=\"de\">"), std::string::npos);
  EXPECT_EQ(german.find("not stated"), std::string::npos);
  // 7.5 mm/s x 60 / 25.4 = 17.7165 in/min.
  const std::string us = given.page({"F"}, TextView(english(), UnitSystem::us).on_paper());
  EXPECT_EQ(item_of(us, "Travel speed"), "17.7165\u202fin/min");
}

TEST(ScheduleSheet, is_a_page_for_each_schedule_that_is_asked_for) {
  TwoSchedules given;
  EXPECT_EQ(count_of(given.page({}, TextView::plain_english()), "<section class=\"sheet\">"), 2u);
  const std::string one = given.page({"C"}, TextView::plain_english());
  EXPECT_EQ(count_of(one, "<section class=\"sheet\">"), 1u);
  EXPECT_NE(one.find("<h3>Schedule C</h3>"), std::string::npos);
  EXPECT_EQ(one.find("<h3>Schedule F</h3>"), std::string::npos);
  EXPECT_THROW(given.page({"X"}, TextView::plain_english()), InputError);
}

TEST(ScheduleSheet, sketches_each_kind_and_size_of_its_joints_once_and_lists_their_seams) {
  TwoSchedules given;
  given.plan.weldments[0].seams.push_back(given.plan.weldments[0].seams[1]);  // like S2
  given.plan.weldments[0].seams.back().id = "S4";
  const std::string page = given.page({"F"}, TextView::plain_english());
  EXPECT_EQ(count_of(page, "<svg"), 2u);
  const std::size_t two = page.find("aria-label=\"tee, used by 2 seams\""),
                    one = page.find("aria-label=\"tee, used by 1 seam\"");
  ASSERT_NE(two, std::string::npos);
  ASSERT_NE(one, std::string::npos);
  EXPECT_LT(two, one) << "that of most seams first";
  for (const char* part : {">z 6 mm</text>", ">z 5 mm</text>", "X/S2, X/S4", "10 and 8 mm"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
  const std::string butt = given.page({"C"}, TextView::plain_english());
  for (const char* part :
       {">60 deg</text>", ">g 2 mm</text>", ">c 1 mm</text>", ">4</text>", "1, 2, 3, 4 of 4"})
    EXPECT_NE(butt.find(part), std::string::npos) << part;
}

TEST(ScheduleSheet, says_where_no_seam_uses_the_schedule) {
  TwoSchedules given;
  given.plan.schedules.push_back(given.schedule(0));
  given.plan.schedules.back().id = "SPARE";
  const std::string page = given.page({"SPARE"}, TextView::plain_english());
  EXPECT_NE(page.find("No seam of the plan is welded by it."), std::string::npos);
  EXPECT_EQ(count_of(page, "<svg"), 0u);
}

TEST(ScheduleSheet, has_the_findings_on_its_seams_with_their_mark_and_none_of_others) {
  TwoSchedules given;
  given.plan.weldments[0].seams[0].leg_mm = 30;  // S1, far more than one pass lays
  const std::string page = given.page({"F"}, TextView::plain_english());
  EXPECT_NE(page.find("\u22a0\u00a0fail"), std::string::npos);
  EXPECT_NE(page.find("X/S1"), std::string::npos);
  EXPECT_EQ(given.page({"C"}, TextView::plain_english()).find("of 30 mm"), std::string::npos);
}

TEST(RevisionChanges, are_what_differs_from_the_revision_before) {
  TwoSchedules given;
  Schedule next = given.schedule(0);
  next.id = "F-2";
  next.revision = 2;
  next.revision_of = "F";
  next.status = "draft";
  next.travel_speed_mm_s = 8;
  next.limits = ScheduleLimits{};
  next.limits->current_A = Interval{253.0, 309.0};
  given.plan.schedules.push_back(next);
  const Schedule& first = given.plan.schedules[0];
  const Schedule& second = given.plan.schedules.back();
  EXPECT_EQ(earlier_revision(given.plan, first), nullptr);
  EXPECT_EQ(earlier_revision(given.plan, second), &first);
  EXPECT_EQ(earlier_revision(given.plan, given.plan.schedules[1]), nullptr) << "another family";
  const std::vector<RevisionChange> changes = revision_changes(first, second);
  ASSERT_EQ(changes.size(), 2u);
  const auto text = [](const SheetCell& cell) { return cell_text(cell, TextView::plain_english()); };
  EXPECT_EQ(text(changes[0].field), "travel speed");
  EXPECT_EQ(text(changes[0].before), "7.5 mm/s");
  EXPECT_EQ(text(changes[0].after), "8 mm/s");
  EXPECT_EQ(text(changes[1].field), "limits: current");
  EXPECT_EQ(text(changes[1].before), "not stated");
  EXPECT_EQ(text(changes[1].after), "253 to 309 A");
  const std::string page = given.page({"F-2"}, TextView::plain_english());
  EXPECT_NE(page.find("Changed from F, revision 1"), std::string::npos);
  EXPECT_EQ(given.page({"F"}, TextView::plain_english()).find("Changed from"), std::string::npos);
}

}  // namespace
}  // namespace seamtakt
