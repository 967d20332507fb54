#pragma once

#include <bitset>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "plan/fields/field_path.hpp"
#include "plan/plan.hpp"

/// Every field of a plan, described once. From these tables come the plan's reader and writer, the errors for
/// unknown keys, the ranges, the JSON Schema, and the headings and forms of programs that show a plan. A
/// description is plain data: where the value is in its struct, and the handler of its type. So a field
/// costs no code of its own.
namespace seamtakt {

class FieldAccess;
class NestedAccess;

/// What a field holds, as a form or a table needs to know it.
enum class FieldKind {
  text,
  choice,
  reference,
  date,
  number,
  integer,
  boolean,
  interval,          ///< [lower, upper], either open
  choice_or_number,  ///< one of the choices, or a number
  text_list,
  reference_list,
  number_list,
  number_pairs,  ///< [a, b]; a list of such
  text_pairs,
  point,
  path,         ///< [x, y, z]; a list of such
  composition,  ///< mass percentages by element symbol
  object,
  object_list
};

/// The list whose ids a reference names. `seams` are those of the same weldment; a `seam_place` is
/// "weldment/seam".
enum class IdList {
  none,
  base_metals,
  wires,
  gases,
  power_sources,
  schedules,
  qualifications,
  seams,
  robots,
  orientations,
  stages,
  seam_places,
  weldments,
  parts  ///< of the same weldment
};

/// Bounds of a number, in the field's unit.
struct Range {
  double lower = -std::numeric_limits<double>::infinity();
  double upper = std::numeric_limits<double>::infinity();
  bool lower_open = false, upper_open = false;  ///< the bound itself is outside

  bool contains(double value) const;
};

constexpr Range any_number() {
  return {};
}
constexpr Range above(double bound) {
  return {.lower = bound, .lower_open = true};
}
constexpr Range at_least(double bound) {
  return {.lower = bound};
}
constexpr Range from_to(double lower, double upper) {
  return {.lower = lower, .upper = upper};
}
constexpr Range above_to(double lower, double upper) {
  return {.lower = lower, .upper = upper, .lower_open = true};
}

class ObjectRef;
class ConstObjectRef;
class FieldTable;

/// The keys of a struct's table that an object of a file has, or that a value in memory would write.
using KeySet = std::bitset<64>;

/// One field of a struct.
struct FieldInfo {
  std::string_view key;    ///< key in the file; a literal
  const char* label = "";  ///< heading for people, without the unit, lower case
  const char* unit = "";   ///< "mm/s"; empty where dimensionless or not a number
  const char* help = "";   ///< one sentence
  FieldKind kind = FieldKind::text;
  bool required = false;
  bool nullable = false;                      ///< null may be written and means "absent"
  Range range;                                ///< of each number that the field holds
  std::span<const std::string_view> choices;  ///< the table owns them
  IdList refers_to = IdList::none;
  std::size_t least = 0, most = std::numeric_limits<std::size_t>::max();  ///< elements of a list
  const FieldTable& (*nested)() = nullptr;  ///< of an object or of a list's objects

  const FieldAccess* access = nullptr;    ///< how a value of its type is handled
  const NestedAccess* objects = nullptr;  ///< the same, of an object or of a list's objects
  std::size_t offset = 0;                 ///< of the member in its struct, in bytes
  std::size_t second_offset = 0;          ///< of the other member, where a value takes two
  const void* standard = nullptr;         ///< an object of the struct in which nothing was set

  /// What the file may say here, for messages: "a number above 0 mm", "one of tee, corner, lap and butt".
  Sentence expectation() const;
  /// The same for one element of a list.
  Sentence element_expectation() const;
  /// JSON text of the value that an absent key has; empty: none.
  std::string default_json() const;

