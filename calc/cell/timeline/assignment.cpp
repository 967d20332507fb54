#include "cell/timeline/assignment.hpp"

#include <cstddef>
#include <limits>

namespace seamtakt {

double assignment_cost(const std::vector<double>& cost, int count) {
  constexpr double none = std::numeric_limits<double>::infinity();
  const auto size = static_cast<std::size_t>(count) + 1;
  // Rows and columns count from 1; column 0 represents the row that is being placed.
  std::vector<double> row_price(size, 0), column_price(size, 0), least(size);
  std::vector<int> row_of(size, 0), way(size, 0);
  std::vector<char> used(size);
  for (int row = 1; row <= count; ++row) {
    row_of[0] = row;
    int column = 0;
    least.assign(size, none);
    used.assign(size, 0);
    do {
      used[column] = 1;
      const int at = row_of[column];
      int next = -1;
      double step = none;
      for (int other = 1; other <= count; ++other) {
        if (used[other]) continue;
        const double price = cost[static_cast<std::size_t>(at - 1) * static_cast<std::size_t>(count) +
                                  static_cast<std::size_t>(other - 1)] -
                             row_price[at] - column_price[other];
        if (price < least[other]) {
          least[other] = price;
          way[other] = column;
        }
        if (least[other] < step) {
          step = least[other];
          next = other;
        }
      }
      if (next < 0) return none;
      for (int other = 0; other <= count; ++other)
        if (used[other]) {
          row_price[row_of[other]] += step;
          column_price[other] -= step;
        } else {
          least[other] -= step;
        }
      column = next;
    } while (row_of[column] != 0);
    while (column != 0) {
      row_of[column] = row_of[way[column]];
      column = way[column];
    }
  }
  double sum = 0;
  for (int column = 1; column <= count; ++column)
    sum += cost[static_cast<std::size_t>(row_of[column] - 1) * static_cast<std::size_t>(count) +
                static_cast<std::size_t>(column - 1)];
  return sum;
}

}  // namespace seamtakt
