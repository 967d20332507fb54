#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <map>

#include "plan/qualification_basis.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

constexpr double yield_S355_MPa = 355;
/// Of a procedure for steels above S355, and of any.
constexpr int short_years = 1, long_years = 3;

/// The nominal yield strength in a steel's designation ("EN 10025-2 S355J2": 355); 0 where there is none.
double nominal_yield_MPa(std::string_view standard) {
  const auto is_digit = [&](std::size_t i) {
    return i < standard.size() && std::isdigit(static_cast<unsigned char>(standard[i])) != 0;
  };
  for (std::size_t at = 0; at < standard.size(); ++at)
    if (standard[at] == 'S' && (at == 0 || standard[at - 1] == ' ') && is_digit(at + 1) && is_digit(at + 2) &&
        is_digit(at + 3) && !is_digit(at + 4))
      return std::strtod(std::string(standard.substr(at + 1, 3)).c_str(), nullptr);
  return 0;
}

/// The same day some years later; both as YYYY-MM-DD.
std::string years_after(const std::string& date, int years) {
  return std::to_string(std::atoi(date.substr(0, 4).c_str()) + years) + date.substr(4);
}

/// The strongest steel of each qualification that is old enough to have lapsed for some steel.
std::map<std::string_view, double> strongest_steels(const Plan& plan, const PlanIndex& index,
                                                    std::string_view date) {
  std::map<std::string_view, double> strongest;
  for (const Qualification& qualification : plan.qualifications)
    if (!qualification.last_used.empty() && date > years_after(qualification.last_used, short_years))
      strongest[qualification.id] = 0;
  if (strongest.empty()) return strongest;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (const std::string& id : seam.schedules) {
        const auto at = strongest.find(index.schedule(id)->qualification);
        if (at == strongest.end()) continue;
        for (const std::string& metal : seam.base_metals)
          at->second = std::max(at->second, nominal_yield_MPa(index.base_metal(metal)->standard));
      }
  return strongest;
}

/// What a lapse asks for; an empty key where there is none.
struct Lapse {
  std::optional<SentenceKey> key;
  int years = 0;
  Severity severity = Severity::warn;
};

Lapse lapse_of(const std::string& last_used, std::string_view date, bool is_strong) {
  const auto is_over = [&](int years) { return date > years_after(last_used, years); };
  if (!is_strong && is_over(long_years))
    return {"qualification.lapsed.macro"_key, long_years, Severity::warn};
  if (is_strong && is_over(long_years))
    return {"qualification.lapsed.new-test"_key, long_years, Severity::fail};
  if (is_strong && is_over(short_years))
    return {"qualification.lapsed.production-test"_key, short_years, Severity::warn};
  return {};
}

}  // namespace

// EN 1090-2 lets a procedure that wasn't welded for long be used again after a test only.
void judge_qualification_lapse(const Plan& plan, const PlanIndex& index, std::string_view date,
                               Findings& findings) {
  if (date.empty()) return;
  const auto strongest = strongest_steels(plan, index, date);
  for (const Qualification& qualification : plan.qualifications) {
    const auto at = strongest.find(qualification.id);
    if (at == strongest.end() || qualification_route(qualification.basis) == QualificationRoute::d1_1)
      continue;
    const bool is_strong = at->second > yield_S355_MPa;
    const Lapse lapse = lapse_of(qualification.last_used, date, is_strong);
    if (!lapse.key) continue;
    const auto severity = severity_by_code(plan, "EN 1090-2", lapse.severity);
    if (!severity) continue;
    findings.push_back({"qualification.lapsed",
                        *severity,
                        qualification.id,
                        {},
                        {},
                        "",
                        Sentence(*lapse.key, {{"qualification", qualification.id},
                                              {"date", qualification.last_used},
                                              {"years", lapse.years}}),
                        "EN 1090-2:2008, 7.4.1 (recalled)"});
  }
}

}  // namespace seamtakt
