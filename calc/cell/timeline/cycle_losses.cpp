#include "cell/timeline/cycle_losses.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

struct PartRow {
  CyclePart part;
  const char* word;
  double CycleResult::*time_s;
  bool is_loss = true;
};
constexpr PartRow part_rows[] = {{CyclePart::arc_on, "arc on", &CycleResult::arc_on_s, false},
                                 {CyclePart::air, "air moves", &CycleResult::air_s},
                                 {CyclePart::start_end, "arc starts and ends", &CycleResult::start_end_s},
                                 {CyclePart::sense, "sensing", &CycleResult::sense_s},
                                 {CyclePart::wait, "waiting", &CycleResult::wait_s},
                                 {CyclePart::orientation, "positioner", &CycleResult::orientation_s},
                                 {CyclePart::service, "torch service", &CycleResult::service_s},
                                 {CyclePart::wire_change, "wire changes", &CycleResult::wire_change_s},
                                 {CyclePart::load_unload, "loading", &CycleResult::load_unload_s, false}};

const PartRow& row_of(CyclePart part) {
  return *std::find_if(std::begin(part_rows), std::end(part_rows),
                       [&](const PartRow& row) { return row.part == part; });
}

}  // namespace

const char* to_string(CyclePart part) {
  return row_of(part).word;
}

double part_s(const CycleResult& cycle, CyclePart part) {
  return cycle.*row_of(part).time_s;
}

std::vector<CyclePart> cycle_parts(const CycleResult& cycle) {
  std::vector<CyclePart> parts;
  for (const PartRow& row : part_rows) parts.push_back(row.part);
  std::stable_sort(parts.begin(), parts.end(),
                   [&](CyclePart a, CyclePart b) { return part_s(cycle, a) > part_s(cycle, b); });
  return parts;
}

std::vector<CyclePart> cycle_losses(const CycleResult& cycle) {
  std::vector<CyclePart> losses = cycle_parts(cycle);
  std::erase_if(losses, [&](CyclePart part) { return !row_of(part).is_loss || part_s(cycle, part) <= 0; });
  return losses;
}

}  // namespace seamtakt
