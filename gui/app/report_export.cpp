#include "app/report_export.hpp"

#include <QBuffer>
#include <QPdfWriter>
#include <QPrinter>

#include "app/report_pages.hpp"
#include "base/files/output_file.hpp"
#include "document/shown_text.hpp"
#include "exchange/report/certificate.hpp"
#include "exchange/report/period_record.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/report/report.hpp"
#include "exchange/report/unit_record.hpp"
#include "exchange/schedules/schedule_sheet.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::desk {

namespace {

/// `plan_path`: the plan's file; empty for one never saved.
Provenance provenance_of_plan(const Results& results, const QString& plan_path) {
  Provenance provenance = provenance_of(plan_path.toStdString(), write_plan(*results.plan));
  provenance.made_at_utc = utc_moment();
  return provenance;
}

Report report_of(const Results& results, const QString& plan_path) {
  return plan_report(*results.plan, results.evaluation, results.cycles,
                     provenance_of_plan(results, plan_path));
}

QByteArray pdf_of(const Report& report, const QString& title) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(300);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageOrientation(QPageLayout::Landscape);
    writer.setPageMargins(QMarginsF(14, 12, 14, 10), QPageLayout::Millimeter);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Seamtakt"));
    paint_report(report, text_view(), writer, nullptr);
  }
  return bytes;
}

RecordRange range_of(const StoreReportQuestion& question) {
  RecordRange range;
  range.set_times(question.from.toStdString(), question.to.toStdString());
  if (!question.seam.isEmpty()) range.set_seam(question.seam.toStdString());
  return range;
}

Report report_of(const Ledger& ledger, const StoreReportQuestion& question, const RecordRange& range,
                 const VerifyReport& verified) {
  const std::string unit = question.unit.toStdString();
  switch (question.kind) {
    case StoreReportQuestion::Kind::unit:
      return unit_report(ledger, unit, verified, utc_moment());
    case StoreReportQuestion::Kind::certificate:
      return unit_certificate(ledger, unit, verified, utc_moment());
    case StoreReportQuestion::Kind::period:
      break;
  }
  return period_report(ledger, range, verified, utc_moment());
}

/// Of the file's properties.
QString title_of(const StoreReportQuestion& question) {
  if (question.kind != StoreReportQuestion::Kind::period) return question.unit;
  return QStringList{question.seam, question.from, question.to}.join(QLatin1Char(' ')).simplified();
}

}  // namespace

void export_html(const Results& results, const QString& plan_path, const QString& to) {
  save_output(to.toStdString(), FileKind::page, report_page(report_of(results, plan_path), text_view()));
}

void export_pdf(const Results& results, const QString& plan_path, const QString& to) {
  save_made(to.toStdString(), FileKind::pdf, [&] {
    return pdf_of(report_of(results, plan_path), QString::fromStdString(results.plan->title));
  });
}

void export_schedules_pdf(const Results& results, const QString& plan_path, const QStringList& schedules,
                          const QString& to) {
  std::vector<std::string> ids;
  for (const QString& id : schedules) ids.push_back(id.toStdString());
  const auto named = schedules_named(*results.plan, ids, "--schedule");
  save_made(to.toStdString(), FileKind::pdf, [&] {
    const Provenance provenance = provenance_of_plan(results, plan_path);
    return pdf_of(schedule_report({*results.plan, results.evaluation, results.cycles, provenance}, named),
                  QString::fromStdString(results.plan->title));
  });
}

bool export_unit_pdf(const QString& store, const QString& unit, const QString& to) {
  return export_store_pdf({StoreReportQuestion::Kind::unit, store, unit, {}, {}, {}}, to);
}

bool export_store_pdf(const StoreReportQuestion& question, const QString& to) {
  bool trusted = false;
  const std::string uri = question.uri.toStdString();
  const RecordRange range = range_of(question);
  save_made(to.toStdString(), FileKind::pdf, [&] {
    const VerifyReport verified = verify_store(uri, {}, {});
    trusted = verified.trusted;
    const Ledger ledger = Ledger::open(uri, {});
    return pdf_of(report_of(ledger, question, range, verified), title_of(question));
  });
  return trusted;
}

void print_report(const Results& results, const QString& plan_path, QPrinter& printer) {
  printer.setPageOrientation(QPageLayout::Landscape);
  paint_report(report_of(results, plan_path), text_view(), printer, &printer);
}

}  // namespace seamtakt::desk
