#include "plots/move_look.hpp"

#include "models/pictures/palette.hpp"

namespace seamtakt::desk {

namespace {

struct Look {
  int series;           ///< of the palette; -1: quiet
  double share;         ///< of the row's height
  Qt::BrushStyle fill;  ///< told apart without colour
};

Look look_of(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc:
      return {1, 1.0, Qt::SolidPattern};
    case MoveKind::start:
      return {4, 0.75, Qt::Dense4Pattern};
    case MoveKind::end:
      return {4, 0.75, Qt::Dense6Pattern};
    case MoveKind::air:
      return {5, 0.28, Qt::SolidPattern};
    case MoveKind::sense:
      return {2, 0.5, Qt::VerPattern};
    case MoveKind::wait:
      return {-1, 0.5, Qt::BDiagPattern};
    case MoveKind::orientation:
      return {0, 0.65, Qt::DiagCrossPattern};
    case MoveKind::service:
      return {3, 0.65, Qt::HorPattern};
    case MoveKind::wire_change:
      return {6, 0.65, Qt::CrossPattern};
    case MoveKind::index:
      return {0, 0.4, Qt::FDiagPattern};
    case MoveKind::load:
      return {-1, 0.4, Qt::SolidPattern};
  }
  return {-1, 0.3, Qt::NoBrush};
}

QColor color_of(const Look& look) {
  return look.series < 0 ? Palette::current().quiet : Palette::current().series(look.series);
}

}  // namespace

double bar_share(MoveKind kind) {
  return look_of(kind).share;
}

void paint_move(QPainter& painter, const QRectF& bar, MoveKind kind) {
  const Look look = look_of(kind);
  const QColor color = color_of(look);
  painter.fillRect(bar, Palette::current().paper);
  painter.fillRect(bar, QBrush(color, look.fill));
  if (bar.width() > 2.5) {
    painter.setPen(QPen(color, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(bar);
  }
}

std::vector<MoveKind> legend_kinds() {
  return {MoveKind::arc,  MoveKind::start,       MoveKind::end,     MoveKind::air,         MoveKind::sense,
          MoveKind::wait, MoveKind::orientation, MoveKind::service, MoveKind::wire_change, MoveKind::load};
}

}  // namespace seamtakt::desk
