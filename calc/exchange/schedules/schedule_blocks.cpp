#include "exchange/schedules/schedule_blocks.hpp"

#include <algorithm>
#include <memory>
#include <set>

#include "exchange/report/plan_sections.hpp"
#include "exchange/schedules/revision_changes.hpp"
#include "exchange/sketch/joint_drawing.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

/// Rows of a table on a page that has room for all of its parts.
constexpr std::size_t most_uses = 6, most_changes = 8, most_seam_names = 4;

SheetCell count_of(std::size_t count) {
  return Count{count};
}

/// Drawn later than the sheet is made, so it keeps what it shows.
struct Sketch {
  SketchedJoint shape;
  std::set<int> runs;
  SheetCell caption;
};

SheetCell caption_of(const LikeSeams& group) {
  const Choice joint{group.first->seam->joint};
  return group.all.size() == 1
             ? PatternCell{"{1}, used by 1 seam"_word, {joint}}
             : PatternCell{"{1}, used by {2} seams"_word, {joint, count_of(group.all.size())}};
}

SheetCell thickness_of(const Seam& seam) {
  if (seam.thickness_mm.size() != 2) return not_stated;
  return PatternCell{"{1} and {2}"_word,
                     {Figure{seam.thickness_mm[0], "mm"}, Measure{seam.thickness_mm[1], "mm"}}};
}

SheetCell size_of(const Seam& seam) {
  if (seam.leg_mm) return PatternCell{"z {1}"_word, {Measure{*seam.leg_mm, "mm"}}};
  if (seam.throat_mm) return PatternCell{"a {1}"_word, {Measure{*seam.throat_mm, "mm"}}};
  if (!seam.groove) return not_stated;
  return PatternCell{"{1}, {2}"_word, {Choice{seam.groove->type}, Measure{seam.groove->angle_deg, "deg"}}};
}

SheetCell gap_of(const Seam& seam) {
  const double gap_mm = seam.groove ? seam.groove->root_gap_mm : seam.gap_mm;
  if (seam.gap_max_mm.value_or(gap_mm) > gap_mm) return MeasureRange{gap_mm, seam.gap_max_mm, "mm"};
  return Measure{gap_mm, "mm"};
}

/// "1, 2 of 3".
SheetCell runs_of(const SeamUse& use) {
  std::string runs;
  for (const int run : use.runs) runs += (runs.empty() ? "" : ", ") + std::to_string(run);
  return PatternCell{"{1} of {2}"_word, {runs, count_of(use.seam->schedules.size())}};
}

SheetCell names_of(const std::vector<const SeamUse*>& uses) {
  std::string names;
  for (std::size_t i = 0; i < std::min(uses.size(), most_seam_names); ++i)
    names += (i == 0 ? "" : ", ") + seam_place(uses[i]->weldment->id, uses[i]->seam->id);
  if (uses.size() <= most_seam_names) return names;
  return PatternCell{"{1} and {2} more"_word, {names, count_of(uses.size() - most_seam_names)}};
}

}  // namespace

DrawingsBlock sketches_of(const std::vector<LikeSeams>& groups, std::size_t most) {
  auto sketches = std::make_shared<std::vector<Sketch>>();
  for (const LikeSeams& group : groups) {
    if (sketches->size() == most) break;
    if (std::optional<SketchedJoint> shape = joint_shape(*group.first->seam))
      sketches->push_back({std::move(*shape), group.first->runs, caption_of(group)});
  }
  return {[sketches](const TextView& view) {
    std::vector<Drawing> drawings;
    for (const Sketch& sketch : *sketches)
      drawings.push_back(joint_drawing(sketch.shape, sketch.runs, sketch.caption, view));
    return drawings;
  }};
}

std::vector<Block> uses_table(const std::vector<LikeSeams>& groups) {
  if (groups.empty()) return {ParagraphBlock{"No seam of the plan is welded by it."_word}};
  Sheet sheet{"uses",
              {{"joint", {"Joint"_word}, 0},
               {"thickness_mm", {"Thickness"_word}, 0},
               {"size", {"Weld size"_word}, 0},
               {"gap", {"Gap"_word}, 0},
               {"position", {"Position"_word}, 0},
               {"runs", {"Passes"_word}, 0},
               {"count", {"Seams"_word}, 1},
               {"seams", {"Which"_word}, 0}},
              {}};
  for (std::size_t i = 0; i < std::min(groups.size(), most_uses); ++i) {
    const Seam& seam = *groups[i].first->seam;
    sheet.rows.push_back({Choice{seam.joint}, thickness_of(seam), size_of(seam), gap_of(seam),
                          seam.position.empty() ? SheetCell(not_stated) : SheetCell(seam.position),
                          runs_of(*groups[i].first), count_of(groups[i].all.size()),
                          names_of(groups[i].all)});
  }
  std::vector<Block> blocks = {TableBlock{std::move(sheet)}};
  if (groups.size() > most_uses)
    blocks.emplace_back(ParagraphBlock{
        PatternCell{"Further kinds and sizes of seams: {1}."_word, {count_of(groups.size() - most_uses)}}});
  return blocks;
}

std::vector<Block> changes_table(const Plan& plan, const Schedule& schedule) {
  const Schedule* before = earlier_revision(plan, schedule);
  if (before == nullptr) return {};
  const SheetCell earlier =
      PatternCell{"{1}, revision {2}"_word, {before->id, static_cast<double>(before->revision)}};
  std::vector<Block> blocks = {TitleBlock{3, PatternCell{"Changed from {1}"_word, {earlier}}}};
  const std::vector<RevisionChange> changes = revision_changes(*before, schedule);
  if (changes.empty()) {
    blocks.emplace_back(ParagraphBlock{"Nothing of how it is welded."_word});
    return blocks;
  }
  Sheet sheet{"changes",
              {{"field", {"Item"_word}, 0}, {"before", {"Earlier"_word}, 0}, {"after", {"Now"_word}, 0}},
              {}};
  for (std::size_t i = 0; i < std::min(changes.size(), most_changes); ++i)
    sheet.rows.push_back({changes[i].field, changes[i].before, changes[i].after});
  blocks.emplace_back(TableBlock{std::move(sheet)});
  if (changes.size() > most_changes)
    blocks.emplace_back(
        ParagraphBlock{PatternCell{"Further changes: {1}."_word, {count_of(changes.size() - most_changes)}}});
  return blocks;
}

}  // namespace seamtakt
