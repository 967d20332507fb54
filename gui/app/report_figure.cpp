#include "app/report_figure.hpp"

#include <QAbstractTextDocumentLayout>
#include <QPainter>
#include <QSvgRenderer>
#include <QTextCursor>

namespace seamtakt::desk {

namespace {

constexpr int object_type = QTextFormat::UserObject + 1, number_property = QTextFormat::UserProperty + 1;
constexpr double page_wide_px = 640, code_px = 150, px_per_inch = 96;

/// What the page's style sheet says there; here the drawing alone is read.
QByteArray with_font(const std::string& svg) {
  QByteArray bytes = QByteArray::fromStdString(svg);
  QByteArray attributes = "<svg font-family=\"DejaVu Sans\" font-size=\"11\" ";
  if (!bytes.contains("xmlns=")) attributes += "xmlns=\"http://www.w3.org/2000/svg\" ";
  return bytes.replace("<svg ", attributes);
}

/// A code's squares are drawn dot by dot: as vectors, a viewer may show hairlines between them.
void draw_code(QPainter& painter, QSvgRenderer& drawing, const QRectF& place) {
  constexpr int dots_per_square = 8;
  QImage image(drawing.viewBox().size() * dots_per_square, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter dots(&image);
  drawing.render(&dots);
  dots.end();
  painter.drawImage(place, image);
}

}  // namespace

ReportFigures::ReportFigures(QTextDocument& document) : QObject(&document) {
  document.documentLayout()->registerHandler(object_type, this);
}

void ReportFigures::insert(QTextCursor& cursor, const std::string& svg, FigureBlock::Size size) {
  QTextCharFormat format;
  format.setObjectType(object_type);
  format.setProperty(number_property, static_cast<int>(figures_.size()));
  figures_.push_back({new QSvgRenderer(with_font(svg), this), size});
  cursor.insertText(QString(QChar::ObjectReplacementCharacter), format);
}

const ReportFigures::Figure& ReportFigures::figureOf(const QTextFormat& format) const {
  return figures_.at(static_cast<std::size_t>(format.intProperty(number_property)));
}

QSizeF ReportFigures::intrinsicSize(QTextDocument* document, int, const QTextFormat& format) {
  const Figure& figure = figureOf(format);
  const QPaintDevice* device = document->documentLayout()->paintDevice();
  const double width = (figure.size == FigureBlock::Size::code ? code_px : page_wide_px) *
                       (device ? device->logicalDpiY() / px_per_inch : 1);
  const QSizeF drawn = figure.drawing->viewBoxF().size();
  return {width, drawn.width() > 0 ? width * drawn.height() / drawn.width() : 1};
}

void ReportFigures::drawObject(QPainter* painter, const QRectF& place, QTextDocument*, int,
                               const QTextFormat& format) {
  const Figure& figure = figureOf(format);
  if (figure.size == FigureBlock::Size::code)
    draw_code(*painter, *figure.drawing, place);
  else
    figure.drawing->render(painter, place);
}

}  // namespace seamtakt::desk
