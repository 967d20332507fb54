#pragma once

#include <QPainter>
#include <QRectF>
#include <optional>

#include "base/finding.hpp"

namespace seamtakt::desk {

/// Puts the current palette on the application: colours, the flat style and its spacing.
void apply_style();

/// One spacing unit (px).
inline constexpr int unit_px = 8;
inline constexpr int row_px = 28;

/// The mark of a severity: filled disc (ok), ring (note), triangle (warning), square with a cross (fail).
void draw_mark(QPainter& painter, const QRectF& box, std::optional<Severity> severity);
/// The mark of what is partly judged: a quiet ring, half of it filled.
void draw_partly_mark(QPainter& painter, const QRectF& box);
/// The mark of what nothing judged: a quiet dash.
void draw_unjudged_mark(QPainter& painter, const QRectF& box);

}  // namespace seamtakt::desk
