#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace seamtakt::desk {

/// Least and greatest of a run of samples.
struct Extremes {
  float low, high;
};

/// One logged quantity, with a pyramid of extremes above it, so that any stretch is drawn from as many
/// numbers as the screen has columns.
class TraceChannel {
 public:
  void add(float value);
  std::size_t size() const { return values_.size(); }
  float value(std::size_t index) const { return values_[index]; }
  /// Extremes of samples begin <= i < end; the pyramid must be built. Empty range: {0, 0}.
  Extremes extremes(std::size_t begin, std::size_t end) const;
  void build();

 private:
  static constexpr std::size_t fan = 16;
  std::vector<float> values_;
  std::vector<std::vector<Extremes>> levels_;  ///< level k: one of fan^(k+1) samples
};

/// What was logged of one pass (or of a log without identity), in time order.
class Trace {
 public:
  enum Channel { current, voltage, wire_feed_speed, travel_speed, channels };

  void add(double time_s, std::uint32_t line, const float (&values)[channels], unsigned present);
  void build();
  std::size_t size() const { return time_s_.size(); }
  double time_s(std::size_t index) const { return time_s_[index]; }
  std::uint32_t line(std::size_t index) const { return lines_[index]; }
  bool has(Channel channel) const { return (present_ >> channel) & 1u; }
  const TraceChannel& channel(Channel channel) const { return channels_[channel]; }
  /// First sample at or after a time.
  std::size_t indexAt(double time_s) const;
  /// Samples whose lines are between two, ends included: [begin, end).
  std::pair<std::size_t, std::size_t> rangeOfLines(std::uint64_t first, std::uint64_t last) const;
  double span_s() const { return time_s_.empty() ? 0 : time_s_.back() - time_s_.front(); }

 private:
  std::vector<double> time_s_;
  std::vector<std::uint32_t> lines_;
  TraceChannel channels_[channels];
  unsigned present_ = 0;
};

/// Traces by "log|unit|weldment|seam|pass".
using TraceMap = std::map<std::string, Trace>;

}  // namespace seamtakt::desk
