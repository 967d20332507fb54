#include "records/judge/completeness.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>

#include "base/error.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

using PassName = std::pair<std::string, int>;  // seam, pass; 0: not known

/// A pass of a unit, from whatever source.
struct Laid {
  int robot = 0, manual = 0, parts = 0;
  bool good = false;   ///< at least one of them passed
  bool twice = false;  ///< one record that is two welds, or one that is in two logs
  double welded_mm = 0, planned_mm = 0;
  std::vector<std::string> failed_by, undecided_by;

  /// Records that continue with each other along the seam rather than weld it again.
  bool is_one_in_parts() const {
    return robot > 1 && manual == 0 && parts == robot && welded_mm <= 1.5 * planned_mm;
  }
};

/// A pass as the store has it: a rule by which it is open.
struct StoredState {
  std::string failed_by, undecided_by;
};

struct UnitState {
  UnitRecord record;
  std::map<PassName, StoredState> stored;
  std::map<PassName, Laid> laid;
  std::vector<PassName> order;

  Laid& pass(const PassName& name) {
    const auto [at, added] = laid.try_emplace(name);
    if (added) order.push_back(name);
    return at->second;
  }
};

PassRef ref_of(const PassName& name, const char* by) {
  return {name.first, name.second > 0 ? std::optional<int>(name.second) : std::nullopt, by};
}

std::string place_of(const UnitRecord& unit, const PassName& name) {
  PassRecord record;
  record.unit_serial = unit.unit_serial;
  record.weldment = unit.weldment;
  record.seam = name.first;
  if (name.second > 0) record.pass = name.second;
  return record.place();
}

/// The seam was laid about twice in one record: more than half of it over existing weld, or half as long
/// again.
bool welded_twice(const WeldedPass& pass) {
  const double planned = pass.planned_length_mm;
  if (planned <= 0) return false;
  return pass.record->overlap_mm.value_or(0) > planned / 2 ||
         pass.record->length_mm.value_or(0) > 1.5 * planned;
}

/// Gives each open item the sentence of its first pass.
void take_texts(std::vector<UnitRecord>& units, const Findings& findings) {
  std::map<std::pair<std::string, std::string>, OpenItem*> wanted;  // by place and rule
  for (UnitRecord& unit : units)
    for (OpenItem& item : unit.open_items) {
      const PassRef& first = item.passes.front();
      wanted[{place_of(unit, {first.seam, first.pass.value_or(0)}), item.cause}] = &item;
    }
  if (wanted.empty()) return;
  for (const Finding& finding : findings) {
    const auto at = wanted.find({finding.where, finding.rule});
    if (at != wanted.end() && at->second->sentence.is_empty()) at->second->sentence = finding.sentence;
  }
}

class CompletenessCheck {
 public:
  CompletenessCheck(const PlannedPasses* plan, Findings& findings) : plan_(plan), findings_(findings) {}

  void add_robot(const WeldedPass& pass) {
    const PassRecord& record = *pass.record;
    if (record.unit_serial.empty()) return;
    UnitState& unit = unit_of(record.unit_serial, record.weldment);
    Laid& laid = unit.pass({record.seam, record.pass.value_or(0)});
    ++laid.robot;
    laid.good = laid.good || record.verdict == Verdict::pass;
    for (const std::string& rule : record.failed_by) add_rule(laid.failed_by, rule);
    for (const std::string& rule : record.undecided_by) add_rule(laid.undecided_by, rule);
    if (record.coverage && record.coverage->is_part) ++laid.parts;
    laid.welded_mm += record.length_mm.value_or(0) + record.overlap_mm.value_or(0);
    laid.planned_mm = pass.planned_length_mm;
    laid.twice = laid.twice || pass.in_another_log_too || welded_twice(pass);
  }

  void add_manual(const ManualSeam& seam) {
    if (seam.unit_serial.empty()) return;
    UnitState& unit = unit_of(seam.unit_serial, seam.weldment);
    const PassName name{seam.seam, seam.pass.value_or(1)};
    Laid& laid = unit.pass(name);
    ++laid.manual;
    laid.good = laid.good || (seam.failed_by.empty() && seam.undecided_by.empty());
    for (const std::string& rule : seam.failed_by) add_rule(laid.failed_by, rule);
    for (const std::string& rule : seam.undecided_by) add_rule(laid.undecided_by, rule);
  }

