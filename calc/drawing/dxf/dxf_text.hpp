#pragma once

#include <string>

namespace seamtakt::drawing {

/// Refuses what isn't a whole DXF file of text: lines of group code and value by turns, up to the group
/// "0 EOF", numbers finite and of a drawing's size, counts no larger than the file. The library that reads it
/// afterwards believes what it reads. Refusal names the line.
void check_dxf_text(const std::string& text, const std::string& path);

}  // namespace seamtakt::drawing
