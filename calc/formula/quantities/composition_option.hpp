#pragma once

#include "formula/metal/composition_text.hpp"
#include "formula/quantities/quantity.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {

/// The composition given by --composition.
template <class Real>
Composition<Real> given_composition(const Inputs<Real>& in) {
  return composition_of<Real>(parse_composition(in.text("composition"), "--composition"));
}

/// A note naming the elements of a formula that weren't reported, and so count as 0.
template <class Real, class Symbols>
void remark_not_reported(const Composition<Real>& composition, const Symbols& symbols, Findings& findings) {
  std::string missing = not_reported(composition, symbols);
  if (missing.empty()) return;
  findings.push_back(remark("composition.not-reported", "--composition",
                            Sentence("composition.not-reported"_key, {{"elements", std::move(missing)}}),
                            "derived, definition of the formula"));
}

}  // namespace seamtakt
