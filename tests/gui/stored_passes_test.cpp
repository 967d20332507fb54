#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>

#include "demo_store.hpp"
#include "pages/record_browser.hpp"
#include "pages/record_forms.hpp"
#include "pages/records_page.hpp"
#include "pages/store_panel.hpp"
#include "records/keep/nonconformance.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/record_form.hpp"

namespace seamtakt::desk {
namespace {

class StoredPasses : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    qputenv("SOURCE_DATE_EPOCH", "1795737600");  // after the store's newest record
    uri_ = "sqlite:" + folder_.filePath("records.db");
    key_ = folder_.filePath("keys/store.pem");
    fill_demo_store(uri_.toStdString(), nullptr, key_.toStdString());
    window->showPage(DeskPage::records);
    page().store().openStore({uri_, {}});
    page().store().job().wait();
    QApplication::processEvents();
    page().tabs().setCurrentWidget(&browser());
    QApplication::processEvents();
    actions_.emplace(*window);
  }

  void TearDown() override {
    qunsetenv("SOURCE_DATE_EPOCH");
    DeskTest::TearDown();
  }

  RecordsPage& page() { return page_of<RecordsPage>(*window, DeskPage::records); }
  RecordBrowser& browser() { return page().browser(); }
  Ledger ledger() { return Ledger::open(uri_.toStdString(), {}); }

  static QLineEdit* line(QWidget& in, const QString& name) {
    for (QLineEdit* each : in.findChildren<QLineEdit*>())
      if (each->accessibleName() == name) return each;
    ADD_FAILURE() << "no line " << name.toStdString();
    return nullptr;
  }
  static void choose(QWidget& in, const QString& name, const QString& value) {
    for (QComboBox* each : in.findChildren<QComboBox*>())
      if (each->accessibleName() == name) return each->setCurrentIndex(each->findData(value));
    FAIL() << "no choice " << name.toStdString();
  }
  static void fill(QWidget& in, const QString& name, const QString& text) {
    QLineEdit* at = line(in, name);
    at->clear();
    QTest::keyClicks(at, text);
  }
  /// Looks for what stands in the filter's lines; returns how many rows came.
  int look(const std::vector<std::pair<QString, QString>>& filter) {
    for (const char* name : {"Serial number", "Welder", "Lot", "Robot", "Schedule", "From", "To"})
      line(browser(), name)->clear();
    for (const auto& [name, text] : filter) fill(browser(), name, text);
    QTest::keyClick(line(browser(), "Serial number"), Qt::Key_Return);
    browser().job().wait();
    QApplication::processEvents();
    return browser().table().grid().rowCount();
  }
  void choose_row(const std::function<bool(const BrowsedRecord&)>& is_meant) {
    const auto& records = browser().answer()->page.records;
    const auto at = std::find_if(records.begin(), records.end(), is_meant);
    ASSERT_NE(at, records.end());
    browser().table().selectRow(static_cast<int>(at - records.begin()));
  }
  /// Opens a form by its button.
  RecordForm* form(const QString& button) {
    actions_->press(browser(), button);
    auto* found = qobject_cast<RecordForm*>(question());
    EXPECT_NE(found, nullptr) << button.toStdString();
    return found;
  }
  void write(RecordForm& form, const QString& button) {
    actions_->press(form, button);
    browser().forms().job().wait();
    browser().job().wait();
    QApplication::processEvents();
  }
  void sign_with(RecordForm& form, const QString& why) {
    fill(form, "Who", "bea");
    fill(form, "Why", why);
    fill(form, "Store's key (optional)", key_);
  }
  LedgerRow newest() {
    const Ledger store = ledger();
    return store.record(store.count());
  }

  QTemporaryDir folder_;
  QString uri_, key_;
  std::optional<UserActions> actions_;
};

