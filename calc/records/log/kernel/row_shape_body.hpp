// Rows by their shape: part of row_kernel_body.hpp, compiled once for each instruction set.
//
// A row's shape is the positions of its digits. Most rows of a run share a few shapes, and a shape tells
// where each number's digits are, so such a row needs no search: it is enough that its digits and its other
// bytes are at the same positions as in a row that was read step by step. The including file defines
//   line_ends_of(p)      bit i: byte i of the 64 at `p` ends a line
//   FixedBytes<Blocks>   the bytes that every row of a shape has in common
//   DigitLanes<Blocks>   how a shape's digits become whole numbers
//   tells_digits         whether FixedBytes also tells that all other bytes are digits, which is worth it
//   where
//                        finding the bytes that aren't digits takes long

/// Numbers for which a shape has room: of 8 digits each, or the time's first and last 8.
template <unsigned Blocks>
inline constexpr unsigned lane_count = 8 * Blocks;
inline constexpr unsigned time_lanes = 2;

/// Which of a row's bytes aren't digits, up to its line's end; the others are 0.
template <unsigned Blocks>
struct ShapeKey {
  std::uint64_t bits[Blocks];
  bool operator==(const ShapeKey& other) const {
    std::uint64_t differ = 0;
    for (unsigned b = 0; b < Blocks; ++b) differ |= bits[b] ^ other.bits[b];
    return differ == 0;
  }
};

template <unsigned Blocks>
struct KeyedRow {
  ShapeKey<Blocks> key;
  unsigned size;  ///< with the line's end; more than 64 * Blocks where that isn't in sight
};

/// Bits up to the lowest one that is set, all where none is.
inline std::uint64_t up_to_lowest(std::uint64_t bits) {
  return bits ^ (bits - 1);
}

/// Place of the lowest bit that is set; 64 where none is.
inline unsigned lowest(std::uint64_t bits) {
  return bits == 0 ? 64 : static_cast<unsigned>(__builtin_ctzll(bits));
}

template <unsigned Blocks>
inline KeyedRow<Blocks> keyed_row(const char* p) {
  KeyedRow<Blocks> row;
  const std::uint64_t first_end = line_ends_of(p);
  row.key.bits[0] = nondigits_of(p) & up_to_lowest(first_end);
  row.size = lowest(first_end) + 1;
  if constexpr (Blocks > 1) {
    const std::uint64_t end = line_ends_of(p + 64);
    row.key.bits[1] = first_end != 0 ? 0 : nondigits_of(p + 64) & up_to_lowest(end);
    row.size = first_end != 0 ? row.size : lowest(end) + 65;
  }
  return row;
}

template <unsigned Blocks>
struct RowShape {
  FixedBytes<Blocks> fixed;
  DigitLanes<Blocks> lanes;
  std::uint32_t size;      ///< with the line's end
  std::uint32_t negative;  ///< bit i: a minus sign precedes lane i's digits
};

/// Shapes of one run of rows, each at a place that follows from its key.
template <unsigned Blocks>
class ShapeTable {
 public:
  ShapeTable() {
    for (auto& key : keys_) key = {};
    // No row has this key at this place, as place_of() gives it another one.
    keys_[0].bits[0] = 1;
  }
  /// nullptr: none yet. The row's fixed bytes are compared separately.
  const RowShape<Blocks>* find(const ShapeKey<Blocks>& key) const {
    const unsigned place = place_of(key);
    return keys_[place] == key ? &shapes_[place] : nullptr;
  }
  void put(const ShapeKey<Blocks>& key, const RowShape<Blocks>& shape) {
    const unsigned place = place_of(key);
    keys_[place] = key;
    shapes_[place] = shape;
  }

 private:
  static constexpr unsigned place_bits = 6;

  static unsigned place_of(const ShapeKey<Blocks>& key) {
    constexpr std::uint64_t factors[] = {0x9E3779B97F4A7C15ull, 0xC2B2AE3D27D4EB4Full};
    std::uint64_t mixed = 0;
    for (unsigned b = 0; b < Blocks; ++b) mixed ^= key.bits[b] * factors[b];
    return static_cast<unsigned>(mixed >> (64 - place_bits));
  }

  ShapeKey<Blocks> keys_[1u << place_bits];
  RowShape<Blocks> shapes_[1u << place_bits];
};

