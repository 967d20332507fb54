#pragma once

#include <string>
#include <vector>

#include "base/json/json_writer.hpp"
#include "cli/common/command_line.hpp"
#include "exchange/drawing/drawing_import.hpp"

namespace seamtakt::cli {

/// What an import of a drawing is told beside its file.
struct DrawingOptions {
  std::string up, throat_rule, leg_rule, butt_rule, schedules_by, schedule, z, joint, unit, gap, seconds;
  std::vector<std::string> thickness, take, seam_layers, plate_layers;

  /// The first option that was given; empty: none.
  std::string given() const;
  /// The first that is of drawings in two dimensions alone.
  std::string flat_option() const;
};
void add_drawing_options(const Command& command, DrawingOptions& options);

/// A name that ends as a STEP file's or a DXF file's does.
bool is_drawing(const std::string& file);
/// Of a DXF file: in two dimensions.
bool is_flat_drawing(const std::string& file);

/// A drawing as it was read, and what it would make of the plan.
struct PreviewedDrawing {
  DrawingResult drawing;
  DrawingImport import;  ///< borrows the drawing: neither is moved any more
};

/// Fills `preview`. Errors: those of run_drawing_program, read_drawing_result and import_drawing; an option
/// that can't be read.
void preview_drawing(const Plan& plan, const std::string& file, const std::string& weldment,
                     const std::vector<std::string>& metals, const DrawingOptions& options,
                     PreviewedDrawing& preview);

/// For people: how many are new, and each candidate that lacks something.
std::string preview_text(const PreviewedDrawing& preview);
/// The same as members of an open object.
void write_preview(JsonWriter& json, const PreviewedDrawing& preview);

}  // namespace seamtakt::cli
