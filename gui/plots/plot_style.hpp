#pragma once

#include <QString>

class QCPColorGradient;
class QCustomPlot;

namespace seamtakt::desk {

/// Gives a plot the desk's paper, ink and thin rules; called again when the colours change.
void style_plot(QCustomPlot& plot);

/// The heat ramp as a gradient for colour maps.
QCPColorGradient heat_gradient();

}  // namespace seamtakt::desk
