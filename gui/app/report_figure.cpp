#include "app/report_figure.hpp"

#include <QAbstractTextDocumentLayout>
#include <QPainter>
#include <QSvgRenderer>
#include <QTextCursor>
#include <algorithm>

#include "app/report_document.hpp"

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

const QColor ink(0x23, 0x27, 0x2e), light(0xee, 0xec, 0xe6), weld(0xc4, 0xbe, 0xb0);

QBrush brush_of(DrawingFill fill) {
  switch (fill) {
    case DrawingFill::none:
      break;
    case DrawingFill::light:
      return light;
    case DrawingFill::weld:
      return weld;
    case DrawingFill::ink:
      return ink;
    case DrawingFill::paper:
      return QBrush(Qt::white);
  }
  return Qt::NoBrush;
}

QPen pen_of(DrawingStroke stroke, double scale) {
  constexpr double thin = 0.5, thick = 1.1;
  if (stroke == DrawingStroke::none) return Qt::NoPen;
  return QPen(ink, (stroke == DrawingStroke::thick ? thick : thin) * scale);
}

int alignment_of(DrawingText::Anchor anchor) {
  switch (anchor) {
    case DrawingText::Anchor::begin:
      return Qt::AlignLeft;
    case DrawingText::Anchor::middle:
      return Qt::AlignHCenter;
    case DrawingText::Anchor::end:
      break;
  }
  return Qt::AlignRight;
}

/// A place with room to either side of the text's anchor.
QRectF room_of(const DrawingText& text, const QPointF& at, double scale) {
  const double wide = 1000 * scale, high = 2 * text.size * scale;
  const double left = text.anchor == DrawingText::Anchor::begin    ? at.x()
                      : text.anchor == DrawingText::Anchor::middle ? at.x() - wide / 2
                                                                   : at.x() - wide;
  return {left, at.y() - high / 2, wide, high};
}

void paint_drawing(QPainter& painter, const Drawing& drawing, const QRectF& place) {
  const double scale = drawing.width > 0 ? place.width() / drawing.width : 1;
  const auto placed = [&](const DrawingPoint& point) {
    return QPointF(place.left() + point.x * scale, place.top() + point.y * scale);
  };
  painter.save();
  for (const DrawingPath& path : drawing.paths) {
    QPolygonF points;
    for (const DrawingPoint& point : path.points) points << placed(point);
    painter.setPen(pen_of(path.stroke, scale));
    painter.setBrush(brush_of(path.fill));
    path.is_closed ? painter.drawPolygon(points) : painter.drawPolyline(points);
  }
  QFont font = ReportDocument::font();
  for (const DrawingText& text : drawing.texts) {
    font.setPixelSize(std::max(1, qRound(text.size * scale)));
    painter.setFont(font);
    painter.setPen(text.is_on_ink ? QColor(Qt::white) : ink);
    painter.drawText(room_of(text, placed(text.at), scale), alignment_of(text.anchor) | Qt::AlignVCenter,
                     QString::fromStdString(text.text));
  }
  painter.restore();
}

}  // namespace

ReportFigures::ReportFigures(QTextDocument& document) : QObject(&document) {
  document.documentLayout()->registerHandler(object_type, this);
}

void ReportFigures::insert(QTextCursor& cursor, const std::string& svg, FigureBlock::Size size) {
  insert(cursor, Figure{new QSvgRenderer(with_font(svg), this), size, {}});
}

void ReportFigures::insert(QTextCursor& cursor, Drawing drawing) {
  insert(cursor, Figure{nullptr, FigureBlock::Size::page_wide, std::move(drawing)});
}

void ReportFigures::insert(QTextCursor& cursor, Figure figure) {
  QTextCharFormat format;
  format.setObjectType(object_type);
  format.setProperty(number_property, static_cast<int>(figures_.size()));
  figures_.push_back(std::move(figure));
  cursor.insertText(QString(QChar::ObjectReplacementCharacter), format);
}

const ReportFigures::Figure& ReportFigures::figureOf(const QTextFormat& format) const {
  return figures_.at(static_cast<std::size_t>(format.intProperty(number_property)));
}

QSizeF ReportFigures::intrinsicSize(QTextDocument* document, int, const QTextFormat& format) {
  const Figure& figure = figureOf(format);
  const QPaintDevice* device = document->documentLayout()->paintDevice();
  const double scale = device ? device->logicalDpiY() / px_per_inch : 1;
  if (figure.svg == nullptr) return {figure.drawing.width * scale, figure.drawing.height * scale};
  const double width = (figure.size == FigureBlock::Size::code ? code_px : page_wide_px) * scale;
  const QSizeF drawn = figure.svg->viewBoxF().size();
  return {width, drawn.width() > 0 ? width * drawn.height() / drawn.width() : 1};
}

void ReportFigures::drawObject(QPainter* painter, const QRectF& place, QTextDocument*, int,
                               const QTextFormat& format) {
  const Figure& figure = figureOf(format);
  if (figure.svg == nullptr)
    paint_drawing(*painter, figure.drawing, place);
  else if (figure.size == FigureBlock::Size::code)
    draw_code(*painter, *figure.svg, place);
  else
    figure.svg->render(painter, place);
}

}  // namespace seamtakt::desk
