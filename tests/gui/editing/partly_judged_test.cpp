// "ok" is said of what was judged whole: a pass whose size, heat or position nothing judges has a mark of its
// own.
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "models/pictures/palette.hpp"
#include "models/tables/schedule_model.hpp"
#include "models/tables/seam_model.hpp"
#include "models/words/state_text.hpp"
#include "user_actions.hpp"
#include "widgets/chain_strip.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {
namespace {

class PartlyJudgedTest : public ::testing::Test {
 protected:
  void SetUp() override {
    document.open(demo_path());
    auto all = std::make_shared<Results>(*results_of(document.plan()));
    all->findings.clear();
    constexpr auto whole = static_cast<std::uint8_t>(JudgedBy::size) |
                           static_cast<std::uint8_t>(JudgedBy::heat) |
                           static_cast<std::uint8_t>(JudgedBy::position);
    for (PassEvaluation& pass : all->evaluation.passes) pass.judged = whole;
    results = all;
  }
  PassEvaluation& first() { return results->evaluation.passes.front(); }

  Document document;
  std::shared_ptr<Results> results;
};

TEST_F(PartlyJudgedTest, ASeamWithAPassThatIsPartlyJudgedSaysSoInPlaceOfOk) {
  SeamModel seams(document);
  seams.setWeldment(-1);
  seams.setResults(results);
  for (int row = 0; row < seams.rowCount(); ++row) ASSERT_EQ(seams.index(row, 0).data().toString(), "ok");
  for (const JudgedBy missing : {JudgedBy::size, JudgedBy::heat, JudgedBy::position}) {
    const std::uint8_t before = first().judged;
    first().judged = static_cast<std::uint8_t>(before & ~static_cast<unsigned>(missing));
    seams.setResults(results);
    EXPECT_EQ(seams.index(0, 0).data().toString(), "partly judged");
    EXPECT_TRUE(seams.index(0, 0).data(PartlyJudgedRole).toBool());
    EXPECT_FALSE(seams.index(0, 0).data(SeverityRole).isValid());
    EXPECT_EQ(seams.index(1, 0).data().toString(), "ok");
    // Sorted behind what is in order and before any finding.
    EXPECT_GT(seams.index(0, 0).data(SortRole).toDouble(), seams.index(1, 0).data(SortRole).toDouble());
    EXPECT_LT(seams.index(0, 0).data(SortRole).toDouble(), state_rank({Severity::note, {}}));
    first().judged = before;
  }
}

TEST_F(PartlyJudgedTest, AFindingGoesBeforeIt) {
  first().judged = 0;
  results->findings.push_back({"fillet.leg.undersize",
                               Severity::fail,
                               first().weldment + "/" + first().seam,
                               {},
                               {},
                               "",
                               Sentence::verbatim("too small"),
                               "plan limit"});
  SeamModel seams(document);
  seams.setWeldment(-1);
  seams.setResults(results);
  EXPECT_EQ(seams.index(0, 0).data().toString(), "fail");
}

TEST_F(PartlyJudgedTest, AScheduleIsWhereOneOfItsPassesIs) {
  ScheduleModel schedules(document);
  first().judged = static_cast<std::uint8_t>(JudgedBy::size);
  schedules.setResults(results);
  for (int row = 0; row < schedules.rowCount(); ++row) {
    const bool is_first = document.plan()->schedules[static_cast<std::size_t>(row)].id == first().schedule;
    EXPECT_EQ(schedules.index(row, 0).data().toString(), is_first ? "partly judged" : "ok");
  }
}

TEST_F(PartlyJudgedTest, ALinkOfTheChainSaysSoUnlessAFindingIsWorse) {
  ChainLink link(QStringLiteral("Heat"), QStringLiteral("Ctrl+3"), nullptr);
  link.setFigure(QStringLiteral("1.2"), QString(), std::nullopt, QString(), HowJudged::partly);
  EXPECT_TRUE(link.isPartlyJudged());
  EXPECT_TRUE(link.toolTip().contains(QStringLiteral("partly judged")));
  link.setFigure(QStringLiteral("1.2"), QString(), Severity::warn, QString(), HowJudged::partly);
  EXPECT_FALSE(link.isPartlyJudged());
  link.setFigure(QStringLiteral("1.2"), QString(), std::nullopt);
  EXPECT_FALSE(link.isPartlyJudged());
  EXPECT_TRUE(link.toolTip().contains(QStringLiteral("ok")));
  link.setFigure(QStringLiteral("0"), QString(), std::nullopt, QString(), HowJudged::not_at_all);
  EXPECT_FALSE(link.isPartlyJudged());
  EXPECT_TRUE(link.toolTip().contains(QStringLiteral("not judged")));
  EXPECT_FALSE(link.toolTip().contains(QStringLiteral("ok")));
}

TEST_F(PartlyJudgedTest, ItsMarkHasNothingOfTheGreenDot) {
  const auto drawn = [](bool is_partly) {
    QImage image(26, 26, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    if (is_partly)
      draw_partly_mark(painter, image.rect());
    else
      draw_mark(painter, image.rect(), std::nullopt);
    return image;
  };
  const QColor ok = Palette::current().ok;
  EXPECT_EQ(drawn(false).pixelColor(13, 13), ok);
  const QImage partly = drawn(true);
  for (int y = 0; y < partly.height(); ++y)
    for (int x = 0; x < partly.width(); ++x) ASSERT_NE(partly.pixelColor(x, y), ok);
  EXPECT_NE(partly, drawn(false));
  EXPECT_EQ(partly.pixelColor(8, 13), Palette::current().quiet);
  EXPECT_EQ(partly.pixelColor(17, 13), QColor(Qt::white));
}

}  // namespace
}  // namespace seamtakt::desk
