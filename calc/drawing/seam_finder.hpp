#pragma once

#include <functional>
#include <string>
#include <vector>

#include "drawing/edge_contact.hpp"
#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

struct Note {
  std::string kind, text;  ///< kind: a word that programs may know
  std::vector<int> parts;
};

struct Found {
  std::vector<Joint> joints;  ///< in the order of their parts
  std::vector<Note> notes;
};

/// Lists the parts that are hardware by their names; nothing where there are none.
std::optional<Note> hardware_note(const std::vector<Part>& parts);

/// All joints between the parts. `seconds`: after so many the rest is left out, and a note says so.
Found find_joints(std::vector<Part>& parts, const FindOptions& options, double seconds,
                  const std::function<void(std::size_t done, std::size_t all)>& progress = {});

}  // namespace seamtakt::drawing
