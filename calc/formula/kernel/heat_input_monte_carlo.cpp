#include "formula/kernel/heat_input_monte_carlo.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <optional>
#include <vector>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/kernel/row_kernel.hpp"

namespace seamtakt {

namespace {

/// Rows that are drawn as one piece of work, and that the bounds are first guessed from.
constexpr std::uint64_t rows_a_piece = 128;
constexpr double low_share = 0.025, high_share = 0.975;

constexpr std::size_t span_length = 64;

/// How many values of a span are below the lower and up to the upper bound of two corridors.
struct SpanCount {
  std::int64_t below[2], up_to[2];
};

/// Counts span by span; `spans` of span_length values each. Values are numbers, never NaN.
struct SpanRow {
  const double* values = nullptr;
  std::size_t spans = 0;
  double lower[2] = {}, upper[2] = {};
  SpanCount* counts = nullptr;
};

inline void count_body(const SpanRow& given) {
  const SpanRow row = given;
  for (std::size_t span = 0; span < row.spans; ++span) {
    const double* values = row.values + span * span_length;
    std::int64_t below_0 = 0, below_1 = 0, up_to_0 = 0, up_to_1 = 0;
    for (std::size_t i = 0; i < span_length; ++i) {
      below_0 += values[i] < row.lower[0] ? 1 : 0;
      below_1 += values[i] < row.lower[1] ? 1 : 0;
      up_to_0 += values[i] <= row.upper[0] ? 1 : 0;
      up_to_1 += values[i] <= row.upper[1] ? 1 : 0;
    }
    row.counts[span] = {{below_0, below_1}, {up_to_0, up_to_1}};
  }
}

SEAMTAKT_ROW_KERNEL(count_spans, SpanRow, count_body)

/// The inputs that can't be drawn, in the order of the checks.
struct Refusal {
  const char* what;
  double found;
  Word expected;
};

std::optional<Refusal> refusal_of(const UncertainHeatInput& input) {
  const struct {
    const char* what;
    double value, u;
  } drawn[] = {{"voltage", input.voltage_V, input.u_voltage_V},
               {"current", input.current_A, input.u_current_A},
               {"travel speed", input.travel_speed_mm_s, input.u_travel_speed_mm_s},
               {"thermal efficiency", input.efficiency_low, input.u_efficiency}};
  for (const auto& [what, value, u] : drawn) {
    if (!(value > 0 && std::isfinite(value))) return Refusal{what, value, "a value above 0"_word};
    if (!(u >= 0 && u <= value / 10))
      return Refusal{what, u, "a standard uncertainty of at most a tenth of the value"_word};
  }
  if (!(input.efficiency_high >= input.efficiency_low && std::isfinite(input.efficiency_high)))
    return Refusal{"thermal efficiency", input.efficiency_high,
                   "an upper bound that isn't below the lower one"_word};
  return std::nullopt;
}

void check(const UncertainHeatInput& input) {
  if (const auto refusal = refusal_of(input))
    throw InputError(refusal->what, number_text(refusal->found), refusal->expected);
}

/// Sum and sum of squares about a value near the mean, in eight lanes that are always added in the same
/// order.
class LaneSums {
 public:
  explicit LaneSums(double near_mean) : near_mean_(near_mean) {}

  void add(const double* values) {
    // Local copies: for all the compiler knows the values alias the sums and would be stored every time.
    double sum[lanes], squares[lanes];
    std::copy_n(sum_, lanes, sum);
    std::copy_n(squares_, lanes, squares);
    for (std::size_t i = 0; i < draws_a_row; i += lanes)
      for (std::size_t lane = 0; lane < lanes; ++lane) {
        const double off = values[i + lane] - near_mean_;
        sum[lane] += off;
        squares[lane] += off * off;
      }
    std::copy_n(sum, lanes, sum_);
    std::copy_n(squares, lanes, squares_);
  }
  double sum() const { return total(sum_); }
  double squares() const { return total(squares_); }

