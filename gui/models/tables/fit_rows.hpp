#pragma once

#include "models/tables/value_model.hpp"
#include "plan/fit/fit.hpp"

namespace seamtakt::desk {

/// What a fit changes, a row a seam: each value before and after, and what holds it back. `only_existing`:
/// only seams that take a schedule of the plan as it stands are changed.
std::vector<GridColumn> fit_columns();
std::vector<ValueModel::Row> fit_rows(const Plan& plan, const FitResult& result, bool only_existing);

/// Whether the fit changes the seam.
bool is_change(const FittedSeam& seam, bool only_existing);

/// The table of a fit: each row that changes something has a box, ticked at first, that a person clears where
/// the seam shall stay as it is.
class FitRows : public ValueModel {
  Q_OBJECT

 public:
  explicit FitRows(QObject* parent = nullptr);
  void show(const Plan& plan, const FitResult& result, bool only_existing);
  /// Seams whose change is ticked.
  std::vector<FittedSeam> ticked() const;
  int tickedCount() const;

  QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void ticksChanged();

 private:
  enum class Tick { none, off, on };
  std::vector<FittedSeam> seams_;
  std::vector<Tick> ticks_;
};

}  // namespace seamtakt::desk
