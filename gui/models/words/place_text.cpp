#include "models/words/place_text.hpp"

#include "base/sentences/place_sentence.hpp"
#include "document/shown_text.hpp"

namespace seamtakt::desk {

QString place_text(const std::string& place) {
  return shown_text(place_sentence(place));
}

}  // namespace seamtakt::desk
