#include "app/drawing_dialog.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QTableWidget>
#include <QVBoxLayout>

#include "app/drawing_words.hpp"
#include "base/error.hpp"
#include "document/shown_text.hpp"
#include "exchange/drawing/drawing_program.hpp"
#include "ledger/store/refusal_sentence.hpp"
#include "models/words/unit_view.hpp"
#include "plots/axonometric_view.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

using SideState = DrawingCandidate::State;

/// Rows of the list: more can't be looked over.
constexpr std::size_t most_rows = 5000;
enum Column {
  seam_column,
  part_column,
  other_column,
  joint_column,
  length_column,
  size_column,
  state_column
};

QLabel* plain_label(QWidget* parent) {
  auto* made = new QLabel(parent);
  made->setTextFormat(Qt::PlainText);
  made->setWordWrap(true);
  return made;
}

}  // namespace

DrawingDialog::DrawingDialog(const PlanPtr& plan, const QString& path, const QString& kept_path,
                             QWidget* parent)
    : QDialog(parent), plan_(plan), path_(path), kept_path_(kept_path) {
  setWindowTitle(tr("Import drawing"));
  setAccessibleName(windowTitle());
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  auto* across = new QHBoxLayout;
  across->setSpacing(2 * unit_px);
  column->addLayout(across, 1);
  form_ = new QFormLayout;
  across->addLayout(form_);
  makeChoices();
  makePicture();
  makeButtons();
  connect(&reading_, &DrawingReading::read, this, &DrawingDialog::showReading);
  connect(&reading_, &DrawingReading::finished, this, &DrawingDialog::showDrawing);
  connect(&reading_, &DrawingReading::failed, this, &DrawingDialog::showFailure);
  resize(1180, 760);
  fillIn();
  ask();
}

void DrawingDialog::makeChoices() {
  QLabel* file = plain_label(this);
  file->setText(QFileInfo(path_).fileName());
  form_->addRow(tr("File"), file);
  const auto choice = [&](const QString& label) {
    auto* made = new QComboBox(this);
    made->setAccessibleName(label);
    form_->addRow(label, made);
    connect(made, &QComboBox::currentTextChanged, this, &DrawingDialog::ask);
    return made;
  };
  const auto line = [&](const QString& label, const QString& tip) {
    auto* made = new QLineEdit(this);
    made->setAccessibleName(label);
    made->setToolTip(tip);
    form_->addRow(label, made);
    connect(made, &QLineEdit::textChanged, this, &DrawingDialog::ask);
    return made;
  };
  const auto check = [&](const QString& label) {
    auto* made = new QCheckBox(label, this);
    made->setAccessibleName(label);
    form_->addRow(made);
    connect(made, &QCheckBox::toggled, this, &DrawingDialog::ask);
    return made;
  };
  weldment_ = choice(tr("Weldment"));
  weldment_->setEditable(true);
  weldment_->setToolTip(tr("One of the plan, or the name of a new one"));
  up_ = choice(tr("Up"));
  up_->setToolTip(tr("Which direction of the drawing is up: seams get their position by it"));
  metal_ = choice(tr("Base metal"));
  thickness_ =
      line(tr("Thickness"),
           tr("Of parts that have none: 8 mm for all of them, or PART=8mm; several with semicolons"));
  throat_ = line(tr("Throat of fillets"),
                 tr("A share of the thinner plate, rounded up to 0.5 mm: a proposal, no design"));
  leg_ = line(tr("Leg"),
              tr("Of fillets on both sides of a joint, in place of the throat: a share such as 0.7t"));
  butts_ = check(tr("Butts filled through the thinner plate"));
  by_use_ = check(tr("Schedules by their use"));
  schedule_ = choice(tr("Schedule of the others"));
}

void DrawingDialog::makePicture() {
  auto* right = new QSplitter(Qt::Vertical, this);
  right->setChildrenCollapsible(false);
  picture_ = new AxonometricView(right);
  sides_ = new QTableWidget(0, state_column + 1, right);
  sides_->setHorizontalHeaderLabels(
      {tr("Seam"), tr("Part"), tr("Other part"), tr("Joint"), tr("Length"), tr("Size"), tr("State")});
  sides_->setAccessibleName(tr("Sides of the joints"));
  sides_->verticalHeader()->hide();
  sides_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  sides_->setSelectionBehavior(QAbstractItemView::SelectRows);
  sides_->setSelectionMode(QAbstractItemView::SingleSelection);
  sides_->setTabKeyNavigation(false);
  sides_->horizontalHeader()->setStretchLastSection(true);
  sides_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  right->addWidget(picture_);
  right->addWidget(sides_);
  right->setSizes({360, 300});
  auto* across = static_cast<QHBoxLayout*>(layout()->itemAt(0)->layout());
  across->addWidget(right, 1);
  connect(picture_, &AxonometricView::picked, this, &DrawingDialog::chooseSide);
  connect(sides_, &QTableWidget::currentCellChanged, this, [this](int row) { picture_->setPicked(row); });
  connect(sides_, &QTableWidget::itemChanged, this, [this](QTableWidgetItem* item) {
    if (is_filling_ || !drawing_ || item->column() != seam_column) return;
    const DrawingCandidate& side = drawing_->import.candidates[static_cast<std::size_t>(item->row())];
    choices_[{side.joint->id, side.side->id}] = item->checkState() == Qt::Checked;
    ask();
  });
}