  void add_stored(const StoredPass& pass) {
    const StoredState before{pass.failed_by, pass.undecided_by};
    unit_of(pass.unit_serial, "").stored.insert_or_assign({pass.seam, pass.pass}, before);
  }

  void expect(const UnitTime& unit) { unit_of(unit.unit_serial, unit.weldment); }

  std::vector<UnitRecord> finish() {
    std::vector<UnitRecord> records;
    for (const auto& key : order_) {
      UnitState& unit = units_.at(key);
      compare_with_plan(unit);
      note_what_is_open(unit);
      records.push_back(std::move(unit.record));
    }
    return records;
  }

 private:
  using UnitKey = std::pair<std::string, std::string>;

  /// A unit whose weldment isn't given is the one unit of that serial, or of the plan's only weldment.
  UnitState& unit_of(const std::string& serial, std::string weldment) {
    if (weldment.empty())
      for (const auto& key : order_)
        if (key.first == serial) weldment = key.second;
    if (weldment.empty() && plan_ != nullptr) weldment = plan_->only_weldment();
    const UnitKey key{serial, weldment};
    const auto [at, added] = units_.try_emplace(key);
    if (added) {
      order_.push_back(key);
      at->second.record.unit_serial = serial;
      at->second.record.weldment = weldment;
    }
    return at->second;
  }

  void add(const char* rule, Severity severity, std::string where, Sentence sentence) {
    findings_.push_back(
        {rule, severity, std::move(where), std::nullopt, std::nullopt, "", std::move(sentence), plan_limit});
  }

