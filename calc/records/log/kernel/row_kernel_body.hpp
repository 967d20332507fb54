// The row kernel, compiled once for each instruction set: the including file defines `nondigits_of` and what
// row_shape_body.hpp names before it, and everything here has internal linkage, so that no two sets share a
// copy. No standard function is called, since the linker keeps one copy of those for all sets.

using Kind = RowStep::Kind;

constexpr std::int64_t powers_of_ten[] = {1,      10,      100,      1000,      10000,
                                          100000, 1000000, 10000000, 100000000, 1000000000};

/// The number of the `count` (1 to 8) digits that end before `end`.
inline std::uint32_t digits_before(const char* end, unsigned count) {
  return number_of((load8(end - 8) ^ 0x3030303030303030ull) & (~0ull << (64 - 8 * count)));
}

/// Likewise with a decimal sign before the last `decimals` of them.
inline std::uint32_t digits_around_sign(const char* end, unsigned count, unsigned decimals) {
  const std::uint64_t fraction = decimals == 0 ? 0 : ~0ull << (64 - 8 * decimals);
  const std::uint64_t word = (load8(end - 8) & fraction) | (load8(end - 9) & ~fraction);
  return number_of((word ^ 0x3030303030303030ull) & (~0ull << (64 - 8 * count)));
}

inline bool same_bytes(const char* a, const char* b, std::size_t size) {
  if (size < 8) {
    // Both have a margin after them.
    const std::uint64_t differ = load8(a) ^ load8(b);
    return size == 0 || (differ << (64 - 8 * size)) == 0;
  }
  std::uint64_t differ = load8(a + size - 8) ^ load8(b + size - 8);
  for (std::size_t i = 0; i + 8 < size; i += 8) differ |= load8(a + i) ^ load8(b + i);
  return differ == 0;
}

/// Positions of the bytes that aren't digits, 64 bytes at a time.
struct NondigitScan {
  const char* base;
  std::uint64_t nondigits;

  explicit NondigitScan(const char* text) : base(text), nondigits(nondigits_of(text)) {}
  /// Digits from `p` on, which never goes back; 64 where there is no end in sight.
  unsigned digits_from(const char* p) {
    const auto offset = static_cast<std::size_t>(p - base);
    std::uint64_t rest = offset > 63 ? 0 : nondigits >> offset;
    if (rest == 0) {
      base = p;
      rest = nondigits = nondigits_of(p);
    }
    return rest == 0 ? 64u : static_cast<unsigned>(__builtin_ctzll(rest));
  }
};

/// Digits with at most one decimal sign, unchanged.
struct Digits {
  unsigned whole, decimals;
  bool sign;
  const char* end;
};

inline Digits digits_at(NondigitScan& scan, const char* p, bool decimal_comma) {
  Digits found{scan.digits_from(p), 0, false, p};
  found.end += found.whole;
  if (found.whole > 20) return found;
  if (*found.end != '.' && !(decimal_comma && *found.end == ',')) return found;
  found.sign = true;
  found.decimals = scan.digits_from(found.end + 1);
  found.end += 1 + found.decimals;
  return found;
}

inline bool take_number(const RowPattern& pattern, const RowStep& step, NondigitScan& scan, const char*& p,
                        std::int32_t& value) {
  const bool negative = *p == '-';
  const Digits digits = digits_at(scan, p + negative, pattern.decimal_comma);
  const unsigned count = digits.whole + digits.decimals;
  if (count == 0) {
    // An empty cell, which the run's rows have in common.
    value = 0;
    return !negative && !digits.sign && (pattern.present >> step.quantity & 1) == 0;
  }
  const unsigned wanted = pattern.decimals[step.quantity];
  if ((pattern.present >> step.quantity & 1) == 0 || count > kernel_digits || digits.decimals > wanted)
    return false;
  std::int64_t number =
      digits.sign ? digits_around_sign(digits.end, count, digits.decimals) : digits_before(digits.end, count);
  number *= powers_of_ten[wanted - digits.decimals];
  if (negative) {
    // Minus zero differs from zero as a double.
    if (number == 0) return false;
    number = -number;
  }
  p = digits.end;
  value = static_cast<std::int32_t>(number);
  return number >= pattern.lowest[step.quantity] && number <= pattern.highest[step.quantity];
}

/// The decimals of a second, at most 9 of them.
inline std::int64_t fraction_ticks(const RowPattern& pattern, const Digits& digits) {
  std::int64_t fraction = 0;
  if (digits.decimals > 8) {
    fraction = static_cast<std::int64_t>(digits_before(digits.end - 1, 8)) * 10 + (digits.end[-1] - '0');
  } else if (digits.decimals > 0) {
    fraction = digits_before(digits.end, digits.decimals);
  }
  return fraction * powers_of_ten[pattern.time_decimals - digits.decimals];
}

