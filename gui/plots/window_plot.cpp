#include "plots/window_plot.hpp"

#include <qcustomplot.h>

#include <QKeyEvent>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "document/shown_text.hpp"
#include "models/pictures/contour.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "plots/plot_style.hpp"

namespace seamtakt::desk {

namespace {

constexpr double grab_px = 14;

/// Isolines: key, how many, dash.
struct Isoline {
  const char* key;
  Qt::PenStyle style;
};
constexpr Isoline isoline_values[] = {
    {"leg_mm", Qt::SolidLine}, {"heat_input_kJ_mm", Qt::DashLine}, {"cooling_time_s", Qt::DotLine}};

std::size_t nearest_index(const std::vector<double>& axis, double value) {
  const double step = (axis.back() - axis.front()) / static_cast<double>(axis.size() - 1);
  const double at = (value - axis.front()) / step + 0.5;
  return static_cast<std::size_t>(std::clamp(at, 0.0, static_cast<double>(axis.size() - 1)));
}

/// How many of `count` points are drawn on a side of so many pixels.
int shown_count(int count, double pixels) {
  return std::min(count, std::max(200, static_cast<int>(pixels)));
}

/// Whether an isoline's name fits round a point of an axis: that share of it from either end.
bool has_room(const std::vector<double>& axis, double at, double share) {
  const double margin = share * (axis.back() - axis.front());
  return at > axis.front() + margin && at < axis.back() - margin;
}

/// Least and greatest value of every `stride`-th point and of the last ones: all that isolines are drawn
/// from.
std::pair<double, double> extremes_of(const std::vector<double>& values, std::size_t across,
                                      std::size_t stride) {
  double low = values.back(), high = low;
  for (std::size_t row = 0; row < values.size() / across; row += stride)
    for (std::size_t column = 0; column < across; column += stride) {
      const double at = values[row * across + column];
      low = std::min(low, at);
      high = std::max(high, at);
    }
  return {low, high};
}

}  // namespace

/// Hatches what isn't feasible, in screen pixels, so that the lines keep their distance at any zoom.
class OutsideHatch : public QCPAbstractItem {
 public:
  OutsideHatch(QCustomPlot* plot, const WindowMap& map) : QCPAbstractItem(plot), map_(map) {
    setSelectable(false);
  }
  double selectTest(const QPointF&, bool, QVariant*) const override { return -1; }

 protected:
  void draw(QCPPainter* painter) override {
    if (map_.broken.empty()) return;
    const QRect area = mParentPlot->axisRect()->rect();
    QImage mask(area.size(), QImage::Format_ARGB32_Premultiplied);
    const QRgb line = QColor(0, 0, 0, 150).rgba(), veil = qPremultiply(qRgba(247, 245, 240, 70));
    const UnitView& units = UnitView::shared();
    std::vector<std::size_t> speeds(static_cast<std::size_t>(area.width()));
    for (int px = 0; px < area.width(); ++px)
      speeds[static_cast<std::size_t>(px)] =
          nearest_index(map_.travel_speed_mm_s,
                        units.fromShown(mParentPlot->xAxis->pixelToCoord(area.left() + px), speed_unit));
    for (int py = 0; py < area.height(); ++py) {
      auto* row = reinterpret_cast<QRgb*>(mask.scanLine(py));
      const std::size_t feed =
          nearest_index(map_.wire_feed_speed_m_min,
                        units.fromShown(mParentPlot->yAxis->pixelToCoord(area.top() + py), feed_unit));
      const std::uint32_t* broken = map_.broken.data() + feed * map_.travel_speed_mm_s.size();
      for (int px = 0; px < area.width(); ++px)
        row[px] = (broken[speeds[static_cast<std::size_t>(px)]] & map_.cutting) == 0 ? 0
                  : (px + py) % 9 < 1                                                ? qPremultiply(line)
                                                                                     : veil;
    }
    painter->drawImage(area.topLeft(), mask);
  }

