#include "jobs/log_import.hpp"

#include "base/error.hpp"
#include "records/log/log_reader.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::desk {

namespace {

/// Half of the work is judging, half is keeping the samples: the second reading counts on from the first.
using Report = std::function<void(std::uint64_t, std::uint64_t, int)>;

std::string trace_key(const std::string& log, std::string_view unit, std::string_view weldment,
                      std::string_view seam, int pass) {
  std::string key = log;
  for (std::string_view part : {unit, weldment, seam}) (key += '|') += part;
  return key + '|' + std::to_string(pass);
}

void read_traces(const std::string& path, TraceMap& traces, const Report& report) {
  const auto bytes = open_log_bytes(path);
  RejectedRows rejected;
  LogReader reader(*bytes, path, nullptr, {}, rejected);
  constexpr LogQuantity quantities[Trace::channels] = {LogQuantity::current_A, LogQuantity::voltage_V,
                                                       LogQuantity::wire_feed_speed_m_min,
                                                       LogQuantity::travel_speed_mm_s};
  std::string key, last_key;
  Trace* trace = nullptr;
  for (auto rows = reader.next_rows(); !rows.empty(); rows = reader.next_rows()) {
    report(bytes->bytes_taken(), bytes->bytes_total(), 1);
    for (const LogRow& row : rows) {
      key = trace_key(path, row[LogText::unit_serial], row[LogText::weldment], row[LogText::seam], row.pass);
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

ImportedLogsPtr import_logs(const QStringList& paths, const PlanPtr& plan, const QString& manual_csv,
                            const Report& report) {
  auto logs = std::make_shared<ImportedLogs>();
  logs->plan = plan;
  logs->paths = paths;
  std::vector<LogSource> sources;
  for (const QString& path : paths) sources.push_back({path.toStdString(), nullptr});
  AuditOptions options;
  options.progress = [&](std::uint64_t taken, std::uint64_t total) { report(taken, total, 0); };
  if (!manual_csv.isEmpty()) options.manual = load_manual_seams(manual_csv.toStdString());
  logs->audit = audit(sources, options, plan->schedules.empty() ? nullptr : plan.get());
  for (const LogSource& source : sources) read_traces(source.path, logs->traces, report);
  for (auto& [key, trace] : logs->traces) {
    report(0, 0, 1);
    trace.build();
  }
  return logs;
}

}  // namespace

const Trace* trace_of(const ImportedLogs& logs, const PassRecord& record, std::size_t& begin,
                      std::size_t& end) {
  auto at = logs.traces.find(
      trace_key(record.source, record.unit_serial, record.weldment, record.seam, record.pass.value_or(0)));
  if (at == logs.traces.end()) at = logs.traces.find(trace_key(record.source, {}, {}, {}, 0));
  if (at == logs.traces.end()) at = logs.traces.lower_bound(record.source + "|");
  if (at == logs.traces.end() || !at->first.starts_with(record.source + "|")) return nullptr;
  std::tie(begin, end) = at->second.rangeOfLines(record.source_line_first, record.source_line_last);
  return begin < end ? &at->second : nullptr;
}

LogImport::LogImport(QObject* parent)
    : QObject(parent),
      worker_([this](const QString& reason) { emit failed(reason); }, [this] { emit cancelled(); }) {}

void LogImport::start(const QStringList& paths, const PlanPtr& plan, const QString& manual_csv) {
  worker_.start([this, paths, plan, manual_csv](unsigned run) -> Worker::Said {
    const auto logs =
        import_logs(paths, plan, manual_csv, [&](std::uint64_t taken, std::uint64_t total, int half) {
          if (worker_.isStopped()) throw Worker::Stopped();
          worker_.say(run,
                      [this, taken, total, half] { emit progress(taken + (half ? total : 0), 2 * total); });
        });
    return [this, logs] { emit finished(logs); };
  });
}

}  // namespace seamtakt::desk
