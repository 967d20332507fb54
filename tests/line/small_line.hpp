#pragma once

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "line/line_model.hpp"

namespace seamtakt::test {

inline LineStage stage_of(int servers, int buffer_after) {
  LineStage stage;
  stage.servers = servers;
  stage.buffer_after = buffer_after;
  return stage;
}

/// Every unit takes the same times: work_s has one entry a stage.
inline LineModel steady_line(std::vector<LineStage> stages, const std::vector<double>& work_s,
                             std::size_t units) {
  LineModel line;
  line.stages = std::move(stages);
  for (std::size_t j = 0; j < line.stages.size(); ++j) line.stages[j].id = "stage " + std::to_string(j + 1);
  for (std::size_t unit = 0; unit < units; ++unit) {
    line.random_stream_id.push_back(static_cast<std::uint32_t>(unit));
    line.work_s.insert(line.work_s.end(), work_s.begin(), work_s.end());
  }
  return line;
}

struct RandomLineShape {
  bool several_servers = false, rework = false;
};

/// Up to 7 stages and 60 units; whole seconds now and then, so that things happen at the same time.
inline LineModel random_line(std::uint64_t seed, RandomLineShape shape) {
  std::mt19937_64 random(seed);
  const auto up_to = [&](int most) {
    return static_cast<int>(random() % static_cast<std::uint64_t>(most + 1));
  };
  const bool whole = up_to(1) == 0;
  std::vector<LineStage> stages;
  const int count = 1 + up_to(6);
  for (int j = 0; j < count; ++j) {
    LineStage stage = stage_of(shape.several_servers ? 1 + up_to(2) : 1, up_to(3) == 0 ? 100 : up_to(3));
    if (up_to(3) == 0) {
      stage.availability = 0.8;
      stage.repair_s = up_to(1) * 15;
    }
    if (shape.rework && up_to(2) == 0) {
      stage.yield = 0.7;
      stage.rework_to = up_to(4) == 0 ? -1 : up_to(j);
      stage.rework_s = up_to(20);
    }
    stages.push_back(stage);
  }
  const std::size_t units = static_cast<std::size_t>(up_to(60));
  LineModel line = steady_line(stages, std::vector<double>(stages.size(), 0), units);
  for (double& work_s : line.work_s)
    work_s = whole ? up_to(6) : std::ldexp(static_cast<double>(random() >> 11), -49);
  if (up_to(2) == 0) {
    line.change_stage = up_to(count - 1);
    for (std::size_t unit = 0; unit < units; ++unit) line.change_s.push_back(up_to(3) == 0 ? 5 : 0);
  }
  return line;
}

}  // namespace seamtakt::test
