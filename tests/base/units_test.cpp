#include "base/units/units.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <charconv>
#include <clocale>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <set>

#include "base/error.hpp"

using namespace seamtakt;

namespace {

double in(const char* text, const char* unit) {
  return parse_quantity(text, *find_unit(unit), "--x");
}

std::string unit_refusal(const char* text, const char* unit) {
  try {
    in(text, unit);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

/// Any double whose bits are equally likely, so that all magnitudes occur.
double any_double() {
  const auto bits =
      *rc::gen::resize(100, rc::gen::inRange<std::uint64_t>(0, std::numeric_limits<std::uint64_t>::max()));
  double value;
  std::memcpy(&value, &bits, sizeof value);
  return value;
}

}  // namespace

TEST(UnitTest, whole_factors_keep_typed_values_exact) {
  EXPECT_EQ(in("45 cm/min", "mm/s"), 7.5);
  EXPECT_EQ(in("45cm/min", "mm/s"), 7.5);
  EXPECT_EQ(in("0.5in", "mm"), 12.7);
  EXPECT_EQ(in("1 in", "mm"), 25.4);
  EXPECT_EQ(in("1ft", "mm"), 304.8);
  EXPECT_EQ(in("9 m/min", "mm/s"), 150.0);
  EXPECT_EQ(in("60 mm/min", "mm/s"), 1.0);
  EXPECT_EQ(in("150 in/min", "mm/s"), 63.5);
  EXPECT_EQ(in("0.3kA", "A"), 300.0);
  EXPECT_EQ(in("28000mV", "V"), 28.0);
  EXPECT_EQ(in("25.4 kJ/in", "kJ/mm"), 1.0);
  EXPECT_EQ(in("25400 J/in", "kJ/mm"), 1.0);
  EXPECT_EQ(in("12 kJ/cm", "kJ/mm"), 1.2);
  EXPECT_EQ(in("1200 J/mm", "kJ/mm"), 1.2);
  EXPECT_EQ(in("1 in2", "mm2"), 645.16);
  EXPECT_EQ(in("2 cm4", "mm4"), 20000.0);
  EXPECT_EQ(in("1 in4", "mm4"), 416231.4256);
  EXPECT_EQ(in("1 lb", "g"), 453.59237);
  EXPECT_EQ(in("7850 kg/m3", "g/cm3"), 7.85);
  EXPECT_EQ(in("1 lb/h", "kg/h"), 0.45359237);
  EXPECT_EQ(in("90 min", "s"), 5400.0);
  EXPECT_EQ(in("1 kWh", "kJ"), 3600.0);
  EXPECT_EQ(in("20 %", "%"), 20.0);
  EXPECT_EQ(in("0.04 W/(mm K)", "W/(mm K)"), 0.04);
}

TEST(UnitTest, derived_factors_agree_with_their_definitions) {
  const double pound_force_N = 4.4482216152605, inch_mm = 25.4;
  EXPECT_DOUBLE_EQ(in("1 lbf", "N"), pound_force_N);
  EXPECT_DOUBLE_EQ(in("1 psi", "MPa"), pound_force_N / (inch_mm * inch_mm));
  EXPECT_DOUBLE_EQ(in("1 ksi", "MPa"), 1000 * pound_force_N / (inch_mm * inch_mm));
  EXPECT_DOUBLE_EQ(in("1 lb/in3", "g/cm3"), 453.59237 / std::pow(2.54, 3));
  EXPECT_DOUBLE_EQ(in("1 cfh", "l/min"), std::pow(3.048, 3) / 60);
  EXPECT_DOUBLE_EQ(in("1 rad", "deg"), 180 / std::acos(-1.0));
  EXPECT_DOUBLE_EQ(in("180 deg", "rad"), std::acos(-1.0));
}

TEST(UnitTest, temperatures_have_an_offset_and_differences_do_not) {
  EXPECT_EQ(in("212 F", "C"), 100.0);
  EXPECT_EQ(in("-40 F", "C"), -40.0);
  EXPECT_EQ(in("273.15 K", "C"), 0.0);
  EXPECT_EQ(in("150C", "C"), 150.0);
  const Unit& difference = difference_unit(*find_unit("C"));
  EXPECT_EQ(difference.dimension, Dimension::temperature_difference);
  EXPECT_EQ(parse_quantity("9 F", difference, "--u-x"), 5.0);
  EXPECT_EQ(parse_quantity("5 K", difference, "--u-x"), 5.0);
  EXPECT_EQ(&difference_unit(*find_unit("mm")), find_unit("mm"));
}

TEST(UnitTest, bare_number_has_the_unit_named_by_the_option) {
  EXPECT_EQ(in("7.5", "m/min"), 7.5);
  EXPECT_EQ(in(" 7.5 ", "m/min"), 7.5);
  EXPECT_EQ(in("+7.5e0", "m/min"), 7.5);
  EXPECT_EQ(in(".5", "mm"), 0.5);
  EXPECT_EQ(parse_quantity("0.8", *find_unit(""), "--efficiency"), 0.8);
}

TEST(UnitTest, refuses_with_the_units_that_fit) {
  EXPECT_EQ(unit_refusal("5 furlong", "mm/s"),
            "--x: found unknown unit \"furlong\" in \"5 furlong\", expected a number with mm/s, cm/min, "
            "m/min, mm/min or in/min");
  EXPECT_EQ(unit_refusal("250A", "V"), "--x: found unit \"A\" in \"250A\", expected a number with V or mV");
  EXPECT_EQ(unit_refusal("5 MM", "mm"),
            "--x: found unknown unit \"MM\" in \"5 MM\", expected a number with mm, cm, m, in or ft");
  EXPECT_EQ(unit_refusal("", "A"), "--x: found nothing, expected a number with A or kA");
  EXPECT_EQ(unit_refusal("5 mm", ""), "--x: found unit \"mm\" in \"5 mm\", expected a number without a unit");
}

TEST(UnitTest, refuses_what_is_no_finite_number) {
  for (const char* text : {"nan", "inf", "-inf", "infinity mm", "1e999", "0x10", "--5", "+-5", "five", "1,5",
                           "5e", "mm", "1 2", "5 mm mm", "5\tmm", "1e308 m"}) {
    EXPECT_NE(unit_refusal(text, "mm"), "accepted") << text;
  }
}

TEST(UnitTest, case_tells_units_apart) {
  EXPECT_EQ(find_unit("mV")->dimension, Dimension::voltage);
  EXPECT_EQ(find_unit("MV"), nullptr);
  EXPECT_EQ(find_unit("a"), nullptr);
  EXPECT_EQ(find_unit("k"), nullptr);
  EXPECT_EQ(find_unit("S"), nullptr);
}

TEST(UnitTest, every_unit_of_the_interface_is_known) {
  for (const char* name :
       {"mm",    "cm",   "m",    "in",  "ft",    "mm/s",     "cm/min",    "m/min",   "mm/min", "in/min",
        "A",     "kA",   "V",    "mV",  "W",     "kW",       "J",         "kJ",      "kJ/mm",  "kJ/cm",
        "kJ/in", "J/mm", "J/in", "mm2", "cm2",   "in2",      "mm4",       "cm4",     "in4",    "mm/s2",
        "m/s2",  "N",    "kN",   "lbf", "s",     "ms",       "min",       "h",       "C",      "K",
        "F",     "g",    "kg",   "lb",  "g/cm3", "kg/m3",    "lb/in3",    "ml/100g", "kg/h",   "lb/h",
        "l/min", "cfh",  "MPa",  "psi", "ksi",   "W/(mm K)", "J/(mm3 K)", "deg",     "rad",    "%"}) {
    EXPECT_NE(find_unit(name), nullptr) << name;
  }
}

TEST(UnitTest, name_is_unique_within_its_dimension_and_factors_are_sound) {
  std::set<std::pair<Dimension, std::string>> seen;
  for (const Unit& unit : known_units()) {
    EXPECT_TRUE(seen.insert({unit.dimension, unit.name}).second) << unit.name;
    EXPECT_GT(unit.multiply, 0) << unit.name;
    EXPECT_GT(unit.divide, 0) << unit.name;
    EXPECT_EQ(unit.multiply, std::trunc(unit.multiply)) << unit.name;
  }
}

TEST(UnitTest, keys_name_their_unit) {
  const std::pair<const char*, const char*> cases[] = {{"leg_mm", "mm"},
                                                       {"area_mm2", "mm2"},
                                                       {"volume_mm3", "mm3"},
                                                       {"second_moment_mm4", "mm4"},
                                                       {"travel_speed_mm_s", "mm/s"},
                                                       {"wire_feed_speed_m_min", "m/min"},
                                                       {"current_A", "A"},
                                                       {"voltage_V", "V"},
                                                       {"power_W", "W"},
                                                       {"arc_power_kW", "kW"},
                                                       {"energy_J", "J"},
                                                       {"heat_input_kJ_mm", "kJ/mm"},
                                                       {"arc_energy_kJ_in", "kJ/in"},
                                                       {"time_s", "s"},
                                                       {"time_min", "min"},
                                                       {"time_h", "h"},
                                                       {"preheat_C", "C"},
                                                       {"difference_K", "K"},
                                                       {"wire_g", "g"},
                                                       {"wire_kg", "kg"},
                                                       {"deposition_rate_kg_h", "kg/h"},
                                                       {"density_g_cm3", "g/cm3"},
                                                       {"hydrogen_ml_100g", "ml/100g"},
                                                       {"gas_l", "l"},
                                                       {"gas_flow_l_min", "l/min"},
                                                       {"energy_kWh", "kWh"},
                                                       {"hardness_HV", "HV"},
                                                       {"yield_MPa", "MPa"},
                                                       {"force_N", "N"},
                                                       {"force_kN", "kN"},
                                                       {"line_load_N_mm", "N/mm"},
                                                       {"conductivity_W_mmK", "W/(mm K)"},
                                                       {"heat_capacity_J_mm3K", "J/(mm3 K)"},
                                                       {"lead_resistance_mOhm", "mOhm"},
                                                       {"angle_deg", "deg"},
                                                       {"planning_pct", "%"},
                                                       {"frequency_Hz", "Hz"},
                                                       {"air_acceleration_mm_s2", "mm/s2"},
                                                       {"alpha_mm_s_A", "mm/(s A)"},
                                                       {"beta_per_s_A2", "1/(s A2)"}};
  for (const auto& [key, unit] : cases) {
    ASSERT_NE(unit_of_key(key), nullptr) << key;
    EXPECT_STREQ(unit_of_key(key)->name, unit) << key;
  }
}

TEST(UnitTest, keys_without_a_unit_have_none) {
  for (const char* key :
       {"CET", "CE_IIW", "Pcm", "format", "price_per_kg", "price_per_m3", "energy_per_kWh", "labour_per_h",
        "units_per_h", "mm", "_mm", "", "robots", "deposition_efficiency", "area_allowance"}) {
    EXPECT_EQ(unit_of_key(key), nullptr) << key;
  }
}

TEST(UnitTest, converting_between_dimensions_is_a_fault_of_the_program) {
  EXPECT_THROW(convert(1, *find_unit("mm"), *find_unit("s")), std::logic_error);
}

RC_GTEST_PROP(UnitProperty, there_and_back_gives_the_value_again, ()) {
  const auto units = known_units();
  const Unit& from = units[*rc::gen::inRange<std::size_t>(0, units.size())];
  const double value = *rc::gen::inRange(-1000000, 1000000) / 1024.0;
  const double back = from_canonical(to_canonical(value, from), from);
  RC_ASSERT(std::abs(back - value) <= 4e-16 * (std::abs(value) + 2 * std::abs(from.offset)));
}

RC_GTEST_PROP(NumberTextProperty, reads_back_as_the_same_double, ()) {
  const double value = any_double();
  RC_PRE(std::isfinite(value));
  const std::string text = number_text(value);
  double back = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), back);
  RC_ASSERT(end.ec == std::errc());
  RC_ASSERT(end.ptr == text.data() + text.size());
  RC_ASSERT(std::memcmp(&back, &value, sizeof back) == 0);
}

