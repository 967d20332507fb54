#pragma once

#include <string>
#include <vector>

#include "line/cart.hpp"
#include "line/orders.hpp"

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

/// The units that go into the line, in their order, and those that wait.
struct Release {
  std::vector<Order> orders;  ///< all
  std::vector<Order> released;
  std::vector<WaitingUnit> waiting;
};

/// Every order is released.
Release release_all(const std::vector<Order>& orders);

/// Completeness is the condition of release: the cart of a unit is FOLDER/SERIAL.csv; a unit whose cart isn't
/// there, lacks parts or carries others waits, and the next complete one goes. InputError: the folder isn't
/// there, or a cart can't be read.
Release release_complete(const std::vector<Order>& orders, const Plan& plan, const std::string& folder);

/// line.cart.incomplete (warn), one a unit that waits for its cart.
Findings waiting_findings(const Release& release);

}  // namespace seamtakt