inline bool take_seconds(const RowPattern& pattern, NondigitScan& scan, const char*& p, std::int64_t& ticks) {
  const Digits digits = digits_at(scan, p, pattern.decimal_comma);
  if (digits.whole == 0 || digits.whole > 10 || digits.decimals > pattern.time_decimals) return false;
  const char* const whole_end = p + digits.whole;
  std::int64_t whole = digits_before(whole_end, digits.whole > 8 ? 8 : digits.whole);
  if (digits.whole > 8)
    whole += static_cast<std::int64_t>(digits_before(whole_end - 8, digits.whole - 8)) * 100'000'000;
  if (whole > 4'500'000'000) return false;
  ticks = whole * powers_of_ten[pattern.time_decimals] + fraction_ticks(pattern, digits);
  p = digits.end;
  return true;
}

inline bool take_time_of_day(const RowPattern& pattern, const RowPattern::Text* text, NondigitScan& scan,
                             const char*& p, std::int64_t& ticks) {
  if (!same_bytes(p, text[0].bytes, text[0].size)) return false;
  p += text[0].size;
  const Digits digits = digits_at(scan, p, pattern.decimal_comma);
  if (digits.whole != 2 || digits.decimals > pattern.time_decimals || (digits.sign && digits.decimals == 0))
    return false;
  const std::int64_t second = (p[0] - '0') * 10 + (p[1] - '0');
  if (second > 59) return false;
  ticks =
      pattern.minute_ticks + second * powers_of_ten[pattern.time_decimals] + fraction_ticks(pattern, digits);
  p = digits.end;
  if (!same_bytes(p, text[1].bytes, text[1].size)) return false;
  p += text[1].size;
  return true;
}

inline bool plain_byte(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x20 && byte < 0x7f && c != '"';
}

/// One row; false where it doesn't fit. `p` is then after its line's end.
inline bool take_row(const RowPattern& pattern, const char*& p, const RowColumns& columns, std::size_t row) {
  NondigitScan scan(p);
  const RowPattern::Text* text = pattern.texts.data();
  for (const RowStep *step = pattern.steps.data(), *const end = step + pattern.steps.size(); step != end;
       ++step) {
    switch (step->kind) {
      case Kind::number:
        if (!take_number(pattern, *step, scan, p, columns.value[step->quantity][row])) return false;
        break;
      case Kind::time_seconds:
        if (!take_seconds(pattern, scan, p, columns.ticks[row])) return false;
        break;
      case Kind::time_of_day:
        if (!take_time_of_day(pattern, text, scan, p, columns.ticks[row])) return false;
        text += 2;
        break;
      case Kind::texts:
        if (!same_bytes(p, text->bytes, text->size)) return false;
        p += text++->size;
        break;
      case Kind::ignored:
        for (const char* const longest = p + kernel_ignored_bytes; plain_byte(*p) && *p != pattern.delimiter;
             ++p)
          if (p == longest) return false;
        break;
    }
    if (step->last) {
      p += *p == '\r' ? 1 : 0;
      return *p++ == '\n';
    }
    if (*p++ != pattern.delimiter) return false;
  }
  return false;
}

#include "records/log/kernel/row_shape_body.hpp"

/// A block's rows widened, with the row before it at 0.
struct Widened {
  alignas(64) std::int64_t step[block_rows];
  alignas(64) std::int64_t current[block_rows + 1];
  alignas(64) std::int64_t voltage[block_rows + 1];
  alignas(64) std::int64_t power[block_rows + 1];
};

/// a[i] * b[i] added up.
inline std::int64_t held_sum(const std::int64_t* a, const std::int64_t* b, std::size_t count) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < count; ++i) sum += a[i] * b[i];
  return sum;
}
inline std::int64_t held_sum(const std::int32_t* a, const std::int64_t* b, std::size_t count) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < count; ++i) sum += a[i] * b[i];
  return sum;
}
/// (a[i] + a[i + 1]) * b[i] added up.
inline std::int64_t pair_sum(const std::int64_t* a, const std::int64_t* b, std::size_t count) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < count; ++i) sum += (a[i] + a[i + 1]) * b[i];
  return sum;
}
inline std::int64_t pair_sum(const std::int32_t* a, const std::int64_t* b, std::size_t count) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < count; ++i) sum += (static_cast<std::int64_t>(a[i]) + a[i + 1]) * b[i];
  return sum;
}

struct Span {
  std::int32_t least, most;
};
inline Span span_of(const std::int32_t* a, std::size_t count) {
  Span span{a[0], a[0]};
  for (std::size_t i = 1; i < count; ++i) {
    span.least = a[i] < span.least ? a[i] : span.least;
    span.most = a[i] > span.most ? a[i] : span.most;
  }
  return span;
}
inline std::int64_t magnitude(Span span) {
  const std::int64_t low = span.least < 0 ? -static_cast<std::int64_t>(span.least) : span.least;
  const std::int64_t high = span.most < 0 ? -static_cast<std::int64_t>(span.most) : span.most;
  return low > high ? low : high;
}

inline bool logs(const BlockRules& rules, LogQuantity quantity) {
  return (rules.present & bit_of(quantity)) != 0;
}

