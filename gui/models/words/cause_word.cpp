#include "models/words/cause_word.hpp"

#include <string_view>

#include "document/shown_text.hpp"

namespace seamtakt::desk {

namespace {

/// How a rule begins or ends, and what it is about. The first that fits counts.
struct CauseWord {
  std::string_view begins, ends;
  Word words;
};

constexpr CauseWord all_words[] = {
    {"record.", ".guard-band", "within the uncertainty of a limit"_word},
    {"record.", ".high", "above a limit"_word},
    {"record.", ".low", "below a limit"_word},
    {"record.", ".excursion", "outside a limit for a stretch"_word},
    {"record.instrument.overdue", "", "instrument overdue"_word},
    {"record.length.short", "", "shorter than its seam"_word},
    {"record.length.part", "", "a part of its seam"_word},
    {"record.length.", "", "length not known"_word},
    {"record.position.", "", "length not known"_word},
    {"record.travel-speed.", "", "length not known"_word},
    {"record.schedule.", "", "schedule revision"_word},
    {"record.logger.frozen", "", "logger frozen"_word},
    {"record.power.missing", "", "energy incomplete"_word},
    {"record.heat-input.unknown", "", "no heat input"_word},
    {"record.cooling-time.unknown", "", "no cooling time"_word},
    {"record.process.", "", "no heat input"_word},
    {"record.steady.none", "", "no steady part"_word},
    {"record.required.missing", "", "required column missing"_word},
    {"record.unit.border", "", "cut by the unit's time"_word},
    {"record.time.", "", "times in disorder"_word},
    {"record.order.", "", "order of passes"_word},
    {"manual.result.", "", "result of the manual seam"_word},
};

}  // namespace

QString cause_word(const std::string& rule) {
  for (const CauseWord& each : all_words)
    if (rule.starts_with(each.begins) && rule.ends_with(each.ends)) return shown_word(each.words.english());
  return QString::fromStdString(rule);
}

}  // namespace seamtakt::desk
