#include "app/report_pages.hpp"

#include <QAbstractTextDocumentLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPrinter>
#include <memory>
#include <vector>

#include "app/page_slices.hpp"
#include "app/report_document.hpp"
#include "base/version.hpp"

namespace seamtakt::desk {

namespace {

const QColor foot_colour(0x5a, 0x62, 0x6d);

/// A stretch of the report that is laid out by itself.
struct Part {
  std::unique_ptr<ReportDocument> document;
  bool is_one_page = false;
  double scale = 1;  ///< at which it is painted
  std::vector<PageSlice> slices = {};
};

bool is_page(const Block& block) {
  const GroupBlock* group = std::get_if<GroupBlock>(&block);
  return group != nullptr && group->kind == GroupBlock::Kind::page;
}

/// Groups with a page of their own, and what is between them. The report's title is before the first of
/// these; a report of such pages alone has it at their feet.
std::vector<Part> parts_of(const Report& report, const TextView& view) {
  std::vector<Part> parts;
  Report between{report.title, {}};
  bool has_title = false;
  const auto end_between = [&] {
    if (between.blocks.empty()) return;
    using Title = ReportDocument::Title;
    parts.push_back(
        {std::make_unique<ReportDocument>(between, view, has_title ? Title::none : Title::shown), false});
    has_title = true;
    between.blocks.clear();
  };
  for (const Block& block : report.blocks) {
    if (!is_page(block)) {
      between.blocks.push_back(block);
      continue;
    }
    end_between();
    const Report page{report.title, {block}};
    parts.push_back({std::make_unique<ReportDocument>(page, view, ReportDocument::Title::none), true});
  }
  end_between();
  if (parts.empty()) parts.push_back({std::make_unique<ReportDocument>(report, view), false});
  return parts;
}

/// Lays a page out at the largest scale at which it fits.
double fit_page(ReportDocument& document, QPagedPaintDevice& device, double height) {
  constexpr double largest = 1.3, smallest = 0.45;
  constexpr int halvings = 5;
  const auto fits = [&](double scale) {
    document.layOut(device, device.width() / scale);
    return document.documentLayout()->documentSize().height() <= height / scale;
  };
  if (fits(largest)) return largest;
  double low = smallest, high = largest;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (fits(middle) ? low : high) = middle;
  }
  document.layOut(device, device.width() / low);
  return low;
}

void lay_out(Part& part, QPagedPaintDevice& device, double height) {
  if (part.is_one_page)
    part.scale = fit_page(*part.document, device, height);
  else
    part.document->layOut(device, device.width());
  part.slices = page_slices(*part.document, height / part.scale);
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

void draw_slice(const Part& part, const PageSlice& slice, QPainter& painter) {
  painter.save();
  painter.scale(part.scale, part.scale);
  const double header = slice.header_bottom - slice.header_top;
  if (header > 0) draw_strip(*part.document, painter, slice.header_top, slice.header_bottom, 0);
  draw_strip(*part.document, painter, slice.top, slice.bottom, header);
  painter.restore();
}

void draw_foot(const QString& title, int page, int pages, const QRectF& line, QPainter& painter) {
  painter.setFont(ReportDocument::font());
  painter.setPen(foot_colour);
  painter.drawText(line, Qt::AlignRight | Qt::AlignBottom, QStringLiteral("%1 / %2").arg(page).arg(pages));
  painter.drawText(line, Qt::AlignLeft | Qt::AlignBottom,
                   QStringLiteral("Seamtakt %1 – %2").arg(QString::fromUtf8(program_version), title));
}

}  // namespace

void paint_report(const Report& report, const TextView& view, QPagedPaintDevice& device, QPrinter* printer) {
  QPainter painter(&device);
  const QRectF page(0, 0, device.width(), device.height());
  const double foot = device.logicalDpiY() * 0.3;
  std::vector<Part> parts = parts_of(report, view);
  int pages = 0, number = 0;
  for (Part& part : parts) {
    lay_out(part, device, page.height() - foot);
    pages += static_cast<int>(part.slices.size());
  }
  for (const Part& part : parts)
    for (const PageSlice& slice : part.slices) {
      if (number > 0) printer ? static_cast<void>(printer->newPage()) : static_cast<void>(device.newPage());
      draw_slice(part, slice, painter);
      draw_foot(part.document->metaInformation(QTextDocument::DocumentTitle), ++number, pages,
                QRectF(0, page.height() - foot, page.width(), foot), painter);
    }
}

}  // namespace seamtakt::desk
