#pragma once

#include <QTextDocument>
#include <QTextObjectInterface>
#include <vector>

#include "exchange/sheets/report_model.hpp"

class QSvgRenderer;

namespace seamtakt::desk {

/// The drawings of a document; it is deleted with the document.
class ReportFigures : public QObject, public QTextObjectInterface {
  Q_OBJECT
  Q_INTERFACES(QTextObjectInterface)
 public:
  explicit ReportFigures(QTextDocument& document);

  /// Puts a drawing where the cursor is.
  void insert(QTextCursor& cursor, const std::string& svg, FigureBlock::Size size);
  void insert(QTextCursor& cursor, Drawing drawing);

  QSizeF intrinsicSize(QTextDocument* document, int position, const QTextFormat& format) override;
  void drawObject(QPainter* painter, const QRectF& place, QTextDocument* document, int position,
                  const QTextFormat& format) override;

 private:
  struct Figure {
    QSvgRenderer* svg = nullptr;  ///< nullptr where it is a drawing
    FigureBlock::Size size = FigureBlock::Size::page_wide;
    Drawing drawing = {};
  };
  void insert(QTextCursor& cursor, Figure figure);
  const Figure& figureOf(const QTextFormat& format) const;

  std::vector<Figure> figures_;
};

}  // namespace seamtakt::desk
