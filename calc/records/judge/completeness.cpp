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
  bool twice = false;  ///< one record that is two welds, or one that stands in two logs
  double welded_mm = 0, planned_mm = 0;
  std::vector<std::string> failed_by, undecided_by;

  /// Records that go on with each other along the seam rather than weld it again.
  bool is_one_in_parts() const {
    return robot > 1 && manual == 0 && parts == robot && welded_mm <= 1.5 * planned_mm;
  }
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
    const ManualResult result = result_of(seam.result);
    laid.good = laid.good || result == ManualResult::good;
    if (result == ManualResult::bad) add_rule(laid.failed_by, "manual.result.fail");
    if (result == ManualResult::unclear) add_rule(laid.undecided_by, "manual.result.unclear");
    const auto result_text = [&] { return printable(seam.result, 40); };
    if (result == ManualResult::bad)
      add("manual.result.fail", Severity::fail, place_of(unit.record, name),
          Sentence("manual.result.fail"_key, {{"result", result_text()}}));
    if (result == ManualResult::unclear)
      add("manual.result.unclear", Severity::warn, place_of(unit.record, name),
          seam.result.empty() ? Sentence("The manual seam has no result."_word)
                              : Sentence("manual.result.unclear"_key, {{"result", result_text()}}));
    check_manual_schedule(unit, seam, name);
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

  void check_manual_schedule(const UnitState& unit, const ManualSeam& seam, const PassName& name) {
    if (plan_ == nullptr || seam.schedule.empty()) return;
    const auto planned = plan_->find(unit.record.weldment, name.first, name.second);
    if (planned && planned->schedule->id != seam.schedule)
      add("manual.schedule.other", Severity::warn, place_of(unit.record, name),
          Sentence("manual.schedule.other"_key, {{"welded", printable(seam.schedule, 60)},
                                                 {"planned", printable(planned->schedule->id, 60)}}));
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
          by == "manual" ? "No record of this manual pass."_word
                         : "No record of this pass in the logs."_word);
      return false;
    }
    const bool by_robot = at->second.robot > 0;
    if (by_robot ? by == "manual" && at->second.manual == 0 : by != "manual")
      add("unit.pass.other-hand", Severity::warn, place_of(unit.record, name),
          by_robot ? "Welded by a robot where the plan has a manual seam."_word
                   : "Welded by hand where the plan has a robot seam."_word);
    return at->second.good;
  }

  /// What the plan has, was welded, and has no record that passed.
  void note_what_is_open(UnitState& unit) {
    const Weldment* weldment = plan_ != nullptr ? plan_->weldment(unit.record.weldment) : nullptr;
    if (weldment == nullptr) return;
    std::map<std::pair<std::string, std::string>, std::size_t> items;  // by rule and verdict
    const auto open = [&](const std::string& rule, const char* verdict, const PassName& name,
                          const Laid& laid) {
      const auto [at, added] = items.try_emplace({rule, verdict}, unit.record.open_items.size());
      if (added) unit.record.open_items.push_back({rule, verdict, {}, {}});
      unit.record.open_items[at->second].passes.push_back(ref_of(name, laid.robot > 0 ? "robot" : "manual"));
    };
    for (const auto& seam : weldment->seams)
      for (int pass = 1; pass <= static_cast<int>(seam.schedules.size()); ++pass) {
        const auto at = unit.laid.find({seam.id, pass});
        if (at == unit.laid.end() || at->second.good) continue;
        for (const std::string& rule : at->second.failed_by) open(rule, "fail", at->first, at->second);
        for (const std::string& rule : at->second.undecided_by)
          open(rule, "undecided", at->first, at->second);
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

std::vector<UnitRecord> check_completeness(const std::vector<WeldedPass>& welded,
                                           const std::vector<ManualSeam>& manual,
                                           const std::vector<UnitTime>& expected, const PlannedPasses* plan,
                                           Findings& findings) {
  CompletenessCheck check(plan, findings);
  for (const auto& pass : welded) check.add_robot(pass);
  for (const auto& unit : expected) check.expect(unit);
  for (const auto& seam : manual) check.add_manual(seam);
  std::vector<UnitRecord> units = check.finish();
  take_texts(units, findings);
  return units;
}

void restate_completeness(std::vector<UnitRecord>& units, const std::vector<PassRecord>& records,
                          const std::vector<ManualSeam>& manual, const PlannedPasses& plan,
                          const Findings& findings) {
  Findings found_before;
  CompletenessCheck check(&plan, found_before);
  for (const UnitRecord& unit : units) check.expect({unit.unit_serial, unit.weldment});
  for (const PassRecord& record : records) check.add_robot({&record, !record.schedule.empty(), false, 0});
  for (const ManualSeam& seam : manual) check.add_manual(seam);
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
