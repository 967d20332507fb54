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

SheetOrigin origin_of(const Provenance& provenance) {
  return {{"program", "seamtakt " + provenance.program_version, "Program"_word},
          {"plan_file", provenance.plan_file, "Plan"_word},
          {"plan_sha256", provenance.plan_sha256, "Plan SHA-256"_word},
          {"catalogue_sha256", provenance.catalogue_sha256, "Reference tables SHA-256"_word},
          {"made_at_utc", provenance.made_at_utc, "Made at"_word},
          {"caution", "estimates only: qualification by test decides"_word, "Caution"_word}};
}

}  // namespace seamtakt
