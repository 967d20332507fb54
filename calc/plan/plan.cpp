#include "plan/plan.hpp"

namespace seamtakt {

#define SEAMTAKT_SPECIAL_MEMBERS(Struct)                  \
  Struct::Struct() = default;                             \
  Struct::Struct(const Struct&) = default;                \
  Struct::Struct(Struct&&) noexcept = default;            \
  Struct& Struct::operator=(const Struct&) = default;     \
  Struct& Struct::operator=(Struct&&) noexcept = default; \
  Struct::~Struct() = default;

SEAMTAKT_SPECIAL_MEMBERS(FileKeys)
SEAMTAKT_SPECIAL_MEMBERS(BaseMetal)
SEAMTAKT_SPECIAL_MEMBERS(Wire)
SEAMTAKT_SPECIAL_MEMBERS(Schedule)
SEAMTAKT_SPECIAL_MEMBERS(TestedWeld)
SEAMTAKT_SPECIAL_MEMBERS(Seam)
SEAMTAKT_SPECIAL_MEMBERS(Plate)
SEAMTAKT_SPECIAL_MEMBERS(Tube)
SEAMTAKT_SPECIAL_MEMBERS(Weldment)
SEAMTAKT_SPECIAL_MEMBERS(Robot)
SEAMTAKT_SPECIAL_MEMBERS(Cell)
SEAMTAKT_SPECIAL_MEMBERS(Stage)
SEAMTAKT_SPECIAL_MEMBERS(RuleSeverities)
SEAMTAKT_SPECIAL_MEMBERS(Plan)

}  // namespace seamtakt
