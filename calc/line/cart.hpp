#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A part on a cart, its lines added up.
struct CartPart {
  std::string part;
  int quantity = 0;
  std::vector<std::string> heats;  ///< each once, in the file's order
};

using Cart = std::vector<CartPart>;

/// Reads a cart: CSV with the columns part, quantity and, optionally, heat. A part may have several lines
/// (heats). InputError at FILE:LINE:COLUMN: a column that is missing, a line without part, a quantity that is
/// no whole number of 1 or more.
Cart parse_cart(std::string_view text, const std::string& file);

Cart read_cart(const std::string& path);

struct PartDifference {
  std::string part;
  int needed = 0, found = 0;
  int quantity() const { return needed > found ? needed - found : found - needed; }
};

/// A cart against the weldment's parts. Wrong quantities are in `missing` or `extra` with both figures; a
/// part that the weldment doesn't have is `extra` with 0 needed.
struct CartCheck {
  std::vector<PartDifference> missing, extra;
  bool complete() const { return missing.empty() && extra.empty(); }
};
CartCheck check_cart(const Weldment& weldment, const Cart& cart);

/// "1 BD-gusset of 4 is missing; 1 BD-strip too many (3 for 2)"; empty where complete.
Sentence cart_sentence(const CartCheck& check);

/// kit.part.missing and kit.part.extra (fail). Source of the rule: a plan's part list is the limit.
Findings cart_findings(const std::string& where, const CartCheck& check);

}  // namespace seamtakt
