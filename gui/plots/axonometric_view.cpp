#include "plots/axonometric_view.hpp"

#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "exchange/picture/leader_labels.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/state_text.hpp"

namespace seamtakt::desk {

namespace {

constexpr std::size_t most_failing_labels = 10;
constexpr double bead_px = 3.4, thin_px = 1.0, disc_px = 17;

/// Three tones of paper, by the axis that a face's normal is nearest to.
QColor paper_tone(int which) {
  static constexpr std::array<unsigned, 3> light{0xefece3, 0xe3ded1, 0xd3cdbe},
      dark{0x363d46, 0x2e343c, 0x262b32};
  return QColor::fromRgb((Palette::current().dark ? dark : light)[static_cast<std::size_t>(which)]);
}

QColor mixed(const QColor& a, const QColor& b, double share) {
  const auto mix = [share](int x, int y) { return static_cast<int>(std::lround(x + share * (y - x))); };
  return QColor(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue()));
}

/// Brushes of the faces: by tone, whether tinted, whether translucent.
class FaceBrushes {
 public:
  FaceBrushes() {
    for (int tone = 0; tone < 3; ++tone)
      for (int tinted = 0; tinted < 2; ++tinted)
        for (int outer = 0; outer < 2; ++outer) {
          QColor color = paper_tone(tone);
          if (tinted) color = mixed(color, Palette::current().accent, 0.28);
          if (outer) color.setAlpha(tinted ? 130 : 95);
          brushes_[index(tone, tinted != 0, outer != 0)] = QBrush(color);
        }
  }
  const QBrush& of(int tone, bool is_tinted, bool is_outer) const {
    return brushes_[index(tone, is_tinted, is_outer)];
  }

 private:
  static std::size_t index(int tone, bool is_tinted, bool is_outer) {
    return static_cast<std::size_t>(tone * 4 + (is_tinted ? 2 : 0) + (is_outer ? 1 : 0));
  }
  std::array<QBrush, 12> brushes_;
};

}  // namespace

AxonometricView::AxonometricView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("The weldment in space"));
  setAccessibleDescription(tr(
      "Arrow keys turn it, plus and minus zoom, 1 to 6 are views along the axes, Home is the first view. The "
      "table of seams says the same in words."));
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setContextMenuPolicy(Qt::ActionsContextMenu);
  makeActions();
}

void AxonometricView::setWeldment(const std::shared_ptr<const Plan>& plan, std::size_t weldment) {
  if (plan == plan_ && weldment == weldment_) return;
  plan_ = plan;
  weldment_ = weldment;
  is_scene_old_ = is_frame_old_ = true;
  update();
}

/// Made when it is first looked at: pages that nobody sees cost nothing.
const WeldmentScene& AxonometricView::scene() const {
  if (!is_scene_old_) return scene_;
  const bool exists = plan_ && weldment_ < plan_->weldments.size();
  scene_ = exists ? WeldmentScene(plan_->weldments[weldment_]) : WeldmentScene();
  is_scene_old_ = false;
  return scene_;
}

void AxonometricView::setSeams(std::vector<DrawnSeam> seams) {
  seams_ = std::move(seams);
  values_ = ValueClasses(seams_);
  update();
}

void AxonometricView::setPicked(int index) {
  if (picked_ == index) return;
  picked_ = index;
  update();
}

void AxonometricView::setMeaning(const QString& heading, const std::function<QString(double)>& text) {
  heading_ = heading;
  text_ = text;
  update();
}

void AxonometricView::setTorches(std::vector<TorchMark> torches) {
  if (torches.empty() && torches_.empty()) return;
  torches_ = std::move(torches);
  update();
}

void AxonometricView::setAngles(ViewAngles angles) {
  angles.yaw_deg = std::remainder(angles.yaw_deg, 360);
  angles.pitch_deg = std::clamp(angles.pitch_deg, -90.0, 90.0);
  if (angles == angles_) return;
  angles_ = angles;
  is_frame_old_ = true;
  update();
}

