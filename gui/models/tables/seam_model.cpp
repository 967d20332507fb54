#include "models/tables/seam_model.hpp"

#include "document/plan_items.hpp"
#include "models/tables/value_model.hpp"
#include "models/words/state_text.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt::desk {

namespace {

/// What the table shows of a seam's own fields, in this order; the form has them all.
constexpr const char* shown_seam_fields[] = {"id",       "joint",     "thickness_mm", "leg_mm", "gap_mm",
                                             "position", "schedules", "by",           "jobs"};
/// Behind the derived values: what a cell programmer sets for many seams at once.
constexpr const char* shown_cell_fields[] = {"robots", "orientation", "after"};
constexpr const char* shown_seam_values[] = {"leg_mm", "throat_mm", "angular_distortion_deg"};
constexpr const char* shown_pass_values[] = {"heat_input_kJ_mm", "cooling_time_s", "preheat_needed_C",
                                             "haz_hardness_HV", "arc_time_s"};

template <class Row>
GridColumn derived_column(const Column<Row>& column, const char* prefix) {
  return {prefix + std::string(column.key),
          core_label(column.label),
          column.unit,
          core_text(column.help),
          true,
          true,
          nullptr};
}

bool is_number_kind(FieldKind kind) {
  return kind == FieldKind::number || kind == FieldKind::integer || kind == FieldKind::number_list;
}

std::vector<GridColumn> seam_table_columns() {
  std::vector<GridColumn> columns;
  columns.push_back(
      {"mark", SeamModel::tr("State"), "",
       SeamModel::tr(
           "Worst finding on the seam that this page lists; behind it, where it is worse, what another "
           "page has on the seam"),
       false, true, nullptr});
  columns.push_back({"weldment", SeamModel::tr("Weldment"), "",
                     SeamModel::tr("The weldment that the seam belongs to"), false, true, nullptr});
  for (const char* key : shown_seam_fields)
    if (const FieldInfo* field = field_named<Seam>(key))
      columns.push_back({key, core_label(field->label), field->unit, core_text(field->help),
                         is_number_kind(field->kind), false, field});
  for (const char* key : shown_seam_values)
    if (const auto* column = find_column(seam_columns(), key))
      columns.push_back(derived_column(*column, "seam."));
  for (const char* key : shown_pass_values)
    if (const auto* column = find_column(pass_columns(), key))
      columns.push_back(derived_column(*column, "pass."));
  for (const char* key : shown_cell_fields)
    if (const FieldInfo* field = field_named<Seam>(key))
      columns.push_back(
          {key, core_label(field->label), field->unit, core_text(field->help), false, false, field});
  // The drawn leg and the obtained one are side by side: say which is which.
  for (GridColumn& column : columns) {
    if (column.key == "seam.leg_mm") column.label = SeamModel::tr("Leg obtained");
    if (column.key == "leg_mm") column.label = SeamModel::tr("Leg drawn");
    if (column.key == "seam.throat_mm") column.label = SeamModel::tr("Throat obtained");
  }
  return columns;
}

int digits_of(const std::string& key) {
  if (key.starts_with("seam.")) return find_column(seam_columns(), key.substr(5))->digits;
  return find_column(pass_columns(), key.substr(5))->digits;
}

}  // namespace

SeamModel::SeamModel(Document& document, QObject* parent)
    : GridModel(parent, &document), document_(document), plan_(document.plan()) {
  setColumns(seam_table_columns());
  connect(&document_, &Document::planChanged, this, &SeamModel::rebuild);
  connect(&document_, &Document::replaced, this,
          [this] { weldment_ = document_.plan()->weldments.empty() ? -1 : 0; });
  connect(&UnitView::shared(), &UnitView::changed, this, [this] { unitsChanged(); });
  rebuild();
}

void SeamModel::setWeldment(int weldment) {
  if (weldment == weldment_) return;
  weldment_ = weldment;
  rebuild();
}

void SeamModel::rebuild() {
  std::vector<SeamPlace> rows;
  const PlanPtr plan = document_.plan();
  for (std::size_t w = 0; w < plan->weldments.size(); ++w)
    if (weldment_ < 0 || static_cast<std::size_t>(weldment_) == w)
      for (std::size_t s = 0; s < plan->weldments[w].seams.size(); ++s) rows.push_back({w, s});
  const bool same_rows =
      rows.size() == rows_.size() &&
      std::equal(rows.begin(), rows.end(), rows_.begin(), [](const SeamPlace& a, const SeamPlace& b) {
        return a.weldment == b.weldment && a.seam == b.seam;
      });
  if (same_rows) {
    plan_ = plan;
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    return;
  }
  beginResetModel();
  plan_ = plan;
  rows_ = std::move(rows);
  endResetModel();
}

