#pragma once

#include <array>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "plan/fields/field.hpp"

namespace seamtakt {

/// The ids of one list, for references to them and for finding ids that occur twice.
class IdSet {
 public:
  /// False where it is already there. Borrows the id.
  bool add(std::string_view id) { return ids_.insert(id).second; }
  bool has(std::string_view id) const { return ids_.contains(id); }
  void clear() { ids_.clear(); }
  void reserve(std::size_t count) { ids_.reserve(count); }
  /// In the order of their bytes.
  std::vector<std::string_view> all() const;

 private:
  std::unordered_set<std::string_view> ids_;
};

/// Checks a plan in memory: its fields' own rules, ids and references. Borrows the plan. A copy may continue
/// in another thread.
class ReferenceCheck : public FieldPath {
 public:
  /// `root`: what the plan was just read from, which has checked each value by itself.
  ReferenceCheck(const Plan& plan, std::string_view file, std::optional<JsonValue> root = {});

  /// Whether the fields' own rules have been looked at, as they have for a plan that was just read.
  bool values_are_known_good() const { return values_are_known_good_; }

  /// Refuses an id that the field's list doesn't have; the message names the nearest one that it has.
  void reference(std::string_view id, const FieldInfo& field);

  /// Enters an object of a list: from a weldment on, ids of seams and parts are those of this weldment. Other
  /// structs have no ids of their own.
  void enter(ConstObjectRef object);

 private:
  /// Ids that are the same all over the plan; copies of a check share them.
  struct PlanIds {
    explicit PlanIds(const Plan& plan);
    IdSet& of(IdList list) { return ids[static_cast<std::size_t>(list)]; }
    std::array<IdSet, static_cast<std::size_t>(IdList::parts) + 1> ids;
    std::vector<std::string> seam_places;
  };

  std::shared_ptr<const PlanIds> ids_;
  bool values_are_known_good_;
  IdSet seams_, parts_;
  const Weldment* weldment_ = nullptr;  ///< whose ids are still to be put there, once one is asked for
  /// The id that was last found in each list: seams of a kind name the same ones.
  std::array<std::string_view, static_cast<std::size_t>(IdList::parts) + 1> last_found_;
};

/// What no field alone can tell: wire extension, runs, lengths, circles of `after`.
void check_relations(const Plan& plan, FieldPath& place);
/// The part of it that one seam, or one schedule, shows by itself.
void check_alone(const Seam& seam, FieldPath& place);
void check_alone(const Schedule& schedule, FieldPath& place);

}  // namespace seamtakt
