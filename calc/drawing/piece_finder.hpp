#pragma once

#include <chrono>
#include <stdexcept>
#include <vector>

#include "drawing/edge_contact.hpp"
#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

/// A pair of parts took too long.
struct TookTooLong : std::runtime_error {
  TookTooLong() : std::runtime_error("took too long") {}
};

/// The stretches of two parts' edges where a weld fits between them, each once: first those of a's edges, in
/// the file's order, then those of b's that aren't the same.
class PieceFinder {
 public:
  PieceFinder(const std::vector<Part>& parts, int a, int b, const FindOptions& options);
  /// TookTooLong after the options' time.
  std::vector<SeamPiece> find();

 private:
  struct Known {
    const BodyEdge* edge;
    double first, last;
    gp_Vec outward;
  };
  void look_along(int own, int other);
  void look_along_edge(int own, int edge, int other);
  bool is_known(const gp_Pnt& point, const gp_Vec& outward) const;
  void add_known_ends(const BodyEdge& edge, std::vector<double>& cuts) const;
  void add_piece(const EdgeContact& contact, int own, int edge, int other, std::size_t side, double from,
                 double to);
  std::vector<const Body*> thirds_near(const Bnd_Box& box) const;
  void add_touch_lines();
  void check_time() const;

  const std::vector<Part>& parts_;
  const int a_, b_;
  const FindOptions& options_;
  const std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
  std::vector<Known> known_;  ///< of a's edges
  std::vector<SeamPiece> pieces_;
};

}  // namespace seamtakt::drawing
