#include "drawing/piece_finder.hpp"

#include <GCPnts_AbscissaPoint.hxx>
#include <GCPnts_TangentialDeflection.hxx>
#include <algorithm>
#include <cmath>
#include <iterator>

#include "drawing/intervals.hpp"
#include "drawing/touch_lines.hpp"

namespace seamtakt::drawing {

namespace {

/// Borders of stretches are found this near.
constexpr double border_mm = 1e-3;
/// A path's chords leave a curve by no more.
constexpr double chord_mm = 0.02;
constexpr double chord_angle_rad = 0.25;
/// What is shorter is no seam: the corner of a bevel, the rest beside a rounding.
constexpr double least_seam_mm = 2;
/// Air that is nearly straight: the surfaces go on in line.
constexpr double flush_from_deg = 135;
/// An edge whose faces go on smoothly is none.
constexpr double smooth_deg = 3;

std::vector<gp_Pnt> path_of(const BodyEdge& edge, double from, double to) {
  if (edge.is_line) return {edge.curve.Value(from), edge.curve.Value(to)};
  std::vector<gp_Pnt> path;
  const GCPnts_TangentialDeflection chords(edge.curve, from, to, chord_angle_rad, chord_mm, 2, 1e-7);
  for (int i = 1; i <= chords.NbPoints(); ++i) path.push_back(chords.Value(i));
  return path;
}

/// Outward normal of a face beside an edge; of a face that isn't beside it none.
gp_Vec normal_beside(const Body& body, int edge, int face, double at) {
  const BodyEdge& of = body.edges()[static_cast<std::size_t>(edge)];
  for (const EdgeUse& use : of.uses)
    if (use.face == face) return body.normal_at_edge(of, use, at);
  return {0, 0, 0};
}

bool bounds_hole(const BodyEdge& edge, int face) {
  return std::any_of(edge.uses.begin(), edge.uses.end(),
                     [&](const EdgeUse& use) { return use.face == face && use.is_inner; });
}

bool is_smooth(const Body& body, int edge) {
  const BodyEdge& of = body.edges()[static_cast<std::size_t>(edge)];
  const double middle = (of.first + of.last) / 2;
  const gp_Vec along = tangent_at(of, middle);
  if (along.Magnitude() < 0.5) return true;
  const auto wedge = wedge_at_edge(CrossPlane(along), body, edge, middle);
  return !wedge || std::abs(wedge->width_deg - 180) < smooth_deg;
}

void set_other(SeamPiece& piece, const Body& other, const ContactAt& contact, const AirWedge& air) {
  piece.is_other_edge = contact.place.edge >= 0;
  if (!piece.is_other_edge) {
    piece.other_normal = contact.place.normal;
    piece.other_contact_normal = contact.place.normal;
    return;
  }
  piece.other_normal = normal_beside(other, contact.place.edge, air.other_face, contact.place.at);
  const int contact_face =
      contact.other.begin_face == air.other_face ? contact.other.end_face : contact.other.begin_face;
  piece.other_contact_normal = normal_beside(other, contact.place.edge, contact_face, contact.place.at);
}

}  // namespace

PieceFinder::PieceFinder(const std::vector<Part>& parts, int a, int b, const FindOptions& options)
    : parts_(parts), a_(a), b_(b), options_(options) {}

void PieceFinder::check_time() const {
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin_;
  if (taken.count() > options_.pair_seconds) throw TookTooLong();
}

std::vector<SeamPiece> PieceFinder::find() {
  look_along(a_, b_);
  for (const SeamPiece& piece : pieces_) {
    const BodyEdge& edge =
        parts_[static_cast<std::size_t>(a_)].body->edges()[static_cast<std::size_t>(piece.edge)];
    const double first = nearest_on_curve(edge, piece.path.front()).at;
    double last = nearest_on_curve(edge, piece.path.back()).at;
    if (last <= first) last = edge.last;
    known_.push_back({&edge, first, last, piece.outward});
  }
  look_along(b_, a_);
  add_touch_lines();
  return std::move(pieces_);
}

void PieceFinder::add_touch_lines() {
  check_time();
  const Body& a = *parts_[static_cast<std::size_t>(a_)].body;
  Bnd_Box near = parts_[static_cast<std::size_t>(b_)].body->box();
  near.Enlarge(options_.gap_mm);
  std::vector<SeamPiece> touches = touch_lines(parts_, a_, b_, thirds_near(near), options_);
  // Round the end of a bar the gap alone makes a stretch beside the line: it goes with the line.
  for (SeamPiece& piece : pieces_) {
    const Body& own = piece.own == a_ ? a : *parts_[static_cast<std::size_t>(b_)].body;
    const BodyEdge& edge = own.edges()[static_cast<std::size_t>(piece.edge)];
    if (edge.is_line) continue;
    for (const SeamPiece& touch : touches)
      for (const gp_Pnt& end : touch.path)
        piece.flags.flare =
            piece.flags.flare || nearest_on_curve(edge, end).distance_mm < options_.gap_mm + snap_mm;
  }
  std::move(touches.begin(), touches.end(), std::back_inserter(pieces_));
}

std::vector<const Body*> PieceFinder::thirds_near(const Bnd_Box& box) const {
  std::vector<const Body*> near;
  for (int i = 0; i < static_cast<int>(parts_.size()); ++i)
    if (i != a_ && i != b_ && !parts_[static_cast<std::size_t>(i)].body->box().IsOut(box))
      near.push_back(parts_[static_cast<std::size_t>(i)].body.get());
  return near;
}

void PieceFinder::look_along(int own, int other) {
  const Body& body = *parts_[static_cast<std::size_t>(own)].body;
  Bnd_Box other_box = parts_[static_cast<std::size_t>(other)].body->box();
  other_box.Enlarge(options_.gap_mm);
  for (std::size_t i = 0; i < body.edges().size(); ++i)
    if (!body.edges()[i].is_ignored && !other_box.IsOut(body.edges()[i].box))
      look_along_edge(own, static_cast<int>(i), other);
}

void PieceFinder::look_along_edge(int own, int index, int other) {
  check_time();
  const Body& body = *parts_[static_cast<std::size_t>(own)].body;
  if (is_smooth(body, index)) return;
  const BodyEdge& edge = body.edges()[static_cast<std::size_t>(index)];
  Bnd_Box near = edge.box;
  near.Enlarge(4 * std::max(options_.gap_mm, 0.5));
  const EdgeContact contact(body, index, *parts_[static_cast<std::size_t>(other)].body, thirds_near(near),
                            options_);
  std::vector<double> cuts = contact.cuts();
  add_known_ends(edge, cuts);
  const double fine = edge.is_line ? border_mm : border_mm * (edge.last - edge.first) / edge.length_mm;
  for (std::size_t side = 0; side < 2; ++side) {
    const auto is_seam = [&](double at) {
      check_time();
      return contact.is_open(at, side) &&
             !is_known(contact.at(at)->point, contact.at(at)->air.sides[side]->bisector);
    };
    for (const auto& [from, to] : stretches_where(cuts, fine, is_seam))
      add_piece(contact, own, index, other, side, from, to);
  }
}

void PieceFinder::add_known_ends(const BodyEdge& edge, std::vector<double>& cuts) const {
  for (const Known& known : known_)
    for (const double end : {known.first, known.last}) {
      const CurvePlace place = nearest_on_curve(edge, known.edge->curve.Value(end));
      if (!place.is_end) cuts.push_back(place.at);
    }
}

bool PieceFinder::is_known(const gp_Pnt& point, const gp_Vec& outward) const {
  return std::any_of(known_.begin(), known_.end(), [&](const Known& known) {
    // Along a curve the direction turns; there the distance alone tells.
    if (known.edge->is_line && known.outward.Dot(outward) < 0.7) return false;
    const CurvePlace place = nearest_on_curve(*known.edge, point);
    return place.distance_mm < options_.gap_mm + snap_mm && place.at >= known.first && place.at <= known.last;
  });
}

void PieceFinder::add_piece(const EdgeContact& contact, int own, int index, int other, std::size_t side,
                            double from, double to) {
  const BodyEdge& edge = contact.edge();
  const Body& body = *parts_[static_cast<std::size_t>(own)].body;
  SeamPiece piece;
  piece.length_mm = edge.is_line ? to - from : GCPnts_AbscissaPoint::Length(edge.curve, from, to);
  if (piece.length_mm < least_seam_mm) return;
  piece.own = own;
  piece.other = other;
  piece.edge = index;
  piece.path = path_of(edge, from, to);
  const double middle = (from + to) / 2;
  const auto& at_middle = contact.at(middle);
  if (!at_middle || !at_middle->air.sides[side]) return;
  const AirWedge& air = *at_middle->air.sides[side];
  if (contact.is_filled_by_own(*at_middle, air)) return;
  piece.dihedral_deg = {air.width_deg, air.width_deg, air.width_deg};
  piece.gap_least_mm = piece.gap_largest_mm = at_middle->gap_mm;
  constexpr int samples = 16;
  for (int i = 0; i <= samples; ++i) {
    const auto& sample = contact.at(from + (to - from) * (0.01 + 0.98 * i / samples));
    if (!sample || !sample->air.sides[side]) continue;
    const double width = sample->air.sides[side]->width_deg;
    piece.dihedral_deg[0] = std::min(piece.dihedral_deg[0], width);
    piece.dihedral_deg[2] = std::max(piece.dihedral_deg[2], width);
    piece.gap_least_mm = std::min(piece.gap_least_mm, sample->gap_mm);
    piece.gap_largest_mm = std::max(piece.gap_largest_mm, sample->gap_mm);
    piece.flags.overlap = piece.flags.overlap || sample->air.overlap_deg > least_air_deg;
  }
  piece.middle = at_middle->point;
  piece.other_point = at_middle->place.point;
  piece.along = tangent_at(edge, middle);
  piece.outward = air.bisector;
  piece.own_normal = normal_beside(body, index, air.own_face, middle);
  piece.contact_normal = normal_beside(body, index, air.own_other_face, middle);
  piece.own_direction = air.own_direction;
  piece.other_direction = air.other_direction;
  piece.flags.inner = bounds_hole(edge, air.own_other_face);
  piece.flags.flush = piece.dihedral_deg[1] > flush_from_deg;
  set_other(piece, *parts_[static_cast<std::size_t>(other)].body, *at_middle, air);
  pieces_.push_back(std::move(piece));
}

}  // namespace seamtakt::drawing
