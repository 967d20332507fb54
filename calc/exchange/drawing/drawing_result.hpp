#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A part of a drawing: a placed body.
struct DrawingPart {
  std::string name, path;
  std::optional<double> thickness_mm;
  bool is_hardware = false;         ///< by its name a bolt, nut, washer or the like
  std::optional<Plate> plate;       ///< without id
  std::optional<Tube> tube;         ///< without id
  std::optional<Point_mm> b_along;  ///< of a rectangular tube: where its width points
};

/// A side of a joint where a weld fits: a candidate for a seam.
struct DrawingSide {
  std::string id;
  std::vector<Point_mm> path_mm;
  bool is_closed = false;
  double length_mm = 0;
  std::optional<std::array<double, 3>> dihedral_deg;  ///< least, middle, largest
  std::array<std::optional<double>, 2> thickness_mm;  ///< of part_a, part_b
  double gap_mm = 0;                                  ///< the largest
  std::string position;                               ///< ISO 6947; empty: not known
  std::vector<std::string> flags;                     ///< inner, flare, end, overlap, flush
};

struct DrawingJoint {
  std::string id, type;                ///< type: tee, corner, lap, butt
  std::size_t part_a = 0, part_b = 0;  ///< the through part first
  std::vector<DrawingSide> sides;
};

struct DrawingNote {
  std::string kind, text;
};

/// A line of a drawing in two dimensions; a closed one doesn't repeat its first point.
struct FlatLine {
  std::string id;
  std::vector<NumberPair> points_mm;
  bool is_closed = false;
};

struct FlatLayer {
  std::string name;
  std::vector<FlatLine> lines;
};

/// What seamtakt-drawing found in a drawing.
struct DrawingResult {
  std::string path, sha256, schema, unit;
  double gap_mm = 0;
  std::vector<DrawingPart> parts;
  std::vector<DrawingJoint> joints;
  std::vector<DrawingNote> notes;
  std::vector<FlatLayer> layers;  ///< of a drawing in two dimensions, which has neither parts nor joints
};

/// Reads what the program printed. The drawing is a stranger's, so each number has to be finite and of a
/// weldment's size, each list within limits, each reference within its list. InputError at its place, `name`
/// names the source.
DrawingResult read_drawing_result(std::string_view json, const std::string& name);

}  // namespace seamtakt
