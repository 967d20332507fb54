#pragma once

#include <QColor>
#include <array>
#include <optional>

#include "base/finding.hpp"

namespace seamtakt::desk {

/// The desk's colours. Marks always come with a shape and a word of their own.
struct Palette {
  QColor paper, ink, quiet, rule, field, selection, accent;
  QColor ok, note, warn, fail;
  bool dark = false;

  QColor of(std::optional<Severity> severity) const;
  /// Series in plots: eight colours that colour-blind people tell apart (Okabe, Ito).
  QColor series(int index) const;
  /// A colour of such a kind, lighter where the palette is dark.
  QColor shown(const QColor& color) const;

  static const Palette& light();
  static const Palette& night();
  /// The palette in use.
  static const Palette& current();
  static void setDark(bool dark);
};

/// Heat ramp after the temper colours of steel, ordered by lightness.
inline constexpr std::array<unsigned, 7> heat_ramp = {0x16243d, 0x3b3a6e, 0x7a4a73, 0xb0653f,
                                                      0xd99a3e, 0xf0d27a, 0xfbf4dc};

}  // namespace seamtakt::desk
