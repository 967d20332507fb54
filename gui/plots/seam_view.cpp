#include "plots/seam_view.hpp"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/state_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr double pick_px = 9;

QPointF flat(const Point_mm& point, Projection projection) {
  switch (projection) {
    case Projection::plan:
      return {point[0], -point[1]};
    case Projection::front:
      return {point[0], -point[2]};
    case Projection::side:
      return {point[1], -point[2]};
  }
  return {};
}

/// Each class has a dash of its own, so that it reads without colour.
QVector<qreal> dash_of(int which) {
  static const QVector<qreal> dashes[ValueClasses::count] = {{1, 2}, {3, 2}, {6, 2}, {8, 2, 1, 2}, {}};
  return dashes[which];
}

double distance_px(const QPointF& at, const QPointF& a, const QPointF& b) {
  const QPointF way = b - a;
  const double length2 = QPointF::dotProduct(way, way);
  const double t = length2 > 0 ? std::clamp(QPointF::dotProduct(at - a, way) / length2, 0.0, 1.0) : 0;
  const QPointF gap = at - (a + t * way);
  return std::hypot(gap.x(), gap.y());
}

}  // namespace

QColor seam_ramp_color(int which) {
  // The end of the ramp that would be invisible on the background is left out.
  const int first = Palette::current().dark ? 2 : 0;
  const QColor color = QColor::fromRgb(heat_ramp[static_cast<std::size_t>(first + which)]);
  // 3:1 against the dark ground (WCAG 2.1, 1.4.11), still darker than the next.
  return Palette::current().dark && which == 0 ? color.lighter(125) : color;
}

ValueClasses::ValueClasses(const std::vector<DrawnSeam>& seams) {
  for (const DrawnSeam& seam : seams) {
    if (!seam.value) continue;
    low_ = has_values_ ? std::min(low_, *seam.value) : *seam.value;
    high_ = has_values_ ? std::max(high_, *seam.value) : *seam.value;
    has_values_ = true;
  }
}

int ValueClasses::classOf(double value) const {
  if (isOne()) return count / 2;
  return std::clamp(static_cast<int>((value - low_) / (high_ - low_) * count), 0, count - 1);
}

std::vector<std::pair<int, double>> ValueClasses::shown() const {
  if (!has_values_) return {};
  if (isOne()) return {{count / 2, low_}};
  std::vector<std::pair<int, double>> classes;
  for (int i = 0; i < count; ++i) classes.emplace_back(i, low_ + (high_ - low_) * (i + 1) / count);
  return classes;
}

/// How millimetres become pixels.
struct SeamView::Frame {
  QPointF origin_mm;
  double scale = 1;
  QPointF origin_px;
  QPointF at(const QPointF& mm) const { return origin_px + (mm - origin_mm) * scale; }
};

SeamView::SeamView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Seams in plan and elevation"));
  setAccessibleDescription(tr("The table of seams says the same in words."));
  setMouseTracking(true);
}

void SeamView::setSeams(std::vector<DrawnSeam> seams) {
  seams_ = std::move(seams);
  values_ = ValueClasses(seams_);
  update();
}

void SeamView::setPicked(int index) {
  picked_ = index;
  update();
}

void SeamView::setProjection(Projection projection) {
  projection_ = projection;
  update();
}

void SeamView::setMeaning(const QString& heading, const std::function<QString(double)>& text) {
  heading_ = heading;
  text_ = text;
  update();
}

SeamView::Frame SeamView::frame() const {
  double left = 1e300, right = -1e300, top = 1e300, bottom = -1e300;
  for (const DrawnSeam& seam : seams_)
    for (const Point_mm& point : seam.path_mm) {
      const QPointF p = flat(point, projection_);
      left = std::min(left, p.x());
      right = std::max(right, p.x());
      top = std::min(top, p.y());
      bottom = std::max(bottom, p.y());
    }
  const QRectF room = QRectF(rect()).adjusted(28, 40, -28, -64);
  const double wide = std::max(right - left, 1.0), high = std::max(bottom - top, 1.0);
  Frame frame;
  frame.scale = std::max(1e-6, std::min(room.width() / wide, room.height() / high));
  frame.origin_mm = {(left + right) / 2, (top + bottom) / 2};
  frame.origin_px = room.center();
  return frame;
}

QPen SeamView::penOf(const DrawnSeam& seam, bool is_picked) const {
  const double width = is_picked ? 5 : 3;
  if (!heading_.isEmpty() && seam.value) {
    const int which = values_.classOf(*seam.value);
    QPen pen(seam_ramp_color(which), width, Qt::SolidLine, Qt::FlatCap);
    if (!dash_of(which).isEmpty()) pen.setDashPattern(dash_of(which));
    return pen;
  }
  QPen pen(heading_.isEmpty() ? Palette::current().of(seam.severity) : Palette::current().rule, width,
           Qt::SolidLine, Qt::FlatCap);
  if (heading_.isEmpty() && !seam.severity && seam.is_partly_judged) {
    pen.setColor(Palette::current().quiet);
    pen.setDashPattern({10, 1.5, 1, 1.5});
  }
  if (heading_.isEmpty() && seam.severity)
    pen.setDashPattern(seam.severity == Severity::fail   ? QVector<qreal>{1, 1}
                       : seam.severity == Severity::warn ? QVector<qreal>{3, 1.5}
                                                         : QVector<qreal>{6, 1.5});
  return pen;
}

