#pragma once

#include <cmath>
#include <numbers>
#include <optional>
#include <string_view>

#include "base/csv/csv.hpp"

namespace seamtakt {

/// Value of an arithmetic expression as notes write them with numbers: + - * / ^, brackets,
/// functions, pi. Empty where the text isn't one (a table look-up, a sum, a symbol that was left in).
class FormulaValue {
 public:
  static std::optional<double> of(std::string_view text) {
    FormulaValue reader(text);
    auto value = reader.sum();
    reader.skip_blanks();
    return reader.rest_.empty() ? value : std::nullopt;
  }

 private:
  using Value = std::optional<double>;

  explicit FormulaValue(std::string_view text) : rest_(text) {}

  void skip_blanks() {
    while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
  }

  bool take(char c) {
    skip_blanks();
    if (rest_.empty() || rest_.front() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }

  Value sum() {
    Value left = product();
    while (left) {
      bool plus = take('+');
      if (!plus && !take('-')) return left;
      Value right = product();
      if (!right) return {};
      left = plus ? *left + *right : *left - *right;
    }
    return left;
  }

  Value product() {
    Value left = signed_power();
    while (left) {
      bool times = take('*');
      if (!times && !take('/')) return left;
      Value right = signed_power();
      if (!right) return {};
      left = times ? *left * *right : *left / *right;
    }
    return left;
  }

  Value signed_power() {
    if (take('-')) {
      Value value = signed_power();
      return value ? Value(-*value) : value;
    }
    Value base = atom();
    if (!base || !take('^')) return base;
    Value exponent = signed_power();
    return exponent ? Value(std::pow(*base, *exponent)) : exponent;
  }

  Value atom() {
    skip_blanks();
    if (rest_.empty()) return {};
    if (take('(')) {
      Value value = sum();
      return take(')') ? value : std::nullopt;
    }
    std::size_t length = 0;
    while (length < rest_.size() && std::isalpha(static_cast<unsigned char>(rest_[length]))) ++length;
    if (length > 0) return named(length);
    return number();
  }

  Value number() {
    std::size_t length = rest_.find_first_not_of("0123456789.");
    if (length == std::string_view::npos) length = rest_.size();
    if (length > 0 && length < rest_.size() && rest_[length] == 'e') {
      std::size_t digits = length + 1;
      if (digits < rest_.size() && (rest_[digits] == '-' || rest_[digits] == '+')) ++digits;
      length = rest_.find_first_not_of("0123456789", digits);
      if (length == std::string_view::npos) length = rest_.size();
    }
    double value = 0;
    if (!parse_number(rest_.substr(0, length), value)) return {};
    rest_.remove_prefix(length);
    return value;
  }

  Value named(std::size_t length) {
    std::string_view name = rest_.substr(0, length);
    rest_.remove_prefix(length);
    if (name == "log" && rest_.starts_with("10")) {
      name = "log10";
      rest_.remove_prefix(2);
    }
    if (name == "pi") return std::numbers::pi;
    if (!take('(')) return {};
    Value first = sum();
    Value second = first && take(',') ? sum() : Value();
    if (!first || !take(')')) return {};
    return second ? of_two(name, *first, *second) : of_one(name, *first);
  }

  static Value of_one(std::string_view name, double x) {
    if (name == "sqrt") return std::sqrt(x);
    if (name == "tanh") return std::tanh(x);
    if (name == "sin") return std::sin(x);
    if (name == "cos") return std::cos(x);
    if (name == "tan") return std::tan(x);
    if (name == "atan") return std::atan(x);
    if (name == "exp") return std::exp(x);
    if (name == "ln") return std::log(x);
    if (name == "log10") return std::log10(x);
    return {};
  }

  static Value of_two(std::string_view name, double x, double y) {
    if (name == "max") return std::max(x, y);
    if (name == "min") return std::min(x, y);
    return {};
  }

  std::string_view rest_;
};

}  // namespace seamtakt
