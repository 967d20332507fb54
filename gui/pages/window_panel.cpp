#include "pages/window_panel.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "base/error.hpp"
#include "document/shown_text.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "plots/window_plot.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {
constexpr std::size_t map_points = 300;
}

WindowPanel::WindowPanel(const Desk& desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, unit_px, 0, 0);
  auto* row = new QHBoxLayout;
  value_ = new QComboBox(this);
  value_->setAccessibleName(tr("Value that colours the window"));
  value_->setToolTip(tr("Value that colours the window"));
  for (const WindowValue& value : window_values())
    value_->addItem(core_label(value.label), QString::fromUtf8(value.key));
  read_out_ = new QLabel(this);
  read_out_->setProperty("role", "quiet");
  read_out_->setMinimumWidth(10);
  read_out_->setTextFormat(Qt::PlainText);
  row->addWidget(value_);
  row->addWidget(read_out_, 1);
  plot_ = new WindowPlot(this);
  limits_ = new QLabel(this);
  limits_->setWordWrap(true);
  limits_->setTextFormat(Qt::PlainText);
  limits_->setProperty("role", "quiet");
  column->addLayout(row);
  column->addWidget(plot_, 1);
  column->addWidget(limits_);
  connect(value_, &QComboBox::activated, this, [this] { plot_->showMap(value_->currentData().toString()); });
  connect(plot_, &WindowPlot::readOut, read_out_, &QLabel::setText);
  connect(plot_, &WindowPlot::moved, this, &WindowPanel::move);
  connect(&UnitView::shared(), &UnitView::changed, this, &WindowPanel::restyle);
}

void WindowPanel::setPass(const std::string& weldment, const std::string& seam, const std::string& schedule) {
  const bool same = weldment == weldment_ && seam == seam_ && schedule == schedule_;
  weldment_ = weldment;
  seam_ = seam;
  schedule_ = schedule;
  if (!same) drawn_.reset();
  plot_->setVisible(!schedule_.empty());
  if (schedule_.empty()) {
    limits_->clear();
    read_out_->clear();
  }
  compute();
}

void WindowPanel::setResults(const ResultsPtr&) {
  compute();
}

void WindowPanel::restyle() {
  plot_->restyle();
  describe();
}

void WindowPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  compute();
}

/// While the point is dragged only it moves: the map doesn't depend on where it is.
void WindowPanel::compute() {
  const PlanPtr plan = desk_.document.plan();
  if (!isVisible() || dragging_ || schedule_.empty() || plan == drawn_) return;
  const Schedule* schedule = find_by_id(plan->schedules, schedule_);
  if (!schedule) return;
  drawn_ = plan;
  try {
    WindowOptions options;
    options.size = map_points;
    window_map_into(plot_->map(), *plan, schedule_, weldment_ + "/" + seam_, options);
    const std::string robot =
        plan->cell && !plan->cell->robots.empty() ? plan->cell->robots[0].id : std::string();
    plot_->setUncertainty(
        relative_uncertainty(*plan, robot, "wire_feed_speed", schedule->wire_feed_speed_m_min).value_or(0) *
            schedule->wire_feed_speed_m_min,
        relative_uncertainty(*plan, robot, "travel_speed", schedule->travel_speed_mm_s).value_or(0) *
            schedule->travel_speed_mm_s);
    plot_->showMap(value_->currentData().toString());
    describe();
  } catch (const InputError& error) {
    limits_->setText(refusal_text(error));
  }
}

/// Which limits cut the window, and how far inside them the working point is.
void WindowPanel::describe() {
  const WindowMap& map = plot_->map();
  if (map.broken.empty()) return;
  const UnitView& units = UnitView::shared();
  QString text = tr("%1 on %2/%3: %4 % of the map is feasible; the working point %5.")
                     .arg(QString::fromStdString(map.schedule), QString::fromStdString(map.weldment),
                          QString::fromStdString(map.seam), units.numberText(map.feasible_pct(), "", 3),
                          map.working_point_is_feasible ? tr("keeps all limits") : tr("does not keep them"));
  for (const WindowLimit& limit : map.limits) {
    if (!limit.bound || !limit.at_working_point || !limit.margin() || *limit.margin() >= 0) continue;
    text += QStringLiteral(" ") + tr("%1: %2 against %3.")
                                      .arg(shown_text(limit.what),
                                           units.quantityText(*limit.at_working_point, limit.unit.c_str(), 3),
                                           units.quantityText(*limit.bound, limit.unit.c_str(), 3));
  }
  text += QStringLiteral(" ") +
          tr("Hatched: a limit is not kept. Solid lines: leg; dashed: heat input; dotted: t8/5 by "
             "EN 1011-2.");
  limits_->setText(text);
}

void WindowPanel::move(double wire_feed_speed_m_min, double travel_speed_mm_s, bool last) {
  const auto at = find_schedule(*desk_.document.plan(), schedule_);
  if (!at) return;
  dragging_ = !last;
  const auto set_point = [&](Plan& plan) {
    // What a person can set: two decimals of m/min, two of mm/s.
    Schedule& schedule = plan.schedules[*at];
    field_named<Schedule>("wire_feed_speed_m_min")
        ->set_text(schedule, rounded_text(wire_feed_speed_m_min, 3));
    field_named<Schedule>("travel_speed_mm_s")->set_text(schedule, rounded_text(travel_speed_mm_s, 3));
  };
  // A point of a locked schedule may be dragged to try values; releasing it asks.
  const auto refusal = desk_.document.edit(tr("Move working point"), "window." + schedule_, set_point,
                                           last ? WhenLocked::offer : WhenLocked::refuse);
  if (refusal && (last || !refusal->locked)) emit message(refusal->text);
  if (last) {
    desk_.document.endTyping();
    drawn_.reset();
    compute();
  }
}

}  // namespace seamtakt::desk
