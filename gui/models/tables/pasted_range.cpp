#include "models/tables/pasted_range.hpp"

#include <set>

#include "base/error.hpp"
#include "document/document.hpp"
#include "document/plan_address.hpp"
#include "document/shown_text.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::desk {

namespace {

/// Takes one text after the other into a copy of the plan.
class Reading {
 public:
  explicit Reading(const GridModel& grid)
      : grid_(grid), before_(grid.edited()->plan()), plan_(std::make_shared<Plan>(*before_)) {}

  void addRows(int rows) {
    while (grid_.rowCount() + static_cast<int>(added_.size()) < rows) {
      added_.push_back(grid_.appendRow(*plan_));
      if (added_.back().empty()) return;
    }
  }

  void take(const PastedCell& cell) {
    if (cell.column >= grid_.columnCount())
      return refuse(cell, {}, Document::tr("the table has no such column"));
    const GridColumn& about = grid_.columns()[static_cast<std::size_t>(cell.column)];
    if (!about.field) {
      result_.left_out += cell.text.isEmpty() ? 0 : 1;
      return;
    }
    const bool is_new = cell.row >= grid_.rowCount();
    const std::string address = addressOf(cell.row);
    if (address.empty()) return refuse(cell, {}, Document::tr("the table can't take more rows"));
    const std::string held = field_text(*plan_, address, about.key);
    const QString shown = UnitView::shared().fieldShown(held, *about.field);
    if (cell.text == shown || (is_new && cell.text.isEmpty() && about.field->required)) return;
    if (about.key == "id" && (!is_new || cell.text.isEmpty())) {
      if (!cell.text.isEmpty())
        refuse(cell, shown, Document::tr("an id is changed by Rename, with all that refers to it"));
      return;
    }
    try {
      set_field_text(*plan_, address, about.key, UnitView::shared().fieldTyped(cell.text, *about.field));
    } catch (const InputError& error) {
      return refuse(cell, shown, refusal_text(error));
    }
    taken_.push_back({address, about.key, held, result_.lines.size()});
    result_.lines.push_back({nameOf(cell), shown, cell.text, {}});
    rows_.insert(cell.row);
    ++result_.cells;
  }

  /// The plan as a whole may refuse what each field alone could take: an unknown id, one that is there twice.
  PastedRange finish() {
    while (const auto error = refusalOfPlan())
      if (!refuseTaken(*error)) {
        result_.lines.push_back({{}, {}, {}, refusal_text(*error)});
        ++result_.refused;
        break;
      }
    result_.rows = static_cast<int>(rows_.size());
    result_.added = static_cast<int>(added_.size());
    result_.before = before_;
    if (result_.refused == 0) result_.after = plan_;
    return std::move(result_);
  }

 private:
  struct Taken {
    std::string address, key, held;
    std::size_t line;
  };

  std::string addressOf(int row) const {
    if (row < grid_.rowCount()) return grid_.addressOf(row).toStdString();
    const auto at = static_cast<std::size_t>(row - grid_.rowCount());
    return at < added_.size() ? added_[at] : std::string();
  }

  QString nameOf(const PastedCell& cell) const {
    const QString id = QString::fromStdString(field_text(*plan_, addressOf(cell.row), "id"));
    const QString label = cell.column < grid_.columnCount()
                              ? grid_.columns()[static_cast<std::size_t>(cell.column)].label
                              : QString();
    return id + QStringLiteral(", ") + label;
  }

  void refuse(const PastedCell& cell, const QString& shown, const QString& why) {
    result_.lines.push_back({nameOf(cell), shown, cell.text, why});
    ++result_.refused;
  }

  std::optional<InputError> refusalOfPlan() const {
    try {
      check_plan(*plan_, grid_.edited()->name().toStdString());
      return std::nullopt;
    } catch (const InputError& error) {
      return error;
    }
  }

  /// Puts back what the field at the error's place had; false where none of the pasted ones is there.
  bool refuseTaken(const InputError& error) {
    for (auto each = taken_.begin(); each != taken_.end(); ++each) {
      if (!lies_in(error.pointer(), each->address + "/" + each->key)) continue;
      try {
        set_field_text(*plan_, each->address, each->key, each->held);
      } catch (const InputError&) {
        return false;
      }
      result_.lines[each->line].refusal = refusal_text(error);
      ++result_.refused;
      --result_.cells;
      taken_.erase(each);
      return true;
    }
    return false;
  }

  const GridModel& grid_;
  PlanPtr before_;
  std::shared_ptr<Plan> plan_;
  std::vector<std::string> added_;  ///< addresses of the added rows; the last is empty where there is no room
  std::vector<Taken> taken_;
  std::set<int> rows_;
  PastedRange result_;
};

}  // namespace

PastedRange read_pasted(const GridModel& grid, const std::vector<PastedCell>& cells) {
  Reading reading(grid);
  int rows = 0;
  for (const PastedCell& cell : cells) rows = std::max(rows, cell.row + 1);
  reading.addRows(rows);
  for (const PastedCell& cell : cells) reading.take(cell);
  return reading.finish();
}

}  // namespace seamtakt::desk
