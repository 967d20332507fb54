#pragma once

#include <QString>

#include "jobs/evaluator.hpp"

namespace seamtakt::desk {

/// How a derived value comes about, for the Explain drawer: formula, numbers put in, what the symbols mean,
/// source, range, uncertainty. Text that says why there is none, where there is none.
/// Formulas are broken into lines of about so many letters.
QString explanation_html(const Plan& plan, const QString& place, const QString& key, int most_letters = 60);

/// The same in two or three plain lines, for a tooltip; empty where there is none.
QString explanation_tip(const Plan& plan, const QString& place, const QString& key);

}  // namespace seamtakt::desk
