#include "exchange/drawing/drawing_import.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "exchange/drawing/drawing_solids.hpp"
#include "exchange/drawing/fitting_schedule.hpp"
#include "exchange/picture/space.hpp"
#include "formula/size/fillet_minimum.hpp"
#include "plan/fields/field_path.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {

namespace {

using State = DrawingCandidate::State;

/// Paths that differ by less are the same.
constexpr double same_place_mm = 0.05;

bool are_same(const std::vector<Point_mm>& one, const std::vector<Point_mm>& other) {
  if (one.size() != other.size()) return false;
  for (std::size_t i = 0; i < one.size(); ++i)
    if (space::length(space::minus(one[i], other[i])) > same_place_mm) return false;
  return true;
}

/// To a hundredth: what is finer is noise of the drawing.
double gap_of(const DrawingSide& side) {
  return std::round(side.gap_mm * 100) / 100;
}

class DrawingImporter {
 public:
  DrawingImporter(const Plan& plan, const DrawingResult& drawing, const DrawingImportOptions& options)
      : drawing_(drawing), options_(options) {
    result_.plan = plan;
  }

  DrawingImport import() {
    check_options();
    find_weldment();
    for (const Seam& seam : weldment().seams) {
      taken_.insert(seam.id);
      if (seam.drawing) known_.emplace(key_of(*seam.drawing), seam.id);
    }
    for (const DrawingJoint& joint : drawing_.joints) {
      find_backs(joint);
      for (const DrawingSide& side : joint.sides) result_.candidates.push_back(candidate(joint, side));
    }
    for (const auto& [key, id] : known_)
      if (!found_.contains(key)) result_.lost.push_back(id);
    const AddedSolids added = add_solids(drawing_, weldment());
    result_.plates = added.plates;
    result_.tubes = added.tubes;
    note_source();
    check_plan(result_.plan, "the plan with the drawing's seams");
    return std::move(result_);
  }

 private:
  using Key = std::pair<std::vector<std::string>, std::string>;

  Weldment& weldment() { return *find_by_id(result_.plan.weldments, result_.weldment); }

  /// The two parts in either order: which of them goes on may change with the drawing.
  static Key key_of(const SeamDrawing& drawing) {
    Key key(drawing.parts, drawing.side);
    std::sort(key.first.begin(), key.first.end());
    return key;
  }

  void check_options() const {
    if (options_.metals.size() > 2)
      throw InputError("--metal", "more than two metals"_word,
                       "the metal of both plates of a seam, or one for each"_word);
    std::vector<std::string_view> ids;
    for (const BaseMetal& metal : result_.plan.base_metals) ids.push_back(metal.id);
    for (const std::string& metal : options_.metals)
      if (!find_by_id(result_.plan.base_metals, metal))
        throw InputError("--metal", '"' + printable(metal) + '"',
                         with_nearest(Sentence("the id of a base metal"_word), metal, ids));
    if (!options_.schedule.empty() && !find_by_id(result_.plan.schedules, options_.schedule)) {
      std::vector<std::string_view> schedules;
      for (const Schedule& schedule : result_.plan.schedules) schedules.push_back(schedule.id);
      throw InputError(
          "--schedule", '"' + printable(options_.schedule) + '"',
          with_nearest(Sentence("the id of a schedule of the plan"_word), options_.schedule, schedules));
    }
    for (const auto& [name, thickness] : options_.thickness_mm) {
      if (name.empty()) continue;
      std::vector<std::string_view> names;
      bool is_there = false;
      for (const DrawingPart& part : drawing_.parts) {
        names.push_back(part.name);
        is_there = is_there || part.name == name || part.path == name;
      }
      if (!is_there)
        throw InputError("--thickness", '"' + printable(name) + '"',
                         with_nearest(Sentence("the name of a part of the drawing"_word), name, names));
    }
  }

  void find_weldment() {
    std::vector<Weldment>& weldments = result_.plan.weldments;
    result_.weldment = options_.weldment;
    if (result_.weldment.empty() && weldments.size() == 1) result_.weldment = weldments.front().id;
    if (result_.weldment.empty() && weldments.empty()) result_.weldment = name_of_file();
    if (result_.weldment.empty())
      throw InputError("--weldment", "a plan with several weldments"_word, "the weldment of the seams"_word);
    if (find_by_id(weldments, result_.weldment)) return;
    weldments.emplace_back();
    weldments.back().id = result_.weldment;
  }

  std::string name_of_file() const {
    const std::string name = last_name(drawing_.path);
    const std::size_t dot = name.rfind('.');
    return dot == std::string::npos || dot == 0 ? name : name.substr(0, dot);
  }

  std::optional<double> thickness_of(const DrawingSide& side, std::size_t which, std::size_t part) const {
    const DrawingPart& of = drawing_.parts[part];
    for (const auto& [name, thickness] : options_.thickness_mm)
      if (of.path == name || of.name == name) return thickness;
    if (side.thickness_mm[which]) return side.thickness_mm[which];
    for (const auto& [name, thickness] : options_.thickness_mm)
      if (name.empty()) return thickness;
    return {};
  }

