// What the shop hands in: orders, carts, and a robot that is out.
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "base/error.hpp"
#include "cell/timeline/without_robot.hpp"
#include "line/cart.hpp"
#include "line/orders.hpp"
#include "line/release.hpp"
#include "support/folder_test.hpp"

namespace seamtakt::test {
namespace {

Plan two_weldments() {
  Plan plan;
  plan.weldments.resize(2);
  plan.weldments[0].id = "BD";
  plan.weldments[0].parts = {{"rail", 2, {}}, {"cross", 5, {}}, {"hitch", 1, {}}};
  plan.weldments[1].id = "TT";
  return plan;
}

std::string message_of(const std::string& text) {
  try {
    parse_orders(text, "orders.csv", two_weldments());
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

TEST(Orders, AreReadInTheirOrder) {
  const auto orders =
      parse_orders("unit_serial,weldment,due\nU1,BD,2026-03-02\nU2,TT,\nU3,BD,2026-03-02T14:30\n",
                   "orders.csv", two_weldments());
  ASSERT_EQ(orders.size(), 3u);
  EXPECT_EQ(orders[1].serial, "U2");
  EXPECT_EQ(orders[1].weldment, "TT");
  EXPECT_EQ(orders[2].number, 2u);
  EXPECT_LT(orders[2].due_key, orders[0].due_key);  // an hour comes before the day's end
  EXPECT_LT(orders[0].due_key, orders[1].due_key);  // no due date is last
  EXPECT_FALSE(dues_kept(orders));
}

TEST(Orders, MayComeWithSemicolonsQuotesAndWithoutDue) {
  EXPECT_EQ(
      parse_orders("\xef\xbb\xbfWELDMENT;Unit_Serial\r\nBD;\"U;1\"\r\n", "o.csv", two_weldments())[0].serial,
      "U;1");
}

TEST(Orders, MayCallTheSerialSerial) {
  EXPECT_EQ(parse_orders("serial,weldment\nU1,BD\n", "o.csv", two_weldments())[0].serial, "U1");
}

TEST(Orders, SayInOneLineWhatIsWrongAndWhere) {
  EXPECT_EQ(message_of("unit_serial,due\nU1,2026-03-02\n"),
            "orders.csv:1:1: found the columns unit_serial, due, expected a column \"weldment\"");
  EXPECT_EQ(message_of("unit_serial,weldment,due\nU1,BD,\nU2,BD,\nU1,TT,\n"),
            "orders.csv:4:1: found the serial \"U1\" again, expected each once; it stands in line 2");
  EXPECT_EQ(message_of("unit_serial,weldment,due\nU1,BX,\n"),
            "orders.csv:2:4: found \"BX\", expected one of the plan's weldments BD, TT");
  EXPECT_EQ(message_of("unit_serial,weldment,due\nU1,BD,2026-02-29\n"),
            "orders.csv:2:7: found \"2026-02-29\", expected a date YYYY-MM-DD or YYYY-MM-DDThh:mm");
  EXPECT_EQ(message_of("unit_serial,weldment,due\n,BD,2026-02-28\n"),
            "orders.csv:2:1: found nothing in \"unit_serial\", expected a unit's serial number");
  EXPECT_EQ(message_of("unit_serial,weldment,due\n"),
            "orders.csv:1:1: found no orders, expected at least one row below the header");
  EXPECT_EQ(message_of("unit_serial,weldment\n\"U,1\",\"B\nX\"\n"),
            "orders.csv:2:7: found \"B\\x0AX\", expected one of the plan's weldments BD, TT");
}

TEST(Orders, RefuseDatesThatAreNone) {
  for (const char* due : {"2026-13-01", "2026-00-10", "2026-04-31", "26-04-01", "2026/04/01", "2026-04-1",
                          "tomorrow", "2026-04-01T", "2026-04-01T24:00", "2026-04-01T10", "2026-04-01T10:60",
                          "2026-04-01 10:00", "1900-02-29"})
    EXPECT_NE(
        message_of(std::string("unit_serial,weldment,due\nU1,BD,") + due + "\n").find("expected a date"),
        std::string::npos)
        << due;
  for (const char* due : {"2024-02-29", "2000-02-29", "2026-12-31T23:59", "2026-01-01T00:00:59"})
    EXPECT_EQ(message_of(std::string("unit_serial,weldment,due\nU1,BD,") + due + "\n"), "accepted") << due;
}

CartCheck check_of(const std::string& text) {
  return check_cart(two_weldments().weldments[0], parse_cart(text, "cart.csv"));
}

TEST(Carts, ACompleteOneMayGoWhateverTheOrderAndHeatsOfItsLines) {
  const CartCheck check = check_of("part,quantity,heat\ncross,2,H1\nhitch,1,H7\nrail,2,H2\ncross,3,H4\n");
  EXPECT_TRUE(check.complete());
  EXPECT_EQ(cart_sentence(check).english(), "");
  EXPECT_TRUE(cart_findings("BD", check).empty());
}

TEST(Carts, HeatsOfAPartAreKeptEachOnce) {
  const Cart cart =
      parse_cart("part,quantity,heat\ncross,2,H1\ncross,1,H2\ncross,1,H1\ncross,1,\n", "cart.csv");
  ASSERT_EQ(cart.size(), 1u);
  EXPECT_EQ(cart[0].quantity, 5);
  EXPECT_EQ(cart[0].heats, (std::vector<std::string>{"H1", "H2"}));
}

TEST(Carts, SayWhatIsMissingAndWhatIsTooMuch) {
  const CartCheck check = check_of("part,quantity\nrail,3\ncross,4\nwheel,1\n");
  ASSERT_EQ(check.missing.size(), 2u);
  EXPECT_EQ(check.missing[0].part, "cross");
  EXPECT_EQ(check.missing[0].quantity(), 1);
  EXPECT_EQ(check.missing[1].part, "hitch");
  EXPECT_EQ(check.missing[1].found, 0);
  ASSERT_EQ(check.extra.size(), 2u);
  EXPECT_EQ(check.extra[0].part, "rail");
  EXPECT_EQ(check.extra[1].needed, 0);
  EXPECT_EQ(cart_sentence(check).english(),
            "1 cross is missing (4 of 5 there); 1 hitch is missing (none there); 1 rail too many (3 for 2); "
            "1 wheel too many (the weldment has none)");
  const Findings findings = cart_findings("BD", check);
  ASSERT_EQ(findings.size(), 4u);
  EXPECT_EQ(findings[0].where, "BD/cross");
  EXPECT_TRUE(any_failed(findings));
  EXPECT_FALSE(check.complete());
}

TEST(Carts, WithPartsTooManyWarnAndGo) {
  const CartCheck check = check_of("part,quantity\nrail,3\ncross,5\nhitch,1\nwheel,1\n");
  EXPECT_TRUE(check.complete());
  EXPECT_EQ(check.extra.size(), 2u);
  EXPECT_EQ(extra_sentence(check).english(),
            "1 rail too many (3 for 2); 1 wheel too many (the weldment has none)");
  for (const Finding& finding : cart_findings("BD", check)) EXPECT_EQ(finding.severity, Severity::warn);
}

std::optional<double> complete_at(const std::string& text) {
  const Cart cart = parse_cart(text, "cart.csv");
  return complete_from_s(cart, check_cart(two_weldments().weldments[0], cart),
                         [](const CartArrival& arrival) { return arrival.time_s; });
}

TEST(Carts, AreCompleteWhenTheLastMissingPartHasCome) {
  const std::string head = "part,quantity,arrives\nrail,2,\n";
  EXPECT_EQ(complete_at(head + "cross,5,\nhitch,1,900\n"), 900);
  // Of five crosses three are there, two of the four that come are enough: the second delivery has them.
  EXPECT_EQ(complete_at(head + "cross,3,\ncross,2,700\ncross,1,300\ncross,1,600\nhitch,1,50\n"), 600);
  EXPECT_FALSE(complete_at(head + "cross,3,\ncross,1,300\nhitch,1,\n")) << "one stays missing";
  EXPECT_FALSE(complete_at(head + "cross,5,\nhitch,1,\n")) << "nothing is missing";
  // What comes isn't there yet.
  EXPECT_EQ(check_of(head + "cross,5,\nhitch,1,900\n").missing.size(), 1u);
  const Cart cart = parse_cart("part,quantity,arrives\nhitch,1,2026-11-30T10:00\n", "cart.csv");
  EXPECT_TRUE(cart.at(0).expected.at(0).is_clock);
  EXPECT_EQ(cart[0].expected[0].time_s, 1796032800);  // date -u -d 2026-11-30T10:00 +%s
  for (const char* arrives : {"-5", "soon", "2026-11-30", "10:00", "1e999", "2026-11-31T10:00"}) try {
      parse_cart(std::string("part,quantity,arrives\nrail,2,\nhitch,1,") + arrives + "\n", "cart.csv");
      ADD_FAILURE() << arrives;
    } catch (const InputError& error) {
      EXPECT_EQ(error.where(), "cart.csv:3:9") << arrives;
    }
}

TEST(Carts, APartListedTwiceInTheWeldmentIsNeededInSum) {
  Plan plan = two_weldments();
  plan.weldments[0].parts = {{"rail", 2, {}}, {"rail", 1, {}}};
  EXPECT_TRUE(check_cart(plan.weldments[0], parse_cart("part,quantity\nrail,3\n", "c.csv")).complete());
}

TEST(Carts, RefuseQuantitiesThatAreNone) {
  for (const char* quantity : {"0", "-1", "1.5", "two", "", " 2", "1e3", "99999999999"}) {
    try {
      parse_cart(std::string("part,quantity\nrail,2\ncross,") + quantity + "\n", "cart.csv");
      ADD_FAILURE() << quantity;
    } catch (const InputError& error) {
      EXPECT_EQ(error.where(), "cart.csv:3:7") << quantity;
    }
  }
  EXPECT_THROW(parse_cart("part,count\nrail,2\n", "cart.csv"), InputError);
  EXPECT_THROW(parse_cart("part,quantity\n,2\n", "cart.csv"), InputError);
}

class Folder : public FolderTest {};

TEST_F(Folder, OfCartsReleasesTheCompleteOnesAndNamesWhatOthersWaitFor) {
  write("U1.csv", "part,quantity\nrail,2\ncross,5\nhitch,1\n");
  write("U2.csv", "part,quantity\nrail,2\ncross,5\n");
  write("U4.csv", "part,quantity\nrail,2\ncross,5\nhitch,1\n");
  write("U5.csv", "part,quantity\n");
  const Plan plan = two_weldments();
  const auto orders =
      parse_orders("unit_serial,weldment\nU1,BD\nU2,BD\n../U1,BD\nU4,BD\nU5,BD\n", "orders.csv", plan);
  const Release release = release_complete(orders, plan, folder.string());
  ASSERT_EQ(release.released.size(), 2u);
  EXPECT_EQ(release.released[1].serial, "U4");
  ASSERT_EQ(release.waiting.size(), 3u);
  EXPECT_EQ(release.waiting[0].sentence.english(), "1 hitch is missing (none there)");
  EXPECT_EQ(release.waiting[0].released_instead, "U4");
  EXPECT_FALSE(release.waiting[1].has_cart);  // a serial can't lead out of the folder
  EXPECT_EQ(release.waiting[1].released_instead, "U4");
  EXPECT_EQ(release.waiting[2].released_instead, "");
  EXPECT_EQ(waiting_findings(release).size(), 3u);
  EXPECT_EQ(release.orders.size(), 5u);
}

TEST_F(Folder, OfCartsLetsAUnitGoOnceItsLastPartHasCome) {
  write("U1.csv", "part,quantity,arrives\nrail,2,\ncross,5,\nhitch,1,2026-11-30T10:15\n");
  write("U2.csv", "part,quantity\nrail,3\ncross,5\nhitch,1\n");
  write("U3.csv", "part,quantity,arrives\nrail,2,\ncross,5,\nhitch,1,2026-11-30T06:00\n");
  Plan plan = two_weldments();
  const auto orders = parse_orders("unit_serial,weldment\nU1,BD\nU2,BD\nU3,BD\n", "orders.csv", plan);
  try {
    release_complete(orders, plan, folder.string());
    ADD_FAILURE() << "a time of the clock without a clock";
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), (folder / "U1.csv").string() + ":4:9");
  }
  plan.line = Line{};
  plan.line->calendar = Calendar{};
  plan.line->calendar->start = "2026-11-30T07:00";
  plan.line->calendar->shifts.resize(1);
  Shift& shift = plan.line->calendar->shifts[0];
  shift.days = {"mon"};
  shift.from = "08:00";
  shift.to = "12:00";
  shift.breaks = {{"10:00", "10:30"}};
  const Release release = release_complete(orders, plan, folder.string());
  ASSERT_EQ(release.released.size(), 3u);
  EXPECT_TRUE(release.waiting.empty());
  EXPECT_EQ(release.released[0].serial, "U1");
  EXPECT_EQ(release.released[0].available_s, 2 * 3600);  // worked until the break
  EXPECT_EQ(release.released[2].available_s, 0);         // an hour before the start
  const WorkHours hours(*plan.line->calendar);
  const Findings findings = waiting_findings(release, &hours);
  ASSERT_EQ(findings.size(), 2u);
  EXPECT_EQ(findings[0].rule, "line.cart.expected");
  EXPECT_EQ(findings[0].text(),
            "The unit (BD) waits until 2026-11-30T10:15:00: 1 hitch is missing (none there). Then it is back "
            "in its "
            "place of the sequence; until then those behind it pass.");
  EXPECT_EQ(findings[1].rule, "line.cart.extra");
  EXPECT_EQ(findings[1].text(), "The unit (BD) goes with parts too many: 1 rail too many (3 for 2).");
}

TEST_F(Folder, ThatIsNotThereIsRefused) {
  const Plan plan = two_weldments();
  EXPECT_THROW(release_complete({}, plan, (folder / "nowhere").string()), InputError);
}

Seam seam_of(const std::string& id, std::vector<std::string> robots, const std::string& by = "robot") {
  Seam seam;
  seam.id = id;
  seam.robots = std::move(robots);
  seam.by = by;
  return seam;
}

Plan two_robots() {
  Plan plan = two_weldments();
  plan.cell = Cell{};
  plan.cell->robots.resize(2);
  plan.cell->robots[0].id = "R1";
  plan.cell->robots[1].id = "R2";
  plan.weldments[0].seams = {seam_of("S1", {"R1"}),       seam_of("S2", {"R2"}),
                             seam_of("S3", {"R2", "R1"}), seam_of("S4", {"R1", "R2"}),
                             seam_of("S5", {}),           seam_of("S6", {"R2"}, "manual")};
  return plan;
}

TEST(WithoutRobot, OthersTakeItsSeamsAndThoseThatNobodyReachesAreListed) {
  const PlanWithoutRobot without = without_robot(two_robots(), "R2");
  ASSERT_EQ(without.plan.cell->robots.size(), 1u);
  EXPECT_EQ(without.plan.cell->robots[0].id, "R1");
  EXPECT_EQ(without.taken_over, (std::vector<std::string>{"BD/S3"}));
  EXPECT_EQ(without.unreached, (std::vector<std::string>{"BD/S2"}));
  EXPECT_EQ(without.plan.weldments[0].seams[2].robots, (std::vector<std::string>{"R1"}));
  EXPECT_EQ(without.plan.weldments[0].seams[3].robots, (std::vector<std::string>{"R1"}));
  // An empty list would mean every robot: the seam keeps the one that is out.
  EXPECT_EQ(without.plan.weldments[0].seams[1].robots, (std::vector<std::string>{"R2"}));
  ASSERT_EQ(without.findings.size(), 2u);
  EXPECT_EQ(without.findings[0].rule, "cell.robot-out.unreached");
  EXPECT_EQ(without.findings[0].where, "BD/S2");
  EXPECT_EQ(without.findings[1].rule, "cell.robot-out.taken-over");
}

TEST(WithoutRobot, TheFirstRobotsSeamsForAnyoneGoToTheNext) {
  EXPECT_EQ(without_robot(two_robots(), "R1").taken_over, (std::vector<std::string>{"BD/S4", "BD/S5"}));
}

TEST(WithoutRobot, WithNoRobotLeftNothingIsReached) {
  Plan plan = two_robots();
  plan.cell->robots.pop_back();
  const PlanWithoutRobot without = without_robot(plan, "R1");
  EXPECT_TRUE(without.plan.cell->robots.empty());
  EXPECT_EQ(without.unreached, (std::vector<std::string>{"BD/S1", "BD/S5"}));
}

TEST(WithoutRobot, RefusesARobotThatTheCellHasNot) {
  try {
    without_robot(two_robots(), "R7");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_STREQ(error.what(), "--without-robot: found \"R7\", expected one of R1, R2");
  }
  EXPECT_THROW(without_robot(Plan{}, "R1"), InputError);
}

}  // namespace
}  // namespace seamtakt::test
