#include "exchange/report/provenance.hpp"
#include "base/files/digest.hpp"

#include "base/files/atomic_save.hpp"
#include "base/files/catalogue.hpp"
#include "base/version.hpp"

namespace seamtakt {

Provenance provenance_without_plan() {
  return {program_version, catalogue_sha256(), {}, {}, {}};
}

Provenance provenance_of(const std::string& plan_path, std::string_view plan_bytes) {
  return {program_version, catalogue_sha256(), plan_path, sha256_hex(plan_bytes), {}};
}

}  // namespace seamtakt
