#include "jobs/best_job.hpp"

#include "cell/bound/lower_bound.hpp"

namespace seamtakt::desk {

namespace {

constexpr qint64 told_every_ms = 100;

/// The searched makespan as the cycle that follows from it.
SearchState search_state(const BestProgress& progress, const Cell& cell, const Weldment& weldment,
                         qint64 elapsed_ms) {
  const auto cycle_s = [&](double weld_s) {
    return station_cycle_s(cell.stations, weld_s, weldment.load_s, weldment.unload_s, cell.index_s);
  };
  SearchState state{cycle_s(progress.best_s), cycle_s(progress.bound_s), 0,
                    static_cast<double>(elapsed_ms) / 1000};
  state.gap_pct = gap_to_bound_pct(state.best_s, state.bound_s);
  return state;
}

}  // namespace

BestJob::BestJob(QObject* parent)
    : QObject(parent), worker_([this](const QString& reason) { emit failed(reason); }) {}

BestOptions BestJob::options(const ResultsPtr& results, std::size_t weldment, qint64 longest_ms,
                             unsigned run) {
  struct Told {
    BestProgress last;
    qint64 at_ms = -told_every_ms;
  };
  auto told = std::make_shared<Told>();
  BestOptions options;
  options.progress = [told](const BestProgress& progress) { told->last = progress; };
  options.stop = [this, told, results, weldment, longest_ms, run] {
    const qint64 now_ms = since_start_.elapsed();
    if (now_ms - told->at_ms >= told_every_ms && told->last.best_s > 0) {
      told->at_ms = now_ms;
      const SearchState state =
          search_state(told->last, *results->plan->cell, results->plan->weldments[weldment], now_ms);
      worker_.say(run, [this, state] { emit progress(state); });
    }
    return worker_.isStopped() || now_ms >= longest_ms;
  };
  return options;
}

void BestJob::start(const ResultsPtr& results, std::size_t weldment, int seconds) {
  const qint64 longest_ms = qint64{1000} * seconds;
  worker_.start([this, results, weldment, longest_ms](unsigned run) -> Worker::Said {
    since_start_.start();
    auto order = std::make_shared<FoundOrder>();
    order->of = results;
    order->weldment = weldment;
    order->cycle = cycle_best(*results->plan, results->plan->weldments[weldment], results->evaluation,
                              options(results, weldment, longest_ms, run));
    return [this, order] { emit found(order); };
  });
}

}  // namespace seamtakt::desk
