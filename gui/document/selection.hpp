#pragma once

#include <QObject>
#include <QString>

#include "document/plan_address.hpp"

namespace seamtakt::desk {

/// What the desk looks at: one seam and one schedule, shared by all pages, so that a click on a bar, a row or
/// a finding shows the same thing everywhere.
class Selection : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;

  const SeamPlace& seam() const { return seam_; }
  std::size_t schedule() const { return schedule_; }
  void setSeam(const SeamPlace& seam) {
    if (seam.weldment == seam_.weldment && seam.seam == seam_.seam) return;
    seam_ = seam;
    emit seamChanged();
  }
  void setSchedule(std::size_t schedule) {
    if (schedule == schedule_) return;
    schedule_ = schedule;
    emit scheduleChanged();
  }
  void reset() {
    seam_ = {};
    schedule_ = 0;
    emit seamChanged();
    emit scheduleChanged();
  }
  /// Shows how a derived value comes about.
  void explain(const QString& place, const QString& key) { emit explainAsked(place, key); }
  /// Goes to the page and field that hold `key` of the object at `address`.
  void goTo(const QString& address, const QString& key = {}) { emit goToAsked(address, key); }

 signals:
  void seamChanged();
  void scheduleChanged();
  void explainAsked(const QString& place, const QString& key);
  void goToAsked(const QString& address, const QString& key);

 private:
  SeamPlace seam_;
  std::size_t schedule_ = 0;
};

}  // namespace seamtakt::desk
