#pragma once

#include <QWidget>

#include "jobs/evaluator.hpp"

class QLabel;
class QTextBrowser;

namespace seamtakt::desk {

/// The drawer at the right edge: how the derived value in focus comes about.
class ExplainPanel : public QWidget {
  Q_OBJECT

 public:
  explicit ExplainPanel(QWidget* parent = nullptr);
  /// The value `key` at a place; an empty place: nothing is chosen that could be explained.
  void show(const QString& place, const QString& key);
  void setResults(const ResultsPtr& results);
  QString text() const;

 signals:
  void closed();

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void render();
  ResultsPtr results_;
  QString place_, key_;
  QTextBrowser* browser_;
};

}  // namespace seamtakt::desk
