#include "formula/wire/shielding_gas.hpp"

#include <gtest/gtest.h>

#include "base/csv/csv.hpp"

namespace seamtakt {
namespace {

constexpr auto argon = GasComponent::argon;
constexpr auto co2 = GasComponent::carbon_dioxide;
constexpr auto oxygen = GasComponent::oxygen;

void expect_share(const char* designation, GasComponent component, double above, double up_to) {
  auto gas = shielding_gas_of(designation);
  ASSERT_TRUE(gas) << designation;
  EXPECT_DOUBLE_EQ(gas->share(component).above, above) << designation;
  EXPECT_DOUBLE_EQ(gas->share(component).up_to, up_to) << designation;
}

TEST(ShieldingGas, ReadsMainGroupsWithAndWithoutTheStandardsNumber) {
  for (const char* text : {"M21", "ISO 14175 M21", "ISO 14175-M21", "ISO 14175: M21"})
    expect_share(text, co2, 15, 25);
  expect_share("M21", argon, 75, 85);
  expect_share("C1", co2, 100, 100);
  expect_share("I1", argon, 100, 100);
}

TEST(ShieldingGas, ReadsPercentagesAfterTheGroup) {
  for (const char* text : {"M21-ArC-18", "ISO 14175 M21-ArC-18", "ISO 14175-M21-ArC-18"}) {
    expect_share(text, co2, 18, 18);
    expect_share(text, argon, 82, 82);
  }
  expect_share("M24-ArCO-12/2", co2, 12, 12);
  expect_share("M24-ArCO-12/2", oxygen, 2, 2);
  expect_share("M24-ArCO-12/2", argon, 86, 86);
  expect_share("I3-ArHe-30", GasComponent::helium, 30, 30);
  expect_share("M13-ArO-2", oxygen, 2, 2);
}

TEST(ShieldingGas, ReadsMixes) {
  for (const char* text :
       {"98Ar 2O2", "98Ar-2O2", "98Ar/2O2", "98 Ar 2 O2", "98% Ar 2% O2", "Ar 2O2", "2O2 Ar", "2O2+98Ar"})
    expect_share(text, oxygen, 2, 2);
  expect_share("82Ar 18CO2", co2, 18, 18);
  expect_share("Ar 18CO2", argon, 82, 82);
  expect_share("CO2", co2, 100, 100);
  expect_share("100CO2", co2, 100, 100);
  expect_share("97.5Ar 2.5CO2", co2, 2.5, 2.5);
}

TEST(ShieldingGas, RefusesWhatIsNeither) {
  for (const char* text : {"",
                           " ",
                           "X1",
                           "M99",
                           "m21",
                           "ISO 14175",
                           "ISO 14175 82Ar 18CO2",
                           "80Ar 30CO2",
                           "50Ar 20CO2",
                           "Ar CO2",
                           "98Ar 2Xe",
                           "M21-ArC-30",
                           "M21-ArC",
                           "M21-ArC-",
                           "M21-ArC-18/2",
                           "M21-Q-18",
                           "110Ar",
                           "-5Ar",
                           "50Ar 50Ar",
                           "nan Ar",
                           "1e2Ar",
                           "Ar 100CO2",
                           "98Ar 2"})
    EXPECT_FALSE(shielding_gas_of(text)) << text;
}

TEST(ShieldingGas, NeverLeavesSharesOutsideZeroToAHundred) {
  for (const char* text : {"M35", "M33", "C2", "N5", "I3", "R2", "99.9Ar 0.4O2", "I3-ArHe-95"}) {
    auto gas = shielding_gas_of(text);
    ASSERT_TRUE(gas) << text;
    for (const auto& share : gas->shares) {
      EXPECT_GE(share.above, 0) << text;
      EXPECT_LE(share.up_to, 100) << text;
      EXPECT_LE(share.above, share.up_to) << text;
    }
  }
}

}  // namespace
}  // namespace seamtakt
