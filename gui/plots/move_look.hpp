#pragma once

#include <QPainter>
#include <QRectF>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt::desk {

/// Height of a kind's bar as a share of its row.
double bar_share(MoveKind kind);
/// The colour of its bar, seen on the palette's paper.
QColor move_color(MoveKind kind);

/// A bar whose kind shows in height and hatch as well as in colour.
void paint_move(QPainter& painter, const QRectF& bar, MoveKind kind);

/// The kinds that a legend names, in its order.
std::vector<MoveKind> legend_kinds();

}  // namespace seamtakt::desk
