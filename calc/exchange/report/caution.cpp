#include "exchange/report/caution.hpp"

namespace seamtakt {

const char* caution_text() {
  return "Estimates only. The governing code, qualification by test and a responsible welding coordinator "
         "(ISO 14731) or "
         "certified welding engineer decide whether a procedure may be used. The cell's safeguards follow "
         "ISO 10218 and "
         "local law; a planned timeline is no proof that a robot's motion is safe.";
}

}  // namespace seamtakt
