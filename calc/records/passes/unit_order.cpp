#include "records/passes/unit_order.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/sentences/place_sentence.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/heat/handbook_steel.hpp"
#include "formula/heat/interpass.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

/// Two passes whose times can be compared.
bool comparable(const PassRecord& a, const PassRecord& b) {
  return a.has_calendar_time ? b.has_calendar_time : !b.has_calendar_time && a.source == b.source;
}

/// Shortest time after a pass in which its seam cools to the limit of the next; empty where nothing limits
/// it.
std::optional<double> wait_needed_s(const PassRecord& before, const Seam& seam,
                                    const Schedule& schedule_before, const Schedule& next) {
  if (!next.limits || !next.limits->interpass_C || !next.limits->interpass_C->upper ||
      !before.heat_input_kJ_mm)
    return std::nullopt;
  const double rise = *next.limits->interpass_C->upper - schedule_before.preheat_C;
  const auto shape = shape_factors_of(seam.joint);
  if (rise <= 0 || !shape) return std::nullopt;
  const double Q = *before.heat_input_kJ_mm * 1000;
  const double thinner = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  return std::max(interpass_wait_thick_s(Q, rise, handbook_conductivity_W_mmK, shape->f3),
                  interpass_wait_thin_s(Q, thinner, rise, handbook_conductivity_W_mmK,
                                        handbook_heat_capacity_J_mm3K, shape->f2));
}

/// Passes of one unit, by seam and pass; of a repeated pass the last.
class UnitOrder {
 public:
  UnitOrder(const PlannedPasses& plan, Findings& findings) : plan_(plan), findings_(findings) {}

  void add(const PassRecord& record) { passes_[record.seam][*record.pass] = &record; }

  void check() const {
    for (const auto& [seam_id, passes] : passes_) {
      const Seam* seam = plan_.seam(passes.begin()->second->weldment, seam_id);
      if (seam == nullptr) continue;
      const PassRecord* before = nullptr;
      for (const auto& [number, record] : passes) {
        if (before != nullptr && comparable(*before, *record)) check_over(*before, *record, *seam);
        before = record;
      }
      for (const std::string& earlier : seam->after) check_after(earlier, *passes.begin()->second);
    }
  }

 private:
  void check_over(const PassRecord& before, const PassRecord& record, const Seam& seam) const {
    const double gap_s = static_cast<double>(record.first_arc_ns - before.last_arc_ns) / 1e9;
    if (gap_s < 0) {
      findings_.push_back({"record.order.passes", Severity::fail, record.place(), gap_s, 0.0, "s",
                           Sentence("record.order.passes"_key, {{"before", place_sentence(before.place())}}),
                           plan_limit});
      return;
    }
    const auto planned = plan_.find(record.weldment, record.seam, *record.pass);
    const auto under = plan_.find(before.weldment, before.seam, *before.pass);
    if (!planned || !under || record.interpass_C || *record.pass != *before.pass + 1) return;
    const auto wait = wait_needed_s(before, seam, *under->schedule, *planned->schedule);
    if (!wait || gap_s >= *wait) return;
    findings_.push_back({"record.interpass.soon", Severity::warn, record.place(), gap_s, *wait, "s",
                         Sentence("record.interpass.soon"_key,
                                  {{"after", UnitValue{gap_s, "s"}}, {"needed", UnitValue{*wait, "s"}}}),
                         "adams (recalled); plan limit"});
  }

  void check_after(const std::string& earlier, const PassRecord& first) const {
    const auto found = passes_.find(earlier);
    if (found == passes_.end()) return;
    const PassRecord& last = *found->second.rbegin()->second;
    if (!comparable(last, first) || first.first_arc_ns >= last.last_arc_ns) return;
    findings_.push_back({"record.order.seams", Severity::warn, first.place(),
                         static_cast<double>(first.first_arc_ns - last.last_arc_ns) / 1e9, 0.0, "s",
                         Sentence("record.order.seams"_key, {{"before", place_sentence(last.place())}}),
                         plan_limit});
  }

  const PlannedPasses& plan_;
  Findings& findings_;
  std::map<std::string, std::map<int, const PassRecord*>> passes_;
};

}  // namespace

void check_unit_order(const std::vector<PassRecord>& records, const PlannedPasses& plan, Findings& findings) {
  std::map<std::pair<std::string, std::string>, UnitOrder> units;
  for (const PassRecord& record : records)
    if (record.pass && !record.schedule.empty() && record.arc_time_s > 0)
      units.try_emplace({record.unit_serial, record.weldment}, plan, findings).first->second.add(record);
  for (const auto& [unit, order] : units) order.check();
}

}  // namespace seamtakt