void DrawingDialog::makeButtons() {
  counts_ = plain_label(this);
  notes_ = plain_label(this);
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 0);
  progress_->setAccessibleName(tr("The drawing is read"));
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  import_ = buttons->button(QDialogButtonBox::Ok);
  import_->setText(tr("Import"));
  import_->setAccessibleName(import_->text());
  for (QWidget* each : std::initializer_list<QWidget*>{counts_, notes_, progress_, buttons})
    layout()->addWidget(each);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

/// What the weldment's last drawing was, where it is one of this name.
const DrawingFile* DrawingDialog::fileBefore() const {
  const auto* weldment = find_by_id(plan_->weldments, weldment_->currentText().trimmed().toStdString());
  return weldment && weldment->drawing_file ? &*weldment->drawing_file : nullptr;
}

/// The one that came from a file of this name, else the only one that has no seams yet, else a new one.
QString DrawingDialog::startingWeldment() const {
  const QFileInfo file(path_);
  for (const Weldment& weldment : plan_->weldments)
    if (weldment.drawing_file &&
        QFileInfo(text_of(weldment.drawing_file->path)).fileName() == file.fileName())
      return text_of(weldment.id);
  if (plan_->weldments.size() == 1 && plan_->weldments.front().seams.empty())
    return text_of(plan_->weldments.front().id);
  return file.completeBaseName();
}

void DrawingDialog::fillIn() {
  is_filling_ = true;
  for (const Weldment& weldment : plan_->weldments) weldment_->addItem(text_of(weldment.id));
  weldment_->setCurrentText(startingWeldment());
  up_->addItem(tr("not known"), QString());
  for (const char* axis : {"+Z", "-Z", "+Y", "-Y", "+X", "-X"})
    up_->addItem(QString::fromUtf8(axis), QString::fromUtf8(axis));
  if (const DrawingFile* before = fileBefore())
    up_->setCurrentIndex(std::max(up_->findData(text_of(before->up)), 0));
  metal_->addItem(tr("none"), QString());
  for (const BaseMetal& metal : plan_->base_metals) metal_->addItem(text_of(metal.id), text_of(metal.id));
  if (plan_->base_metals.size() == 1) metal_->setCurrentIndex(1);
  throat_->setText(QStringLiteral("%1t").arg(usual_throat_rule.share));
  butts_->setChecked(true);
  by_use_->setChecked(true);
  schedule_->addItem(tr("none"), QString());
  for (const Schedule& schedule : plan_->schedules)
    schedule_->addItem(text_of(schedule.id), text_of(schedule.id));
  is_filling_ = false;
}

/// Nothing where an entry can't be used; `refusal` says why.
std::optional<DrawingImportOptions> DrawingDialog::options(QString& refusal) const {
  DrawingImportOptions options;
  options.weldment = weldment_->currentText().trimmed().toStdString();
  if (options.weldment.empty()) {
    refusal = tr("The weldment needs a name.");
    return {};
  }
  options.up = up_->currentData().toString().toStdString();
  const std::string metal = metal_->currentData().toString().toStdString();
  if (!metal.empty()) options.metals = {metal};
  options.butts_through = butts_->isChecked();
  options.schedules_by_use = by_use_->isChecked();
  options.schedule = schedule_->currentData().toString().toStdString();
  options.choices = choices_;
  const auto rule = [](const QLineEdit& line) -> std::optional<SizeRule> {
    const std::string text = line.text().trimmed().toStdString();
    if (text.empty()) return {};
    return parse_size_rule(text, line.accessibleName().toStdString());
  };
  try {
    options.throat_rule = rule(*throat_);
    options.leg_rule = rule(*leg_);
    for (const QString& each : thickness_->text().split(';', Qt::SkipEmptyParts))
      if (!each.trimmed().isEmpty())
        options.thickness_mm.push_back(parse_part_thickness(each.trimmed().toStdString()));
  } catch (const InputError& error) {
    refusal = shown_text(refusal_sentence(error));
    return {};
  }
  return options;
}

void DrawingDialog::ask() {
  if (is_filling_) return;
  import_->setEnabled(false);
  if (find_drawing_program().empty())
    return showFailure(tr(
        "Reading drawings needs the program seamtakt-drawing, which isn't installed here. It is built where "
        "OpenCASCADE is found: run packaging/setup drawing and build again, or name the program in "
        "SEAMTAKT_DRAWING_PROGRAM."));
  QString refusal;
  const auto asked = options(refusal);
  if (!asked) return showFailure(refusal);
  DrawingQuestion question;
  question.path = path_;
  question.kept_path = kept_path_.toStdString();
  if (const DrawingFile* before = fileBefore(); before && before->gap_mm) question.gap_mm = *before->gap_mm;
  question.reading = reading_of_file_;
  question.options = *asked;
  progress_->show();
  counts_->setText(tr("Reading …"));
  reading_.start(question, plan_);
}

