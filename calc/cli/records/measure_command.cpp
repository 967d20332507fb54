#include <memory>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "cli/records/shown_record.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, weldment, points;
  bool json = false;
};

void write_point(JsonWriter& json, const MeasuredPoint& point) {
  json.begin_object(JsonWriter::Layout::compact).member("point", point.id);
  json.member("x_mm", point.at_mm[0]).member("y_mm", point.at_mm[1]).member("z_mm", point.at_mm[2]);
  json.member("part_C", point.part_C).end_object();
}

void write_feature(JsonWriter& json, const MeasuredFeature& feature) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("feature", feature.id).member("kind", feature.kind).member("unit", feature.unit);
  json.member("nominal", feature.nominal).member("measured", feature.measured);
  json.member("deviation", feature.deviation)
      .member("tolerance", feature.tolerance)
      .member("within", feature.within);
  json.member("predicted", feature.predicted);
  json.key("hints").begin_array();
  for (const SeamShare& hint : feature.hints)
    json.begin_object()
        .member("seam", hint.seam)
        .member("factor", hint.factor)
        .member("share", hint.share)
        .end_object();
  json.end_array();
  json.member("unexplained", feature.unexplained).end_object();
}

std::string table_text(const MeasureResult& measured) {
  TextTable table({{"Feature"_word, "", true, 0},
                   {"Kind"_word, "", true, 0},
                   {"Unit"_word, "", true, 0},
                   {"Nominal"_word, "", false, 6},
                   {"Measured"_word, "", false, 6},
                   {"Off by"_word, "", false, 3},
                   {"Allowed"_word, "", false, 3},
                   {"Within"_word, "", true, 0},
                   {"Predicted"_word, "", false, 2},
                   {"Hint: seam x its prediction"_word, "", true, 0},
                   {"Unexplained"_word, "", false, 2}},
                  output_view());
  for (const MeasuredFeature& feature : measured.features) {
    const RowUnit unit(feature.unit);
    std::string hints;
    for (const SeamShare& hint : feature.hints)
      hints += (hints.empty() ? "" : ", ") + hint.seam + " x " + rounded_text(hint.factor, 2);
    table.cell(feature.id)
        .cell(output_view().word(feature.kind))
        .cell(unit.name())
        .cell(unit.shown(feature.nominal))
        .cell(unit.shown(feature.measured))
        .cell(unit.shown(feature.deviation))
        .cell(unit.shown(feature.tolerance))
        .cell(feature.within ? (*feature.within ? "yes"_word : "no"_word) : "not judged"_word)
        .cell(unit.shown(feature.predicted))
        .cell(hints)
        .cell(unit.shown(feature.unexplained));
  }
  return table.text();
}

void run(const Options& given, Result& result) {
  const LoadedPlan loaded = load(given.plan);
  const Weldment& weldment = *chosen_weldments(loaded.plan, given.weldment).front();
  const std::vector<MeasuredPoint> points = load_measured_points(given.points);
  const MeasureResult measured = measure(weldment, evaluate(loaded.plan), points);
  result.exit_code = exit_code_for(measured.findings);
  if (!given.json) {
    result.output = shown_text(Sentence("cli.measure"_key, {{"weldment", printable(weldment.id)},
                                                            {"class", printable(weldment.tolerance_class)},
                                                            {"at", UnitValue{measured_at_C, "C"}}})) +
                    "\n" + table_text(measured) + findings_section(measured.findings);
    return;
  }
  JsonWriter json;
  json.begin_object().member("weldment", weldment.id).member("tolerance_class", weldment.tolerance_class);
  json.member("alignment",
              "lengths, angles and straightness need none; for predicted shrinkage: first three points of "
              "the features as datum");
  json.key("points").begin_array();
  for (const MeasuredPoint& point : points) write_point(json, point);
  json.end_array().key("features").begin_array();
  for (const MeasuredFeature& feature : measured.features) write_feature(json, feature);
  json.end_array();
  write_findings(json, measured.findings);
  write_provenance(json, loaded.provenance);
  json.end_object();
  result.output = json.take();
}

}  // namespace

void add_measure(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("measure", "Measured points of a weldment against tolerances and predicted shrinkage");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--weldment", options->weldment, "weldment that was measured").required();
  command.option("--points", options->points, "CSV: point, x_mm, y_mm, z_mm, part_C (optional)").required();
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
