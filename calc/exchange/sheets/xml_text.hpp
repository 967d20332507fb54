#pragma once

#include <string>
#include <string_view>

namespace seamtakt {

/// Who escapes control characters below U+0020.
enum class XmlControls {
  escaped,  ///< here
  left      ///< whoever writes the text
};

/// Text as a part of an XML file: a character that XML 1.0 can't hold at all (clause 2.2: control characters
/// but tab and line ends, U+FFFE, U+FFFF) and a byte that isn't UTF-8 stand there as `printable` writes them.
/// Marks such as < and & stay: whoever writes the file escapes those.
std::string xml_text(std::string_view text, XmlControls controls = XmlControls::escaped);

}  // namespace seamtakt