 private:
  const WindowMap& map_;
};

std::vector<WindowValue> window_values() {
  return {{"heat_input_kJ_mm", "Heat input", "kJ/mm"},
          {"leg_mm", "Leg", "mm"},
          {"cooling_time_s", "t8/5", "s"},
          {"deposit_area_mm2", "Deposit area", "mm2"},
          {"preheat_needed_C", "Preheat needed", "C"}};
}

WindowPlot::WindowPlot(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Operating window"));
  setAccessibleDescription(tr(
      "The arrow keys move the working point: up and down the wire feed, left and right the travel speed."));
  setFocusPolicy(Qt::StrongFocus);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  plot_ = new QCustomPlot(this);
  plot_->setFocusPolicy(Qt::NoFocus);
  plot_->setAccessibleName(tr("Operating window"));
  column->addWidget(plot_);
  colors_ = new QCPColorMap(plot_->xAxis, plot_->yAxis);
  colors_->setInterpolate(false);
  hatch_ = new OutsideHatch(plot_, map_);
  hatch_->setLayer(QStringLiteral("main"));
  for (std::size_t i = 0; i < std::size(isoline_values); ++i)
    isolines_.push_back(new QCPCurve(plot_->xAxis, plot_->yAxis));
  outline_ = new QCPCurve(plot_->xAxis, plot_->yAxis);
  outline_->setSelectable(QCP::stNone);
  ellipse_ = new QCPCurve(plot_->xAxis, plot_->yAxis);
  point_ = new QCPItemTracer(plot_);
  point_->setStyle(QCPItemTracer::tsCrosshair);
  point_->setSize(18);
  for (QCPCurve* curve : isolines_) curve->setSelectable(QCP::stNone);
  plot_->axisRect()->setupFullAxesBox();
  connect(plot_, &QCustomPlot::mousePress, this, &WindowPlot::press);
  connect(plot_, &QCustomPlot::mouseMove, this, &WindowPlot::follow);
  connect(plot_, &QCustomPlot::mouseRelease, this, &WindowPlot::release);
  restyle();
}

void WindowPlot::restyle() {
  style_plot(*plot_);
  if (!map_.broken.empty()) showMap(value_);
}

const std::vector<double>* WindowPlot::valuesOf(const QString& key) const {
  if (key == "heat_input_kJ_mm") return &map_.heat_input_kJ_mm;
  if (key == "leg_mm" && !map_.leg_mm.empty()) return &map_.leg_mm;
  if (key == "cooling_time_s" && !map_.cooling_time_s.empty()) return &map_.cooling_time_s;
  if (key == "deposit_area_mm2") return &map_.deposit_area_mm2;
  if (key == "preheat_needed_C" && !map_.preheat_needed_C.empty()) return &map_.preheat_needed_C;
  return nullptr;
}

void WindowPlot::colour(const QString& value) {
  const std::vector<double>* values = valuesOf(value);
  if (!values) values = &map_.heat_input_kJ_mm;
  const int across = static_cast<int>(map_.travel_speed_mm_s.size()),
            up = static_cast<int>(map_.wire_feed_speed_m_min.size());
  const UnitView& units = UnitView::shared();
  QCPColorMapData* cells = colors_->data();
  // As many cells as the screen has points: more can't be seen, and each one is coloured.
  const int columns = shown_count(across, plot_->axisRect()->width() * devicePixelRatioF()),
            rows = shown_count(up, plot_->axisRect()->height() * devicePixelRatioF());
  if (cells->keySize() != columns || cells->valueSize() != rows) cells->setSize(columns, rows);
  cells->setRange({units.toShown(map_.travel_speed_mm_s.front(), speed_unit),
                   units.toShown(map_.travel_speed_mm_s.back(), speed_unit)},
                  {units.toShown(map_.wire_feed_speed_m_min.front(), feed_unit),
                   units.toShown(map_.wire_feed_speed_m_min.back(), feed_unit)});
  double low = values->front(), high = low;
  std::vector<std::size_t> from(static_cast<std::size_t>(columns));
  for (int column = 0; column < columns; ++column)
    from[static_cast<std::size_t>(column)] = static_cast<std::size_t>(column * (across - 1) / (columns - 1));
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const double at =
          (*values)[static_cast<std::size_t>(row * (up - 1) / (rows - 1)) * static_cast<std::size_t>(across) +
                    from[static_cast<std::size_t>(column)]];
      cells->setCell(column, row, at);
      low = std::min(low, at);
      high = std::max(high, at);
    }
  colors_->setGradient(heat_gradient());
  // The slow, hot corner would take most of the ramp: all values above four times the working point's have
  // the lightest colour.
  const std::size_t here =
      map_.at(nearest_index(map_.wire_feed_speed_m_min, map_.working_wire_feed_speed_m_min),
              nearest_index(map_.travel_speed_mm_s, map_.working_travel_speed_mm_s));
  const double at_point = (*values)[here];
  colors_->setDataRange({low, at_point > 0 ? std::min(high, 2.5 * at_point) : high});
  plot_->xAxis->setRange(cells->keyRange());
  plot_->yAxis->setRange(cells->valueRange());
}

