#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "pages/records_page.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

QString demo_file_path(const char* name) {
  return QString::fromStdString(source_path(std::string("/reference/demo/") + name));
}

class ImportTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    window->showPage(DeskPage::records);
    QApplication::processEvents();
  }
  RecordsPage& page() { return page_of<RecordsPage>(*window, DeskPage::records); }

  /// Opens the form and fills in its lines by their names.
  QDialog* form(const std::vector<std::pair<QString, QString>>& lines) {
    actions().press(page(), "Import with …");
    QDialog* dialog = question();
    if (!dialog) return nullptr;
    QPlainTextEdit* logs = dialog->findChild<QPlainTextEdit*>();
    logs->clear();
    QTest::keyClicks(logs, demo_file_path("job-log.csv.gz"));
    for (const auto& [name, text] : lines)
      for (QLineEdit* line : dialog->findChildren<QLineEdit*>())
        if (line->accessibleName() == name) {
          line->clear();
          QTest::keyClicks(line, text);
        }
    return dialog;
  }
  void import(QDialog* dialog) {
    actions().press(*dialog, "Import");
    page().job().wait();
    QApplication::processEvents();
  }
  UserActions& actions() {
    if (!actions_) actions_.emplace(*window);
    return *actions_;
  }
  std::optional<UserActions> actions_;
};

TEST_F(ImportTest, ALogWithJobNumbersIsReadWithItsColumnsFileAndTheUnitsTimes) {
  QDialog* dialog = form({{"Columns file (optional)", demo_file_path("job-log.columns.json")},
                          {"Units by time (optional)", demo_file_path("unit-times.csv")}});
  ASSERT_NE(dialog, nullptr);
  import(dialog);
  ASSERT_TRUE(page().logs());
  const AuditResult& audit = page().logs()->audit;
  ASSERT_EQ(audit.passes.size(), 7u);
  EXPECT_EQ(audit.passes[0].place(), "AE-26-0101/BD/S05/pass 1");
  EXPECT_EQ(audit.passes[4].place(), "AE-26-0101/BD/S09/pass 3");
  EXPECT_EQ(audit.passes[5].place(), "AE-26-0102/TT/S01/pass 1");
  for (const PassRecord& record : audit.passes) {
    std::size_t begin = 0, end = 0;
    ASSERT_NE(trace_of(*page().logs(), record, begin, end), nullptr) << record.place();
    EXPECT_EQ(end - begin, record.samples) << record.place();
  }
  EXPECT_EQ(page().units().grid().rowCount(), 2);
  int notes = 0;
  for (const Finding& finding : audit.findings) {
    if (finding.rule != "record.columns.ignored") continue;
    ++notes;
    EXPECT_NE(finding.text().find(": Shift."), std::string::npos) << finding.text();
  }
  EXPECT_EQ(notes, 1);
}

TEST_F(ImportTest, TheFormHasWhatWasGivenLastTime) {
  import(form({{ "Columns file (optional)", demo_file_path("job-log.columns.json") }}));
  actions().press(page(), "Import with …");
  QDialog* again = question();
  ASSERT_NE(again, nullptr);
  EXPECT_EQ(again->findChild<QPlainTextEdit*>()->toPlainText(), demo_file_path("job-log.csv.gz"));
  QStringList texts;
  for (QLineEdit* line : again->findChildren<QLineEdit*>()) texts << line->text();
  EXPECT_TRUE(texts.contains(demo_file_path("job-log.columns.json"))) << texts.join(' ').toStdString();
  again->reject();
}

TEST_F(ImportTest, AFileThatCannotBeUsedIsNamedAndNothingIsTakenIn) {
  QSignalSpy said(&page(), &Page::message);
  import(form({{"Columns file (optional)", demo_file_path("job-log.columns.json")},
               { "Units by time (optional)",
                 demo_file_path("points.csv") }}));
  EXPECT_FALSE(page().logs());
  ASSERT_EQ(said.count(), 1);
  const QString reason = said[0][0].toString();
  EXPECT_TRUE(reason.contains("points.csv") && reason.contains("unit_serial")) << reason.toStdString();
}

}  // namespace
}  // namespace seamtakt::desk
