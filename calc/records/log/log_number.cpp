#include "records/log/log_number.hpp"

#include <cstdint>

#include "base/csv/csv.hpp"

namespace seamtakt {

namespace {

/// Powers of ten that a double holds exactly.
constexpr double exact_powers[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8, 1e9,
                                   1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18};

}  // namespace

bool parse_log_number(std::string_view text, bool decimal_comma, double& value) {
  const char* p = text.data();
  const char* const end = p + text.size();
  const bool negative = p != end && *p == '-';
  if (negative) ++p;
  std::uint64_t digits = 0;
  const char* const first = p;
  while (p != end && static_cast<unsigned char>(*p - '0') < 10)
    digits = digits * 10 + static_cast<unsigned>(*p++ - '0');
  auto count = p - first;
  long decimals = 0;
  if (p != end && (*p == '.' || (decimal_comma && *p == ','))) {
    const char* const first_decimal = ++p;
    while (p != end && static_cast<unsigned char>(*p - '0') < 10)
      digits = digits * 10 + static_cast<unsigned>(*p++ - '0');
    decimals = p - first_decimal;
    count += decimals;
  }
  // A whole number below 2^53 over an exact power of ten: one division, rounded once.
  if (p != end || count == 0 || count > 18 || digits > (std::uint64_t{1} << 53))
    return parse_number(text, value, decimal_comma);
  const double magnitude = static_cast<double>(digits) / exact_powers[decimals];
  value = negative ? -magnitude : magnitude;
  return true;
}

}  // namespace seamtakt
