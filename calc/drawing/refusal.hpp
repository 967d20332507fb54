#pragma once

#include <stdexcept>
#include <string>

namespace seamtakt::drawing {

/// A file or an option that can't be used: the program ends with 2 and this one line.
struct Refusal : std::runtime_error {
  Refusal(const std::string& where, const std::string& found, const std::string& expected)
      : std::runtime_error(where + ": found " + found + ", expected " + expected) {}
};

/// The machine, or a time limit: the program ends with 3.
struct Failure : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace seamtakt::drawing
