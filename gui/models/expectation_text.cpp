#include "models/expectation_text.hpp"

#include "models/core_sentences.hpp"

namespace seamtakt::desk {

namespace {

// clang-format off: one text a line
constexpr const char* expectations[] = {
    QT_TRANSLATE_NOOP("Expectation", "a text that isn't empty"),
    QT_TRANSLATE_NOOP("Expectation", "a text"),
    QT_TRANSLATE_NOOP("Expectation", "a date YYYY-MM-DD"),
    QT_TRANSLATE_NOOP("Expectation", "true or false"),
    QT_TRANSLATE_NOOP("Expectation", "[lower, upper], each %1"),
    QT_TRANSLATE_NOOP("Expectation", "null or %1"),
    QT_TRANSLATE_NOOP("Expectation", "%1, or null"),
    QT_TRANSLATE_NOOP("Expectation", "one of %1, or %2"),
    QT_TRANSLATE_NOOP("Expectation", "one of %1"),
    QT_TRANSLATE_NOOP("Expectation", "%1 and %2"),
    QT_TRANSLATE_NOOP("Expectation", "the text %1"),
    QT_TRANSLATE_NOOP("Expectation", "a list, each %1"),
    QT_TRANSLATE_NOOP("Expectation", "a list of %1, each %2"),
    QT_TRANSLATE_NOOP("Expectation", "a list of at least %1, each %2"),
    QT_TRANSLATE_NOOP("Expectation", "a number"),
    QT_TRANSLATE_NOOP("Expectation", "a number in %1"),
    QT_TRANSLATE_NOOP("Expectation", "a number equal to %1"),
    QT_TRANSLATE_NOOP("Expectation", "a number from %1 to %2"),
    QT_TRANSLATE_NOOP("Expectation", "a number above %1"),
    QT_TRANSLATE_NOOP("Expectation", "a number above %1 and below %2"),
    QT_TRANSLATE_NOOP("Expectation", "a number above %1 and at most %2"),
    QT_TRANSLATE_NOOP("Expectation", "a number of at least %1"),
    QT_TRANSLATE_NOOP("Expectation", "a number of at least %1 and below %2"),
    QT_TRANSLATE_NOOP("Expectation", "a number below %1"),
    QT_TRANSLATE_NOOP("Expectation", "a number at most %1"),
    QT_TRANSLATE_NOOP("Expectation", "a whole number"),
    QT_TRANSLATE_NOOP("Expectation", "a whole number from %1 to %2"),
    QT_TRANSLATE_NOOP("Expectation", "a whole number above %1"),
    QT_TRANSLATE_NOOP("Expectation", "a whole number of at least %1"),
    QT_TRANSLATE_NOOP("Expectation", "a mass percentage from 0 to 100"),
    QT_TRANSLATE_NOOP("Expectation", "an object of mass percentages by element symbol"),
    QT_TRANSLATE_NOOP("Expectation", "an id"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a base metal"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a wire"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a gas"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a power source"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a schedule"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a qualification"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a seam of this weldment"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a robot"),
    QT_TRANSLATE_NOOP("Expectation", "the id of an orientation"),
    QT_TRANSLATE_NOOP("Expectation", "the id of a stage"),
    QT_TRANSLATE_NOOP("Expectation", "a seam as weldment/seam"),
};
// clang-format on

}  // namespace

QString expectation_text(const std::string& text) {
  static const CoreSentences sentences("Expectation", expectations);
  return sentences.translated(QString::fromStdString(text));
}

}  // namespace seamtakt::desk