 private:
  static constexpr std::size_t lanes = 8;
  static double total(const double (&parts)[lanes]) {
    double all = 0;
    for (const double part : parts) all += part;
    return all;
  }
  double near_mean_;
  double sum_[lanes] = {}, squares_[lanes] = {};
};

double deviation(double sum, double squares, double count) {
  return std::sqrt(std::max(0.0, (squares - sum * sum / count) / (count - 1)));
}

std::uint64_t rows_for(std::uint64_t samples) {
  return std::max<std::uint64_t>(1, (samples + draws_a_row - 1) / draws_a_row);
}

/// Where a bound must be for its samples to be kept.
struct Corridor {
  double lower = 0, upper = 0;
};

/// The result of one piece of work. Sums are about a value near the mean, in eight lanes, always added
/// in the same order.
struct PieceSums {
  double sum = 0, squares = 0;
  std::uint64_t below[2] = {0, 0};  ///< samples under each corridor
  std::vector<double> kept[2];
};

class Drawing {
 public:
  Drawing(const UncertainHeatInput& input, std::uint64_t seed, InstructionSet set)
      : input_(input), seed_(seed), set_(set) {
    const double efficiency = (input.efficiency_low + input.efficiency_high) / 2;
    const double power = arc_power_W<double>(input.voltage_V, input.current_A);
    near_mean_ =
        heat_input_kJ_mm<double>(arc_energy_kJ_mm<double>(power, input.travel_speed_mm_s), efficiency);
  }

  double near_mean() const { return near_mean_; }

  std::vector<double> samples_of(std::uint64_t rows) const {
    std::vector<double> samples;
    HeatInputDraws draws;
    for (std::uint64_t row = 0; row < rows; ++row) {
      draw_heat_inputs(seed_, row, input_, draws, set_);
      samples.insert(samples.end(), std::begin(draws.heat_input_kJ_mm), std::end(draws.heat_input_kJ_mm));
    }
    return samples;
  }

  PieceSums piece(std::uint64_t begin, std::uint64_t end, const Corridor (&corridors)[2]) const {
    LaneSums sums(near_mean_);
    HeatInputDraws draws;
    PieceSums result;
    for (std::uint64_t row = begin; row < end; ++row) {
      draw_heat_inputs(seed_, row, input_, draws, set_);
      sums.add(draws.heat_input_kJ_mm);
      keep(draws.heat_input_kJ_mm, corridors, result);
    }
    result.sum = sums.sum();
    result.squares = sums.squares();
    return result;
  }

 private:
  /// Most samples are outside of both corridors: they are counted first, without branches, and looked at
  /// again only in spans that hold one.
  void keep(const double* heat, const Corridor (&corridors)[2], PieceSums& result) const {
    constexpr std::size_t spans = draws_a_row / span_length;
    SpanCount counts[spans];
    count_spans({heat,
                 spans,
                 {corridors[0].lower, corridors[1].lower},
                 {corridors[0].upper, corridors[1].upper},
                 counts},
                set_);
    for (std::size_t span = 0; span < spans; ++span)
      for (std::size_t bound = 0; bound < 2; ++bound) {
        result.below[bound] += static_cast<std::uint64_t>(counts[span].below[bound]);
        if (counts[span].up_to[bound] == counts[span].below[bound]) continue;
        const auto [lower, upper] = corridors[bound];
        // Written down whether it is kept or not, and counted if it is: no branch to guess wrong.
        double inside[span_length];
        std::size_t count = 0;
        for (std::size_t i = span * span_length; i < (span + 1) * span_length; ++i) {
          inside[count] = heat[i];
          count += static_cast<std::size_t>(static_cast<int>(heat[i] >= lower) &
                                            static_cast<int>(heat[i] <= upper));
        }
        result.kept[bound].insert(result.kept[bound].end(), inside, inside + count);
      }
  }

