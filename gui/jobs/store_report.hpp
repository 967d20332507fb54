#pragma once

#include <QString>

namespace seamtakt::desk {

/// What a report of a store is of.
struct StoreReportQuestion {
  enum class Kind { unit, certificate, period } kind = Kind::unit;
  QString uri;
  QString unit;      ///< of unit and certificate
  QString from, to;  ///< of a period; empty: open
  QString seam;      ///< "BD/S03": one seam over time; empty: all
};

}  // namespace seamtakt::desk
