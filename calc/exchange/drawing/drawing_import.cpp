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
    for (const DrawingJoint& joint : drawing_.joints)
      for (const DrawingSide& side : joint.sides) result_.candidates.push_back(candidate(joint, side));
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
    for (const auto& [name, thickness] : options_.thickness_mm) {
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
    return side.thickness_mm[which];
  }

  std::vector<std::string> reasons_against(const DrawingJoint& joint, const DrawingSide& side) const {
    std::vector<std::string> reasons;
    for (const std::string& flag : side.flags)
      if (std::find(options_.take_flags.begin(), options_.take_flags.end(), flag) ==
          options_.take_flags.end())
        reasons.push_back(flag);
    const bool is_hardware =
        drawing_.parts[joint.part_a].is_hardware || drawing_.parts[joint.part_b].is_hardware;
    if (is_hardware && !options_.take_hardware) reasons.push_back("hardware");
    return reasons;
  }

  DrawingCandidate candidate(const DrawingJoint& joint, const DrawingSide& side) {
    DrawingCandidate candidate;
    candidate.joint = &joint;
    candidate.side = &side;
    SeamDrawing from;
    from.parts = {drawing_.parts[joint.part_a].path, drawing_.parts[joint.part_b].path};
    from.side = side.id;
    const Key key = key_of(from);
    const auto known = known_.find(key);
    if (known != known_.end()) {
      found_.insert(key);
      candidate.seam = known->second;
      candidate.state = update(*find_by_id(weldment().seams, known->second), side);
      return candidate;
    }
    candidate.flags = reasons_against(joint, side);
    if (!candidate.flags.empty()) {
      candidate.state = State::left_out;
      return candidate;
    }
    Seam seam = proposed(joint, side, candidate.lacks);
    if (!candidate.lacks.empty()) return candidate;
    seam.id = free_id(next_id(), taken_);
    seam.drawing = std::move(from);
    candidate.seam = seam.id;
    candidate.state = State::added;
    weldment().seams.push_back(std::move(seam));
    return candidate;
  }

  /// A seam that a person has since worked on keeps what isn't the drawing's.
  static State update(Seam& seam, const DrawingSide& side) {
    if (are_same(seam.path_mm, side.path_mm)) return State::unchanged;
    seam.path_mm = side.path_mm;
    return State::moved;
  }

  std::string next_id() {
    std::string number = std::to_string(++last_number_);
    if (number.size() < 2) number.insert(0, "0");
    return "S" + number;
  }

  Seam proposed(const DrawingJoint& joint, const DrawingSide& side, std::vector<Word>& lacks) const {
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
    if (!set_size(joint, seam)) lacks.push_back("size"_word);
    if (const Schedule* schedule =
            options_.schedules_by_use && lacks.empty() ? fitting_schedule(result_.plan, seam) : nullptr)
      seam.schedules = {schedule->id};
    else
      lacks.push_back("schedule"_word);
    return seam;
  }

  bool set_size(const DrawingJoint& joint, Seam& seam) const {
    // A groove's size is a matter of its preparation: no rule gives it. Nor is there a fillet in line.
    const bool is_fillet = joint.type != "butt" && seam.dihedral_deg > 0 && seam.dihedral_deg < 180;
    if (!is_fillet || seam.thickness_mm.size() != 2) return false;
    const double thinner = std::min(seam.thickness_mm[0], seam.thickness_mm[1]);
    if (options_.leg_rule && is_two_sided(joint))
      seam.leg_mm = size_by_rule_mm(*options_.leg_rule, thinner, 0.5);
    else if (options_.throat_rule)
      seam.throat_mm = size_by_rule_mm(*options_.throat_rule, thinner, least_throat_mm);
    else
      return false;
    return true;
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
  if (equals == std::string::npos || equals == 0)
    throw InputError("--thickness", '"' + printable(text) + '"', "PART=8mm"_word);
  const double thickness = parse_quantity(text.substr(equals + 1), *find_unit("mm"), "--thickness");
  if (!(thickness > 0 && thickness <= 1e5))
    throw InputError("--thickness", '"' + printable(text) + '"', "a thickness above 0"_word);
  return {text.substr(0, equals), thickness};
}

}  // namespace seamtakt
