#include "exchange/report/seam_statistics.hpp"

#include <algorithm>
#include <cmath>

#include "base/sentences/place_sentence.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t least_values = 8;
constexpr double day_ns = 86'400e9;

constexpr const char* quantities[] = {"heat_input_kJ_mm", "mean_current_A", "mean_voltage_V",
                                      "travel_speed_mm_s"};

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

/// Values that differ only in their last bits don't scatter: a set speed as logged by a controller.
bool scatters(const std::vector<double>& values) {
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return *greatest - *least > 1e-9 * std::max(std::fabs(*least), std::fabs(*greatest));
}

/// Sample standard deviation; none of one value.
std::optional<double> sd_of(const std::vector<double>& values, double mean) {
  if (values.size() < 2) return std::nullopt;
  if (!scatters(values)) return 0.0;
  double sum = 0;
  for (const double value : values) sum += (value - mean) * (value - mean);
  return std::sqrt(sum / static_cast<double>(values.size() - 1));
}

Figure figure_of(const SeamSeries& series, double value) {
  return {value, series.unit};
}

/// Its heading to people is that of the records' column.
KeyCell quantity_cell(const SeamSeries& series) {
  const auto* column = find_column(record_columns(), series.quantity);
  return {series.quantity, {Word::of_table(column->label), column->unit}};
}

void add_chart(const SeamSeries& series, std::vector<SheetCell>& cells) {
  const auto chart = series.values.size() >= least_values && scatters(series.values)
                         ? process_chart(series.values)
                         : std::nullopt;
  if (!chart) return cells.resize(cells.size() + 3);
  cells.emplace_back(figure_of(series, chart->lower));
  cells.emplace_back(figure_of(series, chart->upper));
  cells.push_back(static_cast<double>(runs_signals(series.values, *chart).size()));
}

void add_drift(const SeamSeries& series, std::vector<SheetCell>& cells) {
  const bool enough = series.values.size() >= least_values && scatters(series.values) &&
                      series.days.back() - series.days.front() >= 1;
  const auto found = enough ? drift(series.days, series.values) : std::nullopt;
  if (!found) return cells.resize(cells.size() + 3);
  for (const double per_day : {found->slope, found->low_95, found->high_95})
    cells.emplace_back(figure_of(series, per_day));
}

std::string pass_place(const JsonNode& body) {
  const JsonNode* pass = body_member(body, "results.pass");
  return body_text(body, "results.weldment") + "/" + body_text(body, "results.seam") + "/pass " +
         (pass != nullptr && pass->is_integer ? std::to_string(static_cast<long>(pass->number)) : "-");
}

}  // namespace

std::vector<SeamSeries> seam_series(RecordHistory& history, const std::vector<FoundRecord>& records) {
  std::map<std::tuple<std::string, std::string, std::size_t>, SeamSeries> series;
  for (const FoundRecord& record : records) {
    if (history.record(record.seq).kind != record_kind::pass || history.is_void(record.seq)) continue;
    const JsonNode body = history.corrected_body(record.seq);
    const std::string place = pass_place(body), schedule = body_text(body, "results.schedule");
    for (std::size_t i = 0; i < std::size(quantities); ++i) {
      const JsonNode* value = body_member(body, std::string("results.") + quantities[i]);
      if (value == nullptr || value->kind != JsonNode::Kind::number) continue;
      SeamSeries& each = series[{place, schedule, i}];
      each.place = place;
      each.schedule = schedule;
      each.quantity = quantities[i];
      each.unit = find_column(record_columns(), quantities[i])->unit;
      each.days.push_back(static_cast<double>(record.moment_ns - records.front().moment_ns) / day_ns);
      each.values.push_back(value->number);
      each.units.push_back(body_text(body, "results.unit_serial"));
    }
  }
  std::vector<SeamSeries> result;
  for (auto& [key, each] : series) result.push_back(std::move(each));
  return result;
}

Sheet statistics_sheet(const std::vector<SeamSeries>& series) {
  Sheet sheet{"statistics",
              {{"place", {"Where"_word}},
               {"schedule", {"Schedule"_word}},
               {"quantity", {"Quantity"_word}},
               {"records", {"Records"_word}},
               {"mean", {"Mean"_word}},
               {"sd", {"Standard deviation"_word}},
               {"least", {"Least"_word}},
               {"greatest", {"Greatest"_word}},
               {"chart_lower", {"Lower limit of the chart"_word}},
               {"chart_upper", {"Upper limit of the chart"_word}},
               {"signals", {"Signals of the chart"_word}},
               {"drift_per_day", {"Drift by day"_word}},
               {"drift_low_95", {"95 % from"_word}},
               {"drift_high_95", {"95 % to"_word}}},
              {}};
  for (const SeamSeries& each : series) {
    const double mean = mean_of(each.values);
    const auto [least, greatest] = std::minmax_element(each.values.begin(), each.values.end());
    const auto sd = sd_of(each.values, mean);
    std::vector<SheetCell> cells = {SentenceCell{place_sentence(each.place)},
                                    each.schedule,
                                    quantity_cell(each),
                                    static_cast<double>(each.values.size()),
                                    figure_of(each, mean),
                                    sd ? SheetCell(figure_of(each, *sd)) : SheetCell(),
                                    figure_of(each, *least),
                                    figure_of(each, *greatest)};
    add_chart(each, cells);
    add_drift(each, cells);
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

}  // namespace seamtakt
