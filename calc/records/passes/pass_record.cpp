#include "records/passes/pass_record.hpp"

namespace seamtakt {

const char* to_string(Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return "pass";
    case Verdict::fail:
      return "fail";
    case Verdict::undecided:
      return "undecided";
  }
  return "undecided";
}

std::string PassRecord::place() const {
  const auto or_dash = [](const std::string& text) { return text.empty() ? std::string("-") : text; };
  return or_dash(unit_serial) + "/" + or_dash(weldment) + "/" + or_dash(seam) + "/pass " +
         (pass ? std::to_string(*pass) : "-");
}

}  // namespace seamtakt
