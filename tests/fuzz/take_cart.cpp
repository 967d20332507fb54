// Carts of parts.
#include "fuzz/fuzz_target.hpp"
#include "line/cart.hpp"

namespace seamtakt::fuzz {

bool take_cart(std::string_view input) {
  Weldment weldment;
  weldment.id = "BD";
  for (const char* part : {"BD-rail", "BD-cross"}) {
    weldment.parts.emplace_back();
    weldment.parts.back().id = part;
    weldment.parts.back().quantity = 2;
  }
  return is_taken([&] {
    const Cart cart = parse_cart(input, "cart.csv");
    for (const CartPart& part : cart)
      promise(!part.part.empty() && (part.quantity > 0 || !part.expected.empty()),
              "a cart's part has a name and is there or comes");
    const CartCheck check = check_cart(weldment, cart);
    promise(check.complete() != any_failed(cart_findings("BD", check)), "what isn't complete fails");
    complete_from_s(cart, check, [](const CartArrival& arrival) { return arrival.time_s; });
    cart_sentence(check).english();
  });
}

}  // namespace seamtakt::fuzz
