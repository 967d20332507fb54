#include "document/refusal_text.hpp"

#include <QCoreApplication>

#include "document/core_sentences.hpp"

namespace seamtakt::desk {

namespace {

// clang-format off: one text a line
constexpr const char* refusals[] = {
    QT_TRANSLATE_NOOP("Refusal", "a text that isn't empty"),
    QT_TRANSLATE_NOOP("Refusal", "a text"),
    QT_TRANSLATE_NOOP("Refusal", "a date YYYY-MM-DD"),
    QT_TRANSLATE_NOOP("Refusal", "true or false"),
    QT_TRANSLATE_NOOP("Refusal", "[lower, upper], each %1"),
    QT_TRANSLATE_NOOP("Refusal", "null or %1"),
    QT_TRANSLATE_NOOP("Refusal", "%1, or null"),
    QT_TRANSLATE_NOOP("Refusal", "one of %1, or %2"),
    QT_TRANSLATE_NOOP("Refusal", "one of %1"),
    QT_TRANSLATE_NOOP("Refusal", "%1 and %2"),
    QT_TRANSLATE_NOOP("Refusal", "the text %1"),
    QT_TRANSLATE_NOOP("Refusal", "a list, each %1"),
    QT_TRANSLATE_NOOP("Refusal", "a list of %1, each %2"),
    QT_TRANSLATE_NOOP("Refusal", "a list of at least %1, each %2"),
    QT_TRANSLATE_NOOP("Refusal", "a number"),
    QT_TRANSLATE_NOOP("Refusal", "a number in %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number equal to %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number from %1 to %2"),
    QT_TRANSLATE_NOOP("Refusal", "a number above %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number above %1 and below %2"),
    QT_TRANSLATE_NOOP("Refusal", "a number above %1 and at most %2"),
    QT_TRANSLATE_NOOP("Refusal", "a number of at least %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number of at least %1 and below %2"),
    QT_TRANSLATE_NOOP("Refusal", "a number below %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number at most %1"),
    QT_TRANSLATE_NOOP("Refusal", "a whole number"),
    QT_TRANSLATE_NOOP("Refusal", "a whole number from %1 to %2"),
    QT_TRANSLATE_NOOP("Refusal", "a whole number above %1"),
    QT_TRANSLATE_NOOP("Refusal", "a whole number of at least %1"),
    QT_TRANSLATE_NOOP("Refusal", "a mass percentage from 0 to 100"),
    QT_TRANSLATE_NOOP("Refusal", "an object of mass percentages by element symbol"),
    QT_TRANSLATE_NOOP("Refusal", "an id"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a base metal"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a wire"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a gas"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a power source"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a schedule"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a qualification"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a seam of this weldment"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a robot"),
    QT_TRANSLATE_NOOP("Refusal", "the id of an orientation"),
    QT_TRANSLATE_NOOP("Refusal", "the id of a stage"),
    QT_TRANSLATE_NOOP("Refusal", "a seam as weldment/seam"),
    QT_TRANSLATE_NOOP("Refusal", "%1; the nearest is %2"),
    // What was found in its stead, and what is asked of several fields together.
    QT_TRANSLATE_NOOP("Refusal", "nothing"),
    QT_TRANSLATE_NOOP("Refusal", "an empty text"),
    QT_TRANSLATE_NOOP("Refusal", "an empty list"),
    QT_TRANSLATE_NOOP("Refusal", "a list of %1"),
    QT_TRANSLATE_NOOP("Refusal", "unit %1 in %2"),
    QT_TRANSLATE_NOOP("Refusal", "unknown unit %1 in %2"),
    QT_TRANSLATE_NOOP("Refusal", "a path of length 0 mm"),
    QT_TRANSLATE_NOOP("Refusal", "points that lie apart"),
    QT_TRANSLATE_NOOP("Refusal",
                      "an electrode extension of %1 mm (contact_tip_distance_mm %2 less arc_length_mm %3)"),
    QT_TRANSLATE_NOOP("Refusal", "an extension above 0 mm"),
    QT_TRANSLATE_NOOP("Refusal", "a run of %1 mm"),
    QT_TRANSLATE_NOOP("Refusal", "at most the seam's length, %1 mm"),
    QT_TRANSLATE_NOOP("Refusal", "a run of %1 mm on a seam of %2 mm"),
    QT_TRANSLATE_NOOP("Refusal", "runs long enough that there are at most %1"),
    QT_TRANSLATE_NOOP("Refusal", "a largest fillet on a groove"),
    QT_TRANSLATE_NOOP("Refusal", "a seam with leg_mm or throat_mm"),
    QT_TRANSLATE_NOOP("Refusal", "at least the size as drawn, %1 mm"),
    QT_TRANSLATE_NOOP("Refusal", "a circle: %1"),
    QT_TRANSLATE_NOOP("Refusal", "seams of which each comes after others without coming after itself"),
    QT_TRANSLATE_NOOP("Refusal", "a comma"),
    QT_TRANSLATE_NOOP("Refusal", "an open quote in %1"),
    QT_TRANSLATE_NOOP("Refusal", "a quote at the end of the item"),
    QT_TRANSLATE_NOOP("Refusal", "a finite number"),
    QT_TRANSLATE_NOOP("Refusal", "a number without a unit"),
    QT_TRANSLATE_NOOP("Refusal", "a number with %1"),
    QT_TRANSLATE_NOOP("Refusal", "a number of usual size (0, or 1e-15 to 1e15)"),
    QT_TRANSLATE_NOOP("Refusal", "a time of at most %1"),
    QT_TRANSLATE_NOOP("Refusal", "three numbers: x y z"),
    QT_TRANSLATE_NOOP("Refusal", "two bounds, such as 2 .. 6, 2 .. or .. 6"),
    QT_TRANSLATE_NOOP("Refusal", "a lower bound that isn't above the upper one"),
    QT_TRANSLATE_NOOP("Refusal", "%1 or %2"),
};
// clang-format on

}  // namespace

QString expectation_text(const std::string& text) {
  static const CoreSentences sentences("Refusal", refusals);
  return sentences.translated(QString::fromStdString(text));
}

QString refusal_text(const InputError& error) {
  return QCoreApplication::translate("Refusal", "found %1, expected %2")
      .arg(expectation_text(error.found()), expectation_text(error.expected()));
}

}  // namespace seamtakt::desk
