#include "plan/evaluate/largest_fillet.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

void judge_size(const SeamFacts& facts, const SizeLimit& size, Findings& findings) {
  const RuleLimit& limit = size.limit;
  if (size.is_undersize()) {
    findings.push_back(
        {limit.rule, Severity::fail, facts.place(), size.obtained, size.needed, limit.unit,
         Sentence("fillet.size.undersize"_key, {{"what", limit.what},
                                                {"obtained", UnitValue{size.obtained, limit.unit, 3}},
                                                {"needed", UnitValue{size.needed, limit.unit, 3}}}),
         limit.source});
    return;
  }
  if (guarded_decision(facts.plan) && size.U && size.obtained < size.needed + *size.U)
    findings.push_back(
        {std::string(limit.rule) + ".guard-band", Severity::warn, facts.place(), size.obtained, size.needed,
         limit.unit,
         Sentence("fillet.size.guard-band"_key, {{"what", limit.what},
                                                 {"obtained", UnitValue{size.obtained, limit.unit, 3}},
                                                 {"needed", UnitValue{size.needed, limit.unit, 3}}}),
         limit.source});
}

}  // namespace

void judge_fillet_size(const SeamFacts& facts, Findings& findings) {
  if (facts.seam.groove) return;
  each_size_limit(facts.seam, facts.figures,
                  [&](const SizeLimit& size) { judge_size(facts, size, findings); });
}

// Excess at the gap as drawn: where the parts fit better than at the largest gap the throat is largest.
void judge_excess_throat(const SeamFacts& facts, Findings& findings) {
  if (facts.seam.quality.empty() || !facts.figures.throat_mm) return;
  const double obtained = *facts.figures.throat_mm, needed = *facts.figures.throat_needed_mm;
  if (obtained <= needed) return;
  const auto allowed = excess_throat(facts.seam, needed);
  if (!allowed || obtained <= (needed + allowed->excess_mm) * (1 + size_tolerance)) return;
  findings.push_back(
      {"fillet.throat.excess", Severity::fail, facts.place(), obtained, needed + allowed->excess_mm, "mm",
       Sentence("fillet.throat.excess"_key, {{"throat", UnitValue{obtained, "mm", 3}},
                                             {"level", facts.seam.quality},
                                             {"excess", UnitValue{allowed->excess_mm, "mm", 3}},
                                             {"needed", UnitValue{needed, "mm", 3}}}),
       allowed->source});
}

void judge_groove_fill(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.groove) return;
  each_size_limit(facts.seam, facts.figures, [&](const SizeLimit& area) {
    if (!area.is_undersize()) return;
    findings.push_back(
        {area.limit.rule, Severity::fail, facts.place(), area.obtained, area.needed, area.limit.unit,
         Sentence("groove.area.underfilled"_key, {{"area", UnitValue{area.obtained, area.limit.unit}},
                                                  {"needed", UnitValue{area.needed, area.limit.unit}}}),
         area.limit.source});
  });
}

}  // namespace seamtakt
