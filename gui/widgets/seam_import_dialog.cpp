#include "widgets/seam_import_dialog.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QTableWidget>
#include <QVBoxLayout>

#include "base/units/units.hpp"
#include "document/shown_text.hpp"
#include "models/words/typed_numbers.hpp"
#include "models/words/unit_view.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

using State = ImportedRow::State;

/// Rows of the preview: more can't be looked over.
constexpr int most_preview_rows = 500;

/// A value of a list, as lists have it, with the decimal sign of the view.
QString value_of(const std::string& text, const std::string& key, ListKind kind) {
  const auto column = list_column(kind, key);
  if (!column || !column->field) return text_of(text);
  return text_of(shown_numbers(text, column->field->kind, UnitView::shared().hasDecimalComma()));
}

/// "leg (leg_mm)".
QString column_name(const ListColumn& column) {
  QString name = column.field ? shown_word(column.field->label) : shown_word("Weldment");
  if (column.object) name = shown_word(column.object->label) + QStringLiteral(": ") + name;
  return QStringLiteral("%1 (%2)").arg(name, text_of(column.key));
}

/// Whole columns, and the parts of lists that seam lists usually have apart.
std::vector<ListColumn> offered_columns(ListKind kind) {
  std::vector<ListColumn> columns = list_columns(kind);
  for (const ListColumn& whole : list_columns(kind)) {
    if (!has_parts(whole)) continue;
    const bool is_path = whole.field->kind == FieldKind::path;
    if (!is_path && whole.field->most != 2) continue;
    for (const char* element : {"[1]", "[2]"})
      for (const char* axis : {".x", ".y", ".z"}) {
        const auto part = list_column(kind, whole.key + element + (is_path ? axis : ""));
        if (part && (is_path || axis[1] == 'x')) columns.push_back(*part);
      }
  }
  return columns;
}

QTableWidget* table(const QStringList& heads, const QString& name, QWidget* parent) {
  auto* made = new QTableWidget(0, static_cast<int>(heads.size()), parent);
  made->setHorizontalHeaderLabels(heads);
  made->setAccessibleName(name);
  made->verticalHeader()->hide();
  made->setEditTriggers(QAbstractItemView::NoEditTriggers);
  made->setSelectionBehavior(QAbstractItemView::SelectRows);
  made->horizontalHeader()->setStretchLastSection(true);
  made->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  made->setTabKeyNavigation(false);
  return made;
}

void add_row(QTableWidget& to, const QStringList& texts) {
  const int row = to.rowCount();
  to.insertRow(row);
  for (int column = 0; column < texts.size(); ++column) {
    auto* item = new QTableWidgetItem(texts[column]);
    item->setToolTip(texts[column]);
    to.setItem(row, column, item);
  }
}

QString row_name(const ImportedRow& row) {
  return text_of(row.weldment.empty() ? row.id : row.weldment + "/" + row.id);
}

QString settings_key(ListKind kind) {
  return kind == ListKind::seams ? QStringLiteral("lists/seams") : QStringLiteral("lists/schedules");
}

}  // namespace

SeamImportDialog::SeamImportDialog(const PlanPtr& plan, const QString& path, QWidget* parent)
    : QDialog(parent), plan_(plan), path_(path) {
  setWindowTitle(tr("Import list"));
  setAccessibleName(tr("Import list"));
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  makeChoices(path);
  makeTables();
  makeButtons();
  connect(&reading_, &ListReading::finished, this, &SeamImportDialog::showList);
  connect(&reading_, &ListReading::failed, this, &SeamImportDialog::showFailure);
  resize(960, 680);
  read(true);
}

void SeamImportDialog::makeChoices(const QString& path) {
  auto* form = new QFormLayout;
  auto* file = new QLabel(QFileInfo(path).fileName(), this);
  file->setTextFormat(Qt::PlainText);
  form->addRow(tr("File"), file);
  const auto choice = [&](const QString& label) {
    auto* made = new QComboBox(this);
    made->setAccessibleName(label);
    form->addRow(label, made);
    return made;
  };
  kind_ = choice(tr("List of"));
  kind_->addItems({tr("Seams"), tr("Schedules")});
  weldment_ = choice(tr("Weldment of rows that name none"));
  weldment_->setEditable(true);
  for (const Weldment& weldment : plan_->weldments) weldment_->addItem(text_of(weldment.id));
  if (plan_->weldments.empty()) weldment_->setEditText(QStringLiteral("W1"));
  metal_ = choice(tr("Base metal of new seams that name none"));
  metal_->addItem(tr("none"));
  for (const BaseMetal& metal : plan_->base_metals) metal_->addItem(text_of(metal.id), text_of(metal.id));
  static_cast<QVBoxLayout*>(layout())->addLayout(form);
  connect(kind_, &QComboBox::activated, this, [this] { read(true); });
  connect(weldment_, &QComboBox::currentTextChanged, this, [this] { read(false); });
  connect(metal_, &QComboBox::activated, this, [this] { read(false); });
}

