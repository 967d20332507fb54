// Colours that say something are seen on their ground, by every eye; names in a row stand apart.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "models/pictures/contrast.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/formula_layout.hpp"
#include "plots/label_row.hpp"
#include "plots/move_look.hpp"

namespace seamtakt::desk {
namespace {

class Colours : public testing::TestWithParam<bool> {
 protected:
  void SetUp() override { Palette::setDark(GetParam()); }
  void TearDown() override { Palette::setDark(false); }
  const Palette& palette() const { return Palette::current(); }
};

using Triple = std::array<double, 3>;

Triple linear(const QColor& color) {
  Triple linear{};
  const double channels[] = {color.redF(), color.greenF(), color.blueF()};
  for (std::size_t i = 0; i < 3; ++i)
    linear[i] = channels[i] <= 0.04045 ? channels[i] / 12.92 : std::pow((channels[i] + 0.055) / 1.055, 2.4);
  return linear;
}

/// As it is seen without green cones. Machado, Oliveira, Fernandes 2009, severity 1 (recalled).
Triple without_green(const Triple& rgb) {
  constexpr double matrix[3][3] = {
      {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}};
  Triple seen{};
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t k = 0; k < 3; ++k) seen[i] += matrix[i][k] * rgb[k];
    seen[i] = std::clamp(seen[i], 0.0, 1.0);
  }
  return seen;
}

/// CIELAB, from linear sRGB, D65.
Triple lab(const Triple& rgb) {
  const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : 841.0 / 108 * t + 4.0 / 29; };
  const double x = f((0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / 0.95047);
  const double y = f(0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2]);
  const double z = f((0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / 1.08883);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double apart(const QColor& one, const QColor& other) {
  const Triple a = lab(without_green(linear(one))), b = lab(without_green(linear(other)));
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

TEST(Contrast, IsThatOfThePublishedPairs) {
  EXPECT_NEAR(contrast_of(Qt::black, Qt::white), 21, 1e-9);
  EXPECT_NEAR(contrast_of(QColor(0x77, 0x77, 0x77), Qt::white), 4.48,
              0.005);  // the usual example of too little
  EXPECT_EQ(contrast_of(Qt::red, Qt::red), 1);
}

TEST_P(Colours, MarksAreSeenAndToldApartByEveryEye) {
  const QColor marks[] = {palette().ok, palette().note, palette().warn, palette().fail};
  for (const QColor& mark : marks)
    EXPECT_GE(contrast_of(mark, palette().paper), 5.4) << mark.name().toStdString();
  for (std::size_t i = 0; i < std::size(marks); ++i)
    for (std::size_t k = i + 1; k < std::size(marks); ++k)
      EXPECT_GE(apart(marks[i], marks[k]), 15)
          << marks[i].name().toStdString() << " " << marks[k].name().toStdString();
}

TEST_P(Colours, EveryBarIsSeenOnPaperAndTheNameOnItIsRead) {
  for (const MoveKind kind : legend_kinds())
    EXPECT_GE(contrast_of(move_color(kind), palette().paper), 3) << static_cast<int>(kind);
  EXPECT_GE(contrast_of(text_on(move_color(MoveKind::arc)), move_color(MoveKind::arc)), 4.5);
}

TEST_P(Colours, AFractionsBarHasTheInksColour) {
  EXPECT_TRUE(stacked_formula("E = U*I/(1000*v)").contains("border-bottom-color:" + palette().ink.name()));
}

INSTANTIATE_TEST_SUITE_P(InBothThemes, Colours, testing::Bool(),
                         [](const auto& info) { return info.param ? "Dark" : "Light"; });

TEST(LabelRow, NoLabelIsOverAnother) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> place(0, 800);
  for (int row = 0; row < 500; ++row) {
    std::vector<RowLabel> labels;
    for (int i = 0; i < 3; ++i)
      labels.push_back({place(random), 60 + place(random) / 10, place(random) < 400});
    if (row % 3 == 0) labels[1].at_px = labels[2].at_px = labels[0].at_px;  // all at one place
    const std::vector<double> places = placed_labels(labels, 800);
    ASSERT_EQ(places.size(), labels.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      EXPECT_GE(places[i], 0);
      EXPECT_LE(places[i] + labels[i].wide_px, 800);
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_TRUE(places[i] + labels[i].wide_px <= places[k] || places[k] + labels[k].wide_px <= places[i])
            << "row " << row;
    }
  }
}

TEST(LabelRow, ALabelStandsOnTheSideItWantsWhereThereIsRoom) {
  EXPECT_EQ(placed_labels({{100, 50, false}}, 400), std::vector<double>{104});
  EXPECT_EQ(placed_labels({{100, 50, true}}, 400), std::vector<double>{46});
}

}  // namespace
}  // namespace seamtakt::desk
