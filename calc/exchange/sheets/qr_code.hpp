#pragma once

#include <string>

namespace seamtakt {

/// A QR code (ISO/IEC 18004, error correction M) of a text as an SVG drawing of its own, with `label` for
/// those who can't see it. Errors: std::system_error, for instance where the text is too long for one code
/// (about 2,300 bytes).
std::string qr_svg(const std::string& text, const std::string& label);

}  // namespace seamtakt
