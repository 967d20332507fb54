#include "line/levelling.hpp"

#include <algorithm>
#include <array>
#include <numeric>

#include "line/flow_recurrence.hpp"
#include "line/order_times.hpp"
#include "line/random_stream.hpp"
#include "line/takt_count.hpp"

namespace seamtakt {

namespace {

constexpr double most_evaluated_services = 4e7;  // of all evaluations: some seconds
constexpr long fewest_evaluations = 100;

/// What a sequence is judged by, the first that differs.
using Score = std::array<double, 4>;

/// A sequence is a list of order numbers. The orders of a due date fill the places that they fill when
/// sorted.
class Leveller {
 public:
  Leveller(const std::vector<Order>& orders, const std::vector<int>& weldments, const LineTimes& times,
           const LevelRequest& request)
      : orders_(orders),
        weldments_(weldments),
        times_(times),
        request_(request),
        order_times_(order_times(orders, times.hours().get())) {}

  std::vector<int> best() {
    std::vector<int> sorted(orders_.size());
    std::iota(sorted.begin(), sorted.end(), 0);
    std::stable_sort(sorted.begin(), sorted.end(),
                     [&](int a, int b) { return order(a).due_key < order(b).due_key; });
    const std::vector<int> chased = goal_chased(sorted);
    const Score of_sorted = score(sorted), of_chased = score(chased);
    return of_chased < of_sorted ? searched(chased, of_chased) : searched(sorted, of_sorted);
  }

 private:
  const Order& order(int i) const { return orders_[static_cast<std::size_t>(i)]; }
  int weldment(int i) const { return weldments_[static_cast<std::size_t>(i)]; }

  Score score(const std::vector<int>& sequence) const {
    std::vector<int> weldments;
    std::vector<std::uint32_t> random_stream_id;
    for (const int i : sequence) {
      weldments.push_back(weldment(i));
      random_stream_id.push_back(order(i).number);
    }
    LineModel model = times_.model(weldments, random_stream_id, request_.changes);
    model.due_s = in_sequence(order_times_.due_s, sequence);
    model.available_s = in_sequence(order_times_.available_s, sequence);
    const LineFigures figures = line_figures(model, request_.goal, request_.seed, request_.runs);
    return {figures.late_orders, figures.takt_misses, figures.takt_lost_s, figures.makespan_s};
  }

  static std::vector<double> in_sequence(const std::vector<double>& of_order,
                                         const std::vector<int>& sequence) {
    std::vector<double> list;
    if (of_order.empty()) return list;
    for (const int i : sequence) list.push_back(of_order[static_cast<std::size_t>(i)]);
    return list;
  }

  /// What one unit of a weldment uses: 1 of itself, and work at each stage.
  std::vector<double> use_of(int weldment, std::size_t weldment_count,
                             const std::vector<double>& mean_work_s) const {
    std::vector<double> use(weldment_count, 0.0);
    use[static_cast<std::size_t>(weldment)] = 1;
    for (std::size_t stage = 0; stage < mean_work_s.size(); ++stage)
      use.push_back(mean_work_s[stage] > 0
                        ? times_.alone_s(weldment, static_cast<int>(stage)) / mean_work_s[stage]
                        : 0);
    return use;
  }

  std::vector<int> goal_chased(const std::vector<int>& sorted) const {
    std::vector<int> sequence;
    for (std::size_t begin = 0; begin < sorted.size();) {
      std::size_t end = begin;
      while (end < sorted.size() && order(sorted[end]).due_key == order(sorted[begin]).due_key) ++end;
      chase({sorted.begin() + static_cast<std::ptrdiff_t>(begin),
             sorted.begin() + static_cast<std::ptrdiff_t>(end)},
            sequence);
      begin = end;
    }
    return sequence;
  }