  /// The value as a person may type it; empty where absent. Numbers in the field's unit with '.', lists
  /// separated by ", ", points by "; ", intervals as "2 .. 6", compositions as "C=0.17, Mn=1.45". Objects
  /// give how many there are, to show only. `object` is of this field's struct, here and below.
  std::string text(ConstObjectRef object) const;
  /// The inverse of text(); empty means absent (or the default). Throws InputError{where = key} and leaves
  /// the object unchanged where the text can't be used. check_plan checks whether a reference resolves.
  void set_text(ObjectRef object, std::string_view text) const;
  /// The value of a number or integer field; nothing where absent or where the field is no number.
  std::optional<double> number(ConstObjectRef object) const;
  /// Sets a number or integer field; nothing means absent (or the default). Throws as set_text does.
  void set_number(ObjectRef object, std::optional<double> number) const;

  FieldInfo& require() {
    required = true;
    return *this;
  }
  FieldInfo& allow_null() {
    nullable = true;
    return *this;
  }
  /// The list holds from `fewest` to `highest` elements.
  FieldInfo& count(std::size_t fewest, std::size_t highest = std::numeric_limits<std::size_t>::max()) {
    least = fewest;
    most = highest;
    return *this;
  }
};

/// Keys of which one, and one only, is given; where not `needed`, none may be given as well.
struct KeyGroup {
  std::vector<std::string_view> keys;
  bool needed = false;
};

/// A struct of the plan, without its type.
struct StructInfo {
  const char* name;       ///< in messages and in the schema: "seam"
  const char* title;      ///< for people: one phrase that says what the object is
  const void* standard;   ///< an object in which nothing was set
  std::size_t file_keys;  ///< offset of its FileKeys
};

/// The fields of one struct, in the order in which a new file is written.
class FieldTable {
 public:
  FieldTable(const StructInfo& type, std::vector<FieldInfo> fields_,
             std::initializer_list<KeyGroup> groups_ = {});
  FieldTable(const FieldTable&) = delete;
  FieldTable& operator=(const FieldTable&) = delete;

  const char* name;   ///< in messages and in the schema: "seam"
  const char* title;  ///< for people: one phrase that says what the object is
  std::vector<FieldInfo> fields;
  std::vector<KeyGroup> groups;
  std::size_t file_keys;                ///< offset of the struct's FileKeys
  const FieldInfo* id_field = nullptr;  ///< by which an object is found in its list; nullptr where none

  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
  /// Index of the field with this key; npos where there is none. Quickest where it is `hint`, as in a file
  /// whose objects have their keys in the table's order.
  std::size_t find(std::string_view key, std::size_t hint = 0) const;
  /// The field with this key; nullptr where there is none.
  const FieldInfo* named(std::string_view key) const;

  /// Whether there is something to check in a field whose own rules are known to be kept: it refers to an id,
  /// holds others, or is one of a group of keys.
  bool points_elsewhere(std::size_t field) const { return beyond_own_rules_.test(field); }

  /// Whether these keys are all that must be there, and of each group as many as may be.
  bool allows(const KeySet& present) const {
    if ((required_ & ~present).any()) return false;
    for (const auto& [keys, needed] : group_sets_) {
      const std::size_t given = (keys & present).count();
      if (given > 1 || (given == 0 && needed)) return false;
    }
    return true;
  }

 private:
  void own_choices();
  void index_keys();

