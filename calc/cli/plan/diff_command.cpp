#include <memory>

#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "cli/plan/plan_value.hpp"
#include "plan/difference/plan_difference.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string first, second;
  bool json = false;
};

const char* kind_key(PlanDifference::Kind kind) {
  constexpr const char* keys[] = {"added", "removed", "changed"};
  return keys[static_cast<std::size_t>(kind)];
}

std::string json_text(const std::vector<PlanDifference>& differences) {
  JsonWriter json;
  json.begin_object().key("differences").begin_array();
  for (const PlanDifference& each : differences) {
    json.begin_object(JsonWriter::Layout::compact)
        .member("kind", kind_key(each.kind))
        .member("where", each.where);
    plan_value_member(json, "before", each.before);
    plan_value_member(json, "after", each.after);
    json.end_object();
  }
  json.end_array().end_object();
  return json.take();
}

/// A whole object that is new or gone is named alone: its values would fill the screen.
std::string shown_value(const std::string& json) {
  return json.starts_with('{') ? std::string("{...}") : json;
}

std::string table_text(const std::vector<PlanDifference>& differences) {
  if (differences.empty()) return shown_text(Sentence("diff.none"_key)) + "\n";
  TextTable table({{"Where"_word, "", true, 0}, {"Before"_word, "", true, 0}, {"After"_word, "", true, 0}},
                  output_view());
  for (const PlanDifference& each : differences)
    table.cell(each.where).cell(shown_value(each.before)).cell(shown_value(each.after));
  return table.text();
}

void run(const Options& options, Result& result) {
  const LoadedPlan first = load(options.first), second = load(options.second);
  const auto differences = plan_differences(first.plan, second.plan);
  result.output = options.json ? json_text(differences) : table_text(differences);
}

}  // namespace

void add_diff(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("diff", "What two plans have differently, told by the ids of what they hold");
  command.option("A", options->first, "plan file (NAME.weldplan.json)").required();
  command.option("B", options->second, "the plan that it is compared with").required();
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