  void chase(const std::vector<int>& group, std::vector<int>& sequence) const {
    const auto weldment_count =
        static_cast<std::size_t>(*std::max_element(weldments_.begin(), weldments_.end())) + 1;
    const auto units = static_cast<double>(group.size());
    std::vector<double> mean_work_s(times_.stages().size(), 0.0);
    for (const int i : group)
      for (std::size_t stage = 0; stage < mean_work_s.size(); ++stage)
        mean_work_s[stage] += times_.alone_s(weldment(i), static_cast<int>(stage)) / units;
    std::vector<std::vector<double>> use(weldment_count);
    std::vector<std::vector<int>> left(weldment_count);
    std::vector<double> total;
    for (const int i : group) {
      auto& of_one = use[static_cast<std::size_t>(weldment(i))];
      if (of_one.empty()) of_one = use_of(weldment(i), weldment_count, mean_work_s);
      left[static_cast<std::size_t>(weldment(i))].push_back(i);
      total.resize(of_one.size(), 0.0);
      for (std::size_t goal = 0; goal < total.size(); ++goal) total[goal] += of_one[goal];
    }
    for (auto& list : left) std::reverse(list.begin(), list.end());
    std::vector<double> used(total.size(), 0.0);
    for (std::size_t k = 1; k <= group.size(); ++k) {
      const std::size_t next = nearest_to_even(static_cast<double>(k) / units, total, used, use, left);
      for (std::size_t goal = 0; goal < used.size(); ++goal) used[goal] += use[next][goal];
      sequence.push_back(left[next].back());
      left[next].pop_back();
    }
  }

  static std::size_t nearest_to_even(double share, const std::vector<double>& total,
                                     const std::vector<double>& used,
                                     const std::vector<std::vector<double>>& use,
                                     const std::vector<std::vector<int>>& left) {
    std::size_t best = left.size();
    double best_distance = 0;
    for (std::size_t w = 0; w < left.size(); ++w) {
      if (left[w].empty()) continue;
      double distance = 0;
      for (std::size_t goal = 0; goal < total.size(); ++goal) {
        const double off = share * total[goal] - used[goal] - use[w][goal];
        distance += off * off;
      }
      if (best != left.size() && distance >= best_distance) continue;
      best = w;
      best_distance = distance;
    }
    return best;
  }

  long evaluations() const {
    const double services = static_cast<double>(orders_.size() * times_.stages().size()) * request_.runs;
    return std::clamp(static_cast<long>(most_evaluated_services / services), fewest_evaluations,
                      request_.evaluations);
  }

  bool nothing_to_gain(const Score& score) const { return request_.goal && score[0] == 0 && score[1] == 0; }

  std::vector<int> searched(std::vector<int> sequence, Score best) const {
    const RandomStream draws(request_.seed, 0, 1000);
    const long most = evaluations();
    for (long step = 0; step < most && !nothing_to_gain(best); ++step) {
      const auto place = [&](std::uint64_t index) {
        const double u = draws.uniform(static_cast<std::uint64_t>(step), 0, index);
        return std::min(static_cast<std::size_t>(u * static_cast<double>(sequence.size())),
                        sequence.size() - 1);
      };
      const std::size_t from = place(0), to = place(1);
      if (order(sequence[from]).due_key != order(sequence[to]).due_key) continue;
      if (weldment(sequence[from]) == weldment(sequence[to])) continue;
      std::vector<int> tried = sequence;
      if (draws.uniform(static_cast<std::uint64_t>(step), 0, 2) < 0.5)
        std::swap(tried[from], tried[to]);
      else
        move(tried, from, to);
      const Score of_tried = score(tried);
      if (of_tried > best) continue;
      best = of_tried;
      sequence = std::move(tried);
    }
    return sequence;
  }

  static void move(std::vector<int>& sequence, std::size_t from, std::size_t to) {
    const auto at = [&](std::size_t i) { return sequence.begin() + static_cast<std::ptrdiff_t>(i); };
    if (from < to)
      std::rotate(at(from), at(from + 1), at(to + 1));
    else
      std::rotate(at(to), at(from), at(from + 1));
  }

  const std::vector<Order>& orders_;
  const std::vector<int>& weldments_;
  const LineTimes& times_;
  const LevelRequest& request_;
  OrderTimes order_times_;
};

}  // namespace

std::vector<int> level_orders(const std::vector<Order>& orders, const std::vector<int>& weldment_of_order,
                              const LineTimes& times, const LevelRequest& request) {
  if (orders.empty()) return {};
  return Leveller(orders, weldment_of_order, times, request).best();
}

}  // namespace seamtakt
