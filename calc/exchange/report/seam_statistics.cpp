#include "exchange/report/seam_statistics.hpp"

#include <algorithm>
#include <cmath>

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

/// Values that differ by their last bits alone don't scatter: a speed that a controller logs as it was set.
bool scatters(const std::vector<double>& values) {
  const auto [least, greatest] = std::minmax_element(values.begin(), values.end());
  return *greatest - *least > 1e-9 * std::max(std::fabs(*least), std::fabs(*greatest));
}

/// Sample standard deviation; none of one value.
SheetCell sd_of(const std::vector<double>& values, double mean) {
  if (values.size() < 2) return {};
  if (!scatters(values)) return 0.0;
  double sum = 0;
  for (const double value : values) sum += (value - mean) * (value - mean);
  return std::sqrt(sum / static_cast<double>(values.size() - 1));
}

void add_chart(const SeamSeries& series, std::vector<SheetCell>& cells) {
  const auto chart = series.values.size() >= least_values && scatters(series.values)
                         ? process_chart(series.values)
                         : std::nullopt;
  if (!chart) return cells.resize(cells.size() + 3);
  cells.push_back(chart->lower);
  cells.push_back(chart->upper);
  cells.push_back(static_cast<double>(runs_signals(series.values, *chart).size()));
}

void add_drift(const SeamSeries& series, std::vector<SheetCell>& cells) {
  const bool enough = series.values.size() >= least_values && scatters(series.values) &&
                      series.days.back() - series.days.front() >= 1;
  const auto found = enough ? drift(series.days, series.values) : std::nullopt;
  if (!found) return cells.resize(cells.size() + 3);
  cells.push_back(found->slope);
  cells.push_back(found->low_95);
  cells.push_back(found->high_95);
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
              {{"place", "Where"},
               {"schedule", "Schedule"},
               {"quantity", "Quantity"},
               {"records", "Records"},
               {"mean", "Mean"},
               {"sd", "Standard deviation"},
               {"least", "Least"},
               {"greatest", "Greatest"},
               {"chart_lower", "Lower limit of the chart"},
               {"chart_upper", "Upper limit of the chart"},
               {"signals", "Signals of the chart"},
               {"drift_per_day", "Drift by day"},
               {"drift_low_95", "95 % from"},
               {"drift_high_95", "95 % to"}},
              {}};
  for (const SeamSeries& each : series) {
    const double mean = mean_of(each.values);
    const auto [least, greatest] = std::minmax_element(each.values.begin(), each.values.end());
    std::vector<SheetCell> cells = {each.place,    each.schedule,
                                    each.quantity, static_cast<double>(each.values.size()),
                                    mean,          sd_of(each.values, mean),
                                    *least,        *greatest};
    add_chart(each, cells);
    add_drift(each, cells);
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

}  // namespace seamtakt
