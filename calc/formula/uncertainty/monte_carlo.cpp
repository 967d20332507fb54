#include <cmath>
#include <numbers>

#include "base/parallel/thread_pool.hpp"
#include "base/split_mix.hpp"
#include "formula/uncertainty/fast_monte_carlo.hpp"
#include "formula/uncertainty/propagation.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr std::size_t block_samples = 1024;
/// More digits than any uncertainty has; keeps the work within minutes.
constexpr std::size_t most_samples = 100'000'000;

/// Count, mean and sum of squared deviations of one key (Welford), joined block by block (Chan).
struct Moments {
  std::uint64_t count = 0;
  double mean = 0, squares = 0;

  void add(double x) {
    ++count;
    double step = x - mean;
    mean += step / static_cast<double>(count);
    squares += step * (x - mean);
  }
  void join(const Moments& other) {
    if (other.count == 0) return;
    double n = static_cast<double>(count), m = static_cast<double>(other.count), step = other.mean - mean;
    mean += step * m / (n + m);
    squares += other.squares + step * step * n * m / (n + m);
    count += other.count;
  }
};

struct Block {
  std::map<std::string, Moments, std::less<>> by_key;
  std::uint64_t left_out = 0;
};

struct Drawing {
  std::string name;
  double value, u;
};

class Sampler {
 public:
  Sampler(const Quantity& quantity, const Inputs<double>& inputs, const QuantityRequest& request)
      : quantity_(quantity), inputs_(inputs), seed_(request.seed) {
    for (const auto& [name, u] : request.standard_uncertainty)
      if (u > 0) drawings_.push_back({name, inputs.number(name), u});
  }

  bool nothing_to_draw() const { return drawings_.empty(); }

  Block run(std::uint64_t begin, std::uint64_t end) {
    Block block;
    for (std::uint64_t sample = begin; sample < end; ++sample) add_sample(sample, block);
    return block;
  }

 private:
  void add_sample(std::uint64_t sample, Block& block) {
    for (std::size_t i = 0; i < drawings_.size(); ++i)
      inputs_.numbers.find(drawings_[i].name)->second =
          drawings_[i].value + drawings_[i].u * normal_deviate(seed_, sample, i);
    Results<double> results;
    results.keep_explanations = false;
    try {
      quantity_.compute(inputs_, results);
    } catch (const InputError&) {
      ++block.left_out;
      return;
    }
    for (const auto& [key, value] : results.values)
      if (value.number && std::isfinite(*value.number)) block.by_key[key].add(*value.number);
  }

  const Quantity& quantity_;
  Inputs<double> inputs_;
  std::uint64_t seed_;
  std::vector<Drawing> drawings_;
};

/// Where and when a block is run doesn't matter: blocks are joined in order.
std::vector<Block> run_blocks(const Sampler& sampler, std::size_t samples) {
  std::vector<Block> done((samples + block_samples - 1) / block_samples);
  ThreadPool::shared().parallel_for(samples, block_samples, [&](std::size_t begin, std::size_t end) {
    Sampler own = sampler;
    done[begin / block_samples] = own.run(begin, end);
  });
  return done;
}

/// First order and Monte Carlo apart by more than this share: the formula bends within the uncertainty.
constexpr double routes_agree_within = 0.1;
constexpr std::uint64_t samples_that_tell = 10000;

void note_disagreement(const std::string& key, double first_order, double drawn, std::uint64_t samples,
                       Findings& findings) {
  if (samples < samples_that_tell || std::abs(drawn - first_order) <= routes_agree_within * first_order)
    return;
  Finding finding = remark("uncertainty.not-linear", key,
                           Sentence("uncertainty.not-linear"_key, {{"key", key}}), "jcgm-101, 8");
  finding.value = drawn;
  finding.limit = first_order;
  findings.push_back(std::move(finding));
}

void add_drawn(const std::string& key, double drawn, std::uint64_t samples, QuantityAnswer& answered) {
  answered.u_monte_carlo[key] = drawn;
  if (auto at = answered.u.find(key); at != answered.u.end())
    note_disagreement(key, at->second, drawn, samples, answered.results.findings);
}

}  // namespace

double normal_deviate(std::uint64_t seed, std::uint64_t sample, std::uint64_t input) {
  std::uint64_t stream = split_mix(split_mix(seed) ^ input);
  double u1 = unit_interval_above_zero(split_mix(stream + 2 * sample));
  double u2 = unit_interval_above_zero(split_mix(stream + 2 * sample + 1));
  return std::sqrt(-2 * std::log(u1)) * std::cos(2 * std::numbers::pi * u2);
}

void add_monte_carlo_uncertainty(const Quantity& quantity, const Inputs<double>& inputs,
                                 const QuantityRequest& request, QuantityAnswer& answered) {
  if (request.monte_carlo_samples < 2 || request.monte_carlo_samples > most_samples)
    throw InputError("--monte-carlo", std::to_string(request.monte_carlo_samples),
                     Sentence("uncertainty.samples-from-to"_key, {{"least", 2}, {"most", most_samples}}));
  Sampler sampler(quantity, inputs, request);
  if (sampler.nothing_to_draw())
    throw InputError("--monte-carlo", "no input with an uncertainty"_word, "at least one --u-NAME"_word);
  std::size_t samples = request.monte_carlo_samples;
  if (const auto fast = fast_monte_carlo(quantity, inputs, request, answered.results)) {
    for (const auto& [key, drawn] : *fast) add_drawn(key, drawn, samples, answered);
    return;
  }
  Block all;
  for (const Block& block : run_blocks(sampler, samples)) {
    for (const auto& [key, moments] : block.by_key) all.by_key[key].join(moments);
    all.left_out += block.left_out;
  }
  for (const auto& [key, moments] : all.by_key) {
    if (moments.count < 2 || !std::isfinite(moments.squares)) continue;
    add_drawn(key, std::sqrt(moments.squares / static_cast<double>(moments.count - 1)), samples, answered);
  }
  if (all.left_out > 0) {
    Finding finding =
        remark("uncertainty.samples-left-out", "--monte-carlo",
               Sentence("uncertainty.samples-left-out"_key,
                        {{"left_out", static_cast<std::size_t>(all.left_out)}, {"samples", samples}}),
               "jcgm-101, 7");
    finding.value = static_cast<double>(all.left_out);
    answered.results.findings.push_back(std::move(finding));
  }
}

}  // namespace seamtakt
