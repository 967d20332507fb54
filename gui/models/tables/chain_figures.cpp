#include "models/tables/chain_figures.hpp"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "document/shown_text.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

class Figures : public QObject {
  Q_OBJECT
};

/// Seams, schedules and heat are judged pass by pass: without a pass nothing was.
HowJudged passes_judged(const Results& results) {
  const auto& passes = results.evaluation.passes;
  if (passes.empty()) return HowJudged::not_at_all;
  return std::ranges::any_of(passes, is_partly_judged) ? HowJudged::partly : HowJudged::wholly;
}

/// A cell without a seam for its robots has a cycle of nothing.
HowJudged cycles_judged(const Results& results) {
  const bool any =
      std::ranges::any_of(results.cycles, [](const CycleResult& c) { return c.robot_seams > 0; });
  return any ? HowJudged::wholly : HowJudged::not_at_all;
}

LinkFigure seams_figure(const Results& results, const FindingIndex& findings) {
  std::size_t seams = 0;
  for (const Weldment& weldment : results.plan->weldments) seams += weldment.seams.size();
  const Tally& tally = findings.tally(Link::seams);
  return {shown_text(Sentence("desk.seams"_key, {{"seams", seams}})),
          tally.fail ? Figures::tr("%1 fail").arg(tally.fail) : QString(), tally};
}

LinkFigure schedules_figure(const Results& results, const FindingIndex& findings) {
  const auto& schedules = results.plan->schedules;
  const auto drafts = std::count_if(schedules.begin(), schedules.end(),
                                    [](const Schedule& each) { return each.status != "approved"; });
  return {shown_text(Sentence("desk.schedules"_key, {{"schedules", schedules.size()}})),
          drafts ? Figures::tr("%1 not approved").arg(drafts) : QString(), findings.tally(Link::schedules)};
}

LinkFigure heat_figure(const Results& results, const FindingIndex& findings) {
  const auto& passes = results.evaluation.passes;
  if (passes.empty()) return {};
  const auto [low, high] =
      std::minmax_element(passes.begin(), passes.end(), [](const PassEvaluation& a, const PassEvaluation& b) {
        return a.heat_input_kJ_mm < b.heat_input_kJ_mm;
      });
  const UnitView& units = UnitView::shared();
  return {units.numberText(low->heat_input_kJ_mm, "kJ/mm", 2) + QStringLiteral("–") +
              units.numberText(high->heat_input_kJ_mm, "kJ/mm", 2),
          units.unitText("kJ/mm"), findings.tally(Link::heat)};
}

/// The weldment of which most seams are unwelded; where all are welded, the one that the cell's mark shows:
/// the one with the worst finding, among equals the one closest to missing takt.
LinkFigure cell_figure(const Results& results, const FindingIndex& findings) {
  if (results.cycles.empty()) return {};
  const auto index = [&](auto cycle) { return static_cast<std::size_t>(cycle - results.cycles.begin()); };
  const auto unfinished = std::max_element(
      results.cycles.begin(), results.cycles.end(),
      [](const CycleResult& a, const CycleResult& b) { return a.unwelded.size() < b.unwelded.size(); });
  if (!unfinished->unwelded.empty())
    return {Figures::tr("%1 unwelded").arg(unfinished->unwelded.size()),
            Figures::tr("of %1, %2")
                .arg(unfinished->robot_seams)
                .arg(QString::fromStdString(unfinished->weldment)),
            findings.tally(Link::cell), index(unfinished)};
  const auto rank = [&](const CycleResult& cycle) {
    return std::tuple(findings.stateWithin(Link::cell, cycle.weldment).own,
                      -cycle.takt_margin_s.value_or(std::numeric_limits<double>::infinity()),
                      cycle.cycle_time_s);
  };
  const auto worst =
      std::max_element(results.cycles.begin(), results.cycles.end(),
                       [&](const CycleResult& a, const CycleResult& b) { return rank(a) < rank(b); });
  const QString name = QString::fromStdString(worst->weldment);
  const QString of = worst->takt_s ? Figures::tr("of %1, %2").arg(minutes_text(*worst->takt_s), name) : name;
  return {minutes_text(worst->cycle_time_s), of, findings.tally(Link::cell), index(worst)};
}

LinkFigure line_figure(const Results& results, const FindingIndex& findings) {
  if (!results.plan->line || !results.plan->line->takt_s) return {};
  return {minutes_text(*results.plan->line->takt_s), Figures::tr("takt"), findings.tally(Link::line)};
}

}  // namespace

QString unwelded_text(const CycleResult& cycle) {
  if (cycle.unwelded.empty()) return {};
  return Figures::tr("%1 of %2 robot seams unwelded").arg(cycle.unwelded.size()).arg(cycle.robot_seams);
}

QString minutes_text(double seconds) {
  const auto whole = static_cast<long long>(std::llround(seconds));
  return QStringLiteral("%1:%2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

QString change_text(double seconds) {
  const QString sign = std::llround(seconds) < 0   ? QStringLiteral("−")
                       : std::llround(seconds) > 0 ? QStringLiteral("+")
                                                   : QStringLiteral("±");
  return sign + minutes_text(std::abs(seconds));
}

std::vector<LinkFigure> chain_figures(const Results& results) {
  const FindingIndex findings(results.findings);
  const Tally& all = findings.all();
  const LinkFigure last{
      Figures::tr("%1 fail").arg(all.fail),
      shown_text(Sentence("desk.findings.lesser"_key, {{"warnings", all.warn}, {"notes", all.note}})), all};
  std::vector<LinkFigure> figures = {seams_figure(results, findings), schedules_figure(results, findings),
                                     heat_figure(results, findings),  cell_figure(results, findings),
                                     line_figure(results, findings),  last};
  const HowJudged passes = passes_judged(results);
  for (std::size_t link = 0; link < figures.size(); ++link) switch (static_cast<Link>(link)) {
      case Link::cell:
        figures[link].judged = cycles_judged(results);
        break;
      case Link::line:
        // The takt alone: orders that are run through the line are the page's, with its own mark.
        figures[link].judged = HowJudged::not_at_all;
        break;
      case Link::records:  // the findings take its place
        figures[link].judged = results.evaluation.passes.empty() ? HowJudged::not_at_all : HowJudged::wholly;
        break;
      default:
        figures[link].judged = passes;
    }
  return figures;
}

}  // namespace seamtakt::desk

#include "chain_figures.moc"