void SeamModel::setResults(const ResultsPtr& results) {
  results_ = results;
  findings_ = FindingIndex(results->findings);
  first_seam_.clear();
  first_pass_.clear();
  std::size_t seam = 0, pass = 0;
  for (const Weldment& weldment : results->plan->weldments) {
    first_seam_.push_back(seam);
    seam += weldment.seams.size();
    for (const Seam& each : weldment.seams) {
      first_pass_.push_back(pass);
      pass += each.schedules.size();
    }
  }
  if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int SeamModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

std::string SeamModel::appendRow(Plan& plan) const {
  if (plan.weldments.empty()) return {};
  const std::size_t at = weldment_ < 0 ? plan.weldments.size() - 1 : static_cast<std::size_t>(weldment_);
  return at < plan.weldments.size() ? add_item(plan, weldment_address(at) + "/seams") : std::string();
}

int SeamModel::rowOf(const SeamPlace& place) const {
  for (std::size_t row = 0; row < rows_.size(); ++row)
    if (rows_[row].weldment == place.weldment && rows_[row].seam == place.seam) return static_cast<int>(row);
  return -1;
}

const Weldment& SeamModel::weldmentOf(int row) const {
  return plan_->weldments[place(row).weldment];
}
const Seam& SeamModel::seam(int row) const {
  return weldmentOf(row).seams[place(row).seam];
}

const SeamEvaluation* SeamModel::evaluation(int row) const {
  const SeamPlace& at = place(row);
  if (!results_ || at.weldment >= first_seam_.size()) return nullptr;
  const std::size_t index = first_seam_[at.weldment] + at.seam;
  if (index >= results_->evaluation.seams.size()) return nullptr;
  const SeamEvaluation& found = results_->evaluation.seams[index];
  return found.seam == seam(row).id ? &found : nullptr;
}

const PassEvaluation* SeamModel::firstPass(const SeamEvaluation& of_seam) const {
  const std::size_t seam_index = static_cast<std::size_t>(&of_seam - results_->evaluation.seams.data());
  if (seam_index >= first_pass_.size() || first_pass_[seam_index] >= results_->evaluation.passes.size())
    return nullptr;
  const PassEvaluation& pass = results_->evaluation.passes[first_pass_[seam_index]];
  return pass.seam == of_seam.seam && pass.weldment == of_seam.weldment ? &pass : nullptr;
}

/// A pass value of a seam with several passes is shown as that of its first one; the table of passes has all.
ColumnValue SeamModel::derived(int row, int column) const {
  const std::string& key = columns()[static_cast<std::size_t>(column)].key;
  const SeamEvaluation* of_seam = evaluation(row);
  if (!of_seam) return {};
  if (key.starts_with("seam.")) return find_column(seam_columns(), key.substr(5))->value(*of_seam);
  const PassEvaluation* pass = key.starts_with("pass.") ? firstPass(*of_seam) : nullptr;
  return pass ? find_column(pass_columns(), key.substr(5))->value(*pass) : ColumnValue();
}

/// The word that a pass value is shown as; empty where its number is.
QString SeamModel::wordShown(int row, int column) const {
  const std::string& key = columns()[static_cast<std::size_t>(column)].key;
  const SeamEvaluation* of_seam = evaluation(row);
  const PassEvaluation* pass = of_seam && key.starts_with("pass.") ? firstPass(*of_seam) : nullptr;
  return pass ? word_shown(*find_column(pass_columns(), key.substr(5)), *pass) : QString();
}

QString SeamModel::cellText(int row, int column) const {
  const GridColumn& about = columns()[static_cast<std::size_t>(column)];
  if (about.key == "mark") return results_ ? state_text(rowState(row)) : QString();
  if (about.key == "weldment") return QString::fromStdString(weldmentOf(row).id);
  if (!about.is_derived)
    return UnitView::shared().fieldShown(field_named<Seam>(about.key)->text(seam(row)), *about.field);
  if (const QString word = wordShown(row, column); !word.isEmpty()) return word;
  return UnitView::shared().columnText(derived(row, column), about.unit, digits_of(about.key));
}

std::optional<double> SeamModel::cellNumber(int row, int column) const {
  const GridColumn& about = columns()[static_cast<std::size_t>(column)];
  if (about.key == "mark") return state_rank(rowState(row));
  if (!about.is_derived) return field_named<Seam>(about.key)->number(seam(row));
  const ColumnValue value = derived(row, column);
  if (const double* number = std::get_if<double>(&value)) return *number;
  return std::nullopt;
}

QString SeamModel::rowAddress(int row) const {
  return QString::fromStdString(seam_address(place(row).weldment, place(row).seam));
}

QString SeamModel::cellPlace(int row, int column) const {
  const std::string& key = columns()[static_cast<std::size_t>(column)].key;
  const QString place = QString::fromStdString(weldmentOf(row).id + "/" + seam(row).id);
  if (key.starts_with("seam.") || key == "mark") return place;
  return key.starts_with("pass.") ? place + QStringLiteral("/pass 1") : QString();
}

bool SeamModel::isPartlyJudged(int row) const {
  const SeamEvaluation* of_seam = evaluation(row);
  const PassEvaluation* pass = of_seam ? firstPass(*of_seam) : nullptr;
  if (!pass) return false;
  const std::vector<PassEvaluation>& passes = results_->evaluation.passes;
  for (const PassEvaluation* const end = passes.data() + passes.size();
       pass != end && pass->seam == of_seam->seam && pass->weldment == of_seam->weldment; ++pass)
    if (is_partly_judged(*pass)) return true;
  return false;
}

RowState SeamModel::rowState(int row) const {
  RowState state = findings_.stateWithin(Link::seams, weldmentOf(row).id + "/" + seam(row).id);
  state.is_partly_judged = isPartlyJudged(row);
  return state;
}

bool SeamModel::rowPartlyJudged(int row) const {
  return isPartlyJudged(row);
}

std::optional<Severity> SeamModel::rowSeverity(int row) const {
  return rowState(row).own;
}

std::optional<Severity> SeamModel::rowBeyond(int row) const {
  return rowState(row).beyond;
}

}  // namespace seamtakt::desk