void WindowPlot::drawIsolines(const QString& value) {
  const UnitView& units = UnitView::shared();
  for (int i = plot_->itemCount() - 1; i >= 0; --i)
    if (qobject_cast<QCPItemText*>(plot_->item(i))) plot_->removeItem(i);
  labels_.clear();
  drawEdges();
  const std::size_t stride = std::max<std::size_t>(1, map_.travel_speed_mm_s.size() / 160);
  for (std::size_t i = 0; i < isolines_.size(); ++i) {
    const std::vector<double>* values = valuesOf(QString::fromUtf8(isoline_values[i].key));
    const auto known = window_values();
    const auto about = std::find_if(known.begin(), known.end(), [&](const WindowValue& each) {
      return std::string_view(each.key) == isoline_values[i].key;
    });
    QVector<double> t, x, y;
    if (values && about != known.end()) {
      const auto [low, high] = extremes_of(*values, map_.travel_speed_mm_s.size(), stride);
      const double shown_low = units.toShown(low, about->unit);
      const std::size_t here = map_.at(nearest_index(map_.wire_feed_speed_m_min, feed_m_min_),
                                       nearest_index(map_.travel_speed_mm_s, speed_mm_s_));
      const double shown_high = units.toShown(std::min(high, 2.2 * (*values)[here]), about->unit);
      for (const double level : round_levels(shown_low, shown_high, 5)) {
        const auto pieces = contour(map_.travel_speed_mm_s, map_.wire_feed_speed_m_min, values->data(),
                                    units.fromShown(level, about->unit), stride);
        const ContourLines lines = joined_contour(pieces);
        for (std::size_t point = 0; point < lines.x.size(); ++point) {
          t.push_back(static_cast<double>(t.size()));
          x.push_back(units.toShown(lines.x[point], speed_unit));
          y.push_back(units.toShown(lines.y[point], feed_unit));
        }
        if (pieces.size() < 8) continue;
        const QString text = units.rounded(level, 4) + QStringLiteral("\u202f") + units.unitText(about->unit);
        // At its own part of the line, else where there is room.
        for (const std::size_t eighths : {2 * (i + 1), 2 * (i + 1) - 1, 2 * (i + 1) + 1}) {
          const ContourPiece& at = pieces[pieces.size() * eighths / 8];
          if (has_room(map_.travel_speed_mm_s, at.x1, 0.04) &&
              has_room(map_.wire_feed_speed_m_min, at.y1, 0.025) && label(at.y1, at.x1, text))
            break;
        }
      }
    }
    isolines_[i]->setData(t, x, y, true);
    isolines_[i]->setPen(QPen(QColor(0xfb, 0xf4, 0xdc),
                              QString::fromUtf8(isoline_values[i].key) == value ? 2.2 : 1.3,
                              isoline_values[i].style));
  }
}

void WindowPlot::drawEllipse() {
  const UnitView& units = UnitView::shared();
  QVector<double> t, x, y;
  if (u_feed_m_min_ > 0 || u_speed_mm_s_ > 0)
    for (int i = 0; i <= 72; ++i) {
      const double angle = 2 * std::numbers::pi * i / 72;
      t.push_back(i);
      // k = 2, as everywhere.
      x.push_back(units.toShown(speed_mm_s_ + 2 * u_speed_mm_s_ * std::cos(angle), speed_unit));
      y.push_back(units.toShown(feed_m_min_ + 2 * u_feed_m_min_ * std::sin(angle), feed_unit));
    }
  ellipse_->setData(t, x, y, true);
  ellipse_->setPen(QPen(Qt::white, 2));
  point_->position->setCoords(units.toShown(speed_mm_s_, speed_unit), units.toShown(feed_m_min_, feed_unit));
  point_->setStyle(QCPItemTracer::tsPlus);
  point_->setPen(QPen(Qt::white, 2.5));
}