void sum_arc(const RowColumns& columns, std::size_t before, std::size_t rows, const BlockRules& rules,
             RowBlock& block) {
  const auto column = [&](LogQuantity quantity) { return columns.value[index_of(quantity)] + before; };
  Widened wide;
  const std::int64_t* const ticks = columns.ticks + before;
  for (std::size_t i = 0; i < rows; ++i) wide.step[i] = ticks[i + 1] - ticks[i];
  const std::int32_t* const current = column(LogQuantity::current_A);
  for (std::size_t i = 0; i <= rows; ++i) wide.current[i] = current[i];
  block.current = held_sum(wide.current, wide.step, rows);
  for (std::size_t i = 0; i < rows; ++i)
    block.current_squared += wide.current[i] * wide.current[i] * wide.step[i];
  if (logs(rules, LogQuantity::voltage_V)) {
    const std::int32_t* const voltage = column(LogQuantity::voltage_V);
    for (std::size_t i = 0; i <= rows; ++i) wide.voltage[i] = voltage[i];
    block.voltage = held_sum(wide.voltage, wide.step, rows);
    for (std::size_t i = 0; i < rows; ++i)
      block.voltage_squared += wide.voltage[i] * wide.voltage[i] * wide.step[i];
  }
  if (rules.power_logged) {
    const std::int32_t* const power = column(LogQuantity::power_W);
    for (std::size_t i = 0; i <= rows; ++i) wide.power[i] = power[i];
  } else {
    for (std::size_t i = 0; i <= rows; ++i) wide.power[i] = wide.current[i] * wide.voltage[i];
  }
  block.power = held_sum(wide.power, wide.step, rows);
  block.energy_twice = pair_sum(wide.power, wide.step, rows);
  if (logs(rules, LogQuantity::wire_feed_speed_m_min))
    block.wire_feed = held_sum(column(LogQuantity::wire_feed_speed_m_min), wide.step, rows);
  if (logs(rules, LogQuantity::gas_flow_l_min))
    block.gas_flow = held_sum(column(LogQuantity::gas_flow_l_min), wide.step, rows);
  if (!logs(rules, LogQuantity::travel_speed_mm_s)) return;
  block.travel_speed = held_sum(column(LogQuantity::travel_speed_mm_s), wide.step, rows);
  block.travelled_twice = pair_sum(column(LogQuantity::travel_speed_mm_s), wide.step, rows);
}

/// Whether every sum of the block stays within 64 bits.
inline bool fits(const RowBlock& block, Span current, Span voltage, std::int64_t power) {
  constexpr double limit = 4e18;
  const auto ticks = static_cast<double>(block.ticks);
  const auto i = static_cast<double>(magnitude(current)), u = static_cast<double>(magnitude(voltage));
  // Any other column's whole numbers are below 2^31.
  return i * i * ticks < limit && u * u * ticks < limit && i * u * 2 * ticks < limit &&
         static_cast<double>(power) * 2 * ticks < limit && 4.3e9 * ticks < limit;
}

RowBlock sum_rows(const RowColumns& columns, std::size_t first, std::size_t rows, const BlockRules& rules) {
  RowBlock block;
  block.first = static_cast<std::uint32_t>(first);
  block.rows = static_cast<std::uint32_t>(rows);
  const std::size_t before = first - 1;
  const std::int64_t* const ticks = columns.ticks + before;
  std::int64_t least = ticks[1] - ticks[0], longest = least;
  for (std::size_t i = 1; i < rows; ++i) {
    const std::int64_t step = ticks[i + 1] - ticks[i];
    least = step < least ? step : least;
    longest = step > longest ? step : longest;
  }
  block.ticks = ticks[rows] - ticks[0];
  block.least_step = least;
  if (least <= 0 || longest > rules.longest_step) return block;
  const std::int32_t* const current = columns.value[index_of(LogQuantity::current_A)] + before;
  const Span all = span_of(current, rows + 1);
  if (all.most <= rules.arc_current) block.kind = RowBlock::Kind::arc_off;
  if (all.least <= rules.arc_current) return block;
  const bool has_voltage = logs(rules, LogQuantity::voltage_V);
  const LogQuantity beside = has_voltage ? LogQuantity::voltage_V : LogQuantity::power_W;
  const std::int32_t* const other = columns.value[index_of(beside)] + before;
  std::int32_t repeated = 0;
  for (std::size_t i = 0; i < rows; ++i)
    repeated |= (current[i] == current[i + 1]) & (other[i] == other[i + 1]);
  if (repeated != 0) return block;
  if (logs(rules, LogQuantity::travel_speed_mm_s) &&
      span_of(columns.value[index_of(LogQuantity::travel_speed_mm_s)] + before, rows).least <= rules.standing)
    return block;
  const Span currents = span_of(current, rows), others = span_of(other, rows);
  const Span voltage = has_voltage ? span_of(other, rows + 1) : Span{0, 0};
  const std::int64_t power =
      rules.power_logged
          ? magnitude(span_of(columns.value[index_of(LogQuantity::power_W)] + before, rows + 1))
          : 0;
  if (!fits(block, all, voltage, power)) return block;
  block.kind = RowBlock::Kind::arc_on;
  block.min_current = currents.least;
  block.max_current = currents.most;
  if (has_voltage) {
    block.min_voltage = others.least;
    block.max_voltage = others.most;
  }
  sum_arc(columns, before, rows, rules, block);
  return block;
}
