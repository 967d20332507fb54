#include "plan/approval.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "base/files/digest.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// One approved schedule and what it names, with values that are in the file's short form.
Plan small_plan() {
  Plan plan;
  plan.wires.emplace_back();
  plan.wires[0].id = "W";
  plan.wires[0].diameter_mm = 1.2;
  plan.gases.emplace_back();
  plan.gases[0].id = "G";
  plan.gases[0].designation = "ISO 14175 M21";
  plan.schedules.emplace_back();
  Schedule& schedule = plan.schedules[0];
  schedule.id = "F1";
  schedule.revision = 2;
  schedule.status = "approved";
  schedule.approved_by = "w. e.";
  schedule.effective_from = "2026-11-02";
  schedule.process = "135";
  schedule.wire = "W";
  schedule.gas = "G";
  schedule.wire_feed_speed_m_min = 9.5;
  schedule.arc_voltage_V = 29;
  schedule.travel_speed_mm_s = 8;
  schedule.contact_tip_distance_mm = 18;
  schedule.limits.emplace();
  schedule.limits->heat_input_kJ_mm = Interval{0.6, 1.4};
  return plan;
}

TEST(Approval, covers_the_fields_that_say_something_in_the_tables_order) {
  const Plan plan = small_plan();
  // Written by hand from the field tables: status, approver, first day and digest are left out.
  EXPECT_EQ(locked_text(plan.schedules[0]),
            "{\"id\":\"F1\",\"revision\":2,\"process\":\"135\",\"wire\":\"W\",\"gas\":\"G\","
            "\"wire_feed_speed_m_min\":9.5,\"arc_voltage_V\":29,\"travel_speed_mm_s\":8,"
            "\"contact_tip_distance_mm\":18,\"limits\":{\"heat_input_kJ_mm\":[0.6, 1.4],},}");
  EXPECT_EQ(locked_text(plan.gases[0]), "{\"id\":\"G\",\"designation\":\"ISO 14175 M21\",}");
}

TEST(Approval, states_a_digest_over_the_schedule_and_what_it_names) {
  const Plan plan = small_plan();
  const Schedule& schedule = plan.schedules[0];
  const std::string lines = locked_text(schedule) + "\nw. e.\n2026-11-02\n" + locked_text(plan.wires[0]) +
                            "\n" + locked_text(plan.gases[0]) + "\n\n";
  EXPECT_EQ(approval_sha256(plan, schedule), sha256_hex(lines));
}

TEST(Approval, holds_while_prices_and_refitted_coefficients_change_and_not_when_figures_do) {
  const Plan plan = small_plan();
  const std::string held = approval_sha256(plan, plan.schedules[0]);
  const auto after = [&](const auto& change) {
    Plan changed = plan;
    change(changed);
    return approval_sha256(changed, changed.schedules[0]);
  };
  EXPECT_EQ(after([](Plan& p) { p.wires[0].price_per_kg = 3; }), held);
  EXPECT_EQ(after([](Plan& p) { p.wires[0].alpha_mm_s_A = 0.31; }), held);
  EXPECT_EQ(after([](Plan& p) { p.wires[0].U_melting_pct = 8; }), held);
  EXPECT_EQ(after([](Plan& p) { p.gases[0].price_per_m3 = 3; }), held);
  EXPECT_EQ(after([](Plan& p) { p.schedules[0].waveform_factor = 1; }), held) << "a stated default";
  EXPECT_EQ(after([](Plan& p) { p.schedules[0].file_keys.free.emplace_back("x_note", "1"); }), held);
  EXPECT_NE(after([](Plan& p) { p.schedules[0].travel_speed_mm_s = 8.1; }), held);
  EXPECT_NE(after([](Plan& p) { p.schedules[0].limits->heat_input_kJ_mm->upper = 1.5; }), held);
  EXPECT_NE(after([](Plan& p) { p.schedules[0].effective_from = "2026-10-02"; }), held);
  EXPECT_NE(after([](Plan& p) { p.schedules[0].approved_by = "another"; }), held);
  EXPECT_NE(after([](Plan& p) { p.wires[0].diameter_mm = 1; }), held);
  EXPECT_NE(after([](Plan& p) { p.gases[0].designation = "ISO 14175 I1"; }), held);
}

/// The demo, whose schedules are approved, with digests.
Plan sealed_demo() {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  for (Schedule& schedule : plan.schedules) schedule.approved_sha256 = approval_sha256(plan, schedule);
  return plan;
}

std::vector<std::string> changed_schedules(const Plan& plan) {
  std::vector<std::string> places;
  const Evaluation evaluation = evaluate(plan, "2026-11-25");
  for (const Finding& finding : evaluation.findings)
    if (finding.rule == "plan.approved.changed") places.push_back(finding.where);
  return places;
}

TEST(Approval, survives_the_file_and_a_change_in_the_file_is_found) {
  const std::string text = write_plan(sealed_demo());
  EXPECT_EQ(changed_schedules(parse_plan(text, "demo")), std::vector<std::string>{});
  Plan changed = parse_plan(text, "demo");
  ASSERT_EQ(changed.schedules[1].status, "approved");
  changed.schedules[1].travel_speed_mm_s += 0.1;
  EXPECT_EQ(changed_schedules(parse_plan(write_plan(changed), "demo")),
            std::vector<std::string>{changed.schedules[1].id});
  changed.schedules[1].status = "draft";
  EXPECT_EQ(changed_schedules(changed), std::vector<std::string>{}) << "a draft may change";
}

TEST(Approval, is_not_asked_for_where_no_digest_is_stated) {
  Plan plan = sealed_demo();
  for (Schedule& schedule : plan.schedules) schedule.approved_sha256.clear();
  plan.schedules[1].travel_speed_mm_s += 0.1;
  EXPECT_EQ(changed_schedules(plan), std::vector<std::string>{});
}

TEST(ScheduleInForce, is_the_highest_approved_revision_whose_day_has_come) {
  Plan plan = small_plan();
  plan.schedules[0].effective_from.clear();  // F1, revision 2
  const auto revise = [&](const char* id, int revision, const char* status, const char* from) {
    plan.schedules.push_back(plan.schedules[0]);
    Schedule& next = plan.schedules.back();
    next.id = id;
    next.revision_of = "F1";
    next.revision = revision;
    next.status = status;
    next.effective_from = from;
  };
  revise("F1-r3", 3, "approved", "2026-11-10");
  revise("F1-r4", 4, "approved", "2026-12-01T06:00");
  revise("F1-r5", 5, "reviewed", "2026-11-01");
  const auto in_force = [&](const char* id, const char* day) {
    const Schedule* found = schedule_in_force(plan, id, day);
    return found != nullptr ? found->id : std::string();
  };
  EXPECT_EQ(in_force("F1", "2026-11-09"), "F1");
  EXPECT_EQ(in_force("F1", "2026-11-10"), "F1-r3");
  EXPECT_EQ(in_force("F1-r4", "2026-11-30"), "F1-r3") << "its own day hasn't come";
  EXPECT_EQ(in_force("F1-r3", "2026-12-01"), "F1-r4");
  EXPECT_EQ(in_force("F1-r5", "2027-01-01"), "F1-r4") << "a reviewed one isn't in force";
  EXPECT_EQ(in_force("F9", "2027-01-01"), "");
  plan.schedules[0].status = "draft";
  EXPECT_EQ(in_force("F1", "2026-11-09"), "");
}

}  // namespace
}  // namespace seamtakt
