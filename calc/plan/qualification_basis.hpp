#pragma once

#include <string_view>

namespace seamtakt {

/// How a welding procedure was qualified, as a plan's `basis` says it.
enum class QualificationRoute {
  d1_1,          ///< a procedure test by AWS D1.1, whose essential variables the program compares
  judged,        ///< a procedure test by ISO 15614-1, whose ranges the program judges
  prequalified,  ///< a prequalified procedure of AWS D1.1
  known,         ///< another route that codes know: its ranges aren't judged here
  other          ///< neither
};

/// Prefixes of national and European editions ("DIN EN ISO 15614-1") and a year or level after the number
/// count as the same document. Routes: EN 1090-2 names ISO 15610 (tested consumables), 15611 (experience),
/// 15612 (standard procedures) and 15613 (pre-production test) beside the procedure test, admissible by
/// execution class and steel grade (en-1090-2, recalled); D1.1 has prequalified procedures (aws-d1-1).
QualificationRoute qualification_route(std::string_view basis);

/// The edition of ISO 15614-1 whose ranges hold for a basis that names its year ("ISO 15614-1:2004+A2:2012"):
/// "2004" for years before 2017, else "2017", also where no year is named.
const char* iso_15614_1_edition(std::string_view basis);

}  // namespace seamtakt
