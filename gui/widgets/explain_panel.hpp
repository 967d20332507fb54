#pragma once

#include <QWidget>
#include <functional>

#include "jobs/evaluator.hpp"

class QLabel;
class QTextBrowser;

namespace seamtakt::desk {

/// The drawer at the right edge: how the derived value in focus is computed.
class ExplainPanel : public QWidget {
  Q_OBJECT

 public:
  explicit ExplainPanel(QWidget* parent = nullptr);
  /// The value `key` at a place; an empty place: nothing is chosen that could be explained.
  void show(const QString& place, const QString& key);
  /// What the function makes, whenever it is shown again.
  void showMade(const std::function<QString(int most_letters)>& html);
  void setResults(const ResultsPtr& results);
  QString text() const;

 signals:
  void closed();

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void render();
  int mostLetters() const;
  ResultsPtr results_;
  QString place_, key_;
  std::function<QString(int most_letters)> made_;
  QTextBrowser* browser_;
};

}  // namespace seamtakt::desk
