#pragma once

#include <QString>

class QCPColorGradient;
class QCustomPlot;
class QCPItemText;

namespace seamtakt::desk {

/// Gives a plot the desk's paper, ink and thin rules; called again when the colours change.
void style_plot(QCustomPlot& plot);

/// A new text on a map, dark on its own light background, so that it is readable on any colour.
QCPItemText* map_text(QCustomPlot& plot, double x, double y, const QString& text);

/// The heat ramp as a gradient for colour maps.
QCPColorGradient heat_gradient();

}  // namespace seamtakt::desk
