#include "models/finding_text.hpp"

namespace seamtakt::desk {

// clang-format off: one text a line
/// What the core says in findings, with holes for names and numbers.
constexpr const char* templates[] = {
    QT_TRANSLATE_NOOP("Finding", "%1 is %2, below the lower limit of %3."),
    QT_TRANSLATE_NOOP("Finding", "%1 is %2, above the upper limit of %3."),
    QT_TRANSLATE_NOOP("Finding", "%1 is %2, within its uncertainty of the lower limit of %3."),
    QT_TRANSLATE_NOOP("Finding", "%1 is %2, within its uncertainty of the upper limit of %3."),
    QT_TRANSLATE_NOOP("Finding", "%1 is %2 of %3 mm that the drawing asks for."),
    QT_TRANSLATE_NOOP("Finding",
                      "%1 of %2 mm is within its uncertainty of the %3 mm that the drawing asks for."),
    QT_TRANSLATE_NOOP("Finding",
                      "The drawing's leg of %1 mm is below the code's minimum of %2 mm for these plates."),
    QT_TRANSLATE_NOOP("Finding", "The drawing's throat of %1 mm is below 3 mm."),
    QT_TRANSLATE_NOOP("Finding", "All passes together lay %1 of %2 mm2 that groove and cap need."),
    QT_TRANSLATE_NOOP("Finding",
                      "A run of %1 mm is shorter than the %2 mm (30 mm or 6 throats) from which a fillet is "
                      "taken to carry load."),
    QT_TRANSLATE_NOOP("Finding", "Schedule %1 revision %2 is %3, and seams use it."),
    QT_TRANSLATE_NOOP("Finding", "Qualification %1 is dated %2, after %3."),
    QT_TRANSLATE_NOOP("Finding", "Qualification %1 was last used on %2, after %3."),
    QT_TRANSLATE_NOOP("Finding",
                      "The composition of %1 is %2: carbon equivalents, preheat and hardness from it may lie "
                      "far from the delivered plate's."),
    QT_TRANSLATE_NOOP("Finding", "Current of %1 A is above the %2 A that %3 is rated for."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "One arc of %1 s at %2 A is longer than the %3 s that the duty cycle of %4 allows in 10 min."),
    QT_TRANSLATE_NOOP("Finding", "Preheat is %1 C, method B asks for %2 C."),
    QT_TRANSLATE_NOOP("Finding",
                      "Preheat is %1 C, method B asks for %2 C. The composition is the standard's maximum: "
                      "the delivered plate will need less."),
    QT_TRANSLATE_NOOP(
        "Finding", "Preheat is %1 C, method B asks for %2 C, but the pass lies outside the method's range."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "Preheat is %1 C, method B asks for %2 C, but the pass lies outside the method's range. The "
        "composition is the standard's maximum: the delivered plate will need less."),
    QT_TRANSLATE_NOOP("Finding", "%1 of %2 is outside the %3 that %4 qualifies."),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 is used, %3 was tested with %4."),
    QT_TRANSLATE_NOOP("Finding", "Preheat is below the qualification test's."),
    QT_TRANSLATE_NOOP("Finding", "Position %1 and the path's direction (up) contradict each other."),
    QT_TRANSLATE_NOOP("Finding", "Position %1 and the path's direction (down) contradict each other."),
    QT_TRANSLATE_NOOP("Finding", "Schedule %1 is for %2, the seam is welded in %3."),
    QT_TRANSLATE_NOOP("Finding", "Tacks of leg %1 mm stand out of a seam of leg %2 mm."),
    QT_TRANSLATE_NOOP("Finding", "Tacks of %1 mm are shorter than %2 mm."),
    QT_TRANSLATE_NOOP("Finding", "Through-arc tracking on a leg of %1 mm: it works from about 3 to 4 mm."),
    QT_TRANSLATE_NOOP("Finding", "Through-arc tracking needs a weave, and schedule %1 has none."),
    QT_TRANSLATE_NOOP("Finding", "The accepted finding %1 isn't there any more; drop its acceptance."),
    QT_TRANSLATE_NOOP("Finding",
                      "The seams of balance group %1 lie in one place: there are no sides to take by turns."),
    QT_TRANSLATE_NOOP(
        "Finding", "Balance group %1 and another come after one another: its sides aren't taken by turns."),
    QT_TRANSLATE_NOOP("Finding",
                      "Balance group %1: it is begun right after %2 on the same side, though %3 on the other "
                      "side could be."),
    QT_TRANSLATE_NOOP("Finding", "The seam has no schedule: it isn't in the timeline."),
    QT_TRANSLATE_NOOP("Finding", "The seam is shorter than one of its runs: it isn't in the timeline."),
    QT_TRANSLATE_NOOP("Finding", "No robot of the cell reaches the seam: it isn't in the timeline."),
    QT_TRANSLATE_NOOP("Finding",
                      "What is loaded on %1 doesn't fit the seam's schedules and can't be changed, and no "
                      "other robot reaches it: it isn't in the timeline."),
    QT_TRANSLATE_NOOP("Finding", "What is loaded on %1 doesn't fit and can't be changed: %2 welds the seam."),
    QT_TRANSLATE_NOOP("Finding",
                      "It comes after the manual seam %1, which is taken as welded before the robots begin."),
    QT_TRANSLATE_NOOP("Finding", "The cycle takes %1 s; the takt leaves %2 s."),
    QT_TRANSLATE_NOOP("Finding", "The cycle takes %1 s; the takt leaves %2 s (%3 % of %4 s)."),
    QT_TRANSLATE_NOOP("Finding", "One run of arc is longer than the torch may weld between two services."),
    QT_TRANSLATE_NOOP("Finding",
                      "The robot ends with %1 and began with %2: changing back isn't in the cycle."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "In its worst 10 min the source heats like %1 A for ever; rated %2 A at %3 % it carries %4 A."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "In the file it stands before a seam that must be welded first: a later seam was taken ahead of it."),
    QT_TRANSLATE_NOOP("Finding", "The weldment's order doesn't fit its seams: %1."),
    QT_TRANSLATE_NOOP("Finding", "Without %1 no robot reaches it: weld it by hand, or it waits."),
    QT_TRANSLATE_NOOP("Finding", "Without %1 another robot welds %2 seam of it."),
    QT_TRANSLATE_NOOP("Finding", "Without %1 another robot welds %2 seams of it."),
    QT_TRANSLATE_NOOP(
        "Finding", "The given order has units behind others that are due later: levelling puts that right."),
    QT_TRANSLATE_NOOP("Finding", "The order has units behind others that are due later."),
    QT_TRANSLATE_NOOP("Finding", "The line gives %1 units an hour; the takt wants %2."),
    QT_TRANSLATE_NOOP("Finding", "On the whole the line keeps takt, but %1 of %2 units come late."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "The robot ends with another wire than it began with: changing back is in the line's cell time."),
    QT_TRANSLATE_NOOP("Finding", "It has %1 manual seams and no manual_s: the line takes them as no work."),
    QT_TRANSLATE_NOOP("Finding",
                      "The cell has two stations and loads one while it welds at the other: the stage takes "
                      "no time of its own."),
    QT_TRANSLATE_NOOP("Finding", "The unit (%1) waits: %2. No complete unit is behind it."),
    QT_TRANSLATE_NOOP("Finding", "The unit (%1) waits: %2. %3 is released next."),
    QT_TRANSLATE_NOOP("Finding",
                      "The arc is never on: the highest current is %1 A (is the log in another unit?)."),
    QT_TRANSLATE_NOOP("Finding", "Times have no UTC offset: they are taken as UTC."),
    QT_TRANSLATE_NOOP("Finding", "%1 of %2 rows are rejected."),
    QT_TRANSLATE_NOOP("Finding", "The log names no weldment: the plan's only one is taken."),
    QT_TRANSLATE_NOOP("Finding", "Job numbers that the columns file doesn't know: %1."),
    QT_TRANSLATE_NOOP("Finding", "The manual seam's result is \"%1\"."),
    QT_TRANSLATE_NOOP("Finding", "The manual seam has no result."),
    QT_TRANSLATE_NOOP("Finding", "The manual seam's result \"%1\" is neither pass nor fail."),
    QT_TRANSLATE_NOOP("Finding", "Welded by schedule %1 where the plan has %2."),
    QT_TRANSLATE_NOOP("Finding", "No record of this manual pass."),
    QT_TRANSLATE_NOOP("Finding", "No record of this pass in the logs."),
    QT_TRANSLATE_NOOP("Finding", "Welded by a robot where the plan has a manual seam."),
    QT_TRANSLATE_NOOP("Finding", "Welded by hand where the plan has a robot seam."),
    QT_TRANSLATE_NOOP("Finding", "Welded, but not in the plan."),
    QT_TRANSLATE_NOOP("Finding", "Welded more than once."),
    QT_TRANSLATE_NOOP("Finding",
                      "The logged wire feed of %1 m/min melts at about %2 A, and %3 A are logged: one of the "
                      "two is wrong, or the wire is another."),
    QT_TRANSLATE_NOOP(
        "Finding", "The wire fed lays %1 mm2 at the logged travel speed where the schedule's lays %2 mm2."),
    QT_TRANSLATE_NOOP("Finding",
                      "Neither a plan nor --process tells the process, so no thermal efficiency: arc energy, "
                      "but no heat input."),
    QT_TRANSLATE_NOOP("Finding", "No thermal efficiency is given for process %1: no heat input."),
    QT_TRANSLATE_NOOP("Finding", "The schedule limits what the log doesn't tell: %1."),
    QT_TRANSLATE_NOOP("Finding", "The schedule limits the heat input, and the log gives none."),
    QT_TRANSLATE_NOOP("Finding", "The schedule limits the cooling time t8/5, and the log gives none."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "No arc is longer than its start and crater times together: nothing steady that limits could judge."),
    QT_TRANSLATE_NOOP("Finding",
                      "Time goes backwards %1 within the pass, %2: the record can't be trusted (small "
                      "disorder can be put right with --sort-window)."),
    QT_TRANSLATE_NOOP("Finding", "Samples have the same time as the one before %1, %2."),
    QT_TRANSLATE_NOOP("Finding",
                      "Samples are missing %1 with the arc on before, %2: that time counts as arc-off."),
    QT_TRANSLATE_NOOP("Finding",
                      "Current and voltage repeat to the last digit for %1, %2: a frozen logger, left out of "
                      "the arc time."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "Voltage, power or energy is missing for %1 of the arc time: the energy is too low by that."),
    QT_TRANSLATE_NOOP("Finding", "A counter goes back %1, %2: that step isn't counted."),
    QT_TRANSLATE_NOOP("Finding", "The logged arc_on disagrees with the current %1, %2; the current decides."),
    QT_TRANSLATE_NOOP("Finding",
                      "Averaged signals (method A) on a waveform-controlled schedule: power and energy are "
                      "the product of means times the schedule's waveform factor %1."),
    QT_TRANSLATE_NOOP("Finding",
                      "Averaged signals (method A) on a waveform-controlled schedule; power or energy is "
                      "logged, so no waveform factor is applied."),
    QT_TRANSLATE_NOOP("Finding",
                      "Samples every %1 ms don't follow the waveform: the mean of their products holds only "
                      "as a sample of it."),
    QT_TRANSLATE_NOOP("Finding", "The wire counter gives %1 m/min, the logged wire feed is %2 m/min."),
    QT_TRANSLATE_NOOP("Finding", "The wire counter gives %1 m/min, the planned wire feed is %2 m/min."),
    QT_TRANSLATE_NOOP("Finding", "The plan requires %1 of each pass, and the log has none for this one."),
    QT_TRANSLATE_NOOP("Finding", "The logged schedule revision changes within the pass."),
    QT_TRANSLATE_NOOP("Finding", "Welded to revision %1 of schedule %2; the plan holds revision %3."),
    QT_TRANSLATE_NOOP("Finding",
                      "Instrument %1 (%2) was due for calibration on %3 and the pass was welded on %4."),
    QT_TRANSLATE_NOOP("Finding",
                      "Instrument %1 (%2), certificate %3, was due for calibration on %4 and the pass was "
                      "welded on %5."),
    QT_TRANSLATE_NOOP("Finding", "%1 is %2 where the schedule has %3: is the log in another unit?"),
    QT_TRANSLATE_NOOP("Finding", "The plan doesn't know this pass, so nothing says how it should be."),
    QT_TRANSLATE_NOOP("Finding",
                      "The logged positions lie %1 from the seam on the mean, so they aren't used: the log "
                      "may be in another frame."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "The logged positions don't move along the seam while the arc is on, so they aren't used."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "The travel speed is logged for %1 s of %2 s arc time: the welded length is too short by the rest."),
    QT_TRANSLATE_NOOP("Finding",
                      "No position or travel speed is logged, and arc time times planned speed gives %1 "
                      "where the plan has %2: no welded length, so no heat input."),
    QT_TRANSLATE_NOOP("Finding", "Welded over %1 where the plan has %2."),
    QT_TRANSLATE_NOOP("Finding", "Welded over %1 where the seam needs %2: %3 short, and %4 are allowed."),
    QT_TRANSLATE_NOOP("Finding",
                      "Welded over %1 where the seam needs %2: a part of the pass, until another log goes on "
                      "with it or its unit is closed."),
    QT_TRANSLATE_NOOP("Finding",
                      "Welded over %1 in %2 runs where the seam needs %3 in %4: %5 short, and %6 are "
                      "allowed."),
    QT_TRANSLATE_NOOP("Finding",
                      "Welded over %1 in %2 runs where the seam needs %3 in %4: a part of the pass, until "
                      "another log goes on with it or its unit is closed."),
    QT_TRANSLATE_NOOP(
        "Finding",
        "The arc was on where the time of a unit ended: this pass was cut there, and which unit "
        "it was welded on can't be told."),
    QT_TRANSLATE_NOOP("Finding", "A gap between two runs is %1 long where the plan has %2."),
    QT_TRANSLATE_NOOP("Finding",
                      "Estimated HAZ hardness of the record is %1 HV, above the limit of %2 HV (its scatter "
                      "is 56 HV either way)."),
    QT_TRANSLATE_NOOP("Finding",
                      "The log has neither positions nor travel speed, and no plan knows the seam: energy, "
                      "but no heat input."),
    QT_TRANSLATE_NOOP("Finding", "It began before %1, which lies under it, had ended."),
    QT_TRANSLATE_NOOP("Finding",
                      "It began %1 after the pass before it; by conduction the seam needs %2 to cool to the "
                      "interpass limit, and no temperature is logged."),
    QT_TRANSLATE_NOOP("Finding", "It began before %1 had ended; the plan puts that seam before it."),
    QT_TRANSLATE_NOOP("Finding",
                      "The chart of %1 of schedule %2 signals \"%3\" here first, %4 times in all."),
    QT_TRANSLATE_NOOP("Finding", "Ppk of %1 is %2 over %3 passes."),
    QT_TRANSLATE_NOOP("Finding", "%1 drifts by %2 (%3 to %4) a day over %5 passes."),
    // The line: why a takt was missed, what would help, what a unit waits for.
    QT_TRANSLATE_NOOP("Finding", "repair at %1"),
    QT_TRANSLATE_NOOP("Finding", "wire or tip change at %1"),
    QT_TRANSLATE_NOOP("Finding", "rework or scrap at %1"),
    QT_TRANSLATE_NOOP("Finding", "work at %1"),
    QT_TRANSLATE_NOOP("Finding", "time -10 %"),
    QT_TRANSLATE_NOOP("Finding", "1 server more"),
    QT_TRANSLATE_NOOP("Finding", "buffer 1 more"),
    QT_TRANSLATE_NOOP("Finding", "no stops"),
    QT_TRANSLATE_NOOP("Finding", "all right first time"),
    QT_TRANSLATE_NOOP("Finding", "its cart isn't there"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 is missing (none there)"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 are missing (none there)"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 is missing (%3 of %4 there)"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 are missing (%3 of %4 there)"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 too many (the weldment has none)"),
    QT_TRANSLATE_NOOP("Finding", "%1 %2 too many (%3 for %4)"),
    // Sources.
    QT_TRANSLATE_NOOP("Finding", "%1 (recalled)"),
    QT_TRANSLATE_NOOP("Finding", "AWS D1.1:2015, Table 5.7"),
    QT_TRANSLATE_NOOP("Finding", "EN 1011-1:2009, Table 1"),
    QT_TRANSLATE_NOOP("Finding", "EN 1011-2:2001, C.3 (method B)"),
    QT_TRANSLATE_NOOP("Finding", "IEC 60974-1, rating plate (recalled)"),
    QT_TRANSLATE_NOOP("Finding",
                      "IEC 60974-1 duty cycle of 10 min (recalled); I2 = I1*sqrt(D1/D2), an estimate"),
    QT_TRANSLATE_NOOP("Finding", "ILAC-G8:09/2019, 4.2.2; plan limit"),
    QT_TRANSLATE_NOOP("Finding", "ISO 15614-1:2017, level 2 (recalled)"),
    QT_TRANSLATE_NOOP("Finding", "iso-22514-2 (recalled); common practice, no source for the limit of 1.33"),
};

/// Words that stand in the holes.
[[maybe_unused]] constexpr const char* words[] = {
    QT_TRANSLATE_NOOP("Finding", "Mean current of the steady part"),
    QT_TRANSLATE_NOOP("Finding", "Mean voltage of the steady part"),
    QT_TRANSLATE_NOOP("Finding", "Mean wire feed speed of the steady part"),
    QT_TRANSLATE_NOOP("Finding", "Mean travel speed of the steady part"),
    QT_TRANSLATE_NOOP("Finding", "Mean gas flow of the steady part"),
    QT_TRANSLATE_NOOP("Finding", "Interpass temperature"),
    QT_TRANSLATE_NOOP("Finding", "Heat input of the whole pass"),
    QT_TRANSLATE_NOOP("Finding", "Fastest cooling time t8/5 (cold, thicker plate)"),
    QT_TRANSLATE_NOOP("Finding", "Slowest cooling time t8/5 (hot, thinner plate)"),
    QT_TRANSLATE_NOOP("Finding", "Fastest cooling time t8/5 (from the logged temperature, thicker plate)"),
    QT_TRANSLATE_NOOP("Finding", "Slowest cooling time t8/5 (from the logged temperature, thinner plate)"),
    QT_TRANSLATE_NOOP("Finding", "Fillet leg"),
    QT_TRANSLATE_NOOP("Finding", "Fillet throat"),
    QT_TRANSLATE_NOOP("Finding", "Fillet leg at the largest gap"),
    QT_TRANSLATE_NOOP("Finding", "Fillet throat at the largest gap"),
    QT_TRANSLATE_NOOP("Finding", "Plate thickness"),
    QT_TRANSLATE_NOOP("Finding", "Gap"),
    QT_TRANSLATE_NOOP("Finding", "draft"),
    QT_TRANSLATE_NOOP("Finding", "reviewed"),
    QT_TRANSLATE_NOOP("Finding", "without a status"),
    QT_TRANSLATE_NOOP("Finding", "of unstated basis"),
    QT_TRANSLATE_NOOP("Finding", "standard-maximum"),
    QT_TRANSLATE_NOOP("Finding", "typical"),
    QT_TRANSLATE_NOOP("Finding", "Estimated HAZ hardness (scatter +-56 HV)"),
    QT_TRANSLATE_NOOP("Finding", "Heat input"),
    QT_TRANSLATE_NOOP("Finding", "Leg as drawn"),
    QT_TRANSLATE_NOOP("Finding", "Process"),
    QT_TRANSLATE_NOOP("Finding", "Transfer mode"),
    QT_TRANSLATE_NOOP("Finding", "Wire feed speed"),
    QT_TRANSLATE_NOOP("Finding", "Travel speed"),
    QT_TRANSLATE_NOOP("Finding", "Current"),
    QT_TRANSLATE_NOOP("Finding", "Arc voltage"),
    QT_TRANSLATE_NOOP("Finding", "Estimated HAZ hardness"),
    QT_TRANSLATE_NOOP("Finding", "Preheat needed (method B)"),
    QT_TRANSLATE_NOOP("Finding", "Longest single arc"),
    QT_TRANSLATE_NOOP("Finding", "Heat input, as qualified"),
    QT_TRANSLATE_NOOP("Finding", "1 beyond 3 sigma"),
    QT_TRANSLATE_NOOP("Finding", "2 of 3 beyond 2 sigma"),
    QT_TRANSLATE_NOOP("Finding", "4 of 5 beyond 1 sigma"),
    QT_TRANSLATE_NOOP("Finding", "8 in a row on one side"),
    QT_TRANSLATE_NOOP("Finding", "once"),
    QT_TRANSLATE_NOOP("Finding", "plan limit"),
    QT_TRANSLATE_NOOP("Finding", "plan"),
    QT_TRANSLATE_NOOP("Finding", "common practice, no source"),
    QT_TRANSLATE_NOOP("Finding", "adams (recalled); plan limit"),
    QT_TRANSLATE_NOOP("Finding", "en-1011-2, Annex D (part read); plan limit"),
    QT_TRANSLATE_NOOP("Finding", "en-1011-2, Annex D (part read); ILAC-G8:09/2019, 4.2.2; plan limit"),
    QT_TRANSLATE_NOOP("Finding", "yurioka-1987 (recalled); plan limit"),
};
// clang-format on

std::span<const char* const> finding_templates() {
  return templates;
}

}  // namespace seamtakt::desk