void DrawingDialog::showReading(const ProgramReadingPtr& reading) {
  reading_of_file_ = reading;
}

void DrawingDialog::showFailure(const QString& reason) {
  drawing_.reset();
  progress_->hide();
  counts_->setText(reason);
  notes_->hide();
  import_->setEnabled(false);
}

void DrawingDialog::showDrawing(const ReadDrawingPtr& drawing) {
  const bool is_other = !drawing_ || drawing_->reading != drawing->reading;
  drawing_ = drawing;
  progress_->hide();
  if (is_other) picture_->setWeldment(drawing->reading->picture, 0);
  showSides();
  showSeams();
  showCounts();
  const DrawingImport& import = drawing->import;
  import_->setEnabled(
      import.count(SideState::added) + import.count(SideState::moved) + import.plates + import.tubes > 0);
}

void DrawingDialog::showSides() {
  is_filling_ = true;
  const auto& candidates = drawing_->import.candidates;
  const std::vector<DrawingPart>& parts = drawing_->reading->result.parts;
  const int chosen = sides_->currentRow();
  sides_->setRowCount(static_cast<int>(std::min(candidates.size(), most_rows)));
  const UnitView& units = UnitView::shared();
  for (int row = 0; row < sides_->rowCount(); ++row) {
    const DrawingCandidate& side = candidates[static_cast<std::size_t>(row)];
    const QString size = side.size ? size_text(*side.size, units) : QString();
    const QString texts[] = {side_name(side),
                             text_of(parts[side.joint->part_a].path),
                             text_of(parts[side.joint->part_b].path),
                             shown_word(side.joint->type.c_str()),
                             units.quantityText(side.side->length_mm, "mm", 4),
                             size,
                             state_text(side)};
    for (int column = 0; column <= state_column; ++column) {
      auto* item = new QTableWidgetItem(texts[column]);
      item->setToolTip(texts[column]);
      if (column == seam_column)
        item->setCheckState(side.state == SideState::left_out ? Qt::Unchecked : Qt::Checked);
      sides_->setItem(row, column, item);
    }
  }
  if (chosen < 0) sides_->resizeColumnsToContents();
  is_filling_ = false;
}

void DrawingDialog::showSeams() {
  std::vector<DrawnSeam> seams;
  for (const DrawingCandidate& side : drawing_->import.candidates) {
    DrawnSeam seam;
    seam.name = side_name(side);
    seam.tip = seam.name + QStringLiteral(": ") + state_text(side);
    seam.path_mm = side.side->path_mm;
    if (side.state == SideState::open) seam.severity = Severity::warn;
    if (side.state == SideState::moved) seam.severity = Severity::note;
    seam.is_partly_judged = side.state == SideState::left_out;
    seams.push_back(std::move(seam));
  }
  picture_->setSeams(std::move(seams));
}

void DrawingDialog::showCounts() {
  const DrawingImport& import = drawing_->import;
  const auto count = [&](SideState state) { return QString::number(import.count(state)); };
  counts_->setText(tr("%1 new, %2 moved, %3 unchanged, %4 lack something, %5 left out, %6 lost")
                       .arg(count(SideState::added), count(SideState::moved), count(SideState::unchanged),
                            count(SideState::open), count(SideState::left_out),
                            QString::number(import.lost.size())));
  QStringList notes;
  if (const DrawingFile* before = fileBefore())
    notes << (before->sha256 == drawing_->reading->result.sha256 ? tr("The file is the same as before.")
                                                                 : tr("The file has changed."));
  if (!import.lost.empty()) {
    QStringList lost;
    for (const std::string& seam : import.lost) lost << text_of(seam);
    notes << tr("Seams that the drawing doesn't have any more, and that stay: %1.").arg(lost.join(", "));
  }
  if (import.candidates.size() > most_rows)
    notes << tr("The list shows the first %1 sides.").arg(static_cast<int>(most_rows));
  for (const DrawingNote& note : drawing_->reading->result.notes) notes << text_of(note.text);
  constexpr int most_notes = 6;
  if (notes.size() > most_notes) notes = notes.mid(0, most_notes) << QStringLiteral("…");
  notes_->setText(notes.join(' '));
  notes_->setVisible(!notes.isEmpty());
}

void DrawingDialog::chooseSide(int row) {
  if (row < 0 || row >= sides_->rowCount()) return picture_->setPicked(row);
  sides_->setCurrentCell(row, seam_column);
  sides_->scrollToItem(sides_->item(row, seam_column));
}

}  // namespace seamtakt::desk
