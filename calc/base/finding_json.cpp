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

}  // namespace seamtakt
