#pragma once

#include <QString>

#include "jobs/evaluator.hpp"

namespace seamtakt::desk {

/// A formula as the core writes it ("E = U*I/(1000*v)") as rich text: quotients stacked, powers raised,
/// indices lowered, Greek letters as such.
QString formula_html(const QString& formula);

/// How a derived value comes about, for the Explain drawer: formula, numbers put in, what the symbols mean,
/// source, range, uncertainty. Text that says why there is none, where there is none.
QString explanation_html(const Plan& plan, const QString& place, const QString& key);

/// The same in two or three plain lines, for a tooltip; empty where there is none.
QString explanation_tip(const Plan& plan, const QString& place, const QString& key);

}  // namespace seamtakt::desk
