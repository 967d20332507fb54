// save_driver HOW FILE BYTES FIRST LAST: saves versions FIRST to LAST, and prints each one's number once it
// is saved. HOW: "honest", "keep" (with a backup), "early" (says so before it has saved), or a way of
// faulty_save.hpp. Exit codes are the program's: 2 for bad input, 3 where the machine failed.
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <system_error>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "faulty_save.hpp"
#include "versions.hpp"

namespace {

void acknowledge(unsigned version) {
  const std::string line = std::to_string(version) + "\n";
  if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) std::exit(9);
}

void save(const std::string& how, const std::string& path, const std::string& bytes) {
  if (seamtakt::save_faultily(how, path, bytes)) return;
  seamtakt::SaveOptions options;
  options.keep_previous = how == "keep";
  seamtakt::save_atomically(path, bytes, options);
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 6) return 64;
  const std::string how = arguments[1], path = arguments[2];
  const auto size = static_cast<std::size_t>(std::atol(arguments[3]));
  const auto first = static_cast<unsigned>(std::atol(arguments[4]));
  const auto last = static_cast<unsigned>(std::atol(arguments[5]));
  try {
    for (unsigned version = first; version <= last; ++version) {
      if (how == "early") acknowledge(version);
      save(how, path, seamtakt::version_text(version, size));
      if (how != "early") acknowledge(version);
    }
  } catch (const seamtakt::InputError& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 2;
  } catch (const std::system_error& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 3;
  }
  return 0;
}
