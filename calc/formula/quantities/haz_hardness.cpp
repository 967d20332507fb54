#include "formula/metal/haz_hardness.hpp"

#include <array>

#include "formula/input_checks.hpp"
#include "formula/quantities/composition_option.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"composition", OptionKind::text, "", "mass %, e.g. C=0.17,Mn=1.45", nullptr, nullptr},
    {"cooling-time", OptionKind::number, "s", "cooling time t8/5", nullptr, nullptr},
    {"method", OptionKind::text, "", "formulas used (both recalled)", "yurioka", "yurioka|dueren"},
};

constexpr ResultSpec results[] = {
    {"hardness_HV", "HV", "highest hardness (+-56 HV)"},
    {"martensite_hardness_HV", "HV", "all martensite"},
    {"bainite_hardness_HV", "HV", "all bainite"},
};

constexpr const FormulaNote* notes[] = {&yurioka_hardness_note,  &yurioka_martensite_note,
                                        &yurioka_bainite_note,   &dueren_hardness_note,
                                        &dueren_martensite_note, &dueren_bainite_note};

constexpr std::array<std::string_view, 11> yurioka_elements = {"C",  "Si", "Mn", "Cu", "Ni", "Cr",
                                                               "Mo", "V",  "Nb", "B",  "N"};
constexpr std::array<std::string_view, 8> dueren_elements = {"C", "Si", "Mn", "Cu", "Cr", "Ni", "Mo", "V"};

constexpr ValidRange dueren_time_range{
    "haz-hardness.cooling-time.range", "The cooling time"_word, dueren_fastest_s, dueren_slowest_s, "s",
    "Dueren and Lorenz, recalled"};

/// Hardness that codes commonly allow (recalled): the highest one passed is worth saying.
void note_common_limit(double hardness_HV, Findings& findings) {
  struct CommonLimit {
    double hardness_HV;
    SentenceKey sentence;
    const char* source;
  };
  constexpr CommonLimit limits[] = {
      {380, "haz-hardness.common-limit.procedure-test"_key, "ISO 15614-1, recalled"},
      {350, "haz-hardness.common-limit.structural"_key, "common practice, no source"},
      {250, "haz-hardness.common-limit.sour-service"_key, "common practice, no source"},
  };
  for (const CommonLimit& limit : limits) {
    if (hardness_HV <= limit.hardness_HV) continue;
    Finding finding =
        remark("haz-hardness.common-limit", "hardness_HV",
               Sentence(limit.sentence, {{"limit", UnitValue{limit.hardness_HV, "HV"}}}), limit.source);
    finding.value = hardness_HV;
    finding.limit = limit.hardness_HV;
    finding.unit = "HV";
    findings.push_back(std::move(finding));
    return;
  }
}

template <class Real>
void compute_yurioka(const HardeningElements& e, const std::optional<Real>& time, Results<Real>& out) {
  const HardnessLimits limits = yurioka_limits(e);
  const Real HM(limits.martensite_HV), HB(limits.bainite_HV);
  out.set("martensite_hardness_HV", HM);
  out.set("bainite_hardness_HV", HB);
  out.explain(yurioka_martensite_note, HM, "HV", {{"C", "carbon", Real(e.C), "%"}});
  out.explain(yurioka_bainite_note, HB, "HV",
              {{"CE_II", "carbon equivalent of bainite", Real(yurioka_bainite_equivalent_pct(e)), "%"}});
  add_if_any(out.findings, outside_range(yurioka_carbon_range, e.C, "--composition"));
  add_if_any(out.findings, outside_range(yurioka_nitrogen_range, e.N, "--composition"));
  if (!time) return;
  const std::optional<Real> hardness = yurioka_hardness_HV(e, *time);
  if (!hardness) {
    Finding finding = remark("haz-hardness.no-transition", "hardness_HV",
                             Sentence("haz-hardness.no-transition"_key), "Yurioka et al. 1987, recalled");
    finding.severity = Severity::warn;
    out.findings.push_back(std::move(finding));
    return;
  }
  const TransformationTimes times = yurioka_times(e);
  out.set("hardness_HV", *hardness);
  out.explain(yurioka_hardness_note, *hardness, "HV",
              {{"HM", "all martensite", HM, "HV"},
               {"HB", "all bainite", HB, "HV"},
               {"t", "cooling time t8/5", *time, "s"},
               {"tM", "all martensite up to", Real(times.martensite_s), "s"},
               {"tB", "no martensite from", Real(times.bainite_s), "s"}});
  note_common_limit(value_of(*hardness), out.findings);
}

template <class Real>
void compute_dueren(const HardeningElements& e, const std::optional<Real>& time, Results<Real>& out) {
  const HardnessLimits limits = dueren_limits(e);
  const Real HM(limits.martensite_HV), HB(limits.bainite_HV), A(dueren_alloy(e)), C(e.C);
  out.set("martensite_hardness_HV", HM);
  out.set("bainite_hardness_HV", HB);
  out.explain(dueren_martensite_note, HM, "HV", {{"C", "carbon", C, "%"}});
  out.explain(dueren_bainite_note, HB, "HV", {{"C", "carbon", C, "%"}, {"A", "alloy content", A, "%"}});
  if (!time) return;
  const Real hardness = dueren_hardness_HV(e, *time);
  out.set("hardness_HV", hardness);
  out.explain(dueren_hardness_note, hardness, "HV",
              {{"C", "carbon", C, "%"},
               {"A", "alloy content", A, "%"},
               {"L", "log10 of the cooling time in s", Real(std::log10(value_of(*time))), ""}});
  add_if_any(out.findings, outside_range(dueren_time_range, value_of(*time), "--cooling-time"));
  note_common_limit(value_of(hardness), out.findings);
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  require_composition(in);
  const Composition<Real> composition = given_composition(in);
  if (!composition.was_reported("C")) throw InputError("--composition", "no carbon"_word, "at least C="_word);
  const HardeningElements elements = hardening_elements(composition);
  const std::optional<Real> time = find_positive(in, "cooling-time");
  if (in.text("method") == "dueren") {
    compute_dueren(elements, time, out);
    remark_not_reported(composition, dueren_elements, out.findings);
  } else {
    compute_yurioka(elements, time, out);
    remark_not_reported(composition, yurioka_elements, out.findings);
  }
}

}  // namespace

const Quantity haz_hardness_quantity{
    "haz-hardness", "highest hardness of the heat-affected zone (recalled formulas, +-56 HV)",
    options,        results,
    notes,          compute<double>,
    compute<Dual>};

}  // namespace seamtakt
