#include "pages/record_forms.hpp"

#include <QComboBox>
#include <QLineEdit>

#include "base/error.hpp"
#include "ledger/store/store_key.hpp"
#include "models/tables/browsed_rows.hpp"
#include "models/words/cause_word.hpp"
#include "models/words/typed_numbers.hpp"
#include "records/keep/cause_disposition.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/later_calibration.hpp"
#include "records/passes/pass_record.hpp"
#include "widgets/record_form.hpp"

namespace seamtakt::desk {

namespace {

std::string typed_text(const QLineEdit* line) {
  return line->text().trimmed().toStdString();
}

std::string choice_of(const QComboBox* box) {
  return box->currentData().toString().toStdString();
}

/// Number of a record; 0 where the line is empty.
std::uint64_t record_number(const QLineEdit* line, const char* where) {
  const QString text = line->text().trimmed();
  bool is_number = false;
  const qulonglong number = text.toULongLong(&is_number);
  if (text.isEmpty()) return 0;
  if (!is_number || number == 0)
    throw InputError(where, "\"" + printable(text.toStdString(), 40) + "\"", "the number of a record"_word);
  return number;
}

}  // namespace

RecordForms::RecordForms(QWidget* window) : QObject(window), window_(window) {
  connect(&job_, &WritingJob::written, this, [this](qulonglong seq, const QString& kind) {
    if (open_) open_->accept();
    emit written(tr("Record %1 (%2) is written.").arg(QString::number(seq), kind));
  });
  connect(&job_, &WritingJob::failed, this, [this](const QString& reason) {
    if (open_)
      open_->showRefusal(reason);
    else
      emit written(reason);
  });
}

RecordForm* RecordForms::makeForm(const QString& title, const BrowsedRecord* record) {
  return new RecordForm(title, record ? browsed_text(*record) : QString(), window_);
}

void RecordForms::open(RecordForm* form) {
  open_ = form;
  form->setAttribute(Qt::WA_DeleteOnClose);
  connect(form, &QObject::destroyed, this, [this, form] {
    if (open_ == form) open_ = nullptr;
  });
  connect(form, &RecordForm::writingAsked, this, [this](const WritingOrder& order) { job_.start(order); });
  form->open();
}

void RecordForms::dispose(const QString& uri, const BrowsedRecord& record) {
  record.verdict == to_string(Verdict::undecided) ? disposeUndecided(uri, record)
                                                  : disposeFailed(uri, record);
}

void RecordForms::disposeFailed(const QString& uri, const BrowsedRecord& record) {
  RecordForm* form = makeForm(tr("Disposition"), &record);
  QComboBox* decision = form->addChoice(
      tr("Decision"), {{"repair", tr("repair")}, {"use-as-is", tr("use as it is")}, {"scrap", tr("scrap")}});
  QLineEdit* schedule = form->addLine(tr("Schedule of the repair"), tr("needed for a repair"));
  QLineEdit* retest = form->addLine(tr("Record of the re-test"), tr("once it passed; empty: not yet"));
  form->finish(tr("Write the disposition"), uri, [=, about = record.seq] {
    DispositionRequest request;
    request.decision = parse_decision(choice_of(decision));
    request.schedule = typed_text(schedule);
    request.retest = record_number(retest, "--retest");
    return [=](const HandWriting& to) { return write_disposition_of(to, about, request); };
  });
  open(form);
}

/// One decision for all passes of the unit that the cause left open.
void RecordForms::disposeUndecided(const QString& uri, const BrowsedRecord& record) {
  RecordForm* form = makeForm(tr("Disposition"), &record);
  std::vector<std::pair<QString, QString>> causes;
  for (const std::string& rule : record.undecided_by)
    causes.emplace_back(QString::fromStdString(rule), cause_word(rule));
  QComboBox* cause = form->addChoice(tr("Cause, of all passes of the unit"), causes);
  QComboBox* decision =
      form->addChoice(tr("Decision"), {{"use-as-is", tr("use as it is")}, {"scrap", tr("scrap")}});
  form->finish(tr("Write the disposition"), uri, [=, unit = record.unit_serial] {
    const CauseRequest request{unit, choice_of(cause), parse_decision(choice_of(decision)), {}};
    return [=](const HandWriting& to) {
      CauseRequest by = request;
      by.who = to.stamp.who;
      return write_record(to, cause_disposition_entry(to.ledger, by));
    };
  });
  open(form);
}

void RecordForms::correct(const QString& uri, const BrowsedRecord& record) {
  RecordForm* form = makeForm(tr("Correction"), &record);
  std::vector<std::pair<QString, QString>> members;
  for (const CorrectableMember& member : correctable_members(record.kind)) {
    const QString path = QString::fromUtf8(member.path);
    members.emplace_back(path, path);
  }
  QComboBox* member = form->addChoice(tr("Member"), members);
  QLineEdit* value = form->addLine(tr("What it should have been"));
  form->finish(tr("Write the correction"), uri, [=, about = record.seq, kind = record.kind] {
    const std::string path = choice_of(member);
    std::string typed = typed_text(value);
    // A number is typed with the decimal sign of any language.
    for (const CorrectableMember& each : correctable_members(kind))
      if (path == each.path && each.type == CorrectableMember::Type::number)
        typed = plain_numbers(typed, FieldKind::number, true);
    const std::vector<CorrectedValue> values = {{path, typed}};
    return [=](const HandWriting& to) { return write_correction(to, about, values); };
  });
  open(form);
}

void RecordForms::signOff(const QString& uri, const BrowsedRecord& record) {
  RecordForm* form = makeForm(tr("Sign-off"), &record);
  QLineEdit* key =
      form->addLine(tr("Your own key (optional)"),
                    tr("file; empty: person.pem in the folder of keys, made where there is none"));
  form->finish(tr("Sign off"), uri, [=, about = record.seq] {
    const std::string file = typed_text(key);
    return [=](const HandWriting& to) {
      to.ledger.record(about);  // refused before a key is made
      return write_signoff(to, about, person_signing_key(file));
    };
  });
  open(form);
}

void RecordForms::note(const QString& uri, const BrowsedRecord* record) {
  RecordForm* form = makeForm(tr("Note"), record);
  QLineEdit* about = form->addLine(tr("About record"), tr("its number; empty: about the store"),
                                   record ? QString::number(record->seq) : QString());
  form->finish(tr("Write the note"), uri, [=] {
    const std::uint64_t seq = record_number(about, "RECORD");
    return [=](const HandWriting& to) { return write_note(to, seq); };
  });
  open(form);
}

void RecordForms::calibrate(const QString& uri) {
  RecordForm* form = makeForm(tr("Calibration"), nullptr);
  QLineEdit* instrument = form->addLine(tr("Instrument"), tr("its id in the plan"));
  QLineEdit* certificate = form->addLine(tr("Certificate"), tr("its number, or its file"));
  QLineEdit* date = form->addLine(tr("Calibrated on"), QStringLiteral("2026-11-25"));
  QLineEdit* due = form->addLine(tr("Due"), QStringLiteral("2027-11-25"));
  QComboBox* as_found =
      form->addChoice(tr("As found"), {{"", tr("not stated")},
                                       {as_found_in_tolerance, tr("in tolerance")},
                                       {as_found_out_of_tolerance, tr("out of tolerance")}});
  form->finish(tr("Write the calibration"), uri, [=] {
    const CalibrationRequest request{typed_text(instrument), typed_text(certificate), typed_text(date),
                                     typed_text(due), choice_of(as_found)};
    check_calibration(request);
    return [=](const HandWriting& to) { return write_calibration(to, request); };
  });
  open(form);
}

}  // namespace seamtakt::desk
