#include "app/drawing_words.hpp"

#include <QCoreApplication>
#include <string_view>

#include "document/shown_text.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

QString flag_text(const std::string& flag) {
  if (flag == "inner") return QCoreApplication::translate("DrawingWords", "inside a hollow part");
  if (flag == "flare") return QCoreApplication::translate("DrawingWords", "beside a curved part");
  if (flag == "end") return QCoreApplication::translate("DrawingWords", "end of a plate");
  if (flag == "overlap") return QCoreApplication::translate("DrawingWords", "the parts overlap");
  if (flag == "flush") return QCoreApplication::translate("DrawingWords", "flush");
  if (flag == "back") return QCoreApplication::translate("DrawingWords", "back of a butt");
  if (flag == "hardware") return QCoreApplication::translate("DrawingWords", "bolt or the like");
  if (flag == "declined") return QCoreApplication::translate("DrawingWords", "not wanted");
  return QString::fromStdString(flag);
}

}  // namespace

QString side_name(const DrawingCandidate& side) {
  return QString::fromStdString(side.seam.empty() ? side.joint->id + "/" + side.side->id : side.seam);
}

QString size_text(const ProposedSize& size, const UnitView& units) {
  const std::string_view key = size.key;
  const QString value = units.quantityText(size.mm, "mm", 3);
  if (key == "leg_mm") return QCoreApplication::translate("DrawingWords", "leg %1").arg(value);
  if (key == "throat_mm") return QCoreApplication::translate("DrawingWords", "throat %1").arg(value);
  return QCoreApplication::translate("DrawingWords", "through, %1").arg(value);
}

QString state_text(const DrawingCandidate& side) {
  QStringList reasons;
  switch (side.state) {
    case DrawingCandidate::State::added:
      return QCoreApplication::translate("DrawingWords", "new");
    case DrawingCandidate::State::moved:
      return QCoreApplication::translate("DrawingWords", "moved");
    case DrawingCandidate::State::unchanged:
      return QCoreApplication::translate("DrawingWords", "unchanged");
    case DrawingCandidate::State::open:
      for (const Word lack : side.lacks) reasons << shown_word(lack.english());
      return QCoreApplication::translate("DrawingWords", "lacks %1").arg(reasons.join(", "));
    case DrawingCandidate::State::left_out:
      for (const std::string& flag : side.flags) reasons << flag_text(flag);
      return QCoreApplication::translate("DrawingWords", "left out: %1").arg(reasons.join(", "));
  }
  return {};
}

}  // namespace seamtakt::desk
