#include "app/report_export.hpp"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>

#include "app/page_slices.hpp"
#include "app/report_document.hpp"
#include "base/files/output_file.hpp"
#include "base/version.hpp"
#include "document/shown_text.hpp"
#include "exchange/report/certificate.hpp"
#include "exchange/report/period_record.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/report/report.hpp"
#include "exchange/report/unit_record.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::desk {

namespace {

const QColor foot_colour(0x5a, 0x62, 0x6d);

/// The document from `top` to `bottom`, drawn from `to` on.
void draw_strip(const QTextDocument& document, QPainter& painter, double top, double bottom, double to) {
  painter.save();
  painter.translate(0, to - top);
  const QRectF clip(0, top, document.textWidth(), bottom - top);
  QAbstractTextDocumentLayout::PaintContext context;
  context.clip = clip;
  context.palette.setColor(QPalette::Text, Qt::black);
  painter.setClipRect(clip);
  document.documentLayout()->draw(&painter, context);
  painter.restore();
}

/// Page by page, with the page's number and what the report is of at its foot.
void paint_pages(ReportDocument& document, QPagedPaintDevice& device, QPrinter* printer) {
  QPainter painter(&device);
  const double dpi = device.logicalDpiY();
  const QRectF page(0, 0, device.width(), device.height());
  const double foot = dpi * 0.3;
  document.layOut(device);
  const std::vector<PageSlice> slices = page_slices(document, page.height() - foot);
  const auto pages = static_cast<int>(slices.size());
  for (int i = 0; i < pages; ++i) {
    if (i > 0) printer ? static_cast<void>(printer->newPage()) : static_cast<void>(device.newPage());
    const PageSlice& slice = slices[static_cast<std::size_t>(i)];
    const double header = slice.header_bottom - slice.header_top;
    if (header > 0) draw_strip(document, painter, slice.header_top, slice.header_bottom, 0);
    draw_strip(document, painter, slice.top, slice.bottom, header);
    painter.setFont(ReportDocument::font());
    painter.setPen(foot_colour);
    const QRectF line(0, page.height() - foot, page.width(), foot);
    painter.drawText(line, Qt::AlignRight | Qt::AlignBottom, QStringLiteral("%1 / %2").arg(i + 1).arg(pages));
    painter.drawText(
        line, Qt::AlignLeft | Qt::AlignBottom,
        QStringLiteral("Seamtakt %1 – %2")
            .arg(QString::fromUtf8(program_version), document.metaInformation(QTextDocument::DocumentTitle)));
  }
}

/// `plan_path`: the plan's file; empty for one never saved.
Report report_of(const Results& results, const QString& plan_path) {
  Provenance provenance = provenance_of(plan_path.toStdString(), write_plan(*results.plan));
  provenance.made_at_utc = utc_moment();
  return plan_report(*results.plan, results.evaluation, results.cycles, provenance);
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
    ReportDocument document(report, text_view());
    paint_pages(document, writer, nullptr);
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
  ReportDocument document(report_of(results, plan_path), text_view());
  paint_pages(document, printer, &printer);
}

}  // namespace seamtakt::desk
