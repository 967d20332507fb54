#include "cli/common/output.hpp"

#include <algorithm>

#include "base/sentences/place_sentence.hpp"

namespace seamtakt::cli {

void write_provenance(JsonWriter& json, const Provenance& provenance) {
  json.key("provenance").begin_object();
  json.member("program", "seamtakt " + provenance.program_version);
  json.member("catalogue_sha256", provenance.catalogue_sha256);
  if (!provenance.plan_file.empty())
    json.member("plan", provenance.plan_file).member("plan_sha256", provenance.plan_sha256);
  json.end_object();
}

void add_cell(TextTable& table, const ColumnValue& value, int digits) {
  const auto add_count = [&](auto count) {
    if (digits > 0)
      table.cell(count);
    else
      table.cell(std::to_string(count));
  };
  if (const double* number = std::get_if<double>(&value))
    table.cell(*number);
  else if (const int* whole = std::get_if<int>(&value))
    add_count(*whole);
  else if (const auto* count = std::get_if<std::uint64_t>(&value))
    add_count(*count);
  else if (const auto* text = std::get_if<std::string_view>(&value))
    table.cell(*text);
  else if (const bool* truth = std::get_if<bool>(&value))
    table.cell(*truth ? "yes"_word : "no"_word);
  else if (const auto* pair = std::get_if<std::array<double, 2>>(&value))
    table.cell(*pair);
  else if (const auto* sentence = std::get_if<const Sentence*>(&value))
    table.cell(**sentence);
  else
    table.cell(std::optional<double>());
}

namespace {

Word severity_word(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note"_word;
    case Severity::warn:
      return "warn"_word;
    case Severity::fail:
      break;
  }
  return "fail"_word;
}

}  // namespace

std::string findings_text(const Findings& findings) {
  if (findings.empty()) return shown_text(Sentence("cli.findings.none"_key)) + "\n";
  std::vector<const Finding*> sorted;
  for (const Finding& finding : findings) sorted.push_back(&finding);
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Finding* a, const Finding* b) { return a->severity > b->severity; });
  TextTable table({{"Severity"_word, "", true, 0},
                   {"Where"_word, "", true, 0},
                   {"Finding"_word, "", true, 0},
                   {"Rule"_word, "", true, 0}},
                  output_view());
  for (const Finding* finding : sorted)
    table.cell(severity_word(finding->severity))
        .cell(place_sentence(finding->where))
        .cell(finding->sentence)
        .cell(finding->rule);
  return table.text();
}

namespace {

Sentence count_sentence(const Findings& findings) {
  std::size_t counts[3] = {};
  for (const Finding& finding : findings) ++counts[static_cast<std::size_t>(finding.severity)];
  return Sentence("cli.findings.count"_key, {{"fail", counts[2]}, {"warn", counts[1]}, {"note", counts[0]}});
}

}  // namespace

std::string findings_count(const Findings& findings) {
  return shown_text(count_sentence(findings));
}

std::string findings_section(const Findings& findings) {
  return "\n" + shown_text(Sentence("cli.findings"_key, {{"counts", count_sentence(findings)}})) + "\n" +
         findings_text(findings);
}

}  // namespace seamtakt::cli
