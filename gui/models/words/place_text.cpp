#include "models/words/place_text.hpp"

#include <QCoreApplication>
#include <algorithm>
#include <string_view>

namespace seamtakt::desk {

QString place_text(const std::string& place) {
  constexpr std::string_view pass = "/pass ", schedule = "schedule ";
  const QString text = QString::fromStdString(place);
  if (const std::size_t at = place.rfind(pass); at != std::string::npos) {
    const std::string_view number = std::string_view(place).substr(at + pass.size());
    if (!number.empty() &&
        std::all_of(number.begin(), number.end(), [](char c) { return '0' <= c && c <= '9'; }))
      return QCoreApplication::translate("Place", "%1/pass %2")
          .arg(QString::fromStdString(place.substr(0, at)),
               QString::fromUtf8(number.data(), static_cast<qsizetype>(number.size())));
  }
  if (place.starts_with(schedule))
    return QCoreApplication::translate("Place", "schedule %1").arg(text.mid(schedule.size()));
  return text;
}

}  // namespace seamtakt::desk
