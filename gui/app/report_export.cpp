#include "app/report_export.hpp"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QRegularExpression>
#include <QSvgRenderer>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextFrame>
#include <QTextTable>

#include "app/page_slices.hpp"
#include "base/files/output_file.hpp"
#include "base/version.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/report/report.hpp"
#include "exchange/report/unit_record.hpp"
#include "plan/fields/plan_file.hpp"
#include "widgets/plain_text.hpp"

namespace seamtakt::desk {

namespace {

constexpr int picture_width_px = 640, code_width_px = 150, picture_dots_per_px = 3;

/// Holds nothing but its own drawings: no file and no address is opened, whatever the text says.
class ReportDocument : public QTextDocument {
 protected:
  QVariant loadResource(int, const QUrl&) override { return no_picture(); }
};

/// Rich text has no SVG: each drawing becomes a picture of print resolution.
void place_drawings(QTextDocument& document, QString& html) {
  static const QRegularExpression drawing(QStringLiteral("<svg.*?</svg>"),
                                          QRegularExpression::DotMatchesEverythingOption);
  int count = 0;
  for (auto match = drawing.match(html); match.hasMatch(); match = drawing.match(html)) {
    QString svg = match.captured();
    // A code to be scanned is small; all else has the page's width.
    const int width = svg.contains(QStringLiteral("class=\"qr\"")) ? code_width_px : picture_width_px;
    svg.replace(
        QStringLiteral("<svg "),
        QStringLiteral(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" font-family=\"DejaVu Sans\" font-size=\"11\" "));
    QSvgRenderer renderer(svg.toUtf8());
    const QSizeF size = renderer.viewBoxF().size();
    const int height = size.width() > 0 ? static_cast<int>(width * size.height() / size.width()) : 1;
    QImage image(width * picture_dots_per_px, height * picture_dots_per_px, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    renderer.render(&painter);
    painter.end();
    const QString name = QStringLiteral("drawing:%1").arg(count++);
    document.addResource(QTextDocument::ImageResource, QUrl(name), image);
    html.replace(
        match.capturedStart(), match.capturedLength(),
        QStringLiteral("<img src=\"%1\" width=\"%2\" height=\"%3\">").arg(name).arg(width).arg(height));
  }
}

/// What rich text knows no style sheet for: lists of label and value as tables, quiet table heads, thin
/// rules.
QString printable_html(QString html) {
  static const QRegularExpression sheet(QStringLiteral("<style>.*?</style>"),
                                        QRegularExpression::DotMatchesEverythingOption);
  html.remove(sheet);
  html.replace(QStringLiteral("<dl>"), QStringLiteral("<table cellspacing=\"0\" cellpadding=\"2\">"));
  html.replace(QStringLiteral("</dl>"), QStringLiteral("</table>"));
  html.replace(QStringLiteral("<dt>"), QStringLiteral("<tr><td style=\"color:#5a626d\">"));
  html.replace(QStringLiteral("</dt><dd>"), QStringLiteral("</td><td>"));
  html.replace(QStringLiteral("</dd>"), QStringLiteral("</td></tr>"));
  html.replace(QStringLiteral("<table>"),
               QStringLiteral("<table cellspacing=\"0\" cellpadding=\"2\" width=\"100%\">"));
  // Places to sign stand beside one another, so that no page begins with the last of them.
  static const QRegularExpression places(QStringLiteral("<div class=\"sign\">(.*?</div>)</div>"));
  for (auto match = places.match(html); match.hasMatch(); match = places.match(html)) {
    QString row = match.captured(1);
    row.replace(QStringLiteral("<div>"), QStringLiteral("<td style=\"border-bottom:0\">"));
    row.replace(QStringLiteral("</div>"), QStringLiteral("</td>"));
    html.replace(
        match.capturedStart(), match.capturedLength(),
        QStringLiteral("<p></p><table cellpadding=\"2\" width=\"100%\"><tr>%1</tr></table>").arg(row));
  }
  return html;
}

const char* print_sheet =
    "body{color:#000} h1{font-size:15pt} h2{font-size:12pt; margin-top:14px} h3{font-size:10pt} "
    "th{color:#5a626d; text-align:left; font-weight:600; "
    "border-bottom:1px solid #444} .w{white-space:nowrap} td{border-bottom:1px solid #ccc; "
    "vertical-align:top} "
    "td.n,th.n{text-align:right} td.n{white-space:nowrap} .code{font-family:'DejaVu Sans Mono'} "
    ".quiet{color:#5a626d} p{margin:3px 0}";

/// A trace of space between letters keeps Qt from joining some to one (ff, fi), which nobody could copy or
/// search: anchors, ids and digests must come out of the page as they went in.
QFont print_font() {
  QFont font(QStringLiteral("DejaVu Sans"), 7);
  font.setLetterSpacing(QFont::AbsoluteSpacing, 0.05);
  return font;
}

void fill(QTextDocument& document, QString html) {
  document.setDefaultFont(print_font());
  document.setDefaultStyleSheet(QString::fromUtf8(print_sheet));
  place_drawings(document, html);
  document.setHtml(printable_html(html));
}

/// Tables that are wider than the page, since no number in them is broken, are set in smaller type.
void fit_tables(QTextDocument& document, double width) {
  constexpr double smallest_pt = 4, step_pt = 0.5;
  for (QTextFrame* frame : document.rootFrame()->childFrames()) {
    auto* table = qobject_cast<QTextTable*>(frame);
    if (table == nullptr) continue;
    for (double size_pt = print_font().pointSizeF() - step_pt;
         size_pt >= smallest_pt && document.documentLayout()->frameBoundingRect(table).width() > width;
         size_pt -= step_pt) {
      QTextCursor cells = table->firstCursorPosition();
      cells.setPosition(table->lastPosition(), QTextCursor::KeepAnchor);
      QTextCharFormat smaller;
      smaller.setFontPointSize(size_pt);
      cells.mergeCharFormat(smaller);
    }
  }
}

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
void paint_pages(QTextDocument& document, QPagedPaintDevice& device, QPrinter* printer) {
  QPainter painter(&device);
  const double dpi = device.logicalDpiY();
  const QRectF page(0, 0, device.width(), device.height());
  const double foot = dpi * 0.3;
  document.documentLayout()->setPaintDevice(&device);
  document.setTextWidth(page.width());
  fit_tables(document, page.width());
  const std::vector<PageSlice> slices = page_slices(document, page.height() - foot);
  const auto pages = static_cast<int>(slices.size());
  for (int i = 0; i < pages; ++i) {
    if (i > 0) printer ? static_cast<void>(printer->newPage()) : static_cast<void>(device.newPage());
    const PageSlice& slice = slices[static_cast<std::size_t>(i)];
    const double header = slice.header_bottom - slice.header_top;
    if (header > 0) draw_strip(document, painter, slice.header_top, slice.header_bottom, 0);
    draw_strip(document, painter, slice.top, slice.bottom, header);
    painter.setFont(print_font());
    painter.setPen(QColor(0x5a, 0x62, 0x6d));
    const QRectF line(0, page.height() - foot, page.width(), foot);
    painter.drawText(line, Qt::AlignRight | Qt::AlignBottom, QStringLiteral("%1 / %2").arg(i + 1).arg(pages));
    painter.drawText(
        line, Qt::AlignLeft | Qt::AlignBottom,
        QStringLiteral("Seamtakt %1 – %2")
            .arg(QString::fromUtf8(program_version), document.metaInformation(QTextDocument::DocumentTitle)));
  }
}

}  // namespace

std::string report_of(const Results& results, const QString& plan_path) {
  Provenance provenance = provenance_of(plan_path.toStdString(), write_plan(*results.plan));
  provenance.made_at_utc = utc_moment();
  return report_html(*results.plan, results.evaluation, results.cycles, provenance);
}

void export_html(const Results& results, const QString& plan_path, const QString& to) {
  save_output(to.toStdString(), FileKind::page, report_of(results, plan_path));
}

namespace {

QByteArray pdf_of(const std::string& html, const QString& title) {
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
    ReportDocument document;
    fill(document, QString::fromStdString(html));
    paint_pages(document, writer, nullptr);
  }
  return bytes;
}

}  // namespace

void export_pdf(const Results& results, const QString& plan_path, const QString& to) {
  save_made(to.toStdString(), FileKind::pdf, [&] {
    return pdf_of(report_of(results, plan_path), QString::fromStdString(results.plan->title));
  });
}

bool export_unit_pdf(const QString& store, const QString& unit, const QString& to) {
  bool trusted = false;
  save_made(to.toStdString(), FileKind::pdf, [&] {
    const VerifyReport verified = verify_store(store.toStdString(), {}, {});
    trusted = verified.trusted;
    const Ledger ledger = Ledger::open(store.toStdString(), {});
    return pdf_of(unit_report_html(ledger, unit.toStdString(), verified, utc_moment()), unit);
  });
  return trusted;
}

void print_report(const Results& results, const QString& plan_path, QPrinter& printer) {
  printer.setPageOrientation(QPageLayout::Landscape);
  ReportDocument document;
  fill(document, QString::fromStdString(report_of(results, plan_path)));
  paint_pages(document, printer, &printer);
}

}  // namespace seamtakt::desk
