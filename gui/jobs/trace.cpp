#include "jobs/trace.hpp"

#include <algorithm>

namespace seamtakt::desk {

namespace {

Extremes extremes_of_both(Extremes a, Extremes b) {
  return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

}  // namespace

void TraceChannel::add(float value) {
  values_.push_back(value);
}

void TraceChannel::build() {
  levels_.clear();
  std::vector<Extremes> level;
  level.reserve(values_.size() / fan + 1);
  for (std::size_t begin = 0; begin < values_.size(); begin += fan) {
    const auto [low, high] = std::minmax_element(
        values_.begin() + static_cast<std::ptrdiff_t>(begin),
        values_.begin() + static_cast<std::ptrdiff_t>(std::min(begin + fan, values_.size())));
    level.push_back({*low, *high});
  }
  while (level.size() > 1) {
    levels_.push_back(std::move(level));
    level.clear();
    const std::vector<Extremes>& below = levels_.back();
    for (std::size_t begin = 0; begin < below.size(); begin += fan) {
      Extremes all = below[begin];
      for (std::size_t i = begin + 1; i < std::min(begin + fan, below.size()); ++i)
        all = extremes_of_both(all, below[i]);
      level.push_back(all);
    }
  }
  if (!level.empty()) levels_.push_back(std::move(level));
}

/// Whole blocks from as high a level as fits, single samples only at the two ends.
Extremes TraceChannel::extremes(std::size_t begin, std::size_t end) const {
  end = std::min(end, values_.size());
  if (begin >= end) return {0, 0};
  Extremes all{values_[begin], values_[begin]};
  while (begin < end) {
    std::size_t level = 0, block = fan;
    if (begin % fan != 0 || begin + fan > end) {
      all = extremes_of_both(all, {values_[begin], values_[begin]});
      ++begin;
      continue;
    }
    while (level + 1 < levels_.size() && begin % (block * fan) == 0 && begin + block * fan <= end) {
      block *= fan;
      ++level;
    }
    all = extremes_of_both(all, levels_[level][begin / block]);
    begin += block;
  }
  return all;
}

void Trace::add(double time_s, std::uint32_t line, const float (&values)[channels], unsigned present) {
  time_s_.push_back(time_s);
  lines_.push_back(line);
  for (int channel = 0; channel < channels; ++channel) channels_[channel].add(values[channel]);
  present_ |= present;
}

void Trace::build() {
  for (int channel = 0; channel < channels; ++channel)
    if ((present_ >> channel) & 1u) channels_[channel].build();
}

std::size_t Trace::indexAt(double time_s) const {
  return static_cast<std::size_t>(std::lower_bound(time_s_.begin(), time_s_.end(), time_s) - time_s_.begin());
}

std::pair<std::size_t, std::size_t> Trace::rangeOfLines(std::uint64_t first, std::uint64_t last) const {
  const auto begin = std::lower_bound(lines_.begin(), lines_.end(), first);
  const auto end = std::upper_bound(begin, lines_.end(), last);
  return {static_cast<std::size_t>(begin - lines_.begin()), static_cast<std::size_t>(end - lines_.begin())};
}

}  // namespace seamtakt::desk
