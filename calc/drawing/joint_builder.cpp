#include "drawing/joint_builder.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/piece_chain.hpp"
#include "drawing/piece_meaning.hpp"

namespace seamtakt::drawing {

namespace {

struct Understood {
  SeamPiece piece;
  LocalPlate own, other;
  Meeting meeting;
};

/// A contact plane, either way round.
struct ContactPlane {
  gp_Vec normal;
  double at_mm = 0;
  bool is_like(const ContactPlane& other, double gap_mm) const {
    const double cosine = normal.Dot(other.normal);
    if (std::abs(cosine) < 0.999) return false;
    return std::abs(at_mm - (cosine > 0 ? other.at_mm : -other.at_mm)) < 2 * gap_mm + 0.01;
  }
};

ContactPlane plane_of(const SeamPiece& piece) {
  const gp_Vec normal =
      piece.contact_normal.Magnitude() > 0.5 ? piece.contact_normal : piece.other_contact_normal;
  return {normal, gp_Vec(gp_Pnt(0, 0, 0), piece.middle).Dot(normal)};
}

/// Pieces of one contact: in the same plane, or chained to one that is.
std::vector<std::vector<Understood>> contacts_of(std::vector<Understood> pieces, double gap_mm) {
  std::vector<std::vector<Understood>> contacts;
  std::vector<std::vector<ContactPlane>> planes;
  for (Understood& piece : pieces) {
    const ContactPlane plane = plane_of(piece.piece);
    std::size_t found = contacts.size();
    for (std::size_t i = 0; i < contacts.size() && found == contacts.size(); ++i) {
      const bool same_plane = std::any_of(planes[i].begin(), planes[i].end(), [&](const ContactPlane& known) {
        return known.is_like(plane, gap_mm);
      });
      const bool in_line = std::any_of(contacts[i].begin(), contacts[i].end(), [&](const Understood& known) {
        return go_on_in_line(known.piece, piece.piece);
      });
      if (same_plane || in_line) found = i;
    }
    if (found == contacts.size()) {
      contacts.emplace_back();
      planes.emplace_back();
    }
    planes[found].push_back(plane);
    contacts[found].push_back(std::move(piece));
  }
  return contacts;
}

/// Across the ends of what isn't a plate as a whole, a bent one: as short as the same part is thick beside
/// the contact's other pieces, and longer straight in.
void mark_ends(std::vector<Understood>& contact) {
  for (Understood& each : contact) {
    if (each.piece.flags.end) continue;
    for (const Understood& beside : contact) {
      if (beside.piece.own != each.piece.own || beside.meeting != Meeting::standing) continue;
      const auto& thin = beside.own.thickness_mm;
      if (!thin || each.piece.length_mm > 1.1 * *thin || beside.piece.length_mm < 2 * each.piece.length_mm)
        continue;
      if (!each.own.thickness_mm || *each.own.thickness_mm > 1.5 * *thin) each.piece.flags.end = true;
    }
  }
}

struct Verdict {
  JointType type;
  bool own_is_through = false;  ///< of the first piece
};

/// What most of the length says, ends and insides left out where there is anything else.
Verdict verdict_of(const std::vector<Part>& parts, const std::vector<Understood>& contact) {
  std::array<double, 4> votes{};
  double own_through = 0, other_through = 0;
  const int first_own = contact.front().piece.own;
  for (const Understood& each : contact) {
    const SeamPiece& piece = each.piece;
    const bool counts_little = piece.flags.end || piece.flags.inner;
    const double weight = piece.length_mm * (counts_little ? 1e-6 : 1);
    JointType type = JointType::corner;
    if (each.meeting == Meeting::lap) {
      type = JointType::lap;
    } else if (each.meeting == Meeting::butt) {
      type = JointType::butt;
    } else if (each.meeting != Meeting::mitre) {
      // A flush side votes for a corner by itself: the part that goes on ends there.
      const bool goes_on =
          !piece.flags.flush && goes_on_behind(parts, piece, each.meeting, each.own, each.other);
      type = goes_on ? JointType::tee : JointType::corner;
      const bool own_goes_on = each.meeting == Meeting::under;
      ((own_goes_on == (piece.own == first_own)) ? own_through : other_through) += weight;
    }
    votes[static_cast<std::size_t>(type)] += weight;
  }
  const double standing = votes[0] + votes[1];
  Verdict verdict;
  verdict.own_is_through = own_through > other_through;
  if (standing >= votes[2] && standing >= votes[3])
    // One side without a part behind it makes the contact a corner.
    verdict.type = votes[1] > 0.25 * standing ? JointType::corner : JointType::tee;
  else
    verdict.type = votes[2] >= votes[3] ? JointType::lap : JointType::butt;
  if (verdict.type == JointType::lap || verdict.type == JointType::butt) {
    // The thicker part is the one that goes on; of equal ones the first.
    const auto thickness = [&](int part) {
      for (const Understood& each : contact)
        for (const auto& [is_it, plate] :
             {std::pair(each.piece.own == part, &each.own), std::pair(each.piece.other == part, &each.other)})
          if (is_it && plate->thickness_mm) return *plate->thickness_mm;
      return 0.0;
    };
    const int other = contact.front().piece.other;
    const double own_mm = thickness(first_own), other_mm = thickness(other);
    verdict.own_is_through =
        own_mm > other_mm + 1e-3 || (std::abs(own_mm - other_mm) <= 1e-3 && first_own < other);
  }
  return verdict;
}

bool looks_inwards(const Part& part, const gp_Pnt& at, const gp_Vec& normal) {
  if (!part.tube) return false;
  const gp_Vec axis = gp_Vec(part.tube->begin, part.tube->end).Normalized();
  const gp_Vec from_axis(part.tube->begin, at);
  const gp_Vec across = from_axis - axis * from_axis.Dot(axis);
  return std::abs(normal.Dot(axis)) < 0.5 && across.Dot(normal) < 0;
}

Understood understood(const std::vector<Part>& parts, SeamPiece piece) {
  Understood result;
  const Part& own = parts[static_cast<std::size_t>(piece.own)];
  const Part& other = parts[static_cast<std::size_t>(piece.other)];
  result.own = own_plate(own, piece);
  result.other = other_plate(other, piece);
  result.meeting = meeting_of(piece, result.own, result.other);
  piece.flags.end = is_across_end(parts, piece, result.meeting);
  piece.flags.inner = piece.flags.inner || looks_inwards(own, piece.middle, piece.own_normal);
  result.piece = std::move(piece);
  return result;
}

Joint joint_of(const std::vector<Part>& parts, std::vector<Understood> contact, const FindOptions& options) {
  Joint joint;
  mark_ends(contact);
  const Verdict verdict = verdict_of(parts, contact);
  joint.type = verdict.type;
  const SeamPiece& first = contact.front().piece;
  joint.part_a = verdict.own_is_through ? first.own : first.other;
  joint.part_b = verdict.own_is_through ? first.other : first.own;
  std::vector<ChainedPiece> pieces;
  for (Understood& each : contact) {
    ChainedPiece chained;
    const bool own_is_a = each.piece.own == joint.part_a;
    chained.thickness_mm = {(own_is_a ? each.own : each.other).thickness_mm,
                            (own_is_a ? each.other : each.own).thickness_mm};
    chained.piece = std::move(each.piece);
    pieces.push_back(std::move(chained));
  }
  joint.sides = chain(std::move(pieces));
  for (SeamSide& side : joint.sides) {
    if (joint.type == JointType::butt) side.flags.flush = false;
    if (!options.up) continue;
    const gp_Vec along = gp_Vec(side.path.front(), side.path[side.path.size() / 2]);
    if (side.is_closed || along.Magnitude() < 1e-6) continue;  // it has every position, or several
    const bool is_straight = side.path.size() == 2;
    if (is_straight)
      side.position =
          position_of(*options.up, along.Normalized(), side.outward, joint.type == JointType::butt);
    // Vertical seams are drawn upwards.
    if (side.position == "PF" && along.Dot(*options.up) < 0) std::reverse(side.path.begin(), side.path.end());
  }
  return joint;
}

}  // namespace

std::vector<Joint> build_joints(const std::vector<Part>& parts, std::vector<SeamPiece> pieces,
                                const FindOptions& options) {
  std::vector<Understood> all;
  for (SeamPiece& piece : pieces) all.push_back(understood(parts, std::move(piece)));
  std::vector<Joint> joints;
  for (auto& contact : contacts_of(std::move(all), options.gap_mm))
    joints.push_back(joint_of(parts, std::move(contact), options));
  return joints;
}

}  // namespace seamtakt::drawing