const WeldmentFrame& AxonometricView::frame() const {
  if (is_frame_old_) frame_.look(scene(), angles_);
  is_frame_old_ = false;
  return frame_;
}

ViewFit AxonometricView::fit() const {
  const QRectF room = QRectF(rect()).adjusted(30, 36, -30, -54);
  ViewFit fit = frame().box().fit(
      {room.x(), room.y(), std::max(1.0, room.width()), std::max(1.0, room.height())}, zoom_);
  fit.x += shift_px_.x();
  fit.y += shift_px_.y();
  return fit;
}

QPointF AxonometricView::at(const ViewFit& fit, const ViewPoint& point) const {
  return {fit.x + fit.scale * point.x, fit.y - fit.scale * point.y};
}

QPointF AxonometricView::pointOf(int index) const {
  return at(fit(), frame().anchor_of(static_cast<std::size_t>(index)));
}

bool AxonometricView::isTinted(std::uint32_t solid) const {
  if (picked_ < 0 || static_cast<std::size_t>(picked_) >= scene().seam_count()) return false;
  const auto its = scene().solids_of(static_cast<std::size_t>(picked_));
  return std::find(its.begin(), its.end(), solid) != its.end();
}

QColor AxonometricView::colorOf(const DrawnSeam& seam) const {
  const Palette& p = Palette::current();
  if (!heading_.isEmpty()) return seam.value ? seam_ramp_color(values_.classOf(*seam.value)) : p.quiet;
  return !seam.severity && seam.is_partly_judged ? p.quiet : p.of(seam.severity);
}

std::vector<std::size_t> AxonometricView::labelled() const {
  std::vector<std::size_t> found;
  if (picked_ >= 0 && static_cast<std::size_t>(picked_) < std::min(seams_.size(), scene().seam_count()))
    found.push_back(static_cast<std::size_t>(picked_));
  std::size_t failing = 0;
  for (std::size_t i = 0; i < std::min(seams_.size(), scene().seam_count()); ++i)
    if (seams_[i].severity == Severity::fail && static_cast<int>(i) != picked_ &&
        failing++ < most_failing_labels)
      found.push_back(i);
  return found;
}

QString AxonometricView::labelText(std::size_t seam) const {
  const DrawnSeam& drawn = seams_[seam];
  QString text = drawn.name;
  if (drawn.by_hand) text += tr(" (manual)");
  if (!heading_.isEmpty() && drawn.value && drawn.order == 0 && text_)
    return text + QStringLiteral(" ") + text_(*drawn.value);
  return drawn.figures.isEmpty() ? text : text + QStringLiteral(" ") + drawn.figures;
}

QStringList AxonometricView::labelTexts() const {
  QStringList texts;
  for (const std::size_t seam : labelled()) texts << labelText(seam);
  return texts;
}

void AxonometricView::paintFaces(QPainter& painter, const ViewFit& fit) const {
  const Palette& p = Palette::current();
  const SolidFaces& faces = scene().faces();
  const WeldmentFrame& frame = this->frame();
  const FaceBrushes brushes;
  const QPen edge(p.quiet, 1, scene().is_guess() ? Qt::DashLine : Qt::SolidLine);
  std::vector<char> tinted(scene().solids().size(), 0);
  for (std::uint32_t i = 0; i < tinted.size(); ++i) tinted[i] = isTinted(i);
  for (const std::uint32_t index : frame.order()) {
    const FacePart& part = scene().tree().parts()[index];
    const SolidFace& face = faces.faces[part.face];
    const auto corners = scene().tree().corners_of(part);
    const auto sides = scene().tree().sides_of(part);
    corners_px_.clear();
    lines_px_.clear();
    for (const Point_mm& corner : corners) corners_px_.push_back(at(fit, frame.view().at(corner)));
    for (std::size_t i = 0; i < sides.size(); ++i)
      if (is_side_drawn(faces, sides[i], frame.view().to_viewer))
        lines_px_.emplace_back(corners_px_[i], corners_px_[(i + 1) % sides.size()]);
    // Without smoothing, parts of one face meet without a gap and don't overlap.
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(Qt::NoPen);
    painter.setBrush(brushes.of(tone_of(face.normal), tinted[face.solid] != 0, face.is_outer));
    painter.drawConvexPolygon(corners_px_.data(), static_cast<int>(corners_px_.size()));
    if (lines_px_.empty()) continue;
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setPen(edge);
    painter.drawLines(lines_px_.data(), static_cast<int>(lines_px_.size()));
  }
  painter.setRenderHint(QPainter::Antialiasing, true);
  painter.setBrush(Qt::NoBrush);
}

