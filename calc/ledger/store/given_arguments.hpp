#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// What the program was given, kept apart from what other users of the machine see in the list of processes:
/// there, the passwords of URIs are overwritten.
class GivenArguments {
 public:
  GivenArguments(int count, char** values);

  int count() const { return static_cast<int>(texts_.size()); }
  /// As main has them, until this goes.
  char** values() { return values_.data(); }
  bool held_password() const { return !secrets_.empty(); }
  /// A message with *** where it repeats a password from the arguments, or the beginning of one.
  std::string without_passwords(std::string message) const;

 private:
  struct Secret {
    std::string before, password;  ///< text before it in its argument
  };
  void hide(int index, char* value);

  std::vector<std::string> texts_;
  std::vector<char*> values_;
  std::vector<Secret> secrets_;
};

}  // namespace seamtakt
