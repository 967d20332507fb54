#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <array>
#include <optional>

#include "base/finding.hpp"
#include "models/tables/finding_index.hpp"
#include "widgets/desk_page.hpp"

namespace seamtakt::desk {

/// One link of the chain: its name, one live figure and the mark of its worst finding.
class ChainLink : public QAbstractButton {
  Q_OBJECT

 public:
  ChainLink(const QString& name, const QString& key, QWidget* parent);
  /// `counted`: the findings that the mark counts, for the tip. `judged`: without a finding the link is "ok"
  /// only where all was judged.
  void setFigure(const QString& figure, const QString& detail, std::optional<Severity> worst,
                 const QString& counted = {}, HowJudged judged = HowJudged::wholly);
  const QString& figure() const { return figure_; }
  const QString& detail() const { return detail_; }
  const std::optional<Severity>& worst() const { return worst_; }
  bool isPartlyJudged() const { return !worst_ && judged_ == HowJudged::partly; }
  bool isNotJudged() const { return !worst_ && judged_ == HowJudged::not_at_all; }
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  QString stateWord() const;
  void drawMark(QPainter& painter, const QRectF& box) const;

  QString name_, key_, figure_, detail_;
  std::optional<Severity> worst_;
  HowJudged judged_ = HowJudged::wholly;
};

/// The window's spine: six links in the order in which the job flows, and the findings at its end.
class ChainStrip : public QWidget {
  Q_OBJECT

 public:
  explicit ChainStrip(QWidget* parent = nullptr);
  ChainLink& link(DeskPage page) { return *links_[position_of(page)]; }
  void setCurrent(DeskPage page);

 signals:
  void chosen(DeskPage page);

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  std::array<ChainLink*, desk_pages.size()> links_{};
};

}  // namespace seamtakt::desk
