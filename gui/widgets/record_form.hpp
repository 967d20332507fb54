#pragma once

#include <QDialog>
#include <functional>

#include "jobs/writing_job.hpp"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace seamtakt::desk {

/// A form for one record that a person writes by hand. It stays open until the record is written; what the
/// store's functions refuse is shown in it, in their words.
class RecordForm : public QDialog {
  Q_OBJECT

 public:
  /// `about`: what the record is about, shown as it is; may be empty.
  RecordForm(const QString& title, const QString& about, QWidget* parent = nullptr);

  // Rows, in order; the texts are the accessible names, too.
  QLineEdit* addLine(const QString& label, const QString& hint = {}, const QString& text = {});
  /// `choices`: what is written, and how it is called.
  QComboBox* addChoice(const QString& label, const std::vector<std::pair<QString, QString>>& choices);

  /// Who, why, the store's key and the buttons: the last rows. `make` is asked for the record when the person
  /// is done; its InputError is shown.
  using Make = std::function<std::function<WrittenRecord(const HandWriting&)>()>;
  void finish(const QString& action, const QString& uri, const Make& make);

  void showRefusal(const QString& reason);
  QString refusal() const;

 signals:
  void writingAsked(const seamtakt::desk::WritingOrder& order);

 private:
  void ask();

  QFormLayout* rows_;
  QLabel* refusal_;
  QLineEdit *who_ = nullptr, *why_ = nullptr, *key_ = nullptr;
  QPushButton* write_ = nullptr;
  QString uri_;
  Make make_;
};

}  // namespace seamtakt::desk
