#include "base/finding_json.hpp"

#include "base/sentences/sentence_json.hpp"

namespace seamtakt {

void write_json(const Finding& finding, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("rule", finding.rule)
      .member("severity", to_string(finding.severity))
      .member("where", finding.where);
  json.member("value", finding.value).member("limit", finding.limit);
  if (finding.unit.empty())
    json.null_member("unit");
  else
    json.member("unit", finding.unit);
  json.member("text", finding.text()).member("source", finding.source);
  write_sentence_members(json, finding.sentence);
  json.end_object();
}

void write_findings(JsonWriter& json, const Findings& findings) {
  json.key("findings").begin_array();
  for (const Finding& finding : findings) write_json(finding, json);
  json.end_array();
}

void write_findings(JsonWriter& json, const Findings& findings, const TextSink& sink, ThreadPool& pool) {
  constexpr std::size_t findings_a_part = 256;
  json.key("findings").begin_array();
  sink(json.take_part());
  OrderedOutput output(sink);
  pool.parallel_for(findings.size(), findings_a_part, [&](std::size_t begin, std::size_t end) {
    std::string text;
    output.put(begin / findings_a_part, [&] {
      JsonWriter part = json;  // a copy continues where the document is
      if (begin > 0) part.written_elements("");
      for (std::size_t i = begin; i < end; ++i) write_json(findings[i], part);
      text = part.take_part();
      return std::string_view(text);
    });
  });
  if (!findings.empty()) json.written_elements("");
  json.end_array();
}

}  // namespace seamtakt