TEST_F(StoredPasses, AreFoundBySerialRobotScheduleWelderAndDay) {
  const int all = look({});
  std::size_t stored = 0;
  ledger().each_record(1, [&](const LedgerRow& row) {
    stored += row.kind == record_kind::pass || row.kind == record_kind::manual;
    return true;
  });
  EXPECT_EQ(static_cast<std::size_t>(all), std::min(stored, BrowseJob::page_rows));
  const auto check = [&](const QString& name, const QString& text, std::string BrowsedRecord::*member) {
    EXPECT_GE(look({{name, text}}), 1) << name.toStdString();
    for (const BrowsedRecord& record : browser().answer()->page.records)
      EXPECT_EQ(record.*member, text.toStdString()) << record.seq;
  };
  check("Serial number", "AE-26-0101", &BrowsedRecord::unit_serial);
  EXPECT_EQ(std::count_if(browser().answer()->page.records.begin(), browser().answer()->page.records.end(),
                          [](const BrowsedRecord& record) { return record.kind == record_kind::pass; }),
            28);
  check("Robot", "R2", &BrowsedRecord::robot);
  check("Schedule", "F6S", &BrowsedRecord::schedule);
  check("Welder", "W07", &BrowsedRecord::welder);
  EXPECT_EQ(browser().answer()->page.records.front().kind, record_kind::manual);
  EXPECT_GE(look({{"From", "2026-03-02"}, {"To", "2026-03-02"}, {"Serial number", "AE-26-0101"}}), 28);
  EXPECT_EQ(look({{"From", "2026-03-03"}}), 0);
  EXPECT_EQ(look({{"Lot", "none such"}}), 0);
  photograph("records-stored-passes");
}

TEST_F(StoredPasses, AFilterThatCannotBeReadIsSaid) {
  QSignalSpy said(&page(), &Page::message);
  look({{"From", "tomorrow"}});
  ASSERT_EQ(said.count(), 1);
  EXPECT_TRUE(said[0][0].toString().contains("--from")) << said[0][0].toString().toStdString();
}

