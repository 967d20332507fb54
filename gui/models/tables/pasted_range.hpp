#pragma once

#include <QString>
#include <memory>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt::desk {

class Document;
class GridModel;

/// A text for one cell of a table; from the table's row count on, of a row to be added.
struct PastedCell {
  int row = 0, column = 0;
  QString text;
};

/// What a paste would do, before anything is done.
struct PastedRange {
  struct Line {
    QString where;          ///< "S03, Gap"
    QString before, after;  ///< as shown and as pasted
    QString refusal;        ///< why the cell can't be taken; empty: it can
  };
  std::vector<Line> lines;                    ///< the cells that would change or are refused, in their order
  int rows = 0;                               ///< in which a cell would change, added ones among them
  int cells = 0;                              ///< that would change
  int added = 0;                              ///< rows
  int refused = 0;                            ///< cells
  int left_out = 0;                           ///< cells with a text where the table's values are derived
  std::shared_ptr<const Plan> before, after;  ///< the plan with all of it; `after` only where none is refused
};

/// Reads the texts in the view's units and language. An id that differs from the row's is refused: it is
/// changed by the command Rename. In an added row an empty text means absent.
PastedRange read_pasted(const GridModel& grid, const std::vector<PastedCell>& cells);

}  // namespace seamtakt::desk
