#pragma once

#include <bitset>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/fields/field_path.hpp"
#include "plan/plan.hpp"

/// Every field of a plan, described once. From these tables come the plan's reader and writer, the errors for
/// unknown keys, the ranges, the JSON Schema, and the headings and forms of whoever shows a plan.
namespace seamtakt {

class JsonValue;
class ReferenceCheck;

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
  seam_places
};

/// Bounds of a number, in the field's unit.
struct Range {
  double lower = -std::numeric_limits<double>::infinity();
  double upper = std::numeric_limits<double>::infinity();
  bool lower_open = false, upper_open = false;  ///< the bound itself is outside

  bool contains(double value) const;
  /// "above 0", "from 0 to 100", "at least 1"; empty where there is no bound.
  std::string text() const;
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

struct TableInfo;

/// The keys of a struct's table that an object of a file has, or that a value in memory would write.
using KeySet = std::bitset<64>;

/// What is known of a field without its struct.
struct FieldInfo {
  std::string_view key;    ///< key in the file; a literal
  const char* label = "";  ///< heading for people, without the unit, lower case
  const char* unit = "";   ///< "mm/s"; empty where dimensionless or not a number
  const char* help = "";   ///< one sentence
  FieldKind kind = FieldKind::text;
  bool required = false;
  bool nullable = false;  ///< null may be written and means "absent"
  Range range;            ///< of each number that the field holds
  std::vector<std::string_view> choices;
  IdList refers_to = IdList::none;
  std::size_t least = 0, most = std::numeric_limits<std::size_t>::max();  ///< elements of a list
  std::string default_json;                ///< JSON text of the value that an absent key has; empty: none
  const TableInfo& (*nested)() = nullptr;  ///< of an object or of a list's objects

  /// What the file may say here, for messages: "a number above 0 mm", "one of tee, corner, lap and butt".
  std::string expectation() const;
  /// The same for one element of a list.
  std::string element_expectation() const;
};

/// Keys of which one, and one only, is given; where not `needed`, none may be given as well.
struct KeyGroup {
  std::vector<std::string_view> keys;
  bool needed = false;
};

/// The fields of one struct, without the struct.
struct TableInfo {
  const char* name;   ///< in messages and in the schema: "seam"
  const char* title;  ///< for people: one phrase that says what the object is
  std::vector<const FieldInfo*> infos;
  std::vector<KeyGroup> groups;

  static constexpr std::size_t npos = static_cast<std::size_t>(-1);
  /// Index of the field with this key; npos where there is none. Quickest where it is `hint`, as in a file
  /// whose objects have their keys in the table's order.
  std::size_t find(std::string_view key, std::size_t hint = 0) const;

  /// Whether there is something to check in a field whose own rules are known to be kept: it refers to an id,
  /// holds others, or is one of a group of keys.
  bool points_elsewhere(std::size_t field) const { return beyond_own_rules.test(field); }

  /// Whether these keys are all that must be there, and of each group as many as may be.
  bool allows(const KeySet& present) const {
    if ((required & ~present).any()) return false;
    for (const auto& [keys, needed] : group_sets) {
      const std::size_t given = (keys & present).count();
      if (given > 1 || (given == 0 && needed)) return false;
    }
    return true;
  }

 protected:
  TableInfo(const char* name_, const char* title_) : name(name_), title(title_) {}
  /// Fills what follows from infos and groups.
  void index_keys();

 private:
  KeySet required, beyond_own_rules;
  std::vector<std::pair<KeySet, bool>> group_sets;
  std::vector<std::uint8_t> hashed;  ///< index + 1 of the key that hashes there; 0: none
};

/// How a field's value is reached. Implementations are in field_access.hpp.
template <class T>
class FieldAccess {
 public:
  virtual ~FieldAccess() = default;
  virtual void read(T& object, const JsonValue& node, const FieldInfo& field, ReadContext& context) const = 0;
  virtual bool is_written(const T& object, const FieldInfo& field, bool was_in_file) const = 0;
  virtual void write(const T& object, const FieldInfo& field, std::string& json) const = 0;
  virtual void check(const T& object, const FieldInfo& field, ReferenceCheck& check) const = 0;
  virtual std::string text(const T& object, const FieldInfo& field) const = 0;
  virtual void set_text(T& object, const FieldInfo& field, std::string_view text) const = 0;
  virtual std::optional<double> number(const T& object) const = 0;
  virtual void set_number(T& object, const FieldInfo& field, std::optional<double> number) const = 0;
};

/// One field of struct T.
template <class T>
class Field : public FieldInfo {
 public:
  Field(FieldInfo info, std::shared_ptr<const FieldAccess<T>> access)
      : FieldInfo(std::move(info)), access_(std::move(access)) {}

  /// Reads and checks the value of the key at which `context` stands. InputError where it can't be used.
  void read(T& object, const JsonValue& node, ReadContext& context) const {
    access_->read(object, node, *this, context);
  }
  /// Whether saving writes the key: it was in the file, or its value isn't the one that an absent key has.
  bool is_written(const T& object, bool was_in_file) const {
    return access_->is_written(object, *this, was_in_file);
  }
  /// Appends the value as JSON text.
  void write(const T& object, std::string& json) const { access_->write(object, *this, json); }
  /// Checks type-independent rules on a value in memory: range, choices, references. Throws InputError.
  void check(const T& object, ReferenceCheck& check) const { access_->check(object, *this, check); }

