#include "document/pass_step.hpp"

#include <algorithm>

namespace seamtakt::desk {

namespace {

/// Place in the order of a seam's k-th step; the order's size where it has none.
std::size_t step_of(const std::vector<OrderStep>& order, std::string_view seam, int pass) {
  std::size_t at = 0;
  for (; at < order.size(); ++at)
    if (order[at].seam == seam && --pass == 0) break;
  return at;
}

}  // namespace

std::optional<MovedPass> moved_pass(const CycleResult& now, std::string_view seam, int pass, bool later) {
  const std::vector<OrderStep>& order = now.order;
  const std::size_t chosen = step_of(order, seam, pass);
  if (chosen == order.size()) return std::nullopt;
  // What the robot welds, in its order.
  std::vector<std::size_t> own;
  for (std::size_t i = 0; i < order.size(); ++i)
    if (order[i].robot == order[chosen].robot) own.push_back(i);
  const auto seam_at = [&](std::size_t k) -> const std::string& { return order[own[k]].seam; };
  std::size_t at = static_cast<std::size_t>(std::find(own.begin(), own.end(), chosen) - own.begin());
  const std::size_t last = own.size() - 1;
  if (later)
    while (at < last && seam_at(at + 1) == seam) ++at;
  else
    while (at > 0 && seam_at(at - 1) == seam) --at;
  if (at == (later ? last : 0)) return std::nullopt;
  std::size_t past = later ? at + 1 : at - 1;
  const std::string& other = seam_at(past);
  if (later)
    while (past < last && seam_at(past + 1) == other) ++past;
  else
    while (past > 0 && seam_at(past - 1) == other) --past;
  MovedPass moved;
  moved.order = order;
  const std::size_t from = own[at], to = own[past];
  moved.pass =
      static_cast<int>(std::count_if(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(from) + 1,
                                     [&](const OrderStep& step) { return step.seam == seam; }));
  const auto begin = moved.order.begin();
  if (later)
    std::rotate(begin + static_cast<std::ptrdiff_t>(from), begin + static_cast<std::ptrdiff_t>(from) + 1,
                begin + static_cast<std::ptrdiff_t>(to) + 1);
  else
    std::rotate(begin + static_cast<std::ptrdiff_t>(to), begin + static_cast<std::ptrdiff_t>(from),
                begin + static_cast<std::ptrdiff_t>(from) + 1);
  return moved;
}

}  // namespace seamtakt::desk
