#pragma once

#include <QString>
#include <QStringList>

#include "jobs/evaluator.hpp"
#include "jobs/store_report.hpp"

class QPrinter;

namespace seamtakt::desk {

/// The plan's report, in the desk's own language and units. `plan_path`: the plan's file; empty for one never
/// saved. Errors: InputError, std::system_error.
void export_html(const Results& results, const QString& plan_path, const QString& to);
void export_pdf(const Results& results, const QString& plan_path, const QString& to);
/// The sheets of the schedules with these ids alone, a page each; none named: of all.
void export_schedules_pdf(const Results& results, const QString& plan_path, const QStringList& schedules,
                          const QString& to);
/// A unit's weld record from a record store, verified on the way: whether it is trusted.
bool export_unit_pdf(const QString& store, const QString& unit, const QString& to);
/// Another report of a store: a unit's certificate, a shift, a seam over time.
bool export_store_pdf(const StoreReportQuestion& question, const QString& to);
void print_report(const Results& results, const QString& plan_path, QPrinter& printer);

}  // namespace seamtakt::desk
