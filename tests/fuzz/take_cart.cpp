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
      promise(!part.part.empty() && part.quantity > 0, "a cart's part has a name and is there");
    const CartCheck check = check_cart(weldment, cart);
    promise(check.complete() == cart_findings("BD", check).empty(), "what isn't complete is a finding");
    cart_sentence(check).english();
  });
}

}  // namespace seamtakt::fuzz
