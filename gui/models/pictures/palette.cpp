#include "models/pictures/palette.hpp"

namespace seamtakt::desk {

namespace {

const Palette* in_use = nullptr;

Palette made_light() {
  Palette p;
  p.paper = QColor(0xf7, 0xf5, 0xf0);
  p.ink = QColor(0x23, 0x27, 0x2e);
  p.quiet = QColor(0x5a, 0x62, 0x6d);
  p.rule = QColor(0xd8, 0xd3, 0xc7);
  p.field = QColor(0xff, 0xfd, 0xf8);
  p.selection = QColor(0xdc, 0xe5, 0xec);
  p.accent = QColor(0x1f, 0x4e, 0x79);
  p.ok = QColor(0x0b, 0x6e, 0x5a);
  p.note = QColor(0x1f, 0x5f, 0x99);
  p.warn = QColor(0x8a, 0x5a, 0x00);
  // Beside the warning apart by 21 in CIELAB for eyes without green cones, too.
  p.fail = QColor(0xa0, 0x18, 0x30);
  return p;
}

Palette made_night() {
  Palette p;
  p.paper = QColor(0x1d, 0x21, 0x27);
  p.ink = QColor(0xe8, 0xe6, 0xe1);
  p.quiet = QColor(0xa7, 0xaf, 0xba);
  p.rule = QColor(0x3a, 0x41, 0x4b);
  p.field = QColor(0x25, 0x2a, 0x31);
  p.selection = QColor(0x33, 0x41, 0x52);
  p.accent = QColor(0x8f, 0xbc, 0xe6);
  p.ok = QColor(0x4f, 0xc3, 0xa1);
  p.note = QColor(0x7f, 0xb6, 0xe6);
  p.warn = QColor(0xe7, 0xb2, 0x4a);
  p.fail = QColor(0xff, 0x80, 0x80);
  p.dark = true;
  return p;
}

}  // namespace

const Palette& Palette::light() {
  static const Palette palette = made_light();
  return palette;
}

const Palette& Palette::night() {
  static const Palette palette = made_night();
  return palette;
}

const Palette& Palette::current() {
  return in_use ? *in_use : light();
}
void Palette::setDark(bool dark) {
  in_use = dark ? &night() : &light();
}

QColor Palette::of(std::optional<Severity> severity) const {
  if (!severity) return ok;
  switch (*severity) {
    case Severity::fail:
      return fail;
    case Severity::warn:
      return warn;
    case Severity::note:
      return note;
  }
  return ok;
}

QColor Palette::series(int index) const {
  static constexpr unsigned okabe_ito[] = {0x0072b2, 0xd55e00, 0x009e73, 0xcc79a7,
                                           0xe69f00, 0x56b4e9, 0xf0e442};
  return shown(QColor::fromRgb(okabe_ito[static_cast<std::size_t>(index) % std::size(okabe_ito)]));
}

QColor Palette::shown(const QColor& color) const {
  return dark ? color.lighter(125) : color;
}

}  // namespace seamtakt::desk
