#include "exchange/report/open_items_sheet.hpp"

#include "base/sentences/place_sentence.hpp"

namespace seamtakt {

std::string joined_numbers(const std::vector<std::uint64_t>& numbers) {
  std::string text;
  for (const std::uint64_t number : numbers) text += (text.empty() ? "" : ", ") + std::to_string(number);
  return text;
}

namespace {

/// A row of undecided passes: the disposition that covers them, or none.
std::vector<SheetCell> cause_row(const OpenCause& cause, const DecidedCause* decided) {
  const PatternCell passes{
      {cause.passes.size() == 1 ? "{1} undecided pass: {2}"_word : "{1} undecided passes: {2}"_word},
      {static_cast<double>(cause.passes.size()), SentenceCell{place_list(cause.passes)}}};
  const SheetCell about = cause.records.size() == 1 ? SheetCell(static_cast<double>(cause.records.front()))
                                                    : SheetCell(joined_numbers(cause.records));
  return {decided != nullptr ? SheetCell(static_cast<double>(decided->disposition)) : SheetCell(),
          about,
          passes,
          cause.sentence.is_empty()
              ? SheetCell(cause.cause)
              : SheetCell(PatternCell{"{1} ({2})"_word, {SentenceCell{cause.sentence}, cause.cause}}),
          SheetCell(),
          decided != nullptr ? SheetCell(Word::of_table(to_string(decided->decision))) : SheetCell(),
          SheetCell(),
          decided != nullptr ? "closed"_word : "open"_word};
}

}  // namespace

Sheet open_items_sheet(const std::vector<Nonconformance>& list, const std::vector<OpenCause>& causes,
                       const std::vector<DecidedCause>& decided) {
  Sheet sheet{"open-items",
              {{"record", {"Record"_word}},
               {"about", {"About record"_word}},
               {"place", {"Where"_word}},
               {"text", {"What failed or was left open"_word}},
               {"opened", {"Opened"_word}},
               {"decision", {"Decision"_word}},
               {"retest", {"Re-test, record"_word}},
               {"state", {"State"_word}}},
              {}};
  for (const Nonconformance& each : list)
    sheet.rows.push_back({static_cast<double>(each.seq), static_cast<double>(each.about),
                          SentenceCell{place_sentence(each.place)}, SentenceCell{each.sentence}, each.opened,
                          each.decision ? SheetCell(Word::of_table(to_string(*each.decision))) : SheetCell(),
                          each.retest > 0 ? SheetCell(static_cast<double>(each.retest)) : SheetCell(),
                          each.open ? "open"_word : "closed"_word});
  for (const OpenCause& cause : causes) sheet.rows.push_back(cause_row(cause, nullptr));
  for (const DecidedCause& each : decided) sheet.rows.push_back(cause_row(each.cause, &each));
  return sheet;
}

}  // namespace seamtakt
