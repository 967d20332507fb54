#include "models/tables/fit_rows.hpp"

#include <QCoreApplication>
#include <algorithm>

#include "document/plan_address.hpp"
#include "document/shown_text.hpp"

namespace seamtakt::desk {

namespace {

class FitTable : public QObject {
  Q_OBJECT
};

QString fitted_state(const FittedSeam& seam, bool only_existing) {
  if (!seam.has_settings) return FitTable::tr("no settings");
  if (seam.is_existing) return FitTable::tr("existing schedule");
  if (!seam.is_changed) return FitTable::tr("as planned");
  return only_existing ? FitTable::tr("new settings, not taken") : FitTable::tr("new settings");
}

/// "8.6 → 9.2", or the value alone where it stays.
ValueModel::Cell change_cell(std::optional<double> from, std::optional<double> to, const char* unit) {
  const UnitView& units = UnitView::shared();
  const auto text = [&](std::optional<double> value) {
    return value ? units.numberText(*value, unit, 4) : QStringLiteral("–");
  };
  return text_cell(text(from) == text(to) ? text(from) : text(from) + QStringLiteral(" → ") + text(to));
}

QString limits_text(const std::vector<FitLimit>& limits) {
  QStringList words;
  for (const FitLimit& limit : limits) words << shown_text(limit.sentence);
  return words.join(QStringLiteral("; "));
}

}  // namespace

bool is_change(const FittedSeam& seam, bool only_existing) {
  return seam.is_existing || (seam.is_changed && !only_existing);
}

std::vector<GridColumn> fit_columns() {
  return {text_column("seam", core_label("Seam")),
          text_column("state", FitTable::tr("Found")),
          text_column("schedule", core_label("Schedule")),
          text_column("passes", core_label("Passes")),
          text_column("wire_feed_speed_m_min", core_label("wire feed speed"), {}, "m/min"),
          text_column("arc_voltage_V", core_label("arc voltage"), {}, "V"),
          text_column("travel_speed_mm_s", core_label("travel speed"), {}, "mm/s"),
          text_column("heat_input_kJ_mm", core_label("Heat input"), {}, "kJ/mm"),
          text_column("leg_mm", core_label("Leg"), {}, "mm"),
          text_column("time_s", FitTable::tr("Time"), {}, "s"),
          text_column("held", FitTable::tr("Held back by, or in conflict"),
                      FitTable::tr("Without settings: limits that no settings keep together"))};
}

std::vector<ValueModel::Row> fit_rows(const Plan& plan, const FitResult& result, bool only_existing) {
  std::vector<ValueModel::Row> rows;
  for (const FittedSeam& seam : result.seams) {
    const FitSettings &a = seam.before, &b = is_change(seam, only_existing) ? seam.after : seam.before;
    const QString from = QString::fromStdString(a.schedule), to = QString::fromStdString(b.schedule);
    ValueModel::Row row;
    row.cells = {text_cell(QString::fromStdString(seam.weldment + "/" + seam.seam)),
                 text_cell(fitted_state(seam, only_existing)),
                 text_cell(from == to ? from : from + QStringLiteral(" → ") + to),
                 change_cell(a.passes, b.passes, ""),
                 change_cell(a.wire_feed_speed_m_min, b.wire_feed_speed_m_min, "m/min"),
                 change_cell(a.arc_voltage_V, b.arc_voltage_V, "V"),
                 change_cell(a.travel_speed_mm_s, b.travel_speed_mm_s, "mm/s"),
                 change_cell(a.heat_input_kJ_mm, b.heat_input_kJ_mm, "kJ/mm"),
                 change_cell(a.leg_mm, b.leg_mm, "mm"),
                 change_cell(a.time_s, b.time_s, "s"),
                 text_cell(limits_text(seam.has_settings ? seam.binding : seam.conflicts))};
    if (const auto at = find_seam(plan, seam.weldment, seam.seam))
      row.address = QString::fromStdString(seam_address(at->weldment, at->seam));
    rows.push_back(std::move(row));
  }
  return rows;
}

FitRows::FitRows(QObject* parent) : ValueModel(fit_columns(), parent) {}

void FitRows::show(const Plan& plan, const FitResult& result, bool only_existing) {
  seams_ = result.seams;
  ticks_.clear();
  for (const FittedSeam& seam : seams_)
    ticks_.push_back(is_change(seam, only_existing) ? Tick::on : Tick::none);
  setRows(fit_rows(plan, result, only_existing));
  emit ticksChanged();
}

std::vector<FittedSeam> FitRows::ticked() const {
  std::vector<FittedSeam> ticked;
  for (std::size_t row = 0; row < seams_.size(); ++row)
    if (ticks_[row] == Tick::on) ticked.push_back(seams_[row]);
  return ticked;
}

int FitRows::tickedCount() const {
  return static_cast<int>(std::ranges::count(ticks_, Tick::on));
}

QVariant FitRows::data(const QModelIndex& index, int role) const {
  if (role != Qt::CheckStateRole || !index.isValid() || index.column() != 0)
    return ValueModel::data(index, role);
  const Tick tick = ticks_[static_cast<std::size_t>(index.row())];
  if (tick == Tick::none) return {};
  return tick == Tick::on ? Qt::Checked : Qt::Unchecked;
}

bool FitRows::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::CheckStateRole || !(flags(index) & Qt::ItemIsUserCheckable)) return false;
  const bool on = value.toInt() == Qt::Checked;
  ticks_[static_cast<std::size_t>(index.row())] = on ? Tick::on : Tick::off;
  emit dataChanged(index, index, {Qt::CheckStateRole});
  emit ticksChanged();
  return true;
}

Qt::ItemFlags FitRows::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = ValueModel::flags(index);
  if (index.isValid() && index.column() == 0 && ticks_[static_cast<std::size_t>(index.row())] != Tick::none)
    flags |= Qt::ItemIsUserCheckable;
  return flags;
}

}  // namespace seamtakt::desk

#include "fit_rows.moc"
