#include "records/passes/pass_grouper.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "base/error.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "records/passes/pass_grouper_parts.hpp"

namespace seamtakt {

namespace {

/// Passes that may wait for their arc's end or for rows out of order; more than robots ever weld at once.
constexpr std::size_t most_recent = 64;
constexpr std::size_t listed_jobs = 20;

std::int64_t nanoseconds(double s) {
  return std::llround(s * 1e9);
}

EnergySource energy_source_of(const LogShape& shape) {
  if (shape.has(LogQuantity::energy_J)) return EnergySource::energy_counter;
  if (shape.has(LogQuantity::power_W)) return EnergySource::power;
  return EnergySource::voltage_and_current;
}

}  // namespace

PassGrouper::PassGrouper(const AuditOptions& options, const PlannedPasses* plan,
                         std::vector<std::string> carry)
    : options_(options), plan_(plan), carry_(std::move(carry)) {}
PassGrouper::~PassGrouper() = default;

void PassGrouper::begin_log(const std::string& name, const LogShape& shape) {
  shape_ = &shape;
  log_name_ = name;
  energy_source_ = energy_source_of(shape);
  if (options_.units.empty() || options_.units[0].counts_seconds == shape.counts_seconds()) return;
  throw InputError("--unit-times", shape.counts_seconds() ? "ISO 8601 times"_word : "times in seconds"_word,
                   Sentence(shape.counts_seconds() ? "units.seconds-as-log"_key : "units.iso-8601-as-log"_key,
                            {{"log", printable(name)}}));
}

void PassGrouper::end_log() {
  for (auto& entry : streams_) {
    auto& stream = *entry.second;
    stream.window.flush([&](const LogSample& sample) { take_streamed(stream, sample); });
    close_pass(stream);
  }
  lately_.fill(nullptr);
  while (!recent_.empty()) set_oldest_aside();
  routes_.clear();
  all_routes_.clear();
  job_of_robot_.clear();
  ++log_;
}

void PassGrouper::add(const LogRow& row) {
  Route& route = route_of(row);
  const LogSample sample = sample_of(row, options_.arc_current_A);
  if (route.stream != nullptr) {
    add_streamed(*route.stream, row, sample);
  } else {
    add_identified(route, row, sample);
  }
}

PassGrouper::Route& PassGrouper::route_of(const LogRow& row) {
  for (std::size_t i = 0; i < lately_.size(); ++i) {
    Route* route = lately_[(last_lately_ + lately_.size() - i) % lately_.size()];
    if (route == nullptr || !route->fits(row)) continue;
    last_lately_ = (last_lately_ + lately_.size() - i) % lately_.size();
    return *route;
  }
  std::string key;
  for (const LogText text : routed_texts) (key += row[text]) += '\x1f';
  const auto found = routes_.find(key);
  Route& route =
      found != routes_.end() && found->second->fits(row) ? *found->second : new_route(row, std::move(key));
  // Beside the last one's place, so that the routes of robots that take turns all stay.
  last_lately_ = (newest_recent_route_ + 1) % lately_.size();
  newest_recent_route_ = last_lately_;
  lately_[last_lately_] = &route;
  return route;
}

PassGrouper::Route& PassGrouper::new_route(const LogRow& row, std::string key) {
  if (all_routes_.size() >= options_.reader.limits.passes)
    throw InputError(printable(log_name_) + ":" + std::to_string(row.line),
                     Sentence("log.identities.too-many"_key, {{"most", options_.reader.limits.passes}}),
                     "fewer in one log, or --max-passes N"_word);
  Route& route = all_routes_.emplace_back();
  for (std::size_t i = 0; i < routed_texts.size(); ++i) route.texts[i] = row[routed_texts[i]];
  route.key = identity_of(row, route);
  const JobIdentity* job = job_of(row);
  const bool identified = row.pass > 0 || options_.pass || !row[LogText::seam].empty() ||
                          (job != nullptr && (job->seam || job->pass));
  if (!identified) route.stream = &stream_of(route.key, row[LogText::robot]);
  route.job_without_unit =
      identified && job != nullptr && route.key.unit_serial.empty() && row[LogText::seam].empty();
  Route*& newest = routes_[std::move(key)];
  if (newest != nullptr && newest->key.unit_serial != route.key.unit_serial) note_border(*newest, route, row);
  newest = &route;
  return route;
}

/// A unit's time that ends while the arc is on cuts a pass in two: which unit it was welded on can't be told.
void PassGrouper::note_border(const Route& before, Route& route, const LogRow& row) {
  PassEntry* const entry = before.stream != nullptr ? before.stream->open : before.entry;
  if (entry == nullptr || !entry->sums.arc_is_on()) return;
  const std::int64_t gap = row.time.ns - entry->sums.last_ns();
  const bool goes_on = row[LogQuantity::current_A] > options_.arc_current_A && gap >= 0 &&
                       gap <= nanoseconds(options_.arc_off_s);
  if (!goes_on) return;
  entry->is_cut = true;
  (route.stream != nullptr ? route.stream->is_cut : route.is_cut) = true;
}

PassGrouper::Stream& PassGrouper::stream_of(const PassKey& key, std::string_view robot) {
  auto& stream = streams_[{key, std::string(robot)}];
  if (!stream) {
    stream = std::make_unique<Stream>();
    stream->key = key;
    stream->robot = robot;
    stream->window = SortWindow(options_.sort_window);
  }
  return *stream;
}

const JobIdentity* PassGrouper::job_of(const LogRow& row) const {
  if (!options_.columns || row[LogText::job].empty()) return nullptr;
  const auto job = options_.columns->jobs.find(row[LogText::job]);
  return job == options_.columns->jobs.end() ? nullptr : &job->second;
}

PassKey PassGrouper::identity_of(const LogRow& row, Route& route) {
  PassKey key{std::string(row[LogText::unit_serial]), std::string(row[LogText::weldment]),
              std::string(row[LogText::seam]), row.pass};
  const auto fill = [](std::string& field, const std::string& with) {
    if (field.empty()) field = with;
  };
  if (const JobIdentity* job = job_of(row)) {
    fill(key.weldment, job->weldment.value_or(""));
    fill(key.seam, job->seam.value_or(""));
    if (key.pass == 0) key.pass = job->pass.value_or(0);
  } else if (!row[LogText::job].empty() && unknown_jobs_.size() < listed_jobs) {
    unknown_jobs_.insert(printable(row[LogText::job], 40));
  }
  fill(key.unit_serial, options_.unit_serial);
  fill(key.weldment, options_.weldment);
  fill(key.seam, options_.seam);
  if (key.pass == 0) key.pass = options_.pass.value_or(0);
  if (key.unit_serial.empty()) find_unit(row.time.ns, key, route);
  if (key.weldment.empty() && plan_ != nullptr && !plan_->only_weldment().empty()) {
    key.weldment = plan_->only_weldment();
    weldment_inferred_ = true;
  }
  return key;
}

void PassGrouper::find_unit(std::int64_t ns, PassKey& key, Route& route) const {
  const auto& units = options_.units;
  const auto after = std::upper_bound(units.begin(), units.end(), ns,
                                      [](std::int64_t t, const UnitTime& unit) { return t < unit.start_ns; });
  if (after != units.end()) route.until_ns = after->start_ns;
  if (after == units.begin()) return;
  const UnitTime& last_begun = *(after - 1);
  if (ns >= last_begun.end_ns) {
    route.from_ns = last_begun.end_ns;
    return;
  }
  route.from_ns = last_begun.start_ns;
  route.until_ns = last_begun.end_ns;
  key.unit_serial = last_begun.unit_serial;
  if (key.weldment.empty()) key.weldment = last_begun.weldment;
}

void PassGrouper::add_identified(Route& route, const LogRow& row, const LogSample& sample) {
  if (route.entry == nullptr) {
    route.entry = &identified_entry(route.key, sample, row[LogText::robot]);
    route.entry->is_cut |= route.is_cut;
  }
  if (route.job_without_unit) begin_occurrence_if_due(route, row, sample);
  PassEntry& entry = *route.entry;
  touch(entry);
  entry.window.add(sample, [&](const LogSample& next) { entry.sums.add(next); });
  note_texts(entry, row);
}

void PassGrouper::begin_occurrence_if_due(Route& route, const LogRow& row, const LogSample& sample) {
  auto at = job_of_robot_.find(row[LogText::robot]);
  if (at == job_of_robot_.end()) at = job_of_robot_.emplace(std::string(row[LogText::robot]), nullptr).first;
  const PassAccumulator& sums = route.entry->sums;
  const bool came_back = at->second != &route && route.entry->has_arc();
  const bool after_gap = sample.arc_on && route.entry->has_arc() && !sums.arc_is_on() &&
                         sample.ns - sums.off_since_ns() > nanoseconds(options_.job_gap_s);
  at->second = &route;
  if (came_back || after_gap) route.entry = &new_entry(route.key, false, row[LogText::robot]);
}

PassEntry& PassGrouper::identified_entry(const PassKey& key, const LogSample& sample,
                                         std::string_view robot) {
  auto found = by_key_.find(key);
  if (found == by_key_.end()) return *(by_key_[key] = &new_entry(key, false, robot));
  PassEntry& before = *found->second;
  if (before.last_log == log_) return before;
  // A log may be cut in two while a pass runs; anything else is a repetition of the pass.
  const std::int64_t gap = sample.ns - before.sums.last_ns();
  if (gap >= 0 && gap <= nanoseconds(options_.arc_off_s)) {
    before.last_log = log_;
    return before;
  }
  PassEntry& again = new_entry(key, false, robot);
  before.repeated = again.repeated = true;
  return *(found->second = &again);
}

PassEntry& PassGrouper::new_entry(PassKey key, bool numbered, std::string_view robot) {
  if (entries_.size() >= options_.reader.limits.passes)
    throw InputError(printable(log_name_),
                     Sentence("log.passes.too-many"_key, {{"most", options_.reader.limits.passes}}),
                     "fewer in one audit, or --max-passes N"_word);
  AccumulationRules rules;
  rules.frozen_ns = nanoseconds(options_.frozen_s);
  rules.hole_ns = nanoseconds(options_.arc_off_s);
  rules.energy_source = energy_source_;
  rules.listed_interruptions = options_.reader.limits.listed_interruptions;
  std::optional<PlannedPass> planned;
  if (plan_ != nullptr) planned = plan_->find(key.weldment, key.seam, key.pass);
  if (planned) {
    const Robot* of_plan = plan_->robot(*planned->seam, robot);
    rules.seam = planned->seam;
    rules.arc_start_ns = nanoseconds(arc_start_s(*planned, of_plan));
    rules.crater_ns = nanoseconds(crater_fill_s(*planned, of_plan));
    rules.excursions = excursion_rules(*planned, of_plan != nullptr ? of_plan->id : robot);
    if (key.pass == 0) key.pass = planned->pass;
  }
  auto& entry = entries_.emplace_back(
      std::make_unique<PassEntry>(std::move(key), rules, numbered ? 0 : options_.sort_window));
  entry->numbered = numbered;
  entry->planned = planned;
  entry->energy_source = energy_source_;
  if (options_.columns) entry->signal = options_.columns->signal;
  entry->first_log = entry->last_log = log_;
  entry->counts_seconds = shape_->counts_seconds();
  return *entry;
}

ExcursionRules PassGrouper::excursion_rules(const PlannedPass& planned, std::string_view robot) const {
  const ExcursionOptions& given = options_.excursions;
  ExcursionRules rules;
  if (planned.schedule->limits) rules.limits = &*planned.schedule->limits;
  rules.window_ns = nanoseconds(given.window_s.value_or(default_limits_window_s(*planned.schedule)));
  rules.gas_window_ns = nanoseconds(given.gas_window_s);
  rules.lead_ohm = lead_ohm(plan_->plan(), robot);
  return rules;
}

void PassGrouper::add_streamed(Stream& stream, const LogRow& row, const LogSample& sample) {
  stream.window.add(sample, [&](const LogSample& next) { take_streamed(stream, next); });
  if (stream.open != nullptr && sample.arc_on) note_texts(*stream.open, row);
}

void PassGrouper::take_streamed(Stream& stream, const LogSample& sample) {
  if (stream.open != nullptr) {
    const PassAccumulator& sums = stream.open->sums;
    const std::int64_t longest_gap = nanoseconds(options_.arc_off_s);
    const bool over = sums.arc_is_on()
                          ? sums.is_hole(sample.ns)
                          : sample.ns - sums.off_since_ns() > longest_gap || sample.ns < sums.last_ns();
    if (over) close_pass(stream);
  }
  if (stream.open == nullptr) {
    if (!sample.arc_on) {
      ++arc_off_rows_;
      return;
    }
    PassKey key = stream.key;
    key.pass = ++last_number_[stream.key];
    stream.open = &new_entry(std::move(key), true, stream.robot);
    stream.open->is_cut = std::exchange(stream.is_cut, false);
  }
  touch(*stream.open);
  stream.open->sums.add(sample);
}

void PassGrouper::close_pass(Stream& stream) {
  if (stream.open == nullptr) return;
  stream.open->sums.set_aside();
  stream.open = nullptr;
}

void PassGrouper::touch(PassEntry& entry) {
  if (entry.recent) return;
  entry.recent = true;
  recent_.push_back(&entry);
  if (recent_.size() <= most_recent) return;
  for (std::size_t tries = 0; tries < lately_.size() && in_use(*recent_.front()); ++tries) {
    recent_.push_back(recent_.front());
    recent_.pop_front();
  }
  set_oldest_aside();
}

bool PassGrouper::in_use(const PassEntry& entry) const {
  return std::any_of(lately_.begin(), lately_.end(), [&](const Route* route) {
    return route != nullptr &&
           (route->entry == &entry || (route->stream != nullptr && route->stream->open == &entry));
  });
}

void PassGrouper::set_oldest_aside() {
  PassEntry& entry = *recent_.front();
  recent_.pop_front();
  entry.window.flush([&](const LogSample& sample) { entry.sums.add(sample); });
  entry.sums.set_aside();
  entry.recent = false;
}

void PassGrouper::note_texts(PassEntry& entry, const LogRow& row) {
  if (entry.robot.empty()) entry.robot = row[LogText::robot];
  const std::string_view revision = row[LogText::schedule_revision];
  if (!revision.empty() && revision != entry.schedule_revision) {
    if (entry.schedule_revision.empty()) {
      entry.schedule_revision = revision;
    } else {
      entry.revision_changed = true;
    }
  }
  if (!row.carried.empty()) note_carried(entry, row);
}

void PassGrouper::note_carried(PassEntry& entry, const LogRow& row) {
  if (entry.carried.empty())
    for (const auto& name : carry_) entry.carried.push_back({name, {}});
  for (std::size_t i = 0; i < row.carried.size(); ++i) {
    const std::string_view value = row.carried[i];
    auto& values = entry.carried[shape_->carried_index[i]].values;
    if (value.empty() || (!values.empty() && values.back() == value)) continue;
    if (std::find(values.begin(), values.end(), value) != values.end()) continue;
    if (values.size() < options_.reader.limits.carried_values) {
      values.emplace_back(value);
    } else {
      ++entry.carried_more;
    }
  }
}

std::vector<std::unique_ptr<PassEntry>> PassGrouper::finish() {
  for (auto& entry : entries_) {
    entry->sums.finish();
    const PassTotals& totals = entry->sums.totals();
    if (!entry->has_arc()) {
      arc_off_rows_ += totals.samples;
    } else if (entry->numbered) {
      arc_off_rows_ += totals.samples - totals.samples_to_arc_end;
    }
  }
  std::erase_if(entries_, [](const auto& entry) { return !entry->has_arc(); });
  return std::move(entries_);
}

}  // namespace seamtakt
