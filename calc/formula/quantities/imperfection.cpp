#include "formula/tolerance/imperfection.hpp"

#include "base/sentences/name_list.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"level", OptionKind::text, "", "quality level", nullptr, "B|C|D"},
    {"throat", OptionKind::number, "mm", "nominal throat", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "plate thickness; above 3 mm is taken where left out", nullptr,
     nullptr},
    {"face-width", OptionKind::number, "mm", "width of the weld's face", nullptr, nullptr},
    {"short", OptionKind::flag, "", "short imperfections (25 mm in any 100 mm at most)", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"limits_mm.convexity", "mm", "convexity (503)"},
    {"limits_mm.excess_throat", "mm", "excess throat (5214)"},
    {"limits_mm.undersize_throat", "mm", "insufficient throat (5213)"},
    {"limits_mm.unequal_legs", "mm", "unequal legs (512)"},
    {"limits_mm.root_gap", "mm", "root gap of the fillet (617)"},
    {"limits_mm.undercut", "mm", "undercut (5011, 5012)"},
};

constexpr const FormulaNote* notes[] = {&imperfection_notes[0], &imperfection_notes[1],
                                        &imperfection_notes[2], &imperfection_notes[3],
                                        &imperfection_notes[4], &imperfection_notes[5]};

template <class Real>
struct Sizes {
  std::optional<Real> throat_mm, thickness_mm, face_width_mm;

  const std::optional<Real>& of(ImperfectionSize size) const {
    if (size == ImperfectionSize::throat) return throat_mm;
    return size == ImperfectionSize::thickness ? thickness_mm : face_width_mm;
  }
};

const char* symbol_of(ImperfectionSize size) {
  if (size == ImperfectionSize::throat) return "a";
  return size == ImperfectionSize::thickness ? "t" : "b";
}

/// Why a limit is null, where the standard rather than a missing option is the reason.
void note_no_limit(Permission permission, const char* key, const std::string& level, Findings& findings) {
  const auto add = [&](const char* rule, SentenceKey sentence, const char* source) {
    findings.push_back(remark(rule, key, Sentence(sentence, {{"level", level}}), source));
  };
  switch (permission) {
    case Permission::limited:
      break;
    case Permission::unlimited:
      add("imperfection.unlimited", "imperfection.unlimited"_key, "ISO 5817:2014, Table 1, recalled");
      break;
    case Permission::not_permitted:
      add("imperfection.not-permitted", "imperfection.not-permitted"_key, "ISO 5817:2014, Table 1");
      break;
    case Permission::only_if_short:
      add("imperfection.only-if-short", "imperfection.only-if-short"_key, "ISO 5817:2014, Table 1");
      break;
    case Permission::no_row:
      findings.push_back(
          remark("imperfection.no-row", key, Sentence("imperfection.no-row"_key), "ISO 5817:2014, Table 1"));
      break;
  }
}

template <class Real>
void set_limit(std::size_t which, const ImperfectionRule& rule, const Sizes<Real>& sizes,
               Results<Real>& out) {
  const std::optional<Real>& size = sizes.of(rule.factor_of);
  if (!size) return;
  const Real limit = imperfection_limit_mm(rule, *size);
  const char* key = imperfection_notes[which].result;
  out.set(key, limit);
  const Real cap(rule.cap_mm.value_or(value_of(limit)));
  out.explain(imperfection_notes[which], limit, "mm",
              {{"c", "constant of the row", Real(rule.constant_mm), "mm"},
               {"f", "factor of the row", Real(rule.factor), ""},
               {symbol_of(rule.factor_of), "size that the row goes by", *size, "mm"},
               {"cap", "largest, where the row has one", cap, "mm"}});
  if (rule.basis == SourceBasis::recalled)
    out.findings.push_back(remark("imperfection.recalled", key, Sentence("formula.row-recalled"_key),
                                  "ISO 5817:2014, Table 1, recalled"));
}

/// Undercut depends on the thickness: without it there is no limit, not even whether undercut is permitted.
template <class Real>
bool decided_by_missing_thickness(std::string_view imperfection, const Sizes<Real>& sizes) {
  return imperfection == "undercut" && !sizes.thickness_mm;
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  ImperfectionCase weld;
  weld.level = in.text("level");
  if (weld.level.empty()) throw InputError("--level", "nothing"_word, one_of_names({"B", "C", "D"}));
  const Sizes<Real> sizes{find_positive(in, "throat"), find_positive(in, "thickness"),
                          find_positive(in, "face-width")};
  if (!sizes.throat_mm && !sizes.thickness_mm && !sizes.face_width_mm)
    throw InputError("--throat", "nothing"_word, "a value, or --thickness or --face-width"_word);
  weld.thickness_mm = sizes.thickness_mm ? value_of(*sizes.thickness_mm) : 0;
  weld.short_imperfection = in.has("short");
  for (std::size_t which = 0; which < std::size(fillet_imperfections); ++which) {
    if (decided_by_missing_thickness(fillet_imperfections[which], sizes)) continue;
    const ImperfectionJudgement judged = judge_imperfection(fillet_imperfections[which], weld);
    if (judged.permission == Permission::limited)
      set_limit(which, *judged.rule, sizes, out);
    else
      note_no_limit(judged.permission, imperfection_notes[which].result, weld.level, out.findings);
  }
  if (sizes.thickness_mm)
    add_if_any(out.findings, outside_range({"imperfection.thickness.range", "The plate thickness"_word, 0.5,
                                            1e6, "mm", "ISO 5817:2014, 1"},
                                           weld.thickness_mm, "--thickness"));
}

}  // namespace

const Quantity imperfection_quantity{
    "imperfection", "largest imperfections of a fillet by quality level (ISO 5817)",
    options,        results,
    notes,          compute<double>,
    compute<Dual>};

}  // namespace seamtakt
