#pragma once

#include <QWidget>

#include "document/document.hpp"
#include "document/selection.hpp"
#include "jobs/evaluator.hpp"
#include "models/tables/finding_index.hpp"

class QHBoxLayout;
class QMenu;
class QModelIndex;
class QPushButton;
class QSplitter;
class QStackedLayout;

namespace seamtakt::desk {

class FindingList;
class GridView;
class EmptySide;

/// What a page without data offers to begin with, in the order in which the buttons stand.
enum class FirstStep { seam, schedule, cell, seams, list, weldment, plan_data, demo, fresh };

/// What every page works on.
struct Desk {
  Document& document;
  Evaluator& evaluator;
  Selection& selection;
};

/// The skeleton that all pages share: left "what", right "why", below "so", one line of caution at the foot.
/// An empty page shows the first step instead.
class Page : public QWidget {
  Q_OBJECT

 public:
  Page(const Desk& desk, Link link, const QString& title, const QString& caution, QWidget* parent = nullptr);

  const QString& title() const { return title_; }
  virtual void setResults(const ResultsPtr& results);
  /// Puts the cursor on the field `key` of the object at `address`; false where the page hasn't got it.
  virtual bool goTo(const QString&, const QString&) { return false; }
  /// Called when the page comes to the front.
  virtual void opened() {}
  /// Explain follows the current cell of the table that was used last; once, when the page is complete.
  void connectExplain();
  /// Explains that cell again, or nothing where there is none: the page came to the front, or its values
  /// are new.
  void explainAgain();
  /// Of a page that only says the first step: the button that Enter presses; else nullptr.
  QPushButton* firstStep() const;
  FindingList& findings() { return *findings_; }
  /// What, why and so, for going from one to the next by key.
  QList<QWidget*> parts() const;

 signals:
  void message(const QString& text);
  void stepAsked(FirstStep step);
  /// Shows the panel that explains values.
  void explainShown();
  /// Shows the findings on a place ("BD/S03").
  void findingsAsked(const QString& place);

 protected:
  void showEvent(QShowEvent* event) override;
  /// Explains a cell of a table (nullptr: none was used yet). A page whose values no plan derives has its own
  /// way.
  virtual void explainCell(GridView* table, const QString& place, const QString& key);
  void setWhat(QWidget* what) { fill(0, what); }
  void setWhy(QWidget* why) { fill(1, why); }
  void setShares(int what, int why);
  /// Adds to a table's menu what leads from a row to other places. Pages add their own.
  virtual void addToMenu(GridView& table, QMenu& menu, const QModelIndex& at);
  /// The row of buttons beside the title.
  QHBoxLayout& tools() { return *tools_; }
  /// Shows `step` and a button for each of `offered` instead of the page, the first of which Enter presses;
  /// an empty text shows the page.
  void setEmptyStep(const QString& step,
                    const std::vector<FirstStep>& offered = {FirstStep::demo, FirstStep::fresh});
  const ResultsPtr& results() const { return results_; }

  Desk desk_;

 private:
  void fill(int index, QWidget* widget);

  QString title_;
  ResultsPtr results_;
  QHBoxLayout* tools_;
  QSplitter *across_, *down_;
  QStackedLayout* stack_;
  EmptySide* empty_;
  FindingList* findings_;
  GridView* explained_ = nullptr;  ///< the table that was used last
  Link link_;
  int what_share_ = 1, why_share_ = 1;
  bool was_shown_ = false;
};

}  // namespace seamtakt::desk
