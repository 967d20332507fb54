#pragma once

#include <QString>

namespace seamtakt::desk {

/// A sentence's quantities in the view's units: "a leg of 5.11 of 6 mm" is "a leg of 0.201 of 0.236 in" in
/// the US view. Sentences are written in the files' units; numbers without a unit stay as they are.
QString in_shown_units(const QString& sentence);

}  // namespace seamtakt::desk
