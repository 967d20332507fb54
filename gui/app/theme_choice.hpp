#pragma once

#include <QString>

namespace seamtakt::desk {

/// "light", "dark" or "system": as the platform's own palette is at the program's start.
void choose_theme(const QString& theme);

/// Texts in this language ("de", "en"; empty: the system's), and the names of the core's tables with them.
void choose_language(const QString& language);

/// Whether the platform started with light letters on a dark background; determined once, before a style is
/// applied.
void look_at_platform();

/// Takes the platform's present colours; true if light became dark or dark light.
bool follow_platform();

}  // namespace seamtakt::desk
