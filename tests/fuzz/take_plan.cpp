// The plan's reader: what it takes is written as text that it reads again, and that is then written as it is.
#include <string>

#include "fuzz/fuzz_target.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::fuzz {

bool take_plan(std::string_view input) {
  std::string written;
  if (!is_taken([&] { written = write_plan(parse_plan(input, "fuzzed.json")); })) return false;
  std::string again;
  promise(is_taken([&] { again = write_plan(parse_plan(written, "written.json")); }),
          "a plan that was written can be read");
  promise(again == written, "writing what was read changes nothing");
  return true;
}

}  // namespace seamtakt::fuzz
