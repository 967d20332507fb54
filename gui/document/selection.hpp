#pragma once

#include <QObject>
#include <QString>

#include <functional>

#include "document/plan_address.hpp"

namespace seamtakt::desk {

/// The desk's selection: one seam and one schedule, shared by all pages, so that a click on a bar, a row or
/// a finding shows the same thing everywhere.
class Selection : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;

  const SeamPlace& seam() const { return seam_; }
  std::size_t schedule() const { return schedule_; }
  void setSeam(const SeamPlace& seam) {
    if (seam == seam_) return;
    seam_ = seam;
    emit seamChanged();
  }
  void setSchedule(std::size_t schedule) {
    if (schedule == schedule_) return;
    schedule_ = schedule;
    emit scheduleChanged();
  }
  /// Another plan was opened: what was looked at isn't there.
  void reset() {
    seam_ = {};
    schedule_ = 0;
    emit seamChanged();
    emit scheduleChanged();
    explain({}, {});
  }
  /// The plan was edited: the selection stays on the seam and the schedule of the same id wherever they are
  /// now, and never points to something that was removed.
  void follow(const Plan& before, const Plan& after);
  /// Shows how a derived value is computed; empty: nothing that could be explained is chosen.
  void explain(const QString& place, const QString& key) { emit explainAsked(place, key); }
  /// The same of a value that no plan derives. `html` makes it in the language and units of the moment,
  /// broken into lines of about so many letters.
  void explainBy(const std::function<QString(int most_letters)>& html) { emit explanationGiven(html); }
  /// Goes to the page and field that hold `key` of the object at `address`.
  void goTo(const QString& address, const QString& key = {}) { emit goToAsked(address, key); }

 signals:
  void seamChanged();
  void scheduleChanged();
  void explainAsked(const QString& place, const QString& key);
  void explanationGiven(const std::function<QString(int most_letters)>& html);
  void goToAsked(const QString& address, const QString& key);

 private:
  SeamPlace seam_;
  std::size_t schedule_ = 0;
};

}  // namespace seamtakt::desk
