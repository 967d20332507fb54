#include "jobs/log_import.hpp"

#include "base/error.hpp"
#include "records/log/log_reader.hpp"
#include "records/passes/plan_jobs.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::desk {

namespace {

constexpr std::size_t most_passes = 100'000;  // some 800 MB: whoever sits there sees it grow, and can stop it

/// Half of the work is judging, half is keeping the samples: the progress of the second reading continues
/// that of the first.
using Report = std::function<void(std::uint64_t, std::uint64_t, int)>;

std::string trace_key(const std::string& log, std::string_view unit, std::string_view weldment,
                      std::string_view seam, int pass) {
  std::string key = log;
  for (std::string_view part : {unit, weldment, seam}) (key += '|') += part;
  return key + '|' + std::to_string(pass);
}

/// The log's identity of a row's pass, by its job number if it has no names.
std::string trace_key(const std::string& log, const LogRow& row, const LogColumns* columns) {
  std::string_view weldment = row[LogText::weldment], seam = row[LogText::seam];
  int pass = row.pass;
  if (columns != nullptr && !row[LogText::job].empty())
    if (const auto job = columns->jobs.find(row[LogText::job]); job != columns->jobs.end()) {
      if (weldment.empty() && job->second.weldment) weldment = *job->second.weldment;
      if (seam.empty() && job->second.seam) seam = *job->second.seam;
      if (pass == 0) pass = job->second.pass.value_or(0);
    }
  return trace_key(log, row[LogText::unit_serial], weldment, seam, pass);
}

void read_traces(const std::string& path, const LogColumns* columns, TraceMap& traces, const Report& report) {
  const auto bytes = open_log_bytes(path);
  RejectedRows rejected;
  LogReader reader(*bytes, path, columns, {}, rejected);
  constexpr LogQuantity quantities[Trace::channels] = {LogQuantity::current_A, LogQuantity::voltage_V,
                                                       LogQuantity::wire_feed_speed_m_min,
                                                       LogQuantity::travel_speed_mm_s};
  std::string key, last_key;
  Trace* trace = nullptr;
  for (auto rows = reader.next_rows(); !rows.empty(); rows = reader.next_rows()) {
    report(bytes->bytes_taken(), bytes->bytes_total(), 1);
    for (const LogRow& row : rows) {
      key = trace_key(path, row, columns);
      if (!trace || key != last_key) {
        trace = &traces[key];
        last_key = key;
      }
      float values[Trace::channels] = {};
      unsigned present = 0;
      for (int channel = 0; channel < Trace::channels; ++channel) {
        values[channel] = static_cast<float>(row[quantities[channel]]);
        if (row.has(quantities[channel])) present |= 1u << channel;
      }
      trace->add(static_cast<double>(row.time.ns) / 1e9, static_cast<std::uint32_t>(row.line), values,
                 present);
    }
  }
}

ImportedLogsPtr import_logs(const ImportRequest& request, const PlanPtr& plan, const Report& report) {
  auto logs = std::make_shared<ImportedLogs>();
  logs->plan = plan;
  logs->request = request;
  std::vector<LogSource> sources;
  for (const QString& path : request.logs) sources.push_back({path.toStdString(), nullptr});
  AuditOptions options;
  options.reader.limits.passes = most_passes;
  options.progress = [&](std::uint64_t taken, std::uint64_t total) { report(taken, total, 0); };
  if (!request.columns.isEmpty()) options.columns = load_log_columns(request.columns.toStdString());
  if (!request.unit_times.isEmpty()) options.units = load_unit_times(request.unit_times.toStdString());
  if (!request.manual.isEmpty()) options.manual = load_manual_seams(request.manual.toStdString());
  logs->audit = audit(sources, options, plan->schedules.empty() ? nullptr : plan.get());
  logs->cycles = cycle_actual(logs->audit.passes, *plan);
  const auto columns = with_plan_jobs(options.columns, plan.get());
  for (const LogSource& source : sources)
    read_traces(source.path, columns ? &*columns : nullptr, logs->traces, report);
  for (auto& [key, trace] : logs->traces) {
    report(0, 0, 1);
    trace.build();
  }
  return logs;
}

}  // namespace

const Trace* trace_of(const ImportedLogs& logs, const PassRecord& record, std::size_t& begin,
                      std::size_t& end) {
  // A log may lack unit, weldment and other identity that the record has.
  const std::string_view serial = record.unit_serial, weldment = record.weldment;
  const int pass = record.pass.value_or(0);
  auto at = logs.traces.end();
  for (const auto& [unit, frame] :
       {std::pair(serial, weldment), std::pair(std::string_view(), weldment),
        std::pair(serial, std::string_view()), std::pair(std::string_view(), std::string_view())})
    if (at == logs.traces.end())
      at = logs.traces.find(trace_key(record.source, unit, frame, record.seam, pass));
  if (at == logs.traces.end()) at = logs.traces.find(trace_key(record.source, {}, {}, {}, 0));
  if (at == logs.traces.end()) at = logs.traces.lower_bound(record.source + "|");
  if (at == logs.traces.end() || !at->first.starts_with(record.source + "|")) return nullptr;
  std::tie(begin, end) = at->second.rangeOfLines(record.source_line_first, record.source_line_last);
  return begin < end ? &at->second : nullptr;
}

LogImport::LogImport(QObject* parent)
    : QObject(parent),
      worker_([this](const QString& reason) { emit failed(reason); }, [this] { emit cancelled(); }) {}

void LogImport::start(const ImportRequest& request, const PlanPtr& plan) {
  worker_.start([this, request, plan](unsigned run) -> Worker::Said {
    const auto logs = import_logs(request, plan, [&](std::uint64_t taken, std::uint64_t total, int half) {
      if (worker_.isStopped()) throw Worker::Stopped();
      worker_.say(run, [this, taken, total, half] { emit progress(taken + (half ? total : 0), 2 * total); });
    });
    return [this, logs] { emit finished(logs); };
  });
}

}  // namespace seamtakt::desk
