#include "cli/plan/drawing_option.hpp"

#include <map>

#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output_view.hpp"
#include "exchange/drawing/drawing_program.hpp"
#include "exchange/drawing/flat_drawing.hpp"

namespace seamtakt::cli {

namespace {

using State = DrawingCandidate::State;

/// Rows of a table on a terminal; JSON has all.
constexpr std::size_t most_shown = 200;
constexpr const char* drawing_heading = "A drawing (STEP, DXF)";

const char* state_key(State state) {
  constexpr const char* keys[] = {"new", "moved", "unchanged", "open", "left_out"};
  return keys[static_cast<std::size_t>(state)];
}

/// How many sides each reason leaves out, in the order of the reasons' names.
std::map<std::string, std::size_t> left_out_by_reason(const DrawingImport& import) {
  std::map<std::string, std::size_t> counts;
  for (const DrawingCandidate& candidate : import.candidates)
    for (const std::string& reason : candidate.flags) ++counts[reason];
  return counts;
}

const std::string& part_name(const PreviewedDrawing& preview, std::size_t part) {
  return preview.drawing.parts[part].path;
}

DrawingImportOptions import_options(const std::string& weldment, const std::vector<std::string>& metals,
                                    const DrawingOptions& options) {
  DrawingImportOptions result;
  result.weldment = weldment;
  result.metals = metals;
  result.up = options.up;
  for (const std::string& text : options.thickness) result.thickness_mm.push_back(parse_part_thickness(text));
  if (options.throat_rule == "none")
    result.throat_rule.reset();
  else if (!options.throat_rule.empty())
    result.throat_rule = parse_size_rule(options.throat_rule, "--throat-rule");
  if (!options.leg_rule.empty()) result.leg_rule = parse_size_rule(options.leg_rule, "--leg-rule");
  result.schedule = options.schedule;
  result.butts_through = options.butt_rule != "none";
  result.schedules_by_use = options.schedules_by == "use";
  for (const std::string& flag : options.take)
    if (flag == "hardware")
      result.take_hardware = true;
    else
      result.take_flags.push_back(flag);
  return result;
}

std::string open_table(const PreviewedDrawing& preview) {
  TextTable table({{"Part"_word, "", true, 0},
                   {"Part"_word, "", true, 0},
                   {"Side"_word, "", true, 0},
                   {"Joint"_word, "", true, 0},
                   {"Length"_word, "mm", false, 5},
                   {"Lacks"_word, "", true, 0}},
                  output_view());
  for (const DrawingCandidate& candidate : preview.import.candidates) {
    if (candidate.state != State::open || table.rows() >= most_shown) continue;
    std::string lacks;
    for (const Word word : candidate.lacks)
      lacks += (lacks.empty() ? "" : ", ") + output_view().word(word.english());
    table.cell(part_name(preview, candidate.joint->part_a))
        .cell(part_name(preview, candidate.joint->part_b))
        .cell(candidate.side->id)
        .cell(candidate.joint->type)
        .cell(candidate.side->length_mm)
        .cell(lacks);
  }
  return table.rows() ? "\n" + table.text() : "";
}

void write_candidate(JsonWriter& json, const PreviewedDrawing& preview, const DrawingCandidate& candidate) {
  json.begin_object(JsonWriter::Layout::compact).member("state", state_key(candidate.state));
  if (candidate.seam.empty())
    json.null_member("seam");
  else
    json.member("seam", candidate.seam);
  json.key("parts").begin_array();
  json.value(part_name(preview, candidate.joint->part_a)).value(part_name(preview, candidate.joint->part_b));
  json.end_array().member("side", candidate.side->id).member("joint", candidate.joint->type);
  json.member("length_mm", candidate.side->length_mm).key("proposed_size");
  if (candidate.size)
    json.begin_object().member("key", candidate.size->key).member("mm", candidate.size->mm).end_object();
  else
    json.null();
  json.key("lacks").begin_array();
  for (const Word word : candidate.lacks) json.value(word.english());
  json.end_array().key("flags").begin_array();
  for (const std::string& flag : candidate.flags) json.value(flag);
  json.end_array().end_object();
}

}  // namespace

std::string DrawingOptions::given() const {
  const std::pair<const char*, bool> all[] = {{"--up", !up.empty()},
                                              {"--throat-rule", !throat_rule.empty()},
                                              {"--leg-rule", !leg_rule.empty()},
                                              {"--butt-rule", !butt_rule.empty()},
                                              {"--gap", !gap.empty()},
                                              {"--schedules-by", !schedules_by.empty()},
                                              {"--schedule", !schedule.empty()},
                                              {"--seconds", !seconds.empty()},
                                              {"--thickness", !thickness.empty()},
                                              {"--take", !take.empty()}};
  if (!flat_option().empty()) return flat_option();
  for (const auto& [name, is_given] : all)
    if (is_given) return name;
  return {};
}

std::string DrawingOptions::flat_option() const {
  const std::pair<const char*, bool> all[] = {{"--layer-seams", !seam_layers.empty()},
                                              {"--layer-plates", !plate_layers.empty()},
                                              {"--z", !z.empty()},
                                              {"--joint", !joint.empty()},
                                              {"--unit", !unit.empty()}};
  for (const auto& [name, is_given] : all)
    if (is_given) return name;
  return {};
}

void add_drawing_options(const Command& command, DrawingOptions& options) {
  const auto add = [&](const char* name, auto& value, const char* help) {
    return command.option(name, value, help).below_heading(drawing_heading);
  };
  add("--up", options.up, "the direction that is up: seams get their position by it")
      .one_of({"+X", "-X", "+Y", "-Y", "+Z", "-Z"});
  add("--throat-rule", options.throat_rule,
      "throat of fillets as a share of the thinner plate (0.5t): rounded up to 0.5 mm, at least 3 mm; a "
      "proposal, no design; none: no size");
  add("--leg-rule", options.leg_rule, "leg of fillets on both sides of a joint, such as 0.7t");
  add("--butt-rule", options.butt_rule,
      "butts: through (the default), square edges as drawn, filled through the thinner plate from one side; "
      "a "
      "proposal, no design; none: no size")
      .one_of({"through", "none"});
  add("--schedules-by", options.schedules_by, "use: the first schedule whose use fits the seam")
      .one_of({"use"});
  add("--schedule", options.schedule, "the id of a schedule: of seams that have none by use");
  add("--thickness", options.thickness,
      "PART=8mm where the drawing doesn't tell it, 8mm of all such parts; may be repeated")
      .one_value_each();
  add("--take", options.take, "sides that are left out else; may be repeated")
      .one_value_each()
      .one_of({"inner", "flare", "end", "overlap", "flush", "back", "hardware"});
  add("--layer-seams", options.seam_layers, "DXF: each line of this layer is a seam; may be repeated")
      .one_value_each();
  add("--layer-plates", options.plate_layers,
      "DXF: closed outlines of this layer are plates, those within them holes; may be repeated")
      .one_value_each();
  add("--z", options.z, "DXF: the height at which the drawing lies (mm)");
  add("--joint", options.joint, "DXF: the joint of the seams").one_of({"tee", "corner", "lap", "butt"});
  add("--unit", options.unit, "DXF: the unit of a file that says none ($INSUNITS)")
      .one_of({"mm", "cm", "m", "in", "ft"});
  add("--gap", options.gap, "parts nearer than this touch (mm; 1)");
  add("--seconds", options.seconds, "a limit of time for reading the drawing (s; 300)");
}

bool is_drawing(const std::string& file) {
  const std::string lower = lower_case(file);
  return lower.ends_with(".step") || lower.ends_with(".stp") || lower.ends_with(".p21") ||
         is_flat_drawing(file);
}

bool is_flat_drawing(const std::string& file) {
  return lower_case(file).ends_with(".dxf");
}

void preview_drawing(const Plan& plan, const std::string& file, const std::string& weldment,
                     const std::vector<std::string>& metals, const DrawingOptions& options,
                     PreviewedDrawing& preview) {
  const bool is_flat = is_flat_drawing(file);
  if (const std::string flat = options.flat_option(); !is_flat && !flat.empty())
    throw InputError(flat, "a STEP file"_word, "a drawing in two dimensions: .dxf"_word);
  const DrawingImportOptions import = import_options(weldment, metals, options);
  DrawingProgramOptions program;
  program.file = file;
  program.up = options.up;
  program.unit = options.unit;
  if (!options.gap.empty()) program.gap_mm = quantity(options.gap, "mm", {0, 10}, "--gap");
  if (!options.seconds.empty()) program.seconds = quantity(options.seconds, "s", {1, 86400}, "--seconds");
  preview.drawing = read_drawing_result(run_drawing_program(program), "seamtakt-drawing " + printable(file));
  // The name as it was given: the program may have been called by another.
  preview.drawing.path = file;
  if (is_flat) {
    FlatMeaning meaning;
    meaning.seam_layers = options.seam_layers;
    meaning.plate_layers = options.plate_layers;
    meaning.joint = options.joint;
    if (!options.z.empty()) meaning.z_mm = quantity(options.z, "mm", {-1e6, 1e6}, "--z");
    give_meaning(meaning, import, preview.drawing);
  }
  preview.import = import_drawing(plan, preview.drawing, import);
}

std::string preview_text(const PreviewedDrawing& preview) {
  const DrawingImport& import = preview.import;
  std::string text = shown_text(Sentence("drawing.found"_key, {{"parts", preview.drawing.parts.size()},
                                                               {"joints", preview.drawing.joints.size()},
                                                               {"schema", preview.drawing.schema},
                                                               {"unit", preview.drawing.unit}})) +
                     "\n";
  text += shown_text(Sentence("drawing.summary"_key, {{"added", import.count(State::added)},
                                                      {"moved", import.count(State::moved)},
                                                      {"unchanged", import.count(State::unchanged)},
                                                      {"open", import.count(State::open)},
                                                      {"lost", import.lost.size()}})) +
          "\n";
  std::size_t fillets = 0, butts = 0;
  for (const DrawingCandidate& candidate : import.candidates)
    if (candidate.state == State::added) ++(candidate.joint->type == "butt" ? butts : fillets);
  if (fillets + butts > 0)
    text += shown_text(Sentence("drawing.proposed"_key, {{"fillets", fillets}, {"butts", butts}})) + "\n";
  for (const auto& [reason, count] : left_out_by_reason(import))
    text += shown_text(Sentence("drawing.left-out"_key, {{"count", count}, {"reason", reason}})) + "\n";
  for (const std::string& seam : import.lost)
    text += shown_text(Sentence("drawing.lost"_key, {{"seam", seam}})) + "\n";
  for (const DrawingNote& note : preview.drawing.notes) text += note.text + "\n";
  return text + open_table(preview);
}

void write_preview(JsonWriter& json, const PreviewedDrawing& preview) {
  const DrawingImport& import = preview.import;
  json.member("file", preview.drawing.path).member("list", "drawing").member("weldment", import.weldment);
  json.key("source").begin_object(JsonWriter::Layout::compact);
  json.member("sha256", preview.drawing.sha256).member("schema", preview.drawing.schema);
  json.member("unit", preview.drawing.unit).member("parts", preview.drawing.parts.size());
  json.member("joints", preview.drawing.joints.size()).end_object();
  json.key("counts").begin_object(JsonWriter::Layout::compact);
  for (const State state : {State::added, State::moved, State::unchanged, State::open, State::left_out})
    json.member(state_key(state), import.count(state));
  json.member("lost", import.lost.size()).member("plates", import.plates).member("tubes", import.tubes);
  json.end_object().key("left_out").begin_object(JsonWriter::Layout::compact);
  for (const auto& [reason, count] : left_out_by_reason(import)) json.member(reason, count);
  json.end_object().key("candidates").begin_array();
  for (const DrawingCandidate& candidate : import.candidates) write_candidate(json, preview, candidate);
  json.end_array().key("lost").begin_array(JsonWriter::Layout::compact);
  for (const std::string& seam : import.lost) json.value(seam);
  json.end_array().key("notes").begin_array();
  for (const DrawingNote& note : preview.drawing.notes) json.value(note.text);
  json.end_array();
}

}  // namespace seamtakt::cli
