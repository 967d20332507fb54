#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "jobs/worker.hpp"
#include "records/keep/record_browse.hpp"

namespace seamtakt::desk {

/// What is looked for in a store, as a person typed it.
struct BrowseQuestion {
  QString uri;
  QString unit, welder, lot, robot, schedule;
  QString from, to;         ///< days or times; empty: open
  std::uint64_t first = 1;  ///< record from which the page begins
};

struct BrowseAnswer {
  BrowseQuestion question;
  BrowsedPage page;
};
using BrowseAnswerPtr = std::shared_ptr<const BrowseAnswer>;

/// Looks for stored passes on a thread of its own, a page at a time.
class BrowseJob : public QObject {
  Q_OBJECT

 public:
  static constexpr std::size_t page_rows = 200;

  explicit BrowseJob(QObject* parent = nullptr);

  void start(const BrowseQuestion& question);
  bool isRunning() const { return worker_.isBusy(); }
  void wait() { worker_.wait(); }

 signals:
  void answered(seamtakt::desk::BrowseAnswerPtr answer);
  void failed(const QString& reason);

 private:
  Worker worker_;
};

}  // namespace seamtakt::desk
