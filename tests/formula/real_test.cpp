#include "formula/real.hpp"

#include <gtest/gtest.h>

namespace seamtakt {
namespace {

/// A function written once over its number type, and its name.
struct OneArgument {
  const char* name;
  double (*of_double)(double);
  Dual (*of_dual)(const Dual&);
};

#define FUNCTION(expression)                    \
  OneArgument {                                 \
#expression,                                  \
        [](double x) -> double {                  \
          using namespace std;                    \
          return expression;                      \
        },                                        \
        [](const Dual& x) -> Dual { return expression; } \
  }

const OneArgument functions[] = {
    FUNCTION(-x),          FUNCTION(x + x),         FUNCTION(x - 2 * x * x), FUNCTION(x* x* x),
    FUNCTION((x + 1) / x), FUNCTION(3.0 / x),       FUNCTION(x / 3.0),       FUNCTION(2.0 - x),
    FUNCTION(2.0 + x),     FUNCTION(x - 2.0),       FUNCTION(abs(x)),        FUNCTION(abs(-x)),
    FUNCTION(sqrt(x)),     FUNCTION(exp(x)),        FUNCTION(log(x)),        FUNCTION(pow(x, 2.5)),
    FUNCTION(sin(x)),      FUNCTION(cos(x)),        FUNCTION(tan(x)),        FUNCTION(acos(x)),
    FUNCTION(tanh(x)),     FUNCTION(arc_tangent(x))};
#undef FUNCTION

TEST(Dual, HasTheValueAndTheSlopeOfEachFunction) {
  constexpr double step = 1e-6;
  for (const auto& [name, of_double, of_dual] : functions)
    for (const double x : {0.2, 0.45, 0.9}) {
      const Dual result = of_dual(seeded(x, 7));
      EXPECT_DOUBLE_EQ(result.value(), of_double(x)) << name << " at " << x;
      const double slope = (of_double(x + step) - of_double(x - step)) / (2 * step);
      EXPECT_NEAR(result.derivatives()[7], slope, 1e-7 * (1 + std::abs(slope))) << name << " at " << x;
      EXPECT_EQ(result.derivatives()[6], 0) << name;
    }
}

TEST(Dual, KeepsTheDerivativesOfItsInputsApart) {
  const Dual a = seeded(3, 0), b = seeded(4, 23), product = a * b, quotient = a / b;
  EXPECT_EQ(product.derivatives()[0], 4);
  EXPECT_EQ(product.derivatives()[23], 3);
  EXPECT_EQ(quotient.derivatives()[0], 0.25);
  EXPECT_EQ(quotient.derivatives()[23], -3.0 / 16);
}

TEST(Dual, ComparesByItsValue) {
  EXPECT_TRUE(seeded(3, 0) == seeded(3, 1));
  EXPECT_TRUE(seeded(3, 0) < 4.0);
  EXPECT_TRUE(5.0 > seeded(4, 2));
}

TEST(Dual, MayBeItsOwnOperand) {
  Dual x = seeded(3, 1);
  const Dual& itself = x;
  x *= itself;
  EXPECT_EQ(x.value(), 9);
  EXPECT_EQ(x.derivatives()[1], 6);
  x /= itself;
  EXPECT_EQ(x.value(), 1);
  EXPECT_EQ(x.derivatives()[1], 0);
}

}  // namespace
}  // namespace seamtakt
