#pragma once

#include <string>
#include <vector>

#include "line/cart.hpp"
#include "line/orders.hpp"
#include "line/work_hours.hpp"

namespace seamtakt {

/// A unit that isn't released, and what it waits for.
struct WaitingUnit {
  Order order;
  CartCheck cart;
  bool has_cart = false;
  int unwelded_seams = 0;        ///< above 0: it isn't run, because so many of its seams are unwelded
  Sentence sentence;             ///< "1 BD-gusset is missing (3 of 4 there)"
  std::string released_instead;  ///< the serial that takes its place; empty: none is left
};

/// A unit that goes, and what there is to say of its cart.
struct CartNote {
  Order order;
  Sentence sentence;           ///< what is missing or too much
  double complete_from_s = 0;  ///< elapsed time at which it is complete; 0: it is
};

/// The units that go into the line, in their order, and those that wait.
struct Release {
  std::vector<Order> orders;    ///< all, as if every cart were complete
  std::vector<Order> released;  ///< those that become complete later too: Order::available_s
  std::vector<WaitingUnit> waiting{};
  std::vector<CartNote> notes{};
};

/// Every order is released.
Release release_all(const std::vector<Order>& orders);

/// Completeness is the condition of release: the cart of a unit is FOLDER/SERIAL.csv; a unit whose cart isn't
/// there or lacks parts waits, and the next complete one goes. Where all that it lacks arrives, it is back in
/// its place once the last part is there. Parts too many keep it from nothing. InputError: the folder isn't
/// there, a cart can't be read, or a part arrives at a time of the clock and the plan has no calendar.
Release release_complete(const std::vector<Order>& orders, const Plan& plan, const std::string& folder);

/// line.cart.incomplete (warn), one a unit that waits for its cart; line.cart.expected (warn), one a unit
/// whose cart is complete later; line.cart.extra (warn), one a unit that goes with parts too many. `hours`
/// put times on the clock; nullptr: hours since the start.
Findings waiting_findings(const Release& release, const WorkHours* hours = nullptr);

}  // namespace seamtakt