  std::optional<bool> choice_of(const DrawingJoint& joint, const DrawingSide& side) const {
    const auto found = options_.choices.find({joint.id, side.id});
    return found == options_.choices.end() ? std::nullopt : std::optional(found->second);
  }

  std::vector<std::string> reasons_against(const DrawingJoint& joint, const DrawingSide& side) const {
    std::vector<std::string> reasons;
    if (const auto choice = choice_of(joint, side)) {
      if (!*choice) reasons.emplace_back("declined");
      return reasons;
    }
    for (const std::string& flag : side.flags)
      if (std::find(options_.take_flags.begin(), options_.take_flags.end(), flag) ==
          options_.take_flags.end())
        reasons.push_back(flag);
    const bool is_hardware =
        drawing_.parts[joint.part_a].is_hardware || drawing_.parts[joint.part_b].is_hardware;
    if (is_hardware && !options_.take_hardware) reasons.push_back("hardware");
    const bool takes_backs = std::find(options_.take_flags.begin(), options_.take_flags.end(), "back") !=
                             options_.take_flags.end();
    if (backs_.contains(&side) && !takes_backs) reasons.push_back("back");
    return reasons;
  }

  /// A butt that is filled through is one seam: of two sides that face each other over the thickness, the one
  /// that was taken before, that lies flat, or comes first.
  void find_backs(const DrawingJoint& joint) {
    backs_.clear();
    if (joint.type != "butt" || !options_.butts_through) return;
    std::vector<const DrawingSide*> sides;
    for (const DrawingSide& side : joint.sides)
      if (reasons_against(joint, side).empty()) sides.push_back(&side);
    const auto rank = [&](const DrawingSide* side) {
      return known_.contains(key_of(origin_of(joint, *side))) ? 0 : side->position == "PA" ? 1 : 2;
    };
    std::stable_sort(sides.begin(), sides.end(),
                     [&](const DrawingSide* a, const DrawingSide* b) { return rank(a) < rank(b); });
    std::vector<const DrawingSide*> fronts;
    for (const DrawingSide* side : sides)
      if (std::any_of(fronts.begin(), fronts.end(),
                      [&](const DrawingSide* front) { return face_each_other(joint, *front, *side); }))
        backs_.insert(side);
      else
        fronts.push_back(side);
  }

  bool face_each_other(const DrawingJoint& joint, const DrawingSide& one, const DrawingSide& other) const {
    const auto a = thickness_of(one, 0, joint.part_a), b = thickness_of(one, 1, joint.part_b);
    if (!a || !b) return false;
    constexpr double same_length = 0.05, more = 1.1;
    return std::abs(one.length_mm - other.length_mm) <= same_length * one.length_mm &&
           space::length(space::minus(middle_of(one), middle_of(other))) <= more * std::max(*a, *b);
  }

  static Point_mm middle_of(const DrawingSide& side) {
    Point_mm sum{0, 0, 0};
    for (const Point_mm& point : side.path_mm) sum = space::plus(sum, point);
    return space::times(1 / static_cast<double>(side.path_mm.size()), sum);
  }

  SeamDrawing origin_of(const DrawingJoint& joint, const DrawingSide& side) const {
    SeamDrawing from;
    from.parts = {drawing_.parts[joint.part_a].path, drawing_.parts[joint.part_b].path};
    from.side = side.id;
    return from;
  }

  DrawingCandidate candidate(const DrawingJoint& joint, const DrawingSide& side) {
    DrawingCandidate candidate;
    candidate.joint = &joint;
    candidate.side = &side;
    SeamDrawing from = origin_of(joint, side);
    const Key key = key_of(from);
    const auto known = known_.find(key);
    if (known != known_.end()) {
      found_.insert(key);
      candidate.seam = known->second;
      Seam& seam = *find_by_id(weldment().seams, known->second);
      candidate.state = update(seam, side, choice_of(joint, side).value_or(true));
      if (candidate.state == State::left_out) candidate.flags = {"declined"};
      return candidate;
    }
    candidate.flags = reasons_against(joint, side);
    if (!candidate.flags.empty()) {
      candidate.state = State::left_out;
      return candidate;
    }
    Seam seam = proposed(joint, side, candidate);
    if (!candidate.lacks.empty()) return candidate;
    seam.id = free_id(next_id(), taken_);
    seam.drawing = std::move(from);
    candidate.seam = seam.id;
    candidate.state = State::added;
    weldment().seams.push_back(std::move(seam));
    return candidate;
  }

  /// A seam that a person has since worked on keeps what isn't the drawing's.
  static State update(Seam& seam, const DrawingSide& side, bool is_wanted) {
    if (are_same(seam.path_mm, side.path_mm)) return State::unchanged;
    if (!is_wanted) return State::left_out;
    seam.path_mm = side.path_mm;
    return State::moved;
  }

  std::string next_id() {
    std::string number = std::to_string(++last_number_);
    if (number.size() < 2) number.insert(0, "0");
    return "S" + number;
  }

