#include "plots/move_look.hpp"

#include "cell/timeline/move_look.hpp"
#include "models/pictures/contrast.hpp"
#include "models/pictures/palette.hpp"

namespace seamtakt::desk {

namespace {

/// Told apart without colour too.
Qt::BrushStyle fill_of(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc:
    case MoveKind::air:
    case MoveKind::load:
      return Qt::SolidPattern;
    case MoveKind::start:
      return Qt::Dense4Pattern;
    case MoveKind::end:
      return Qt::Dense6Pattern;
    case MoveKind::sense:
      return Qt::VerPattern;
    case MoveKind::wait:
      return Qt::BDiagPattern;
    case MoveKind::orientation:
      return Qt::DiagCrossPattern;
    case MoveKind::service:
      return Qt::HorPattern;
    case MoveKind::wire_change:
      return Qt::CrossPattern;
    case MoveKind::index:
      return Qt::FDiagPattern;
    case MoveKind::tip_change:
      return Qt::Dense5Pattern;
    case MoveKind::spool_change:
      return Qt::Dense7Pattern;
  }
  return Qt::NoBrush;
}

}  // namespace

/// A grey or an empty bar is drawn in the palette's own quiet colour.
QColor move_color(MoveKind kind) {
  const Palette& palette = Palette::current();
  const std::string_view name = look_of(kind).colour;
  const QColor color = name == "none" ? palette.quiet : QColor(name.data());
  if (color.saturation() == 0 || name == "none") return palette.quiet;
  return seen_on(palette.shown(color), palette.paper);
}

double bar_share(MoveKind kind) {
  return look_of(kind).share;
}

void paint_move(QPainter& painter, const QRectF& bar, MoveKind kind) {
  const QColor color = move_color(kind);
  painter.fillRect(bar, Palette::current().paper);
  painter.fillRect(bar, QBrush(color, fill_of(kind)));
  if (bar.width() > 2.5) {
    painter.setPen(QPen(color, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(bar);
  }
}

std::vector<MoveKind> legend_kinds() {
  std::vector<MoveKind> kinds;
  for (const MoveLook& look : move_looks) kinds.push_back(look.kind);
  return kinds;
}

}  // namespace seamtakt::desk