void SeamView::paintAxes(QPainter& painter) const {
  const Palette& p = Palette::current();
  const char* names[3][2] = {{"x", "y"}, {"x", "z"}, {"y", "z"}};
  const auto& [across, up] = names[static_cast<int>(projection_)];
  const QPointF corner(16, height() - 44);
  painter.setPen(QPen(p.quiet, 1));
  painter.drawLine(corner, corner + QPointF(22, 0));
  painter.drawLine(corner, corner - QPointF(0, 22));
  painter.drawText(corner + QPointF(25, 4), QString::fromUtf8(across));
  painter.drawText(corner + QPointF(-3, -26), QString::fromUtf8(up));
}

void SeamView::paintLegend(QPainter& painter) const {
  const Palette& p = Palette::current();
  double x = 12;
  const double y = height() - 14;
  const auto entry = [&](const QPen& pen, const QString& text) {
    painter.setPen(pen);
    painter.drawLine(QPointF(x, y - 4), QPointF(x + 26, y - 4));
    painter.setPen(p.quiet);
    painter.drawText(QPointF(x + 31, y), text);
    x += 31 + painter.fontMetrics().horizontalAdvance(text) + 14;
  };
  if (heading_.isEmpty()) {
    for (const auto severity : {std::optional<Severity>(), std::optional(Severity::note),
                                std::optional(Severity::warn), std::optional(Severity::fail)}) {
      DrawnSeam sample;
      sample.severity = severity;
      entry(penOf(sample, false), severity_word(severity));
    }
    const auto is_partly = [](const DrawnSeam& seam) { return !seam.severity && seam.is_partly_judged; };
    if (std::any_of(seams_.begin(), seams_.end(), is_partly)) {
      DrawnSeam sample;
      sample.is_partly_judged = true;
      entry(penOf(sample, false), partly_judged_word());
    }
    return;
  }
  if (!text_) return;
  for (const auto& [which, limit] : values_.shown()) {
    QPen pen(seam_ramp_color(which), 3, Qt::SolidLine, Qt::FlatCap);
    if (!dash_of(which).isEmpty() && !values_.isOne()) pen.setDashPattern(dash_of(which));
    entry(pen, values_.isOne() ? text_(limit) : tr("to %1").arg(text_(limit)));
  }
}

void SeamView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (seams_.empty()) return;
  const Frame f = frame();
  const auto polyline = [&](const DrawnSeam& seam) {
    QPolygonF line;
    for (const Point_mm& point : seam.path_mm) line << f.at(flat(point, projection_));
    return line;
  };
  for (int pass = 0; pass < 2; ++pass)  // the picked seam is on top
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      const bool is_picked = static_cast<int>(i) == picked_;
      if (is_picked != (pass == 1)) continue;
      const QPolygonF line = polyline(seams_[i]);
      painter.setPen(QPen(is_picked ? p.ink : p.rule, is_picked ? 9 : 5, Qt::SolidLine, Qt::RoundCap));
      painter.drawPolyline(line);
      painter.setPen(QPen(p.paper, is_picked ? 6 : 3.4, Qt::SolidLine, Qt::FlatCap));
      painter.drawPolyline(line);
      painter.setPen(penOf(seams_[i], is_picked));
      painter.drawPolyline(line);
      if (!line.isEmpty() && (is_picked || seams_.size() <= 12)) {
        painter.setPen(p.ink);
        QFont bold = font();
        bold.setBold(is_picked);
        painter.setFont(bold);
        const QString name = seams_[i].name + (seams_[i].by_hand ? tr(" (manual)") : QString());
        QPointF label = (line.first() + line.last()) / 2 + QPointF(7, -7);
        label.setX(std::clamp(label.x(), 4.0,
                              std::max(4.0, width() - 6.0 - painter.fontMetrics().horizontalAdvance(name))));
        painter.drawText(label, name);
        painter.setFont(font());
      }
    }
  painter.setPen(p.quiet);
  const QString titles[] = {tr("Plan, from above"), tr("Elevation, from the front"),
                            tr("Elevation, from the side")};
  painter.drawText(QPointF(12, 18),
                   titles[static_cast<int>(projection_)] +
                       (heading_.isEmpty() ? tr("; state of each seam") : QStringLiteral("; ") + heading_));
  paintAxes(painter);
  paintLegend(painter);
}

int SeamView::seamAt(const QPointF& at) const {
  const Frame f = frame();
  int best = -1;
  double nearest = pick_px;
  for (std::size_t i = 0; i < seams_.size(); ++i)
    for (std::size_t k = 1; k < seams_[i].path_mm.size(); ++k) {
      const double distance = distance_px(at, f.at(flat(seams_[i].path_mm[k - 1], projection_)),
                                          f.at(flat(seams_[i].path_mm[k], projection_)));
      if (distance < nearest) {
        nearest = distance;
        best = static_cast<int>(i);
      }
    }
  return best;
}

QPointF SeamView::pointOf(int index) const {
  const auto& path = seams_[static_cast<std::size_t>(index)].path_mm;
  const Frame f = frame();
  return (f.at(flat(path[0], projection_)) + f.at(flat(path[1], projection_))) / 2;
}

void SeamView::mousePressEvent(QMouseEvent* event) {
  const int index = seamAt(event->position());
  if (index >= 0) emit picked(index);
}

bool SeamView::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  auto* help = static_cast<QHelpEvent*>(event);
  const int index = seamAt(help->pos());
  if (index >= 0)
    QToolTip::showText(help->globalPos(), seams_[static_cast<std::size_t>(index)].tip, this);
  else
    QToolTip::hideText();
  return true;
}

}  // namespace seamtakt::desk
