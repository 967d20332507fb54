#include "models/tables/schedule_difference.hpp"

#include <QCoreApplication>

namespace seamtakt::desk {

namespace {

class Difference : public QObject {
  Q_OBJECT
};

template <class Object>
void add_rows(std::vector<ValueModel::Row>& rows, const QString& prefix, const Object& one,
              const Object& other) {
  const UnitView& units = UnitView::shared();
  for (const FieldInfo& field : fields_of<Object>().fields) {
    if (field.kind == FieldKind::object || field.kind == FieldKind::object_list || field.key == "id")
      continue;
    const std::string a = field.text(one), b = field.text(other);
    if (a == b) continue;
    const QString unit = units.unitText(field.unit);
    ValueModel::Row row;
    row.cells = {text_cell(prefix + core_label(field.label) +
                           (unit.isEmpty() ? QString() : QStringLiteral(", ") + unit)),
                 text_cell(a.empty() ? QStringLiteral("–") : units.fieldShown(a, field)),
                 text_cell(b.empty() ? QStringLiteral("–") : units.fieldShown(b, field))};
    rows.push_back(std::move(row));
  }
}

template <class Nested>
Nested value_or_empty(const std::optional<Nested>& maybe) {
  return maybe.value_or(Nested());
}

}  // namespace

std::vector<GridColumn> difference_columns() {
  return {text_column("field", Difference::tr("Field")), text_column("one", Difference::tr("This schedule")),
          text_column("other", Difference::tr("Compared with"))};
}

std::vector<ValueModel::Row> difference_rows(const Schedule& one, const Schedule& other) {
  std::vector<ValueModel::Row> rows;
  add_rows(rows, {}, one, other);
  add_rows(rows, Difference::tr("Weave: "), value_or_empty(one.weave), value_or_empty(other.weave));
  add_rows(rows, Difference::tr("Use: "), value_or_empty(one.use), value_or_empty(other.use));
  add_rows(rows, Difference::tr("Limit: "), value_or_empty(one.limits), value_or_empty(other.limits));
  return rows;
}

}  // namespace seamtakt::desk

#include "schedule_difference.moc"
