#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QStandardPaths>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <random>

#include "base/error.hpp"
#include "jobs/trace.hpp"
#include "models/pictures/contour.hpp"
#include "models/tables/finding_model.hpp"
#include "models/tables/record_rows.hpp"
#include "models/tables/schedule_difference.hpp"
#include "models/tables/schedule_model.hpp"
#include "models/tables/seam_model.hpp"
#include "models/tables/step.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/formula_layout.hpp"
#include "models/words/unit_view.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {
namespace {

class ModelsTest : public ::testing::Test {
 protected:
  void SetUp() override {
    document.open(demo_path());
    results = results_of(document.plan());
  }
  void TearDown() override { UnitView::shared().setSystem(UnitSystem::si); }
  Document document;
  ResultsPtr results;
};

using Mode = QAbstractItemModelTester::FailureReportingMode;

/// The tester reports through qFatal: a model that breaks the rules ends the test program.
TEST_F(ModelsTest, EveryModelKeepsTheRulesOfModelsWhilePlansChange) {
  SeamModel seams(document);
  ScheduleModel schedules(document);
  FindingModel findings;
  ValueModel difference(difference_columns()), units(unit_columns()), records(record_columns());
  QAbstractItemModelTester testers[] = {{&seams, Mode::Fatal},    {&schedules, Mode::Fatal},
                                        {&findings, Mode::Fatal}, {&difference, Mode::Fatal},
                                        {&units, Mode::Fatal},    {&records, Mode::Fatal}};
  static_cast<void>(testers);
  seams.setResults(results);
  schedules.setResults(results);
  findings.setFindings(*document.plan(), results->findings);
  difference.setRows(difference_rows(document.plan()->schedules[0], document.plan()->schedules[1]));
  EXPECT_GT(difference.rowCount(), 3);
  const int rows = seams.rowCount();
  ASSERT_FALSE(document.edit("remove", {}, [](Plan& plan) { plan.weldments[0].seams.pop_back(); }));
  EXPECT_EQ(seams.rowCount(), rows - 1);
  document.undo().undo();
  EXPECT_EQ(seams.rowCount(), rows);
  seams.setWeldment(0);
  seams.setWeldment(-1);
  findings.setFindings(*document.plan(), {});
  PassRecord record;
  record.verdict = Verdict::fail;
  records.setRows({record_row(record)});
  EXPECT_EQ(records.rowCount(), 1);
}

TEST_F(ModelsTest, ASeamsRowShowsWhatTheEvaluationSays) {
  SeamModel seams(document);
  seams.setResults(results);
  const int leg = seams.columnNamed("seam.leg_mm"), heat = seams.columnNamed("pass.heat_input_kJ_mm");
  int legs = 0, heats = 0;
  for (int row = 0; row < seams.rowCount(); ++row) {
    const SeamEvaluation* evaluation = seams.evaluation(row);
    ASSERT_NE(evaluation, nullptr);
    EXPECT_EQ(evaluation->seam, seams.seam(row).id);
    if (evaluation->leg_mm) {
      ++legs;
      EXPECT_EQ(seams.index(row, leg).data(SortRole).toDouble(), *evaluation->leg_mm);
    }
    for (const PassEvaluation& pass : results->evaluation.passes) {
      if (pass.weldment != evaluation->weldment || pass.seam != evaluation->seam || pass.pass != 1) continue;
      ++heats;
      EXPECT_EQ(seams.index(row, heat).data(SortRole).toDouble(), pass.heat_input_kJ_mm);
    }
  }
  EXPECT_GT(legs, 0);
  EXPECT_EQ(heats, seams.rowCount());
}

TEST_F(ModelsTest, PreheatThatNoShopNeedsIsShownAsNoneAndSortedByItsNumber) {
  SeamModel seams(document);
  seams.setResults(results);
  const int column = seams.columnNamed("pass.preheat_needed_C");
  ASSERT_GE(column, 0);
  int none = 0, degrees = 0, unknown = 0;
  for (int row = 0; row < seams.rowCount(); ++row) {
    const QModelIndex at = seams.index(row, column);
    const QVariant number = at.data(SortRole);
    const QString shown = at.data().toString();
    if (number.typeId() != QMetaType::Double) {
      ++unknown;
      EXPECT_EQ(shown, "–");
    } else if (number.toDouble() <= 20) {
      ++none;
      EXPECT_EQ(shown, "none");
      EXPECT_GE(number.toDouble(), 5);
    } else {
      ++degrees;
      EXPECT_NE(shown, "none");
    }
  }
  // A table of derived values says the same word.
  const PassEvaluation& pass = results->evaluation.passes.back();
  ASSERT_LE(*pass.preheat_needed_C, 20);
  ValueModel table(value_columns(pass_columns(), false));
  table.setRows({value_row(pass_columns(), false, pass, "BL/S52/pass 1")});
  const QModelIndex cell = table.index(0, table.columnNamed("preheat_needed_C"));
  EXPECT_EQ(cell.data().toString(), "none");
  EXPECT_EQ(cell.data(SortRole).toDouble(), *pass.preheat_needed_C);
  EXPECT_GT(none, 100);
  EXPECT_GT(degrees, 3);
  EXPECT_GT(unknown, 3);  // heat inputs below method B's
}

TEST_F(ModelsTest, TypedQuantitiesTakeAnyUnitThatFits) {
  make_drafts(document);
  ScheduleModel schedules(document);
  const QModelIndex travel = schedules.index(0, schedules.columnNamed("travel_speed_mm_s"));
  struct Case {
    const char* typed;
    double mm_s;
  };
  for (const Case& each : {Case{"45 cm/min", 7.5}, Case{"18 in/min", 7.62}, Case{"0.6m/min", 10},
                           Case{"12", 12}, Case{"12,5", 12.5}}) {
    EXPECT_TRUE(schedules.setData(travel, each.typed)) << each.typed;
    EXPECT_DOUBLE_EQ(document.plan()->schedules[0].travel_speed_mm_s, each.mm_s) << each.typed;
  }
  QString reason;
  QObject::connect(&schedules, &GridModel::refused,
                   [&](const QModelIndex&, const QString& why) { reason = why; });
  EXPECT_FALSE(schedules.setData(travel, "45 kg"));
  EXPECT_TRUE(reason.contains("mm/s")) << reason.toStdString();
}

TEST_F(ModelsTest, TheUsViewShowsInchesAndLeavesThePlanAsItIs) {
  SeamModel seams(document);
  constexpr int row = 4;  // a seam whose leg is drawn
  const QModelIndex leg = seams.index(row, seams.columnNamed("leg_mm"));
  ASSERT_TRUE(document.plan()->weldments[0].seams[row].leg_mm);
  const double leg_mm = *document.plan()->weldments[0].seams[row].leg_mm;
  UnitView::shared().setSystem(UnitSystem::us);
  EXPECT_NEAR(leg.data().toString().toDouble(), leg_mm / 25.4, 1e-4);
  EXPECT_TRUE(seams.headingText(leg.column()).endsWith(", in"));
  EXPECT_TRUE(seams.setData(leg, leg.data().toString()));
  EXPECT_EQ(*document.plan()->weldments[0].seams[row].leg_mm, leg_mm);
  EXPECT_TRUE(seams.setData(leg, "0.25"));
  EXPECT_DOUBLE_EQ(*document.plan()->weldments[0].seams[row].leg_mm, 6.35);
}

TEST_F(ModelsTest, LimitsAndListsAreTypedInTheViewsUnitToo) {
  UnitView& units = UnitView::shared();
  units.setSystem(UnitSystem::us);
  const FieldInfo& heat = *field_named<ScheduleLimits>("heat_input_kJ_mm");
  EXPECT_EQ(units.fieldTyped("25.4 .. 1 kJ/mm", heat), "1 .. 1");
  const FieldInfo& thickness = *field_named<Seam>("thickness_mm");
  EXPECT_EQ(units.fieldTyped("0.5, 10 mm", thickness), "12.7, 10");
  EXPECT_EQ(units.fieldShown("12.7, 10", thickness).toStdString(), "0.5; 0.3937");
  EXPECT_THROW(units.fieldTyped("0.5, ten", thickness), InputError);
  const FieldInfo& path = *field_named<Seam>("path_mm");
  EXPECT_EQ(units.fieldTyped("0 0 1; 10 0 1", path), "0 0 25.4; 254 0 25.4");
}

TEST(Step, MovesTheSecondSignificantPlace) {
  EXPECT_EQ(stepped_text("8.6", 1, 0), "8.7");
  EXPECT_EQ(stepped_text("245", 1, 0), "250");
  EXPECT_EQ(stepped_text("245", -1, 0), "240");
  EXPECT_EQ(stepped_text("7.5 mm/s", -1, 0), "7.4 mm/s");
  EXPECT_EQ(stepped_text("0.1", -5, 0), "0.05");
  EXPECT_EQ(stepped_text("0.2", -90, 0), "0");
  EXPECT_FALSE(stepped_text("fast", 1, 0));
}

TEST(Formula, StacksQuotientsAndLosesNothing) {
  const QString html = stacked_formula("E = U*I/(1000*v)");
  EXPECT_TRUE(html.contains("border-bottom")) << html.toStdString();
  EXPECT_FALSE(html.contains("/(")) << html.toStdString();
  const QString broken =
      stacked_formula("t = (4300 - 4.3*T0)*1e5*Q^2/d^2*(1/(500-T0)^2 - 1/(800-T0)^2)*F2", 30);
  EXPECT_EQ(
      stacked_formula("t = (4300 - 4.3*T0)*1e5*Q^2/d^2*(1/(500-T0)^2 - 1/(800-T0)^2)*F2", 90).count("&nbsp;"),
      0);
  EXPECT_EQ(broken.count("&nbsp;&nbsp;&nbsp;"), 2) << broken.toStdString();
  EXPECT_TRUE(broken.contains("white-space:nowrap")) << "nothing breaks within a bracket";
  const QString power = stacked_formula("t = 1/(500 - v)^2");
  EXPECT_TRUE(power.contains(")<sup>2")) << "the square is of the whole bracket: " << power.toStdString();
  for (const char* odd :
       {"", ")", "a/", "((", "x^^2", "T = sum_i(exp(-v*(x + R_i)/(2*a))/R_i)", "a <b> & c", "-", "^"})
    EXPECT_FALSE(stacked_formula(odd).contains("<b>")) << odd;
}

TEST_F(ModelsTest, ExplanationsNameFormulaSourceAndRange) {
  const QString html = explanation_html(*document.plan(), "BD/S01/pass 1", "heat_input_kJ_mm");
  for (const char* part : {"en-1011-1", "Source", "Holds", "Accuracy", "Standard uncertainty",
                           "current by the melting law", "Degrees of freedom"})
    EXPECT_TRUE(html.contains(part)) << part;
  EXPECT_FALSE(explanation_html(*document.plan(), "BD/NOPE", "leg_mm").isEmpty());
  EXPECT_TRUE(explanation_tip(*document.plan(), "BD/NOPE", "leg_mm").isEmpty());
}

TEST(Trace, ExtremesOfAnyStretchAreThoseOfItsSamples) {
  std::mt19937 random(7);
  std::normal_distribution<float> noise(250, 20);
  TraceChannel channel;
  std::vector<float> all;
  for (int i = 0; i < 70000; ++i) {
    all.push_back(noise(random));
    channel.add(all.back());
  }
  channel.build();
  for (int i = 0; i < 400; ++i) {
    std::size_t begin = random() % all.size(), end = random() % (all.size() + 1);
    if (begin > end) std::swap(begin, end);
    if (begin == end) continue;
    const auto [low, high] =
        std::minmax_element(all.begin() + static_cast<long>(begin), all.begin() + static_cast<long>(end));
    const Extremes found = channel.extremes(begin, end);
    ASSERT_EQ(found.low, *low);
    ASSERT_EQ(found.high, *high);
  }
}

TEST(Contour, OfAConeIsACircle) {
  std::vector<double> axis;
  for (int i = 0; i <= 200; ++i) axis.push_back(-10 + 0.1 * i);
  std::vector<double> values;
  for (double y : axis)
    for (double x : axis) values.push_back(std::hypot(x, y));
  const auto pieces = contour(axis, axis, values.data(), 5);
  double length = 0;
  for (const ContourPiece& piece : pieces) {
    length += std::hypot(piece.x2 - piece.x1, piece.y2 - piece.y1);
    EXPECT_NEAR(std::hypot(piece.x1, piece.y1), 5, 0.01);
  }
  EXPECT_NEAR(length, 2 * M_PI * 5, 0.05);
  // Joined, it is one line that ends where it began.
  const ContourLines lines = joined_contour(pieces);
  EXPECT_EQ(std::count_if(lines.x.begin(), lines.x.end(), [](double x) { return std::isnan(x); }), 1);
  EXPECT_NEAR(lines.x.front(), lines.x[lines.x.size() - 2], 1e-12);
  EXPECT_TRUE(contour(axis, axis, values.data(), 500).empty());
}

}  // namespace
}  // namespace seamtakt::desk
