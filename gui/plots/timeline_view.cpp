#include "plots/timeline_view.hpp"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "cell/timeline/plan_order.hpp"
#include "models/pictures/contrast.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/cycle_rows.hpp"
#include "plots/label_row.hpp"
#include "plots/move_look.hpp"

namespace seamtakt::desk {

namespace {

constexpr double timeline_left_px = 64, timeline_right_px = 24, timeline_top_px = 44, title_px = 20,
                 legend_px = 60, foot_px = 8;
constexpr double most_row_px = 74;

double tick_step_s(double span_s, double room_px) {
  for (const double step : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0})
    if (room_px * step / span_s > 70) return step;
  return 7200;
}

}  // namespace

TimelineView::TimelineView(QWidget* parent) : QWidget(parent), axis_(timeline_left_px, timeline_right_px, 2) {
  setAccessibleName(tr("Timeline of the robots"));
  setAccessibleDescription(
      tr("The table of moves says the same in words. Arrow keys move, plus and minus zoom, Home shows all."));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
}

double TimelineView::reachOf(const CycleResult& cycle, double planned_s) {
  double reach_s = std::max({cycle.cycle_time_s, planned_s, cycle.lower_bound_s.value_or(0.0), 1.0});
  for (const Move& move : cycle.moves) reach_s = std::max(reach_s, move.end_s);
  return reach_s;
}

void TimelineView::setCycle(const CycleResult& cycle, double planned_s, const QString& title,
                            double at_least_s) {
  const bool to_all = cycle.weldment != cycle_.weldment || axis_.isAll();
  endCarry();
  cycle_ = cycle;
  planned_s_ = planned_s;
  title_ = title;
  robots_ = known_robots_;
  for (const Move& move : cycle_.moves)
    if (std::find(robots_.begin(), robots_.end(), move.robot) == robots_.end()) robots_.push_back(move.robot);
  std::stable_sort(robots_.begin(), robots_.end(),
                   [](const auto& a, const auto& b) { return b.empty() ? !a.empty() : !a.empty() && a < b; });
  axis_.setEnds(0, std::max(reachOf(cycle, planned_s), at_least_s) * 1.02);
  if (to_all) axis_.showAll();
  update();
}

void TimelineView::setPicked(const QString& seam) {
  picked_ = seam;
  update();
}

double TimelineView::top() const {
  return title_.isEmpty() ? timeline_top_px : timeline_top_px + title_px;
}

double TimelineView::bottom() const {
  return has_legend_ ? legend_px : foot_px;
}

double TimelineView::lanePx() const {
  return std::min(most_row_px,
                  (height() - top() - bottom()) / std::max<double>(1, static_cast<double>(robots_.size())));
}

int TimelineView::laneOf(const std::string& robot) const {
  return static_cast<int>(std::find(robots_.begin(), robots_.end(), robot) - robots_.begin());
}

double TimelineView::rowOf(const QString& robot) const {
  return top() + lanePx() * (laneOf(robot.toStdString()) + 0.5);
}

QRectF TimelineView::barOf(int index) const {
  const Move& move = cycle_.moves[static_cast<std::size_t>(index)];
  const double high = lanePx() * 0.62 * bar_share(move.kind);
  const double middle = top() + lanePx() * (laneOf(move.robot) + 0.5);
  const double begin = x(move.start_s), end = x(move.end_s);
  return {begin, middle - high / 2, std::max(0.8, end - begin), high};
}

void TimelineView::paintScale(QPainter& painter) const {
  const Palette& p = Palette::current();
  const double step = tick_step_s(axis_.span(), axis_.room_px(width()));
  for (double tick = std::ceil(from() / step) * step; tick <= to(); tick += step) {
    painter.setPen(QPen(p.rule, 1));
    painter.drawLine(QPointF(x(tick), top() - 4), QPointF(x(tick), height() - bottom()));
    painter.setPen(p.quiet);
    painter.drawText(QRectF(x(tick) - 40, top() - 22, 80, 16), Qt::AlignCenter, minutes_text(tick));
  }
}

void TimelineView::paintSeamName(QPainter& painter, const QRectF& bar, const QString& seam) const {
  if (bar.width() <= painter.fontMetrics().horizontalAdvance(seam) + 6) return;
  painter.setPen(text_on(move_color(MoveKind::arc)));
  painter.drawText(bar, Qt::AlignCenter, seam);
}

void TimelineView::paintBars(QPainter& painter) const {
  const Palette& p = Palette::current();
  painter.save();
  painter.setClipRect(QRectF(timeline_left_px, 0, axis_.room_px(width()) + 1, height()));
  for (std::size_t i = 0; i < cycle_.moves.size(); ++i) {
    const Move& move = cycle_.moves[i];
    if (move.end_s < from() || move.start_s > to()) continue;
    const QRectF bar = barOf(static_cast<int>(i));
    paint_move(painter, bar, move.kind);
    const QString seam = QString::fromStdString(move.seam);
    if (!picked_.isEmpty() && seam == picked_) {
      painter.setPen(QPen(p.ink, 2));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(bar.adjusted(-1, -2, 1, 2));
    }
    if (move.kind == MoveKind::arc) paintSeamName(painter, bar, seam);
  }
  painter.restore();
}

