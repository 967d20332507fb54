#include "exchange/report/period_record.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <set>

#include "base/error.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/time/log_time.hpp"
#include "exchange/report/record_sections.hpp"
#include "exchange/report/record_tables.hpp"
#include "exchange/report/seam_statistics.hpp"
#include "exchange/report/unit_record.hpp"

namespace seamtakt {

namespace {

/// The request, with the history that answers it.
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
    return ns ? SheetCell(utc_text_of_ns(*ns)) : SheetCell("open"_word);
  };
  const Sums& all = sums.all;
  Sheet sheet{"summary", {{"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  sheet.rows = {{"From (UTC)"_word, time(range.from_ns)},
                {"To (UTC)"_word, time(range.to_ns)},
                {"Seam"_word,
                 range.seam.empty() ? SheetCell("all"_word) : SheetCell(range.weldment + "/" + range.seam)},
                {"Units"_word, static_cast<double>(sums.of_unit.size())},
                {"Robot passes"_word, static_cast<double>(all.passes)},
                {"Passed"_word, all.count("pass")},
                {"Failed"_word, all.count("fail")},
                {"Undecided"_word, all.count("undecided")},
                {"Not judged"_word, all.count("not judged")},
                {"Manual seams"_word, static_cast<double>(all.manual)},
                {"Void records, which count for nothing"_word, static_cast<double>(all.voids)},
                {Heading{"Arc time"_word, "s"}, Figure{all.arc_time_s, "s"}},
                {Heading{"Welded length"_word, "mm"}, Figure{all.length_mm, "mm"}},
                {Heading{"Arc energy"_word, "J"}, Figure{all.energy_J, "J"}}};
  return sheet;
}

/// All of them where they are few, else how many.
SheetCell missing_cell(const std::vector<std::string>& missing) {
  constexpr std::size_t few = 6;
  if (missing.size() <= few) return SentenceCell{place_list(missing)};
  return PatternCell{"{1} passes"_word, {std::to_string(missing.size())}};
}

Sheet units_sheet(Period& period, const PeriodSums& sums, std::vector<Nonconformance>& open_items,
                  std::vector<OpenCause>& open_causes) {
  Sheet sheet{"units",
              {{"unit_serial", {"Unit"_word}},
               {"weldment", {"Weldment"_word}},
               {"passes", {"Passes of this report"_word}},
               {"failed", {"Failed"_word}},
               {"undecided", {"Undecided"_word}},
               {"manual", {"Manual seams"_word}},
               {"complete", {"Complete by now"_word}},
               {"missing", {"Missing passes"_word}},
               {"open_items", {"Open items"_word}}},
              {}};
  for (const auto& [serial, unit] : sums.of_unit) {
    const UnitStatus status = serial.empty() ? UnitStatus{} : unit_status(period.history, serial);
    open_causes.insert(open_causes.end(), status.open_causes.begin(), status.open_causes.end());
    open_items.insert(open_items.end(), status.nonconformances.begin(), status.nonconformances.end());
    sheet.rows.push_back(
        {serial.empty() ? SheetCell("not known"_word) : SheetCell(serial), status.weldment,
         static_cast<double>(unit.passes), unit.count("fail"), unit.count("undecided"),
         static_cast<double>(unit.manual),
         status.complete ? SheetCell(*status.complete ? "yes"_word : "no"_word) : SheetCell(),
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

/// The same for undecided passes, one row per cause for all units, each pass with its unit.
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

/// Drawn later than the report is made, so it keeps the series.
FigureBlock series_figure(const SeamSeries& series) {
  return {[kept = std::make_shared<const SeamSeries>(series)](const TextView& view) {
    const PatternCell title{
        "{1}: {2}"_word, {SentenceCell{place_sentence(kept->place)}, Heading{"heat input"_word, kept->unit}}};
    return series_svg(*kept, title, view);
  }};
}

}  // namespace

SheetCell title_of(const RecordRange& range) {
  const auto time = [](std::int64_t ns) { return utc_text_of_ns(ns); };
  const std::string seam = range.weldment + "/" + range.seam;
  const bool of_seam = !range.seam.empty();
  if (range.from_ns && range.to_ns)
    return of_seam ? PatternCell{"seam {1} from {2} to {3}"_word,
                                 {seam, time(*range.from_ns), time(*range.to_ns)}}
                   : PatternCell{"welding from {1} to {2}"_word, {time(*range.from_ns), time(*range.to_ns)}};
  if (range.from_ns)
    return of_seam ? PatternCell{"seam {1} from {2}"_word, {seam, time(*range.from_ns)}}
                   : PatternCell{"welding from {1}"_word, {time(*range.from_ns)}};
  if (range.to_ns)
    return of_seam ? PatternCell{"seam {1} to {2}"_word, {seam, time(*range.to_ns)}}
                   : PatternCell{"welding to {1}"_word, {time(*range.to_ns)}};
  return of_seam ? SheetCell(PatternCell{"seam {1}"_word, {seam}}) : SheetCell(std::string());
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
  Report report = record_report(PatternCell{"Heat-input record: {1}"_word, {title_of(range)}}, verified);
  report.add(items_of(sheet_named(sheets, "summary")));
  if (!range.seam.empty()) {
    for (const SeamSeries& series : seam_series(period.history, period.records))
      if (series.quantity == "heat_input_kJ_mm" && series.values.size() > 1)
        report.add(series_figure(series));
    add_table(report, sheets, "statistics", "Level, scatter and drift"_word);
  }
  add_table(report, sheets, "units", "Units"_word);
  add_record_sections(report, sheets, verified, origin);
  return report;
}

std::string period_report_html(const Ledger& ledger, const RecordRange& range, const VerifyReport& verified,
                               const std::string& made_at_utc, const TextView& view) {
  return report_page(period_report(ledger, range, verified, made_at_utc), view);
}

}  // namespace seamtakt
