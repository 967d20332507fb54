#include "drawing/edge_contact.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::drawing {

namespace {

/// Nearer than this two surfaces touch.
constexpr double touch_mm = 1e-3;
/// The line to the other body may not run into, or along, a body's own material.
constexpr double clear_deg = 10;
/// Cells of a curved edge, and of one beside curved edges.
constexpr int curved_cells = 48;

/// How far into the air something has to stand to interrupt a seam.
double probe_mm(const FindOptions& options) {
  return 2 * std::max(options.gap_mm, 0.5);
}

}  // namespace

EdgeContact::EdgeContact(const Body& own, int edge, const Body& other, std::vector<const Body*> thirds,
                         const FindOptions& options)
    : own_(own),
      index_(edge),
      other_(other),
      edge_(own.edges()[static_cast<std::size_t>(edge)]),
      thirds_(std::move(thirds)),
      options_(options) {}

const std::optional<ContactAt>& EdgeContact::at(double parameter) const {
  const auto known = seen_.find(parameter);
  if (known != seen_.end()) return known->second;
  return seen_.emplace(parameter, look(parameter)).first->second;
}

std::optional<ContactAt> EdgeContact::look(double parameter) const {
  const gp_Pnt point = edge_.curve.Value(parameter);
  const gp_Vec along = tangent_at(edge_, parameter);
  if (along.Magnitude() < 0.5) return {};
  auto place = other_.nearest(point, options_.gap_mm, snap_mm, along);
  if (!place || place->is_end) return {};
  const CrossPlane plane(along);
  const gp_Vec to_other(point, place->point);
  // Beside an edge of the other body that ends here the nearest place is out of the plane across: no seam
  // there.
  const double askew = place->edge >= 0 ? 0.02 : 0.2;
  if (std::abs(to_other.Dot(plane.along)) > askew * place->distance_mm + touch_mm) return {};
  const auto own = wedge_at_edge(plane, own_, index_, parameter);
  const auto other = wedge_at(plane, other_, *place);
  if (!own || !other) return {};
  if (place->distance_mm > touch_mm) {
    const double towards = plane.angle_of(to_other);
    const double inside_other = other->depth_of(towards + 180);
    const bool is_inside_other = inside_other > clear_deg;
    if (!is_inside_other && (own->depth_of(towards) > -clear_deg || inside_other > -clear_deg)) return {};
  }
  ContactAt contact;
  contact.point = point;
  contact.gap_mm = place->distance_mm;
  contact.place = std::move(*place);
  contact.own = *own;
  contact.other = *other;
  contact.air = air_around(plane, *own, *other, least_air_deg);
  return contact;
}

bool EdgeContact::is_filled_by_own(const ContactAt& contact, const AirWedge& air) const {
  const gp_Pnt probe = contact.point.Translated(air.bisector * probe_mm(options_));
  return own_.contains(probe) || other_.contains(probe);
}

bool EdgeContact::is_filled(const ContactAt& contact, const AirWedge& air) const {
  const gp_Pnt probe = contact.point.Translated(air.bisector * probe_mm(options_));
  return std::any_of(thirds_.begin(), thirds_.end(),
                     [&](const Body* third) { return third->contains(probe); });
}

bool EdgeContact::is_open(double parameter, std::size_t side) const {
  const auto& contact = at(parameter);
  return contact && contact->air.sides[side] && !is_filled(*contact, *contact->air.sides[side]);
}

void EdgeContact::add_cut_at(const BodyEdge& crossing, std::vector<double>& cuts) const {
  if (!edge_.is_line || !crossing.is_line) return;
  const gp_Lin own = edge_.curve.Line(), other = crossing.curve.Line();
  const gp_Vec d1(own.Direction()), d2(other.Direction()), between(other.Location(), own.Location());
  const double cosine = d1.Dot(d2), sine2 = 1 - cosine * cosine;
  if (sine2 < 1e-9) return;
  const double at = (cosine * d2.Dot(between) - d1.Dot(between)) / sine2;
  if (at > edge_.first && at < edge_.last) cuts.push_back(at);
}

void EdgeContact::add_cuts_of(const Body& body, std::vector<double>& cuts) const {
  Bnd_Box near = edge_.box;
  near.Enlarge(2 * probe_mm(options_) + options_.gap_mm);
  for (const gp_Pnt& vertex : body.vertices()) {
    if (near.IsOut(vertex)) continue;
    const CurvePlace place = nearest_on_curve(edge_, vertex);
    if (!place.is_end) cuts.push_back(place.at);
  }
  for (const BodyEdge& edge : body.edges())
    if (!edge.is_ignored && !near.IsOut(edge.box)) add_cut_at(edge, cuts);
}

std::vector<double> EdgeContact::cuts() const {
  std::vector<double> cuts = {edge_.first, edge_.last};
  bool is_curved = !edge_.is_line || other_.has_curved_edges();
  add_cuts_of(other_, cuts);
  for (const Body* third : thirds_) {
    add_cuts_of(*third, cuts);
    is_curved = is_curved || third->has_curved_edges();
  }
  if (is_curved)
    for (int i = 1; i < curved_cells; ++i)
      cuts.push_back(edge_.first + (edge_.last - edge_.first) * i / curved_cells);
  return cuts;
}

}  // namespace seamtakt::drawing
