#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>

#include "demo_store.hpp"

/// The program itself, without a display.
namespace seamtakt::desk {
namespace {

struct Ran {
  int code;
  QString output, errors;
};

Ran run_desk(const QStringList& arguments) {
  QProcess process;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  environment.remove("QT_QPA_PLATFORM");
  environment.remove("DISPLAY");
  environment.remove("WAYLAND_DISPLAY");
  process.setProcessEnvironment(environment);
  process.start(SEAMTAKT_DESK_PROGRAM, arguments);
  if (!process.waitForFinished(60000)) return {-1, {}, process.errorString()};
  return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput()),
          QString::fromUtf8(process.readAllStandardError())};
}

QString text_of_pdf(const QString& pdf) {
  QProcess reader;
  reader.start("pdftotext", {"-layout", pdf, "-"});
  EXPECT_TRUE(reader.waitForFinished(20000)) << "pdftotext: install poppler-utils";
  return QString::fromUtf8(reader.readAllStandardOutput());
}

TEST(DeskProgram, ExportsAReportThatCanBeReadAsText) {
  QTemporaryDir folder;
  const QString pdf = folder.filePath("report.pdf");
  const Ran ran = run_desk({"--export", pdf, demo_path()});
  ASSERT_EQ(ran.code, 0) << ran.errors.toStdString();
  const QString text = text_of_pdf(pdf);
  for (const char* part : {"Airport ground equipment", "F5S", "S01", "ISO 14731", "kJ/mm"})
    EXPECT_TRUE(text.contains(part)) << part;
}

TEST(DeskProgram, ExportsAUnitsRecordFromAStore) {
  QTemporaryDir folder;
  const QString uri = make_demo_store(folder.filePath("records.db")), pdf = folder.filePath("unit.pdf");
  const Ran ran = run_desk({"--export", pdf, "--store", uri, "--unit", "AE-26-0102"});
  ASSERT_EQ(ran.code, 0) << ran.errors.toStdString();
  const QString text = text_of_pdf(pdf);
  for (const char* part : {"Weld record of unit AE-26-0102", "OK but unanchored", "S01", "Heat input", "TT"})
    EXPECT_TRUE(text.contains(part)) << part;
  EXPECT_EQ(run_desk({"--export", pdf, "--store", uri, "--unit", "AE-0"}).code, 2);
  const QString absent = "sqlite:" + folder.filePath("absent.db");
  EXPECT_EQ(run_desk({"--export", pdf, "--store", absent, "--unit", "AE-26-0102"}).code, 2);
  EXPECT_FALSE(QFile::exists(folder.filePath("absent.db")));
}

TEST(DeskProgram, TakesAPictureOfEachPageInTheSizeAskedFor) {
  QTemporaryDir folder;
  const Ran ran = run_desk({"--pictures", folder.path(), demo_path(), "--size", "1280x800", "--theme", "dark",
                            "--language", "de", "--units", "us", "--log",
                            QStringLiteral(SEAMTAKT_SOURCE_DIR "/reference/demo/arc-log.csv.gz")});
  ASSERT_EQ(ran.code, 0) << ran.errors.toStdString();
  const QStringList files = QDir(folder.path()).entryList({"*.png"});
  EXPECT_EQ(files.size(), 9);
  for (const QString& file : files) {
    const QImage picture(folder.filePath(file));
    EXPECT_EQ(picture.size(), QSize(1280, 800)) << file.toStdString();
    EXPECT_LT(picture.pixelColor(2, 400).lightness(), 80) << file.toStdString();
  }
}

TEST(DeskProgram, SaysInOneLineWhatItCannotUse) {
  QTemporaryDir folder;
  const std::vector<QStringList> bad = {
      {"--export", "report.txt", demo_path()},
      {"--size", "big"},
      {"--colour"},
      {"--pictures", folder.path()},
      {"--export", folder.filePath("a.pdf"), folder.filePath("absent.weldplan.json")},
      {"--theme"},
      {"--unit", "U1"},
      {"--store", "sqlite:x.db", "--unit", "U1"},
      {"--export", "a.pdf", "--store", "sqlite:x.db", "--unit", "U1", demo_path()}};
  for (const QStringList& arguments : bad) {
    const Ran ran = run_desk(arguments);
    EXPECT_EQ(ran.code, 2) << arguments.join(' ').toStdString();
    EXPECT_EQ(ran.errors.count('\n'), 1) << ran.errors.toStdString();
    EXPECT_TRUE(ran.errors.contains("expected")) << ran.errors.toStdString();
    EXPECT_TRUE(ran.output.isEmpty());
  }
}

TEST(DeskProgram, HelpNamesEveryOption) {
  const Ran ran = run_desk({"--help"});
  EXPECT_EQ(ran.code, 0);
  for (const char* option :
       {"--export", "--pictures", "--size", "--theme", "--language", "--units", "--log", "--store", "--unit"})
    EXPECT_TRUE(ran.output.contains(option)) << option;
}

}  // namespace
}  // namespace seamtakt::desk
