#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "exchange/picture/solid.hpp"
#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

constexpr double in_plane_mm = 1, linked_mm = 60, least_side_mm = 5;
constexpr double parallel_sine = 0.02;
constexpr std::size_t most_pieces = 1500;

/// A straight piece of a seam.
struct GuessPiece {
  Point_mm a, b, way;  ///< `way`: unit vector
  double thickness_mm;
};

struct GuessPlane {
  Point_mm normal;
  double offset_mm;
};

std::vector<GuessPiece> pieces_of_seams(const Weldment& weldment) {
  std::vector<GuessPiece> pieces;
  for (const Seam& seam : weldment.seams) {
    if (seam.thickness_mm.empty()) continue;
    const double thinner_mm = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
    for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
      const Point_mm way = space::minus(seam.path_mm[i], seam.path_mm[i - 1]);
      if (space::length(way) < in_plane_mm) continue;
      pieces.push_back({seam.path_mm[i - 1], seam.path_mm[i], space::unit(way), thinner_mm});
    }
  }
  return pieces;
}

bool lies_in(const GuessPiece& piece, const GuessPlane& plane) {
  return std::abs(space::dot(plane.normal, piece.a) - plane.offset_mm) <= in_plane_mm &&
         std::abs(space::dot(plane.normal, piece.b) - plane.offset_mm) <= in_plane_mm;
}

/// One sign for both of a plane's normals: the first component that isn't small is positive.
GuessPlane with_sign(Point_mm normal, const Point_mm& through) {
  for (double& component : normal)
    if (std::abs(component) < 1e-9) component = 0;
  const auto first = std::find_if(normal.begin(), normal.end(), [](double c) { return std::abs(c) > 1e-6; });
  if (first != normal.end() && *first < 0) normal = space::times(-1, normal);
  return {normal, space::dot(normal, through)};
}

/// Whether the boxes round two pieces are near one another along each axis.
bool are_linked(const GuessPiece& a, const GuessPiece& b) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const auto [a_low, a_high] = std::minmax(a.a[axis], a.b[axis]);
    const auto [b_low, b_high] = std::minmax(b.a[axis], b.b[axis]);
    if (a_low > b_high + linked_mm || b_low > a_high + linked_mm) return false;
  }
  return true;
}

/// Planes in which two pieces lie that aren't parallel and near one another, each once.
std::vector<GuessPlane> planes_of(const std::vector<GuessPiece>& pieces) {
  std::map<std::tuple<long, long, long, long>, GuessPlane> found;
  for (std::size_t i = 0; i < pieces.size(); ++i)
    for (std::size_t k = i + 1; k < pieces.size(); ++k) {
      if (!are_linked(pieces[i], pieces[k])) continue;
      const Point_mm normal = space::cross(pieces[i].way, pieces[k].way);
      if (space::length(normal) < parallel_sine) continue;
      const GuessPlane plane = with_sign(space::unit(normal), pieces[i].a);
      if (!lies_in(pieces[k], plane)) continue;
      found.emplace(std::tuple(std::lround(plane.normal[0] * 200), std::lround(plane.normal[1] * 200),
                               std::lround(plane.normal[2] * 200), std::lround(plane.offset_mm / 2)),
                    plane);
    }
  std::vector<GuessPlane> planes;
  for (const auto& [key, plane] : found) planes.push_back(plane);
  return planes;
}

