#include "exchange/report/period_record.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/time/log_time.hpp"
#include "exchange/report/record_sections.hpp"
#include "exchange/report/record_tables.hpp"
#include "exchange/report/seam_statistics.hpp"
#include "exchange/report/unit_record.hpp"
#include "exchange/sheets/cell_text.hpp"

namespace seamtakt {

namespace {

/// What was asked for, with the history that answers it.
struct Period {
  RecordHistory history;
  std::vector<FoundRecord> records;
};

Sentence no_record_of(const RecordRange& range) {
  const bool from = range.from_ns.has_value(), to = range.to_ns.has_value();
  std::vector<Argument> arguments;
  if (from) arguments.emplace_back("from", utc_text_of_ns(*range.from_ns));
  if (to) arguments.emplace_back("to", utc_text_of_ns(*range.to_ns));
  const Sentence time(from && to ? "report.time.from-to"_key
                      : from     ? "report.time.from"_key
                                 : "report.time.to"_key,
                      std::move(arguments));
  if (range.seam.empty()) return Sentence("report.no-record.of-time"_key, {{"time", time}});
  const std::string seam = range.weldment + "/" + range.seam;
  if (!from && !to) return Sentence("report.no-record.of-seam"_key, {{"seam", seam}});
  return Sentence("report.no-record.of-seam-and-time"_key, {{"seam", seam}, {"time", time}});
}

Period period_of(const Ledger& ledger, const RecordRange& range) {
  Period period{RecordHistory(ledger), {}};
  period.records = find_records(period.history, range);
  if (period.records.empty())
    throw InputError(range.seam.empty() ? "--from, --to" : "--seam", no_record_of(range),
                     "a time and a seam of which the store has records"_word);
  return period;
}

/// Counts and sums of the records that aren't void.
struct Sums {
  std::map<std::string, int> verdicts;
  std::size_t passes = 0, manual = 0, voids = 0;
  double arc_time_s = 0, length_mm = 0, energy_J = 0;