  UncertainHeatInput input_;
  std::uint64_t seed_;
  InstructionSet set_;
  double near_mean_ = 0;
};

/// Where the bound of a share will be found in all samples, from a few: five standard errors to either side.
Corridor corridor_of(const std::vector<double>& few, double share, double widening) {
  const auto n = static_cast<double>(few.size());
  const double error = 5 * widening * std::sqrt(share * (1 - share) * n);
  const auto rank = [&](double at) { return few[static_cast<std::size_t>(std::clamp(at, 0.0, n - 1))]; };
  Corridor corridor{rank(share * n - error - 1), rank(share * n + error + 1)};
  if (share * n - error - 1 <= 0) corridor.lower = -std::numeric_limits<double>::infinity();
  if (share * n + error + 1 >= n - 1) corridor.upper = std::numeric_limits<double>::infinity();
  return corridor;
}

/// The bound between the ordered samples; empty where the corridor missed it.
std::optional<double> bound_of(std::vector<double>& kept, std::uint64_t below, std::uint64_t samples,
                               double share) {
  const double at = share * static_cast<double>(samples - 1);
  const auto index = static_cast<std::uint64_t>(at);
  if (index < below || index + 1 >= below + kept.size()) {
    const bool is_last = index + 1 == samples && index < below + kept.size() && index >= below;
    if (!is_last) return std::nullopt;
  }
  const auto nth = kept.begin() + static_cast<std::ptrdiff_t>(index - below);
  std::nth_element(kept.begin(), nth, kept.end());
  const double lower = *nth;
  const double upper = nth + 1 == kept.end() ? lower : *std::min_element(nth + 1, kept.end());
  return lower + (upper - lower) * (at - static_cast<double>(index));
}

std::vector<PieceSums> draw_all(const Drawing& drawing, std::uint64_t rows, const Corridor (&corridors)[2],
                                ThreadPool& pool, unsigned most_threads) {
  std::vector<PieceSums> pieces((rows + rows_a_piece - 1) / rows_a_piece);
  pool.parallel_for(
      rows, rows_a_piece,
      [&](std::size_t begin, std::size_t end) {
        pieces[begin / rows_a_piece] = drawing.piece(begin, end, corridors);
      },
      most_threads);
  return pieces;
}

}  // namespace

HeatInputSpread heat_input_spread(const UncertainHeatInput& input, std::uint64_t samples, std::uint64_t seed,
                                  ThreadPool& pool, unsigned most_threads, InstructionSet set) {
  check(input);
  const std::uint64_t rows = rows_for(samples);
  const Drawing drawing(input, seed, set);
  std::vector<double> few = drawing.samples_of(std::min(rows, rows_a_piece));
  std::sort(few.begin(), few.end());
  HeatInputSpread spread;
  spread.samples = rows * draws_a_row;
  const auto count = static_cast<double>(spread.samples);
  for (double widening = 1;; widening *= 8) {
    const Corridor corridors[2] = {corridor_of(few, low_share, widening),
                                   corridor_of(few, high_share, widening)};
    PieceSums all;
    for (PieceSums& piece : draw_all(drawing, rows, corridors, pool, most_threads)) {
      all.sum += piece.sum;
      all.squares += piece.squares;
      for (std::size_t bound = 0; bound < 2; ++bound) {
        all.below[bound] += piece.below[bound];
        all.kept[bound].insert(all.kept[bound].end(), piece.kept[bound].begin(), piece.kept[bound].end());
      }
    }
    const auto low = bound_of(all.kept[0], all.below[0], spread.samples, low_share);
    const auto high = bound_of(all.kept[1], all.below[1], spread.samples, high_share);
    if (!low || !high) continue;  // once in a very long while: draw again with a wider corridor
    spread.mean_kJ_mm = drawing.near_mean() + all.sum / count;
    spread.standard_deviation_kJ_mm = deviation(all.sum, all.squares, count);
    spread.low_kJ_mm = *low;
    spread.high_kJ_mm = *high;
    return spread;
  }
}

bool can_be_drawn(const UncertainHeatInput& input) {
  return !refusal_of(input);
}

HeatInputDeviations heat_input_deviations(const UncertainHeatInput& input, std::uint64_t samples,
                                          std::uint64_t seed, ThreadPool& pool) {
  check(input);
  const std::uint64_t rows = rows_for(samples);
  const double power = arc_power_W<double>(input.voltage_V, input.current_A);
  const double energy = arc_energy_kJ_mm<double>(power, input.travel_speed_mm_s);
  const double efficiency = (input.efficiency_low + input.efficiency_high) / 2;
  const double near[4] = {power, energy, efficiency, heat_input_kJ_mm<double>(energy, efficiency)};
  struct Piece {
    double sum[4], squares[4];
  };
  std::vector<Piece> pieces((rows + rows_a_piece - 1) / rows_a_piece);
  pool.parallel_for(rows, rows_a_piece, [&](std::size_t begin, std::size_t end) {
    LaneSums sums[4] = {LaneSums(near[0]), LaneSums(near[1]), LaneSums(near[2]), LaneSums(near[3])};
    HeatInputDraws draws;
    for (std::size_t row = begin; row < end; ++row) {
      draw_heat_inputs(seed, row, input, draws);
      const double* const values[4] = {draws.power_W, draws.energy_kJ_mm, draws.thermal_efficiency,
                                       draws.heat_input_kJ_mm};
      for (std::size_t k = 0; k < 4; ++k) sums[k].add(values[k]);
    }
    for (std::size_t k = 0; k < 4; ++k) {
      pieces[begin / rows_a_piece].sum[k] = sums[k].sum();
      pieces[begin / rows_a_piece].squares[k] = sums[k].squares();
    }
  });
  double deviations[4];
  for (std::size_t k = 0; k < 4; ++k) {
    double sum = 0, squares = 0;
    for (const Piece& piece : pieces) {
      sum += piece.sum[k];
      squares += piece.squares[k];
    }
    deviations[k] = deviation(sum, squares, static_cast<double>(rows * draws_a_row));
  }
  return {deviations[0], deviations[1], deviations[2], deviations[3]};
}

}  // namespace seamtakt
