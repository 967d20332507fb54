#include "cli/ledger/store_key.hpp"

#include "base/version.hpp"
#include "cli/common/clock.hpp"

namespace seamtakt::cli {

WriteStamp write_stamp(const std::string& who, const std::string& why) {
  return {utc_now(), who, why, std::string("seamtakt ") + program_version};
}

}  // namespace seamtakt::cli