  void compare_with_plan(UnitState& unit) {
    note_repeated(unit);
    const Weldment* weldment = plan_ != nullptr ? plan_->weldment(unit.record.weldment) : nullptr;
    if (weldment == nullptr) return;
    bool robot = true, manual = true;
    std::set<PassName> planned;
    for (const auto& seam : weldment->seams) {
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass) {
        planned.insert({seam.id, pass});
        if (has_good(unit, {seam.id, pass}, seam.by)) continue;
        (seam.by == "manual" ? manual : robot) = false;
      }
    }
    note_extra(unit, planned);
    unit.record.complete_robot = robot;
    unit.record.complete_manual = manual;
    unit.record.complete = robot && manual;
  }

  static const StoredState* stored_of(const UnitState& unit, const PassName& name) {
    const auto at = unit.stored.find(name);
    return at != unit.stored.end() ? &at->second : nullptr;
  }

  bool has_good(UnitState& unit, const PassName& name, const std::string& by) {
    const auto at = unit.laid.find(name);
    const StoredState* stored = stored_of(unit, name);
    if (at == unit.laid.end() && stored != nullptr)
      return stored->failed_by.empty() && stored->undecided_by.empty();
    if (at == unit.laid.end()) {
      unit.record.missing_passes.push_back(ref_of(name, by == "manual" ? "manual" : "robot"));
      add("unit.pass.missing", Severity::warn, place_of(unit.record, name),
          by == "manual" ? "No record of this manual pass."_word
                         : "No record of this pass in the logs."_word);
      return false;
    }
    const bool by_robot = at->second.robot > 0;
    if (by_robot ? by == "manual" && at->second.manual == 0 : by != "manual")
      add("unit.pass.other-hand", Severity::warn, place_of(unit.record, name),
          by_robot ? "Welded by a robot where the plan has a manual seam."_word
                   : "Welded by hand where the plan has a robot seam."_word);
    // A failed record of the store is open until its repair is decided with the re-test.
    return at->second.good && (stored == nullptr || stored->failed_by.empty());
  }

  /// What the plan has, was welded, and has no record that passed.
  void note_what_is_open(UnitState& unit) {
    const Weldment* weldment = plan_ != nullptr ? plan_->weldment(unit.record.weldment) : nullptr;
    if (weldment == nullptr) return;
    std::map<std::pair<std::string, std::string>, std::size_t> items;  // by rule and verdict
    const auto open = [&](const std::string& rule, const char* verdict, const PassName& name,
                          const char* by) {
      const auto [at, added] = items.try_emplace({rule, verdict}, unit.record.open_items.size());
      if (added) unit.record.open_items.push_back({rule, verdict, {}, {}});
      unit.record.open_items[at->second].passes.push_back(ref_of(name, by));
    };
    for (const auto& seam : weldment->seams)
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass) {
        const PassName name{seam.id, pass};
        const auto at = unit.laid.find(name);
        const bool is_laid = at != unit.laid.end();
        const StoredState* stored = stored_of(unit, name);
        if (stored != nullptr && (!is_laid || at->second.good)) {
          const char* by = seam.by == "manual" ? "manual" : "robot";
          if (!stored->failed_by.empty()) open(stored->failed_by, "fail", name, by);
          if (!is_laid && !stored->undecided_by.empty()) open(stored->undecided_by, "undecided", name, by);
        }
        if (!is_laid || at->second.good) continue;
        const char* by = at->second.robot > 0 ? "robot" : "manual";
        for (const std::string& rule : at->second.failed_by) open(rule, "fail", name, by);
        for (const std::string& rule : at->second.undecided_by) open(rule, "undecided", name, by);
      }
  }

  void note_extra(UnitState& unit, const std::set<PassName>& planned) {
    for (const auto& name : unit.order) {
      if (planned.contains(name)) continue;
      const bool by_robot = unit.laid.at(name).robot > 0;
      unit.record.extra_passes.push_back(ref_of(name, by_robot ? "robot" : "manual"));
      add("unit.pass.extra", Severity::warn, place_of(unit.record, name),
          "Welded, but not in the plan."_word);
    }
  }

  void note_repeated(UnitState& unit) {
    for (const auto& name : unit.order) {
      const Laid& laid = unit.laid.at(name);
      if ((laid.robot + laid.manual < 2 && !laid.twice) || laid.is_one_in_parts()) continue;
      unit.record.repeated_passes.push_back(ref_of(name, laid.robot > 0 ? "robot" : "manual"));
      add("unit.pass.repeated", Severity::warn, place_of(unit.record, name), "Welded more than once."_word);
    }
  }

  const PlannedPasses* plan_;
  Findings& findings_;
  std::map<UnitKey, UnitState> units_;
  std::vector<UnitKey> order_;
};

}  // namespace

std::vector<UnitRecord> check_completeness(const std::vector<WeldedPass>& welded, const BesideTheLogs& beside,
                                           const PlannedPasses* plan, Findings& findings) {
  CompletenessCheck check(plan, findings);
  for (const auto& pass : welded) check.add_robot(pass);
  for (const auto& unit : beside.expected) check.expect(unit);
  for (const auto& seam : beside.manual) check.add_manual(seam);
  for (const auto& pass : beside.stored) check.add_stored(pass);
  std::vector<UnitRecord> units = check.finish();
  take_texts(units, findings);
  return units;
}

void restate_completeness(std::vector<UnitRecord>& units, const std::vector<PassRecord>& records,
                          const BesideTheLogs& beside, const PlannedPasses& plan, const Findings& findings) {
  Findings found_before;
  CompletenessCheck check(&plan, found_before);
  for (const UnitRecord& unit : units) check.expect({unit.unit_serial, unit.weldment});
  for (const PassRecord& record : records) check.add_robot({&record, !record.schedule.empty(), false, 0});
  for (const ManualSeam& seam : beside.manual) check.add_manual(seam);
  for (const StoredPass& pass : beside.stored) check.add_stored(pass);
  std::vector<UnitRecord> now = check.finish();
  take_texts(now, findings);
  for (std::size_t i = 0; i < std::min(units.size(), now.size()); ++i) {
    units[i].complete = now[i].complete;
    units[i].complete_robot = now[i].complete_robot;
    units[i].complete_manual = now[i].complete_manual;
    units[i].open_items = std::move(now[i].open_items);
  }
}

}  // namespace seamtakt
