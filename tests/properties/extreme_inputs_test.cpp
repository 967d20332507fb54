// Whatever numbers are given: finite results with findings, or one InputError. Never NaN, a crash or a hang.
#include <gtest/gtest.h>

#include <chrono>
#include <limits>
#include <random>

#include "properties/every_quantity.hpp"

namespace seamtakt::published {
namespace {

const std::vector<double> extremes = {0.0,
                                      -0.0,
                                      1.0,
                                      -1.0,
                                      1e30,
                                      -1e30,
                                      1e-30,
                                      -1e-30,
                                      1e150,
                                      1e-150,
                                      std::numeric_limits<double>::denorm_min(),
                                      -std::numeric_limits<double>::denorm_min(),
                                      std::numeric_limits<double>::min(),
                                      std::numeric_limits<double>::max(),
                                      std::numeric_limits<double>::lowest(),
                                      std::numeric_limits<double>::infinity(),
                                      -std::numeric_limits<double>::infinity(),
                                      std::numeric_limits<double>::quiet_NaN()};

void expect_finite(const std::optional<double>& value, const std::string& what) {
  if (value) {
    EXPECT_TRUE(std::isfinite(*value)) << what << " = " << *value;
  }
}

void expect_all_finite(const QuantityAnswer& answered) {
  for (const auto& [key, value] : answered.results.values) {
    expect_finite(value.number, key);
    for (const auto& element : value.list) expect_finite(element, key);
  }
  for (const auto& [key, u] : answered.u)
    EXPECT_TRUE(std::isfinite(u) && u >= 0) << "u_" << key << " = " << u;
  for (const auto& finding : answered.results.findings) {
    expect_finite(finding.value, finding.rule);
    expect_finite(finding.limit, finding.rule);
    EXPECT_FALSE(finding.text().empty() || finding.source.empty()) << finding.rule;
  }
}

std::string described(const Quantity& quantity, const QuantityRequest& request) {
  std::string text = quantity.name;
  for (const auto& [name, value] : request.inputs.numbers) text += " --" + name + " " + std::to_string(value);
  for (const auto& [name, value] : request.inputs.texts) text += " --" + name + " " + value;
  return text;
}

struct AnswersTally {
  int answered = 0, refused = 0;
};

void try_request(const Quantity& quantity, const QuantityRequest& request, AnswersTally& tally) {
  try {
    QuantityAnswer answered = answer(quantity, request);
    ++tally.answered;
    expect_all_finite(answered);
  } catch (const InputError& error) {
    ++tally.refused;
    EXPECT_NE(std::string(error.what()).find("expected"), std::string::npos) << error.what();
  }
  if (testing::Test::HasFailure()) GTEST_FAIL() << described(quantity, request);
}

/// Every number with an uncertainty, so that slopes are tried as well.
QuantityRequest with_uncertainties(const Case& each) {
  QuantityRequest request = request_of(*each.quantity, each.inputs);
  request.inputs.numbers = numbers_with_defaults(*each.quantity, request);
  for (const auto& [name, value] : request.inputs.numbers)
    request.standard_uncertainty[name] = 0.01 * std::abs(value);
  return request;
}

TEST(ExtremeInputs, GiveAFiniteNumberOrAnErrorOneByOne) {
  AnswersTally tally;
  for (const Case& each : one_case_per_form()) {
    QuantityRequest request = with_uncertainties(each);
    for (const auto& [name, value] : with_uncertainties(each).inputs.numbers)
      for (double extreme : extremes) {
        QuantityRequest changed = request;
        changed.inputs.numbers[name] = extreme;
        try_request(*each.quantity, changed, tally);
        if (HasFatalFailure()) return;
      }
  }
  EXPECT_GT(tally.answered, 1000);
  EXPECT_GT(tally.refused, 1000);
}

TEST(ExtremeInputs, GiveAFiniteNumberOrAnErrorInHundredsOfCombinations) {
  std::mt19937_64 random(20240229);
  std::uniform_int_distribution<std::size_t> pick(0, extremes.size() - 1);
  std::uniform_int_distribution<int> exponent(-32, 32), coin(0, 2);
  AnswersTally tally;
  for (const Case& each : one_case_per_form()) {
    QuantityRequest request = with_uncertainties(each);
    for (int round = 0; round < 300; ++round) {
      QuantityRequest changed = request;
      for (auto& [name, value] : changed.inputs.numbers) {
        int what = coin(random);
        if (what == 0) value = extremes[pick(random)];
        if (what == 1) value = std::ldexp(1.5, 3 * exponent(random));
      }
      try_request(*each.quantity, changed, tally);
      if (HasFatalFailure()) return;
    }
  }
  EXPECT_GT(tally.answered, 500);
}

TEST(ExtremeInputs, TakeNoLongerThanOrdinaryOnes) {
  for (const Case& each : one_case_per_form()) {
    QuantityRequest request = with_uncertainties(each);
    for (double huge : {1e30, 1e-30}) {
      QuantityRequest changed = request;
      for (auto& [name, value] : changed.inputs.numbers) value = huge;
      auto begin = std::chrono::steady_clock::now();
      AnswersTally tally;
      try_request(*each.quantity, changed, tally);
      std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
      EXPECT_LT(took.count(), 2) << described(*each.quantity, changed);
    }
  }
}

TEST(MissingInputs, GiveNullsOrAnErrorWhateverIsLeftOut) {
  for (const Case& each : one_case_per_form()) {
    QuantityRequest request = request_of(*each.quantity, each.inputs);
    request.standard_uncertainty.clear();
    std::vector<std::string> names;
    for (const auto& [name, value] : request.inputs.numbers) names.push_back(name);
    for (const auto& [name, text] : request.inputs.texts) names.push_back(name);
    for (std::size_t set = 0; set < (std::size_t{1} << std::min<std::size_t>(names.size(), 8)); ++set) {
      QuantityRequest part = request;
      for (std::size_t i = 0; i < names.size(); ++i)
        if (i < 8 && (set >> i & 1)) {
          part.inputs.numbers.erase(names[i]);
          part.inputs.texts.erase(names[i]);
        }
      AnswersTally tally;
      try_request(*each.quantity, part, tally);
      if (HasFatalFailure()) return;
    }
  }
}

}  // namespace
}  // namespace seamtakt::published
