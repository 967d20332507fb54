#include "exchange/sheets/qr_code.hpp"

#include <qrencode.h>

#include <cerrno>
#include <memory>
#include <system_error>

#include "exchange/sheets/html.hpp"

namespace seamtakt {

namespace {

struct FreeCode {
  void operator()(QRcode* code) const { QRcode_free(code); }
};

/// The white border that readers need around a code.
constexpr int border = 4;

}  // namespace

std::string qr_svg(const std::string& text, const std::string& label) {
  const std::unique_ptr<QRcode, FreeCode> code(QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M));
  if (!code)
    throw std::system_error(errno, std::generic_category(),
                            "QR code of " + std::to_string(text.size()) + " bytes");
  const std::string side = std::to_string(code->width + 2 * border);
  std::string svg = "<svg role=\"img\" class=\"qr\" aria-label=\"" + html_text(label) + "\" viewBox=\"0 0 " +
                    side + " " + side + "\" width=\"150\" height=\"150\"><rect fill=\"#fff\" width=\"" +
                    side + "\" height=\"" + side + "\"/><path fill=\"#000\" d=\"";
  for (int y = 0; y < code->width; ++y)
    for (int x = 0; x < code->width; ++x)
      if (code->data[y * code->width + x] & 1)
        svg += "M" + std::to_string(x + border) + " " + std::to_string(y + border) + "h1v1h-1z";
  return svg + "\"/></svg>\n";
}

}  // namespace seamtakt