  /// The value as a person may type it; empty where absent. Numbers in the field's unit with '.', lists
  /// separated by ", ", points by "; ", intervals as "2 .. 6", compositions as "C=0.17, Mn=1.45". Objects
  /// give how many there are, to show only.
  std::string text(const T& object) const { return access_->text(object, *this); }
  /// The inverse of text(); empty means absent (or the default). Throws InputError{where = key} and leaves
  /// the object unchanged where the text can't be used. Whether a reference resolves is left to check_plan.
  void set_text(T& object, std::string_view text) const { access_->set_text(object, *this, text); }

  /// The value of a number or integer field; nothing where absent or where the field is no number.
  std::optional<double> number(const T& object) const { return access_->number(object); }
  /// Sets a number or integer field; nothing means absent (or the default). Throws as set_text does.
  void set_number(T& object, std::optional<double> number) const {
    access_->set_number(object, *this, number);
  }

  Field& require() {
    required = true;
    default_json.clear();
    return *this;
  }
  Field& allow_null() {
    nullable = true;
    return *this;
  }
  /// The list holds from `fewest` to `highest` elements.
  Field& count(std::size_t fewest, std::size_t highest = std::numeric_limits<std::size_t>::max()) {
    least = fewest;
    most = highest;
    return *this;
  }

 private:
  std::shared_ptr<const FieldAccess<T>> access_;
};

template <class T>
struct FieldTable : TableInfo {
  FieldTable(const char* name_, const char* title_, std::vector<Field<T>> fields_,
             std::vector<KeyGroup> groups_ = {})
      : TableInfo(name_, title_), fields(std::move(fields_)) {
    groups = std::move(groups_);
    for (const auto& field : fields) infos.push_back(&field);
    index_keys();
  }
  FieldTable(const FieldTable&) = delete;
  FieldTable& operator=(const FieldTable&) = delete;

  const std::vector<Field<T>> fields;
};

/// The table of a plan's struct, in the order in which a new file is written.
template <class T>
const FieldTable<T>& fields_of();

// clang-format off
template <> const FieldTable<BaseMetal>& fields_of<BaseMetal>();
template <> const FieldTable<Wire>& fields_of<Wire>();
template <> const FieldTable<Gas>& fields_of<Gas>();
template <> const FieldTable<PowerSource>& fields_of<PowerSource>();
template <> const FieldTable<Weave>& fields_of<Weave>();
template <> const FieldTable<ScheduleUse>& fields_of<ScheduleUse>();
template <> const FieldTable<ScheduleLimits>& fields_of<ScheduleLimits>();
template <> const FieldTable<Schedule>& fields_of<Schedule>();
template <> const FieldTable<TestedWeld>& fields_of<TestedWeld>();
template <> const FieldTable<Qualification>& fields_of<Qualification>();
template <> const FieldTable<Part>& fields_of<Part>();
template <> const FieldTable<Section>& fields_of<Section>();
template <> const FieldTable<Feature>& fields_of<Feature>();
template <> const FieldTable<OrderStep>& fields_of<OrderStep>();
template <> const FieldTable<Groove>& fields_of<Groove>();
template <> const FieldTable<Intermittent>& fields_of<Intermittent>();
template <> const FieldTable<Tacks>& fields_of<Tacks>();
template <> const FieldTable<Seam>& fields_of<Seam>();
template <> const FieldTable<Weldment>& fields_of<Weldment>();
template <> const FieldTable<Loaded>& fields_of<Loaded>();
template <> const FieldTable<Robot>& fields_of<Robot>();
template <> const FieldTable<Orientation>& fields_of<Orientation>();
template <> const FieldTable<TorchService>& fields_of<TorchService>();
template <> const FieldTable<Zone>& fields_of<Zone>();
template <> const FieldTable<Cell>& fields_of<Cell>();
template <> const FieldTable<Stage>& fields_of<Stage>();
template <> const FieldTable<Line>& fields_of<Line>();
template <> const FieldTable<Instrument>& fields_of<Instrument>();
template <> const FieldTable<Costs>& fields_of<Costs>();
template <> const FieldTable<Measuring>& fields_of<Measuring>();
template <> const FieldTable<Acceptance>& fields_of<Acceptance>();
template <> const FieldTable<Plan>& fields_of<Plan>();
// clang-format on

/// Keys that begin so are free: the reader keeps them and their values as they stand.
inline bool is_free_key(std::string_view key) {
  return key.starts_with("x_");
}

/// The table's field with this key, e.g. field_named<Schedule>("travel_speed_mm_s"); nullptr where there is
/// none.
template <class T>
const Field<T>* field_named(std::string_view key) {
  const auto& table = fields_of<T>();
  const std::size_t at = table.find(key);
  return at == TableInfo::npos ? nullptr : &table.fields[at];
}

}  // namespace seamtakt
