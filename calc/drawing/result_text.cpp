#include <cstdio>

#include "drawing/result_json.hpp"

namespace seamtakt::drawing {

namespace {

std::string number(double value, const char* form = "%.1f") {
  char text[32];
  std::snprintf(text, sizeof text, form, value);
  return text;
}

std::string number(const std::optional<double>& value) {
  return value ? number(*value, "%.2f") : "?";
}

/// A name from a file, without what would steer a terminal.
std::string shown(const std::string& name) {
  std::string text;
  for (const char c : name) text += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? '?' : c;
  return text;
}

}  // namespace

std::string result_text(const Drawing& drawing) {
  const auto& parts = drawing.assembly.parts;
  std::string text = std::to_string(parts.size()) + " parts, " + std::to_string(drawing.found.joints.size()) +
                     " joints (" + drawing.assembly.schema + ", " + drawing.assembly.unit + ")\n";
  for (std::size_t i = 0; i < drawing.found.joints.size(); ++i) {
    const Joint& joint = drawing.found.joints[i];
    text += "J" + std::to_string(i + 1) + " " + type_name(joint.type) + ": " +
            shown(parts[static_cast<std::size_t>(joint.part_a)].path) + " + " +
            shown(parts[static_cast<std::size_t>(joint.part_b)].path) + "\n";
    for (std::size_t k = 0; k < joint.sides.size(); ++k) {
      const SeamSide& side = joint.sides[k];
      text +=
          "  J" + std::to_string(i + 1) + "." + std::to_string(k + 1) + "  " + number(side.length_mm) + " mm";
      if (side.dihedral_deg) text += ", " + number((*side.dihedral_deg)[1]) + " deg";
      text += ", t " + number(side.thickness_mm[0]) + "/" + number(side.thickness_mm[1]) + " mm";
      if (side.gap_largest_mm > 0.01) text += ", gap " + number(side.gap_largest_mm, "%.2f") + " mm";
      if (side.position) text += ", " + *side.position;
      if (side.is_closed) text += ", closed";
      for (const std::string& flag : flag_names(side.flags)) text += ", " + flag;
      text += "\n";
    }
  }
  for (const Note& note : drawing.found.notes) text += shown(note.text) + "\n";
  return text;
}

}  // namespace seamtakt::drawing