void AxonometricView::paintBeads(QPainter& painter, const ViewFit& fit, Sight sight) const {
  const auto& beads = frame().beads();
  const auto draw = [&](const QColor& color, double width) {
    painter.setPen(QPen(color, width, Qt::SolidLine, Qt::FlatCap));
    painter.drawLines(lines_px_.data(), static_cast<int>(lines_px_.size()));
  };
  for (std::size_t i = 0; i < beads.size();) {
    const std::uint32_t seam = beads[i].seam;
    lines_px_.clear();
    for (; i < beads.size() && beads[i].seam == seam; ++i)
      if (beads[i].sight == sight) lines_px_.emplace_back(at(fit, beads[i].a), at(fit, beads[i].b));
    if (lines_px_.empty() || seam >= seams_.size()) continue;
    QColor color = colorOf(seams_[seam]);
    const bool is_picked = static_cast<int>(seam) == picked_;
    const bool stands_out = is_picked || (heading_.isEmpty() && seams_[seam].severity == Severity::fail);
    const double width = bead_px + (stands_out ? 2.6 : 0);
    if (sight == Sight::hidden) {
      draw(color, stands_out ? thin_px + 0.8 : thin_px);
      continue;
    }
    if (sight == Sight::veiled) color.setAlpha(165);
    if (stands_out) draw(Palette::current().ink, width + 2);
    draw(color, width);
  }
}

void AxonometricView::paintLabels(QPainter& painter, const ViewFit& fit) const {
  const Palette& p = Palette::current();
  const std::vector<std::size_t> seams = labelled();
  std::vector<LeaderLabel> labels;
  std::vector<QString> texts;
  for (const std::size_t seam : seams) {
    texts.push_back(labelText(seam));
    const QPointF anchor = at(fit, frame().anchor_of(seam));
    labels.push_back({anchor.x(), anchor.y(), painter.fontMetrics().horizontalAdvance(texts.back()) + 12.0,
                      painter.fontMetrics().height() + 4.0, 0, 0});
  }
  place_labels(labels, {2, 24, std::max(1.0, width() - 4.0), std::max(1.0, height() - 54.0)});
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const LeaderLabel& label = labels[i];
    const QRectF box(label.x, label.y, label.width, label.height);
    const QPointF anchor(label.anchor_x, label.anchor_y);
    painter.setPen(QPen(p.ink, 1));
    painter.drawLine(anchor, QPointF(std::clamp(anchor.x(), box.left(), box.right()),
                                     std::clamp(anchor.y(), box.top(), box.bottom())));
    painter.setPen(QPen(colorOf(seams_[seams[i]]), 1));
    painter.setBrush(p.field);
    painter.drawRect(box);
    painter.setPen(p.ink);
    painter.drawText(box, Qt::AlignCenter, texts[i]);
  }
  painter.setBrush(Qt::NoBrush);
}

void AxonometricView::paintOrder(QPainter& painter, const ViewFit& fit) const {
  const Palette& p = Palette::current();
  for (std::size_t i = 0; i < std::min(seams_.size(), scene().seam_count()); ++i) {
    if (seams_[i].order == 0) continue;
    const QPointF middle = at(fit, frame().anchor_of(i));
    const QRectF disc(middle.x() - disc_px / 2, middle.y() - disc_px / 2, disc_px, disc_px);
    painter.setPen(
        QPen(static_cast<int>(i) == picked_ ? p.accent : p.quiet, static_cast<int>(i) == picked_ ? 2 : 1));
    painter.setBrush(p.field);
    painter.drawEllipse(disc);
    painter.setPen(p.ink);
    painter.drawText(disc, Qt::AlignCenter, QString::number(seams_[i].order));
  }
  painter.setBrush(Qt::NoBrush);
}

