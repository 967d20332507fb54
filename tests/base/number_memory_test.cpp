#include "base/json/number_text_cache.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <random>

#include "base/json/json_writer.hpp"

using namespace seamtakt;

TEST(NumberTextCache, writes_what_the_json_writer_writes_however_often_it_is_asked) {
  std::mt19937_64 random(3);
  std::vector<double> numbers = {0,
                                 -0.0,
                                 1,
                                 -1,
                                 0.1,
                                 1e-5,
                                 9.9e-6,
                                 1e16,
                                 1.5,
                                 5e-324,
                                 1.7976931348623157e308,
                                 1e15 + 0.5,
                                 0.000012345678901234567,
                                 -0.000012345678901234567,
                                 9007199254740993.0};
  while (numbers.size() < 20000) {
    const double number = std::bit_cast<double>(random());
    if (std::isfinite(number)) numbers.push_back(number);
    numbers.push_back(static_cast<double>(random() % 5000) / 8);
  }
  NumberTextCache memory;
  for (int run = 0; run < 3; ++run)
    for (const double number : numbers) {
      char remembered[NumberTextCache::most_bytes];
      const std::size_t length = memory.write(remembered, number);
      std::string wanted;
      append_json_value(wanted, number);
      ASSERT_EQ(std::string_view(remembered, length), wanted);
    }
}

TEST(NumberTextCache, refuses_what_json_can_not_hold) {
  NumberTextCache memory;
  char out[NumberTextCache::most_bytes];
  EXPECT_THROW(memory.write(out, std::nan("")), std::logic_error);
  EXPECT_THROW(memory.write(out, INFINITY), std::logic_error);
}

TEST(JsonWriterParts, taken_parts_make_the_same_document) {
  const auto write = [](bool parted) {
    JsonWriter json;
    std::string text;
    json.begin_object().key("a").begin_array();
    if (parted) {
      const std::string lead = json.element_lead();
      text = json.take_part() + lead + "1," + lead + "2";
      json.written_elements("");
    } else {
      json.value(1).value(2);
    }
    json.end_array().member("b", 3).end_object();
    return text + json.take();
  };
  EXPECT_EQ(write(true), write(false));
  JsonWriter json;
  EXPECT_THROW(json.element_lead(), std::logic_error);
  EXPECT_THROW(json.written_elements(""), std::logic_error);
}