  void add(const JsonNode& body, bool is_pass) {
    ++(is_pass ? passes : manual);
    if (!is_pass) return;
    const std::string verdict = body_text(body, "results.verdict");
    ++verdicts[verdict.empty() ? "not judged" : verdict];
    for (const auto& [path, sum] :
         {std::pair("results.arc_time_s", &arc_time_s), std::pair("results.length_mm", &length_mm),
          std::pair("results.energy_J", &energy_J)})
      if (const JsonNode* value = body_member(body, path);
          value != nullptr && value->kind == JsonNode::Kind::number)
        *sum += value->number;
  }
  double count(const char* verdict) const {
    const auto at = verdicts.find(verdict);
    return at == verdicts.end() ? 0 : at->second;
  }
};

struct PeriodSums {
  Sums all;
  std::map<std::string, Sums> of_unit;  ///< by serial
};

PeriodSums sums_of(Period& period) {
  PeriodSums sums;
  for (const FoundRecord& record : period.records) {
    const JsonNode body = period.history.corrected_body(record.seq);
    Sums& unit = sums.of_unit[body_text(body, "results.unit_serial")];
    if (period.history.is_void(record.seq)) {
      ++sums.all.voids;
      continue;
    }
    const bool is_pass = period.history.record(record.seq).kind == record_kind::pass;
    sums.all.add(body, is_pass);
    unit.add(body, is_pass);
  }
  return sums;
}

Sheet summary_sheet(const RecordRange& range, const PeriodSums& sums) {
  const auto time = [](const std::optional<std::int64_t>& ns) {
    return ns ? SheetCell(utc_text_of_ns(*ns)) : SheetCell(Words{"open"});
  };
  const Sums& all = sums.all;
  Sheet sheet{"summary", {{"item", {"Item"}}, {"value", {"Value"}}}, {}};
  sheet.rows = {{Words{"From (UTC)"}, time(range.from_ns)},
                {Words{"To (UTC)"}, time(range.to_ns)},
                {Words{"Seam"},
                 range.seam.empty() ? SheetCell(Words{"all"}) : SheetCell(range.weldment + "/" + range.seam)},
                {Words{"Units"}, static_cast<double>(sums.of_unit.size())},
                {Words{"Robot passes"}, static_cast<double>(all.passes)},
                {Words{"Passed"}, all.count("pass")},
                {Words{"Failed"}, all.count("fail")},
                {Words{"Undecided"}, all.count("undecided")},
                {Words{"Not judged"}, all.count("not judged")},
                {Words{"Manual seams"}, static_cast<double>(all.manual)},
                {Words{"Void records, which count for nothing"}, static_cast<double>(all.voids)},
                {Heading{{"Arc time"}, "s"}, all.arc_time_s},
                {Heading{{"Welded length"}, "mm"}, all.length_mm},
                {Heading{{"Arc energy"}, "J"}, all.energy_J}};
  return sheet;
}

/// All of them where they are few, else how many.
SheetCell missing_cell(const std::vector<std::string>& missing) {
  constexpr std::size_t few = 6;
  if (missing.size() <= few) return comma_list(missing);
  return PatternCell{{"{1} passes"}, {std::to_string(missing.size())}};
}

Sheet units_sheet(Period& period, const PeriodSums& sums, std::vector<Nonconformance>& open_items,
                  std::vector<OpenCause>& open_causes) {
  Sheet sheet{"units",
              {{"unit_serial", {"Unit"}},
               {"weldment", {"Weldment"}},
               {"passes", {"Passes of this report"}},
               {"failed", {"Failed"}},
               {"undecided", {"Undecided"}},
               {"manual", {"Manual seams"}},
               {"complete", {"Complete by now"}},
               {"missing", {"Missing passes"}},
               {"open_items", {"Open items"}}},
              {}};
  for (const auto& [serial, unit] : sums.of_unit) {
    const UnitStatus status = serial.empty() ? UnitStatus{} : unit_status(period.history, serial);
    open_causes.insert(open_causes.end(), status.open_causes.begin(), status.open_causes.end());
    open_items.insert(open_items.end(), status.nonconformances.begin(), status.nonconformances.end());
    sheet.rows.push_back({serial.empty() ? SheetCell(Words{"not known"}) : SheetCell(serial), status.weldment,
                          static_cast<double>(unit.passes), unit.count("fail"), unit.count("undecided"),
                          static_cast<double>(unit.manual),
                          status.complete ? SheetCell(Words{*status.complete ? "yes" : "no"}) : SheetCell(),
                          missing_cell(status.missing), static_cast<double>(status.open_items())});
  }
  return sheet;
}

/// Those about records of the report.
std::vector<Nonconformance> about_records(std::vector<Nonconformance> list,
                                          const std::vector<FoundRecord>& records) {
  std::erase_if(list, [&](const Nonconformance& each) {
    return std::none_of(records.begin(), records.end(),
                        [&](const FoundRecord& record) { return record.seq == each.about; });
  });
  std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.seq < b.seq; });
  return list;
}

/// The same of what was left undecided, one row a cause for all units, each pass with its unit.
std::vector<OpenCause> about_records(const std::vector<OpenCause>& list, Period& period) {
  std::set<std::uint64_t> wanted;
  for (const FoundRecord& record : period.records) wanted.insert(record.seq);
  std::vector<OpenCause> causes;
  for (const OpenCause& each : list)
    for (const std::uint64_t seq : each.records) {
      if (!wanted.contains(seq)) continue;
      auto at = std::find_if(causes.begin(), causes.end(),
                             [&](const OpenCause& cause) { return cause.cause == each.cause; });
      if (at == causes.end()) at = causes.insert(at, {each.cause, each.sentence, {}, {}});
      const JsonNode body = period.history.corrected_body(seq);
      const JsonNode* pass = body_member(body, "results.pass");
      at->records.push_back(seq);
      at->passes.push_back(
          body_text(body, "results.unit_serial") + "/" + body_text(body, "results.seam") +
          (pass != nullptr && pass->is_integer ? "/" + std::to_string(static_cast<int>(pass->number)) : ""));
    }
  return causes;
}

