#include <gtest/gtest.h>

#include <QFile>
#include <QLabel>
#include <QRegularExpression>
#include <set>

#include "app/theme_choice.hpp"
#include "hands.hpp"
#include "models/grid_model.hpp"
#include "plan/evaluation_columns.hpp"

namespace seamtakt::desk {

extern const char* const core_texts[];
extern const int core_text_count;

namespace {

class German : public ::testing::Test {
 protected:
  void SetUp() override { choose_language("de"); }
  void TearDown() override { choose_language("en"); }
};

template <class Object>
void add_labels(std::set<std::string>& labels) {
  for (const Field<Object>& field : fields_of<Object>().fields) labels.insert(field.label);
}

TEST_F(German, IsSpokenByTheChainTheMenusAndTheCoresTables) {
  MainWindow window;
  EXPECT_EQ(window.page(0).title(), "Nähte");
  EXPECT_EQ(core_label("travel speed"), "Schweißgeschwindigkeit");
  EXPECT_EQ(core_label("Heat input"), "Wärmeeinbringung");
  EXPECT_EQ(severity_word(Severity::fail), "Fehler");
}

TEST_F(German, KnowsEveryLabelOfFieldsAndColumns) {
  std::set<std::string> known(core_texts, core_texts + core_text_count), labels;
  add_labels<Seam>(labels);
  add_labels<Schedule>(labels);
  add_labels<ScheduleLimits>(labels);
  add_labels<Weldment>(labels);
  add_labels<Robot>(labels);
  add_labels<Stage>(labels);
  add_labels<Wire>(labels);
  for (const auto& column : pass_columns()) labels.insert(column.label);
  for (const auto& column : seam_columns()) labels.insert(column.label);
  for (const std::string& label : labels)
    EXPECT_TRUE(known.count(label)) << label << ": add it to gui/models/core_texts.cpp";
}

TEST_F(German, HasNoTextLeftUntranslated) {
  QFile file(QStringLiteral(SEAMTAKT_SOURCE_DIR "/gui/translations/desk_de.ts"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  EXPECT_EQ(text.count("type=\"unfinished\""), 0);
  EXPECT_GT(text.count("<message>"), 500);
}

/// A placeholder lost in translation would show "%1" or drop a figure.
TEST_F(German, KeepsThePlaceholdersOfEachText) {
  QFile file(QStringLiteral(SEAMTAKT_SOURCE_DIR "/gui/translations/desk_de.ts"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  static const QRegularExpression message("<source>(.*?)</source>\\s*<translation>(.*?)</translation>",
                                          QRegularExpression::DotMatchesEverythingOption);
  int compared = 0;
  for (auto match = message.globalMatch(text); match.hasNext(); ++compared) {
    const auto pair = match.next();
    for (const QString& mark : {QStringLiteral("%1"), QStringLiteral("%2"), QStringLiteral("%3")})
      EXPECT_EQ(pair.captured(1).contains(mark), pair.captured(2).contains(mark))
          << pair.captured(1).toStdString();
  }
  EXPECT_GT(compared, 500);
}

}  // namespace
}  // namespace seamtakt::desk
