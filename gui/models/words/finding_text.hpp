#pragma once

#include <QString>
#include <span>

#include "base/finding.hpp"

namespace seamtakt::desk {

/// A finding's sentence or source in the user's language. The core speaks English; its sentences are known
/// here as templates with holes, so names and numbers go over as they are. A sentence that isn't known stays
/// English.
QString finding_text(const std::string& text);

/// The templates, in English.
std::span<const char* const> finding_templates();

}  // namespace seamtakt::desk
