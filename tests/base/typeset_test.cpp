// Notes of formulas are written in plain letters; people read raised digits, degrees and points.
#include "base/sentences/typeset.hpp"

#include <gtest/gtest.h>

namespace seamtakt {

namespace {

TEST(Typeset, whole_powers_are_raised) {
  EXPECT_EQ(typeset("10^5"), "10⁵");
  EXPECT_EQ(typeset("R = sqrt(x^2 + y^2 + z^2)"), "R = sqrt(x² + y² + z²)");
  EXPECT_EQ(typeset("(z - 2*i*d)^2, all whole i"), "(z - 2·i·d)², all whole i");
  EXPECT_EQ(typeset("v^10 and s^-1"), "v¹⁰ and s⁻¹");
}

TEST(Typeset, other_powers_stay) {
  EXPECT_EQ(typeset("25.4^0.7"), "25.4^0.7");
  EXPECT_EQ(typeset("a^n"), "a^n");
  EXPECT_EQ(typeset("a^"), "a^");
  EXPECT_EQ(typeset("a^-"), "a^-");
  EXPECT_EQ(typeset("the power is v^2."), "the power is v².");
}

TEST(Typeset, signs_of_tolerance_product_and_order) {
  EXPECT_EQ(typeset("+-15 % with tabulated coefficients"), "±15 % with tabulated coefficients");
  EXPECT_EQ(typeset("f = mean(U*I)/(mean U * mean I)"), "f = mean(U·I)/(mean U · mean I)");
  EXPECT_EQ(typeset("N/(a*L*n*sqrt(2)), 6*(a + b)*c"), "N/(a·L·n·sqrt(2)), 6·(a + b)·c");
  EXPECT_EQ(typeset("* a list, a* b, *, a *"), "* a list, a* b, *, a *");
  EXPECT_EQ(typeset("T0 < Tp <= Tm, h >= 0"), "T0 < Tp ≤ Tm, h ≥ 0");
  EXPECT_EQ(typeset("a note* and another*"), "a note* and another*");
}

TEST(Typeset, units_after_a_number) {
  EXPECT_EQ(typeset("10 min period, 40 degC ambient"), "10 min period, 40 °C ambient");
  EXPECT_EQ(typeset("dry and not below 5 C"), "dry and not below 5 °C");
  EXPECT_EQ(typeset("60 to 135 deg"), "60 to 135°");
  EXPECT_EQ(typeset("0 < psi < 180 deg; the shorter leg"), "0 < psi < 180°; the shorter leg");
  EXPECT_EQ(typeset("7.85 g/cm3 for steel"), "7.85 g/cm³ for steel");
  EXPECT_EQ(typeset("1-20 ml/100 g, to 1000 MPa"), "1-20 ml/100 g, to 1000 MPa");
}

TEST(Typeset, what_looks_like_a_unit_elsewhere_stays) {
  EXPECT_EQ(typeset("C 0.05-0.32, Si to 0.8"), "C 0.05-0.32, Si to 0.8");
  EXPECT_EQ(typeset("C.3, equation C.8"), "C.3, equation C.8");
  EXPECT_EQ(typeset("for 2 Copper wires"), "for 2 Copper wires");
  EXPECT_EQ(typeset("mild steel in Ar with O2"), "mild steel in Ar with O2");
}

TEST(Typeset, a_text_that_is_set_already_stays) {
  for (const char* text : {"±10 bis 20 % (übliche Praxis)", "T0 unter 450 °C", "60 bis 135°",
                           "7.85 g/cm³ bei Stahl", "v² und A·B", "", " ", "*", "^", "+"})
    EXPECT_EQ(typeset(text), text);
  EXPECT_EQ(typeset(typeset("T^2 <= 5 C +- 2*x")), typeset("T^2 <= 5 C +- 2*x"));
}

}  // namespace

}  // namespace seamtakt
