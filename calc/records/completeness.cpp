#include "records/completeness.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>

#include "base/error.hpp"
#include "records/pass_review.hpp"

namespace seamtakt {

namespace {

using PassName = std::pair<std::string, int>;  // seam, pass; 0: not known

/// A pass of a unit, from whatever source.
struct Laid {
  int robot = 0, manual = 0;
  bool good = false;   ///< at least one of them isn't failed
  bool twice = false;  ///< one record that is two welds, or one that stands in two logs
};

struct UnitState {
  UnitRecord record;
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

/// The seam was laid about twice in one record: more than half of it over what was there, or half as long
/// again.
bool welded_twice(const WeldedPass& pass) {
  const double planned = pass.planned_length_mm;
  if (planned <= 0) return false;
  return pass.record->overlap_mm.value_or(0) > planned / 2 ||
         pass.record->length_mm.value_or(0) > 1.5 * planned;
}

enum class ManualResult { good, bad, unclear };

ManualResult result_of(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  for (const char* good : {"pass", "passed", "ok", "accepted", "accept", "good"})
    if (text == good) return ManualResult::good;
  for (const char* bad : {"fail", "failed", "nok", "not ok", "rejected", "reject", "bad"})
    if (text == bad) return ManualResult::bad;
  return ManualResult::unclear;
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
    laid.good = laid.good || record.verdict != Verdict::fail;
    laid.twice = laid.twice || pass.in_another_log_too || welded_twice(pass);
  }

  void add_manual(const ManualSeam& seam) {
    if (seam.unit_serial.empty()) return;
    UnitState& unit = unit_of(seam.unit_serial, seam.weldment);
    const PassName name{seam.seam, seam.pass.value_or(1)};
    Laid& laid = unit.pass(name);
    ++laid.manual;
    const ManualResult result = result_of(seam.result);
    laid.good = laid.good || result == ManualResult::good;
    if (result == ManualResult::bad)
      add("manual.result.fail", Severity::fail, place_of(unit.record, name),
          "The manual seam's result is \"" + printable(seam.result, 40) + "\".");
    if (result == ManualResult::unclear)
      add("manual.result.unclear", Severity::warn, place_of(unit.record, name),
          seam.result.empty()
              ? "The manual seam has no result."
              : "The manual seam's result \"" + printable(seam.result, 40) + "\" is neither pass nor fail.");
    check_manual_schedule(unit, seam, name);
  }

  void expect(const UnitTime& unit) { unit_of(unit.unit_serial, unit.weldment); }

  std::vector<UnitRecord> finish() {
    std::vector<UnitRecord> records;
    for (const auto& key : order_) {
      UnitState& unit = units_.at(key);
      compare_with_plan(unit);
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

  void add(const char* rule, Severity severity, std::string where, std::string text) {
    findings_.push_back(
        {rule, severity, std::move(where), std::nullopt, std::nullopt, "", std::move(text), plan_limit});
  }

  void check_manual_schedule(const UnitState& unit, const ManualSeam& seam, const PassName& name) {
    if (plan_ == nullptr || seam.schedule.empty()) return;
    const auto planned = plan_->find(unit.record.weldment, name.first, name.second);
    if (planned && planned->schedule->id != seam.schedule)
      add("manual.schedule.other", Severity::warn, place_of(unit.record, name),
          "Welded by schedule " + printable(seam.schedule, 60) + " where the plan has " +
              printable(planned->schedule->id, 60) + ".");
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

  bool has_good(UnitState& unit, const PassName& name, const std::string& by) {
    const auto at = unit.laid.find(name);
    if (at == unit.laid.end()) {
      unit.record.missing_passes.push_back(ref_of(name, by == "manual" ? "manual" : "robot"));
      add("unit.pass.missing", Severity::warn, place_of(unit.record, name),
          by == "manual" ? "No record of this manual pass." : "No record of this pass in the logs.");
      return false;
    }
    const bool by_robot = at->second.robot > 0;
    if (by_robot ? by == "manual" && at->second.manual == 0 : by != "manual")
      add("unit.pass.other-hand", Severity::warn, place_of(unit.record, name),
          by_robot ? "Welded by a robot where the plan has a manual seam."
                   : "Welded by hand where the plan has a robot seam.");
    return at->second.good;
  }

  void note_extra(UnitState& unit, const std::set<PassName>& planned) {
    for (const auto& name : unit.order) {
      if (planned.contains(name)) continue;
      const bool by_robot = unit.laid.at(name).robot > 0;
      unit.record.extra_passes.push_back(ref_of(name, by_robot ? "robot" : "manual"));
      add("unit.pass.extra", Severity::warn, place_of(unit.record, name), "Welded, but not in the plan.");
    }
  }

  void note_repeated(UnitState& unit) {
    for (const auto& name : unit.order) {
      const Laid& laid = unit.laid.at(name);
      if (laid.robot + laid.manual < 2 && !laid.twice) continue;
      unit.record.repeated_passes.push_back(ref_of(name, laid.robot > 0 ? "robot" : "manual"));
      add("unit.pass.repeated", Severity::warn, place_of(unit.record, name), "Welded more than once.");
    }
  }

  const PlannedPasses* plan_;
  Findings& findings_;
  std::map<UnitKey, UnitState> units_;
  std::vector<UnitKey> order_;
};

}  // namespace

std::vector<UnitRecord> check_completeness(const std::vector<WeldedPass>& welded,
                                           const std::vector<ManualSeam>& manual,
                                           const std::vector<UnitTime>& expected, const PlannedPasses* plan,
                                           Findings& findings) {
  CompletenessCheck check(plan, findings);
  for (const auto& pass : welded) check.add_robot(pass);
  for (const auto& unit : expected) check.expect(unit);
  for (const auto& seam : manual) check.add_manual(seam);
  return check.finish();
}

}  // namespace seamtakt