  Seam proposed(const DrawingJoint& joint, const DrawingSide& side, DrawingCandidate& candidate) const {
    std::vector<Word>& lacks = candidate.lacks;
    Seam seam;
    seam.joint = joint.type;
    seam.path_mm = side.path_mm;
    seam.position = side.position;
    seam.gap_mm = gap_of(side);
    if (joint.type != "butt" && side.dihedral_deg) seam.dihedral_deg = (*side.dihedral_deg)[1];
    const auto a = thickness_of(side, 0, joint.part_a), b = thickness_of(side, 1, joint.part_b);
    if (a && b)
      seam.thickness_mm = {*a, *b};
    else
      lacks.push_back("thickness"_word);
    if (options_.metals.empty())
      lacks.push_back("metal"_word);
    else
      seam.base_metals = {options_.metals.front(), options_.metals.back()};
    candidate.size = proposed_size(joint, side, seam);
    if (!candidate.size) lacks.push_back("size"_word);
    if (std::string schedule = schedule_of(seam, lacks.empty()); !schedule.empty())
      seam.schedules = {std::move(schedule)};
    else
      lacks.push_back("schedule"_word);
    return seam;
  }

  std::string schedule_of(const Seam& seam, bool is_known) const {
    if (options_.schedules_by_use && is_known)
      if (const Schedule* schedule = fitting_schedule(result_.plan, seam)) return schedule->id;
    return options_.schedule;
  }

  std::optional<ProposedSize> proposed_size(const DrawingJoint& joint, const DrawingSide& side,
                                            Seam& seam) const {
    if (seam.thickness_mm.size() != 2) return {};
    const double thinner = std::min(seam.thickness_mm[0], seam.thickness_mm[1]);
    if (joint.type == "butt") return full_butt(side, thinner, seam);
    if (!(seam.dihedral_deg > 0 && seam.dihedral_deg < 180)) return {};  // no fillet in line
    if (options_.leg_rule && is_two_sided(joint)) {
      seam.leg_mm = size_by_rule_mm(*options_.leg_rule, thinner, 0.5);
      return ProposedSize{"leg_mm", *seam.leg_mm};
    }
    if (!options_.throat_rule) return {};
    seam.throat_mm = size_by_rule_mm(*options_.throat_rule, thinner, fillet_throat_min_mm);
    return ProposedSize{"throat_mm", *seam.throat_mm};
  }

  /// Square edges, as they are drawn, with the drawing's gap. Edges that are drawn with a bevel are a
  /// preparation that this doesn't read.
  std::optional<ProposedSize> full_butt(const DrawingSide& side, double thinner, Seam& seam) const {
    constexpr double square_deg = 175;
    if (!options_.butts_through || !side.dihedral_deg || (*side.dihedral_deg)[1] < square_deg) return {};
    Groove groove;
    groove.type = "square";
    groove.root_gap_mm = seam.gap_mm;
    seam.groove = std::move(groove);
    return ProposedSize{"groove", thinner};
  }

  /// At least two of the joint's sides are fillets that are offered.
  bool is_two_sided(const DrawingJoint& joint) const {
    return std::count_if(joint.sides.begin(), joint.sides.end(),
                         [&](const DrawingSide& side) { return reasons_against(joint, side).empty(); }) >= 2;
  }

  void note_source() {
    DrawingFile file;
    file.path = drawing_.path;
    file.sha256 = drawing_.sha256;
    file.unit = drawing_.unit;
    file.up = options_.up;
    file.gap_mm = drawing_.gap_mm;
    if (weldment().drawing_file) file.file_keys = weldment().drawing_file->file_keys;
    weldment().drawing_file = std::move(file);
  }

  const DrawingResult& drawing_;
  const DrawingImportOptions& options_;
  DrawingImport result_;
  std::set<std::string> taken_;
  std::map<Key, std::string> known_;  ///< seams that came from a drawing before
  std::set<Key> found_;
  std::set<const DrawingSide*> backs_;  ///< of the joint at hand
  int last_number_ = 0;
};

}  // namespace

std::size_t DrawingImport::count(DrawingCandidate::State state) const {
  return static_cast<std::size_t>(
      std::count_if(candidates.begin(), candidates.end(),
                    [state](const DrawingCandidate& candidate) { return candidate.state == state; }));
}

DrawingImport import_drawing(const Plan& plan, const DrawingResult& drawing,
                             const DrawingImportOptions& options) {
  return DrawingImporter(plan, drawing, options).import();
}

std::pair<std::string, double> parse_part_thickness(const std::string& text) {
  const std::size_t equals = text.rfind('=');
  if (equals == 0) throw InputError("--thickness", '"' + printable(text) + '"', "PART=8mm, or 8mm"_word);
  const bool is_of_all = equals == std::string::npos;
  const std::string value = is_of_all ? text : text.substr(equals + 1);
  const double thickness = parse_quantity(value, *find_unit("mm"), "--thickness");
  if (!(thickness > 0 && thickness <= 1e5))
    throw InputError("--thickness", '"' + printable(text) + '"', "a thickness above 0"_word);
  return {is_of_all ? std::string() : text.substr(0, equals), thickness};
}

}  // namespace seamtakt
