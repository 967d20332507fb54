#include "drawing/seam_finder.hpp"

#include <Standard_Failure.hxx>
#include <algorithm>
#include <chrono>

#include "drawing/joint_builder.hpp"
#include "drawing/piece_finder.hpp"

namespace seamtakt::drawing {

namespace {

using Pair = std::pair<int, int>;

std::vector<Pair> near_pairs(const std::vector<Part>& parts, double gap_mm) {
  std::vector<Pair> pairs;
  for (std::size_t a = 0; a < parts.size(); ++a) {
    Bnd_Box near = parts[a].body->box();
    near.Enlarge(gap_mm);
    for (std::size_t b = a + 1; b < parts.size(); ++b)
      if (!near.IsOut(parts[b].body->box())) pairs.emplace_back(static_cast<int>(a), static_cast<int>(b));
  }
  return pairs;
}

std::string both(const std::vector<Part>& parts, const Pair& pair) {
  return parts[static_cast<std::size_t>(pair.first)].path + " and " +
         parts[static_cast<std::size_t>(pair.second)].path;
}

}  // namespace

Found find_joints(std::vector<Part>& parts, const FindOptions& options, double seconds,
                  const std::function<void(std::size_t, std::size_t)>& progress) {
  const auto begin = std::chrono::steady_clock::now();
  const auto is_over = [&] {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() > seconds;
  };
  Found found;
  for (Part& part : parts) find_form(part);
  if (auto note = hardware_note(parts)) found.notes.push_back(std::move(*note));
  const std::vector<Pair> pairs = near_pairs(parts, options.gap_mm);
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    if (progress) progress(i, pairs.size());
    if (is_over()) {
      found.notes.push_back({"time",
                             "The time is over: " + std::to_string(pairs.size() - i) + " of " +
                                 std::to_string(pairs.size()) + " pairs of parts weren't looked at.",
                             {}});
      break;
    }
    const Pair& pair = pairs[i];
    const std::vector<int> named = {pair.first, pair.second};
    try {
      PieceFinder finder(parts, pair.first, pair.second, options);
      auto joints = build_joints(parts, finder.find(), options);
      std::move(joints.begin(), joints.end(), std::back_inserter(found.joints));
    } catch (const TookTooLong&) {
      found.notes.push_back({"pair-time", both(parts, pair) + " took too long and were left out.", named});
    } catch (const Standard_Failure& failure) {
      found.notes.push_back(
          {"geometry",
           both(parts, pair) + " couldn't be compared: " + std::string(failure.GetMessageString()) + ".",
           named});
    }
  }
  return found;
}

}  // namespace seamtakt::drawing