/// Finds the places of a row's digits and fixed bytes.
template <unsigned Blocks>
class ShapeFinder {
 public:
  /// False where the row's numbers don't fit into lanes. The row was taken by take_row().
  bool find(const RowPattern& pattern, const char* row, const KeyedRow<Blocks>& keyed) {
    for (auto& byte : source_) byte = no_byte;
    for (unsigned b = 0; b < Blocks; ++b) fixed_[b] = keyed.key.bits[b];
    negative_ = 0;
    size_ = keyed.size;
    row_ = row;
    NondigitScan scan(row);
    const char* p = row;
    unsigned lane = time_lanes;
    const RowPattern::Text* text = pattern.texts.data();
    const RowStep* const steps = pattern.steps.data();
    for (std::size_t i = 0; i < pattern.steps.size(); ++i, ++p) {
      const RowStep& step = steps[i];
      switch (step.kind) {
        case Kind::number:
          if (!place_number(pattern, step, scan, p, lane++)) return false;
          break;
        case Kind::time_of_day:
          fix(p, text++->size);
          if (!place(scan, p, pattern, pattern.time_decimals, 0, time_lanes)) return false;
          fix(p, text++->size);
          break;
        case Kind::time_seconds:
          if (!place(scan, p, pattern, pattern.time_decimals, 0, time_lanes)) return false;
          break;
        case Kind::texts:
          fix(p, text++->size);
          break;
        case Kind::ignored:
          while (*p != pattern.delimiter && *p != '\r' && *p != '\n') ++p;
          break;
      }
    }
    return true;
  }
  void describe(RowShape<Blocks>& shape) const {
    shape.fixed.set(row_, fixed_, size_);
    shape.lanes.set(source_);
    shape.size = size_;
    shape.negative = negative_;
  }

 private:
  void fix(const char*& p, std::size_t size) {
    for (std::size_t i = 0; i < size; ++i, ++p) {
      const auto at = static_cast<unsigned>(p - row_);
      fixed_[at / 64] |= std::uint64_t{1} << at % 64;
    }
  }

  bool place_number(const RowPattern& pattern, const RowStep& step, NondigitScan& scan, const char*& p,
                    unsigned lane) {
    if (*p == '-') {
      negative_ |= 1u << lane;
      ++p;
    }
    return place(scan, p, pattern, pattern.decimals[step.quantity], lane, 1);
  }

  /// The digits at `p`, filled up to so many decimals, into the last places of `lanes` lanes from `lane` on.
  bool place(NondigitScan& scan, const char*& p, const RowPattern& pattern, unsigned decimals, unsigned lane,
             unsigned lanes) {
    const Digits digits = digits_at(scan, p, pattern.decimal_comma);
    p = digits.end;
    const unsigned count = digits.whole + digits.decimals, filled = decimals - digits.decimals;
    if (count == 0) return true;
    if (count + filled > lanes * lane_digits) return false;
    std::uint8_t* const last = source_ + (lane + lanes) * lane_digits - 1 - filled;
    for (unsigned i = 0; i < count; ++i) {
      const unsigned behind = i + (digits.sign && i >= digits.decimals ? 1 : 0);
      *(last - i) = static_cast<std::uint8_t>(digits.end - 1 - behind - row_);
    }
    return true;
  }

  const char* row_ = nullptr;
  std::uint64_t fixed_[Blocks] = {};
  std::uint8_t source_[64 * Blocks] = {};
  std::uint32_t negative_ = 0, size_ = 0;
};

/// Lanes of rows that were taken by their shapes and whose values haven't been looked at.
template <unsigned Blocks>
struct LaneRows {
  static constexpr std::size_t most = 64;
  alignas(64) std::int32_t lane[most][lane_count<Blocks>];
};

/// Applies the signs; false for minus zero, which differs from zero as a double.
inline bool put_signs(std::int32_t* lanes, std::uint32_t negative) {
  bool fine = true;
  for (; negative != 0; negative &= negative - 1) {
    std::int32_t& lane = lanes[__builtin_ctz(negative)];
    fine = fine && lane != 0;
    lane = -lane;
  }
  return fine;
}

template <unsigned Blocks>
inline bool spread_time(const RowPattern& pattern, const LaneRows<Blocks>& rows, std::size_t count,
                        std::int64_t* ticks) {
  constexpr std::int64_t last_digits = 100'000'000;
  bool of_day = false;
  for (std::size_t i = 0; i < pattern.steps.size(); ++i)
    of_day = of_day || pattern.steps.data()[i].kind == Kind::time_of_day;
  const std::int64_t base = of_day ? pattern.minute_ticks : 0;
  std::int64_t most = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::int64_t number = rows.lane[i][0] * last_digits + rows.lane[i][1];
    most = number > most ? number : most;
    ticks[i] = base + number;
  }
  const std::int64_t second = powers_of_ten[pattern.time_decimals];
  return of_day ? most < 60 * second : most <= 4'500'000'000 * second;
}

/// Puts the lanes of `count` rows into the columns from `row` on; false where a value is out of its span.
template <unsigned Blocks>
inline bool spread(const RowPattern& pattern, const LaneRows<Blocks>& rows, std::size_t count,
                   const RowColumns& columns, std::size_t row) {
  bool fine = spread_time(pattern, rows, count, columns.ticks + row);
  unsigned lane = time_lanes;
  for (const RowStep *step = pattern.steps.data(), *const end = step + pattern.steps.size(); step != end;
       ++step) {
    if (step->kind != Kind::number) continue;
    std::int32_t* const to = columns.value[step->quantity] + row;
    std::int32_t least = rows.lane[0][lane], most = least;
    for (std::size_t i = 0; i < count; ++i) {
      const std::int32_t value = rows.lane[i][lane];
      least = value < least ? value : least;
      most = value > most ? value : most;
      to[i] = value;
    }
    const bool present = (pattern.present >> step->quantity & 1) != 0;
    fine = fine &&
           (!present || (least >= pattern.lowest[step->quantity] && most <= pattern.highest[step->quantity]));
    ++lane;
  }
  return fine;
}