TEST_F(StoredPasses, ComeAPageAtATimeAndNoneTwice) {
  const Ledger store = ledger();
  const BrowsedPage all = browse_records(store, {}, 1, 10'000);
  EXPECT_EQ(all.next, 0u);
  ASSERT_GT(all.records.size(), 50u);
  std::vector<std::uint64_t> paged;
  std::uint64_t from = 1;
  do {
    const BrowsedPage page = browse_records(store, {}, from, 7);
    EXPECT_LE(page.records.size(), 7u);
    for (const BrowsedRecord& record : page.records) paged.push_back(record.seq);
    from = page.next;
  } while (from != 0);
  ASSERT_EQ(paged.size(), all.records.size());
  for (std::size_t i = 0; i < paged.size(); ++i) EXPECT_EQ(paged[i], all.records[i].seq);
}

TEST_F(StoredPasses, ANoteIsWrittenOnceItHasAReason) {
  look({{"Serial number", "AE-26-0101"}});
  const std::uint64_t before = ledger().count(), about = browser().chosen()->seq;
  RecordForm* note = form("Note …");
  ASSERT_NE(note, nullptr);
  sign_with(*note, " ");
  write(*note, "Write the note");
  EXPECT_TRUE(note->refusal().contains("--why")) << note->refusal().toStdString();
  EXPECT_EQ(ledger().count(), before);
  sign_with(*note, "looked at on paper");
  write(*note, "Write the note");
  EXPECT_EQ(ledger().count(), before + 1);
  const LedgerRow row = newest();
  EXPECT_EQ(row.kind, record_kind::note);
  const JsonNode body = body_of(row);
  EXPECT_EQ(body.find("ref")->number, static_cast<double>(about));
  EXPECT_EQ(body_text(body, "why"), "looked at on paper");
}

TEST_F(StoredPasses, AFailedPassGetsItsDispositionOrTheReasonWhyNot) {
  look({{"Serial number", "AE-26-0102"}});
  choose_row([](const BrowsedRecord& record) { return record.verdict == "fail"; });
  const std::uint64_t before = ledger().count();
  ASSERT_EQ(unit_status(ledger(), "AE-26-0102").open_nonconformances(), 1u);
  RecordForm* disposition = form("Disposition …");
  ASSERT_NE(disposition, nullptr);
  sign_with(*disposition, "ground out, within the drawing");
  choose(*disposition, "Decision", "repair");
  write(*disposition, "Write the disposition");
  EXPECT_TRUE(disposition->refusal().contains("--schedule")) << disposition->refusal().toStdString();
  fill(*disposition, "Record of the re-test", "soon");
  write(*disposition, "Write the disposition");
  EXPECT_TRUE(disposition->refusal().contains("--retest")) << disposition->refusal().toStdString();
  EXPECT_EQ(ledger().count(), before);
  fill(*disposition, "Record of the re-test", "");
  choose(*disposition, "Decision", "use-as-is");
  write(*disposition, "Write the disposition");
  EXPECT_EQ(ledger().count(), before + 1);
  EXPECT_EQ(newest().kind, record_kind::disposition);
  EXPECT_EQ(unit_status(ledger(), "AE-26-0102").open_nonconformances(), 0u);
}

TEST_F(StoredPasses, AValueIsCorrectedWithinItsRangeAlone) {
  look({{"Serial number", "AE-26-0101"}});
  const std::uint64_t before = ledger().count(), about = browser().chosen()->seq;
  RecordForm* correction = form("Correct …");
  ASSERT_NE(correction, nullptr);
  sign_with(*correction, "wrong robot in the log");
  choose(*correction, "Member", "results.energy_J");
  fill(*correction, "What it should have been", "-5");
  write(*correction, "Write the correction");
  EXPECT_TRUE(correction->refusal().contains("results.energy_J=-5")) << correction->refusal().toStdString();
  EXPECT_EQ(ledger().count(), before);
  choose(*correction, "Member", "results.robot");
  fill(*correction, "What it should have been", "R9");
  write(*correction, "Write the correction");
  EXPECT_EQ(ledger().count(), before + 1);
  EXPECT_EQ(look({{"Robot", "R9"}}), 1);
  EXPECT_EQ(browser().chosen()->seq, about);
}

TEST_F(StoredPasses, ARecordIsSignedOffWithAPersonsOwnKey) {
  look({{"Serial number", "AE-26-0101"}});
  const std::uint64_t before = ledger().count();
  const QString own = folder_.filePath("keys/bea.pem");
  RecordForm* sign = form("Sign off …");
  ASSERT_NE(sign, nullptr);
  sign_with(*sign, "checked");
  fill(*sign, "Your own key (optional)", own);
  write(*sign, "Sign off");
  EXPECT_EQ(ledger().count(), before + 1);
  EXPECT_EQ(newest().kind, record_kind::signoff);
  EXPECT_TRUE(QFile::exists(own));
  EXPECT_TRUE(verify_store(uri_.toStdString(), {}, {}).trusted);
}

TEST_F(StoredPasses, ACalibrationNeedsItsDates) {
  const std::uint64_t before = ledger().count();
  RecordForm* calibration = form("Calibration …");
  ASSERT_NE(calibration, nullptr);
  sign_with(*calibration, "yearly");
  fill(*calibration, "Instrument", "I1");
  fill(*calibration, "Certificate", "K-2026-17");
  fill(*calibration, "Calibrated on", "2026-11-25");
  fill(*calibration, "Due", "2026-01-01");
  write(*calibration, "Write the calibration");
  EXPECT_TRUE(calibration->refusal().contains("--due")) << calibration->refusal().toStdString();
  EXPECT_EQ(ledger().count(), before);
  fill(*calibration, "Due", "2027-11-25");
  write(*calibration, "Write the calibration");
  EXPECT_EQ(ledger().count(), before + 1);
  EXPECT_EQ(body_text(body_of(newest()), "results.due"), "2027-11-25");
}

TEST_F(StoredPasses, AReportIsAskedOfWhatWasLookedForOrChosen) {
  QSignalSpy asked(&browser(), &RecordBrowser::reportAsked);
  // The window would ask for a file.
  QObject::disconnect(&browser(), &RecordBrowser::reportAsked, &page(), nullptr);
  look({{"From", "2026-03-02"}, {"To", "2026-03-02"}});
  const BrowsedRecord record = *browser().chosen();
  for (const char* button : {"Record of the shift …", "Record of the seam …", "Certificate …"})
    actions_->press(browser(), button);
  ASSERT_EQ(asked.count(), 3);
  const auto question_of = [&](int i) { return asked[i][0].value<StoreReportQuestion>(); };
  EXPECT_EQ(question_of(0).kind, StoreReportQuestion::Kind::period);
  EXPECT_EQ(question_of(0).from, "2026-03-02");
  EXPECT_EQ(question_of(0).seam, "");
  EXPECT_EQ(question_of(1).seam.toStdString(), record.weldment + "/" + record.seam);
  EXPECT_EQ(question_of(2).kind, StoreReportQuestion::Kind::certificate);
  EXPECT_EQ(question_of(2).unit.toStdString(), record.unit_serial);
}

}  // namespace
}  // namespace seamtakt::desk