std::vector<Sheet> sheets_of(Period& period, const RecordRange& range, const SheetOrigin& origin) {
  const PeriodSums sums = sums_of(period);
  RecordTables tables(period.history, RecordTables::Of::many_units);
  for (const FoundRecord& record : period.records) tables.add(record.seq);
  std::vector<Nonconformance> open_items;
  std::vector<OpenCause> open_causes;
  std::vector<Sheet> sheets = {summary_sheet(range, sums),
                               units_sheet(period, sums, open_items, open_causes)};
  for (Sheet& sheet : tables.take_records()) sheets.push_back(std::move(sheet));
  if (!range.seam.empty()) sheets.push_back(statistics_sheet(seam_series(period.history, period.records)));
  sheets.push_back(open_items_sheet(about_records(std::move(open_items), period.records),
                                    about_records(std::move(open_causes), period)));
  sheets.push_back(tables.take_changes());
  sheets.push_back(about_sheet(origin));
  return sheets;
}

}  // namespace

SheetCell title_of(const RecordRange& range) {
  const auto time = [](std::int64_t ns) { return utc_text_of_ns(ns); };
  const std::string seam = range.weldment + "/" + range.seam;
  const bool of_seam = !range.seam.empty();
  if (range.from_ns && range.to_ns)
    return of_seam
               ? PatternCell{{"seam {1} from {2} to {3}"}, {seam, time(*range.from_ns), time(*range.to_ns)}}
               : PatternCell{{"welding from {1} to {2}"}, {time(*range.from_ns), time(*range.to_ns)}};
  if (range.from_ns)
    return of_seam ? PatternCell{{"seam {1} from {2}"}, {seam, time(*range.from_ns)}}
                   : PatternCell{{"welding from {1}"}, {time(*range.from_ns)}};
  if (range.to_ns)
    return of_seam ? PatternCell{{"seam {1} to {2}"}, {seam, time(*range.to_ns)}}
                   : PatternCell{{"welding to {1}"}, {time(*range.to_ns)}};
  return of_seam ? SheetCell(PatternCell{{"seam {1}"}, {seam}}) : SheetCell(std::string());
}

std::vector<Sheet> period_sheets(const Ledger& ledger, const RecordRange& range, const SheetOrigin& origin) {
  Period period = period_of(ledger, range);
  return sheets_of(period, range, origin);
}

Report period_report(const Ledger& ledger, const RecordRange& range, const VerifyReport& verified,
                     const std::string& made_at_utc) {
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc);
  Period period = period_of(ledger, range);
  const std::vector<Sheet> sheets = sheets_of(period, range, origin);
  Report report = record_report(PatternCell{{"Heat-input record: {1}"}, {title_of(range)}}, verified);
  report.add(items_of(sheet_named(sheets, "summary")));
  if (!range.seam.empty()) {
    for (const SeamSeries& series : seam_series(period.history, period.records))
      if (series.quantity == "heat_input_kJ_mm" && series.values.size() > 1)
        report.add(FigureBlock{series_svg(series, series.place + ": heat input, kJ/mm")});
    add_table(report, sheets, "statistics", {"Level, scatter and drift"});
  }
  add_table(report, sheets, "units", {"Units"});
  add_record_sections(report, sheets, verified, origin);
  return report;
}

std::string period_report_html(const Ledger& ledger, const RecordRange& range, const VerifyReport& verified,
                               const std::string& made_at_utc) {
  return report_page(period_report(ledger, range, verified, made_at_utc));
}

}  // namespace seamtakt
