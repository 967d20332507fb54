#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Pieces of a part that aren't there yet.
struct CartArrival {
  int quantity = 0;
  double time_s = 0;  ///< since the line's start, or a clock's reading (plan/clock_time.hpp)
  bool is_clock = false;
  std::string place;  ///< FILE:LINE:COLUMN
};

/// A part on a cart, its lines added up.
struct CartPart {
  std::string part;
  int quantity = 0;                  ///< that is there
  std::vector<std::string> heats{};  ///< each once, in the file's order
  std::vector<CartArrival> expected{};
};

using Cart = std::vector<CartPart>;

/// Reads a cart: CSV with the columns part, quantity and, optionally, heat and arrives. A part may have
/// several lines (heats). A line with `arrives` (a local time YYYY-MM-DDThh:mm, or seconds since the line's
/// start) isn't there before. InputError at FILE:LINE:COLUMN: a column that is missing, a line without part,
/// a quantity that is no whole number of 1 or more, an arrival that is neither.
Cart parse_cart(std::string_view text, const std::string& file);

Cart read_cart(const std::string& path);

struct PartDifference {
  std::string part;
  int needed = 0, found = 0;
  int quantity() const { return needed > found ? needed - found : found - needed; }
};

/// A cart against the weldment's parts. Wrong quantities are in `missing` or `extra` with both figures; a
/// part that the weldment doesn't have is `extra` with 0 needed. Parts too many keep no unit from going.
struct CartCheck {
  std::vector<PartDifference> missing, extra;
  bool complete() const { return missing.empty(); }
};
/// With what is there now.
CartCheck check_cart(const Weldment& weldment, const Cart& cart);

/// The arrival with which the last missing part is there: of each part, that by which enough have come, and
/// of all parts the latest. Empty where one stays missing, or none is. `time_of` gives an arrival's time, by
/// which they are compared.
std::optional<double> complete_from_s(const Cart& cart, const CartCheck& check,
                                      const std::function<double(const CartArrival&)>& time_of);

/// "1 BD-gusset of 4 is missing; 1 BD-strip too many (3 for 2)"; empty where complete.
Sentence cart_sentence(const CartCheck& check);

/// The parts too many alone.
Sentence extra_sentence(const CartCheck& check);

/// kit.part.missing (fail) and kit.part.extra (warn). Source of the rule: a plan's part list is the limit.
Findings cart_findings(const std::string& where, const CartCheck& check);

}  // namespace seamtakt
