#pragma once

#include <QString>
#include <span>
#include <string>
#include <string_view>

namespace seamtakt::desk {

/// What an explanation says in words (where a formula holds, how sure it is, its clause, how its source was
/// had, what a symbol stands for) in the user's language. A text that isn't known stays English.
QString note_text(const std::string& text);

/// These texts, in English.
std::span<const char* const> note_texts();

/// Name of an explained result in the user's language: the label of its column, or of its own where it is on
/// the way to one ("cooling_time_2d_s"). A key that isn't known comes back as it is.
QString result_label(std::string_view key);

}  // namespace seamtakt::desk