/// Pieces of one plane, in groups of those that are near one another.
std::vector<std::vector<GuessPiece>> linked_groups(const std::vector<GuessPiece>& pieces) {
  std::vector<std::size_t> group(pieces.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  const auto head = [&](std::size_t i) {
    while (group[i] != i) i = group[i] = group[group[i]];
    return i;
  };
  for (std::size_t i = 0; i < pieces.size(); ++i)
    for (std::size_t k = i + 1; k < pieces.size(); ++k)
      if (are_linked(pieces[i], pieces[k])) group[head(k)] = head(i);
  std::map<std::size_t, std::vector<GuessPiece>> by_head;
  for (std::size_t i = 0; i < pieces.size(); ++i) by_head[head(i)].push_back(pieces[i]);
  std::vector<std::vector<GuessPiece>> groups;
  for (auto& [first, members] : by_head) groups.push_back(std::move(members));
  return groups;
}

bool has_two_directions(const std::vector<GuessPiece>& pieces) {
  return std::any_of(pieces.begin(), pieces.end(), [&](const GuessPiece& piece) {
    return space::length(space::cross(piece.way, pieces[0].way)) >= parallel_sine;
  });
}

/// The box round a group, as a sheet on its plane; no outline where it is too small.
Prism box_round(const std::vector<GuessPiece>& pieces, const GuessPlane& plane) {
  Prism sheet;
  sheet.is_guess = true;
  const auto longest =
      std::max_element(pieces.begin(), pieces.end(), [](const GuessPiece& a, const GuessPiece& b) {
        return space::length(space::minus(a.b, a.a)) < space::length(space::minus(b.b, b.a));
      });
  sheet.u = longest->way;
  sheet.v = space::cross(plane.normal, sheet.u);
  sheet.origin_mm = longest->a;
  sheet.height_mm = pieces[0].thickness_mm;
  double low[2] = {0, 0}, high[2] = {0, 0};
  for (const GuessPiece& piece : pieces) {
    sheet.height_mm = std::min(sheet.height_mm, piece.thickness_mm);
    for (const Point_mm& end : {piece.a, piece.b}) {
      const Point_mm from = space::minus(end, sheet.origin_mm);
      const double at[2] = {space::dot(from, sheet.u), space::dot(from, sheet.v)};
      for (int k = 0; k < 2; ++k) {
        low[k] = std::min(low[k], at[k]);
        high[k] = std::max(high[k], at[k]);
      }
    }
  }
  if (high[0] - low[0] < least_side_mm || high[1] - low[1] < least_side_mm) return sheet;
  sheet.outline_mm = {{low[0], low[1]}, {high[0], low[1]}, {high[0], high[1]}, {low[0], high[1]}};
  return sheet;
}

Point_mm middle_of(const Prism& sheet) {
  const NumberPair& a = sheet.outline_mm[0];
  const NumberPair& c = sheet.outline_mm[2];
  return space::plus(sheet.origin_mm, space::plus(space::times((a[0] + c[0]) / 2, sheet.u),
                                                  space::times((a[1] + c[1]) / 2, sheet.v)));
}

/// Whether the second sheet is the other face of a plate whose one face is the first.
bool are_faces_of_one(const Prism& a, const Prism& b) {
  const Point_mm normal = space::cross(a.u, a.v);
  if (space::length(space::cross(normal, space::cross(b.u, b.v))) >= parallel_sine) return false;
  const Point_mm way = space::minus(middle_of(b), middle_of(a));
  const double apart_mm = std::abs(space::dot(way, normal));
  if (std::abs(apart_mm - a.height_mm) > 0.1 * a.height_mm + 0.5) return false;
  const double aside_mm = std::sqrt(std::max(0.0, space::dot(way, way) - apart_mm * apart_mm));
  const double wide_mm = std::abs(a.outline_mm[2][0] - a.outline_mm[0][0]);
  const double high_mm = std::abs(a.outline_mm[2][1] - a.outline_mm[0][1]);
  return aside_mm < std::min(wide_mm, high_mm) / 2;
}

void turn_over(Prism& sheet) {
  std::swap(sheet.u, sheet.v);
  for (NumberPair& corner : sheet.outline_mm) std::swap(corner[0], corner[1]);
  std::reverse(sheet.outline_mm.begin(), sheet.outline_mm.end());
}

/// Gives each sheet its side, and takes out those that are another's second face.
void set_sides(std::vector<Prism>& sheets, const Point_mm& middle) {
  std::vector<char> is_second(sheets.size(), 0), is_set(sheets.size(), 0);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    if (is_second[i]) continue;
    Point_mm towards = space::minus(middle_of(sheets[i]), middle);
    for (std::size_t k = i + 1; k < sheets.size() && !is_set[i]; ++k)
      if (!is_second[k] && are_faces_of_one(sheets[i], sheets[k])) {
        towards = space::minus(middle_of(sheets[k]), middle_of(sheets[i]));
        is_second[k] = is_set[i] = 1;
      }
    if (space::dot(space::cross(sheets[i].u, sheets[i].v), towards) < 0) turn_over(sheets[i]);
  }
  std::size_t kept = 0;
  for (std::size_t i = 0; i < sheets.size(); ++i)
    if (!is_second[i]) {
      if (kept != i) sheets[kept] = std::move(sheets[i]);
      ++kept;
    }
  sheets.resize(kept);
}

}  // namespace

std::vector<Prism> guessed_solids(const Weldment& weldment) {
  const std::vector<GuessPiece> pieces = pieces_of_seams(weldment);
  if (pieces.empty() || pieces.size() > most_pieces) return {};
  Point_mm middle{0, 0, 0};
  for (const GuessPiece& piece : pieces)
    middle = space::plus(
        middle, space::times(0.5 / static_cast<double>(pieces.size()), space::plus(piece.a, piece.b)));
  std::vector<Prism> sheets;
  for (const GuessPlane& plane : planes_of(pieces)) {
    std::vector<GuessPiece> inside;
    for (const GuessPiece& piece : pieces)
      if (lies_in(piece, plane)) inside.push_back(piece);
    for (const std::vector<GuessPiece>& group : linked_groups(inside)) {
      if (!has_two_directions(group)) continue;
      Prism sheet = box_round(group, plane);
      if (!sheet.outline_mm.empty()) sheets.push_back(std::move(sheet));
    }
  }
  set_sides(sheets, middle);
  for (std::size_t i = 0; i < sheets.size(); ++i) sheets[i].id = "?" + std::to_string(i + 1);
  return sheets;
}

}  // namespace seamtakt