RC_GTEST_PROP(NumberTextProperty, rounded_text_is_within_half_a_unit_of_its_last_digit, ()) {
  const double value = any_double();
  RC_PRE(std::isfinite(value) && std::abs(value) > 1e-300 && std::abs(value) < 1e300);
  const int digits = *rc::gen::inRange(1, 15);
  const double back = std::strtod(rounded_text(value, digits).c_str(), nullptr);
  RC_ASSERT(std::abs(back - value) <= 0.5001 * std::pow(10.0, 1 - digits) * std::abs(value));
}

TEST(NumberTextTest, reads_well) {
  EXPECT_EQ(number_text(0.1), "0.1");
  EXPECT_EQ(number_text(100000), "100000");
  EXPECT_EQ(number_text(-2.5), "-2.5");
  EXPECT_EQ(number_text(0), "0");
  EXPECT_EQ(number_text(1e15), "1000000000000000");
  EXPECT_EQ(number_text(1e22), "1e+22");
  EXPECT_EQ(number_text(0.00001), "0.00001");
  EXPECT_EQ(number_text(5e-324), "5e-324");
}

TEST(NumberTextTest, rounds_to_significant_digits) {
  EXPECT_EQ(rounded_text(0.813363, 4), "0.8134");
  EXPECT_EQ(rounded_text(1041.38, 5), "1041.4");
  EXPECT_EQ(rounded_text(5.0, 3), "5");
  EXPECT_EQ(rounded_text(999.96, 4), "1000");
  EXPECT_EQ(rounded_text(123456, 3), "123000");
  EXPECT_EQ(rounded_text(-0.0004567, 2), "-0.00046");
  EXPECT_EQ(rounded_text(1.5e-9, 4), "1.5e-9");
  EXPECT_EQ(rounded_text(2.5e20, 3), "2.5e20");
  EXPECT_EQ(rounded_text(-0.0, 3), "0");
}

TEST(NumberTextTest, locale_changes_nothing) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  bool any = false;
  for (const char* name : {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "de_DE"})
    any = any || std::setlocale(LC_ALL, name);
  const std::string whole = number_text(1234.5), rounded = rounded_text(1234.5, 5);
  const double parsed = in("7.5cm/min", "cm/min");
  std::setlocale(LC_ALL, before.c_str());
  EXPECT_EQ(whole, "1234.5");
  EXPECT_EQ(rounded, "1234.5");
  EXPECT_EQ(parsed, 7.5);
  if (!any) GTEST_SKIP() << "no locale with a decimal comma is installed: only the C locale was tried";
}
