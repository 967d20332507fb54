#pragma once

#include <map>
#include <optional>
#include <vector>

#include "drawing/wedge.hpp"

namespace seamtakt::drawing {

struct FindOptions {
  double gap_mm = 1;
  double pair_seconds = 10;  ///< a pair of parts that takes longer is left out, and a note says so
  std::optional<gp_Vec> up;
};

/// Beside an edge that the bodies have within this, a place counts as on the edge.
constexpr double snap_mm = 0.1;
/// Narrower air between two surfaces is contact.
constexpr double least_air_deg = 5;

/// The other body beside a place of an edge.
struct ContactAt {
  SurfacePlace place;
  gp_Pnt point;
  AirAround air;
  Wedge own, other;
  double gap_mm = 0;
};

/// An edge of one body along another body.
class EdgeContact {
 public:
  EdgeContact(const Body& own, int edge, const Body& other, std::vector<const Body*> thirds,
              const FindOptions& options);

  /// Empty where the other body isn't within the gap, in the plane across the edge.
  const std::optional<ContactAt>& at(double parameter) const;
  /// There is air on this side, and nothing stands in it.
  bool is_open(double parameter, std::size_t side) const;
  /// Where is_open may change.
  std::vector<double> cuts() const;
  /// One of the two bodies comes back into the air: a groove, no seam.
  bool is_filled_by_own(const ContactAt& contact, const AirWedge& air) const;
  const BodyEdge& edge() const { return edge_; }

 private:
  std::optional<ContactAt> look(double parameter) const;
  bool is_filled(const ContactAt& contact, const AirWedge& air) const;
  void add_cuts_of(const Body& body, std::vector<double>& cuts) const;
  void add_cut_at(const BodyEdge& crossing, std::vector<double>& cuts) const;

  const Body& own_;
  const int index_;
  const Body& other_;
  const BodyEdge& edge_;
  const std::vector<const Body*> thirds_;
  const FindOptions& options_;
  mutable std::map<double, std::optional<ContactAt>> seen_;
};

}  // namespace seamtakt::drawing