void SeamImportDialog::makeTables() {
  auto* column = static_cast<QVBoxLayout*>(layout());
  const auto caption = [&](const QString& text, QWidget* of) {
    auto* made = new QLabel(text, this);
    made->setBuddy(of);
    column->addWidget(made);
    column->addWidget(of, 1);
  };
  columns_ = table({tr("Column"), tr("Heading"), tr("Read as"), tr("Unit")}, tr("Columns"), this);
  rows_ = table({tr("Row"), tr("Name"), tr("State"), tr("Heading or key"), tr("Before, or found"),
                 tr("After, or expected")},
                tr("Preview"), this);
  caption(tr("&Columns"), columns_);
  caption(tr("&Preview"), rows_);
  const auto label = [&] {
    auto* made = new QLabel(this);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    column->addWidget(made);
    return made;
  };
  counts_ = label();
  notes_ = label();
}

void SeamImportDialog::makeButtons() {
  skip_ = new QCheckBox(tr("Leave refused rows out and import the others"), this);
  skip_->setAccessibleName(skip_->text());
  layout()->addWidget(skip_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  import_ = buttons->button(QDialogButtonBox::Ok);
  import_->setText(tr("Import"));
  import_->setAccessibleName(import_->text());
  import_->setEnabled(false);
  layout()->addWidget(buttons);
  connect(skip_, &QCheckBox::toggled, this, [this] { read(false); });
  connect(buttons, &QDialogButtonBox::accepted, this, &SeamImportDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

ListKind SeamImportDialog::kind() const {
  return kind_->currentIndex() == 0 ? ListKind::seams : ListKind::schedules;
}

/// Headings of lists that were imported, with what a person read them as; without a key: not read.
ListColumnsFile SeamImportDialog::remembered() const {
  ListColumnsFile columns;
  columns.is_memory = true;
  const QVariantMap headings = QSettings().value(settings_key(kind())).toMap();
  for (auto at = headings.begin(); at != headings.end(); ++at) {
    const QStringList parts = at.value().toString().split('|');
    const auto column = list_column(kind(), parts.value(0).toStdString());
    if (!column) {
      columns.ignored.push_back(at.key().toStdString());
      continue;
    }
    ListColumnsFile::Entry entry;
    entry.key = column->key;
    entry.heading = at.key().toStdString();
    if (column->field && *column->field->unit != '\0')
      entry.unit = find_unit(parts.value(1).toStdString(), find_unit(column->field->unit)->dimension);
    columns.entries.push_back(std::move(entry));
  }
  return columns;
}

void SeamImportDialog::remember() const {
  if (!mapping_) return;  // the heads tell the same the next time
  QVariantMap headings = QSettings().value(settings_key(kind())).toMap();
  for (const MappedColumn& column : mapping_->columns)
    if (!column.heading.empty())
      headings[text_of(column.heading)] =
          text_of(column.key) + '|' + QString::fromUtf8(column.unit ? column.unit->name : "");
  QSettings().setValue(settings_key(kind()), headings);
}

void SeamImportDialog::read(bool by_heads) {
  if (by_heads) {
    mapping_.reset();
    list_.reset();
  }
  ListQuestion question;
  question.path = path_;
  if (list_) question.book = list_->book;
  question.mapping = mapping_;
  question.remembered = remembered();
  question.options.kind = kind();
  question.options.weldment = weldment_->currentText().trimmed().toStdString();
  question.options.skip_refused = skip_->isChecked();
  const std::string metal = metal_->currentData().toString().toStdString();
  if (!metal.empty() && kind() == ListKind::seams)
    question.options.standards.emplace_back("base_metals", joined_items({metal}));
  import_->setEnabled(false);
  counts_->setText(tr("Reading …"));
  reading_.start(question, plan_);
}

void SeamImportDialog::showFailure(const QString& reason) {
  list_.reset();
  columns_->setRowCount(0);
  rows_->setRowCount(0);
  notes_->clear();
  counts_->setText(reason);
  import_->setEnabled(false);
}

void SeamImportDialog::showList(const ReadListPtr& list) {
  const bool is_new_mapping = !list_ || !mapping_;
  list_ = list;
  if (is_new_mapping) showMapping();
  showRows();
  const ListImport& import = list->import;
  const auto count = [&](State state) { return QString::number(import.count(state)); };
  counts_->setText(
      tr("%1 new, %2 changed, %3 unchanged, %4 refused")
          .arg(count(State::added), count(State::changed), count(State::unchanged), count(State::refused)));
  QStringList notes;
  for (const Sentence& note : list->notes) notes << shown_text(note);
  notes_->setText(notes.join(' '));
  notes_->setVisible(!notes.isEmpty());
  const bool has_some = import.count(State::added) + import.count(State::changed) > 0;
  import_->setEnabled(has_some && (import.is_complete() || skip_->isChecked()));
}

QComboBox* SeamImportDialog::keyChoice(int row) {
  const MappedColumn& mapped = list_->mapping.columns[static_cast<std::size_t>(row)];
  auto* choice = new QComboBox(columns_);
  choice->setAccessibleName(tr("Read %1 as").arg(text_of(mapped.heading)));
  choice->addItem(tr("not read"), QString());
  for (const ListColumn& column : offered_columns(kind()))
    choice->addItem(column_name(column), text_of(column.key));
  if (!mapped.key.empty() && choice->findData(text_of(mapped.key)) < 0)
    choice->addItem(column_name(*list_column(kind(), mapped.key)), text_of(mapped.key));
  choice->setCurrentIndex(std::max(choice->findData(text_of(mapped.key)), 0));
  connect(choice, &QComboBox::activated, this,
          [this, row, choice] { mapColumn(row, choice->currentData().toString(), nullptr); });
  return choice;
}

QComboBox* SeamImportDialog::unitChoice(int row) {
  const MappedColumn& mapped = list_->mapping.columns[static_cast<std::size_t>(row)];
  const auto column = mapped.key.empty() ? std::nullopt : list_column(kind(), mapped.key);
  if (!column || !column->field || *column->field->unit == '\0') return nullptr;
  const Unit* own = find_unit(column->field->unit);
  auto* choice = new QComboBox(columns_);
  choice->setAccessibleName(tr("Unit of %1").arg(text_of(mapped.heading)));
  for (const Unit& unit : known_units())
    if (unit.dimension == own->dimension) choice->addItem(QString::fromUtf8(unit.name));
  choice->setCurrentText(QString::fromUtf8(mapped.unit ? mapped.unit->name : own->name));
  connect(choice, &QComboBox::activated, this, [this, row, choice, own] {
    const MappedColumn& changed = list_->mapping.columns[static_cast<std::size_t>(row)];
    mapColumn(row, text_of(changed.key), find_unit(choice->currentText().toStdString(), own->dimension));
  });
  return choice;
}

void SeamImportDialog::showMapping() {
  columns_->setRowCount(0);
  for (const MappedColumn& mapped : list_->mapping.columns) {
    const int row = columns_->rowCount();
    add_row(*columns_, {text_of(column_letters(mapped.column)), text_of(mapped.heading)});
    columns_->setCellWidget(row, 2, keyChoice(row));
    if (QComboBox* unit = unitChoice(row)) columns_->setCellWidget(row, 3, unit);
  }
  columns_->resizeColumnsToContents();
}

/// A key belongs to one column: the one that had it before isn't read.
void SeamImportDialog::mapColumn(int row, const QString& key, const Unit* unit) {
  if (!list_) return;
  ListMapping mapping = list_->mapping;
  for (MappedColumn& column : mapping.columns)
    if (!key.isEmpty() && column.key == key.toStdString()) column.key.clear();
  MappedColumn& changed = mapping.columns[static_cast<std::size_t>(row)];
  changed.key = key.toStdString();
  changed.unit = unit;
  mapping_ = mapping;
  auto shown = std::make_shared<ReadList>(*list_);
  shown->mapping = std::move(mapping);
  list_ = shown;
  // Later: the choice that was used is one of those that are made anew.
  QMetaObject::invokeMethod(this, &SeamImportDialog::showMapping, Qt::QueuedConnection);
  read(false);
}

/// Refused cells first: they are what a person has to look at.
void SeamImportDialog::showRows() {
  rows_->setRowCount(0);
  const ListImport& import = list_->import;
  const ListKind kind = this->kind();
  const auto is_full = [this] { return rows_->rowCount() >= most_preview_rows; };
  for (const ImportedRow& row : import.rows)
    for (const RefusedCell& cell : row.refused)
      if (!is_full())
        add_row(*rows_, {QString::number(row.row), row_name(row), tr("refused"), text_of(cell.heading),
                         shown_text(cell.found), shown_text(cell.expected)});
  for (const ImportedRow& row : import.rows)
    for (const ChangedValue& change : row.changes)
      if (row.state == State::changed && !is_full())
        add_row(*rows_,
                {QString::number(row.row), row_name(row), tr("changed"), text_of(change.key),
                 value_of(change.before, change.key, kind), value_of(change.after, change.key, kind)});
  for (const ImportedRow& row : import.rows)
    if (row.state == State::added && !is_full())
      add_row(*rows_, {QString::number(row.row), row_name(row), tr("new"), {}, {}, {}});
  if (is_full()) add_row(*rows_, {{}, tr("… and more"), {}, {}, {}, {}});
  rows_->resizeColumnsToContents();
}

void SeamImportDialog::accept() {
  if (!list_ || !import_->isEnabled()) return;
  remember();
  QDialog::accept();
}

}  // namespace seamtakt::desk
