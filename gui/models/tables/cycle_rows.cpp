#include "models/tables/cycle_rows.hpp"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "cell/timeline/cycle_columns.hpp"
#include "document/plan_address.hpp"
#include "document/shown_text.hpp"

namespace seamtakt::desk {

namespace {

/// The words are listed with those of the page.
class CycleTable : public QObject {
  Q_OBJECT
};

struct Part {
  QString name;
  double seconds;
};

/// Of the parts that only some cycles have, those that this one or the other has.
std::vector<Part> parts_of(const CycleResult& cycle, const CycleResult& other) {
  std::vector<Part> parts;
  for (const auto* part : cycle_parts())
    if (!part->present || part->present(cycle) || part->present(other))
      parts.push_back({core_label(part->label), column_number(part->value(cycle)).value_or(0)});
  return parts;
}

/// Sums in another order differ in their last bits: that is no change.
double change_s(double from_s, double to_s) {
  return std::abs(to_s - from_s) < 1e-6 ? 0 : to_s - from_s;
}

ValueModel::Row loss_row(const Part& part, const Part& other, bool other_is_before) {
  const double change = change_s(part.seconds, other.seconds);
  ValueModel::Row row;
  row.cells = {text_cell(part.name), number_cell(part.seconds, 5), number_cell(other.seconds, 5),
               number_cell(other_is_before && change != 0 ? -change : change, 4)};
  return row;
}

double waited_s(const std::vector<WaitSum>& sums, WaitCause cause) {
  for (const WaitSum& sum : sums)
    if (sum.cause == cause) return sum.time_s;
  return 0;
}

/// Below the waits what they are made of.
void add_wait_rows(const CycleResult& cycle, const CycleResult& other, bool other_is_before,
                   std::vector<ValueModel::Row>& rows) {
  const QString waiting = core_label("Waiting");
  auto at = std::find_if(rows.begin(), rows.end(),
                         [&](const ValueModel::Row& row) { return row.cells[0].text == waiting; });
  if (at == rows.end()) return;
  const std::vector<WaitSum> others = wait_sums(other);
  for (const WaitSum& sum : wait_sums(cycle)) {
    const QString name = QStringLiteral("    ") + core_text(name_of(sum.cause).english());
    at = rows.insert(at + 1,
                     loss_row({name, sum.time_s}, {name, waited_s(others, sum.cause)}, other_is_before));
  }
}

/// Of a run of weld; other moves have none.
QString direction_word(const Move& move) {
  if (move.kind != MoveKind::arc) return {};
  return move.reversed ? core_text("reversed") : core_text("as drawn");
}

QString orientation_of(const Plan& plan, const SeamPlace& place) {
  return QString::fromStdString(plan.weldments[place.weldment].seams[place.seam].orientation);
}

}  // namespace

QString move_word(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "arc");
    case MoveKind::start:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "arc start");
    case MoveKind::end:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "crater and post-flow");
    case MoveKind::air:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "air move");
    case MoveKind::sense:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "sensing");
    case MoveKind::wait:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "wait");
    case MoveKind::orientation:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "positioner");
    case MoveKind::service:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "torch service");
    case MoveKind::wire_change:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "wire change");
    case MoveKind::tip_change:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "tip change");
    case MoveKind::spool_change:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "spool change");
    case MoveKind::index:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "index");
    case MoveKind::load:
      return QCoreApplication::translate("seamtakt::desk::TimelineView", "load and unload");
  }
  return {};
}

std::vector<GridColumn> loss_columns() {
  return {
      text_column("part", CycleTable::tr("Part of the cycle")),
      {"seconds", CycleTable::tr("Time"), "s", CycleTable::tr("Sum over all robots"), true, true, nullptr},
      {"other", CycleTable::tr("Compared"), "s", CycleTable::tr("The same of what it is compared with"), true,
       true, nullptr},
      {"change", CycleTable::tr("Change"), "s",
       CycleTable::tr("From the cycle before to the one after it: what is gained is negative"), true, true,
       nullptr}};
}

std::vector<ValueModel::Row> loss_rows(const CycleResult& cycle, const CycleResult* other,
                                       bool other_is_before) {
  const CycleResult& compared = other ? *other : cycle;
  const std::vector<Part> parts = parts_of(cycle, compared), others = parts_of(compared, cycle);
  std::vector<ValueModel::Row> rows;
  for (std::size_t i = 0; i < parts.size(); ++i)
    rows.push_back(loss_row(parts[i], others[i], other_is_before));
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto& a, const auto& b) { return *a.cells[1].number > *b.cells[1].number; });
  add_wait_rows(cycle, other ? *other : cycle, other_is_before, rows);
  const Part whole{CycleTable::tr("Cycle"), cycle.cycle_time_s};
  rows.insert(rows.begin(),
              loss_row(whole, {{}, other ? other->cycle_time_s : cycle.cycle_time_s}, other_is_before));
  return rows;
}

std::vector<GridColumn> move_columns() {
  return {text_column("robot", CycleTable::tr("Robot")),
          number_column("start", CycleTable::tr("From"), {}, "s"),
          number_column("end", CycleTable::tr("To"), {}, "s"),
          text_column("kind", CycleTable::tr("Move")),
          text_column("seam", CycleTable::tr("Seam")),
          number_column("pass", CycleTable::tr("Pass")),
          text_column("why", core_label("Why")),
          text_column("direction", core_label("Direction")),
          text_column("orientation", core_label("Orientation"))};
}

std::vector<ValueModel::Row> move_rows(const Plan& plan, const CycleResult& cycle) {
  std::vector<ValueModel::Row> rows;
  for (const Move& move : cycle.moves) {
    ValueModel::Row row;
    const auto place = find_seam(plan, cycle.weldment, move.seam);
    row.cells = {text_cell(move.robot.empty() ? CycleTable::tr("cell") : QString::fromStdString(move.robot)),
                 number_cell(move.start_s, 5),
                 number_cell(move.end_s, 5),
                 text_cell(move_word(move.kind)),
                 text_cell(QString::fromStdString(move.seam)),
                 text_cell(move.pass ? QString::number(move.pass) : QString()),
                 text_cell(move.why.is_empty() ? QString() : shown_text(move.why)),
                 text_cell(direction_word(move)),
                 text_cell(place ? orientation_of(plan, *place) : QString())};
    if (place) row.address = QString::fromStdString(seam_address(place->weldment, place->seam));
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace seamtakt::desk

#include "cycle_rows.moc"
