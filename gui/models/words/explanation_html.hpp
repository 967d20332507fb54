#pragma once

#include <QString>

#include "jobs/evaluator.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt::desk {

/// How a derived value is computed, for the Explain drawer: formula, formula with numbers, meaning of the
/// symbols, source, range, uncertainty. Text that says why there is none, where there is none. Formulas are
/// broken into lines of about so many letters.
QString explanation_html(const Plan& plan, const QString& place, const QString& key, int most_letters = 60);

/// The same of a logged number of a pass: k, formulas, rows of the log, instruments in force, uncertainty.
QString record_explanation_html(const PassRecord& record, const Plan& plan, const QString& key,
                                int most_letters = 60);

/// The same in two or three plain lines, for a tooltip; empty where there is none.
QString explanation_tip(const Plan& plan, const QString& place, const QString& key);

}  // namespace seamtakt::desk