void WindowPlot::showMap(const QString& value) {
  value_ = value;
  if (map_.broken.empty()) return;
  feed_m_min_ = map_.working_wire_feed_speed_m_min;
  speed_mm_s_ = map_.working_travel_speed_mm_s;
  colour(value);
  drawIsolines(value);
  drawEllipse();
  const UnitView& units = UnitView::shared();
  plot_->xAxis->setLabel(tr("travel speed (%1)").arg(units.unitText(speed_unit)));
  plot_->yAxis->setLabel(tr("wire feed speed (%1)").arg(units.unitText(feed_unit)));
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

void WindowPlot::setUncertainty(double u_wire_feed_speed_m_min, double u_travel_speed_mm_s) {
  u_feed_m_min_ = u_wire_feed_speed_m_min;
  u_speed_mm_s_ = u_travel_speed_mm_s;
}

void WindowPlot::movePoint(double wire_feed_speed_m_min, double travel_speed_mm_s) {
  feed_m_min_ = wire_feed_speed_m_min;
  speed_mm_s_ = travel_speed_mm_s;
  drawEllipse();
  plot_->replot(QCustomPlot::rpQueuedReplot);
}

QPointF WindowPlot::pixelOf(double wire_feed_speed_m_min, double travel_speed_mm_s) const {
  const UnitView& units = UnitView::shared();
  return {plot_->xAxis->coordToPixel(units.toShown(travel_speed_mm_s, speed_unit)),
          plot_->yAxis->coordToPixel(units.toShown(wire_feed_speed_m_min, feed_unit))};
}

QPointF WindowPlot::pointPixel() const {
  return pixelOf(feed_m_min_, speed_mm_s_);
}

QString WindowPlot::describe(double wire_feed_speed_m_min, double travel_speed_mm_s) const {
  if (map_.broken.empty()) return {};
  const UnitView& units = UnitView::shared();
  const std::size_t feed = nearest_index(map_.wire_feed_speed_m_min, wire_feed_speed_m_min),
                    speed = nearest_index(map_.travel_speed_mm_s, travel_speed_mm_s);
  const std::size_t at = map_.at(feed, speed);
  QString text = units.quantityText(wire_feed_speed_m_min, feed_unit, 4) + QStringLiteral(", ") +
                 units.quantityText(travel_speed_mm_s, speed_unit, 4) + QStringLiteral(": ");
  for (const WindowValue& value : window_values())
    if (const auto* values = valuesOf(QString::fromUtf8(value.key));
        values && std::string_view(value.key) != "deposit_area_mm2")
      text += core_label(value.label) + QStringLiteral(" ") +
              units.quantityText((*values)[at], value.unit, 3) + QStringLiteral("; ");
  QStringList beyond;
  for (std::size_t k = 0; k < map_.limits.size(); ++k)
    if ((map_.broken[at] >> k) & 1u) beyond << shown_text(map_.limits[k].what);
  return text +
         (beyond.isEmpty() ? tr("all limits kept") : tr("beyond: %1").arg(beyond.join(QStringLiteral(", "))));
}

void WindowPlot::press(QMouseEvent* event) {
  setFocus(Qt::MouseFocusReason);
  const QPointF gap = event->position() - pointPixel();
  dragging_ = event->button() == Qt::LeftButton && std::hypot(gap.x(), gap.y()) < grab_px;
}

void WindowPlot::follow(QMouseEvent* event) {
  if (map_.broken.empty()) return;
  const UnitView& units = UnitView::shared();
  const double feed =
      std::clamp(units.fromShown(plot_->yAxis->pixelToCoord(event->position().y()), feed_unit),
                 map_.wire_feed_speed_m_min.front(), map_.wire_feed_speed_m_min.back());
  const double speed =
      std::clamp(units.fromShown(plot_->xAxis->pixelToCoord(event->position().x()), speed_unit),
                 map_.travel_speed_mm_s.front(), map_.travel_speed_mm_s.back());
  emit readOut(describe(feed, speed));
  if (!dragging_) {
    const QPointF gap = event->position() - pointPixel();
    plot_->setCursor(std::hypot(gap.x(), gap.y()) < grab_px ? Qt::SizeAllCursor : Qt::CrossCursor);
    return;
  }
  movePoint(feed, speed);
  emit moved(feed, speed, false);
}

void WindowPlot::release(QMouseEvent*) {
  if (!dragging_) return;
  dragging_ = false;
  emit moved(feed_m_min_, speed_mm_s_, true);
}

void WindowPlot::keyPressEvent(QKeyEvent* event) {
  if (map_.broken.empty()) return QWidget::keyPressEvent(event);
  const double far = event->modifiers() & Qt::ShiftModifier ? 10 : 1;
  const double feed_step = 0.1 * far, speed_step = 0.1 * far;
  double feed = feed_m_min_, speed = speed_mm_s_;
  switch (event->key()) {
    case Qt::Key_Up:
      feed += feed_step;
      break;
    case Qt::Key_Down:
      feed -= feed_step;
      break;
    case Qt::Key_Right:
      speed += speed_step;
      break;
    case Qt::Key_Left:
      speed -= speed_step;
      break;
    default:
      return QWidget::keyPressEvent(event);
  }
  feed = std::clamp(feed, map_.wire_feed_speed_m_min.front(), map_.wire_feed_speed_m_min.back());
  speed = std::clamp(speed, map_.travel_speed_mm_s.front(), map_.travel_speed_mm_s.back());
  movePoint(feed, speed);
  emit readOut(describe(feed, speed));
  emit moved(feed, speed, true);
}

}  // namespace seamtakt::desk