/// A cycle that leaves seams unwelded keeps no takt, however short it is.
QColor TimelineView::limitColor() const {
  const Palette& p = Palette::current();
  return cycle_.cycle_time_s > planned_s_ || !cycle_.unwelded.empty() ? p.fail : p.ok;
}

void TimelineView::paintLimits(QPainter& painter) const {
  const Palette& p = Palette::current();
  const double head = top() - timeline_top_px;
  struct Text {
    QString text;
    QColor color;
  };
  std::vector<RowLabel> labels;
  std::vector<Text> texts;
  const auto line = [&](double at_s, const QString& text, const QColor& color, Qt::PenStyle style,
                        bool left) {
    if (at_s < from() || at_s > to()) return;
    painter.setPen(QPen(color, 2, style));
    painter.drawLine(QPointF(x(at_s), head + 18), QPointF(x(at_s), height() - bottom() + 4));
    labels.push_back({x(at_s), painter.fontMetrics().horizontalAdvance(text) + 4.0, left});
    texts.push_back({text, color});
  };
  if (cycle_.lower_bound_s)
    line(*cycle_.lower_bound_s, tr("bound %1").arg(minutes_text(*cycle_.lower_bound_s)), p.note, Qt::DotLine,
         true);
  if (planned_s_ > 0)
    line(planned_s_, tr("takt %1").arg(minutes_text(planned_s_)), limitColor(), Qt::DashLine,
         planned_s_ < cycle_.cycle_time_s);
  line(cycle_.cycle_time_s, tr("cycle %1").arg(minutes_text(cycle_.cycle_time_s)), p.ink, Qt::SolidLine,
       cycle_.cycle_time_s < planned_s_);
  const std::vector<double> places = placed_labels(labels, width());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    painter.setPen(texts[i].color);
    painter.drawText(QRectF(places[i], head + 2, labels[i].wide_px, 16), Qt::AlignLeft | Qt::AlignVCenter,
                     texts[i].text);
  }
}

void TimelineView::paintLegend(QPainter& painter) const {
  double at = timeline_left_px;
  double y = height() - 40;
  for (const MoveKind kind : legend_kinds()) {
    if (std::none_of(cycle_.moves.begin(), cycle_.moves.end(),
                     [&](const Move& move) { return move.kind == kind; }))
      continue;
    const QString word = move_word(kind);
    const double wide = painter.fontMetrics().horizontalAdvance(word);
    if (at + wide + 24 > width()) {
      at = timeline_left_px;
      y += 20;
    }
    const double high = 14 * bar_share(kind);
    paint_move(painter, QRectF(at, y - high / 2, 18, high), kind);
    painter.setPen(Palette::current().quiet);
    painter.drawText(QRectF(at + 24, y - 9, wide + 2, 18), Qt::AlignVCenter, word);
    at += 24 + wide + 16;
  }
}

/// A mark where the seam would go, its name at the hand, and what would follow.
void TimelineView::paintCarried(QPainter& painter) const {
  const Palette& p = Palette::current();
  double at_s = 0;
  for (const SeamVisit& visit : visits_of(cycle_, target_.robot.toStdString())) {
    if (!target_.before.isEmpty() && visit.seam == target_.before.toStdString()) {
      at_s = visit.start_s;
      break;
    }
    if (visit.seam != carried_.toStdString()) at_s = visit.end_s;
  }
  const double middle = rowOf(target_.robot), half = lanePx() * 0.48;
  painter.setPen(QPen(p.accent, 3));
  painter.drawLine(QPointF(x(at_s), middle - half), QPointF(x(at_s), middle + half));
  const QString text = note_.isEmpty() ? carried_ : note_;
  const QFontMetricsF metrics(painter.font());
  QRectF box(hand_.x() + 12, hand_.y() + 10, metrics.horizontalAdvance(text) + 14, metrics.height() + 8);
  if (box.right() > width()) box.moveRight(width() - 2);
  if (box.bottom() > height()) box.moveBottom(hand_.y() - 6);
  painter.setPen(QPen(p.accent, 1));
  painter.setBrush(p.field);
  painter.drawRect(box);
  painter.setPen(p.ink);
  painter.drawText(box, Qt::AlignCenter, text);
}

void TimelineView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  if (robots_.empty()) return;
  paintScale(painter);
  for (std::size_t row = 0; row < robots_.size(); ++row) {
    painter.setPen(p.ink);
    const QString name = robots_[row].empty() ? tr("cell") : QString::fromStdString(robots_[row]);
    painter.drawText(QRectF(4, top() + lanePx() * static_cast<double>(row), timeline_left_px - 10, lanePx()),
                     Qt::AlignVCenter | Qt::AlignRight, name);
  }
  if (!title_.isEmpty()) {
    QFont bold = font();
    bold.setWeight(QFont::DemiBold);
    painter.setFont(bold);
    painter.drawText(QRectF(8, 0, width() - 8, title_px), Qt::AlignLeft | Qt::AlignVCenter, title_);
    painter.setFont(font());
  }
  paintBars(painter);
  paintLimits(painter);
  if (has_legend_) paintLegend(painter);
  if (!carried_.isEmpty()) paintCarried(painter);
  if (hasFocus()) {
    painter.setPen(QPen(p.accent, 1, Qt::DotLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
  }
}

}  // namespace seamtakt::desk
