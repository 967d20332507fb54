#pragma once

#include <QWidget>
#include <optional>

#include "base/finding.hpp"
#include "jobs/store_job.hpp"

class QLabel;
class QProgressBar;
class QPushButton;

namespace seamtakt::desk {

class GridView;
class ValueModel;

/// A record store: whether its ledger can be trusted, and its units with what is missing or open.
class StorePanel : public QWidget {
  Q_OBJECT

 public:
  explicit StorePanel(QWidget* parent = nullptr);

  /// Asks a person which store.
  void choose();
  void openStore(const StoreQuestion& question);
  StoreJob& job() { return job_; }
  const StoreAnswerPtr& answer() const { return answer_; }
  QString verdict() const;
  GridView& units() { return *unit_table_; }
  GridView& problems() { return *problem_table_; }
  /// Serial number in the chosen row; empty where none is chosen.
  QString chosenUnit() const;

 signals:
  void message(const QString& text);
  void answered();
  /// A report of a unit is asked for.
  void reportAsked(const QString& uri, const QString& unit);

 private:
  void makeHead();
  void show(const StoreAnswerPtr& answer);
  void working(bool is_working);
  void showVerdict(const QString& text, std::optional<Severity> severity);

  StoreJob job_;
  StoreQuestion question_;
  StoreAnswerPtr answer_;
  ValueModel *units_, *problems_;
  GridView *unit_table_, *problem_table_;
  QLabel *mark_, *verdict_, *head_;
  QProgressBar* progress_;
  QPushButton *open_, *again_, *stop_, *report_;
};

}  // namespace seamtakt::desk
