#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "exchange/drawing/drawing_result.hpp"
#include "exchange/drawing/size_rule.hpp"

namespace seamtakt {

struct DrawingImportOptions {
  std::string weldment;  ///< that takes the seams; made where the plan lacks it. Empty: the only one
  std::vector<std::string> metals;  ///< ids: of both plates, or of each
  std::vector<std::pair<std::string, double>>
      thickness_mm;  ///< name or path of a part -> its thickness; "": of each part that has none
  std::optional<SizeRule> throat_rule = usual_throat_rule;
  std::optional<SizeRule> leg_rule;     ///< of fillets on both sides of a joint
  bool butts_through = true;            ///< a butt is filled through the thinner plate, from one side
  bool schedules_by_use = false;        ///< the first schedule whose use fits
  std::string schedule;                 ///< id: of seams that have none by use; may be empty
  std::vector<std::string> take_flags;  ///< sides with these flags are candidates too
  bool take_hardware = false;
  /// What a person says of single sides, by id of joint and side: taken whatever its flags, or declined.
  std::map<std::pair<std::string, std::string>, bool> choices;
  std::string up;
};

/// A size by a rule: a proposal, no design.
struct ProposedSize {
  const char* key = "";  ///< leg_mm, throat_mm, or groove: square edges, filled through
  double mm = 0;
};

/// What becomes of a side of the drawing.
struct DrawingCandidate {
  enum class State : char { added, moved, unchanged, open, left_out };
  State state = State::open;
  const DrawingJoint* joint = nullptr;
  const DrawingSide* side = nullptr;
  std::string seam;  ///< id in the weldment; empty where it isn't written
  std::optional<ProposedSize> size;
  std::vector<Word> lacks;         ///< of an open one: thickness, metal, size, schedule
  std::vector<std::string> flags;  ///< why it is left out; "hardware" where a part is a bolt or the like,
                                   ///< "back" of a butt that is filled from its other side, "declined"
};

struct DrawingImport {
  Plan plan;  ///< with what is complete; checked
  std::string weldment;
  std::vector<DrawingCandidate> candidates;  ///< in the drawing's order; borrows the drawing
  std::vector<std::string> lost;             ///< seams of an earlier drawing that this one doesn't have
  std::size_t plates = 0, tubes = 0;

  std::size_t count(DrawingCandidate::State state) const;
};

/// Proposes the drawing's sides as seams of a weldment. A seam that came from the same side of the same parts
/// before keeps its size and schedules, and gets the drawing's path where that has moved. Nothing is made up:
/// what lacks something stays open. InputError where no weldment can be told, or a metal or a part isn't
/// there.
DrawingImport import_drawing(const Plan& plan, const DrawingResult& drawing,
                             const DrawingImportOptions& options);

/// "PART=8mm"; "8mm" is of each part without one, by an empty name. InputError at --thickness otherwise.
std::pair<std::string, double> parse_part_thickness(const std::string& text);

}  // namespace seamtakt