void AxonometricView::paintTorches(QPainter& painter, const ViewFit& fit) const {
  const Palette& p = Palette::current();
  for (const TorchMark& torch : torches_) {
    const QPointF tip = at(fit, frame().view().at(torch.at_mm));
    const QPolygonF shape{tip, tip + QPointF(-6, -14), tip + QPointF(6, -14)};
    painter.setPen(QPen(p.ink, 1));
    painter.setBrush(torch.is_welding ? QBrush(p.fail) : QBrush(p.field));
    painter.drawPolygon(shape);
    painter.drawText(tip + QPointF(9, -6), torch.robot);
  }
  painter.setBrush(Qt::NoBrush);
}

void AxonometricView::paintAxes(QPainter& painter) const {
  const QPointF corner(34, height() - 46);
  painter.setPen(QPen(Palette::current().quiet, 1));
  const std::array<const char*, 3> names{"x", "y", "z"};
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const QPointF way(frame().view().right[axis], -frame().view().up[axis]);
    if (std::hypot(way.x(), way.y()) < 0.15) continue;
    painter.drawLine(corner, corner + 20 * way);
    painter.drawText(corner + 28 * way + QPointF(-3, 4), QString::fromUtf8(names[axis]));
  }
}

void AxonometricView::paintLegend(QPainter& painter) const {
  const Palette& p = Palette::current();
  double x = 12;
  const double y = height() - 12;
  const auto entry = [&](const QColor& color, double width, const QString& text) {
    painter.setPen(QPen(color, width, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(x, y - 4), QPointF(x + 24, y - 4));
    painter.setPen(p.quiet);
    painter.drawText(QPointF(x + 29, y), text);
    x += 29 + painter.fontMetrics().horizontalAdvance(text) + 14;
  };
  if (!heading_.isEmpty()) {
    if (text_)
      for (const auto& [which, limit] : values_.shown())
        entry(seam_ramp_color(which), bead_px,
              values_.isOne() ? text_(limit) : SeamView::tr("to %1").arg(text_(limit)));
    return;
  }
  for (const auto severity : {std::optional<Severity>(), std::optional(Severity::note),
                              std::optional(Severity::warn), std::optional(Severity::fail)})
    entry(p.of(severity), severity == Severity::fail ? bead_px + 2.6 : bead_px, severity_word(severity));
  const auto is_partly = [](const DrawnSeam& seam) { return !seam.severity && seam.is_partly_judged; };
  if (std::any_of(seams_.begin(), seams_.end(), is_partly)) entry(p.quiet, bead_px, partly_judged_word());
}

QString AxonometricView::titleText() const {
  QString title;
  for (const QAction* action : view_actions_)
    if (angles_ == action->data().value<ViewAngles>()) title = action->text();
  if (title.isEmpty()) title = tr("Turned freely");
  title += heading_.isEmpty() ? tr("; state of each seam") : QStringLiteral("; ") + heading_;
  return scene().is_guess() ? title + tr("; plates guessed from seams") : title;
}

void AxonometricView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (hasFocus()) {
    painter.setPen(QPen(p.accent, 1));
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  }
  if (scene().is_empty()) return;
  const ViewFit fit = this->fit();
  paintFaces(painter, fit);
  for (const Sight sight : {Sight::hidden, Sight::veiled, Sight::clear}) paintBeads(painter, fit, sight);
  paintOrder(painter, fit);
  paintLabels(painter, fit);
  paintTorches(painter, fit);
  painter.setPen(p.quiet);
  painter.drawText(QPointF(12, 18), titleText());
  paintAxes(painter);
  paintLegend(painter);
}

}  // namespace seamtakt::desk
