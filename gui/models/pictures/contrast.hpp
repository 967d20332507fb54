#pragma once

#include <QColor>

namespace seamtakt::desk {

/// Contrast ratio of two colours, 1 to 21, as WCAG 2.1 defines it by relative luminance (recalled).
double contrast_of(const QColor& one, const QColor& other);
/// Black or white, whichever is read better on the ground.
QColor text_on(const QColor& ground);
/// The colour, made darker or lighter as far as it takes to be seen on the ground with that contrast.
QColor seen_on(QColor color, const QColor& ground, double least = 3);

}  // namespace seamtakt::desk