/// The shape of the row at `p`; nullptr: it has none that is known. `latest`: of the row before, or nullptr.
template <unsigned Blocks>
inline const RowShape<Blocks>* shape_at(const ShapeTable<Blocks>& table, const char* p,
                                        const RowShape<Blocks>* latest) {
  if constexpr (tells_digits)
    if (latest != nullptr && latest->fixed.match_with_digits(p)) return latest;
  const RowShape<Blocks>* const shape = table.find(keyed_row<Blocks>(p).key);
  return shape != nullptr && shape->fixed.match(p) ? shape : nullptr;
}

/// Steps over rows. Most rows are as long as the one before, so that the processor can continue with the next
/// row on that guess instead of waiting until this row's shape is found. The compiler sees that both sizes
/// are the same where they are compared as equal, and would use the one that isn't known yet.
class Stride {
 public:
  void step(const char*& p, std::size_t size) {
    std::size_t guess = guess_;
    __asm__("" : "+r"(guess));
    if (guess_ != size) {
      guess = size;
      __asm__ volatile("" : "+r"(guess));
    }
    p += guess;
    guess_ = guess;
  }

 private:
  std::size_t guess_ = 0;
};

/// Reads rows by their shapes while these are known.
template <unsigned Blocks>
inline std::size_t take_known(const ShapeTable<Blocks>& table, const char*& p, const char* end,
                              std::size_t most, LaneRows<Blocks>& rows) {
  const RowShape<Blocks>* shape = nullptr;
  Stride stride;
  std::size_t count = 0;
  for (; count < most && p < end; ++count) {
    shape = shape_at(table, p, shape);
    if (shape == nullptr || shape->size > static_cast<std::size_t>(end - p)) break;
    shape->lanes.store(p, rows.lane[count]);
    if (shape->negative != 0 && !put_signs(rows.lane[count], shape->negative)) break;
    stride.step(p, shape->size);
  }
  return count;
}

/// As take_rows(). Each row is read by its shape, or else step by step, by which shapes are learned.
template <unsigned Blocks>
RowsTaken take_by_shape(const RowPattern& pattern, const char* text, const char* end,
                        const RowColumns& columns, std::size_t most) {
  // A run of few rows isn't worth it, nor one whose rows have a shape each.
  constexpr std::size_t rows_first = 2, shapes_first = 48, rows_a_shape = 4;
  ShapeTable<Blocks> table;
  LaneRows<Blocks> rows;
  ShapeFinder<Blocks> finder;
  std::size_t learned = 0;
  RowsTaken taken{0, text};
  while (taken.next < end && taken.rows < most) {
    std::size_t one_by_one = 1;
    if (learned > 0) {
      const char* p = taken.next;
      const std::size_t room = most - taken.rows < rows.most ? most - taken.rows : rows.most;
      const std::size_t count = take_known(table, p, end, room, rows);
      if (count > 0 && spread(pattern, rows, count, columns, taken.rows)) {
        taken.rows += count;
        taken.next = p;
        if (count == room) continue;
        one_by_one = taken.next < end ? 1 : 0;
      } else if (count > 0) {
        one_by_one = count;
      }
    }
    for (; one_by_one > 0; --one_by_one) {
      const char* p = taken.next;
      if (!take_row(pattern, p, columns, taken.rows) || p > end || p - taken.next > kernel_row_bytes)
        return taken;
      const KeyedRow<Blocks> keyed = keyed_row<Blocks>(taken.next);
      RowShape<Blocks> shape;
      if (taken.rows >= rows_first && learned < shapes_first + taken.rows / rows_a_shape &&
          keyed.size <= 64 * Blocks && keyed.size == static_cast<std::size_t>(p - taken.next) &&
          table.find(keyed.key) == nullptr && finder.find(pattern, taken.next, keyed)) {
        finder.describe(shape);
        table.put(keyed.key, shape);
        ++learned;
      }
      ++taken.rows;
      taken.next = p;
    }
  }
  return taken;
}

/// A short row is read at once, a longer one in two halves; beyond that rows go step by step.
RowsTaken take_rows(const RowPattern& pattern, const char* text, const char* end, const RowColumns& columns,
                    std::size_t most) {
  // Rows of one run differ by some digits.
  constexpr std::ptrdiff_t spare = 4;
  unsigned lanes = time_lanes;
  for (std::size_t i = 0; i < pattern.steps.size(); ++i)
    lanes += pattern.steps.data()[i].kind == Kind::number ? 1 : 0;
  const char* line_end = text;
  while (line_end < end && *line_end != '\n' && line_end - text < 64) ++line_end;
  if (line_end - text + spare < 64 && lanes <= lane_count<1>)
    return take_by_shape<1>(pattern, text, end, columns, most);
  return take_by_shape<2>(pattern, text, end, columns, most);
}
