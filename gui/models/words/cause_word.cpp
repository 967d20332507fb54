#include "models/words/cause_word.hpp"

#include <QCoreApplication>
#include <string_view>

namespace seamtakt::desk {

namespace {

/// How a rule begins or ends, and what it is about. The first that fits counts.
struct Words {
  std::string_view begins, ends;
  const char* words;
};

constexpr Words all_words[] = {
    {"record.", ".guard-band", QT_TRANSLATE_NOOP("RecordCause", "within the uncertainty of a limit")},
    {"record.", ".high", QT_TRANSLATE_NOOP("RecordCause", "above a limit")},
    {"record.", ".low", QT_TRANSLATE_NOOP("RecordCause", "below a limit")},
    {"record.instrument.overdue", "", QT_TRANSLATE_NOOP("RecordCause", "instrument overdue")},
    {"record.length.short", "", QT_TRANSLATE_NOOP("RecordCause", "shorter than its seam")},
    {"record.length.part", "", QT_TRANSLATE_NOOP("RecordCause", "a part of its seam")},
    {"record.length.", "", QT_TRANSLATE_NOOP("RecordCause", "length not known")},
    {"record.position.", "", QT_TRANSLATE_NOOP("RecordCause", "length not known")},
    {"record.travel-speed.", "", QT_TRANSLATE_NOOP("RecordCause", "length not known")},
    {"record.schedule.", "", QT_TRANSLATE_NOOP("RecordCause", "schedule revision")},
    {"record.logger.frozen", "", QT_TRANSLATE_NOOP("RecordCause", "logger frozen")},
    {"record.power.missing", "", QT_TRANSLATE_NOOP("RecordCause", "energy incomplete")},
    {"record.heat-input.unknown", "", QT_TRANSLATE_NOOP("RecordCause", "no heat input")},
    {"record.cooling-time.unknown", "", QT_TRANSLATE_NOOP("RecordCause", "no cooling time")},
    {"record.process.", "", QT_TRANSLATE_NOOP("RecordCause", "no heat input")},
    {"record.steady.none", "", QT_TRANSLATE_NOOP("RecordCause", "no steady part")},
    {"record.required.missing", "", QT_TRANSLATE_NOOP("RecordCause", "required column missing")},
    {"record.unit.border", "", QT_TRANSLATE_NOOP("RecordCause", "cut by the unit's time")},
    {"record.time.", "", QT_TRANSLATE_NOOP("RecordCause", "times in disorder")},
    {"record.order.", "", QT_TRANSLATE_NOOP("RecordCause", "order of passes")},
    {"manual.result.", "", QT_TRANSLATE_NOOP("RecordCause", "result of the manual seam")},
};

}  // namespace

QString cause_word(const std::string& rule) {
  for (const Words& each : all_words)
    if (rule.starts_with(each.begins) && rule.ends_with(each.ends))
      return QCoreApplication::translate("RecordCause", each.words);
  return QString::fromStdString(rule);
}

}  // namespace seamtakt::desk
