#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "jobs/evaluator.hpp"
#include "models/tables/finding_index.hpp"

namespace seamtakt::desk {

/// Figure, words beside it and counted findings of one link of the chain; the mark is the worst of them.
struct LinkFigure {
  QString figure, detail;
  Tally tally;
  std::optional<std::size_t> weldment = {};  ///< the one that the figure is of
  HowJudged judged = HowJudged::wholly;
};

/// The links that follow from the plan, in the chain's order: seams, schedules, heat, cell, line; records
/// have their own; the last one is the findings.
std::vector<LinkFigure> chain_figures(const Results& results);

/// "36 of 63 robot seams unwelded"; empty where all are welded.
QString unwelded_text(const CycleResult& cycle);

/// "19:40" of seconds.
QString minutes_text(double seconds);
/// "+0:23" or "−0:23": a change of so many seconds.
QString change_text(double seconds);

}  // namespace seamtakt::desk