  std::vector<std::string_view> choices_;
  KeySet required_, beyond_own_rules_;
  std::vector<std::pair<KeySet, bool>> group_sets_;
  std::vector<std::uint8_t> hashed_;  ///< index + 1 of the key that hashes there; 0: none
};

/// "[x, y, z] in mm".
Sentence point_expectation();

/// "an object (a seam)": what a file has to say of such an object.
Sentence object_expectation(const FieldTable& table);

/// The table of a plan's struct.
template <class T>
const FieldTable& fields_of();

// clang-format off
template <> const FieldTable& fields_of<BaseMetal>();
template <> const FieldTable& fields_of<Wire>();
template <> const FieldTable& fields_of<Gas>();
template <> const FieldTable& fields_of<PowerSource>();
template <> const FieldTable& fields_of<Pulse>();
template <> const FieldTable& fields_of<Weave>();
template <> const FieldTable& fields_of<ScheduleUse>();
template <> const FieldTable& fields_of<ScheduleLimits>();
template <> const FieldTable& fields_of<Schedule>();
template <> const FieldTable& fields_of<TestedWeld>();
template <> const FieldTable& fields_of<Qualification>();
template <> const FieldTable& fields_of<Part>();
template <> const FieldTable& fields_of<Section>();
template <> const FieldTable& fields_of<Feature>();
template <> const FieldTable& fields_of<OrderStep>();
template <> const FieldTable& fields_of<Hole>();
template <> const FieldTable& fields_of<Plate>();
template <> const FieldTable& fields_of<TubeSection>();
template <> const FieldTable& fields_of<Tube>();
template <> const FieldTable& fields_of<Groove>();
template <> const FieldTable& fields_of<Intermittent>();
template <> const FieldTable& fields_of<Tacks>();
template <> const FieldTable& fields_of<SeamDrawing>();
template <> const FieldTable& fields_of<DrawingFile>();
template <> const FieldTable& fields_of<Seam>();
template <> const FieldTable& fields_of<Weldment>();
template <> const FieldTable& fields_of<Loaded>();
template <> const FieldTable& fields_of<Track>();
template <> const FieldTable& fields_of<TipChange>();
template <> const FieldTable& fields_of<Robot>();
template <> const FieldTable& fields_of<Orientation>();
template <> const FieldTable& fields_of<TorchService>();
template <> const FieldTable& fields_of<Zone>();
template <> const FieldTable& fields_of<ManualWork>();
template <> const FieldTable& fields_of<Turn>();
template <> const FieldTable& fields_of<Positioner>();
template <> const FieldTable& fields_of<Changeover>();
template <> const FieldTable& fields_of<Cell>();
template <> const FieldTable& fields_of<Stage>();
template <> const FieldTable& fields_of<Shift>();
template <> const FieldTable& fields_of<Calendar>();
template <> const FieldTable& fields_of<Operators>();
template <> const FieldTable& fields_of<Line>();
template <> const FieldTable& fields_of<Instrument>();
template <> const FieldTable& fields_of<Costs>();
template <> const FieldTable& fields_of<Measuring>();
template <> const FieldTable& fields_of<Acceptance>();
template <> const FieldTable& fields_of<Plan>();
// clang-format on

/// A struct of the plan: only such objects have a table.
template <class T>
concept PlanStruct = std::same_as<decltype(T::file_keys), FileKeys>;

/// An object of a plan without its type: where it is, and the table of its fields.
class ConstObjectRef {
 public:
  template <PlanStruct T>
  ConstObjectRef(const T& object) : table_(&fields_of<T>()), data_(&object) {}
  ConstObjectRef(const FieldTable& table, const void* data) : table_(&table), data_(data) {}

  const FieldTable& table() const { return *table_; }
  const void* data() const { return data_; }
  const FileKeys& file_keys() const {
    return *reinterpret_cast<const FileKeys*>(static_cast<const std::byte*>(data_) + table_->file_keys);
  }

 private:
  const FieldTable* table_;
  const void* data_;
};

/// The same for an object that may be changed.
class ObjectRef {
 public:
  template <PlanStruct T>
  requires(!std::is_const_v<T>) ObjectRef(T& object) : table_(&fields_of<T>()), data_(&object) {}
  ObjectRef(const FieldTable& table, void* data) : table_(&table), data_(data) {}

  operator ConstObjectRef() const { return {*table_, data_}; }
  const FieldTable& table() const { return *table_; }
  void* data() const { return data_; }
  FileKeys& file_keys() const {
    return *reinterpret_cast<FileKeys*>(static_cast<std::byte*>(data_) + table_->file_keys);
  }

 private:
  const FieldTable* table_;
  void* data_;
};

/// Keys with this prefix are free: the reader keeps them and their values unchanged.
inline bool is_free_key(std::string_view key) {
  return key.starts_with("x_");
}

/// The table's field with this key, e.g. field_named<Schedule>("travel_speed_mm_s"); nullptr where there is
/// none.
template <class T>
const FieldInfo* field_named(std::string_view key) {
  return fields_of<T>().named(key);
}

}  // namespace seamtakt
