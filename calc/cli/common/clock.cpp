#include "cli/common/clock.hpp"

#include <cstdlib>

namespace seamtakt::cli {

std::string utc_text_of_s(std::time_t moment_s) {
  std::tm utc{};
  gmtime_r(&moment_s, &utc);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &utc);
  return text;
}

std::string utc_now() {
  return utc_text_of_s(std::time(nullptr));
}

std::string made_at_utc() {
  const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
  return epoch ? utc_text_of_s(static_cast<std::time_t>(std::strtoll(epoch, nullptr, 10))) : utc_now();
}

std::string today() {
  return utc_now().substr(0, 10);
}

}  // namespace seamtakt::cli
